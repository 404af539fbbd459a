# How wear lies.
tread-even = even
tread-center = worn in the middle
tread-both-shoulders = worn at both shoulders
tread-outer-shoulder = worn at the outer shoulder
tread-inner-shoulder = worn at the inner shoulder
tread-spot = one spot worn low

# Something to check, never a verdict.
check-pressure-high = Check for pressure set too high.
check-pressure-low = Check for low pressure or a slow leak.
check-overload = Check for overload.
check-alignment = Check wheel alignment: camber and toe.
check-cornering = Check for hard cornering.
check-suspension = Check joints of suspension and steering.
check-shocks = Check the shock absorbers.
check-balance = Check wheel balance.
check-brakes = Check for a wheel that was locked, or a sticking brake.
check-rotation-interval = Check whether rotations were left out.

wear-rate = { $rate } mm per 1,000 km
wear-rate-us = { $rate }/32 in per 1,000 mi
wear-left = { $at }: { $mid } left to { $limit }, between { $low } and { $high }.
wear-left-open = { $at }: { $mid } left to { $limit }, at least { $low }.
wear-left-none = { $at }: at or below { $limit } now.
wear-left-unseen = { $at }: no wear was seen; at least { $low } left to { $limit }.
wear-no-rate = { $at }: { $depth }; its wear rate is not known yet.
wear-off-axle = { $at }: { $depth }; it does not wear on its carrier.
wear-looks = { $at } is { $pattern }. { $checks }

wear-unknown-one-visit = One visit was read: wear rates are unknown until the next one, with its odometer.
wear-unknown-no-tire-twice = No tire was read twice: wear rates are unknown until then.
wear-unknown-some-positions = Some positions can’t be told apart yet: read every tire at the next visit.

wear-next-interval = Next visit at { $odometer } on the odometer.
wear-next-unknown-wear = Next visit at { $odometer } on the odometer: the wear is not known yet, so rather early. Source: { $source }.
wear-next-limit = Next visit at { $odometer } on the odometer: a tire may reach its limit.

wear-slipped = Row { $row }, { $at } at { $odometer }: { $read } was read, { $expected } would fit the others. Measure again.
wear-slipped-reading = { $at } at { $odometer }: { $read } was read, { $expected } would fit the others.

wear-no-readings = There is no reading. Give at least one row.
wear-too-many-readings = { $readings } readings are too many: at most { $most }.
wear-no-depth = Row { $row } has no depth.
wear-two-at = Two tires were read at { $at } at { $odometer }.
wear-figure = The expected rate is no usable number.
wear-row-missing-column = The column { $column } is missing.
wear-row-no-such-place = Row { $row }: no position is called “{ $text }”.
wear-row-unreadable = Row { $row }, { $column }: { $why }
wear-row-no-depth = Row { $row } has no depth.
wear-row-too-many = More than { $most } rows are too many.
