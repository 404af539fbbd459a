import LugbookCore
import Testing

private struct Wheel {
    let hubFace: String?
    let nuts: UInt32
    let letters: [PositionLetters]
}

/// A pattern that fits anything would let every journey pass.
@Suite struct PatternTests {
    func fits(_ pattern: String, _ value: String) throws -> Bool {
        try differences(Json(parsing: pattern), Json(parsing: value)).isEmpty
    }

    @Test func aRecordIsReadByItsFields() throws {
        let value = Json(of: Wheel(hubFace: nil, nuts: 4_000_000_000, letters: [.frontFirst]))
        #expect(
            try value == Json(parsing: #"{"hub_face": null, "letters": ["front-first"], "nuts": 4000000000}"#)
        )
        #expect(Json(of: Language.spanish) == .text("spanish"))
        #expect(Json(of: Refusal.Closed)["kind"] == .text("closed"))
    }

    @Test func whatFitsFits() throws {
        #expect(try fits(#"{"a": 1}"#, #"{"a": 1.0, "b": 2}"#))
        #expect(try fits(#"[{"a": null}, true]"#, #"[{"a": null}, true]"#))
        #expect(try fits(#"{"has": [3, 1]}"#, "[1, 2, 3]"))
        #expect(try fits(#"{"count": 2}"#, #"["x", "y"]"#))
    }

    @Test func whatDiffersIsFound() throws {
        #expect(try !fits(#"{"a": 1}"#, #"{"a": 2}"#))
        #expect(try !fits(#"{"a": null}"#, "{}"))
        #expect(try !fits(#"{"a": 1}"#, #"{"a": "1"}"#))
        #expect(try !fits("true", "\"true\""))
        #expect(try !fits("null", "0"))
        #expect(try !fits("[1]", "[1, 2]"))
        #expect(try !fits("[]", "[1]"))
        #expect(try !fits(#"{"has": [4]}"#, "[1, 2, 3]"))
        #expect(try !fits(#"{"count": 1}"#, "[]"))
        #expect(try !fits("\"a\"", "[]"))
    }
}
