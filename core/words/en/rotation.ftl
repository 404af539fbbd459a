# What a tech can shout across the shop.
shout-rearward-cross = Rears straight forward, fronts cross to the back.
shout-forward-cross = Fronts straight back, rears cross to the front.
shout-x = Everything crosses: each front to the opposite rear, each rear to the opposite front.
shout-front-to-rear = Front and rear swap on each side.
shout-side-to-side = Left and right swap on each axle.
shout-rearward-cross-five = Rears straight forward, right front crosses back, spare to the right rear, left front becomes the spare.
shout-forward-cross-five = Rears cross to the front, left front straight back, spare to the right rear, right front becomes the spare.
shout-x-five = Rears cross to the front, right front crosses back, spare to the right rear, left front becomes the spare.
shout-front-to-rear-five = Left side swaps front and rear, right rear straight forward, spare to the right rear, right front becomes the spare.
shout-leave-as-is = Leave every wheel where it is.
shout-flat = The spare goes on at { $at }, the flat comes off.
shout-flat-forward = { $good } goes to { $at }, the spare goes on at { $good }, the flat comes off.
shout-swap = Swap { $a } and { $b }.
shout-cycle = { $from } goes to { $to }
shout-other = { $moves }.

# What a constraint saw. $tire is where the tire is now, $to where it would go.
why-against-arrow = The arrow on the { $tire } tire would point backward at { $to }: it is made for the { $side } side.
why-directional-and-asymmetric = The { $tire } tire has an arrow and an outside: it fits the { $side } side only, on its rim or off it.
why-arrow-not-seen = The { $tire } tire rolls one way, and nobody has told which side it is made for.
why-studs-change-side = The studs of the { $tire } tire would roll the other way at { $to }.
why-size-differs = { $to } takes { $axle }; the { $tire } tire is { $size }.
why-offset-differs = { $to } takes a wheel offset of { $axle }; the { $tire } wheel has { $wheel }.
why-wheel-touches-brake = The { $tire } wheel is too small inside for the brake at { $to }.
why-seat-does-not-fit = The nuts at hand don’t fit the seats of the { $tire } wheel.
why-for-emergency-only = A temporary spare is for an emergency only: { $tire } to { $to } is out.
why-too-shallow-to-steer = The { $tire } tire has { $depth }; a steer axle needs { $limit }.
why-retread-on-steer = The { $tire } tire is a retread; a bus may not steer on it.
why-regrooved-on-steer = The { $tire } tire is regrooved; it should not steer.
why-pair-apart = At { $to } the two tires of the pair would differ by { $difference } in diameter; { $allowed } is allowed.
why-larger-inside = At { $to } the larger tire of the pair would be inside, by { $difference } in diameter.
why-carries-too-little = The { $tire } tire carries { $carries }; { $to } needs { $needs }.
why-passenger-size-on-truck = A passenger size counts for less on this vehicle: the { $tire } tire carries { $carries }, { $to } needs { $needs }.
why-placard-below-reference = At the placard’s { $placard } the { $tire } tire may carry too little: its load is stated at { $reference }.
why-slower-than-needed = The { $tire } tire is good for { $speed }; the vehicle needs { $needed }.
why-slower-than-needed-winter = The { $tire } winter tire is good for { $speed }: put a reminder where the driver sees it.
why-old = The { $tire } tire is { $years ->
    [one] { $years } year
   *[other] { $years } years
} old.

# What would lift it.
lift-remount-on-rim = Turning the tire round on its rim would allow it.
lift-another-tire = A tire made for that side, or one without an arrow, would allow it.
lift-keep-side = Keeping each tire on its side avoids it.
lift-look-at-arrow = Look at the arrow on the sidewall.
lift-same-size-all-round = One size on all axles would allow it, where the maker’s manual does.
lift-like-wheels = Wheels alike on all axles would allow it.
lift-fitting-nuts = Nuts that fit that wheel would allow it.
lift-full-size-spare = A full-size spare like the other tires would allow it.
lift-deeper-tire = A deeper tire would allow it.
lift-new-tire = A tire neither retreaded nor regrooved would allow it.
lift-closer-partner = A partner nearer in diameter would allow it.
lift-swap-pair = Swap the two tires of the pair.
lift-stronger-tire = A tire with a higher load index would allow it.
lift-makers-word = The vehicle maker’s word on load and pressure would settle it.
lift-drive-slower = Stay below the tire’s speed.
lift-inspect-or-replace = Have it inspected, or fit a newer tire.

# A pattern that is out.
refused = { $pattern } is out. { $because }
because = { $reason } { $lift } Source: { $source }.

# Why a plan.
reason-makers-pattern = It is the maker’s pattern, and nothing forecast is clearly better.
reason-trades-front-drive = It is the trade’s pattern for front drive (common practice, no source).
reason-trades-rear-drive = It is the trade’s pattern for rear drive (common practice, no source).
reason-trades-all-drive = It is the trade’s pattern for all-wheel drive (common practice, no source).
reason-trades-part-time-drive = It is the trade’s pattern for part-time four-wheel drive (common practice, no source).
reason-trades-nothing-drives = Nothing drives: front to rear keeps each tire on its side (common practice, no source).
reason-trades-arrows = Tires with arrows stay on their side.
reason-trades-studs = Studs keep their side (common practice, no source).
reason-trades-unequal-sizes = Front and rear take different sizes: only left and right can change.
reason-drive-front-straight-back = The front wheels drive, steer and wear fastest: they go straight back to rest, and the rested ones cross over.
reason-drive-rear-straight-forward = The driving rear wheels wear fastest: they go straight forward to rest, and the others cross over.
reason-no-history = There is no wear history yet: forecasts can’t be told apart.
reason-within-uncertainty = Another plan looked { $better } closer together; less than { $band } can’t be told apart.
reason-keeps-above-limit = { $tires ->
    [one] One tire stays above its limit that would fall below it where it is.
   *[other] { $tires } tires stay above their limits that would fall below them where they are.
}
reason-below-limit = { $tires ->
    [one] One tire falls below its limit before the next visit.
   *[other] { $tires } tires fall below their limits before the next visit.
}
reason-deepest-at-rear = Some tires are new: the deepest pair goes to the rear.
reason-closes-spread = The set ends within { $plan }; left alone, within { $left }.
reason-widens-spread = The set ends { $plan } apart; left alone, { $left }.
reason-fewest-moved = Of equal plans it moves the fewest wheels: { $moved }.
reason-remounts = { $tires ->
    [one] One tire must be turned round on its rim.
   *[other] { $tires } tires must be turned round on their rims.
}
reason-axle-means = Front and rear then average { $front } and { $rear }.
reason-later-pair-apart = At visit { $visit } a pair of duals may lie too far apart: measure before moving.

# What each tire will have left, by where it is now.
forecast-next = Left at the next visit: { $next }.
forecast = Left at the next visit: { $next }; after { $visits } visits: { $end }.

# Statements about the answer.
note-nothing-may-move = No wheel may change its place.
note-only-with-remounting = No rotation is possible with the tires as they sit on their rims. Turning them round on the rims would allow: { $patterns }.
note-no-pattern-fits = No named pattern fits, and without wear rates no other move has a reason.
note-leaving-is-as-good = Leaving every wheel where it is does as well, as far as can be told.
note-below-limit-anywhere = The { $tire } tire is below its limit wherever it goes: replace it.
note-set-apart = The tires of this all-wheel-drive set lie { $spread } apart. Ask the maker’s manual how much it allows.
note-some-say-x = Some say X for permanent all-wheel drive. Source: { $source }.
note-standing = As it stands: { $reason } Source: { $source }.

# What to look at next.
look-which-axle-drives = Find out which axle drives: look for a shaft at each hub, and whether it turns with the wheel.
look-depths = Measure the tread of every tire.
look-wear-rates = Measure again at the next visit, with the odometer: then wear rates are known.
look-interval = Say how far the vehicle is driven between visits.
look-sizes = Read the size on each sidewall.
look-arrows = Look for a rotation arrow on each sidewall.

# Requests that can’t be planned.
rotation-no-wheels = There is no wheel to plan for. Give one tire for each position.
rotation-too-many-axles = { $axles } axles are too many: at most { $most } can be planned.
rotation-horizon = { $visits } visits can’t be planned: give 1 to { $most }.
rotation-two-at = Two tires are said to be at { $at }. One place holds one tire.
rotation-no-such-place = This vehicle has no { $at }.
rotation-nothing-at = No tire is given at { $at }.
rotation-figure = { $what } is no usable number.
rotation-figure-at = { $what } of the { $at } tire is no usable number.
rotation-grooves = { $grooves } grooves at { $at } are too many: at most { $most }.
rotation-pattern-does-not-fit = The maker’s pattern { $pattern } does not fit these axles.
rotation-side-without-arrow = The { $at } tire is said to suit one side and to have no arrow.
rotation-temporary-but-worked = The { $at } tire is said to be a temporary spare, and studded, retreaded or regrooved.
rotation-dual-above-single = The { $at } tire is said to carry more as one of a pair than alone.
rotation-spare-wears = A wear rate is given for the spare, which does not roll.
figure-interval = The distance between visits
figure-next-visit = The distance to the next visit
figure-rate = The wear rate
figure-diameter = The diameter
figure-load = The load
figure-speed = The speed
figure-offset = The wheel offset
figure-pressure = The pressure
figure-margin = The uncertainty or the price of remounting
rotation-file = Line { $line } can’t be used: { $message }.
rotation-file-place = No position is called “{ $text }”. Write FL, FR, RL, RR, 1L, 2LO … or SP.
rotation-file-pattern = No pattern is called “{ $text }”.
rotation-file-size = “{ $text }” is no tire size.
rotation-file-service = “{ $text }” is no service description.
rotation-file-number = { $field } of { $at }: { $why }
rotation-file-number-alone = { $field }: { $why }
