#if LUGBOOK_FIGURES
    import Foundation
    import LugbookCore
    import Testing

    /// What crossing costs in Swift. No test: `tests/figures` runs it, over the release library.
    @Suite struct Figures {
        let scratch: Scratch

        init() throws { scratch = try Scratch() }

        func timed(_ what: String, _ times: Int, _ call: (Int) async throws -> Void) async throws {
            var took: [Double] = []
            for turn in 0..<times {
                let begun = DispatchTime.now().uptimeNanoseconds
                try await call(turn)
                took.append(Double(DispatchTime.now().uptimeNanoseconds - begun) / 1e6)
            }
            took.sort()
            let at = { (share: Double) in
                let text = String(format: "%.4f", took[Int(share * Double(times - 1))])
                return String(repeating: " ", count: max(0, 9 - text.count)) + text
            }
            let name = what.padding(toLength: 30, withPad: " ", startingAt: 0)
            print("Swift:  \(name) \(at(0.5)) ms in the middle, \(at(0.95)) ms p95 of \(times)")
        }

        func fill(_ book: Engine, upTo vehicles: Int) async throws {
            let there = try await book.book(search: "", manner: english).vehicles.count
            for number in there..<vehicles {
                let add = try await book.book(search: "", manner: english).actions.of("add-vehicle")
                try await book.tap(add, ["name": "Truck \(number)", "model": "Hauler 3500", "class": "car"])
            }
        }

        @Test func printed() async throws {
            let environment = ProcessInfo.processInfo.environment
            if let library = environment["LUGBOOK_SHARED"] {
                try await timed("library load", 1) { _ in
                    guard dlopen(library, RTLD_NOW) != nil else { throw CocoaError(.fileNoSuchFile) }
                }
            }
            let book = try await Engine.open(in: scratch.path)
            let task = try book.start(token: "", entered: [], manner: english)
            for _ in 0..<20_000 { _ = try task.progress() }
            try await timed("empty call", 20_000) { _ in _ = try task.progress() }
            for _ in 0..<2_000 { try await book.resume(manner: english) }
            try await timed("empty call, on its own thread", 5_000) { _ in try await book.resume(manner: english) }
            try await book.fill(vehicles: 0)
            try await fill(book, upTo: 50)
            for _ in 0..<200 { _ = try await book.book(search: "", manner: english) }
            try await timed("screen of 50 rows", 1_000) { _ in _ = try await book.book(search: "", manner: english) }
            let open = try await book.vehicle(name: "Truck 1", manner: english).actions.of("open-tread-and-age-check")
            try await book.tap(open, [:])
            let photos = try FileManager.default.contentsOfDirectory(atPath: environment["LUGBOOK_PHOTOS"] ?? ".")
                .filter { $0.hasSuffix(".jpg") }
            try await timed("photo by path", photos.count) { turn in
                let bay = try await book.bay(step: "sidewall", at: "FL", manner: english)
                let file = Entered(code: "file", value: "\(environment["LUGBOOK_PHOTOS"] ?? ".")/\(photos[turn])")
                let taken = try book.start(token: bay.actions.of("photo").token, entered: [file], manner: english)
                _ = try await taken.outcome()
            }
            try await fill(book, upTo: 500)
            for _ in 0..<50 { _ = try await book.book(search: "", manner: english) }
            try await timed("screen of 500 rows", 300) { _ in _ = try await book.book(search: "", manner: english) }
            try await book.closeBook()
        }
    }
#endif
