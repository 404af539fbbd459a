import LugbookCore
import LugbookKit
import Testing

/// What views show of the bay, and what becomes of what was typed.
@MainActor @Suite struct BayStateTests {
    let scratch: Scratch

    init() throws { scratch = try Scratch() }

    /// The bay of a book with a job in it, at a step that takes a reading.
    private func bay(_ check: (BayState) async throws -> Void) async throws {
        let book = try await Engine.open(in: scratch.path)
        try await book.fill(vehicles: 1)
        let open = try await book.vehicle(name: "Truck 1", manner: english).actions.of("open-tread-and-age-check")
        try await book.tap(open, [:])
        let state = BayState(engine: book, manner: english)
        await state.show(step: "odometer")
        try await check(state)
        try await book.closeBook()
    }

    private func reading(_ state: BayState) throws -> (ScreenAction, EntryField) {
        let action = try #require(state.screen).actions.of("odometer")
        return (action, try #require(action.fields.first { $0.code == "reading" }))
    }

    @Test func whatIsTypedStaysUntilTheCoreHasTakenIt() async throws {
        try await bay { state in
            let (action, field) = try reading(state)
            state.type("far", in: field, of: action)
            await state.tap(action)
            #expect(state.refusal != nil)
            let (again, _) = try reading(state)
            #expect(state.filled(again)[field] == "far")

            state.type("48210 mi", in: field, of: again)
            await state.tap(again)
            #expect(state.refusal == nil)
            #expect(state.filled(again).isEmpty)
            #expect(state.screen?.step?.step != "odometer")
        }
    }

    @Test func anUndoReturnsToTheFilledStep() async throws {
        try await bay { state in
            let (action, field) = try reading(state)
            state.type("48210 mi", in: field, of: action)
            await state.tap(action)
            await state.tap(try #require(state.screen).actions.of("undo"))
            #expect(state.screen?.step?.step == "odometer")
            let (again, same) = try reading(state)
            #expect(state.filled(again)[same] == "48210 mi")
        }
    }

    @Test func secretsAreNotKeptWhenTheAppGoesAway() async throws {
        let book = try await Engine.open(in: scratch.path)
        let lock = try await book.backups(manner: english).actions.first {
            $0.fields.contains { $0.kind == .secret }
        }
        let fields = try #require(lock).fields
        var filled = Filled()
        for field in fields { filled[field] = "quite secret" }
        let kept = filled.withoutSecrets(fields)
        #expect(fields.filter { $0.kind == .secret }.allSatisfy { kept[$0].isEmpty })
        try await book.closeBook()
    }
}
