# What to do: a verb first, one action, at most 15 words. The place is shown apart.
# Common practice, no source; the vehicle's manual stands above it.
act-secure-site = Stop at a safe, level place clear of traffic.
act-secure-vehicle = Set the parking brake, with the engine off.
act-fetch-spare = Fetch the spare.
act-chock = Chock this wheel on both sides.
act-unchock = Take this wheel's chocks away.
act-crack-nuts = Crack each nut loose a quarter turn while the tire stands.
act-raise-runways = Raise the runways to working height.
act-lower-runways = Lower the runways.
act-set-arms = Set the lift's arms under the maker's lift points.
act-raise-clear = Raise the vehicle until its wheels are just clear.
act-set-jack = Set the jack under the maker's lift point.
act-raise = Raise to working height.
act-set-stand = Set a stand under the maker's support point.
act-rest-on-stands = Lower slowly until the stands carry the weight.
act-rest-on-locks = Lower slowly until the locks carry the weight.
act-see-stands = See every stand upright, latched and carrying.
act-see-locks = See every lock engaged and carrying.
act-rock = Rock the vehicle.
act-wheel-under = Lay this wheel flat under the sill.
act-wheel-out = Pull this wheel out from under the sill.
act-nuts-off = Take all nuts off but the one at twelve o'clock.
act-wheel-off = Take the last nut and this wheel off by hand.
act-hold-nut = Run one nut onto the inner wheel by hand.
act-wheel-on = Hang this wheel on the stud at twelve o'clock.
act-start-nuts = Begin each nut by hand.
act-snug = Snug the nuts in star order.
act-clear-under = Look under the whole vehicle for people, tools and wheels.
act-take-weight = Raise a little, until stands or locks are free.
act-remove-stand = Pull the stand out from the side.
act-lower = Lower to the ground.
act-stow = Stow the wheel that is left over.
act-final-torque = Tighten each nut to final torque in star order.

# What else belongs to an action, shown smaller.
detail-secure-site = Lights on, vest on, triangle out. On a slope or close to traffic, have it towed.
detail-secure-vehicle = Park, or a gear of a manual gearbox. Key away, nobody inside.
detail-set-jack = Firm, level ground. Where the maker's lift points are, the manual says.
detail-rock = A light push from the side. If anything shifts, lower and set it again.
detail-wheel-under = Sidewall down, clear of the jack, pushed in from the side.
detail-nuts-off = Nuts into a tray within reach, counted.
detail-wheel-off = A heavy wheel takes two people, one at each side. Flat on the ground, clear of the way.
detail-wheel-on = On wheel bolts, a guide pin at twelve o'clock takes the stud's place.
detail-start-nuts = A nut that binds comes off and is begun again.
detail-snug = One person presses the lower edge in while the nuts run down.
detail-final-torque = With a torque wrench and the tire on the ground. The figure is the maker's.

# An action with its place and wheel.
action-at = { $at }: { $do }
action-wheel = { $at }: { $do } It is the wheel from { $wheel }.

# Where an action stands in a job, and which tire it handles.
turn = Action { $n } of { $of }, lift { $lift } of { $lifts }.
turn-before = Action { $n } of { $of }, before the first lift.
turn-mark = It is the tire marked { $mark }.
turn-wheel = It is the wheel from { $wheel }.

# How many lifts.
lifts-none = Nothing has to be raised.
lifts-proved = { $count ->
    [one] One lift does it. No order needs fewer.
   *[other] { $lifts } lifts do it. No order needs fewer.
}
lifts-not-proved = { $lifts } lifts do it. Whether { $least } would is not proved.

# What to know about the gear.
note-not-checked = { $part } was not checked against the load: a rating or a weight is not known.
note-axle-share-assumed = Axle weights are not known: each axle was taken at { $percent } % of the vehicle.
note-corners-only = No lift point in the middle of an axle is given, so each end is raised by itself.
gear-lift = The lift
gear-bridge-jack = The bridge jack
gear-jack = The jack
gear-stand = A stand

# Why there is no order of work.
lift-no-axles = The vehicle has no axles. Give at least one.
lift-too-many-axles = That is more than { $most } axles. Plan the vehicle in parts.
lift-too-much-gear = That is more than { $most } of one kind of gear. Give at most { $most }.
lift-no-such-place = This vehicle has no place { $at }. Name one of { $known }.
lift-moved-twice = The wheel at { $at } is sent to two places. Send it to one.
lift-two-wheels = Two wheels are sent to { $at }. Send one.
lift-nowhere-to-go = The wheel at { $at } has to make room and is sent nowhere. Say where it goes.
lift-overloaded = { $part } is rated { $rating } and would have to carry { $load }. Use gear rated for it.
lift-not-with-this-gear = It can't be done with this gear.
lift-lacking = It can't be done with this gear. It could with { $needs }.
lift-too-large = No order was found in the time allowed. Split the moves into two jobs.
need-stands = { $count } stands
need-full-size-spare = a full-size spare
need-bridge-jacks = { $count ->
    [one] a bridge jack
   *[other] { $count } bridge jacks
}
need-other-gear = another kind of lift or a jack and stands
need-or = { $one } or { $other }

# Why a file is no request.
request-too-long = The file is longer than { $most } characters. Give only the request.
request-not-toml = Line { $line } of the file can't be read: { $said }.
request-not-toml-whole = The file can't be read: { $said }.
request-reading = { $field }: { $why }
request-zero = { $field } is zero. Give what is marked on the gear or weighed.
request-no-such-place = This vehicle has no place “{ $given }”. Name its places as FL, FR, RL, RR, 2LO or SP.
request-named-twice = “{ $given }” names a place that was named before. Name each once.
request-no-such-axle = This vehicle has no axle { $given }. Number its axles from the front.
request-too-many-axles = That is more than { $most } axles. Plan the vehicle in parts.
request-not-of-this-gear = { $field } does not belong to this kind of gear. Leave it out.
