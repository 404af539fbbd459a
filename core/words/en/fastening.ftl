# What to set the wrench to.
tighten-set = Set the wrench to { $setting }.
tighten-set-adapter = Set the wrench to { $setting }; through the adapter the nut gets { $target }.
tighten-band-inside = The range is { $min } to { $max }. The worst reading stays { $margin } inside.
tighten-band-outside = The range is { $min } to { $max }. The worst reading may lie { $margin } outside.
tighten-no-band = The manual prints one value and no range.
tighten-order = Tighten in this order, seen from outside, 1 at the top: { $order }.
tighten-order-makers = Tighten in the maker’s order, seen from outside, 1 at the top: { $order }.

# What to know about the target.
tighten-unit-clash = The manual disagrees with itself: { $first } and { $second } differ by { $percent } percent. The target lies in both.
tighten-converted = The manual does not print { $unit }. { $from } was converted.
tighten-worst-outside = This wrench is too coarse for the range: its worst reading may lie { $by } outside. Take a better wrench.
tighten-not-on-scale = { $wanted } is not on this wrench’s scale. The nearest setting is { $off } percent off.
tighten-scale-ends = { $better } would be better, but this wrench’s scale does not reach it.

# About the bar.
tighten-bar-may-click = This bar is so near the target that nuts may click without moving. Take a lower bar.
tighten-bar-gun-not-known = How strong the gun is, or what gun the bar is made for, is not known. Its marking may not hold.
tighten-bar-gun-too-strong = The gun gives up to { $gun }, the bar is made for { $bar }. Its marking does not hold.
tighten-bar-hex-not-known = The bar’s hex or the nut’s is not known. Try the socket by hand first.
tighten-bar-hex-differs = The bar’s socket is { $bar }, the nut { $nut }. It does not fit.
tighten-bar-under = { $rating } bar: for the first tightening only; up to { $advised } is advised. The wrench has the last word.
tighten-bar-near = { $rating } bar: over the advised { $advised }, near the target.
tighten-bar-at-or-over = { $rating } bar: at or over the target. Take one of { $advised } or less.

# About wrench and nut.
tighten-calibration-not-known = Nobody knows when this wrench was last calibrated.
tighten-calibration-overdue = This wrench was last calibrated over a year ago.
tighten-calibration-in-the-future = The wrench’s calibration date has not come yet. One of the two dates is wrong.
tighten-lubrication-not-known = Whether the threads are to be dry or oiled, or how they are, is not known. Read the manual and look.
tighten-lubrication-differs = The manual says { $manual }; found { $found }. At the same torque the stud is loaded differently.
tighten-thread-differs = The manual is for { $manual }, the thread here is { $found }. It may be for another vehicle.
tighten-seat-not-known = Whether nut and wheel seats fit is not known. Compare both before tightening.
tighten-left-hand = Left-hand thread: it tightens counterclockwise.
tighten-lock-key = Locking nut: turn it by hand and wrench, never with the gun.

lubrication-not-known = not stated
lubrication-dry = dry
lubrication-oiled = oiled

# What stops it.
tighten-stop-seat-shape = Stop: nut and wheel seats have different shapes. Such a nut works loose.
tighten-stop-seat-cone-angle = Stop: nut and wheel seats have different angles. Such a nut works loose.
tighten-stop-seat-ball-radius = Stop: nut and wheel seats have different radii. Such a nut works loose.
tighten-stop-studs = { $given } studs is not a wheel known here. Count them again: 3 to 12.
tighten-stop-order = The maker’s order as recorded does not name each stud once. Correct it.
tighten-nothing-printed = No torque is recorded. Look it up in the vehicle’s manual.
tighten-no-agreement = The manual’s units disagree: { $first } and { $second } have nothing in common. Ask the vehicle’s maker.
tighten-accuracy = The wrench’s accuracy must lie between 0 and 50 percent. Most are ±4 %.
tighten-no-step = No setting of this scale lies in the range: { $below } is below, { $above } above. Take another wrench.
tighten-outside-scale = This wrench’s scale does not reach the torque. Take another wrench.
tighten-adapter-angle = The adapter’s angle must lie between 0 and 180 degrees.
tighten-adapter-lever = The wrench’s lever has no length. Measure from the middle of the grip to the drive.
tighten-adapter-folded-back = The adapter leads the nut too far back along the handle. Turn it outward or square.

# The rounds.
round-hand-start = Begin each nut by hand.
round-snug = Snug the nuts in order, about { $percent } percent of the target.
round-snug-set = Snug the nuts in order with the wrench at { $setting }.
round-final = Tighten in order with the wrench at { $setting } and weight on the tire.
round-loosen = Loosen the outer nuts, so that the inner ones can be set.
round-recheck = Recheck in order with the wrench at { $setting } and weight on the tire.
round-of-inner = Inner nuts: { $round }
round-of-outer = Outer nuts: { $round }

# What a nut’s answer means.
outcome-proven = Moved, then clicked: tight as set.
outcome-back-off-quarter-and-again = Clicked without moving: not proven. Back it off a quarter turn and tighten again.
outcome-held = Clicked without moving: it held.
outcome-moved-record-and-repeat = It moved. Record it and do the recheck again.

overrun-within = Not tighter than the manual allows.
overrun-loosen-look-again = Tighter than the manual allows. Loosen it, look at stud and seat, tighten again.
overrun-replace-stud = It turned without getting tighter. Replace the stud.

# When to come back.
recheck-by = Recheck within { $by }, as the manual says.
recheck-window = Recheck after { $from } to { $by }, as the manual says.
recheck-trade = Recheck after { $from } to { $by }. The manual prints none; this is the trade’s habit.

torque-gate-open = The torque is known.
torque-gate-shut = No torque is known for this vehicle. Look it up in its manual and record it.
torque-gate-opened-without-specification = Specification not known.

# The bench.
chart-row = { $diameter }: { $low } to { $high } ft·lb, threads dry. Chart value, not for your car.
chart-makers-disagree = No chart value from 14 mm up: makers print { $low } to { $high } N·m for one thread; the chart says { $chartlow } to { $charthigh }.
chart-not-on-chart = The chart has no such thread.
clamp-load = Clamp load about { $low } to { $high } kN; a single nut scatters { $scatter } percent more. Information only.
