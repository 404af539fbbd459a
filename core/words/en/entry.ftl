# Names that come up everywhere.
state-sound = sound
state-watch = watch
state-at-limit = at limit
state-below-limit = below limit
state-unsafe = unsafe: do not drive

part-hub-face = hub face
part-studs = studs
part-seats = seats
part-valve = valve
part-tire = tire
part-rim = wheel rim
part-brake = brake
part-pads = pads
part-disc = disc
part-hose = brake hose
part-boots = boots
part-damper = damper
part-bearing = wheel bearing
part-hub-bore = hub bore
part-centering-ring = centering ring
part-valve-cap = valve cap
part-weights = weights
part-other = other part

drive-front = front drive
drive-rear = rear drive
drive-all = all-wheel drive
drive-part-time = part-time four-wheel drive
drive-unknown = drive not known
drive-none = no driven axle

class-car = passenger car
class-light-truck = light truck
class-truck = truck
class-bus = bus
class-light-trailer = light trailer
class-trailer = trailer
class-motorcycle = motorcycle

role-mechanic = mechanic
role-apprentice = apprentice
role-instructor = instructor
role-customer = customer

status-open = open
status-parked = parked
status-signed = signed
status-closed = ended without a signature

pattern-rearward-cross = rearward cross
pattern-forward-cross = forward cross
pattern-x = X
pattern-front-to-rear = front to rear
pattern-side-to-side = side to side
pattern-leave-as-is = leave as is
pattern-flat = change of a flat wheel
pattern-spare = spare in place of the flat tire
pattern-other = other moves
pattern-five = { $pattern }, with the spare

kind-torque = wheel nut torque
kind-placard = placard pressure
specification-from = { $value } ({ $source })
kind-lift-points = lift points
kind-drive = drive
kind-pattern = rotation pattern
kind-brakes = brake pads

photo-sidewall = sidewall
photo-tread = tread
photo-hub = hub
photo-placard = placard
photo-manual = manual page
photo-damage = damage or finding
photo-plate = license plate
photo-odometer = odometer
photo-vehicle = whole vehicle

sidewall-outer = outer sidewall
sidewall-inner = inner sidewall
tire-directional = rotation arrow
tire-asymmetric = asymmetric
tire-studded = studded
tire-temporary = temporary spare
tire-retread = retread
tire-regrooved = regrooved

sensors-direct = a sensor in each wheel
sensors-indirect = read from wheel speed
sensors-none = no sensors
sensors-unknown = sensors not known

means-lift = on the lift
means-stands = on stands
means-jack = on a jack alone

tool-wrench = torque wrench
tool-depth-gauge = depth gauge
tool-pressure-gauge = pressure gauge
tool-gun = impact gun
tool-bar = torque-limiting bar
tool-jack = jack
tool-stand = jack stand
tool-lift = lift

signature-name = by name
signature-drawn = by a drawn signature

hub-not-looked = hub not looked at
hub-covered = a cap hides the middle of the hub
hub-capless-unit = a closed bearing unit, which tells nothing
hub-shaft-end = a splined end or axle nut in the middle of the hub
hub-shaft = a shaft runs into the hub from behind
hub-no-shaft = nothing runs into the hub from behind
hub-axle = axle { $axle } { $side }
side-left = left
side-right = right
wheel-turns = the wheel turned
wheel-held = the wheel was held
shaft-with-wheel = its shaft turned with it
shaft-still = its shaft stayed still
shaft-not-seen = its shaft was not seen
opposite-other-way = the opposite wheel turned the other way
opposite-same-way = the opposite wheel turned the same way
opposite-still = the opposite wheel stayed still
opposite-not-tried = the opposite wheel was not watched
gear-neutral = in neutral
gear-park = in park
gear-in-gear = in gear
brake-released = parking brake released
brake-set = parking brake set
brake-not-known = parking brake not known
ground-none = no wheel of the axle off the ground
ground-one = one wheel of the axle off the ground
ground-both = both wheels of the axle off the ground
engine-off = engine off
engine-running = engine running
differential-open = open differential
differential-locking = locking differential
free-hubs-not-fitted = no free-wheeling hubs
free-hubs-free = free-wheeling hubs set free
free-hubs-locked = free-wheeling hubs locked
motor-own = a motor of its own
motor-none = no motor of its own

name-erased = name erased
person-unknown = a person not in this book
tire-short = tire { $short }
tire-marked = tire { $mark }
tool-unknown = a tool not in this book

# One plain sentence for each thing said. With a place before it: “FL: tread …”.
fact-at = { $at }: { $said }
fact-reason = { $said } Reason: { $reason }.

fact-person-added = { $person } added as { $role }.
fact-vehicle-added = Vehicle added: { $name }, { $model }, { $class }.
fact-vehicle-added-own = Vehicle added: { $name }, { $model }, { $class }; own vehicle.
fact-specification = { $what } recorded for { $model }: { $value }. Source: { $source }.
fact-specification-unsourced = { $what } recorded for { $model }: { $value }. Source not told.
fact-specification-unknown = Looked for and not found: { $what }.
fact-job-opened = Job opened: { $procedure }. { $circumstances }.
fact-job-opened-bare = Job opened: { $procedure }.
fact-job-parked = Job parked.
fact-job-resumed = Job taken up again.
fact-job-closed = Job ended without a signature.
fact-job-signed = Job signed { $how }.
fact-hands-changed = Hands on the job from here on: { $person }.
fact-odometer = Odometer { $reading }.
fact-odometer-estimated = Odometer about { $reading }, estimated.
fact-odometer-cluster-replaced = Odometer { $reading }; the instrument was replaced.
fact-complaint = Said about the vehicle: “{ $text }”.
fact-damage-none = existing damage: none seen.
fact-damage = existing damage: { $text }.
fact-approved = Approved { $how }: { $what }.
fact-declined = Declined { $how }: { $what }.
approved-work = work
fact-unsafe-approved = Customer told what is unsafe; work on it approved { $how }.
fact-unsafe-declined = Customer told what is unsafe; work on it declined { $how }.
fact-tire-fitted = { $tire } fitted.
fact-tire-removed = { $tire } taken off the vehicle for good.
fact-mark-chalked = mark { $mark } chalked on the tire.
fact-mark-read = mark { $mark } read.
fact-photo-pending = camera opened for a photo: { $of }.
fact-photo = photo taken: { $of } ({ $digest }).
fact-photo-dated = photo taken: { $of } ({ $digest }), by its own record on { $taken }.
fact-sidewall = { $side } reads “{ $text }”, { $by }.
fact-sidewall-looks = { $side } reads “{ $text }”, { $by }; { $looks }.
read-by-typed = typed
read-by-camera = read by { $reader } ({ $model }) and confirmed
fact-tread = tread { $grooves }; lowest { $lowest }.
fact-pressure-found = pressure found { $pressure }{ $cold }.
fact-pressure-set = pressure set to { $pressure }{ $cold }.
pressure-cold = , cold
pressure-warm = , warm
pressure-untold = { "" }
fact-sensor = pressure sensors: { $told }.
sensor-number = number { $number }
lamp-on = warning lamp on
lamp-off = warning lamp off
relearned-yes = relearned
relearned-no = not relearned
fact-drive-hub = At { $place }: { $seen }.
fact-drive-manual = The manual says: { $drive }.
fact-drive-owner = The owner says: { $drive }.
fact-plan = Moves chosen: { $pattern }. { $moves }.
fact-plan-bare = Moves chosen: { $pattern }; no tire moves.
plan-move = { $from } to { $to }
fact-wheels-chosen = Wheels that come off: { $at }.
fact-spare = The spare goes on at { $at } for the flat tire: { $told }.
spare-nuts-same = on the nuts of the wheel that came off
spare-nuts-own = on nuts of its own
spare-studs = { $count } nuts
spare-limit = not above { $limit }
spare-limit-unknown = speed limit not found
spare-replace = to be replaced within { $distance }
spare-replace-unknown = replacement distance not found
fact-set-brought = The set that goes on is laid out at { $at }.
fact-tire-stored = wheel stored in { $rack }.
found-bulge = bulge
found-cut = cut, no cord seen
found-cord = cord seen
found-nail-tread = nail in the tread
found-nail-shoulder = nail in the shoulder
found-nail-sidewall = nail in the sidewall
look-thickness = { $thickness } thick
relearn-drive = by driving
relearn-menu = from the vehicle's menu
relearn-wheel-tool = with a sensor tool at each wheel
relearn-socket = at the diagnostic socket
fact-lifted-clear = raised { $means } until the wheels are just clear.
fact-lifted-full = raised { $means } to working height.
fact-lifted-held = seen to hold { $means }.
fact-lifted-all-clear = nobody and nothing under it.
fact-lifted-down = lowered to the ground.
fact-wheel-off = wheel taken off.
fact-wheel-on = wheel hung, { $tire }.
fact-nuts = { $nuts } { $pass }{ $turned }{ $setting }{ $tool }.
nuts-one = nut { $nut }
nuts-in-order = { $count ->
    [one] 1 nut
   *[other] all { $count } nuts, in order,
}
nut-pass-cracked = cracked loose a quarter turn
nut-pass-started = begun by hand
nut-pass-snug = drawn snug
nut-pass-final = tightened to final torque
nut-pass-recheck = rechecked
nut-moved = ; moved before the click
nut-still = ; clicked without moving
nut-held = ; clicked without moving: held
nut-setting = ; set to { $setting }
nut-tool = ; with { $tool }
fact-tool-added = Tool entered: { $name }, { $told }.
fact-tool-used = Tool used: { $name }.
fact-limits-book = Limits for the book: { $chosen }.
fact-limits-job = Limits for this job: { $chosen }.
fact-step-seen = “{ $step }” Seen.
fact-step-answer = “{ $step }” Answer: { $answer }.
fact-step-skipped = skipped: “{ $step }”
fact-gate-opened = gate opened at “{ $step }” without this: { $condition }.
fact-finding = { $part } { $state }.
fact-finding-note = { $part } { $state }; { $note }.
fact-recheck = Driver told to have the nuts checked after { $after }.
fact-recheck-none = Driver told to have the nuts checked; no distance given.
fact-corrected = Correction: { $said }
fact-archived = Put away: { $what }.
fact-brought-back = In use again: { $what }.
thing-unknown = (not in this book)
thing-vehicle = vehicle { $name }
thing-set = stored wheels of { $name }
thing-person = { $name }
thing-tool = tool { $name }
fact-withdrawn = An earlier entry was taken back.

shelf-torque-studs = { $torque }, { $studs } studs
placard-axle = axle { $axle } { $printed }
placard-spare = spare { $printed }
placard-unread = not printed or not readable
placard-full = { $pressure } at full load
placard-size = size { $size }
printed-range = { $low } to { $high }
printed-dry = dry
printed-oiled = oiled
printed-words = “{ $words }”

tool-papers-wrench = ±{ $accuracy } %, step { $step }
tool-papers-rating = marked { $rating }
tool-papers-resolution = shows steps of { $resolution }
tool-calibrated = calibrated { $day }
tool-calibrated-unknown = calibration not known
fact-named = { $said }, by { $name }.
fact-covered = { $count ->
    [0] Photo { $digest } goes out uncovered.
    [one] 1 part of photo { $digest } is covered where it goes out.
   *[other] { $count } parts of photo { $digest } are covered where it goes out.
}

tool-papers-scale = scale { $low } to { $high }
tool-papers-highest = up to { $highest }
tool-papers-socket = socket { $hex }
tool-papers-for-guns = for guns up to { $most }
tool-papers-count = { $count ->
    [one] one
   *[other] { $count } of them
}
tool-calibrated-every = { $count ->
    [one] again after 1 month
   *[other] again after { $count } months
}
tool-line = { $name }: { $told }
tool-line-warned = { $line }; { $warning }
tool-due = was due on { $day }
tool-old = more than a year ago
power-air = air
power-electric = electric
fact-tool-retired = Tool put away: { $name }.
fact-wheel-shared-by = { $person } held the other side of the wheel.
fact-wheel-shared = a second person held the other side of the wheel.
fact-answer-first = Answers before Lugbook from here on.
fact-answer-first-off = Lugbook answers first from here on.
fact-answer-given = Answered first. { $both }
fact-steps-seen = Seen by { $person } and signed on the learner's device: { $steps }.
fact-code-set = Code set for { $person }.
fact-code-refused = A wrong code was given for { $person }.
fact-equipment = What changes how it is raised: { $has }.
fact-equipment-none = Neither air suspension nor a high-voltage battery.
equipment-air-suspension = air suspension
equipment-high-voltage = a high-voltage battery
fact-gear-rated = Weight that is raised: { $weight }; lowest rating of the gear: { $rating }.
fact-around = { $around } around the tread.
nut-pass-loosened = loosened again
shelf-brakes = at least { $pads } thick
look-least = at least { $least } printed on it
