//! Tread limits against the table of rules, and how a reading is judged.

use lugbook::finding::State;
use lugbook::limits::{
    Circumstances, Damage, Force, Heaviness, HeavyWheel, Limit, Region, Season, Thresholds, heavy_wheel, judge,
    judge_spread, limits,
};
use lugbook::measure::{Depth, DepthUnit};
use lugbook::source::{Grade, Source};
use lugbook::vehicle::Class;
use lugbook::words::{Say, Speech, Words};
use proptest::prelude::*;

use crate::standards::{Row, table};

const REGIONS: [Region; 8] = [
    Region::UsFederal,
    Region::UsCommercial,
    Region::UsMaryland,
    Region::UsArmy,
    Region::Eu,
    Region::France,
    Region::Uk,
    Region::Elsewhere,
];
const CLASSES: [Class; 7] =
    [Class::Car, Class::LightTruck, Class::Truck, Class::Bus, Class::LightTrailer, Class::Trailer, Class::Motorcycle];

fn here(region: Region, class: Class, steer: bool) -> Circumstances {
    Circumstances { region, class, steer, season: Season::Summer }
}

fn state(text: &str, here: Circumstances) -> State {
    judge(text.parse().unwrap(), here, Thresholds::default()).state.unwrap()
}

/// The limits that carry a row of the table: by title, and by figure where a title has several.
fn carried(row: &Row) -> Vec<&'static Limit> {
    let title = match row.text("rule") {
        "France, same text" => "France, order text JORFARTI000038987859",
        "Winter tread advice" => "winter tread advice",
        other => other,
    };
    limits().iter().filter(|limit| limit.source.title == title).collect()
}

fn grade(status: &str) -> Grade {
    match status.split(':').next().unwrap() {
        "P" => Grade::Rule,
        "S" => Grade::Secondary,
        "M" => Grade::Memory,
        other => panic!("grade {other}"),
    }
}

#[test]
fn every_row_of_the_table_with_a_figure_is_carried_with_its_figure_and_grade() {
    let mut without_figure = 0;
    for row in table("tread_limits.csv") {
        let rule = row.text("rule");
        if row.text("mm").is_empty() {
            // A definition, and a share of a depth that only an overhaul shop knows.
            assert!(carried(&row).is_empty(), "{rule}");
            without_figure += 1;
            continue;
        }
        let mm = row.number("mm");
        let found = carried(&row);
        let same: Vec<_> = found.iter().filter(|limit| (limit.mm() - mm).abs() < 1e-12).collect();
        assert!(!same.is_empty(), "{rule}: {mm} mm is not carried: {found:?}");
        for limit in &same {
            assert_eq!(limit.source.grade, grade(row.text("status")), "{rule}");
            let inch = row.text("limit").contains("/32 in") || row.text("limit").contains("/16 in");
            let inch = inch || row.text("limit").contains("/32 steer") || row.text("limit").contains("1/32");
            assert_eq!(limit.depth().unwrap().unit() == DepthUnit::ThirtySecond, inch, "{rule}: the unit as written");
        }
    }
    assert_eq!(without_figure, 2);
}

#[test]
fn every_carried_limit_stands_in_the_table_or_in_the_page_beside_it() {
    let rows = table("tread_limits.csv");
    for limit in limits() {
        let in_table = rows.iter().any(|row| carried(row).contains(&limit));
        // The Maryland test for heavy vehicles stands in the table's remark on 49 CFR 570.9.
        let remark = rows.iter().any(|row| row.text("status").contains("Maryland COMAR 11.22.04.06"));
        assert!(in_table || (remark && limit.source.title == "Maryland COMAR 11.22.04.06"), "{limit:?}");
        assert!(limit.depth().is_some());
        assert!(!limit.regions.is_empty() && !limit.classes.is_empty());
    }
}

#[test]
fn the_tables_second_figures_are_carried_too() {
    let of = |title: &str| -> Vec<String> {
        let depth = |limit: &Limit| limit.depth().unwrap().to_string();
        limits().iter().filter(|limit| limit.source.title == title).map(depth).collect()
    };
    // "4/32 steer and 2/32 others", "5/32 in / 4 mm".
    assert_eq!(of("Army TM 9-2610-200-14 2-24"), ["4 1/32in", "2 1/32in"]);
    assert_eq!(of("winter tread advice"), ["5 1/32in", "4 mm"]);
}

#[test]
fn a_tire_at_1_59_mm_passes_two_thirty_seconds_and_fails_1_6_mm() {
    let car = |region| judge("1.59 mm".parse().unwrap(), here(region, Class::Car, true), Thresholds::default());
    assert_eq!(car(Region::UsFederal).state, Some(State::AtLimit));
    assert!(!car(Region::UsFederal).refuses);
    assert_eq!(car(Region::France).state, Some(State::BelowLimit));
    assert_eq!(state("2/32", here(Region::Eu, Class::Car, true)), State::BelowLimit, "1.5875 mm");
    assert_eq!(state("2/32", here(Region::UsFederal, Class::Car, true)), State::AtLimit, "equal passes");
    assert_eq!(state("1.6 mm", here(Region::France, Class::Car, true)), State::AtLimit, "equal passes");
    assert_eq!(state("1.58 mm", here(Region::UsFederal, Class::Car, true)), State::BelowLimit);
}

#[test]
fn the_steer_axle_rule_holds_for_trucks_and_buses_and_never_for_a_car() {
    for region in REGIONS {
        for depth in ["1.9/32", "2/32", "3/32", "3.9/32", "4/32"] {
            let depth = Depth::parse(&depth.replace("/32", " /32"), None).unwrap();
            let judged = |steer| judge(depth, here(region, Class::Car, steer), Thresholds::default());
            assert_eq!(judged(true), judged(false), "{region:?} {depth}");
        }
    }
    for class in [Class::Truck, Class::Bus] {
        assert_eq!(state("3/32", here(Region::UsCommercial, class, true)), State::BelowLimit);
        assert_eq!(state("3/32", here(Region::UsCommercial, class, false)), State::AtLimit);
    }
    assert_eq!(state("3/32", here(Region::UsCommercial, Class::Trailer, false)), State::AtLimit);
}

#[test]
fn only_a_minimum_whose_text_was_read_refuses() {
    for region in REGIONS {
        for class in CLASSES {
            for steer in [false, true] {
                for season in [Season::Summer, Season::Winter] {
                    let here = Circumstances { region, class, steer, season };
                    let bald = judge("0 mm".parse().unwrap(), here, Thresholds::default());
                    let read = limits().iter().any(|limit| {
                        limit.force == Force::Minimum
                            && limit.source.grade == Grade::Rule
                            && limit.regions.contains(&region)
                            && limit.classes.contains(&class)
                            && limit.steer.is_none_or(|on| on == (steer && class != Class::Car))
                    });
                    assert_eq!(bald.refuses, read, "{here:?}");
                    assert!(bald.state != Some(State::Unsafe), "depth alone never says unsafe");
                    let deep = judge("12 mm".parse().unwrap(), here, Thresholds::default());
                    assert!(!deep.refuses && matches!(deep.state, Some(State::Sound) | None), "{here:?}");
                }
            }
        }
    }
}

#[test]
fn grades_s_and_m_warn_and_p_refuses() {
    let refuses = |region, class, steer| {
        let judged = judge("1/32".parse().unwrap(), here(region, class, steer), Thresholds::default());
        assert_eq!(judged.state, Some(State::BelowLimit));
        (judged.refuses, judged.limit.unwrap().source.grade)
    };
    assert_eq!(refuses(Region::UsFederal, Class::Car, false), (false, Grade::Memory));
    assert_eq!(refuses(Region::UsCommercial, Class::Truck, true), (false, Grade::Secondary));
    assert_eq!(refuses(Region::Eu, Class::Car, false), (false, Grade::Secondary));
    assert_eq!(refuses(Region::Uk, Class::Car, false), (false, Grade::Secondary));
    assert_eq!(refuses(Region::France, Class::Car, false), (true, Grade::Rule));
    // Its tread test was read, which classes its chapter covers was not.
    assert_eq!(refuses(Region::UsMaryland, Class::Trailer, false), (false, Grade::Secondary));
    assert_eq!(refuses(Region::UsArmy, Class::Truck, true), (true, Grade::Rule));
}

#[test]
fn wear_bars_and_winter_advice_warn_and_never_condemn() {
    let bike = here(Region::UsFederal, Class::Motorcycle, true);
    let worn = judge("0.5 mm".parse().unwrap(), bike, Thresholds::default());
    assert_eq!((worn.state, worn.refuses), (Some(State::AtLimit), false));
    assert_eq!(worn.limit.unwrap().force, Force::WearBar);
    let mut winter = here(Region::France, Class::Car, false);
    assert_eq!(state("3.9 mm", winter), State::Sound);
    winter.season = Season::Winter;
    let judged = judge("3.9 mm".parse().unwrap(), winter, Thresholds::default());
    assert_eq!((judged.state, judged.refuses), (Some(State::Watch), false));
    assert_eq!(judged.also.iter().map(|limit| limit.force).collect::<Vec<_>>(), [Force::Advice]);
    assert_eq!(state("4 mm", winter), State::Sound);
}

#[test]
fn where_no_rule_was_read_there_is_no_verdict() {
    let judged = judge("1 mm".parse().unwrap(), here(Region::Elsewhere, Class::Car, false), Thresholds::default());
    assert_eq!((judged.state, judged.limit, judged.refuses), (None, None, false));
    let truck = judge("1 mm".parse().unwrap(), here(Region::Eu, Class::Truck, true), Thresholds::default());
    assert_eq!(truck.state, None);
}

#[test]
fn watch_and_at_limit_are_settings_with_a_default_of_one_and_two_gauge_steps() {
    let car = here(Region::UsFederal, Class::Car, false);
    let states: Vec<State> = ["1/32", "2/32", "3/32", "4/32", "5/32"].iter().map(|text| state(text, car)).collect();
    assert_eq!(states, [State::BelowLimit, State::AtLimit, State::AtLimit, State::Watch, State::Sound]);
    let early = Thresholds { at_limit_mm: 0.79375, watch_mm: 3.175 };
    assert_eq!(judge("5/32".parse().unwrap(), car, early).state, Some(State::Watch));
    let none = Thresholds { at_limit_mm: 0.0, watch_mm: 0.0 };
    assert_eq!(judge("3/32".parse().unwrap(), car, none).state, Some(State::Sound));
    let stored = serde_json::to_string(&early).unwrap();
    assert_eq!(serde_json::from_str::<Thresholds>(&stored).unwrap(), early);
}

#[test]
fn two_tires_of_an_axle_may_differ_by_five_millimetres_in_france() {
    let france = here(Region::France, Class::Car, false);
    let spread = |one: &str, other: &str| judge_spread(one.parse().unwrap(), other.parse().unwrap(), france).unwrap();
    assert!(!spread("8 mm", "3 mm").over);
    let over = spread("3 mm", "8.1 mm");
    assert!(over.over && over.refuses && (over.apart_mm - 5.1).abs() < 1e-9);
    let elsewhere = here(Region::UsFederal, Class::Car, false);
    assert_eq!(judge_spread("8 mm".parse().unwrap(), "2 mm".parse().unwrap(), elsewhere), None);
}

#[test]
fn a_judgement_can_be_written_as_json() {
    let france = here(Region::France, Class::Car, true);
    let json = serde_json::to_value(judge("1.5 mm".parse().unwrap(), france, Thresholds::default())).unwrap();
    assert_eq!(json["state"], "below-limit");
    assert_eq!(json["limit"]["depth"]["value"], 1.6);
    assert_eq!(json["limit"]["source"]["grade"], "rule");
    assert_eq!(json["lowest"]["unit"], "mm");
}

#[test]
fn each_unsafe_condition_names_the_rule_that_was_read() {
    for damage in Damage::ALL {
        let verdict = damage.verdict();
        assert_eq!(verdict.state, State::Unsafe);
        assert!(verdict.source.grade == Grade::Rule && !verdict.source.title.is_empty(), "{damage:?}");
    }
}

#[test]
fn heavy_wheels_take_two_people() {
    // Common practice, no source.
    let by = |class, mass: Option<&str>, rim, diameter| {
        heavy_wheel(class, mass.map(|text| text.parse().unwrap()), rim, diameter)
    };
    assert_eq!(by(Class::Truck, None, None, None), HeavyWheel::Two(Heaviness::Class));
    assert_eq!(by(Class::Car, Some("20 kg"), Some(22.0), None), HeavyWheel::One, "its mass is known");
    assert_eq!(by(Class::Car, Some("60 lb"), None, None), HeavyWheel::Two(Heaviness::Mass));
    assert_eq!(by(Class::Car, None, Some(16.0), Some(632.0)), HeavyWheel::One);
    assert_eq!(by(Class::Car, None, Some(20.0), None), HeavyWheel::Two(Heaviness::Size));
    assert_eq!(by(Class::LightTruck, None, Some(17.0), Some(838.0)), HeavyWheel::Two(Heaviness::Size));
    assert_eq!(by(Class::LightTruck, None, None, None), HeavyWheel::NotKnown);
}

proptest! {
    #[test]
    fn a_deeper_tire_is_never_judged_worse(
        shallow in 0.0f64..14.0, more in 0.0f64..6.0,
        region in proptest::sample::select(&REGIONS), class in proptest::sample::select(&CLASSES),
        steer in any::<bool>(), winter in any::<bool>(), inches in any::<bool>(),
    ) {
        let season = if winter { Season::Winter } else { Season::Summer };
        let here = Circumstances { region, class, steer, season };
        let unit = if inches { DepthUnit::ThirtySecond } else { DepthUnit::Millimetre };
        let judged = |mm: f64| {
            let depth = Depth::new(mm, DepthUnit::Millimetre).unwrap().to_unit(unit);
            judge(depth, here, Thresholds::default())
        };
        let (worse, better) = (judged(shallow), judged(shallow + more));
        if let (Some(worse), Some(better)) = (worse.state, better.state) {
            prop_assert!(better <= worse);
        }
        prop_assert!(worse.refuses || !better.refuses);
        prop_assert_eq!(worse.lowest.unit(), unit);
        if worse.refuses {
            prop_assert_eq!(worse.state, Some(State::BelowLimit));
        }
    }
}

/// Everything that the words about limits can say.
fn all() -> Vec<String> {
    let words = Words::new(Speech::default());
    let mut lines = Vec::new();
    let mut say = |text: &str, here: Circumstances| {
        lines.push(judge(text.parse().unwrap(), here, Thresholds::default()).say(&words));
    };
    for text in ["1.5 mm", "1.7 mm", "3 mm", "6 mm"] {
        say(text, here(Region::France, Class::Car, false));
    }
    for text in ["1/32", "2/32", "4/32", "9/32"] {
        say(text, here(Region::UsFederal, Class::Car, false));
    }
    say("3/32", here(Region::UsCommercial, Class::Truck, true));
    say("3/32", here(Region::Elsewhere, Class::Car, false));
    let winter = |region| Circumstances { season: Season::Winter, ..here(region, Class::Car, false) };
    say("3.9 mm", winter(Region::France));
    say("3.9 mm", winter(Region::Elsewhere));
    say("0.5 mm", here(Region::UsFederal, Class::Motorcycle, false));
    for other in ["8.1 mm", "4 mm"] {
        let france = here(Region::France, Class::Car, false);
        lines.push(judge_spread("3 mm".parse().unwrap(), other.parse().unwrap(), france).unwrap().say(&words));
    }
    lines.extend(Damage::ALL.iter().map(|damage| damage.say(&words)));
    for heavy in [
        HeavyWheel::One,
        HeavyWheel::Two(Heaviness::Mass),
        HeavyWheel::Two(Heaviness::Class),
        HeavyWheel::Two(Heaviness::Size),
        HeavyWheel::NotKnown,
    ] {
        lines.push(heavy.say(&words));
    }
    for grade in [Grade::Manual, Grade::TwoSecondary, Grade::Computed, Grade::CommonPractice, Grade::Design] {
        lines.push(format!("Source: {}.", words.source(&Source { grade, title: "" })));
    }
    lines
}

#[test]
fn everything_about_limits_reads_as_plain_sentences() {
    insta::assert_snapshot!(all().join("\n"));
    for line in all() {
        assert!(line.contains(' ') && line.ends_with('.'), "“{line}” is no sentence");
        assert!(!line.contains(['{', '}', '$']), "“{line}” is not filled");
    }
}
