# What a command came to.
said-person = { $name } is in the book.
said-vehicle = { $name } is in the book, with a tire at each place.
said-tool = { $name } is among the tools.
said-job-opened = Job { $job } is open: { $vehicle }, { $title }.
said-practice = This is a practice job. It stays out of wear, due dates and history.
said-parked = Job { $job } is parked. Nothing of it is lost.
said-closed = Job { $job } is ended without a signature. Its card says so.
said-signed = { $name } signed job { $job }.
said-declined = The customer declined. Nothing may be taken apart.
trouble-whose-signature = Say whose signature this is.
trouble-signature-drawn = The drawn signature can’t be read. Clear it and sign again.
trouble-signature-long = The drawn signature has too many strokes. Clear it and sign again.
said-unit-clash = The page contradicts itself: { $first } is not { $second }. Use the one in the unit of your wrench, and ask the maker.
said-torque-unknown = The torque is not known. The final gate stays shut until it is, or is opened with a reason.
said-placard-unknown = The placard is not known. Set pressures only from the vehicle's own label or manual.
said-photo = Photo { $number } is kept.
said-photo-duplicate = The same photo was here already. It is kept once.
said-mark = The tire is marked { $mark }.
said-recheck = Tell the driver: recheck the nuts after { $after }.
said-gate-opened = The gate is open. The card will show the reason.
said-corrected = Line { $line } is corrected. Both values stay on the card.
said-withdrawn = Line { $line } is taken back. It stays in the book.
said-finding-photo = Take a photo of it.
said-unsafe = Unsafe: do not drive. Tell the customer before anything else.
said-back-off = It clicked without moving, so it is not proven. Back it off a quarter turn and tighten it again.
said-held = It clicked without moving: it held.
said-moved = It moved. This is recorded. Recheck again after the next miles.
said-below-placard = That is below the placard, { $placard }. A cold tire is never set below it.

said-spare-no-limit = A temporary spare has a speed limit. Read it on the spare or in the manual, and tell the driver.
said-set-from = The set lies in { $racks }. Read each label before it goes to its corner.
said-labels = Print the labels, one for each stored wheel.

next-in-the-van = This is answered in the van, away from the road.
next-nothing = All steps are done.

# What things are called in a refusal.
what-name = the name
what-model = the model
what-phone = the phone number
what-plate = the plate
what-source = the source
what-torque = the torque
what-condition = the thread condition
what-lift-points = the lift points
what-reason = the reason
what-complaint = the complaint
what-damage = the damage
what-mark = the mark
what-note = the note
what-rack = the rack
what-sensor = the sensor number

trouble-empty = Say { $what }: nothing was given.
trouble-too-long = Keep { $what } under { $most } characters.
trouble-control = Type { $what } in plain letters: it has signs that can't be printed.
trouble-no-person = Nobody is in the book yet. Add yourself first.
trouble-which-person = Say who you are: { $names }.
trouble-unknown-person = “{ $given }” is not in the book. Known: { $names }.
trouble-name-taken = “{ $name }” is in the book already. Choose another name.
trouble-no-vehicle = “{ $given }” is not in the book. Add the vehicle first.
trouble-unknown-vehicle = “{ $given }” is not in the book. Known: { $names }.
trouble-which-vehicle = Name the vehicle: no job is open.
trouble-no-job = No job is open. Open one first.
trouble-no-flat = There is no spare to put on at { $place }. Name a wheel on the road, on a vehicle that carries a spare.
trouble-order-begun = The vehicle has been raised in this job: finish these moves, or end the job, before that is said anew.
trouble-no-order = This procedure has an order of its own. Its next step says what to do.
trouble-order-waits = There is no order of lifts yet: choose the moves and name the gear first.
trouble-no-wear = No tread was measured with an odometer figure yet.
trouble-job-parked = No job is open. Resume the parked one, or open another.
trouble-no-such-job = There is no such job.
trouble-recheck-untold = No recheck was told in this job. Tell the driver first.
trouble-unprintable = The PDF can’t be made. Report this: { $why }
trouble-per-year = “{ $given }” a year gives no date within fifty years. Give what the owner drives.
trouble-bay-taken = Job { $job } is open. Sign, park or end it first.
trouble-nothing-parked = There is no such parked job.
trouble-procedure = “{ $given }” is not a procedure. Known: { $known }.
trouble-built-in = “{ $id }” is a built-in procedure. Give yours an id of its own.
trouble-procedure-gone = The procedure “{ $id }” of this job is not here. Add its file again.
trouble-circumstance = Say which it is: { $known }.
trouble-unknown-circumstance = “{ $given }” does not fit here. Known: { $known }.
trouble-no-place = “{ $given }” is not a place on this vehicle. Its places: { $places }.
trouble-spare-has-no-hub = The spare sits on its carrier: there are no wheel nuts.
trouble-no-axle = This vehicle has { $count ->
    [one] one axle
   *[other] { $count } axles
}. Name one of them.
trouble-no-photo = There is no photo { $given }: this job has { $count ->
    [0] none yet
    [one] one
   *[other] { $count }
}.
trouble-no-tire = No tire is fitted at { $place }.
trouble-accuracy = “{ $given }” is not an accuracy. Type it like 4 %.
trouble-day = “{ $given }” is not a day. Type it like 2026-05-04.
trouble-future = { $given } has not come yet. Check the date.
trouble-torque = “{ $given }” is not a printed torque. Type it like 125..150 N.m or 100 ft.lb.
trouble-thread = “{ $given }” is not a thread. Type it like M12 x 1.5 or 1/2-20.
trouble-studs = A wheel has 3 to 12 nuts. Count again.
trouble-placard-axles = Give one cold pressure for each of the { $count } axles, front first.
trouble-size = “{ $given }” has no tire size that can be read. Type it like 225/45R17 91W.
trouble-drive-unknown = Say which axles drive, or look under the vehicle.
trouble-pattern = “{ $given }” is not a pattern. Type it like rearward-cross or front-to-rear.
trouble-not-known = Only torque and placard can be told as not known.
trouble-odometer-behind = { $now } is less than last time, { $before }. Read it again, or say that the instrument was replaced.
trouble-no-tool = “{ $given }” is not among the tools. Add it first.
trouble-unknown-tool = “{ $given }” is not among the tools. Known: { $names }.
trouble-all-over = All steps are done. Sign the job.
trouble-no-step = “{ $given }” is not a step of this job.
trouble-answer = “{ $given }” does not answer this step. { $wanted }
trouble-steps-left = Not signed. This step is still open: { $step }
trouble-limits-empty = Say what to choose: a place, a season, or a depth.
trouble-limits-order = Watch, { $watch } above the limit, can't be less than at limit, { $at } above. Choose both.
trouble-no-skip = This step can't be skipped: { $step }
trouble-no-gate = No gate holds this step: { $step }
trouble-no-line = There is no line { $given }: the log has { $count }.
trouble-not-correctable = Line { $line } has no value to correct. Take it back and say it again.
trouble-not-withdrawn = The opening of a job can't be taken back. End the job instead.
trouble-mark-long = Keep the mark short: 8 signs at most.
trouble-mark-twice = “{ $mark }” is on another tire already. Choose another mark.
trouble-no-mark = No tire of this job is marked “{ $mark }”. Marks: { $marks }.
trouble-depths = “{ $given }” can't be read as depths. Type grooves like 7 6 7 /32, or 5.2 5.0 5.4 mm.
trouble-lowest = The lowest spot can't be deeper than the grooves. Measure it again.
trouble-deeper = { $place }: { $now } is deeper than last time, { $before }. Measure again, check that it is the same tire, or give a reason.
trouble-no-plan = “{ $given }” is not one of the { $count } plans.
trouble-already-off = The wheel at { $place } is off already.
trouble-wheel-off = The wheel at { $place } is off. Hang it first.
trouble-not-moved = The wheel at { $place } did not come off in this job.
trouble-count-nuts = Count the nuts on one wheel first.
trouble-no-nut = This wheel has { $count } nuts, numbered like a clock from the top.
trouble-moved = Say whether the nut moved before the click, or clicked without moving.
trouble-no-spare = No spare is carried on this vehicle, as the book has it.
trouble-nothing-laid-out = No wheel of the coming set is laid out at { $place }.
trouble-nothing-stored = No wheels of this vehicle are stored. Bring a new set, or look for them in the book.
trouble-nothing-to-store = No wheel that came off is left to store.
trouble-no-relearn = This job asks nothing of sensors, or that is no answer: done, owner-told or not-needed.
trouble-which-wheels = Name at least one wheel that comes off.
trouble-which-part = Say which part: hub face, studs, seats, valve, tire, rim, pads, disc, hose, boots, damper or bearing.

ask-seen = Say “seen” once you have looked.
ask-choice = Choose one: { $choices }.
ask-count = Type a number.
ask-studs = Type a number from 3 to 12.
ask-other = It has a command of its own.

place-spare = spare
place-front-left = front left
place-front-right = front right
place-rear-left = rear left
place-rear-right = rear right
place-axle-left = axle { $axle } left
place-axle-right = axle { $axle } right
place-axle-left-outer = axle { $axle } left outer
place-axle-left-inner = axle { $axle } left inner
place-axle-right-outer = axle { $axle } right outer
place-axle-right-inner = axle { $axle } right inner
said-covered = { $count ->
    [0] Photo { $number } goes out uncovered from now on.
    [one] 1 part of photo { $number } is covered on cards and shared copies. The photo itself stays as it is.
   *[other] { $count } parts of photo { $number } are covered on cards and shared copies. The photo itself stays as it is.
}
trouble-box = “{ $given }” is no box. Give left, top, width and height in pixels, like 120,80,300,90.
trouble-box-outside = “{ $given }” covers nothing: the photo is { $width } pixels wide and { $height } high.
said-tool-in-use = { $name } is in use in this job already.
said-tool-retired = { $name } is put away. Cards of earlier jobs still name it.
said-which-tool = Several would do: { $names }. Say which one is used.
next-two-people = This wheel is for two people, one at each side: name the second.
trouble-scale = “{ $given }” is not a scale. Type both ends, like 40..200 N.m.
trouble-months = Give the months between calibrations as a number from 1 to 120.
trouble-stands = Give the number of stands, at least one.
trouble-same-hands = { $name } does the step already. Name who holds the other side.
trouble-practice-due = This is a practice job: nothing falls due after it.
trouble-backup-inside = That folder is inside the book's own: whatever takes the book takes it too. Choose another place.
trouble-no-backup-folder = No folder is chosen for backups. Name one.
said-code-set = { $name } signs with this code from now on. It is kept as a hash: nobody can read it back.
said-steps-seen = { $name } signed as seen: { $steps }.
said-answer-first = The learner answers first in this job: drive, pattern, lifts, order, wrench setting.
said-answer-first-off = Lugbook answers first again.
said-look-kept = The look is kept. What it says is shown after your answer.
trouble-no-instructor = There is no instructor in the book. Add one first.
trouble-not-instructor = “{ $given }” is no instructor. Instructors: { $names }.
trouble-no-code = { $name } has no code yet. Set one first.
trouble-current-code = { $name } has a code already. Give the old one first.
trouble-wrong-code = { $left ->
    [one] That is not the code of { $name }. One try is left before it is locked.
   *[other] That is not the code of { $name }. { $left } tries are left before it is locked.
}
trouble-code-locked = Too many wrong codes for { $name }. Try again after { $until }.
trouble-code-short = Choose a code of at least 6 characters.
trouble-code-long = Choose a code of at most 64 characters.
trouble-code-row = Choose a code that is no row and not one character over and over.
trouble-code-name = Choose a code that is not your name.
trouble-code-hash = The code can't be hashed. Report this: { $why }
trouble-nothing-to-see = Nothing that an apprentice did waits for such a signature.
trouble-which-learner = Say whose logbook: { $names }.
trouble-answer-first-off = This job does not ask for answers first. Switch that on before Lugbook shows its own.
trouble-answered = That was answered already. The first answer stands.
trouble-answer-early = Lugbook has no answer to compare with yet. Bring the job on first.
trouble-answer-drive = “{ $given }” is no drive. Answer front, rear, all, part-time or none.
trouble-answer-pattern = “{ $given }” is not a pattern. Answer like rearward-cross or front-to-rear.
trouble-answer-lifts = “{ $given }” names no lift. Answer like FL+FR RL+RR.
trouble-answer-order = “{ $given }” does not name each nut once. Answer like 1 3 5 2 4.
trouble-answer-target = “{ $given }” is no torque. Answer like 137 N.m.
trouble-why-drive = Nothing is known of the drive yet.
trouble-why-pattern = No plan is possible yet. Read and measure the tires first.
trouble-why-lifts = There is no order of lifts in this job yet.
trouble-why-order = The studs are not counted yet.
trouble-why-target = Torque or wrench is not known yet.
trouble-no-bundle = That is no learner's bundle. Choose the zip file that was written for a learner.
trouble-newer-bundle = A newer Lugbook made this bundle (version { $version }). Update this one first.
trouble-bundle-damaged = The bundle is damaged at { $at }: part of it is not what it was. Ask for it again.
trouble-bundle-unpacked = The bundle can't be packed. Report this: { $why }

# Taken back, put away, erased.
undo-reason = taken back right away
said-undone = Taken back: { $said }
said-undone-more = { $count ->
    [one] And one more entry of the same command.
   *[other] And { $count } more entries of the same command.
}
trouble-nothing-to-undo = There is nothing that this device could take back.
said-archived = Put away. What was done with it stays, and “bring back” undoes this.
said-brought-back = In use again.
trouble-archived-already = It is put away already.
trouble-not-archived = Nothing of that name is put away. See the book's front page.
trouble-archive-in-work = A job on this vehicle is still running. Sign or close it first.
trouble-archive-last = Nobody else could work from this book. Add a person first.
trouble-archived-person = { $name } was put away. Bring the person back first.
trouble-archived-vehicle = { $name } was put away. Bring the vehicle back first.
trouble-archived-set = The stored wheels of this vehicle were put away. Bring the set back first.
trouble-nothing-to-erase = Nothing of that name is kept that could be erased. Check the spelling.
said-erased = { $count ->
    [one] Erased beside one entry. The entry stays, and the book still verifies.
   *[other] Erased beside { $count } entries. The entries stay, and the book still verifies.
}
said-erased-elsewhere = Backups, copies and cards made before still hold it. Remove them yourself.
said-erased-older = Older files in the book's folder still hold it: { $names }.
said-erased-not = Not looked at: photos, a vehicle's name, and words typed into complaints or reasons.
said-overloaded = The gear is rated { $rating }, less than the { $weight } that would be raised. Use other gear.
next-shows = On the shelf, { $what }: { $printed }
next-shows-nothing = No { $what } on the shelf: look in the manual.
trouble-axles = “{ $given }” does not say the axles. Type single or dual for each, front first, { $most } at most; a trailer may have one.
trouble-not-this-vehicle = { $title } is not meant for this vehicle. It is for { $known }.
trouble-outer-on = { $place }: the outer wheel is still on. Take { $outer } off first.
trouble-inner-off = { $place }: the inner wheel is off. Hang { $inner } first.
trouble-nuts-at-outer = One set of nuts holds both wheels here. Name { $outer } instead of { $place }.
trouble-not-loosened = Only the outer nuts of stud-piloted duals are loosened again.
trouble-around = “{ $given }” can't be a tape around { $place }. Measure around the middle of the tread.
said-too-thin = That is under the { $least } that is printed. It is a finding.
