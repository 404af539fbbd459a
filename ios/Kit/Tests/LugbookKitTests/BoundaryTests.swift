import Foundation
import LugbookCore
import Testing

/// A phone with a clock that stands still.
final class Phone: Device {
    func clockMs() -> Int64 { 1_780_000_000_000 }
    func random() -> Data { Data(0..<10) }
    func secret() -> Data? { Data(repeating: 4, count: 32) }
}

let english = Manner(language: .english, units: .metric, letters: .frontFirst)

/// A folder of one test, gone with it.
final class Scratch {
    let path: String

    init() throws {
        let folder = FileManager.default.temporaryDirectory.appending(path: UUID().uuidString)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        path = folder.path
    }

    deinit { try? FileManager.default.removeItem(atPath: path) }
}

/// What holds of the boundary itself, whatever crosses it.
@Suite struct BoundaryTests {
    let scratch: Scratch

    init() throws { scratch = try Scratch() }

    func open() throws -> Logbook {
        try Logbook.open(folder: scratch.path, device: Phone(), manner: english)
    }

    @Test func aNewBookIsEmpty() throws {
        let book = try open()
        #expect(try book.nextStep(manner: english) == nil)
        #expect(try book.jobs(manner: english) == [])
    }

    @Test func aRefusalHasItsKindAndItsSentence() throws {
        let book = try open()
        do {
            _ = try book.card(job: 3, manner: english)
            Issue.record("there is no job 3")
        } catch Refusal.MendInput(let sentence) {
            #expect(sentence == "There is no such job.")
        }
    }

    @Test func oneProgramWritesABook() throws {
        let book = try open()
        do {
            _ = try open()
            Issue.record("two programs write one book")
        } catch Refusal.TryAgain {
            #expect(try book.jobs(manner: english) == [])
        }
    }

    @Test func aClosedBookSaysSo() throws {
        let book = try open()
        book.closeBook()
        book.closeBook()
        #expect(throws: Refusal.Closed) { try book.jobs(manner: english) }
    }

    @Test func twoThreadsMayAskAtOnce() async throws {
        let book = try open()
        let asked = try await withThrowingTaskGroup(of: Int.self) { group in
            for _ in 0..<2 {
                group.addTask { try (0..<500).reduce(0) { sum, _ in sum + (try book.jobs(manner: english).count) } }
            }
            return try await group.reduce(0, +)
        }
        #expect(asked == 0)
    }
}
