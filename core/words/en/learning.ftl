# What is learned at the vehicle.
competence-drive = looking which axles drive
competence-sidewall = reading a sidewall
competence-tread = measuring tread
competence-moves = choosing where each tire goes
competence-raising = raising a vehicle
competence-locks = seeing that locks or stands hold
competence-wheel-off = taking a wheel off
competence-looks = looking at what a wheel hides
competence-hanging = hanging a wheel by its mark
competence-hand-start = beginning nuts by hand
competence-snug = snugging nuts in order
competence-before-lowering = seeing that all is clear before lowering
competence-final-torque = final torque
competence-recheck = recheck of nuts
competence-pressure = setting pressures

learner-done = { $count ->
    [one] done in 1 job
   *[other] done in { $count } jobs
}
learner-practice = { $count ->
    [one] 1 of them practice
   *[other] { $count } of them practice
}
learner-seen = { $count ->
    [one] seen in 1 job, signed by { $by }
   *[other] seen in { $count } jobs, signed by { $by }
}
learner-standing = { $name }: { $done }.
learner-standing-seen = { $name }: { $done }; { $seen }.

# What an instructor must have seen of an apprentice's work.
see-locks = locks or stands holding
see-before-lowering = all clear before lowering
see-final-torque = final torque

# Decisions that can be asked about, and answered first.
decision-drive = which axles drive
decision-pattern = pattern of the moves
decision-lifts = order of lifts
decision-order = order of nuts
decision-target = wrench setting
answer-none = no answer
answer-same = the same
answer-differs = not the same
answer-open = not compared
answer-both = { $decision }: learner { $own }, Lugbook { $core }: { $same }.

# Why a decision is as it is.
why-by-manual = The manual decides: { $drive }.
why-gear = Gear at hand: { $gear }.
why-printed = The manual prints { $printed }.
why-studs = The wheel has { $count } studs.
rule-drive = An axle drives when a shaft runs into its hubs. The manual, or both ends seen, settle it.
rule-pattern = First every tire above its limit until the next visit, then end of life together; where forecasts can't tell them apart, the maker's pattern, else the trade's.
rule-lifts = Fewest lifts, then least walking. No hand under a corner on a jack alone, no wheel without a nut.
rule-order = The maker's order, else each next nut opposite the last, so that the wheel is drawn on square.
rule-target = Of the settings inside the printed range, the one whose worst reading stays furthest from both ends.

# The card and the learner's logbook.
card-learning = Learning
card-seen-table = What an instructor must see of an apprentice's work.
card-seen-what = What
card-seen-learner = Done by
card-seen-by = Signed by
card-not-seen = not signed
card-no-instructor = not signed: no instructor is in this book
card-on-device = Signed on the learner's device, with the instructor's code. That proves that somebody knew the code, not who.
card-answers-table = The learner answered before Lugbook did.
card-decision = Decision
card-own-answer = Learner
card-core-answer = Lugbook
card-compared = Compared
learner-title = Learner's logbook: { $name }
learner-kicker = Learner's logbook
learner-role = Role
learner-jobs-count = Jobs
learner-practice-jobs = Of these practice
learner-until = Up to
learner-none = Nothing was done with these hands yet.
learner-competences = Competences
learner-competences-table = A job counts once, however many wheels it had.
learner-competence = Competence
learner-done-count = Done
learner-seen-count = Seen
learner-job = Job { $number }: { $name }, { $day }
learner-work = Work
learner-state = State
learner-signed = Signed by
learner-did = Done with own hands
learner-answers = Answers
learner-seen-heading = Seen by an instructor
learner-photos = Photos
learner-foot = Each line is an entry of the learner's own device. It says what was entered; it does not prove who did it.
learner-of = { $done }, { $practice } practice
learner-of-practice = { $done }, practice
learner-seen-by = { $seen }, signed by { $by }
learner-not-seen = not yet
learner-line = { $clock } { $said }
learner-all-sound = { $at }: { $count ->
    [one] 1 part looked at: sound.
   *[other] { $count } parts looked at: all sound.
}
learner-done-practice = { $count ->
    [one] done in 1 practice job
   *[other] done in { $count } practice jobs
}
learner-bundle-proves = Every entry and photo in it is as it was written. That none is left out, and who wrote them, is not proved.
