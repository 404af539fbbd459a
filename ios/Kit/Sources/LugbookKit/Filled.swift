import LugbookCore

/// What is typed in the fields of one action, kept until the core has taken it.
public struct Filled: Equatable, Sendable {
    private var typed: [String: String] = [:]

    public init() {}

    /// What a field holds: what was typed, else what the core filled in.
    public subscript(field: EntryField) -> String {
        get { typed[field.code] ?? field.filled ?? "" }
        set { typed[field.code] = newValue }
    }

    /// Whether anything was typed.
    public var isEmpty: Bool { typed.isEmpty }

    /// Everything that was typed, as the core takes it; a field that is left empty says nothing.
    public func entered(_ fields: [EntryField]) -> [Entered] {
        fields.map { Entered(code: $0.code, value: self[$0]) }.filter { value in
            value.value.contains { !$0.isWhitespace }
        }
    }

    /// Without what must not be kept when the app goes away: codes and passphrases.
    public func withoutSecrets(_ fields: [EntryField]) -> Filled {
        var kept = self
        for field in fields where field.kind == .secret { kept.typed[field.code] = nil }
        return kept
    }

    /// What was said before, to be said again.
    mutating func take(_ said: [Entered]) {
        for entered in said { typed[entered.code] = entered.value }
    }
}
