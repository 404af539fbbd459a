//! The fit beside statsmodels' weighted least squares (`tests/vectors/make_wear.py`).

use std::collections::BTreeMap;

use lugbook::vehicle::Place;
use lugbook::wear::{Answer, History, Question, wear};
use serde::Deserialize;

use super::read;

#[derive(Deserialize)]
struct Vectors {
    clean: Vec<Clean>,
    slipped: Vec<WithSlips>,
}

#[derive(Deserialize)]
struct Clean {
    unit: String,
    readings: Vec<Row>,
    rates: BTreeMap<String, f64>,
    depths_now: BTreeMap<String, f64>,
    rate_deviations: BTreeMap<String, f64>,
    chi_squared_per_freedom: f64,
}

#[derive(Deserialize)]
struct WithSlips {
    readings: Vec<Row>,
    true_rates: BTreeMap<String, f64>,
    least_squares: BTreeMap<String, f64>,
}

#[derive(Deserialize)]
struct Row {
    tire: String,
    km: f64,
    at: String,
    value: f64,
}

fn vectors() -> Vectors {
    serde_json::from_str(include_str!("../../vectors/wear_fit.json")).unwrap()
}

fn answer(rows: &[Row], unit: &str) -> Answer {
    let readings = rows.iter().map(|r| read(&r.tire, r.km, &r.at, &format!("{} {unit}", r.value))).collect();
    wear(&History { readings, moves: Vec::new() }, &Question::default()).unwrap()
}

fn rate(answer: &Answer, at: &str) -> Option<lugbook::wear::Interval> {
    answer.positions.iter().find(|p| Some(p.at) == Place::parse(at)).map(|p| p.rate)
}

#[test]
fn clean_histories_fit_as_a_statistics_library_fits_them() {
    let mut compared = 0;
    for case in vectors().clean {
        let answer = answer(&case.readings, &case.unit);
        assert!(answer.slipped.is_empty(), "a clean reading was taken for a slip");
        for (at, expected) in &case.rates {
            let found = rate(&answer, at).unwrap();
            assert!((found.mid - expected.max(0.0)).abs() < 1e-6, "{at}: {} {expected}", found.mid);
            compared += 1;
            // Where the readings scatter no more than the gauge explains, the interval is the gauge's alone.
            if case.chi_squared_per_freedom <= 1.0 && found.low > 0.0 {
                let half = 1.959_963_984_540_054 * case.rate_deviations[at];
                assert!((found.high - found.mid - half).abs() < 1e-6, "{at}: {}", found.high - found.mid);
            }
        }
        for tire in &answer.tires {
            assert!((tire.depth_mm.mid - case.depths_now[&tire.tire]).abs() < 1e-6, "{}", tire.tire);
        }
    }
    assert_eq!(compared, 160);
}

/// With one slipped reading in ten, the fit is nearer to the truth than least squares.
#[test]
fn with_slipped_readings_the_fit_beats_least_squares() {
    let (mut ours, mut theirs, mut count, mut wins, mut slips) = (0.0, 0.0, 0.0, 0, 0);
    let vectors = vectors();
    for case in &vectors.slipped {
        let answer = answer(&case.readings, "mm");
        slips += answer.slipped.len();
        let (mut mine, mut plain) = (0.0, 0.0);
        for (at, truth) in &case.true_rates {
            let found = rate(&answer, at).unwrap().mid;
            mine += (found - truth).powi(2);
            plain += (case.least_squares[at] - truth).powi(2);
            count += 1.0;
        }
        wins += usize::from(mine < plain);
        ours += mine;
        theirs += plain;
    }
    let (ours, theirs): (f64, f64) = ((ours / count).sqrt(), (theirs / count).sqrt());
    println!(
        "rms error of rates, mm per 1,000 km: {ours:.4}, least squares {theirs:.4}; better in {wins} of {}; {slips} slips shown",
        vectors.slipped.len()
    );
    assert!(ours < theirs / 3.0, "{ours} {theirs}");
    assert!(wins * 10 > vectors.slipped.len() * 9, "{wins} of {}", vectors.slipped.len());
}
