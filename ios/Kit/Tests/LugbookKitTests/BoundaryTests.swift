import Foundation
import LugbookCore
import Testing

/// What holds of the boundary itself, whatever crosses it.
@Suite struct BoundaryTests {
    let scratch: Scratch

    init() throws { scratch = try Scratch() }

    /// With an open book that is closed at the end.
    func withBook(_ check: (Engine) async throws -> Void) async throws {
        let book = try await Engine.open(in: scratch.path)
        try await check(book)
        try await book.closeBook()
    }

    func refused(_ kind: String, _ call: () async throws -> Any) async throws {
        do {
            let answer = try await call()
            Issue.record("it is not refused: \(answer)")
        } catch let refusal as Refusal {
            #expect(Json(of: refusal)["kind"] == .text(kind))
        }
    }

    @Test func aNewBookIsEmpty() async throws {
        try await withBook { book in
            let shelf = try await book.book(search: "", manner: english)
            let first = try await book.firstRun(manner: english)
            #expect(shelf.vehicles.isEmpty)
            #expect(!first.over)
        }
    }

    @Test func aRefusalHasItsKindAndItsSentence() async throws {
        try await withBook { book in
            do {
                _ = try await book.card(job: 3, manner: english)
                Issue.record("there is no job 3")
            } catch Refusal.MendInput(let sentence, _) {
                #expect(sentence == "There is no such job.")
            }
        }
    }

    @Test func oneProgramWritesABook() async throws {
        try await withBook { _ in
            try await refused("try-again") { try await Engine.open(in: scratch.path) }
        }
    }

    @Test func aTapIsTakenOnce() async throws {
        try await withBook { book in
            let add = try await book.firstRun(manner: english).actions.of("add-person")
            let added = try await book.tap(add, ["name": "Sam", "role": "mechanic"])
            #expect(added.entries.count == 1)
            try await refused("mend-input") { try await book.tap(add, ["name": "Sam", "role": "mechanic"]) }
        }
    }

    @Test func aClosedBookSaysSo() async throws {
        try await withBook { book in
            let add = try await book.firstRun(manner: english).actions.of("add-person")
            try await book.closeBook()
            try await book.closeBook()
            try await refused("closed") { try await book.book(search: "", manner: english) }
            try await refused("closed") { try await book.tap(add, ["name": "Sam", "role": "mechanic"]) }
            try await refused("closed") { try await book.pause(manner: english) }
            try await refused("closed") { try await book.resume(manner: english) }
            try await refused("closed") {
                try await book.start(token: add.token, entered: [], manner: english).outcome()
            }
        }
    }

    @Test func aPausedBookIsOpenedByTheNextCall() async throws {
        try await withBook { book in
            try await book.fill(vehicles: 1)
            try await book.pause(manner: english)
            let shelf = try await book.book(search: "", manner: english)
            #expect(shelf.vehicles.count == 1)
        }
    }

    @Test func twoTasksMayAskAndTapAtOnce() async throws {
        try await withBook { book in
            try await book.fill(vehicles: 0)
            let taken = try await withThrowingTaskGroup(of: Int.self) { group in
                for name in ["Left", "Right"] {
                    group.addTask {
                        var taken = 0
                        for number in 1...20 {
                            let add = try await book.book(search: "", manner: english).actions.of("add-vehicle")
                            let entered = ["name": "\(name) \(number)", "model": "Hauler 3500", "class": "car"]
                            do {
                                try await book.tap(add, entered)
                                taken += 1
                            } catch Refusal.MendInput {
                                // The other task was first: this screen was no longer true.
                            }
                        }
                        return taken
                    }
                }
                return try await group.reduce(0, +)
            }
            #expect(taken >= 20)
            let shelf = try await book.book(search: "", manner: english)
            #expect(shelf.vehicles.count == taken)
        }
    }
}
