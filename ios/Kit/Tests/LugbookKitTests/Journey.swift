import Foundation
import LugbookCore

/// A phone whose clock goes on by a second each time it is read, and whose random bytes are counted.
///
/// While it is held, whoever reads its clock waits. Work reads it before it does anything, so what was started
/// can be stopped before its first piece, however fast it is.
final class SteadyPhone: PhoneHost, @unchecked Sendable {
    private let held = NSRecursiveLock()
    private var clock: Int64
    private var drawn: UInt64 = 0

    init(clockMs: Int64) { clock = clockMs }

    func clockMs() -> Int64 {
        held.withLock {
            defer { clock += 1_000 }
            return clock
        }
    }

    func random() -> Data {
        held.withLock {
            drawn += 1
            return withUnsafeBytes(of: drawn.bigEndian) { Data($0) } + [0, 0]
        }
    }

    func secret() -> Data? { Data(repeating: 4, count: 32) }

    func models() -> String? { nil }

    func log(line: String) {}

    func whileHeld<Answer>(_ work: () throws -> Answer) rethrows -> Answer { try held.withLock(work) }
}

let english = Manner(language: .english, units: .asRead, letters: .frontFirst, decimal: nil)

/// What is wrong with a journey as it is written.
struct BadJourney: Error, CustomStringConvertible {
    let description: String
}

/// A step that did not come out as told.
struct OtherOutcome: Error, CustomStringConvertible {
    let step: Int
    let told: Json
    let differences: [String]

    var description: String { "step \(step) \(told)\n" + differences.joined(separator: "\n") }
}

/// What a journey does, step by step, in a folder of its own.
final class Journey {
    private let told: Json
    private let folder: URL
    private let phone: SteadyPhone
    private var manner: Manner
    private var engine: Engine

    init(_ told: Json, in folder: URL) async throws {
        try only(told, ["name", "source", "by_hand", "clock_ms", "manner", "steps"])
        guard let clock = told["clock_ms"]?.amount else { throw BadJourney(description: "clock_ms is missing") }
        self.told = told
        self.folder = folder
        phone = SteadyPhone(clockMs: Int64(clock))
        manner = try Manner(named: told["manner"] ?? .null)
        engine = try await Engine.open(folder: folder.appending(path: "book").path, host: phone, manner: manner)
    }

    /// Goes all of it. Throws at the first step that does not come out as told, and names it.
    func go() async throws {
        for (at, step) in (told["steps"]?.elements ?? []).enumerated() {
            let differences: [String]
            do { differences = try await take(step) } catch { differences = ["\(error)"] }
            if !differences.isEmpty { throw OtherOutcome(step: at + 1, told: step, differences: differences) }
        }
        try await engine.closeBook()
    }

    /// Takes a step, and tells what differs from what it expects.
    private func take(_ step: Json) async throws -> [String] {
        let kinds = ["screen", "act", "start", "manner", "reopen", "pause", "resume", "photo", "folder", "out"]
        let named = kinds.filter { step[$0] != nil }
        guard named.count == 1, let kind = named.first else {
            throw BadJourney(description: "one of \(kinds) in a step")
        }
        switch kind {
        case "screen":
            try only(step, ["screen", "of", "expect", "refused"])
            return try await held(step) { try await self.screen(step["screen"]?.words ?? "", of: step["of"]) }
        case "act", "start":
            try only(step, [kind, "on", "of", "at", "enter", "expect", "refused", "offered", "cancel_at"])
            return try await act(step, kind)
        case "manner": manner = try Manner(named: step["manner"] ?? .null)
        case "reopen":
            try await engine.closeBook()
            engine = try await Engine.open(folder: folder.appending(path: "book").path, host: phone, manner: manner)
        case "pause": try await engine.pause(manner: manner)
        case "resume": try await engine.resume(manner: manner)
        case "photo": try draw(step["photo"] ?? .null)
        case "out":
            try only(step, ["out", "begins"])
            return try await out(step)
        default:
            let made = folder.appending(path: step["folder"]?.words ?? "")
            try FileManager.default.createDirectory(at: made, withIntermediateDirectories: false)
        }
        try only(step, [kind])
        return []
    }

    /// Writes a file out, and tells when it begins otherwise.
    private func out(_ step: Json) async throws -> [String] {
        let kinds: [String: Outgoing] = [
            "card": .card, "card-paper": .cardPaper, "history": .history, "readings": .readings, "jobs": .jobs,
        ]
        guard let what = kinds[step["out"]?.words ?? ""], let begins = step["begins"]?.words else {
            throw BadJourney(description: "\(step) is not written out here")
        }
        let nothing = OutgoingOf(job: nil, vehicle: nil, person: nil, photo: nil, perYear: nil, a4: false)
        let file = try await engine.writeOut(what: what, of: nothing, folder: folder.path, manner: manner)
        let found = try Data(contentsOf: URL(filePath: file))
        return found.starts(with: Data(begins.utf8)) ? [] : ["\(file) begins otherwise"]
    }

    private func act(_ step: Json, _ kind: String) async throws -> [String] {
        let shown = try await screen(step["on"]?.words ?? "bay", of: step["of"])
        let actions = shown["actions"]?.elements ?? []
        let offered = actions.filter { $0["code"] == step[kind] && (step["at"] == nil || $0["at"] == step["at"]) }
        if step["offered"] == .flag(false) { return offered.map { "it is offered: \($0)" } }
        guard let action = offered.first, let token = action["token"]?.words else {
            return ["it is not offered: \(actions.map { $0["code"]?.words ?? "" })"]
        }
        let entered = try (step["enter"]?.entries ?? [:]).map { Entered(code: $0, value: try entry($1)) }
        return try await held(step) {
            if kind == "act" && action["pace"] == .text("quick") {
                return Json(of: try await self.engine.act(token: token, entered: entered, manner: self.manner))
            }
            guard step["cancel_at"] == nil || step["cancel_at"] == .number(0) else {
                throw BadJourney(description: "a task is stopped as it begins")
            }
            let task = try self.phone.whileHeld {
                let task = try self.engine.start(token: token, entered: entered, manner: self.manner)
                if step["cancel_at"] != nil { try task.cancel() }
                return task
            }
            return Json(of: try await task.outcome())
        }
    }

    /// Holds what comes out against what the step expects: an answer, or a refusal.
    private func held(_ step: Json, _ outcome: () async throws -> Json) async throws -> [String] {
        let refused = step["refused"]
        let answer: Json
        do {
            answer = try await outcome()
        } catch let refusal as Refusal {
            let refusal = Json(of: refusal)
            return refused.map { differences($0, refusal) } ?? ["refused: \(refusal)"]
        }
        if refused != nil { return ["it is not refused: \(answer)"] }
        return step["expect"].map { differences($0, answer) } ?? []
    }

    private func entry(_ value: Json) throws -> String {
        guard let text = value.words else { throw BadJourney(description: "\(value) is no text to enter") }
        guard let prefix = ["photo:", "folder:"].first(where: text.hasPrefix) else { return text }
        return folder.appending(path: String(text.dropFirst(prefix.count))).path
    }

    private func draw(_ photo: Json) throws {
        try only(photo, ["name", "width", "height", "shade"])
        guard let name = photo["name"]?.words, let width = photo["width"]?.amount, let height = photo["height"]?.amount,
            let shade = photo["shade"]?.amount
        else { throw BadJourney(description: "\(photo) is no photo") }
        let picture = flatPicture(width: Int(width), height: Int(height), shade: UInt8(shade))
        try picture.write(to: folder.appending(path: name))
    }

    private func screen(_ name: String, of: Json?) async throws -> Json {
        let job = (of?["job"]?.amount).map { UInt32($0) }
        let vehicle = of?["vehicle"]?.words ?? ""
        let at = of?["at"]?.words
        let shown: Any =
            switch name {
            case "book": try await engine.book(search: of?["search"]?.words ?? "", manner: manner)
            case "crew": try await engine.crew(manner: manner)
            case "bay": try await engine.bay(step: of?["step"]?.words, at: at, manner: manner)
            case "vehicle": try await engine.vehicle(name: vehicle, manner: manner)
            case "tire": try await engine.tire(vehicle: vehicle, at: at ?? "", manner: manner)
            case "history": try await engine.history(vehicle: vehicle, manner: manner)
            case "plan": try await engine.plan(manner: manner)
            case "lifts": try await engine.lifts(manner: manner)
            case "findings": try await engine.findings(job: job, manner: manner)
            case "log": try await engine.log(job: job, manner: manner)
            case "card": try await engine.card(job: job, manner: manner)
            case "bench": try await engine.bench(manner: manner)
            case "settings": try await engine.settings(manner: manner)
            case "first-run": try await engine.firstRun(manner: manner)
            case "backups": try await engine.backups(manner: manner)
            case "photos": try await engine.photos(job: job, manner: manner)
            case "why": try await engine.why(decision: of?["decision"]?.words ?? "", manner: manner)
            case "verify": try await engine.verify(manner: manner)
            default: throw BadJourney(description: "there is no screen \(name)")
            }
        return Json(of: shown)
    }
}

private func only(_ told: Json, _ keys: [String]) throws {
    let more = Set(told.entries.keys).subtracting(keys)
    if !more.isEmpty { throw BadJourney(description: "what is \(more)?") }
}

extension Manner {
    /// The manner that a journey names.
    fileprivate init(named: Json) throws {
        try only(named, ["language", "units", "letters", "decimal"])
        self.init(
            language: try one(of: [.english, .spanish], named["language"]),
            units: try one(of: [.asRead, .metric, .us], named["units"]),
            letters: try one(of: [.frontFirst, .sideFirst], named["letters"]),
            decimal: try named["decimal"].map { try one(of: [.point, .comma], $0) }
        )
    }
}

private func one<Case>(of all: [Case], _ named: Json?) throws -> Case {
    guard let found = all.first(where: { Json(of: $0) == named }) else {
        throw BadJourney(description: "\(named ?? .null) is none of \(all)")
    }
    return found
}
