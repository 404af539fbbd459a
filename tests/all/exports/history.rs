//! The history of a vehicle, and what it says when there is little to say.

use lugbook::logbook::Logbook;
use lugbook::measure::{Distance, DistanceUnit};
use lugbook::report::history;
use lugbook::vehicle::{Place, Side};
use lugbook::wear::{History, Question, Reading, wear};
use lugbook::words::{Speech, Units, Words};
use proptest::prelude::*;

use crate::report::text;
use crate::report::visit::{called, last_visit, visits, whole};

fn page(logbook: &Logbook, units: Units) -> String {
    let book = logbook.book();
    let words = Words::new(Speech { units, ..Speech::default() });
    history(&book, &book.vehicles[0], &lugbook::procedure::built_in().expect("built in"), &words)
}

fn four_visits() -> Logbook {
    visits(&[
        (Some("30000 mi"), ["11", "10", "10", "11"]),
        (Some("35000 mi"), ["9", "9", "9", "9"]),
        (Some("40000 mi"), ["7", "8", "8", "7"]),
        (Some("45000 mi"), ["5", "7", "7", "5"]),
    ])
}

#[test]
fn four_visits_read_as_they_were() {
    insta::assert_snapshot!(text(&page(&four_visits(), Units::AsRead)));
}

#[test]
fn computed_figures_follow_the_chosen_units_and_readings_stay_as_read() {
    let metric = text(&page(&four_visits(), Units::Metric));
    assert!(metric.contains("Depth, mm") && metric.contains("Odometer, km"));
    assert!(metric.contains("5/32 in") && metric.contains(" km left to 1.6 mm"), "{metric}");
    let own = text(&page(&four_visits(), Units::AsRead));
    assert!(own.contains("Depth, 1/32 in") && own.contains(" mi left to 2/32 in"), "{own}");
}

#[test]
fn each_chart_is_told_in_words_and_its_letters_are_large_enough_for_a_phone() {
    let html = page(&four_visits(), Units::AsRead);
    let charts: Vec<&str> = html.split("<svg class=\"chart\"").skip(1).collect();
    assert_eq!(charts.len(), 4);
    for chart in &charts {
        let chart = chart.split("</svg>").next().unwrap();
        assert!(chart.contains("role=\"img\"") && chart.contains("<title") && chart.contains("<desc"));
        assert!(chart.contains("Read: "), "{chart}");
        assert_eq!(chart.matches("class=\"dot\"").count(), 4, "a dot a reading");
        assert!(chart.contains("class=\"band\"") && chart.contains("class=\"forecast\""));
    }
    // 390 px less the page's sides leave 358 for a drawing 340 wide: letters of 13 stay above 12.
    let css = include_str!("../../../core/src/report/card.css");
    assert!(css.contains("svg .tick{font-size:13px") && charts[0].contains("viewBox=\"0 0 340 240\""));
}

#[test]
fn a_vehicle_without_a_visit_says_so() {
    let entries: Vec<_> = called("Wren", "Barn van").entries().take(9).cloned().collect();
    let html = text(&page(&Logbook::from_iter(entries), Units::AsRead));
    assert!(html.contains("No visit of this vehicle is in the book yet."), "{html}");
    assert!(html.contains("No tread was measured yet at a visit that read the odometer."));
    assert!(!html.contains("Where each tire was"));
}

#[test]
fn one_visit_has_readings_and_no_forecast() {
    let html = page(&visits(&[(Some("30000 mi"), ["11", "10", "10", "11"])]), Units::AsRead);
    assert!(!html.contains("class=\"band\"") && html.matches("class=\"dot\"").count() == 4);
    assert!(text(&html).contains("One visit was read: wear rates are unknown until the next one"), "{}", text(&html));
}

#[test]
fn visits_without_an_odometer_stand_in_the_tables_and_are_counted_out_of_the_forecast() {
    let html = text(&page(&visits(&[(None, ["9", "9", "9", "9"]), (None, ["8", "8", "8", "8"])]), Units::AsRead));
    assert!(html.contains("8 readings are left out of the forecast"), "{html}");
    assert_eq!(
        html.matches("not recorded").count(),
        1 + 2 + 8,
        "odometer: in the head, at each visit, at each reading"
    );
}

#[test]
fn readings_before_a_replaced_instrument_are_left_out() {
    let book = whole();
    assert!(!text(&page(&book, Units::AsRead)).contains("left out of the forecast"));
    assert!(text(&page(&last_visit(), Units::AsRead)).contains("One visit was read"));
}

#[test]
fn a_history_needs_nothing_from_outside_and_its_headings_step_down() {
    let html = page(&four_visits(), Units::AsRead);
    for forbidden in ["<script", "http://", "https://", "<link", "@import", "url(http"] {
        assert!(!html.contains(forbidden), "{forbidden}");
    }
    assert!(!text(&html).contains("history-") && !text(&html).contains("card-"), "a name without a sentence");
    assert_eq!(html.matches("<h1").count(), 1);
}

proptest! {
    /// The band is where the distance left comes from: its edges meet the limit at both ends of that.
    #[test]
    fn the_band_meets_the_limit_where_the_distance_left_says(
        start in 6.0..9.0f64, rate in 0.05..0.25f64, slips in prop::collection::vec(-0.15..0.15f64, 5)
    ) {
        let reading = |(number, slip): (u32, &f64)| {
            let km = f64::from(number) * 8_000.0;
            let mm = (start - rate * km / 1000.0 + slip).max(0.5);
            Reading {
                tire: "a".to_owned(),
                odometer: Distance::new(km, DistanceUnit::Kilometre).unwrap(),
                at: Place::single(1, Side::Left),
                grooves: vec![lugbook::measure::Depth::new(mm, lugbook::measure::DepthUnit::Millimetre).unwrap()],
                lowest: None,
                practice: false,
            }
        };
        let history = History { readings: (0..).zip(&slips).map(reading).collect(), moves: Vec::new() };
        let answer = wear(&history, &Question::default()).unwrap();
        let tire = &answer.tires[0];
        let (ahead, left) = (tire.ahead.unwrap(), tire.left_km.unwrap());
        let meets = |depth: f64| (depth - tire.limit_mm).abs() < 1e-6;
        if left.low > 0.0 {
            prop_assert!(meets(ahead.depth_after(left.low).low), "{left:?}");
            let mid = left.mid.unwrap();
            prop_assert!(meets(ahead.depth_after(mid).mid));
            if let Some(high) = left.high {
                prop_assert!(meets(ahead.depth_after(high).high), "{left:?}");
            }
        }
    }
}
