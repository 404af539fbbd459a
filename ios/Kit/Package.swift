// swift-tools-version: 6.0
import PackageDescription

let package = Package(
    name: "LugbookKit",
    platforms: [.iOS(.v17), .macOS(.v14)],
    products: [.library(name: "LugbookKit", targets: ["LugbookKit"])],
    dependencies: [
        // Written by `cargo run -p lugbook-generate`.
        .package(name: "LugbookCore", path: "../../target/phone/swift")
    ],
    targets: [
        .target(
            name: "LugbookKit",
            dependencies: [.product(name: "LugbookCore", package: "LugbookCore")]
        ),
        .testTarget(
            name: "LugbookKitTests",
            dependencies: ["LugbookKit", .product(name: "LugbookCore", package: "LugbookCore")]
        ),
    ]
)
