import LugbookCore
import Observation

/// The bay as its views show it: the screen from the core, what is typed and not yet sent, what was refused, and how
/// far a piece of work is. It holds no rule: what can be tapped stands in the screen.
@MainActor @Observable
public final class BayState {
    /// The screen; none before the first answer.
    public private(set) var screen: BayScreen?
    /// Why the last tap was refused; what was typed stays.
    public private(set) var refusal: Refusal?
    /// What was understood at the last tap.
    public private(set) var said: [String] = []
    /// How far the work in hand is; none while nothing takes its time.
    public private(set) var progress: TaskProgress?
    /// A tap is being carried out.
    public private(set) var busy = false

    private var typed: [String: Filled] = [:]
    /// Where the person looks: the next step when no step is named.
    private var shown: (step: String?, at: String?)
    private var task: LongTask?
    private let engine: Engine
    private let manner: Manner

    public init(engine: Engine, manner: Manner) {
        self.engine = engine
        self.manner = manner
    }

    /// Shows the next step, or another one of the job.
    public func show(step: String? = nil, at: String? = nil) async {
        shown = (step, at)
        await refresh()
    }

    /// Asks the screen again.
    public func refresh() async {
        do { screen = try await engine.bay(step: shown.step, at: shown.at, manner: manner) } catch { refuse(error) }
    }

    /// What is typed for an action.
    public func filled(_ action: ScreenAction) -> Filled { typed[key(action)] ?? Filled() }

    /// Keeps what is typed in a field of an action.
    public func type(_ text: String, in field: EntryField, of action: ScreenAction) {
        typed[key(action), default: Filled()][field] = text
    }

    /// Carries out a tap. What was typed is forgotten once the core has taken it, and only then; what an undo took back
    /// is filled in again.
    public func tap(_ action: ScreenAction) async {
        guard !busy else { return }
        busy = true
        defer { busy = false }
        refusal = nil
        do {
            let changed = try await carryOut(action, filled(action).entered(action.fields))
            typed[key(action)] = nil
            said = changed.said
            if let again = changed.again {
                shown = (again.step, again.at)
                typed[key(again.code, again.at), default: Filled()].take(again.filled)
            } else if !changed.entries.isEmpty {
                shown = (nil, nil)
            }
        } catch {
            refuse(error)
        }
        await refresh()
    }

    /// Stops the work in hand before its next piece.
    public func stop() {
        do { try task?.cancel() } catch { refuse(error) }
    }

    private func carryOut(_ action: ScreenAction, _ entered: [Entered]) async throws -> Changed {
        guard action.pace == .long else {
            return try await engine.act(token: action.token, entered: entered, manner: manner)
        }
        let task = try engine.start(token: action.token, entered: entered, manner: manner)
        self.task = task
        defer {
            self.task = nil
            progress = nil
        }
        var now = try task.progress()
        while !now.over {
            progress = now
            now = try await task.nextProgress()
        }
        return try await task.outcome()
    }

    /// Anything else than a refusal can't come out of the core.
    private func refuse(_ error: any Error) { refusal = error as? Refusal }

    private func key(_ action: ScreenAction) -> String { key(action.code, action.at) }

    private func key(_ code: String, _ at: String?) -> String { "\(code) \(at ?? "")" }
}
