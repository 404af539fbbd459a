# The four signal words of ANSI Z535.
signal-danger = DANGER
signal-warning = WARNING
signal-caution = CAUTION
signal-notice = NOTICE

# Cautions: the hazard and what follows from it, at most 20 words, no action in
# them. Common practice, no source.
caution-chips-and-noise = A power tool throws chips and makes noise that damage eyes and ears for good.
caution-turning-socket = A turning socket winds up loose sleeves and gloves and can tear off fingers.
caution-thrown-socket = A gun that is tried with a socket on can throw it.
caution-gun-direction = A gun running the wrong way overtightens the nut or breaks its stud.
caution-socket-slips = A socket that is not fully home and square slips, rounds the nut and hurts hands.
caution-nut-in-socket = A nut stuck in the socket starts crooked and ruins the stud's thread.
caution-falling-wheel = The wheel can drop off its studs as soon as the last nut is gone.
caution-unheld-wheel = A wheel without a nut falls as soon as nobody holds it.
caution-heavy-wheel = This wheel is too heavy for one person: it can injure backs, hands and feet for good.
caution-inner-wheel = The inner wheel can slide off its hub once the outer one is gone.
caution-loose-wheel = A loose wheel rolls away, tips over or trips people.
caution-falling-tools = Tools laid high fall on whoever works below.
caution-lost-nuts = A nut lost on the floor is missing on the wheel.
caution-hose-underfoot = A twisted hose across the way trips people.
caution-vehicle-rolls = A vehicle that can roll can fall off its jack.
caution-jack-alone = A vehicle on a jack alone falls without warning and kills whoever is under it.
caution-under-vehicle = A vehicle that slips off its stands or locks crushes whoever is under it.
caution-lift-points = A vehicle raised away from its lift points can slip off, and its body bends.
caution-crack-on-ground = Force on the nuts of a raised wheel can pull the vehicle off its jack.
caution-overloaded-gear = Gear loaded beyond its rating can collapse without warning.
caution-lowering = A vehicle coming down crushes whoever and whatever is under it.
caution-turning-wheel = A wheel driven by the engine can throw the vehicle off its stands.
caution-hot-brakes = Brakes stay hot long after the drive and burn hands.
caution-brake-dust = Brake dust in the air can damage lungs for good.
caution-pinched-fingers = Fingers between wheel and hub get pinched.
caution-crossed-thread = A nut not begun by hand can cross its thread and ruin the stud.
caution-crooked-seat = A wheel drawn on crooked can come loose on the road.
caution-limiting-bar = A torque-limiting bar can leave nuts loose or overtight, and the wheel can come off.
caution-wheel-turns = A wheel without weight turns under the wrench: nuts stay loose and the wheel can come off.
caution-tire-bursts = A tire that bursts while being filled can kill whoever stands beside it.
caution-run-flat = A tire run flat hides damage and can burst when it is filled again.
caution-nuts-settle = Nuts can loosen in the first miles, and the wheel can come off.
caution-old-marks = Marks of an earlier job send a tire to the wrong corner.
caution-passing-traffic = Passing traffic can kill people who work at the roadside.
caution-not-seen = A stopped vehicle that is seen too late can be hit at full speed.
caution-slope = A vehicle raised on a slope rolls off its jack onto whoever is beside it.
