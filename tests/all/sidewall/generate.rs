//! Valid markings, written from section 1 of the standards page (and section 3
//! for the number, 4 for the grades), not from the parser.

use proptest::prelude::*;

/// Widths in mm that end in 5, as on the page's passenger and commercial examples.
fn width() -> impl Strategy<Value = u32> {
    (13..=39_u32).prop_map(|tens| tens * 10 + 5)
}

/// A rim: whole inches, or one of the commercial half inches.
fn rim() -> impl Strategy<Value = String> {
    prop_oneof![8 => (12..=24_u32).prop_map(|r| r.to_string()), 1 => prop_oneof![Just("17.5"), Just("19.5"), Just("22.5"), Just("24.5")].prop_map(str::to_owned)]
}

fn aspect() -> impl Strategy<Value = u32> {
    (5..=17_u32).prop_map(|n| n * 5)
}

/// `R`, `D` (diagonal), `B` (belted bias), and `ZR`.
fn construction() -> impl Strategy<Value = &'static str> {
    prop_oneof![8 => Just("R"), 2 => Just("ZR"), 1 => Just("D"), 1 => Just("B")]
}

/// Spaces are optional inside a size: `315/35 ZR22`.
fn gap() -> impl Strategy<Value = &'static str> {
    prop_oneof![4 => Just(""), 1 => Just(" ")]
}

pub fn size() -> impl Strategy<Value = String> {
    let metric = (
        prop_oneof![4 => Just(""), 2 => Just("P"), 2 => Just("LT"), 1 => Just("T"), 1 => Just("S"), 1 => Just("ST")],
        width(),
        aspect(),
        gap(),
        construction(),
        rim(),
    )
        .prop_map(|(prefix, width, aspect, gap, construction, rim)| {
            format!("{prefix}{width}/{aspect}{gap}{construction}{rim}")
        });
    let van = (width(), proptest::option::of(aspect()), 12..=17_u32)
        .prop_map(|(width, aspect, rim)| aspect.map_or(format!("{width}R{rim}C"), |a| format!("{width}/{a}R{rim}C")));
    let truck = (8..=13_u32, prop_oneof![Just("17.5"), Just("19.5"), Just("22.5"), Just("24.5")])
        .prop_map(|(width, rim)| format!("{width}R{rim}"));
    let flotation = (
        27..=40_u32,
        8..=14_u32,
        prop_oneof![Just(""), Just(".5"), Just(".50")],
        gap(),
        prop_oneof![Just("R"), Just("-")],
        15..=20_u32,
        gap(),
    )
        .prop_map(|(diameter, width, half, gap, letter, rim, second)| {
            format!("{diameter}x{width}{half}{gap}{letter}{rim}{second}LT")
        });
    prop_oneof![5 => metric, 2 => van, 1 => truck, 2 => flotation]
}

pub fn service() -> impl Strategy<Value = String> {
    let symbol = || {
        prop_oneof![
            Just("J"),
            Just("K"),
            Just("L"),
            Just("M"),
            Just("N"),
            Just("P"),
            Just("Q"),
            Just("R"),
            Just("S"),
            Just("T"),
            Just("U"),
            Just("H"),
            Just("V"),
            Just("W"),
            Just("Y")
        ]
    };
    let single = (60..=130_u32, symbol()).prop_map(|(index, symbol)| format!("{index}{symbol}"));
    let dual = (90..=160_u32, 1..=6_u32, symbol())
        .prop_map(|(index, less, symbol)| format!("{index}/{}{symbol}", index - less));
    let brackets = (80..=110_u32).prop_map(|index| format!("({index}Y)"));
    prop_oneof![5 => single, 3 => dual, 1 => brackets]
}

/// Load words: none, `XL`, `Extra Load`, `Reinforced`, `RF`, `LL`, a range C to G.
pub fn load() -> impl Strategy<Value = String> {
    prop_oneof![
        4 => Just(String::new()),
        2 => prop_oneof![Just("XL"), Just("Extra Load"), Just("Reinforced"), Just("RF"), Just("LL")].prop_map(str::to_owned),
        1 => (b'C'..=b'G').prop_map(|letter| format!("Load Range {}", char::from(letter))),
    ]
}

/// A number: 13, 8 to 12 or (retread) 7 symbols, the last four a week.
pub fn tin() -> impl Strategy<Value = String> {
    let symbols = |count: std::ops::RangeInclusive<usize>| {
        proptest::collection::vec(proptest::sample::select(b"ABCDEFHJKLMNPRTUVWXY0123456789".to_vec()), count)
            .prop_map(|bytes| String::from_utf8(bytes).unwrap())
    };
    let date = || (1..=52_u32, 1..=26_u32).prop_map(|(week, year)| format!("{week:02}{year:02}"));
    let current =
        (symbols(3..=3), symbols(6..=6), date()).prop_map(|(plant, own, date)| format!("DOT {plant} {own} {date}"));
    let older = (symbols(4..=4), symbols(0..=4), date()).prop_map(|(first, own, date)| {
        if own.is_empty() { format!("DOT {first} {date}") } else { format!("DOT {first} {own} {date}") }
    });
    let retread = (symbols(3..=3), date()).prop_map(|(plant, date)| format!("DOT {plant} {date}"));
    let closed = (symbols(9..=9), date()).prop_map(|(body, date)| format!("DOT{body}{date}"));
    prop_oneof![4 => current, 4 => older, 1 => retread, 1 => closed]
}

pub fn grades() -> impl Strategy<Value = String> {
    (3..=40_u32, prop_oneof![Just("AA"), Just("A"), Just("B"), Just("C")], prop_oneof![Just("A"), Just("B"), Just("C")])
        .prop_map(|(steps, traction, temperature)| {
            format!("TREADWEAR {} TRACTION {traction} TEMPERATURE {temperature}", steps * 20)
        })
}

/// Words of sections 6 and 1.
pub fn words() -> impl Strategy<Value = Vec<&'static str>> {
    proptest::sample::subsequence(
        vec!["M+S", "3PMSF", "ROTATION", "OUTSIDE", "INSIDE", "TUBELESS", "REGROOVABLE", "RUN FLAT", "RIM 5 1/2J"],
        0..=3,
    )
}

/// A whole marking, as a sidewall may bear it.
pub fn marking() -> impl Strategy<Value = String> {
    let maybe = |part: BoxedStrategy<String>| proptest::option::weighted(0.6, part);
    (size(), maybe(service().boxed()), load(), maybe(tin().boxed()), maybe(grades().boxed()), words()).prop_map(
        |(size, service, load, tin, grades, words)| {
            let mut parts = vec![size];
            parts.extend(service);
            if !load.is_empty() {
                parts.push(load);
            }
            parts.extend(words.into_iter().map(str::to_owned));
            parts.extend(tin);
            parts.extend(grades);
            parts.join(" ")
        },
    )
}
