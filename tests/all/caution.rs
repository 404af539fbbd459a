//! The cautions: closed, worded, and where they apply. Common practice, no source.

use lugbook::caution::{CautionId, Circumstance, Signal, applies, of_vehicle};
use lugbook::procedure::built_in;
use lugbook::vehicle::{Axle, Class, Layout};
use lugbook::words::{Lang, Speech, Words};

#[test]
fn a_code_is_the_same_everywhere() {
    for caution in CautionId::ALL {
        assert_eq!(serde_json::to_value(caution).unwrap(), caution.code());
        assert_eq!(CautionId::of_code(caution.code()), Some(*caution));
    }
    for circumstance in Circumstance::ALL {
        assert_eq!(serde_json::to_value(circumstance).unwrap(), circumstance.code());
        assert_eq!(Circumstance::of_code(circumstance.code()), Some(*circumstance));
    }
    for signal in Signal::ALL {
        assert_eq!(serde_json::to_value(signal).unwrap(), signal.code());
    }
}

#[test]
fn a_caution_names_a_hazard_in_at_most_twenty_words_and_no_action() {
    // A caution that begins with one of these tells somebody what to do.
    let mut orders =
        vec!["Don't", "Do", "Never", "Always", "Keep", "Wear", "Use", "Check", "Make", "Look", "Stand", "Lower", "Set"];
    orders.extend(["No", "Nunca", "Siempre", "Evite", "Cuide", "Use", "Asegure", "Manténgase", "Verifique"]);
    orders.extend(crate::words::languages::SPANISH_VERBS);
    for lang in Lang::ALL {
        let words = Words::new(Speech { lang, ..Speech::default() });
        for caution in CautionId::ALL {
            let text = words.caution(*caution);
            assert!(text.split(' ').count() <= 20, "{text}");
            assert!(text.ends_with('.') && text.matches('.').count() == 1, "{text}");
            assert!(!orders.contains(&text.split(' ').next().unwrap()), "{text}");
            assert!(
                ["must", "should", "debe", "tiene que", "hay que"].iter().all(|word| !text.contains(word)),
                "{text}"
            );
        }
        // ANSI Z535's four words; the Spanish ones as signs in US shops have them.
        let signals = match lang {
            Lang::En => ["NOTICE", "CAUTION", "WARNING", "DANGER"],
            Lang::Es => ["AVISO", "PRECAUCIÓN", "ADVERTENCIA", "PELIGRO"],
        };
        assert_eq!(Signal::ALL.map(|signal| words.signal(signal)), signals);
    }
}

#[test]
fn a_danger_says_that_somebody_is_hurt_and_a_notice_that_nobody_is() {
    // ANSI Z535: danger will, warning could kill or injure seriously; notice is damage without injury.
    for lang in Lang::ALL {
        let words = Words::new(Speech { lang, ..Speech::default() });
        let (will, can, hurt): (&[&str], _, &[&str]) = match lang {
            Lang::En => (
                &["kills", "crushes", "onto whoever"],
                " can ",
                &["kill", "injur", "hurt", "crush", "burn", "eyes", "fingers", "lungs"],
            ),
            Lang::Es => (
                &["mata", "aplasta", "sobre quien"],
                " puede",
                &["mata", "lesion", "lastim", "aplasta", "quema", "ojos", "dedos", "pulmones"],
            ),
        };
        for caution in CautionId::ALL {
            let text = words.caution(*caution);
            match caution.signal() {
                Signal::Danger => {
                    assert!(will.iter().any(|word| text.contains(word)), "{text}");
                    assert!(!text.contains(can), "{text}");
                    assert!(!caution.may_be_left_out());
                }
                Signal::Notice => assert!(hurt.iter().all(|word| !text.contains(word)), "{text}"),
                _ => {}
            }
        }
    }
}

#[test]
fn cautions_apply_where_their_circumstances_are() {
    use Circumstance::{Air, Electric, HandTools, Lift, Roadside, Stands};
    assert!(CautionId::TurningSocket.applies(&[Air, Stands]) && CautionId::TurningSocket.applies(&[Electric]));
    assert!(!CautionId::TurningSocket.applies(&[HandTools, Stands]));
    assert!(!CautionId::HoseUnderfoot.applies(&[Electric]));
    assert!(CautionId::JackAlone.applies(&[Stands]) && !CautionId::JackAlone.applies(&[Lift]));
    assert!(CautionId::Slope.applies(&[Roadside]) && !CautionId::Slope.applies(&[Lift]));
    assert!(CautionId::Lowering.applies(&[]));
    // One of each kind that is named has to be here.
    assert!(applies(&[Air, Electric, Stands], &[Electric, Stands]));
    assert!(!applies(&[Air, Electric, Stands], &[Electric, Lift]));
}

#[test]
fn the_vehicle_tells_of_duals_and_heavy_wheels() {
    use Circumstance::{Duals, HeavyWheel};
    let axle = |dual| Axle { dual, steer: false, rating: None };
    let duals = Layout { axles: vec![axle(false), axle(true)], spare: false };
    let plain = Layout { axles: vec![axle(false), axle(false)], spare: false };
    assert_eq!(of_vehicle(Class::LightTruck, &duals, None), [Duals, HeavyWheel]);
    assert_eq!(of_vehicle(Class::Truck, &plain, None), [HeavyWheel]);
    assert_eq!(of_vehicle(Class::Car, &plain, None), []);
    assert_eq!(of_vehicle(Class::Car, &plain, Some(762.0)), []);
    assert_eq!(of_vehicle(Class::Car, &plain, Some(762.1)), [HeavyWheel]);
}

#[test]
fn every_caution_in_a_built_in_procedure_is_known() {
    for procedure in built_in().expect("built-in procedures are good") {
        for step in &procedure.steps {
            for code in &step.cautions {
                assert!(CautionId::of_code(code).is_some(), "{}: {code}", step.id);
            }
            for code in &step.when {
                assert!(Circumstance::of_code(code).is_some(), "{}: {code}", step.id);
            }
        }
        for code in procedure.settle.iter().flatten() {
            assert!(Circumstance::of_code(code).is_some(), "{code}");
        }
    }
}
