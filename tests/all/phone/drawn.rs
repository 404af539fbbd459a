//! Drawings: no arrow crosses a name, no nut touches its neighbour.

use lugbook_phone::{DrawnPoint, VehicleDrawing};

use super::{ENGLISH, Shop, wait};

/// A point of the curve, `t` from 0 to 1 (de Casteljau, as textbooks have it).
fn on_curve(points: &[DrawnPoint], t: f64) -> (f64, f64) {
    let mut level: Vec<(f64, f64)> = points.iter().map(|point| (point.x, point.y)).collect();
    while level.len() > 1 {
        level = level
            .windows(2)
            .map(|pair| (pair[0].0 + (pair[1].0 - pair[0].0) * t, pair[0].1 + (pair[1].1 - pair[0].1) * t))
            .collect();
    }
    level[0]
}

/// A name as wide as three letters and as high as one, at a twentieth of the drawing a letter.
fn name_box(drawing: &VehicleDrawing, wheel: usize) -> (f64, f64, f64, f64) {
    let wheel = &drawing.wheels[wheel];
    let (wide, high) = (0.09, 0.045);
    let left = match wheel.name_anchor.as_str() {
        "start" => wheel.name_at.x,
        "middle" => wheel.name_at.x - wide / 2.0,
        _ => wheel.name_at.x - wide,
    };
    (left, wheel.name_at.y - high, left + wide, wheel.name_at.y)
}

#[test]
fn no_arrow_of_any_plan_crosses_a_name_and_all_is_inside() {
    let shop = Shop::new().with_car();
    super::played::up_to_the_plan(&shop);
    let plan = wait(shop.engine.plan(ENGLISH)).unwrap();
    assert!(plan.plans.iter().any(|plan| plan.drawing.arrows.len() == 4), "a cross moves all four");
    for card in &plan.plans {
        let drawing = &card.drawing;
        assert!(drawing.height > 0.5 && drawing.height < 2.0);
        for arrow in &drawing.arrows {
            for step in 0..=50 {
                let (x, y) = on_curve(&arrow.points, f64::from(step) / 50.0);
                assert!((0.0..=1.0).contains(&x) && (0.0..=drawing.height).contains(&y), "{arrow:?}");
                for wheel in 0..drawing.wheels.len() {
                    let (left, top, right, bottom) = name_box(drawing, wheel);
                    let crosses = x > left && x < right && y > top && y < bottom;
                    assert!(!crosses, "{} {arrow:?} crosses {}", card.pattern, drawing.wheels[wheel].at);
                }
            }
        }
    }
}

#[test]
fn nuts_stand_on_a_circle_and_touch_no_neighbour() {
    let shop = Shop::new().with_car();
    super::played::up_to_the_nuts(&shop);
    let step = wait(shop.engine.bay(None, None, ENGLISH)).unwrap().step.unwrap();
    let circle = step.nuts.unwrap();
    assert_eq!(circle.nuts.len(), 5);
    for (at, nut) in circle.nuts.iter().enumerate() {
        let next = &circle.nuts[(at + 1) % circle.nuts.len()];
        let apart = (nut.middle.x - next.middle.x).hypot(nut.middle.y - next.middle.y);
        assert!(apart > circle.radius * 2.0, "{nut:?} {next:?}");
        let out = (nut.middle.x - 0.5).hypot(nut.middle.y - 0.5);
        assert!((out - 0.36).abs() < 0.001 && out + circle.radius < 0.5, "{nut:?}");
    }
    // Nut 1 is at the top, and exactly one is next.
    assert!(circle.nuts[0].middle.y < 0.2);
    assert_eq!(circle.nuts.iter().filter(|nut| nut.state == "next").count(), 1);
}
