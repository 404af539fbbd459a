# The terminal's own lines. Commands, options and codes are the same in every language.
terminal-next = Next
terminal-type = Type
terminal-or = or
terminal-holds = held:
terminal-order = order:
terminal-wrench = wrench:
terminal-no-job = No job is open. Open one with “lugbook job open VEHICLE PROCEDURE”, or see “lugbook book”.
terminal-job-stands = Job { $job }, { $vehicle }: { $done } of { $of } steps done. Hands: { $hands }.
terminal-sample-reason = REASON
terminal-sample-label = door label
terminal-sample-page = MANUAL, PAGE
terminal-sample-file = FILE
terminal-sample-rack = RACK
terminal-sample-mark = MARK

terminal-done = done
terminal-skipped = skipped
terminal-ready = ready
terminal-held = held
terminal-corrected = (corrected){ " " }

terminal-book-in = Book in { $folder }
terminal-people = People
terminal-vehicles = Vehicles
terminal-tools = Tools
terminal-jobs = Jobs
terminal-archived = Put away
terminal-again = Again
terminal-nothing-to-undo = There is nothing to take back.
terminal-practice = , practice
terminal-book-whole = The book is whole: { $entries ->
    [one] 1 entry
   *[other] { $entries } entries
}, { $photos ->
    [one] 1 photo
   *[other] { $photos } photos
}, { $problems } problems.
terminal-book-damaged = The book is damaged: { $entries ->
    [one] 1 entry
   *[other] { $entries } entries
}, { $photos ->
    [one] 1 photo
   *[other] { $photos } photos
}, { $problems ->
    [one] 1 problem
   *[other] { $problems } problems
}.
terminal-proof-proven = Proven
terminal-proof-not-proven = Not proven
terminal-proof-refused = Does not hold
terminal-no-card = { $name } is no card's HTML file: give the file that “lugbook card --out” wrote.
terminal-device-short = Give the device as it stands on the paper copy: sixteen digits and letters in two groups.
terminal-no-key = This device's secret in { $name } can't be used, so nothing is sealed: { $why }. Move that file away to have a new one made.
terminal-key-damaged = it is not what this program wrote
terminal-card-written = Card written to { $file }
terminal-labels-written = Labels written to { $file }
terminal-history-written = History written to { $file }
terminal-calendar-written = Calendar written to { $file }
terminal-table-written = Table written to { $file }
terminal-not-allowed = Not allowed

# What a line lacks or has too much, as it was typed.
terminal-line-no-command-near = There is no command “{ $word }”: did you mean { $near }, or see “{ $command } --help”?
terminal-line-no-command = There is no command “{ $word }”: see “{ $command } --help”.
terminal-line-out-of-place = “{ $arg }” does not belong here: see “{ $command } --help”.
terminal-line-no-value = { $arg } needs a value: see “{ $command } --help”.
terminal-line-one-of = “{ $given }” will not do for { $arg }: give one of { $good }.
terminal-line-bad-value = “{ $given }” will not do for { $arg }: see “{ $command } --help”.
terminal-line-missing = { $command } needs { $arg }: see “{ $command } --help”.
terminal-line-what-to-do = { $command } needs to know what to do: see “{ $command } --help”.
terminal-line-once = { $arg } can be given once only: see “{ $command } --help”.
terminal-line-apart = { $arg } and { $other } do not go together: see “{ $command } --help”.
terminal-line-number-of-values = { $arg } has too few or too many values: see “{ $command } --help”.
terminal-line-not-text = What was typed is not text in UTF-8.
terminal-line-not-understood = That was not understood: see “{ $command } --help”.

# What can't be used or done. $why is what the system says.
terminal-not-json = The answer can't be written as JSON: { $why }.
terminal-not-written-out = The answer can't be written out: { $why }.
terminal-no-home = There is no home folder to keep the book in: name one with --book DIR.
terminal-no-time = “{ $given }” is no time: write it as 2026-11-24T09:15:00Z.
terminal-time-to-come = { $at } has not come yet: --at takes a time that is past.
terminal-no-book = There is no book in { $name }: begin one with “lugbook person add NAME”.
terminal-no-room = There is no room to write { $name }: make some and try again.
terminal-not-written = { $name } can't be written: { $why }.
terminal-not-made = { $name } can't be made: { $why }.
terminal-not-read = { $name } can't be read: { $why }.
terminal-not-csv = { $name } is no CSV: { $why }.
terminal-not-found = { $name } can't find itself: { $why }.
terminal-not-run = { $name } can't be run: { $why }.
terminal-not-waited-for = { $name } can't be waited for: { $why }.
terminal-no-file = { $name } is no file.
terminal-file-too-long = { $name } is longer than a question can be.
terminal-file-not-text = { $name } is not text in UTF-8.
terminal-folder-not-empty = { $name } is not empty: name an empty folder, or one to make.
terminal-no-folder = { $name } is no folder that can be used: name an empty one, or one to make.
terminal-no-nut = “{ $given }” is no nut: nuts are counted from 1 at the top.
terminal-no-click = “{ $given }” is no answer: end with moved or still.
terminal-no-state = “{ $given }” is no state: end with sound, watch, at-limit, below-limit or unsafe.
terminal-no-part = “{ $given }” is no part of a wheel.
terminal-no-adapter = “{ $given }” is no adapter: write "12 in + 2 in @ 90".
terminal-no-printed-torque = “{ $given }” is no torque as a manual prints it: write "125..150 N.m" or "100 ft.lb".
terminal-no-accuracy = “{ $given }” is no accuracy: write it as 4%.

# What a size says.
terminal-size = Size
terminal-diameter = Diameter
terminal-diameter-not-known = not known from this size
terminal-sidewall-height = Sidewall height
terminal-service = Service
terminal-load = Load
terminal-speed = Speed
terminal-tin = DOT
terminal-made = Made
terminal-diameter-mm = Diameter, mm
terminal-difference = Difference, %
terminal-true-at-100 = True at 100
terminal-not-known = not known
terminal-no-size = There is no size in “{ $given }”.
terminal-no-size-next = Type it like 225/45R17 91W.
terminal-no-size-no-tin = There is no size and no DOT number in this text.
terminal-no-size-no-tin-next = Type the size first, such as 225/45R17 91W, then DOT and its number.
terminal-two-sizes = Two sizes are compared.

# The demo.
terminal-demo-introduction = An invented visit: Wren Tolliver, a mobile tech, rotates the tires of a light truck in an orchard yard, with one jack, four stands and an electric gun. Each line that begins with “lugbook” was run as a command of its own, with LUGBOOK_BOOK naming the book.
terminal-demo-type-them = To type them yourself on a new book, from this folder:
terminal-demo-killed = Here the program was killed (SIGKILL) while it wrote the next photo.
terminal-demo-stopped = The visit stopped at “{ $line }”: { $why }
terminal-demo-card = The card:
terminal-demo-book = The book:
terminal-demo-try = Open the card in a browser. Then try:
terminal-demo-truck = Orchard truck
terminal-limits-book = Book
terminal-limits-job = This job
terminal-photo-written = Photo written to { $file }
terminal-sample-name = NAME
terminal-also = also

terminal-backup-how = Type: lugbook backup into FOLDER
terminal-no-passphrase = Give the passphrase with “--passphrase-file FILE”: nobody can be asked here.
terminal-passphrase = the passphrase
terminal-passphrase-ask = Passphrase:
terminal-passphrase-again = The same again:
terminal-passphrase-differs = The two passphrases differ. Nothing was changed. Type it again.
terminal-logbook-written = Logbook written to { $file }
terminal-why-rule = Rule
terminal-why-for = For it
terminal-why-against = Against it, or to know
terminal-why-source = Source
terminal-ask-code = Code of { $name }:
terminal-ask-old-code = Old code:
terminal-ask-new-code = New code:
terminal-ask-code-again = New code again:
terminal-no-code-read = The code can't be read: { $why }.
terminal-no-code = No code was given: type it when it is asked for, or pipe it in on a line of its own.
terminal-codes-differ = The two codes are not the same: set it again.
terminal-nothing-waits = Nothing waits for an instructor.
terminal-sample-answer = ANSWER
terminal-bundle-written = Bundle written to { $file }
terminal-bundle-made = Made on { $day }: { $entries } entries, { $photos } photos.

# Reading photos.
terminal-date = Date
terminal-molded-words = Words
terminal-arrow = Arrow
terminal-arrow-left = for the vehicle's left side ({ $odds } %)
terminal-arrow-right = for the vehicle's right side ({ $odds } %)
terminal-chalk = Chalk
terminal-nothing-read = not read
terminal-no-circle = “{ $given }” is no circle: give middle across, middle down and radius in pixels, such as 2010,1480,1320.
terminal-one-folder = Name one folder, the one that holds the photos of the table.
terminal-score-kind = Kind
terminal-score-field = Field
terminal-score-right-first = Right first
terminal-score-in-three = In three
terminal-score-within-one = Within one letter
terminal-score-confident-wrong = Confident and wrong
terminal-score-odds = Odds
terminal-score-readings = Readings
terminal-score-right = Right
terminal-score-times = { $photos } photos; a first suggestion after { $first } ms at the median, all after { $median } ms, { $worst } ms at most; { $false } words that do not stand there; { $nothing } sure readings of what can't be seen.
