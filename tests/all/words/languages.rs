//! The languages hold the same sentences, and the Spanish ones keep to the glossary.
//!
//! To see what is still to be translated:
//! `cargo test -p lugbook-tests --test all words::languages::every_sentence`.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement, Resource};
use lugbook::measure::{Depth, DepthUnit, Reading, Span, Torque, TorqueUnit};
use lugbook::words::{DecimalMark, Lang, Speech, Units, Worded, Words};
use regex::Regex;
use serde::Deserialize;

use crate::architecture::{sources, split};
use crate::program::root;

/// Verbs, as said to a person one calls "usted", that a step may begin with.
pub const SPANISH_VERBS: &[&str] = &[
    "Aclare",
    "Acueste",
    "Afloje",
    "Anote",
    "Apriete",
    "Asiente",
    "Avise",
    "Baje",
    "Busque",
    "Calce",
    "Cuente",
    "Deténgase",
    "Elija",
    "Empiece",
    "Enrosque",
    "Firme",
    "Fotografíe",
    "Guarde",
    "Haga",
    "Lea",
    "Levante",
    "Marque",
    "Mida",
    "Mire",
    "Monte",
    "Pida",
    "Ponga",
    "Quite",
    "Reapriete",
    "Regrese",
    "Retire",
    "Revise",
    "Sacuda",
    "Saque",
    "Traiga",
    "Vea",
];

/// A message: its file, its text with all forms, what it is filled with.
#[derive(Debug, Clone, Default)]
struct Message {
    file: String,
    text: String,
    forms: Vec<String>,
    filled: BTreeSet<String>,
    attributes: BTreeSet<String>,
}

fn folder(lang: Lang) -> PathBuf {
    root().join("core/words").join(lang.tag())
}

fn files(lang: Lang) -> Vec<PathBuf> {
    let mut files: Vec<_> = std::fs::read_dir(folder(lang)).expect("a language").map(|f| f.unwrap().path()).collect();
    files.sort();
    files
}

fn name(file: &Path) -> String {
    file.file_name().unwrap().to_string_lossy().into_owned()
}

fn parsed(file: &Path) -> Resource<String> {
    let text = std::fs::read_to_string(file).unwrap();
    fluent_syntax::parser::parse(text).unwrap_or_else(|(_, slips)| panic!("{}: {slips:?}", file.display()))
}

/// Each text that a pattern can come to, with `{}` for what it is filled with.
fn forms(pattern: &Pattern<String>, filled: &mut BTreeSet<String>) -> Vec<String> {
    let mut all = vec![String::new()];
    for element in &pattern.elements {
        let pieces = match element {
            PatternElement::TextElement { value } => vec![value.clone()],
            PatternElement::Placeable { expression: Expression::Inline(inline) } => match inline {
                InlineExpression::VariableReference { id } => {
                    filled.insert(id.name.clone());
                    vec!["{}".to_owned()]
                }
                InlineExpression::StringLiteral { value } => vec![value.clone()],
                other => panic!("{other:?} is not used here"),
            },
            PatternElement::Placeable { expression: Expression::Select { selector, variants } } => {
                let InlineExpression::VariableReference { id } = selector else { panic!("{selector:?}") };
                filled.insert(id.name.clone());
                variants.iter().flat_map(|variant| forms(&variant.value, filled)).collect()
            }
        };
        all = all.iter().flat_map(|head| pieces.iter().map(move |piece| format!("{head}{piece}"))).collect();
    }
    all
}

fn messages(lang: Lang) -> BTreeMap<String, Message> {
    let mut messages = BTreeMap::new();
    for file in files(lang) {
        for entry in parsed(&file).body {
            let Entry::Message(message) = entry else { continue };
            let mut told = Message { file: name(&file), ..Message::default() };
            if let Some(pattern) = &message.value {
                told.forms = forms(pattern, &mut told.filled);
            }
            for attribute in &message.attributes {
                told.attributes.insert(attribute.id.name.clone());
                told.forms.extend(forms(&attribute.value, &mut told.filled));
            }
            told.text = told.forms.join(" / ");
            let twice = messages.insert(message.id.name.clone(), told);
            assert!(twice.is_none(), "{} stands twice in {}", message.id.name, lang.tag());
        }
    }
    assert!(messages.len() > 1000, "{}", messages.len());
    messages
}

#[test]
fn each_file_is_read_without_a_slip_and_embedded_in_every_language() {
    for lang in Lang::ALL {
        let files = files(lang);
        let names: Vec<String> = files.iter().map(|file| name(file)).collect();
        assert_eq!(names, self::files(Lang::En).iter().map(|file| name(file)).collect::<Vec<_>>(), "{}", lang.tag());
        for file in &files {
            let text = std::fs::read_to_string(file).unwrap();
            parsed(file);
            assert!(lang.files().contains(&text.as_str()), "{} is not embedded", file.display());
        }
        assert_eq!(lang.files().len(), files.len(), "{}", lang.tag());
    }
}

#[test]
fn every_sentence_stands_in_every_language_filled_with_the_same() {
    let english = messages(Lang::En);
    for lang in Lang::ALL {
        let other = messages(lang);
        let missing: Vec<_> = english.iter().filter(|(id, _)| !other.contains_key(*id)).collect();
        let missing: Vec<_> = missing.iter().map(|(id, m)| format!("{}: {id} = {}", m.file, m.text)).collect();
        assert!(missing.is_empty(), "to be translated to {}:\n{}", lang.tag(), missing.join("\n"));
        let left: Vec<_> = other.keys().filter(|id| !english.contains_key(*id)).collect();
        assert!(left.is_empty(), "no longer in English: {left:#?}");
        for (id, told) in &other {
            let (one, two) = (&english[id], told);
            assert_eq!(one.file, two.file, "{id} stands in another file");
            assert_eq!(one.attributes, two.attributes, "{id}");
            assert!(!two.text.trim().is_empty() || one.text.trim().is_empty(), "{id} is empty");
            // A form may be chosen by a number that the other language does not need.
            let chosen = |more: &BTreeSet<String>, less: &BTreeSet<String>| {
                more.iter().filter(|name| !less.contains(*name)).all(|name| name == "count")
            };
            let same = chosen(&one.filled, &two.filled) && chosen(&two.filled, &one.filled);
            assert!(same, "{id}: {:?} and {:?}", one.filled, two.filled);
        }
    }
}

/// `NotAGrade` as it stands in data: `not-a-grade`.
fn kebab(name: &str) -> String {
    let mut out = String::new();
    for c in name.chars() {
        if c.is_uppercase() && !out.is_empty() {
            out.push('-');
        }
        out.extend(c.to_lowercase());
    }
    out
}

#[test]
fn no_sentence_stands_there_unused() {
    let folders = ["core/src", "bindings/terminal/src", "bindings/phone/src"];
    let (mut texts, mut codes, mut kinds) = (BTreeSet::new(), BTreeSet::new(), BTreeSet::new());
    let camel = Regex::new(r"\b[A-Z][A-Za-z0-9]*\b").unwrap();
    let coded = Regex::new(r#"(?:coded|or_code|choices)\(\s*"([a-z-]+)""#).unwrap();
    for file in folders.iter().flat_map(|folder| sources(&root().join(folder))) {
        let source = std::fs::read_to_string(&file).unwrap();
        let source: String = source.lines().filter(|line| !line.trim_start().starts_with("//")).collect();
        kinds.extend(coded.captures_iter(&source).map(|found| found[1].to_owned()));
        let (code, found) = split(&source);
        codes.extend(camel.find_iter(&code).map(|name| kebab(name.as_str())));
        texts.extend(found);
    }
    for file in std::fs::read_dir(root().join("core/procedures")).unwrap() {
        texts.extend(split(&std::fs::read_to_string(file.unwrap().path()).unwrap()).1);
    }
    let code = Regex::new(r"^-?[a-z0-9]{2,}(-[a-z0-9]+)*-?$").unwrap();
    codes.extend(texts.iter().filter(|text| code.is_match(text)).cloned());
    codes.insert("-".to_owned());
    let slug = |text: &String| text.to_lowercase().replace(|c: char| !c.is_ascii_alphanumeric(), " ");
    codes.extend(texts.iter().map(|text| slug(text).split_whitespace().collect::<Vec<_>>().join("-")));
    let begin = Regex::new(r"^([a-z][a-z-]*-)\{").unwrap();
    codes.extend(texts.iter().filter_map(|text| Some(begin.captures(text)?[1].to_owned())));
    // What is put together from a text with holes: a hole holds a code.
    let hole = Regex::new(r"\{[a-z_.]*\}").unwrap();
    let whole = |text: &str| Regex::new(&format!("^{text}$")).unwrap();
    let built: Vec<Regex> = texts
        .iter()
        .filter(|text| Regex::new(r"^[a-z][a-z0-9-]*-(\{[a-z_]*\}[a-z-]*)+$").unwrap().is_match(text))
        .map(|text| whole(&hole.replace_all(text, "([a-z0-9-]*)")))
        .chain(kinds.iter().map(|kind| whole(&format!("{kind}-([a-z0-9-]+)"))))
        .chain(
            texts
                .iter()
                .filter(|text| text.len() > 4 && text.ends_with('-') && !text.contains('{'))
                .map(|t| whole(&format!("{t}([a-z-]+)"))),
        )
        .collect();
    // A code, or several put one behind the other.
    fn made_of(code: &str, codes: &BTreeSet<String>) -> bool {
        code.is_empty()
            || codes.contains(code)
            || (1..code.len()).any(|at| codes.contains(&code[..at]) && made_of(&code[at..], codes))
    }
    let fits = |code: &str| made_of(code, &codes);
    let plain = |id: &str| {
        texts.contains(id)
            || built
                .iter()
                .any(|b| b.captures(id).is_some_and(|c| c.iter().skip(1).flatten().all(|c| fits(c.as_str()))))
    };
    // Endings that are put behind a whole name.
    let endings: Vec<&str> = vec!["-next", "-spoken", "-at"];
    assert!(endings.iter().all(|e| texts.iter().any(|text| text == e || text.ends_with(&format!("}}{e}")))));
    let unused: Vec<_> = messages(Lang::En)
        .into_keys()
        .filter(|id| !plain(id) && !endings.iter().any(|e| id.strip_suffix(e).is_some_and(plain)))
        .collect();
    assert!(unused.is_empty(), "{unused:#?}");
}

#[test]
fn what_a_source_is_is_said_in_every_language() {
    // A title with words in it that are no name: “owner's manuals: …”, not “49 CFR 574.5”.
    let title = Regex::new(r#"(?:Grade::\w+,|title:|const [A-Z_]+: &str =)\s*"([^"]+)""#).unwrap();
    let common = Regex::new(r"(?:^|[ ,:])([a-z]{3,}\b[^A-Z0-9]*){2}|^[a-z]+$").unwrap();
    let mut missing = Vec::new();
    let mut seen = 0;
    for file in sources(&root().join("core/src")) {
        let source = std::fs::read_to_string(&file).unwrap();
        if !source.contains("Source") || file.ends_with("words/limits.rs") || file.ends_with("source.rs") {
            continue;
        }
        for found in title.captures_iter(&source).filter(|found| common.is_match(&found[1])) {
            let plain = found[1].to_lowercase().replace(|c: char| !c.is_ascii_alphanumeric(), " ");
            let id = format!("cited-{}", plain.split_whitespace().collect::<Vec<_>>().join("-"));
            seen += 1;
            missing.extend((!messages(Lang::En).contains_key(&id)).then(|| format!("{id} = {}", &found[1])));
        }
    }
    assert!(missing.is_empty() && seen > 12, "{seen} {missing:#?}");
    let source = lugbook::source::Source::read(lugbook::source::Grade::Secondary, "winter tread advice");
    let said = words(Lang::Es, Units::AsRead, DecimalMark::Point).source(&source);
    assert_eq!(said, "consejo sobre la banda de rodadura en invierno (fuente secundaria)");
}

/// The most words of a form; what it is filled with counts as its longest, “137 N·m (read 101 ft·lb)”.
fn most_words(told: &Message) -> usize {
    told.forms
        .iter()
        .map(|form| form.replace("{}", "137 N·m (read 101 ft·lb)").split_whitespace().count())
        .max()
        .unwrap_or(0)
}

#[test]
fn a_step_has_at_most_15_words_and_a_caution_20_in_every_language() {
    let mut seen = (0, 0);
    for lang in Lang::ALL {
        for (id, told) in messages(lang) {
            if id.starts_with("step-") || id.starts_with("act-") {
                assert!(most_words(&told) <= 15, "{id}: {}", told.text);
                seen.0 += 1;
            }
            if id.starts_with("caution-") {
                assert!(most_words(&told) <= 20, "{id}: {}", told.text);
                seen.1 += 1;
            }
        }
    }
    assert!(seen.0 > 100 && seen.1 > 60, "{seen:?}");
}

#[test]
fn spanish_says_usted_and_writes_as_us_spanish_does() {
    let tu = Regex::new(r"(?i)\b(tú|tu|tus|ti|te|contigo|vos|vosotros|vuestr[oa]s?)\b").unwrap();
    for (id, told) in messages(Lang::Es) {
        let text = &told.text;
        assert!(!tu.is_match(text), "{id}: {text}");
        // What is typed at a shell has the shell's own quotes.
        let typed = id.starts_with("terminal-no-");
        assert!(!text.contains(['«', '»']) && (typed || !text.contains(['"', '\''])), "{id}: {text}");
        assert!(!text.contains("  ") && text.matches('?').count() == text.matches('¿').count(), "{id}: {text}");
        assert!(text.matches('!').count() == text.matches('¡').count(), "{id}: {text}");
    }
}

#[test]
fn a_sentence_ends_alike_in_both_languages() {
    let (english, spanish) = (messages(Lang::En), messages(Lang::Es));
    for (id, one) in &english {
        let two = &spanish[id];
        let end =
            |told: &Message| told.forms.first().and_then(|form| form.chars().last()).filter(|c| ".:?!".contains(*c));
        assert_eq!(end(one), end(two), "{id}: {} / {}", one.text, two.text);
        let capital = |told: &Message| {
            let mut letters = told.forms.first()?.trim_start_matches(['“', '¿', '¡']).chars();
            let (first, second) = (letters.next()?, letters.next()?);
            // Not of a word all in capitals.
            (first.is_alphabetic() && second.is_lowercase()).then(|| first.is_uppercase())
        };
        if let (Some(one), Some(two)) = (capital(one), capital(two)) {
            assert_eq!(one, two, "{id}");
        }
    }
}

#[test]
fn what_every_shell_says_names_no_command_of_the_terminal() {
    let command = Regex::new(r"\blugbook [a-z]").unwrap();
    for lang in Lang::ALL {
        let naming =
            messages(lang).into_iter().filter(|(_, told)| told.file != "terminal.ftl" && command.is_match(&told.text));
        // Whoever was handed a card can check it at a terminal alone.
        assert_eq!(naming.map(|(id, _)| id).collect::<Vec<_>>(), ["card-provable"], "{lang:?}");
    }
}

#[derive(Debug, Deserialize)]
struct Glossary {
    term: Vec<Term>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Term {
    en: Vec<String>,
    es: Vec<String>,
    refused: Vec<String>,
    note: String,
    source: String,
    apart: Vec<String>,
}

fn glossary() -> Vec<Term> {
    let text = std::fs::read_to_string(root().join("core/words/glossary.toml")).unwrap();
    toml::from_str::<Glossary>(&text).expect("the glossary is read").term
}

/// Words apart from each other by one space, with one before and after.
fn bare(text: &str) -> String {
    let text = text.replace('’', "'").replace("{}", " 0 ");
    let words: Vec<_> =
        text.split(|c: char| !(c.is_alphanumeric() || c == '\'')).filter(|word| !word.is_empty()).collect();
    format!(" {} ", words.join(" "))
}

/// Whether a text has a word: small letters find both sizes, capitals only capitals.
fn has(text: &str, word: &str, begins: bool) -> bool {
    let shout = word.chars().all(|c| !c.is_lowercase());
    let (text, word) =
        if shout { (bare(text), bare(word)) } else { (bare(text).to_lowercase(), bare(word).to_lowercase()) };
    text.contains(if begins { word.trim_end() } else { &word })
}

#[test]
fn spanish_says_each_thing_of_the_trade_by_its_one_word() {
    let (english, spanish) = (messages(Lang::En), messages(Lang::Es));
    let mut slips = Vec::new();
    for term in glossary() {
        assert!(!term.source.is_empty() && (!term.note.is_empty() || term.refused.len() < 4), "{:?}", term.en);
        let named: Vec<_> =
            english.iter().filter(|(_, told)| term.en.iter().any(|word| has(&told.text, word, false))).collect();
        assert!(!named.is_empty(), "no sentence speaks of {:?}", term.en);
        for (id, told) in named {
            let said = term.es.iter().any(|word| has(&spanish[id].text, word, true));
            let apart = term.apart.iter().any(|apart| apart == id);
            if said == apart {
                slips.push(format!(
                    "{id}, {:?} {}: {} | {}",
                    term.en[0],
                    if said { "need not be apart" } else { "is not said" },
                    told.text,
                    spanish[id].text
                ));
            }
        }
        for id in &term.apart {
            assert!(spanish.contains_key(id), "{id} is apart and not there");
        }
    }
    assert!(slips.is_empty(), "{}", slips.join("\n"));
}

#[test]
fn spanish_has_no_word_that_means_something_else_in_the_next_shop() {
    let spanish = messages(Lang::Es);
    let mut slips = Vec::new();
    for term in glossary() {
        for refused in &term.refused {
            let (word, begins) = refused.strip_suffix('-').map_or((refused.as_str(), false), |word| (word, true));
            let plurals = [word.to_owned(), format!("{word}s"), format!("{word}es"), word.replace("ón", "ones")];
            for (id, told) in &spanish {
                if plurals.iter().any(|word| has(&told.text, word, begins)) {
                    slips.push(format!("{id}: {refused}, not {:?}: {}", term.es, told.text));
                }
            }
        }
    }
    assert!(slips.is_empty(), "{}", slips.join("\n"));
}

#[test]
fn the_reader_of_words_finds_what_it_should() {
    assert!(has("Ponga 2 llantas.", "llanta", true) && !has("Ponga 2 llantas.", "llanta", false));
    assert!(has("El PAR de apriete", "par", false) && !has("Para cada uno", "par", false));
    assert!(has("DANGER", "DANGER", false) && !has("A danger", "DANGER", false));
    assert!(has("the maker’s nut", "maker's", false));
}

fn words(lang: Lang, units: Units, decimal: DecimalMark) -> Words {
    Words::new(Speech { lang, units, decimal, ..Speech::default() })
}

#[test]
fn numbers_choose_their_forms_as_cldr_has_it() {
    // CLDR plural rules: one is n = 1 in Spanish, i = 1 and v = 0 in English; all else here is other.
    let spoken = |lang, value: f64| {
        let depth = Depth::new(value, DepthUnit::Millimetre).unwrap();
        words(lang, Units::AsRead, DecimalMark::Point).quantity(&depth).spoken
    };
    for (value, one) in [(0.0, false), (1.0, true), (1.5, false), (2.0, false), (11.0, false), (21.0, false)] {
        assert_eq!(spoken(Lang::Es, value).ends_with(" milímetro"), one, "{value}");
        assert_eq!(spoken(Lang::En, value).ends_with(" millimeter"), one, "{value}");
    }
    let said = words(Lang::Es, Units::AsRead, DecimalMark::Point);
    let count = |count: f64| said.text("nuts-in-order", &[("count", count.into())]);
    assert_eq!(
        [1.0, 5.0, 1_000_000.0].map(count),
        ["1 tuerca", "las 5 tuercas en orden", "las 1000000 tuercas en orden"]
    );
}

#[test]
fn language_units_and_decimals_are_chosen_apart() {
    let torque: Torque = "102.5 ft.lb".parse().unwrap();
    let said = |lang, units, decimal| words(lang, units, decimal).reading(&torque);
    use DecimalMark::{Comma, Point};
    assert_eq!(said(Lang::Es, Units::AsRead, Point), "102.5 ft·lb");
    assert_eq!(said(Lang::Es, Units::AsRead, Comma), "102,5 ft·lb");
    assert_eq!(said(Lang::En, Units::AsRead, Comma), "102,5 ft·lb");
    assert_eq!(said(Lang::Es, Units::Metric, Comma), "139 N·m (leído 102,5 ft·lb)");
    assert_eq!(said(Lang::En, Units::Metric, Point), "139 N·m (read 102.5 ft·lb)");
}

/// What is shown of a reading, typed back in.
fn again<U: Worded>(reading: Reading<U>) {
    for lang in Lang::ALL {
        for decimal in [DecimalMark::Point, DecimalMark::Comma] {
            let words = words(lang, Units::AsRead, decimal);
            let shown = words.reading(&reading);
            assert_eq!(Reading::parse(&shown, None), Ok(reading), "{shown}");
            // Said aloud and written down as it was said; letters one by one are for screen readers.
            let spoken = words.quantity(&reading).spoken;
            if lang == Lang::Es && !spoken.contains("bares") {
                assert_eq!(Reading::parse(&spoken, None), Ok(reading), "{spoken}");
            }
        }
    }
}

#[test]
fn what_is_shown_is_understood_when_typed() {
    for value in [1.0, 2.5, 7.0] {
        again::<DepthUnit>(Reading::new(value, DepthUnit::Millimetre).unwrap());
        again::<DepthUnit>(Reading::new(value, DepthUnit::ThirtySecond).unwrap());
        for unit in <TorqueUnit as lugbook::measure::Unit>::ALL {
            again(Reading::new(value, *unit).unwrap());
        }
        for unit in <lugbook::measure::PressureUnit as lugbook::measure::Unit>::ALL {
            again(Reading::new(value, *unit).unwrap());
        }
        for unit in <lugbook::measure::DistanceUnit as lugbook::measure::Unit>::ALL {
            again(Reading::new(value, *unit).unwrap());
        }
        for unit in <lugbook::measure::TemperatureUnit as lugbook::measure::Unit>::ALL {
            again(Reading::new(value, *unit).unwrap());
        }
        for unit in <lugbook::measure::LoadUnit as lugbook::measure::Unit>::ALL {
            again(Reading::new(value, *unit).unwrap());
        }
        for unit in <lugbook::measure::SpeedUnit as lugbook::measure::Unit>::ALL {
            again(Reading::new(value, *unit).unwrap());
        }
        again::<lugbook::measure::SpanUnit>(Span::new(value, lugbook::measure::SpanUnit::Inch).unwrap());
    }
}
