# What is not as it should be, in one sentence. The place and the state stand beside it.
finding-seen = { $part } looked at.
finding-seen-note = { $part }: { $note }.
finding-thin = { $part } { $thickness } thick; at least { $least } is printed.
finding-tread-under = Lowest tread { $lowest }, under the limit of { $limit }.
finding-tread-over = Lowest tread { $lowest }; the limit is { $limit }.
finding-tread-unlimited = Lowest tread { $lowest }; no limit is known for this place.
finding-tread-advice = Lowest tread { $lowest }, under the { $also } that is advised or molded.
finding-deeper = Tread { $now }, deeper than the { $before } of { $day } by more than both gauges can err. Measure again, or check that it is the same tire.
finding-deeper-explained = Tread { $now }, deeper than the { $before } of { $day } by more than both gauges can err. A reason is given.
finding-uneven = Axle { $axle }: one tire ends at { $most }, another at { $least }.
finding-uneven-set = All wheels drive, and the set ends between { $least } and { $most }. The manual says how far apart they may be.
finding-old = Made at least { $age } before this visit. Advice: look it over each visit.
finding-not-placard-size = The tire is { $fitted }; the placard is for { $placard }, so its pressure may not hold.
finding-low-set = Set to { $pressure }, under the placard’s { $placard }.
finding-low-found = Last read { $pressure }, under the placard’s { $placard }.
finding-lamp-on = The tire pressure lamp is on.
finding-clash = The torque is printed as { $first } and as { $second }, which do not agree. Settle which one holds.
finding-no-torque = The torque specification was looked for and not found.
finding-not-proven = { $count ->
    [one] Nut { $nuts } clicked without moving: not proven. Back it off a quarter turn and tighten again.
   *[other] Nuts { $nuts } clicked without moving: not proven. Back each off a quarter turn and tighten again.
}
finding-moved = { $count ->
    [one] Nut { $nuts } moved when it was checked again. Repeat the recheck.
   *[other] Nuts { $nuts } moved when they were checked again. Repeat the recheck.
}
finding-wrench-not-known = { $tool }: nobody knows when it was last calibrated.
finding-wrench-overdue = { $tool }: last calibrated more than a year ago.
finding-wrench-in-the-future = { $tool }: its calibration day has not come yet. One of the two dates is wrong.

age-years-months = { $years ->
    [0] { $months ->
        [one] 1 month
       *[other] { $months } months
    }
    [one] 1 year, { $months ->
        [0] no months
        [one] 1 month
       *[other] { $months } months
    }
   *[other] { $years } years, { $months ->
        [0] no months
        [one] 1 month
       *[other] { $months } months
    }
}
age-years = { $years ->
    [one] 1 year
   *[other] { $years } years
}

source-eye = judged by eye
finding-tool-overdue = { $tool }: its calibration was due on { $day }.
