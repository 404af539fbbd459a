//! The spread term beside HiGHS (`tests/vectors/make_plans.py`), which knows only counts of visits.

mod cases;

use lugbook::rotation::plan;

use cases::{cases, request};

#[test]
fn the_least_spread_is_that_of_highs_or_highs_lies_inside_the_gap() {
    let (mut proved, mut all) = (0, 0);
    let mut widest: f64 = 0.0;
    for case in cases() {
        let answer = plan(&request(&case)).unwrap();
        let least = answer.least_spread_mm.unwrap();
        if answer.proved {
            assert!(
                (least - case.spread_mm).abs() < 1e-6,
                "{} {}: {least} {}",
                case.layout,
                case.visits,
                case.spread_mm
            );
            proved += 1;
        } else {
            let inside = (least - answer.gap_mm - 1e-6..=least + 1e-6).contains(&case.spread_mm);
            assert!(inside, "{} {}: {least} gap {} {}", case.layout, case.visits, answer.gap_mm, case.spread_mm);
            widest = widest.max(answer.gap_mm);
        }
        // What is told of the best plan is what its visits lead to.
        assert!(answer.plans[0].spread_mm.unwrap() >= case.spread_mm - 1e-6);
        all += 1;
    }
    println!("{proved} of {all} proved; widest gap {widest:.4} mm");
    assert!(proved * 2 > all);
}
