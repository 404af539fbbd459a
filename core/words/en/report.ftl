# The job card.
card-title = Wheel service card
card-title-of = Wheel service card { $number }: { $name }
card-kicker = Wheel service card, job { $number }
card-no-vehicle = The vehicle of this job is not in this book.
card-because = Reason: { $reason }.
card-practice = Practice job: kept out of wear, due dates and history.

card-model = Model
card-class = Class
card-lift-points = Lift points
card-plate = Plate
card-drive = Drive
card-odometer = Odometer
card-work = Work
card-opened = Opened
card-ended = Ended
card-people = People
card-moment = { $day } { $clock }
card-person = { $name }, { $role }: { $wrote ->
    [one] 1 entry
   *[other] { $wrote } entries
}, { $hands } with own hands
card-signed-by = Signed { $how }: { $name }
card-drawn = Drawn signature: { $name }
card-estimated = estimated
card-cluster-replaced = instrument replaced
card-not-recorded = not recorded
card-not-known = not known
card-not-read = not read
card-places = Places: { $places }.
card-place-named = { $at } { $name }

card-findings = Findings
card-nothing-found = { $count ->
    [0] Nothing was found, and no part was looked at.
    [one] Nothing was found. 1 part was looked at.
   *[other] Nothing was found. { $count } parts were looked at.
}
card-looked = { $count ->
    [0] No part was looked at by eye.
    [one] 1 part was looked at by eye.
   *[other] { $count } parts were looked at by eye.
}
card-by-eye = judged by eye
card-rule-broken = A rule whose text was read is not met.

card-to-do = Not done
card-next = Next:

card-moves = Where each tire goes
card-spare = Spare on the vehicle
card-spare-limit = Highest speed
card-spare-replace = Replace within
card-spare-replace-by = { $distance }: by { $odometer } on the odometer
card-spare-nuts = Nuts
card-goes-on = { $at }, goes on
card-came-off = { $at }, came off
label-tread = Lowest tread
card-stored = Wheels stored
card-stored-table = Where each wheel came off and where it is kept.
card-rack = Rack
label-title = Labels of stored wheels
label-stored = Stored
label-none = No wheel was stored in this job.
card-wheels = Wheels off and on
card-off-and-on = Taken off and hung where they were: { $at }.
card-none-off = No wheel came off yet.
card-no-plan = No moves were chosen.
card-drawing = The vehicle from above, front at the top
card-drawing-filled = Filled wheels came off in this job.
card-raised = Raised
card-raised-by = { $weight }, on gear rated { $rating }
card-pairs = Dual wheels
card-pairs-held = Held so: { $how }.
card-pairs-table = The larger tire of a pair goes outside.
card-pair = Pair
card-around-outer = Around, outer
card-around-inner = Around, inner
card-pair-match = Match
card-pair-looked-at = Looked at
card-not-measured = not measured
card-pair-by-tape = matched, by tape
card-pair-by-tread = matched, by size and tread
card-pair-seen = valves and gap seen
card-pair-unseen = valves and gap not seen
card-drawing-still = No tire moves.
card-front = front
card-moves-table = A dashed arrow is planned; a full one is a wheel that hangs there.
card-tire = Tire
card-was-at = Was at
card-planned = Planned
card-hung = Hangs at
card-stays = stays
card-stayed = stayed
card-on-carrier = on the spare’s carrier
card-not-hung = not hung yet
card-tire-of = Tire { $mark } at { $at }:
card-tire-of-to = Tire { $mark }, { $at } to { $to }:
card-tire-at = { $mark } at { $at }

card-tread = Tread depth
card-no-tread = No tread was measured.
card-tread-how = Each bar is a groove’s lowest reading around the tire.
card-tread-places = Places are those before the moves.
card-bars = Tread depth of tire { $tire }
card-groove = Groove { $number }
card-groove-outer = { $number }, outer
card-groove-inner = { $number }, inner
card-lowest = Lowest
card-last-time = Last time
card-limit = limit { $limit }
card-limit-printed = limit { $limit } ({ $printed })
card-readings = All readings: { $readings }.
card-before = Last time: { $day }, at { $at }.
card-before-at = Last time: { $day }, { $odometer }, at { $at }.

card-sidewalls = Sidewalls
card-no-sidewalls = No sidewall was read.
card-sidewalls-table = As read from the tires; age on the day the job was opened.
card-size = Size
card-service = Service
card-tin = TIN
card-made = Made
card-age = Age
card-more = Also
card-nothing-more = nothing
card-not-marked = not marked
card-week = week { $week } of { $year }, from { $from }
card-years = in one of { $years }
card-age-between = { $least } to { $most }

card-nuts = Wheel nuts
card-no-nuts = No wheel came off and no nut was tightened.
card-torque = Torque as printed
card-thread = Thread
card-hex = Socket
card-studs = Studs a wheel
card-source = Source
card-recorded = Recorded
card-torque-unknown = Specification not known.
card-opened-because = The final gate was opened with this reason: { $reason }.
card-nuts-of = Wheel nuts at { $at }, seen from outside, order inside each nut
card-nuts-uncounted = The nuts were not counted.
card-nuts-final = { $count } of { $of } at final torque
card-nuts-held = { $count } of { $of } held: clicked without moving
card-nuts-moved-again = { $count } of { $of } moved when checked again
card-nuts-not-proven = { $count } of { $of } clicked without moving, not proven
card-nuts-snug = { $count } of { $of } snug only
card-nuts-begun = { $count } of { $of } begun only
card-nuts-nothing = { $count } of { $of } not recorded
card-nuts-one-by-one = Recorded nut by nut.
card-nuts-in-order = Recorded as one wheel in order.
card-nuts-both-ways = Recorded partly nut by nut, partly as one wheel in order.
card-setting = Wrench set to { $setting }.
card-setting-unknown = Wrench setting not recorded.
card-rechecked = Rechecked: { $held } of { $of } held.
card-legend-final = final torque: moved, then clicked
card-legend-held = checked again: held
card-legend-moved-again = checked again: moved
card-legend-not-proven = clicked without moving: not proven
card-legend-snug = snug
card-legend-begun = begun by hand
card-legend-nothing = not recorded
card-order-how = The number is the order of tightening; the place is the clock position, top up, seen from outside.
card-recheck = Recheck
card-recheck-none-left = No further recheck is due for these nuts.
card-recheck-untold = Nobody was told when to have the nuts checked again.

card-pressures = Pressures
card-no-pressures = No pressure was read or set.
card-pressures-table = Found and set in this job, against the placard for the place.
card-at = At
card-placard = Placard
card-found = Found
card-set = Set
card-placard-from = Placard: { $source }.
card-no-placard = Placard not known.
card-sensor-table = Sensor numbers where the wheels are now.
card-sensor-number = Sensor
card-sensors = Sensors and lamp
card-no-sensors = Sensors and lamp were not looked at.

card-gates = Gates opened and steps skipped
card-no-gates = None.
card-opened-gates = Gates opened with a reason
card-skipped = Steps skipped with a reason

card-given = Approval and existing damage
card-own = Own vehicle: no approval was asked.
card-no-approval = No approval was recorded.
card-approvals = Approval
card-damage = Existing damage
card-no-damage = Existing damage was not recorded.
card-said-by = { $said } { $person }, { $at }.

card-tools = Tools
card-no-tools = No tool was named.
card-tools-table = As their papers say.
card-tool = Tool
card-kind = Kind
card-calibration = Calibration
card-no-calibration = none is kept for this kind

card-photos = Photos
card-covered = Parts are covered.
card-photo-missing = This photo’s file is not at hand.
card-see-photo = See its photo.

card-corrections = Corrections
card-corrections-table = Both values stay in the book.
card-stood = Stood
card-holds = Holds
card-why = Reason
card-who = Who
card-taken-back = Taken back
card-by-at = { $person }, { $at }

card-record = Every entry
card-entries = { $count ->
    [one] 1 entry of this job, as it was written.
   *[other] { $count } entries of this job, as they were written.
}
card-hands-of = { $person }; hands: { $hands }
card-not-sealed = Signed { $how }, not sealed by the device.
card-sealed = Signed { $how }, and sealed by device { $device }.
card-sealed-after = { $count ->
    [one] One entry came after the seal.
   *[other] { $count } entries came after the seal.
}
card-provable = Written by device { $device }. “lugbook card verify” says whether the HTML file of this card was changed; it does not prove the time, or that a nut was really tightened.
card-unsigned = Not signed.
card-digest = Last entry: { $digest }. These ten digits tell two cards apart; they prove nothing.
card-deference = The vehicle maker’s manual, local codes and licensed practice stand above everything on this card.
card-times = Times are universal time (UTC), as this device’s clock told them.

# A calendar file.
calendar-recheck = Recheck the wheel nuts: { $vehicle }
calendar-per-year = That is at { $distance } a year.
calendar-deference = The vehicle maker’s manual, local codes and licensed practice stand above this.

# The history of a vehicle.
history-title = Vehicle history: { $name }
history-kicker = Vehicle history
history-no-visit = No visit of this vehicle is in the book yet.
history-odometer-on = { $odometer } on { $day }
history-wear = Wear and forecast
history-no-tread = No tread was measured yet at a visit that read the odometer.
history-left-out = { $count ->
    [one] 1 reading is left out of the forecast: its odometer was not read, or where the tire ran since is not known.
   *[other] { $count } readings are left out of the forecast: their odometer was not read, or where the tire ran since is not known.
}
history-slipped = Readings that do not fit
history-chart-how = Dots are readings of the shallowest groove; an open dot does not fit the others. The dashed line is the forecast where the tire stands now; the band around it holds it 95 times in 100.
history-chart = Tread depth of tire { $tire } over distance
history-chart-read = Read: { $readings }.
history-point = { $depth } at { $odometer }
history-depth-mm = Depth, mm
history-depth-32 = Depth, 1/32 in
history-distance-km = Odometer, km
history-distance-mi = Odometer, mi
history-forecast-how = A forecast is arithmetic on the readings above. Measure at each visit; a limit counts as measured.
history-visits = Visits
history-visits-table = Every visit but practice, oldest first.
history-visit = { $day }, job { $number }
history-day = Day
history-state = Job
history-hands = Hands
history-worst = Worst finding
history-nothing-found = nothing found
history-places = Where each tire was
history-places-table = The tire that came in at each place, by its mark.
history-now = now
history-readings = Tread readings
history-readings-table = Grooves from the outer one inward, places around the tire set apart by semicolons.
history-grooves = Grooves

# On paper.
paper-contents = Contents
paper-page = page { $number } of { $of }
card-papers = Papers
card-second-hands = { $name } held the other side of the wheel at { $at }
