import Foundation
import LugbookCore

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

/// What a screen does not offer.
struct NotOffered: Error {
    let code: String
    let offered: [String]
}

extension [ScreenAction] {
    /// The action that has a code.
    func of(_ code: String) throws -> ScreenAction {
        guard let action = first(where: { $0.code == code }) else {
            throw NotOffered(code: code, offered: map(\.code))
        }
        return action
    }
}

extension Engine {
    /// Opens the book in a folder.
    static func open(in folder: String) async throws -> Engine {
        try await Engine.open(folder: folder, host: SteadyPhone(clockMs: 1_790_000_000_000), manner: english)
    }

    /// Taps an action with what is filled in.
    @discardableResult
    func tap(_ action: ScreenAction, _ entered: [String: String]) async throws -> Changed {
        try await act(
            token: action.token, entered: entered.map { Entered(code: $0, value: $1) }, manner: english)
    }

    /// Fills an empty book: a mechanic, and so many vehicles.
    func fill(vehicles: Int) async throws {
        try await tap(firstRun(manner: english).actions.of("add-person"), ["name": "Sam", "role": "mechanic"])
        for number in 0..<vehicles {
            let add = try await book(search: "", manner: english).actions.of("add-vehicle")
            try await tap(add, ["name": "Truck \(number + 1)", "model": "Hauler 3500", "class": "car"])
        }
    }
}
