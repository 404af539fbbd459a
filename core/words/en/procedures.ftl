# Steps: a verb first, one action, at most 15 words. The place is shown apart.
# US shop usage. What stands here is common practice; the maker's manual stands above it.
procedure-rotation-on-a-lift = Tire rotation on a lift
procedure-rotation-lift-by-lift = Tire rotation with one jack, lift by lift
procedure-rotation-with-jack-and-stands = Tire rotation with a jack and four stands
procedure-wheel-off-and-on = Wheels off and on for other work
procedure-spare-at-the-roadside = Spare fitted at the roadside
procedure-seasonal-changeover = Seasonal changeover
procedure-recheck-visit = Recheck of wheel nuts
procedure-tread-and-age-check = Tread and age check, wheels on the ground

step-damage = Note the damage you see walking round the vehicle.
step-approval = Ask the customer to approve the work.
step-lock-key = Find the key for the locking nuts.
step-odometer = Read the odometer.
step-placard = Read the cold pressures on the tire placard.
step-torque = Read the wheel nut torque in the vehicle's manual.
step-studs = Count the studs of one wheel.
step-drive = Settle which axles drive, from the manual or at the hubs.
step-sidewall-photo = Photograph the outer sidewall.
step-sidewall = Read the size, service description and date on the sidewall.
step-mark = Chalk a mark on the tire.
step-tread = Measure every groove at three places, outer groove first.
step-plan = Choose where each tire goes.

step-place = Look whether this place is level, firm and away from traffic.
step-warned = See lights on, vest on, triangle out, brake set, opposite wheel chocked.
step-spare = Read the spare: size, age, pressure, nuts, speed limit.
step-clear-jack = Raise the flat tire's corner until the wheel is just clear.
step-hang-spare = Put the spare on, its mark read first.
step-all-clear-jack = Look under the vehicle for people, feet and tools.
step-flat-photo = Photograph what made the tire flat.
step-tell-spare = Tell the driver the spare's speed limit and when to replace it.
step-set = Choose the set that goes on.
step-coming-sidewall = Read the sidewall of the tire that goes on here.
step-coming-mark = Chalk a mark on the tire that goes on here.
step-coming-tread = Measure every groove of the tire that goes on here.
step-own-nuts = Look whether the coming wheels need nuts of their own.
step-stored = Put the wheels that came off on their rack.
step-wheels = Choose the wheels that come off.
step-gear = Choose the jack and stands at hand.
step-middles = Find which axles the manual raises in the middle.
step-tray-lift = Count the nuts and tools left over from this lift.

step-lift-points = Set the lift's pads under the maker's lift points.
step-clear = Raise the vehicle until its wheels are just clear.
step-rock-lift = Rock the vehicle on the lift.
step-full = Raise the vehicle to working height.
step-held-lift = See every lock of the lift engaged and carrying.

step-chock-others = Chock the wheels that stay on the ground, front and back.
step-clear-corner = Raise the vehicle until the wheels that come off are just clear.
step-stands = Set a stand under each support point next to the jack.
step-rest = Lower the vehicle onto its stands.
step-rock = Rock the vehicle on what holds it.
step-work-done = See the other work done and no tool left in the wheel wells.
step-off-stands = Raise the vehicle until its stands are free.
step-stands-out = Pull the stands out from the side.
step-brake = Set the parking brake on level, firm ground.
step-chock-rear = Chock both rear wheels, front and back.
step-cracked = Crack each nut a quarter turn while the tire stands.
step-jack-points = Find the maker's points for jack and stands.
step-front-up = Raise the front until both wheels are just clear.
step-front-stands = Set a stand under each front support point.
step-front-rest = Lower the front onto its stands.
step-rear-up = Raise the rear until both wheels are just clear.
step-rear-stands = Set a stand under each rear support point.
step-rear-rest = Lower the rear onto its stands.
step-clear-stands = See all four wheels hang just clear.
step-rock-stands = Rock the vehicle on its four stands.
step-held-stands = See every stand upright, latched and carrying.

step-wheel-off = Take the wheel off.
step-looks = Look at hub face, studs, seats, valve and tire.
step-looks-behind = Look at pads, disc, hose, boots, damper and wheel bearing.
step-finding-photo = Photograph what is not sound here.
step-mark-read = Read the mark on the tire before the nuts.
step-started = Begin each nut by hand.
step-snug = Snug the nuts in star order.
step-tray = Count the nuts and tools left over.
step-all-clear = Look under the whole vehicle for people, tools and wheels.
step-lower = Lower the vehicle to the ground.

step-rear-off-stands = Raise the rear until both stands are free.
step-rear-stands-out = Pull both rear stands out from the side.
step-rear-down = Lower the rear to the ground.
step-chock-rear-again = Chock both rear wheels again, front and back.
step-front-off-stands = Raise the front until both stands are free.
step-front-stands-out = Pull both front stands out from the side.
step-front-down = Lower the front to the ground.

step-final = Tighten each nut to final torque in star order.
step-rechecked = Tighten each nut again at the final torque, in star order.
step-recheck-again = Tell the driver when the next recheck is due.
step-pressure-found = Measure the pressure as it is.
step-pressure = Set the cold pressure from the placard.
step-lamp-before = Look at the tire pressure lamp before the work, ignition on.
step-lamp = Look at the tire pressure lamp with the ignition on.
step-relearn = Relearn the sensor positions where the vehicle asks for it.
step-key-back = Put the lock key back where it is kept.
step-recheck = Tell the driver when the nuts are checked again.
step-sign = Sign the job.

choice-away = level, firm, traffic well away
choice-traffic-left = level, firm, traffic passes on the left
choice-traffic-right = level, firm, traffic passes on the right
choice-close = traffic passes close by: tow
choice-slope = sloping or soft ground: tow
choice-same-nuts = the nuts that came off fit
choice-own-nuts = nuts of their own
choice-at-hand = at hand
choice-none-fitted = no locking nuts fitted
choice-missing = missing
choice-jack-two-stands = a floor jack and two stands
choice-jack-alone = a floor jack alone, with a full-size spare
choice-roadside-jack = the vehicle's own jack at the roadside: one wheel
choice-corners-only = none, or not known: each corner by itself
choice-front-middle = the front axle
choice-rear-middle = the rear axle
choice-both-middles = both axles
choice-done = done
choice-owner-told = the owner was told how
choice-not-needed = not needed

circumstance-lift = on a lift
circumstance-stands = on jack stands
circumstance-roadside = at the roadside
circumstance-customer = a customer's vehicle
circumstance-own = own vehicle
circumstance-air = air gun
circumstance-electric = electric gun
circumstance-hand-tools = hand tools
circumstance-recheck-left = another recheck is due

# Why a procedure's file is not taken. $reason ends the sentence.
bad-procedure = { $file }, line { $line }: { $reason } Nothing of this file is used.
bad-unreadable = this cannot be read: { $why }.
bad-too-large = the file is larger than 256 kB.
bad-step-count = { $count ->
    [0] there are no steps.
   *[other] there are { $count } steps; at most 200 are taken.
}
bad-twice-the-id = a second step has the id “{ $step }”.
bad-no-sentence = step “{ $step }” needs either “says” or “text”, not both.
bad-choices = step “{ $step }” and its choices do not go together; only a choice step has them.
bad-after = it comes after “{ $step }”, which does not stand before it with that choice.
bad-caution = the caution “{ $code }” is not known.
bad-circumstance = the circumstance “{ $code }” is not known.
bad-id = the id must be letters, digits and hyphens, 64 at most.
bad-nothing-to-meet = step “{ $step }” waits for “{ $condition }”, and no step before it asks for that.
bad-danger-left-out = no step carries the danger “{ $code }”; no file can leave a danger out.
bad-no-signature = the last step must be the signature.
bad-no-gate = step “{ $step }” must wait for “{ $condition }”; no file can leave that gate out.
