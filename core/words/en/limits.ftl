# Sources and how far to trust them.
source-titled = { $title } ({ $grade })
grade-rule = rule, text read
grade-manual = maker’s manual
grade-two-secondary = two secondary sources
grade-secondary = secondary source
grade-computed = computed
grade-common-practice = common practice, no source
grade-memory = from memory
grade-design = our choice

# What a source is, where its title alone does not say it; behind “cited-” the title.
cited-geometry = geometry
cited-the-vehicle-s-own-specification-as-printed = the vehicle's own specification, as printed
cited-minimum-printed-on-the-part = minimum printed on the part
cited-the-vehicle-s-manual-as-recorded = the vehicle's manual, as recorded
cited-generic-installer-chart = generic installer chart
cited-load-range-page = load range page
cited-engineering-data-on-nut-factors = engineering data on nut factors
cited-the-load-printed-on-the-sidewall = the load printed on the sidewall
cited-load-index-tables-secondary = load index tables, secondary
cited-winter-tread-advice = winter tread advice
cited-uk-practice = UK practice
cited-france-order-text-jorfarti000038987859 = France, order text JORFARTI000038987859
cited-fmvss-109-119-wear-bars = FMVSS 109/119 wear bars
cited-fmvss-139-wear-bars = FMVSS 139 wear bars
cited-fmvss-119-s6-4-motorcycle = FMVSS 119 S6.4 motorcycle
cited-an-owner-s-manual-rotate-every-5-000-to-10-000-km = an owner's manual: rotate every 5,000 to 10,000 km
cited-a-tire-maker-s-public-page-on-rotation = a tire maker's public page on rotation
cited-tm-9-2610-200-14-table-2-1-dual-matching = TM 9-2610-200-14, table 2-1: dual matching
cited-owner-s-manuals-side-to-side-when-front-and-rear-sizes-differ = owner's manuals: side-to-side when front and rear sizes differ
cited-owner-s-manuals-no-dissimilar-spare-in-a-rotation = owner's manuals: no dissimilar spare in a rotation
cited-49-cfr-393-75-d-quoted-in-an-nhtsa-letter-of-1974-buses-front-wheels = 49 CFR 393.75(d), quoted in an NHTSA letter of 1974: buses, front wheels
cited-49-cfr-393-75-e-regrooved-2-232-kg-and-more = 49 CFR 393.75(e): regrooved, 2,232 kg and more
cited-owner-s-manual-1998-keep-the-direction-of-rotation = owner's manual, 1998: keep the direction of rotation
cited-nhtsa-letter-11497-wear-bars-at-2-32-in = NHTSA letter 11497: wear bars at 2/32 in
cited-the-request = the request
cited-maryland-comar-11-22-04-06-bias-and-radial-mixed-on-one-axle = Maryland COMAR 11.22.04.06, bias and radial mixed on one axle

# How a depth stands.
depth-refused = { $lowest } is below the limit of { $limit }. Replace the tire. Source: { $source }.
depth-below = { $lowest } is below { $limit }. Replace the tire, or read the rule that holds here. Source: { $source }.
depth-at-limit = { $lowest } is at the limit of { $limit }. Plan new tires now. Source: { $source }.
depth-watch = { $lowest } is near { $limit }. Look again before long. Source: { $source }.
depth-sound = { $lowest } is clear of the limit of { $limit }. Source: { $source }.
depth-no-limit = { $lowest }: no limit is known here for this vehicle. Look up the local rule.
depth-advice = { $lowest } is below the { $limit } advised for winter. Source: { $source }.
depth-wear-bar = { $lowest } is below the wear bars, { $limit } high. Plan new tires now. Source: { $source }.

spread-within = The two tires differ by { $apart }; up to { $limit } is allowed. Source: { $source }.
spread-over = The two tires of this axle differ by { $apart }, over the { $limit } allowed. Source: { $source }.

# Whose limits hold.
limits-held = Limits: { $chosen }.
limits-default = Limits, by default: { $chosen }.
limits-at-limit = at limit up to { $depth } above
limits-watch = watch up to { $depth } above
region-us-federal = United States
region-us-commercial = United States, commercial vehicles
region-us-maryland = Maryland
region-us-army = US Army
region-eu = European Union
region-france = France
region-uk = United Kingdom
region-elsewhere = a place whose rules were not read
season-summer = no snow or ice expected
season-winter = snow or ice expected

# What makes a vehicle unsafe.
damage-unsafe = { $damage }. Unsafe: do not drive. Source: { $source }.
damage-cord-visible = Cord or ply is visible
damage-bulge = A bulge, knot or separation
damage-boot-or-patch = A boot or blowout patch
damage-not-for-highway = The tire is marked not for highway use
damage-marking-unreadable = No size or load marking can be read
damage-bias-and-radial-mixed = Bias and radial tires are mixed on one axle
damage-leaking-valve = The valve leaks
damage-touches-body = Tire or wheel touches the body
damage-axle-over-rating = The axle weighs more than its tires are rated for
damage-fasteners-faulty = Wheel bolts, studs or nuts are loose, missing or damaged
damage-wheel-faulty = The wheel is bent, cracked or rewelded

# Who lifts it.
heavy-one = One person can lift this wheel.
heavy-mass = Two people lift this wheel, one at each side, off and on: it weighs over 50 lb (23 kg).
heavy-class = Two people lift this wheel, one at each side, off and on: truck wheels are heavy.
heavy-size = Two people lift this wheel, one at each side, off and on: wheels of this size are heavy.
heavy-not-known = How heavy this wheel is, is not known. Look at its size before lifting.
cited-the-tool-s-papers-or-its-owner = the tool's papers or its owner
cited-opposite-first-as-manuals-say = opposite first, as manuals say
