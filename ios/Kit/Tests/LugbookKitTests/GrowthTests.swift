import Foundation
import LugbookCore
import Testing

/// What the process holds, as Linux tells it.
private struct Footing {
    let memoryKb: Int
    let files: Int

    init(of folder: String) throws {
        let status = try String(contentsOfFile: "/proc/self/status", encoding: .utf8)
        let line = status.split(separator: "\n").first { $0.hasPrefix("VmRSS:") } ?? ""
        memoryKb = Int(line.filter(\.isNumber)) ?? 0
        files = try FileManager.default.contentsOfDirectory(atPath: "/proc/self/fd")
            .compactMap { try? FileManager.default.destinationOfSymbolicLink(atPath: "/proc/self/fd/\($0)") }
            .filter { $0.hasPrefix(folder) }
            .count
    }
}

private func setting(_ name: String, _ usual: Int) -> Int {
    ProcessInfo.processInfo.environment[name].flatMap(Int.init) ?? usual
}

#if os(Linux)
    /// Asking and opening again and again leaves nothing behind. The long form is `tests/growth`.
    @Suite(.serialized) struct GrowthTests {
        /// More than this is growth: a screen that is kept at each call comes to several times as much.
        static let marginKb = 8 * 1024
        let scratch: Scratch

        init() throws { scratch = try Scratch() }

        @Test func screensLeaveNothingBehind() async throws {
            let calls = setting("LUGBOOK_VIEWS", 1_500)
            let book = try await Engine.open(in: scratch.path)
            try await book.fill(vehicles: 1)
            let ask = { for _ in 0..<$0 { _ = try await book.vehicle(name: "Truck 1", manner: english) } }
            try await ask(500)
            let before = try Footing(of: scratch.path)
            try await ask(calls)
            let after = try Footing(of: scratch.path)
            print("\(calls) screens in Swift: \(after.memoryKb - before.memoryKb) kB more")
            #expect(after.memoryKb - before.memoryKb < Self.marginKb)
            #expect(after.files == before.files)
            try await book.closeBook()
        }

        @Test func openingLeavesNothingBehind() async throws {
            let openings = setting("LUGBOOK_OPENS", 20)
            let open = { (times: Int) in
                for _ in 0..<times {
                    let book = try await Engine.open(in: scratch.path)
                    _ = try await book.firstRun(manner: english)
                    try await book.closeBook()
                }
            }
            try await open(10)
            let before = try Footing(of: scratch.path)
            try await open(openings)
            let after = try Footing(of: scratch.path)
            print("\(openings) openings in Swift: \(after.memoryKb - before.memoryKb) kB more")
            #expect(after.memoryKb - before.memoryKb < Self.marginKb)
            #expect(after.files == before.files)
        }
    }
#endif
