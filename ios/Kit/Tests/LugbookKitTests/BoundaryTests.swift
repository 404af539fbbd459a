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

    @Test func aReaderOfThePhonesOwnReadsPhotos() async throws {
        try await withBook { book in
            try await book.fill(vehicles: 1)
            let vehicle = try await book.vehicle(name: "Truck 1", manner: english)
            try await book.tap(vehicle.actions.of("open-tread-and-age-check"), [:])
            let picture = scratch.path + "/wall.png"
            try flatPicture(width: 640, height: 200, shade: 120).write(to: URL(filePath: picture))
            let photo = try await book.bay(step: "sidewall-photo", at: "FL", manner: english).actions.of("photo")
            let file = [Entered(code: "file", value: picture)]
            _ = try await book.start(token: photo.token, entered: file, manner: english).outcome()
            try book.readBy(reader: OneText())
            let read = try await book.bay(step: "sidewall", at: "FL", manner: english).actions.of("read-photo")
            _ = try await book.start(token: read.token, entered: [], manner: english).outcome()
            let sight = try #require(try await book.bay(step: "sidewall", at: "FL", manner: english).sight)
            let size = try #require(sight.lines.first { $0.code == "printed-size" })
            #expect(size.suggestions.first?.text == "LT245/75R16")
        }
    }
}

/// A reader that the phone brings: it says one text on the first tile, and nothing on others.
private final class OneText: TextReader, @unchecked Sendable {
    private var tiles = 0

    func name() -> String { "phone reader 3" }

    func read(tile: TextTile) -> [TextOnTile] {
        tiles += 1
        guard tiles == 1 else { return [] }
        let (x, y) = (Float(tile.width) / 2, Float(tile.height) / 2)
        return [TextOnTile(text: "LT245/75R16 120/116S", confidence: 0.97, x: x, y: y, width: 160, height: 24)]
    }
}
