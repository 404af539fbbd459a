import Foundation
import Testing

/// The folder that journeys are read from, beside the other vectors.
private let journeys = URL(filePath: #filePath).appending(path: "../../../../../tests/vectors/journeys").standardized

private func files() throws -> [URL] {
    try FileManager.default.contentsOfDirectory(at: journeys, includingPropertiesForKeys: nil)
        .filter { $0.pathExtension == "json" }
        .sorted { $0.path < $1.path }
}

/// The journeys of `tests/vectors/journeys`, as Rust and Kotlin go them too.
@Suite struct JourneyTests {
    @Test(arguments: try files())
    func comesOutAsTold(_ file: URL) async throws {
        let scratch = try Scratch()
        let told = try JSONDecoder().decode(Json.self, from: Data(contentsOf: file))
        try await Journey(told, in: URL(filePath: scratch.path)).go()
        print("journey in Swift: \(file.deletingPathExtension().lastPathComponent)")
    }

    @Test func thereAreJourneys() throws {
        #expect(try !files().isEmpty)
    }
}
