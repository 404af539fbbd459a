# Which axles drive, in one sentence.
verdict-front = The front axle drives.
verdict-rear = The rear drives.
verdict-all = All axles drive.
verdict-part-time = One axle always drives, and the driver engages the other.
verdict-none = No axle drives.
verdict-unknown = Which axles drive is not settled.
verdict-or-part-time = All axles can drive, either always or when the driver engages them.
verdict-contradiction = What was found can't all be right. { $one } { $other }
verdict-and-next = { $verdict } { $next }

# How one axle stands.
axle-driven = drives
axle-by-choice = drives when engaged
axle-uncoupled = can drive, was not coupled
axle-not-driven = does not drive
axle-unsettled = not settled
axle-contradicted = contradicts itself

# The one look that would settle it.
next-look-behind-hub = Look behind the hub at { $at }: does a shaft run into it?
next-look-transfer-control = Look for a lever, switch or locking hubs that engage the second axle.
next-look-manual = Read in the vehicle's manual which axles drive.
next-look-vehicle-plate = Read the drive on the vehicle's own plate or build sheet: one manual may cover several.

# Each thing that was seen, turned or told, and what it says.
evidence-shaft-seen = { $at }: a shaft runs into the hub.
evidence-no-shaft-seen = { $at }: nothing runs into the hub from behind.
evidence-shaft-end-seen = { $at }: a shaft end shows in the hub. A short stub would look the same.
evidence-hub-covered = { $at }: a cover hides the hub. That says nothing.
evidence-capless-unit = { $at }: a closed bearing unit looks the same with and without a shaft.
evidence-free-hubs-fitted = { $at }: free-wheeling hubs belong to an axle that the driver engages.
evidence-own-motor = { $at }: the axle has a motor of its own.
evidence-engine-running = { $at }: turned with the engine on. That says nothing.
evidence-on-the-ground = { $at }: turned with the wheels on the ground. That says nothing.
evidence-brake-set = { $at }: the parking brake was set. That says nothing.
evidence-brake-not-known = { $at }: the wheel was held, perhaps by the parking brake. That says nothing.
evidence-hubs-free = { $at }: the free-wheeling hubs were set free. That says nothing of the shafts.
evidence-shaft-turned = { $at }: the shaft turned with the wheel.
evidence-shaft-turned-not-held = { $at }: shaft and wheel turned in park or gear, so this axle was not coupled.
evidence-shaft-stayed = { $at }: the shaft stayed still while the wheel turned, so this wheel was not coupled.
evidence-other-way = { $at }: the opposite wheel turned the other way. A differential joins them.
evidence-same-way = { $at }: the opposite wheel turned the same way. A differential joins them.
evidence-same-way-not-held = { $at }: both wheels turned in park or gear, so this axle was not coupled.
evidence-free-in-neutral = { $at }: the wheel turned alone in neutral. That says nothing.
evidence-opposite-not-watched = { $at }: nobody watched the opposite wheel. That says nothing.
evidence-turns-alone-in-gear = { $at }: the wheel turned alone in park or gear. A disengaged axle would do the same.
evidence-motor-turns-along = { $at }: the wheel turned alone, and its motor may have turned along. That says nothing.
evidence-held-in-neutral = { $at }: the wheel was held in neutral. A brake or a bearing drags.
evidence-held-through-locking = { $at }: the gearbox held the wheel through a locking differential.
evidence-held-in-gear = { $at }: the wheel was held in park or gear. A dragging brake would feel the same.
evidence-held-only-in-gear = { $at }: the wheel was held in park or gear and free in neutral.
evidence-no-such-axle = This vehicle has no axle { $axle }.
evidence-trailer-class = It is a trailer.
evidence-manual = The manual says { $drive }.
evidence-owner = The owner says { $drive }.

# Before a hand turns a wheel.
turn-engine-running = The engine is on. Switch it off and take the key away.
turn-not-on-lift-or-stands = This axle is not secured. Raise it on a lift or set a stand at each end.
turn-others-not-chocked = The wheels on the ground are not chocked. Chock each on both sides.
