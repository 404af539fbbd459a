import Foundation
import LugbookCore

/// JSON, as journeys are written in it.
enum Json: Equatable, Decodable {
    case null
    case flag(Bool)
    case number(Double)
    case text(String)
    case list([Json])
    case record([String: Json])

    init(from decoder: Decoder) throws {
        let one = try decoder.singleValueContainer()
        if one.decodeNil() {
            self = .null
        } else if let flag = try? one.decode(Bool.self) {
            self = .flag(flag)
        } else if let number = try? one.decode(Double.self) {
            self = .number(number)
        } else if let text = try? one.decode(String.self) {
            self = .text(text)
        } else if let list = try? one.decode([Json].self) {
            self = .list(list)
        } else {
            self = .record(try one.decode([String: Json].self))
        }
    }

    init(parsing text: String) throws {
        self = try JSONDecoder().decode(Json.self, from: Data(text.utf8))
    }

    /// A record of the library: fields in snake case, the names of an enum in kebab case.
    init(of value: Any) {
        switch value {
        case let json as Json: self = json
        case let flag as Bool: self = .flag(flag)
        case let text as String: self = .text(text)
        case let number as Double: self = .number(number)
        case let number as any BinaryInteger: self = .number(Double(number))
        default: self = Json(reflecting: value)
        }
    }

    private init(reflecting value: Any) {
        let mirror = Mirror(reflecting: value)
        switch mirror.displayStyle {
        case .optional:
            self = mirror.children.first.map { Json(of: $0.value) } ?? .null
        case .collection:
            self = .list(mirror.children.map { Json(of: $0.value) })
        case .enum:
            // A case that holds something: a refusal.
            if let held = mirror.children.first {
                var fields = Json.fields(of: held.value)
                fields["kind"] = .text(kebab(held.label ?? ""))
                self = .record(fields)
            } else if value is any Error {
                self = .record(["kind": .text(kebab("\(value)"))])
            } else {
                self = .text(kebab("\(value)"))
            }
        case .tuple where mirror.children.isEmpty:
            self = .null
        default:
            self = .record(Json.fields(of: value))
        }
    }

    private static func fields(of value: Any) -> [String: Json] {
        var fields: [String: Json] = [:]
        for field in Mirror(reflecting: value).children {
            fields[snake(field.label ?? "")] = Json(of: field.value)
        }
        return fields
    }

    subscript(key: String) -> Json? {
        if case .record(let fields) = self { fields[key] } else { nil }
    }

    /// The text, where it is one.
    var words: String? {
        if case .text(let text) = self { text } else { nil }
    }

    var amount: Double? {
        if case .number(let number) = self { number } else { nil }
    }

    var elements: [Json] {
        if case .list(let list) = self { list } else { [] }
    }

    var entries: [String: Json] {
        if case .record(let fields) = self { fields } else { [:] }
    }
}

private func snake(_ name: String) -> String {
    var words = ""
    for letter in name {
        if letter.isUppercase && !words.isEmpty { words.append("_") }
        words += letter.lowercased()
    }
    return words
}

private func kebab(_ name: String) -> String { snake(name).replacingOccurrences(of: "_", with: "-") }

/// Where a value differs from a pattern; nothing when it fits.
///
/// An object fits when each of its keys does, a list when each of its elements does and there are no more. In place
/// of a list may stand `{"has": [...]}`, of which each is fitted by some element, or `{"count": 3}`.
func differences(_ pattern: Json, _ value: Json, at path: String = "") -> [String] {
    switch (pattern, value) {
    case (.record(let wanted), .list(let list)) where Array(wanted.keys) == ["count"]:
        return wanted["count"] == .number(Double(list.count))
            ? [] : ["\(path): expected \(wanted), found \(list.count): \(list)"]
    case (.record(let wanted), .list(let list)) where Array(wanted.keys) == ["has"]:
        return (wanted["has"]?.elements ?? [])
            .filter { one in !list.contains { differences(one, $0).isEmpty } }
            .map { "\(path): nothing fits \($0) in \(list)" }
    case (.record(let wanted), .record(let fields)):
        return wanted.flatMap { key, one in
            fields[key].map { differences(one, $0, at: "\(path).\(key)") }
                ?? ["\(path): there is no \(key) in \(fields)"]
        }
    case (.list(let wanted), .list(let list)) where wanted.count == list.count:
        return zip(wanted, list).enumerated().flatMap { differences($1.0, $1.1, at: "\(path)[\($0)]") }
    default:
        return pattern == value ? [] : ["\(path): expected \(pattern), found \(value)"]
    }
}
