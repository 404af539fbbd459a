// swift-tools-version: 6.0
import PackageDescription

let package = Package(
    name: "LugbookKit",
    platforms: [.iOS(.v17), .macOS(.v14)],
    dependencies: [
        // Written by `cargo run -p lugbook-generate`.
        .package(name: "LugbookCore", path: "../../target/phone/swift")
    ],
    targets: [
        .testTarget(
            name: "LugbookKitTests",
            dependencies: [.product(name: "LugbookCore", package: "LugbookCore")]
        )
    ]
)
