# Names of conditions, as short as a card needs them.
condition-approved = work approved
condition-place-safe = place safe to work at
condition-lock-key = lock key at hand
condition-drive-known = drive known
condition-plan-chosen = moves chosen
condition-wheels-chosen = wheels named
condition-set-brought = set that goes on laid out
condition-cracked = nuts cracked loose on the ground
condition-clear = wheels just clear
condition-rocked = vehicle rocked
condition-held = locks or stands seen to hold
condition-wheel-is-off = wheel off
condition-mark-fits = mark fits the plan
condition-started = each nut begun by hand
condition-all-snug = all nuts snug
condition-tray-empty = nothing left in the tray
condition-all-clear = all clear under the vehicle
condition-down = vehicle on its wheels
condition-torque-known = torque specification known
condition-final-done = final torque on every nut
condition-rechecked = every nut checked again
condition-unsafe-told = customer told what is unsafe
condition-seat-sound = seats and studs not unsafe
condition-in-order = next in the order of lifts
condition-ready = ready to be raised
condition-gear-rated = gear rated for the weight
condition-pair-matched = dual tires matched
condition-pair-seen = valves and gap of each pair seen
condition-outer-loosened = outer nuts loosened again
condition-inner-set = inner nuts at final torque

# What a gate waits for, and what to do.
unmet-approved = The customer has not approved the work yet. Ask first.
unmet-approved-declined = The customer declined the work. Ask again, or end the job without a signature.
unmet-place-safe = Nobody has said whether this place is safe. Look first; a vehicle can be towed.
unmet-place-slope = This place slopes or gives way. Don't start: have the vehicle towed to level, firm ground.
unmet-place-close = Traffic passes too close. Don't start: have the vehicle towed.
unmet-place-flat-side = { $at }: traffic passes on the side of the flat tire. Don't start: have the vehicle towed.
unmet-lock-key = Nobody has said whether the locking nuts' key is at hand. Find it first.
unmet-lock-key-missing = The locking nuts' key is missing. Find it before the vehicle goes up.
unmet-drive-known = Which axles drive is not settled. Read the manual, or look at both axles' hubs.
unmet-plan-chosen = No moves are chosen yet. Choose where each tire goes.
unmet-wheels-chosen = No wheel is named yet. Choose the wheels that come off.
unmet-set-brought = The set that goes on is not named yet. Bring the stored one, or a new one.
unmet-cracked = { $at }: the nuts are not cracked loose. Crack each a quarter turn while the tire stands.
unmet-clear = The wheels are not just clear yet. Raise the vehicle until they are.
unmet-rocked = The vehicle has not been rocked. Rock it before anybody works on it.
unmet-held = Locks or stands have not been seen to hold. Look at each one first.
unmet-wheel-is-off = { $at }: the wheel is still on. Take it off first.
unmet-mark-unread = { $at }: no mark is read. Read the mark on the tire before the nuts.
unmet-mark-unchalked = { $at }: mark { $read } is read, but the tire planned here carries no mark. Chalk it first.
unmet-mark-stranger = { $at }: mark { $read } is on no tire of this job. The plan wants tire { $wanted } here.
unmet-mark-other = { $at }: this is tire { $read }, which belongs at { $belongs }. The plan wants tire { $wanted } here.
unmet-not-counted = { $at }: the nuts are not counted. Count the studs of one wheel first.
unmet-started = { $count ->
    [one] { $at }: nut { $nuts } is not begun by hand. Begin it by hand first.
   *[other] { $at }: nuts { $nuts } are not begun by hand. Begin each by hand first.
}
unmet-wheel-missing = { $at }: the wheel is off. Hang it and snug its nuts first.
unmet-snug = { $count ->
    [one] { $at }: nut { $nuts } is not snug. Snug it first.
   *[other] { $at }: nuts { $nuts } are not snug. Snug them in star order first.
}
unmet-tray-uncounted = Nuts and tools are not counted. Count what is left over.
unmet-tray-left = { $left ->
    [one] One nut or tool is left over. Find where it belongs.
   *[other] { $left } nuts or tools are left over. Find where they belong.
}
unmet-all-clear = Nobody has said that it is clear under the vehicle. Look under it first.
unmet-down = The vehicle does not stand on its wheels. Lower it before the final torque.
unmet-torque-known = The torque specification is not known. Read it in the manual, or open the gate with a reason.
unmet-final-off = { $at }: the wheel is off. Hang it and tighten its nuts first.
unmet-final = { $count ->
    [one] { $at }: nut { $nuts } has no proven final torque. Tighten it; a nut that clicks without moving is backed off a quarter turn first.
   *[other] { $at }: nuts { $nuts } have no proven final torque. Tighten them; a nut that clicks without moving is backed off a quarter turn first.
}
unmet-rechecked = { $count ->
    [one] { $at }: nut { $nuts } is not checked again. Set the wrench and check it.
   *[other] { $at }: nuts { $nuts } are not checked again. Set the wrench and check each.
}
unmet-unsafe-told = { $at }: { $part } found unsafe, and the customer was not told. Tell the customer first.
unmet-seat-sound = { $at }: { $part } found unsafe. Replace what is damaged before the wheel goes on.
unmet-ready = The vehicle is not ready to be raised. See first what is asked before that.
unmet-gear-rated = Nobody has said what the gear is rated for. Read the weight that is raised, and the rating.
unmet-gear-overloaded = The gear is rated { $rating }, and { $weight } would be raised. Use gear that is rated for it.
unmet-pair-not-known = { $at }: nobody can tell whether this pair matches. Measure around both tires with a tape.
unmet-pair-apart = { $at }: the two tires differ by { $by } in diameter, and { $allowed } is allowed. Use a tire that matches.
unmet-pair-larger-inside = { $at }: the inner tire is { $by } larger in diameter. The larger one belongs outside.
unmet-pair-seen = { $at }: valves and gap of this pair have not been seen. Look at both first.
unmet-outer-loosened = { $count ->
    [one] { $at }: nut { $nuts } is not loosened again. Loosen it before the inner ones are set.
   *[other] { $at }: nuts { $nuts } are not loosened again. Loosen them before the inner ones are set.
}
unmet-inner-set = { $count ->
    [one] { $at }: inner nut { $nuts } has no proven final torque. Set it before the outer ones.
   *[other] { $at }: inner nuts { $nuts } have no proven final torque. Set them before the outer ones.
}

unmet-in-order = Action { $n } comes first. { $action }

list-and = { $before } and { $last }
place-vehicle = Vehicle
condition-instructor-saw = seen and signed by an instructor
condition-answered-first = learner's answer given first
unmet-instructor-saw = { $what }: no instructor has signed it. Ask for a look and a signature.
unmet-answered-first-drive = Say first which axles drive.
unmet-answered-first-pattern = Say first which pattern you would choose.
unmet-answered-first-lifts = Say first what is raised, one lift after another.
unmet-answered-first-order = Say first in which order the nuts are tightened.
unmet-answered-first-target = Say first what the wrench is set to.
pair-not-known = not known
pair-apart = { $by } apart in diameter; { $allowed } is allowed
pair-larger-inside = inner one { $by } larger
