# What to set.
inflate-set = Set it to { $set } now. Cold outside that is { $cold }.
inflate-set-cold-unknown = Leave or fill it to { $set } now. Check it again cold.
inflate-no-figure = No figure can be given yet.

# What to know.
inflate-placard-not-known = The placard is not known. Look at the driver’s door post or in the manual.
inflate-placard-void-by-size = The tire’s size differs from the placard’s, so the placard does not hold. Ask the tire’s maker for its pressure.
inflate-placard-void-by-load = The tire’s load range or index differs from the placard’s, so the placard does not hold. Ask the tire’s maker.
inflate-fitted-not-compared = Nobody compared the tire’s size and load with the placard. Compare them.
inflate-placard-over-sidewall = The placard asks for { $placard }, the sidewall allows { $sidewall }. This tire does not suit the vehicle.
inflate-sidewall-not-known = The sidewall’s maximum was not read. Read it before filling.
inflate-raised-for-cold = { $by } above the placard, because it is colder outside than in here.
inflate-held-at-placard = It is warmer outside than in here. Never set below the placard.
inflate-capped-at-sidewall = The cold outside asks for { $wanted }, over the sidewall’s maximum. Check it again outside, cold.
inflate-under-placard-outside = Cold outside it will be { $by } under the placard. Check it there.
inflate-over-sidewall-outside = Outside it will be { $by } over the sidewall’s maximum. Check it there, cold.
inflate-do-not-bleed-warm = The tire is warm, or may be. Do not bleed it to the placard; check it cold.
inflate-low-though-warm = It is under the placard although warm, so lower still when cold. Fill it and look for a leak.
inflate-inspect-before-filling = At 80 percent of its pressure or less: take the tire off and inspect it before air goes in.
inflate-may-have-run-flat = So low that it may have run flat. Inspect it inside before air goes in.
inflate-step-too-coarse = The gauge’s step is coarser than the room between placard and sidewall.

standing-at-placard = At the placard or above.
standing-low = Below the placard. Fill it, lamp or not.
standing-low-with-lamp = So low that the warning lamp must light. Fill it and look for a leak.

# After a rotation.
pressure-keep = { $to }: same pressure, { $now }.
pressure-raise = { $to }: raise from { $was } to { $now }.
pressure-lower-when-cold = { $to }: lower from { $was } to { $now }, cold only.
pressure-set = { $to }: set to { $now }.
pressure-look-at-placard = { $to }: the placard is not known. Look at it.

# Leaks.
leak-slow = It loses about { $rate } in 30 days: look for a slow leak.
leak-slow-unknown = It loses about { $rate } in 30 days. Part may be the weather: no temperatures were noted. Look for a slow leak.
leak-none = It loses about { $rate } in 30 days: no slow leak shown.
leak-gained = It lost nothing between visits.
