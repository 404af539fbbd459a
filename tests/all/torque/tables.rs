use lugbook::fastener::{Thread, TorqueSpec};
use lugbook::fastening::{
    CLAMP_SCATTER, Finish, NoChartValue, NutFactor, PropertyClass, bench_chart, bench_rows, clamp_load, nut_factors,
    order, proof_load_kn,
};
use lugbook::measure::Torque;

use crate::standards::{Row, first_number, numbers, table, worked};

fn printed(row: &Row) -> TorqueSpec {
    let newton = format!("{}..{} N.m", row.text("min_Nm"), row.text("max_Nm"));
    let foot = format!("{}..{} ft.lb", row.text("min_ftlb"), row.text("max_ftlb"));
    TorqueSpec::printed([newton.parse().unwrap(), foot.parse().unwrap()])
}

fn is_generic(row: &Row) -> bool {
    row.text("kind") == "generic installer chart"
}

#[test]
fn only_the_printed_range_whose_units_disagree_is_reported() {
    for row in table("wheel_torque.csv").iter().filter(|row| !is_generic(row)) {
        let noted = row.text("note").starts_with("printed units disagree");
        let clash = printed(row).unit_clash();
        assert_eq!(clash.is_some(), noted, "line {}: {clash:?}", row.line);
    }
}

#[test]
fn every_printed_thread_reads_and_prints_as_it_stands() {
    let threads = table("wheel_torque.csv").into_iter().map(|row| row.text("thread").to_owned());
    let studs = table("stud_threads.csv").into_iter().map(|row| row.text("thread").to_owned());
    let mut read = 0;
    for text in threads.chain(studs).filter(|text| text != "not stated" && !text.ends_with(" mm")) {
        let thread: Thread = text.parse().unwrap_or_else(|e| panic!("{text}: {e}"));
        let text = text.replace("M14 x 2.0", "M14 x 2");
        assert_eq!(thread.to_string(), text);
        read += 1;
    }
    assert_eq!(read, 21 + 3 + 15);
}

#[test]
fn the_chart_has_each_generic_row_under_fourteen_millimetres_and_no_other() {
    let (mut given, mut withheld) = (0, Vec::new());
    for row in table("wheel_torque.csv").iter().filter(|row| is_generic(row)) {
        let text = row.text("thread").to_owned();
        let thread: Thread = match text.strip_suffix(" mm") {
            Some(mm) => format!("M{mm}").parse().unwrap(),
            None => text.parse().unwrap(),
        };
        match bench_chart(thread) {
            Ok(found) => {
                assert_eq!(found.diameter, text);
                assert_eq!(found.ftlb, (row.number("min_ftlb"), row.number("max_ftlb")), "{text}");
                assert!(thread.diameter_mm() < 14.0);
                given += 1;
            }
            Err(NoChartValue::MakersDisagree { makers_nm, chart_nm }) => {
                assert!(thread.diameter_mm() >= 14.0, "{text}");
                withheld.push(text.clone());
                if text == "14 mm" {
                    assert_eq!(chart_nm, (row.number("min_Nm"), row.number("max_Nm")));
                    assert_eq!(makers_nm, makers_of("M14 x 1.5"));
                }
            }
            Err(other) => panic!("{text}: {other:?}"),
        }
    }
    assert_eq!(given, bench_rows().count());
    assert_eq!(withheld, ["14 mm", "9/16 in"]);
}

/// Lowest and highest value that makers print for a thread, N·m.
fn makers_of(thread: &str) -> (f64, f64) {
    let rows = table("wheel_torque.csv");
    let rows: Vec<&Row> = rows.iter().filter(|row| !is_generic(row) && row.text("thread") == thread).collect();
    let low = rows.iter().map(|row| row.number("min_Nm")).fold(f64::MAX, f64::min);
    let high = rows.iter().map(|row| row.number("max_Nm")).fold(f64::MIN, f64::max);
    (low, high)
}

#[test]
fn the_order_is_that_of_the_table_where_it_has_one() {
    for row in table("star_sequences.csv") {
        let studs: u8 = row.text("studs").parse().unwrap();
        let given: Vec<u8> = row.text("order_by_clock_position").split('-').map(|part| part.parse().unwrap()).collect();
        assert_eq!(order(studs), Some(given.clone()), "{studs} studs");
        assert_eq!(f64::from(smallest_jump(&given)), row.number("smallest_jump"), "{studs} studs");
    }
}

/// The fewest positions that any nut lies from the one before it, either way round.
fn smallest_jump(order: &[u8]) -> u8 {
    let count = u8::try_from(order.len()).unwrap();
    order
        .windows(2)
        .map(|pair| {
            let apart = pair[0].abs_diff(pair[1]);
            apart.min(count - apart)
        })
        .min()
        .unwrap()
}

#[test]
fn every_order_names_each_stud_once_and_starts_opposite() {
    for studs in 3..=12 {
        let order = order(studs).unwrap();
        let mut sorted = order.clone();
        sorted.sort_unstable();
        assert_eq!(sorted, (1..=studs).collect::<Vec<_>>());
        assert_eq!(order[0], 1, "the first nut is at the top");
        let across = studs / 2;
        let apart = order[0].abs_diff(order[1]);
        assert_eq!(apart.min(studs - apart), across, "{studs} studs: the second nut lies across");
        if studs % 2 == 0 {
            assert!(order.chunks(2).all(|pair| pair[0].abs_diff(pair[1]) == across), "{studs} studs");
        }
        if studs > 4 {
            assert!(smallest_jump(&order) >= 2, "{studs} studs: no two neighbors in a row");
        }
    }
    assert_eq!((order(2), order(13), order(0)), (None, None, None));
}

#[test]
fn nut_factors_are_those_of_the_table() {
    let name = |finish| match finish {
        Finish::DrySteel => ("dry steel", "dry steel"),
        Finish::MachineOil => ("machine oil", "steel"),
        Finish::Cadmium => ("cadmium", "steel"),
        Finish::PhosphateAndOil => ("phosphate and oil", "steel"),
        Finish::Zinc => ("zinc", "steel"),
        Finish::Stainless => ("stainless 302", "stainless 302"),
        Finish::ZincFlake => ("zinc flake", "steel"),
    };
    let rows = table("nut_factor.csv");
    // Point values and the scatter are no ranges of a finish.
    let ranges: Vec<&Row> = rows.iter().filter(|row| !row.text("joint").is_empty()).collect();
    assert_eq!(ranges.len(), nut_factors().len());
    for (row, factor) in ranges.iter().zip(nut_factors()) {
        assert_eq!((row.text("finish"), row.text("joint")), name(factor.finish));
        assert_eq!((row.number("K_low"), row.number("K_high")), (factor.low, factor.high));
    }
}

#[test]
fn point_values_of_the_nut_factor_lie_in_the_ranges_of_their_finish() {
    let rows = table("nut_factor.csv");
    let points: Vec<&Row> = rows.iter().filter(|row| row.text("finish").starts_with("point value")).collect();
    assert_eq!(points.len(), 3);
    for row in points {
        // The worked clamp loads use 0.20 and 0.15.
        let (finish, k) = match row.text("finish") {
            "point value lubricated" => (Finish::MachineOil, 0.15),
            "point value zinc plated" => (Finish::Zinc, 0.17),
            "point value clean dry" => (Finish::DrySteel, 0.20),
            other => panic!("{other}"),
        };
        assert_eq!((row.number("K_low"), row.number("K_high")), (k, k));
        let factor = nut_factors().iter().find(|factor| factor.finish == finish).unwrap();
        assert!((factor.low..=factor.high).contains(&k), "{finish:?} {k}");
    }
    let scatter = rows.iter().find(|row| row.text("finish") == "scatter to assume").unwrap();
    assert_eq!((scatter.number("K_low"), scatter.number("K_high")), (-CLAMP_SCATTER, CLAMP_SCATTER));
}

#[test]
fn stress_areas_and_proof_loads_are_those_of_the_table() {
    for row in table("stud_threads.csv") {
        let thread: Thread = row.text("thread").parse().unwrap();
        assert!((thread.diameter_mm() - row.number("d_mm")).abs() < 1e-9, "{thread}");
        assert!((thread.pitch_mm().unwrap() - row.number("pitch_mm")).abs() < 5e-5, "{thread}");
        assert!((thread.stress_area_mm2().unwrap() - row.number("stress_area_mm2")).abs() <= 0.0051, "{thread}");
        for (class, column) in [
            (PropertyClass::Class8_8, "proof_8.8_kN"),
            (PropertyClass::Class10_9, "proof_10.9_kN"),
            (PropertyClass::Class12_9, "proof_12.9_kN"),
        ] {
            let load = proof_load_kn(thread, class).unwrap();
            assert!((load - row.number(column)).abs() <= 0.051, "{thread} {column}: {load}");
        }
    }
}

#[test]
fn clamp_loads_are_those_of_the_worked_examples() {
    // F = T/(K D); derivations stand in the table.
    let mut with_proof = 0;
    for row in worked("clamp force") {
        let input = row.text("input").replace("D=0.5 in", "");
        let given = numbers(&input);
        let (torque, k) = (given[0], given[1]);
        let unit = if input.contains("ft-lb") { "ft.lb" } else { "N.m" };
        let name = row.text("check").trim_start_matches("clamp force ").trim_end_matches(" oiled by mistake");
        let thread: Thread = name.parse().unwrap();
        let factor = NutFactor { finish: Finish::DrySteel, low: k, high: k };
        let torque: Torque = format!("{torque} {unit}").parse().unwrap();
        let load = clamp_load(&torque, thread, &factor).unwrap();
        let expected = numbers(row.text("expected"));
        match row.text("expected").contains("proof") {
            true => {
                assert!((load.low_kn - expected[0]).abs() < 0.051, "{name}: {load:?}");
                let share = load.low_kn / proof_load_kn(thread, PropertyClass::Class10_9).unwrap() * 100.0;
                assert!((share - expected[1]).abs() <= 0.5, "{name}: {share}");
                with_proof += 1;
            }
            false => {
                assert!((load.low_kn - expected[1]).abs() < 0.051, "{name}: {load:?}");
                assert!((expected[0] * 0.0044482216 - load.low_kn).abs() < 0.001, "{name}: pounds-force");
            }
        }
        assert_eq!(load.low_kn, load.high_kn);
    }
    assert_eq!(with_proof, 5);
}

#[test]
fn oil_on_a_dry_thread_widens_the_clamp_load_upward() {
    let of = |finish| nut_factors().iter().find(|factor| factor.finish == finish).unwrap();
    let torque = "135 N.m".parse().unwrap();
    let thread = "M12 x 1.5".parse().unwrap();
    let dry = clamp_load(&torque, thread, of(Finish::DrySteel)).unwrap();
    let oiled = clamp_load(&torque, thread, of(Finish::MachineOil)).unwrap();
    assert!(oiled.high_kn > dry.high_kn);
    assert!(oiled.high_kn > proof_load_kn(thread, PropertyClass::Class10_9).unwrap());
    assert!(!dry.source.grade.may_refuse(), "clamp load is information only");
    let nonsense = NutFactor { finish: Finish::Zinc, low: 0.0, high: 0.2 };
    assert_eq!(clamp_load(&torque, thread, &nonsense), None);
}

#[test]
fn worked_examples_of_units_agree() {
    let rows = worked("units");
    let expected: Vec<f64> = rows.iter().map(|row| first_number(row.text("expected"))).collect();
    let torque = |text: &str| text.parse::<Torque>().unwrap();
    let pressure: lugbook::measure::Pressure = "35 psi".parse().unwrap();
    use lugbook::measure::{PressureUnit, TorqueUnit};
    assert_eq!(rows[0].text("input"), "100 ft-lb");
    assert!((torque("100 ft-lb").in_unit(TorqueUnit::NewtonMetre) - expected[0]).abs() < 0.005);
    assert_eq!(rows[1].text("input"), "103 N.m");
    assert!((torque("103 N.m").in_unit(TorqueUnit::FootPound) - expected[1]).abs() < 0.005);
    assert_eq!(rows[2].text("input"), "35 psi");
    assert!((pressure.in_unit(PressureUnit::Kilopascal) - expected[2]).abs() < 0.005);
    assert!((pressure.in_unit(PressureUnit::Bar) - numbers(rows[2].text("expected"))[1]).abs() < 0.0005);
}
