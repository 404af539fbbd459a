//! When rechecks and the next visit are due.

use lugbook::calendar::Day;
use lugbook::due::{
    self, Interval, Odometer, PRINTED, SetBy, Standing, TRADE_INTERVAL, Window, YearlyEstimate, dates, next_visit,
    rechecks, standing,
};
use lugbook::entry::OdometerNote;
use lugbook::fastening::TRADE_RECHECK;
use lugbook::measure::{Distance, DistanceUnit};
use lugbook::source::Grade;
use proptest::prelude::*;

fn distance(text: &str) -> Distance {
    text.parse().unwrap()
}

#[test]
fn printed_rechecks_stand_as_printed_in_order_of_distance() {
    // Recheck distances as printed in vehicle manuals (grade O, standards section 7):
    // a car within 100 mi; another at 500 mi; light trucks with duals at 100 and 500 mi; cars at 25 mi (40 km).
    for printed in [&["100 mi"][..], &["500 mi"], &["100 mi", "500 mi"], &["25 mi"], &["40 km"]] {
        let given: Vec<_> = printed.iter().map(|text| distance(text)).collect();
        let told = rechecks(&given, Some(&Odometer::read(distance("41230 mi"))));
        assert_eq!(told.iter().map(|r| r.due.after.by).collect::<Vec<_>>(), given);
        assert!(told.iter().all(|r| r.due.source == PRINTED && r.due.source.grade.may_refuse()));
    }
    let told = rechecks(&[distance("500 mi"), distance("160 km"), distance("100 mi")], None);
    assert_eq!(told.len(), 2, "one distance printed in two units is one recheck");
    assert!(told.iter().all(|r| r.odometer.is_none()));
}

#[test]
fn without_a_printed_distance_the_trades_window_is_told_with_its_grade() {
    // 50-100 mi: generic installer chart, grade S (standards section 7, wheel_torque.csv, generic rows).
    let told = rechecks(&[], Some(&Odometer::read(distance("41230 mi"))));
    let [recheck] = &told[..] else { panic!("one window") };
    assert_eq!(recheck.due.after, Window::between(distance("50 mi"), distance("100 mi")));
    assert_eq!(recheck.odometer, Some(Window::between(distance("41280 mi"), distance("41330 mi"))));
    assert_eq!((recheck.due.source, TRADE_RECHECK.grade), (TRADE_RECHECK, Grade::Secondary));
    // 80-160 km: as two truck makers' manuals print it beside 50-100 mi (grade O for those trucks).
    let metric = rechecks(&[], Some(&Odometer::read(distance("80000 km"))));
    assert_eq!(metric[0].due.after, Window::between(distance("80 km"), distance("160 km")));
}

#[test]
fn the_manuals_interval_comes_before_the_trades() {
    // 5,000-10,000 km (3,000-6,000 mi): one car maker's manual, grade O (standards section 9).
    let manual = Interval::Manual(Window::between(distance("5000 km"), distance("10000 km")));
    let last = Odometer::read(distance("52000 km"));
    let visit = next_visit(Some(&last), &manual, None).unwrap();
    assert_eq!(visit.odometer, Some(Window::between(distance("57000 km"), distance("62000 km"))));
    assert_eq!((visit.interval.source, visit.set_by, visit.estimated), (PRINTED, SetBy::Interval, false));
    // 5,000-8,000 km: from memory (standards section 9), 5,000 mi in secondary pages.
    let trade = next_visit(Some(&last), &Interval::Trade, None).unwrap();
    assert_eq!(trade.odometer, Some(Window::between(distance("57000 km"), distance("60000 km"))));
    assert_eq!((trade.interval.source, TRADE_INTERVAL.grade), (TRADE_INTERVAL, Grade::Memory));
    let miles = next_visit(Some(&Odometer::read(distance("41230 mi"))), &Interval::Trade, None).unwrap();
    assert_eq!(miles.odometer, Some(Window::between(distance("44230 mi"), distance("46230 mi"))));
    assert!(!TRADE_INTERVAL.grade.may_refuse() && !TRADE_RECHECK.grade.may_refuse());
}

#[test]
fn a_manual_in_miles_is_told_on_a_metric_odometer_in_its_own_unit() {
    let manual = Interval::Manual(Window::by(distance("6000 mi")));
    let visit = next_visit(Some(&Odometer::read(distance("52000 km"))), &manual, None).unwrap();
    // 6,000 mi = 9,656.064 km (C).
    assert_eq!(visit.odometer, Some(Window::by(distance("61656 km"))));
    assert_eq!(visit.interval.after.by, distance("6000 mi"), "what was printed stays as printed");
}

#[test]
fn an_unread_odometer_gives_a_distance_and_no_figure() {
    let visit = next_visit(None, &Interval::Trade, Some(distance("60000 km"))).unwrap();
    assert_eq!((visit.odometer, visit.set_by), (None, SetBy::Interval));
    let nothing = Interval::Manual(Window::by(distance("0 km")));
    assert_eq!(next_visit(None, &nothing, None), None);
    let guessed = Odometer { at: distance("90000 km"), note: Some(OdometerNote::Estimated) };
    assert!(next_visit(Some(&guessed), &Interval::Trade, None).unwrap().estimated);
    // Beyond what an odometer can show there is no figure either.
    let far = next_visit(Some(&Odometer::read(distance("4999000 km"))), &Interval::Trade, None).unwrap();
    assert_eq!(far.odometer, None);
}

#[test]
fn a_tire_that_may_reach_its_limit_first_sets_the_end() {
    let last = Odometer::read(distance("52000 km"));
    let of = |limit: &str| {
        let visit = next_visit(Some(&last), &Interval::Trade, Some(distance(limit))).unwrap();
        (visit.set_by, visit.odometer.unwrap())
    };
    assert_eq!(of("59000 km"), (SetBy::Wear, Window::between(distance("57000 km"), distance("59000 km"))));
    assert_eq!(of("55000 km"), (SetBy::Wear, Window::by(distance("55000 km"))));
    assert_eq!(of("40000 km"), (SetBy::Wear, Window::by(distance("52000 km"))), "overdue means now, never the past");
    assert_eq!(of("60000 km").0, SetBy::Interval);
}

#[test]
fn a_replaced_instrument_is_not_compared() {
    let window = Window::between(distance("57000 km"), distance("60000 km"));
    let start = distance("52000 km");
    let of = |text: &str| standing(&window, start, &Odometer::read(distance(text)));
    assert_eq!(of("53000 km"), Standing::Ahead { left: distance("4000 km") });
    assert_eq!(of("57000 km"), Standing::Due { left: distance("3000 km") });
    assert_eq!(of("60000 km"), Standing::Due { left: distance("0 km") });
    assert_eq!(of("60001 km"), Standing::Overdue { over: distance("1 km") });
    assert_eq!(of("51999 km"), Standing::NotKnown);
    let replaced = Odometer { at: distance("57500 km"), note: Some(OdometerNote::ClusterReplaced) };
    assert_eq!(standing(&window, start, &replaced), Standing::NotKnown);
    assert_eq!(
        standing(&Window::by(distance("60000 km")), start, &Odometer::read(distance("59999 km"))),
        Standing::Ahead { left: distance("1 km") }
    );
}

#[test]
fn a_date_needs_the_owners_estimate_and_a_sensible_one() {
    let since: Day = "2026-11-24".parse().unwrap();
    let after = Window::between(distance("5000 km"), distance("8000 km"));
    let of = |text: &str| dates(&after, since, &YearlyEstimate { per_year: distance(text) });
    // 5,000 / 20,000 of 365.2425 days = 91.3; 8,000 / 20,000 = 146.1 (C).
    let found = of("20000 km").unwrap();
    assert_eq!((found.from.unwrap().to_string(), found.by.to_string()), ("2027-02-23".into(), "2027-04-19".into()));
    assert_eq!(of("0 km"), None);
    assert_eq!(of("100 km"), None, "eighty years ahead means nothing");
}

#[test]
fn due_dates_are_told_with_their_source() {
    use lugbook::words::{Say, Speech, Words};
    let words = Words::new(Speech::default());
    let odometer = Odometer::read(distance("41230 mi"));
    assert_eq!(
        rechecks(&[distance("25 mi")], Some(&odometer))[0].say(&words),
        "Recheck the nuts after 25 mi, at 41\u{202f}255 mi on the odometer. As the vehicle's specification prints it."
    );
    assert_eq!(
        rechecks(&[], None)[0].say(&words),
        "Recheck the nuts after 50 mi to 100 mi. \
         The trade's usual distance, from one secondary source: the vehicle's own manual stands above it."
    );
    let guessed = Odometer { note: Some(OdometerNote::Estimated), ..odometer };
    assert_eq!(
        next_visit(Some(&guessed), &Interval::Trade, None).unwrap().say(&words),
        "Rotate next between 44\u{202f}230 mi and 46\u{202f}230 mi on the odometer. \
         The trade's usual interval, from memory: the vehicle's own manual stands above it. \
         This starts from an estimated odometer figure."
    );
    let wear = next_visit(Some(&odometer), &Interval::Trade, Some(distance("43000 mi"))).unwrap();
    assert_eq!(wear.say(&words), "Rotate next by 43\u{202f}000 mi on the odometer. A tire may reach its limit then.");
    let manual = Interval::Manual(Window::by(distance("10000 km")));
    assert_eq!(
        next_visit(None, &manual, None).unwrap().say(&words),
        "Rotate next after 10\u{202f}000 km. As the vehicle's manual prints it."
    );
    assert_eq!(Standing::Overdue { over: distance("120 mi") }.say(&words), "Overdue by 120 mi.");
    assert_eq!(Standing::Ahead { left: distance("120 mi") }.say(&words), "120 mi to go.");
    assert_eq!(Standing::Due { left: distance("120 mi") }.say(&words), "Due now, 120 mi left.");
    assert_eq!(Standing::NotKnown.say(&words), "The odometers can't be compared.");
    let estimate = YearlyEstimate { per_year: distance("20000 km") };
    let after = Window::between(distance("5000 km"), distance("8000 km"));
    assert_eq!(
        dates(&after, "2026-11-24".parse().unwrap(), &estimate).unwrap().say(&words),
        "By the owner's own estimate, that is between 2027-02-23 and 2027-04-19."
    );
}

proptest! {
    #[test]
    fn each_odometer_figure_lies_in_exactly_one_state(
        start in 0.0f64..900_000.0, from in 0.0f64..20_000.0, more in 0.0f64..20_000.0, now in 0.0f64..1_000_000.0,
    ) {
        let km = |value: f64| Distance::new(value, DistanceUnit::Kilometre).unwrap();
        let window = Window::between(km(from), km(from + more)).on_odometer(km(start)).unwrap();
        match standing(&window, km(start), &Odometer::read(km(now))) {
            Standing::NotKnown => prop_assert!(now < start),
            Standing::Ahead { left } => prop_assert!((now + left.value() - window.from.unwrap().value()).abs() < 1e-6),
            Standing::Due { left } => prop_assert!((now + left.value() - window.by.value()).abs() < 1e-6),
            Standing::Overdue { over } => prop_assert!((now - over.value() - window.by.value()).abs() < 1e-6 && over.value() > 0.0),
        }
    }

    #[test]
    fn more_driving_never_moves_the_date_back(one in 1_000.0f64..50_000.0, more in 0.0f64..50_000.0) {
        let since: Day = "2026-01-01".parse().unwrap();
        let per_year = |value: f64| YearlyEstimate { per_year: Distance::new(value, DistanceUnit::Kilometre).unwrap() };
        let after = due::trade_interval(DistanceUnit::Kilometre).unwrap();
        let slow = dates(&after, since, &per_year(one)).unwrap();
        let fast = dates(&after, since, &per_year(one + more)).unwrap();
        prop_assert!(fast.by <= slow.by && fast.from <= slow.from && fast.from.unwrap() >= since);
    }
}
