//! Ten plans made by hand from the pattern names and rules in vehicle manuals
//! (standards, section 9); rows carry neutral ids. The sources are in `source`.

use lugbook::rotation::{Name, Note, Pattern, Request, plan};
use lugbook::vehicle::Drive;

use super::{car, tire, told};

struct Row {
    id: &'static str,
    request: fn() -> Request,
    pattern: Pattern,
    moves: &'static str,
    refused: &'static [(Pattern, Name)],
    source: &'static str,
}

fn sized(mut request: Request, front: &str, rear: &str) -> Request {
    for (at, size) in [("FL", front), ("FR", front), ("RL", rear), ("RR", rear)] {
        tire(&mut request, at).size = Some(size.to_owned());
    }
    request
}

fn arrows(mut request: Request) -> Request {
    for tire in &mut request.tires {
        tire.directional = Some(true);
    }
    request
}

fn given(mut request: Request, pattern: Pattern) -> Request {
    request.makers_pattern = Some(pattern);
    request
}

const ROWS: [Row; 10] = [
    Row {
        id: "front-drive-no-history",
        request: || car(Drive::Front, false),
        pattern: Pattern::ForwardCross,
        moves: "FL-RL FR-RR RL-FR RR-FL",
        refused: &[],
        source: "common practice, no source: front drive, forward cross; secondary pages agree",
    },
    Row {
        id: "suv-rearward-cross",
        request: || given(car(Drive::All, false), Pattern::RearwardCross),
        pattern: Pattern::RearwardCross,
        moves: "FL-RR FR-RL RL-FL RR-FR",
        refused: &[],
        source: "O: an owner's manual of 2023: 'rearward cross'",
    },
    Row {
        id: "sedan-rear-drive-forward-cross-by-manual",
        request: || given(car(Drive::Rear, false), Pattern::ForwardCross),
        pattern: Pattern::ForwardCross,
        moves: "FL-RL FR-RR RL-FR RR-FL",
        refused: &[],
        source: "O: an owner's manual of 2010 says forward cross: the manual wins",
    },
    Row {
        id: "rear-drive-no-history",
        request: || car(Drive::Rear, false),
        pattern: Pattern::RearwardCross,
        moves: "FL-RR FR-RL RL-FL RR-FR",
        refused: &[],
        source: "common practice, no source: rear drive, rearward cross",
    },
    Row {
        id: "sports-car-unequal-sizes",
        request: || sized(car(Drive::Rear, false), "295/30R18", "355/30R19"),
        pattern: Pattern::SideToSide,
        moves: "FL-FR FR-FL RL-RR RR-RL",
        refused: &[(Pattern::RearwardCross, Name::Size), (Pattern::FrontToRear, Name::Size)],
        source: "O: an owner's manual of 2017: side-to-side when front and rear sizes differ",
    },
    Row {
        id: "directional",
        request: || arrows(car(Drive::Front, false)),
        pattern: Pattern::FrontToRear,
        moves: "FL-RL FR-RR RL-FL RR-FR",
        refused: &[(Pattern::ForwardCross, Name::Direction), (Pattern::SideToSide, Name::Direction)],
        source: "O: an owner's manual of 1998: keep the direction of rotation",
    },
    Row {
        id: "unequal-and-directional",
        request: || arrows(sized(car(Drive::Rear, false), "245/40R19", "275/35R19")),
        pattern: Pattern::LeaveAsIs,
        moves: "",
        refused: &[
            (Pattern::SideToSide, Name::Direction),
            (Pattern::FrontToRear, Name::Size),
            (Pattern::X, Name::Size),
        ],
        source: "C: unequal sizes and directional: no rotation on the rims exists",
    },
    Row {
        id: "dissimilar-spare-stays",
        request: || {
            let mut request = sized(car(Drive::PartTime, true), "LT265/70R17", "LT265/70R17");
            tire(&mut request, "SP").size = Some("LT245/75R17".to_owned());
            request
        },
        pattern: Pattern::RearwardCross,
        moves: "FL-RR FR-RL RL-FL RR-FR",
        refused: &[(Pattern::RearwardCrossFive, Name::Size)],
        source: "O: owner's manuals: no dissimilar spare in a rotation",
    },
    Row {
        id: "full-size-spare-takes-part",
        request: || {
            let mut request = sized(car(Drive::PartTime, true), "245/75R17", "245/75R17");
            tire(&mut request, "SP").size = Some("245/75R17".to_owned());
            request
        },
        pattern: Pattern::RearwardCrossFive,
        moves: "FL-SP FR-RL RL-FL RR-FR SP-RR",
        refused: &[],
        source: "S: two secondary pages: the spare takes the right rear, left front becomes the spare",
    },
    Row {
        id: "x-only-when-given",
        request: || given(car(Drive::All, false), Pattern::X),
        pattern: Pattern::X,
        moves: "FL-RR FR-RL RL-FR RR-FL",
        refused: &[],
        source: "S: a tire maker's public page: X for permanent four-wheel drive",
    },
];

#[test]
fn plans_made_by_hand_from_manuals_come_first() {
    for row in ROWS {
        let request = (row.request)();
        let answer = plan(&request).unwrap();
        let best = &answer.plans[0];
        assert_eq!(
            (best.pattern, told(&request, &best.moves).as_str()),
            (row.pattern, row.moves),
            "{}: {}",
            row.id,
            row.source
        );
        assert_eq!(answer.plans.last().map(|plan| plan.pattern), Some(Pattern::LeaveAsIs), "{}", row.id);
        for (pattern, constraint) in row.refused {
            let refused = answer.refused.iter().find(|refused| refused.pattern == *pattern);
            let because = refused.and_then(|refused| refused.because.iter().find(|b| b.constraint == *constraint));
            assert!(because.is_some_and(|b| b.force.refuses()), "{} {pattern:?}", row.id);
        }
    }
}

#[test]
fn unequal_and_directional_says_what_remounting_would_allow() {
    let request = (ROWS[6].request)();
    let answer = plan(&request).unwrap();
    assert_eq!(answer.notes, [Note::OnlyWithRemounting { allows: vec![Pattern::SideToSide] }]);
    let mut allowed = request.clone();
    allowed.remount_allowed = true;
    let answer = plan(&allowed).unwrap();
    assert_eq!(answer.plans[0].pattern, Pattern::SideToSide);
    assert_eq!(answer.plans[0].remounts.len(), 4);
    for tire in &mut allowed.tires {
        tire.asymmetric = Some(true);
    }
    let answer = plan(&allowed).unwrap();
    assert_eq!(answer.notes, [Note::NothingMayMove]);
}
