// swift-tools-version: 6.0
// Generated with the files beside it; made anew by `cargo run -p lugbook-generate`.
import Foundation
import PackageDescription

// The C side: for phones the framework that holds the library of each, once it lies beside this file; else the
// static library of this machine, which the linker is told of by -L.
let framework = "LugbookCore.xcframework"
let library: Target =
    if FileManager.default.fileExists(atPath: "\(Context.packageDirectory)/\(framework)") {
        .binaryTarget(name: "LugbookCoreFFI", path: framework)
    } else {
        .systemLibrary(name: "LugbookCoreFFI")
    }

let package = Package(
    name: "LugbookCore",
    platforms: [.iOS(.v17), .macOS(.v14)],
    products: [.library(name: "LugbookCore", targets: ["LugbookCore"])],
    targets: [
        library,
        .target(
            name: "LugbookCore",
            dependencies: ["LugbookCoreFFI"],
            // The generated code is not written for the strict checks of mode 6.
            swiftSettings: [.swiftLanguageMode(.v5)],
            linkerSettings: [
                .linkedLibrary("lugbook_phone", .when(platforms: [.linux])),
                .linkedLibrary("m", .when(platforms: [.linux])),
                .linkedLibrary("dl", .when(platforms: [.linux])),
                .linkedLibrary("pthread", .when(platforms: [.linux])),
            ]
        ),
    ]
)
