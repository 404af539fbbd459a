//! Reading a whole marking, item by item.

use super::load_class::{LoadClass, LoadRange};
use super::marking::{MOST_APPROVALS, MOST_LOADS, Marking};
use super::problem::{Part, ProblemKind, Problems, shown};
use super::scan::Scan;
use super::tin::{Tin, TinForm};
use super::words::{Meaning, Phrase};
use crate::measure::LoadUnit;

use super::{approval, grades, maximum, rim_width, service, size_grammar, tin_grammar, words};

/// What stood last, as far as it matters for what comes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum After {
    Size,
    Service,
    Other,
}

pub(super) struct Reader<'a> {
    scan: Scan<'a>,
    marking: Marking,
    problems: Problems,
    after: After,
    /// Where a bracket stands open.
    open: Option<usize>,
    /// Where the first maximum load for single fitment stands.
    max_at: Option<(usize, usize)>,
}

impl<'a> Reader<'a> {
    pub(super) fn new(upper: &'a [u8], problems: Problems) -> Self {
        Self {
            scan: Scan::new(upper),
            marking: Marking::default(),
            problems,
            after: After::Other,
            open: None,
            max_at: None,
        }
    }

    pub(super) fn read(mut self) -> (Marking, Problems) {
        self.scan.between_items();
        if self.scan.done() {
            self.problems.add(0, 0, ProblemKind::Empty);
        }
        if let Some(tin) = tin_grammar::read_date_alone(&mut self.scan, &mut self.problems) {
            self.marking.tin = Some(tin);
        }
        while !self.scan.done() {
            let (from, after) = (self.scan.at(), self.after);
            self.after = After::Other;
            self.item(after);
            if self.scan.at() == from {
                self.unread(after);
            }
            self.scan.between_items();
        }
        if let Some(at) = self.open {
            self.problems.add(at, 1, ProblemKind::Bracket);
        }
        self.compare_loads();
        (self.marking, self.problems)
    }

    /// Reads one item, or leaves the cursor where it is.
    fn item(&mut self, after: After) {
        let Some(first) = self.scan.peek() else { return };
        match first {
            b'0'..=b'9' | b'(' => self.item_from_figure(first, after),
            b'/' if after == After::Size && self.load_range_letter(true) => self.after = After::Size,
            b'A'..=b'Z' => self.item_from_letter(first, after),
            _ => {}
        }
    }

    fn item_from_figure(&mut self, first: u8, after: After) {
        let figure = first != b'(';
        if figure && (self.grades_in_a_row(true) || self.ply_rating(after)) {
            return;
        }
        if self.size() || self.service(after == After::Size && self.marking.service.is_none()) {
            return;
        }
        if figure && (self.figure_first() || self.tin_without_prefix()) {
            return;
        }
        if let Some(phrase) = words::phrase(&self.scan) {
            self.meaning(phrase);
        }
    }

    fn item_from_letter(&mut self, first: u8, after: After) {
        let at = self.scan.at();
        if self.tin() || self.size() {
            return;
        }
        if let Some(phrase) = words::phrase(&self.scan) {
            self.meaning(phrase);
            return;
        }
        if after != After::Other && self.load_range_letter(false) {
            return;
        }
        if matches!(first, b'E' | b'S')
            && let Some(approval) = approval::read(&mut self.scan)
        {
            // `(E4) 0212345`: the bracket closes inside.
            if self.scan.between(at, self.scan.at()).contains(&b')') {
                self.open = None;
            }
            self.approval(approval);
            return;
        }
        self.tin_without_prefix();
    }

    fn size(&mut self) -> bool {
        let at = self.scan.at();
        let Some(found) = size_grammar::read(&mut self.scan, &mut self.problems) else { return false };
        let Some(size) = found else { return true };
        self.after = After::Size;
        if self.marking.size.is_some_and(|earlier| earlier != size) {
            self.repeated(at, Part::Size);
        } else {
            self.marking.size = Some(size);
            if size.is_high_load() {
                self.load(at, LoadClass::High);
                // The size says so itself: a word that differs does not stand.
                self.marking.load = Some(LoadClass::High);
            }
        }
        true
    }

    fn service(&mut self, after_size: bool) -> bool {
        let at = self.scan.at();
        let Some(found) = service::read(&mut self.scan, after_size, &mut self.problems) else { return false };
        self.after = After::Service;
        let Some(found) = found else { return true };
        match (self.marking.service, self.marking.second_service) {
            (None, _) => {
                self.marking.service = Some(found);
                if let Some(symbol) = found.speed_symbol.filter(|s| s.max_kmh() < 240)
                    && self.marking.size.is_some_and(|s| s.is_zr())
                {
                    let len = self.scan.at().saturating_sub(at);
                    self.problems.add(at, len, ProblemKind::SlowForZr { max_kmh: symbol.max_kmh() });
                }
            }
            (Some(first), _) if first == found => {}
            (Some(_), None) => self.marking.second_service = Some(found),
            (Some(_), Some(second)) if second == found => {}
            _ => self.repeated(at, Part::Service),
        }
        true
    }

    fn tin(&mut self) -> bool {
        let at = self.scan.at();
        if !self.scan.rest().starts_with(b"DOT") {
            return false;
        }
        // `DOTTED` is a word, `DOT1HKB9FLP0723` a number.
        let run = self.scan.run();
        if run.len() > 3 && !run.iter().any(u8::is_ascii_digit) && run.len() < 7 {
            return false;
        }
        let Some(found) = tin_grammar::read(&mut self.scan, &mut self.problems) else { return false };
        if let Some(tin) = found {
            self.take_tin(at, tin);
        }
        true
    }

    fn tin_without_prefix(&mut self) -> bool {
        let at = self.scan.at();
        let Some(tin) = tin_grammar::read_without_prefix(&mut self.scan, &mut self.problems) else { return false };
        self.take_tin(at, tin);
        true
    }

    fn take_tin(&mut self, at: usize, tin: Tin) {
        match &self.marking.tin {
            // The part on one side and the whole of the other belong together.
            Some(earlier) if tin.form() == TinForm::Partial && earlier.text().starts_with(tin.text()) => {}
            Some(earlier) if earlier.form() == TinForm::Partial && tin.text().starts_with(earlier.text()) => {
                self.marking.tin = Some(tin);
            }
            Some(earlier) if *earlier != tin => self.repeated(at, Part::Tin),
            _ => self.marking.tin = Some(tin),
        }
    }

    /// `/E` behind a size, or a lone `E` behind a size or service description.
    fn load_range_letter(&mut self, slash: bool) -> bool {
        let mut ahead = self.scan;
        let at = ahead.at();
        if slash && !ahead.eat(b'/') {
            return false;
        }
        let Some(range) = ahead.peek().and_then(LoadRange::of_byte) else { return false };
        ahead.step();
        if !ahead.at_end_of_item() {
            return false;
        }
        self.scan = ahead;
        self.range(at, range);
        true
    }

    fn range(&mut self, at: usize, range: LoadRange) {
        if range.ply_rating().is_none() {
            let letter_at = self.scan.at().saturating_sub(1);
            self.problems.add(letter_at, 1, ProblemKind::LoadRangeUnclear { letter: range.letter() });
        }
        self.load(at, LoadClass::Range(range));
    }

    fn load(&mut self, at: usize, load: LoadClass) {
        if self.marking.load.is_some_and(|earlier| earlier != load) {
            self.repeated(at, Part::Load);
        } else {
            self.marking.load = Some(load);
        }
    }

    fn meaning(&mut self, phrase: Phrase) {
        let at = self.scan.at();
        self.scan.go_to(phrase.end);
        match phrase.meaning {
            Meaning::Word(word) => self.marking.words.push(word),
            Meaning::ExtraLoad => self.load(at, LoadClass::Extra),
            Meaning::LightLoad => self.load(at, LoadClass::Light),
            Meaning::HighLoad => self.load(at, LoadClass::High),
            Meaning::StandardLoad => self.load(at, LoadClass::Standard),
            Meaning::LoadRange => self.load_range(at),
            Meaning::Treadwear => self.treadwear(),
            Meaning::Traction => self.traction(),
            Meaning::Temperature => self.temperature(),
            Meaning::Maximum => self.maximum(at),
            Meaning::Rim => self.rim(at),
            Meaning::Approval => {
                let approval = approval::read_named(&mut self.scan, phrase.text);
                self.approval(approval);
            }
            Meaning::Heading => {
                self.scan.eat(b':');
                if phrase.text == "UTQG" {
                    self.scan.spaces();
                    self.grades_in_a_row(false);
                }
            }
            Meaning::Plies => self.plies(),
            Meaning::MadeIn => self.made_in(),
        }
    }

    fn approval(&mut self, approval: approval::Approval) {
        let kept = &mut self.marking.approvals;
        if kept.contains(&approval) {
            return;
        }
        if kept.len() < MOST_APPROVALS {
            kept.push(approval);
        } else {
            let at = self.scan.at();
            self.repeated(at, Part::Approval);
        }
    }

    /// Behind `LOAD RANGE`.
    fn load_range(&mut self, at: usize) {
        while self.scan.peek().is_some_and(|b| matches!(b, b' ' | b'-' | b':')) {
            self.scan.step();
        }
        let run = self.scan.run();
        if let [letter] = run
            && let Some(range) = LoadRange::of_byte(*letter)
        {
            self.scan.step();
            self.range(at, range);
            return;
        }
        self.problems.add(self.scan.at(), run.len(), ProblemKind::NotALoadRange { found: shown(run) });
        self.scan.go_to(self.scan.at().saturating_add(run.len()));
    }

    /// `10PR`, `10 PLY RATING`; `10-PLY` is said of the rating too.
    fn ply_rating(&mut self, after: After) -> bool {
        let at = self.scan.at();
        let mut ahead = self.scan;
        let Some(digits) = ahead.digits(2) else { return false };
        while ahead.peek().is_some_and(|b| matches!(b, b' ' | b'-')) {
            ahead.step();
        }
        let word = ahead.run();
        if !matches!(word, b"PR" | b"PLY") {
            return false;
        }
        ahead.go_to(ahead.at().saturating_add(word.len()));
        if word == b"PLY" {
            let end = ahead.at();
            ahead.spaces();
            let more = ahead.run();
            if matches!(more, b"RATING" | b"RATED") {
                ahead.go_to(ahead.at().saturating_add(more.len()));
            } else {
                ahead.go_to(end);
            }
        }
        if !ahead.at_end_of_item() {
            return false;
        }
        self.scan = ahead;
        self.after = after;
        let Some(plies) = u8::try_from(digits.value).ok().filter(|p| (2..=60).contains(p)) else {
            self.problems.add(at, digits.count, ProblemKind::PlyRatingUnusual { given: digits.value });
            return true;
        };
        let of_range = match self.marking.load {
            Some(LoadClass::Range(range)) => range.ply_rating(),
            _ => None,
        };
        if plies % 2 != 0 || of_range.is_some_and(|expected| expected != plies) {
            self.problems.add(at, digits.count, ProblemKind::PlyRatingUnusual { given: digits.value });
        }
        if self.marking.ply_rating.is_some_and(|earlier| earlier != plies) {
            self.repeated(at, Part::PlyRating);
        } else {
            self.marking.ply_rating = Some(plies);
        }
        true
    }

    /// `400 AA A`: all three grades without their words. `alone`: no heading
    /// stands before them, so each must be apart and the first a step of 20.
    fn grades_in_a_row(&mut self, alone: bool) -> bool {
        let at = self.scan.at();
        let mut ahead = self.scan;
        let Some(digits) = ahead.digits(4) else { return false };
        let step = digits.value.is_multiple_of(20) && digits.value >= 20;
        if (alone && (!step || digits.count < 2)) || digits.value > 2000 {
            return false;
        }
        let gap = ahead.spaces();
        let run = ahead.run();
        // `400AAA`: the last letter is the temperature.
        let (traction, temperature) = if gap == 0 && !alone && run.len() >= 2 {
            ahead.go_to(ahead.at().saturating_add(run.len()));
            run.split_at_checked(run.len().saturating_sub(1)).unwrap_or_default()
        } else if gap > 0 {
            ahead.go_to(ahead.at().saturating_add(run.len()));
            if ahead.spaces() == 0 {
                return false;
            }
            let temperature = ahead.run();
            ahead.go_to(ahead.at().saturating_add(temperature.len()));
            (run, temperature)
        } else {
            return false;
        };
        let grades = (grades::Traction::of(traction), grades::TemperatureGrade::of(temperature));
        let (Some(traction), Some(temperature)) = grades else { return false };
        if !ahead.at_end_of_item() {
            return false;
        }
        self.scan = ahead;
        self.take_treadwear(at, digits.count, digits.value);
        self.take_traction(at, traction);
        self.take_temperature(at, temperature);
        true
    }

    fn behind_word(&mut self) {
        while self.scan.peek().is_some_and(|b| matches!(b, b' ' | b':' | b'-')) {
            self.scan.step();
        }
    }

    fn no_grade(&mut self, part: Part) {
        let run = self.scan.run();
        self.problems.add(self.scan.at(), run.len(), ProblemKind::NotAGrade { part, found: shown(run) });
        // Only a short run can be the misread grade; anything else is read by itself.
        if run.len() <= 3 {
            self.scan.go_to(self.scan.at().saturating_add(run.len()));
        }
    }

    fn treadwear(&mut self) {
        self.behind_word();
        // `TREADWEAR 500 A A` is written too.
        if self.grades_in_a_row(false) {
            return;
        }
        let at = self.scan.at();
        let before = self.scan;
        match self.scan.digits(4) {
            Some(digits) if self.scan.at_end_of_item() && digits.value <= 2000 => {
                self.take_treadwear(at, digits.count, digits.value);
            }
            _ => {
                self.scan = before;
                self.no_grade(Part::Treadwear);
            }
        }
    }

    fn take_treadwear(&mut self, at: usize, len: usize, given: u32) {
        let Ok(grade) = u16::try_from(given) else { return };
        if !given.is_multiple_of(20) {
            self.problems.add(at, len, ProblemKind::TreadwearStep { given });
        }
        let utqg = self.marking.utqg.get_or_insert_default();
        if utqg.treadwear.is_some_and(|earlier| earlier != grade) {
            self.repeated(at, Part::Treadwear);
        } else {
            utqg.treadwear = Some(grade);
        }
    }

    fn traction(&mut self) {
        self.behind_word();
        let (at, run) = (self.scan.at(), self.scan.run());
        match grades::Traction::of(run) {
            Some(grade) => {
                self.scan.go_to(at.saturating_add(run.len()));
                self.take_traction(at, grade);
            }
            None => self.no_grade(Part::Traction),
        }
    }

    fn take_traction(&mut self, at: usize, grade: grades::Traction) {
        let utqg = self.marking.utqg.get_or_insert_default();
        if utqg.traction.is_some_and(|earlier| earlier != grade) {
            self.repeated(at, Part::Traction);
        } else {
            utqg.traction = Some(grade);
        }
    }

    fn temperature(&mut self) {
        self.behind_word();
        let (at, run) = (self.scan.at(), self.scan.run());
        match grades::TemperatureGrade::of(run) {
            Some(grade) => {
                self.scan.go_to(at.saturating_add(run.len()));
                self.take_temperature(at, grade);
            }
            None => self.no_grade(Part::Temperature),
        }
    }

    fn take_temperature(&mut self, at: usize, grade: grades::TemperatureGrade) {
        let utqg = self.marking.utqg.get_or_insert_default();
        if utqg.temperature.is_some_and(|earlier| earlier != grade) {
            self.repeated(at, Part::Temperature);
        } else {
            utqg.temperature = Some(grade);
        }
    }

    fn maximum(&mut self, at: usize) {
        if let Some(line) = maximum::read(&mut self.scan, at, &mut self.problems) {
            self.take_line(at, line);
        }
    }

    fn figure_first(&mut self) -> bool {
        let at = self.scan.at();
        let Some(line) = maximum::read_figure_first(&mut self.scan, &mut self.problems) else { return false };
        self.take_line(at, line);
        true
    }

    fn take_line(&mut self, at: usize, line: maximum::Line) {
        match line {
            maximum::Line::Load(load) => {
                if load.fitment != Some(maximum::Fitment::Dual) && self.max_at.is_none() {
                    self.max_at = Some((at, self.scan.at().saturating_sub(at)));
                }
                let loads = &mut self.marking.maximum_loads;
                let other = loads.iter().any(|kept| kept.fitment == load.fitment && *kept != load);
                if loads.contains(&load) {
                    return;
                }
                if other || loads.len() >= MOST_LOADS {
                    self.repeated(at, Part::MaximumLoad);
                } else {
                    loads.push(load);
                }
            }
            maximum::Line::Pressure(pressure) => {
                if self.marking.maximum_pressure.is_some_and(|earlier| earlier != pressure) {
                    self.repeated(at, Part::MaximumPressure);
                } else {
                    self.marking.maximum_pressure = Some(pressure);
                }
            }
        }
    }

    fn rim(&mut self, at: usize) {
        let before = self.scan.at();
        match rim_width::read(&mut self.scan) {
            Some(rim) if self.marking.rim.is_none_or(|earlier| earlier == rim) => self.marking.rim = Some(rim),
            Some(_) => self.repeated(at, Part::Rim),
            None => {
                self.scan.go_to(before);
                self.scan.spaces();
                let len = self.scan.token().len();
                self.problems.add(self.scan.at(), len, ProblemKind::RimUnread);
                self.scan.go_to(self.scan.at().saturating_add(len));
            }
        }
    }

    /// `PLIES: TREAD 2 STEEL + 2 POLYESTER SIDEWALL 2 POLYESTER`: stepped over.
    fn plies(&mut self) {
        loop {
            let before = self.scan.at();
            while self.scan.peek().is_some_and(|b| matches!(b, b' ' | b':' | b'+' | b',' | b';')) {
                self.scan.step();
            }
            let run = self.scan.run();
            let count = run.len() <= 2 && !run.is_empty() && run.iter().all(u8::is_ascii_digit);
            let known = matches!(
                run,
                b"STEEL"
                    | b"POLYESTER"
                    | b"NYLON"
                    | b"RAYON"
                    | b"ARAMID"
                    | b"POLYAMIDE"
                    | b"CORD"
                    | b"PLY"
                    | b"PLIES"
                    | b"TREAD"
                    | b"SIDEWALL"
                    | b"AREA"
            );
            let mut ahead = self.scan;
            ahead.go_to(ahead.at().saturating_add(run.len()));
            // `2 STEEL`, never the start of something else.
            let ends = ahead.at_end_of_item() || ahead.peek().is_some_and(|b| matches!(b, b':' | b'+'));
            if !(ends && (known || (count && material_follows(ahead)))) {
                self.scan.go_to(before);
                return;
            }
            self.scan = ahead;
        }
    }

    /// `MADE IN` and the country: stepped over.
    fn made_in(&mut self) {
        self.scan.spaces();
        let run = self.scan.run();
        let first = self.scan.token();
        if first.iter().any(u8::is_ascii_digit) {
            return;
        }
        self.scan.go_to(self.scan.at().saturating_add(first.len()));
        if matches!(run, b"SOUTH" | b"NORTH" | b"CZECH" | b"UNITED" | b"GREAT" | b"COSTA" | b"SRI") {
            self.scan.spaces();
            self.scan.go_to(self.scan.at().saturating_add(self.scan.run().len()));
        }
    }

    /// The maximum load beside the load of the index.
    fn compare_loads(&mut self) {
        let Some((at, len)) = self.max_at else { return };
        let single = self.marking.maximum_loads.iter().find(|load| load.fitment != Some(maximum::Fitment::Dual));
        let (Some(line), Some(index_kg)) = (single, self.marking.service.and_then(|s| s.load_kg())) else { return };
        let printed_kg = line.load.in_unit(LoadUnit::Kilogram);
        if (printed_kg - index_kg).abs() > index_kg * maximum::ROUNDING_PERCENT / 100.0 {
            self.problems.add(at, len, ProblemKind::LoadsDisagree { printed_kg, index_kg });
        }
    }

    fn repeated(&mut self, at: usize, part: Part) {
        let len = self.scan.at().saturating_sub(at);
        self.problems.add(at, len, ProblemKind::Repeated { part });
    }

    /// Steps over what could not be read and tells it, unless it is a bracket
    /// around something that can be.
    fn unread(&mut self, after: After) {
        let at = self.scan.at();
        match self.scan.peek() {
            Some(b'(') if self.open.is_none() => {
                self.open = Some(at);
                self.scan.step();
                return;
            }
            Some(b')') if self.open.is_some() => {
                self.open = None;
                self.scan.step();
                return;
            }
            Some(b'(' | b')') => {
                self.problems.add(at, 1, ProblemKind::Bracket);
                self.scan.step();
                return;
            }
            Some(b':' | b'.' | b'*' | b'+' | b'=' | b'&' | b'/' | b'-') if self.scan.token().len() == 1 => {
                self.scan.step();
                self.after = after;
                return;
            }
            _ => {}
        }
        let token = self.scan.token();
        let end = token.iter().skip(1).position(|b| matches!(b, b'(' | b')'));
        let token = end.and_then(|end| token.get(..end.saturating_add(1))).unwrap_or(token);
        self.scan.go_to(at.saturating_add(token.len().max(1)));
        let text = shown(token);
        let name = token.iter().all(|b| b.is_ascii_alphabetic() || matches!(b, b'.' | b'-' | b'\'' | b':' | b'!'));
        let kind = match words::nearly(token) {
            None if name => ProblemKind::Name { text },
            meant => ProblemKind::Unknown { text, meant },
        };
        self.problems.add(at, token.len(), kind);
    }
}

fn material_follows(mut scan: Scan<'_>) -> bool {
    scan.spaces();
    matches!(scan.run(), b"STEEL" | b"POLYESTER" | b"NYLON" | b"RAYON" | b"ARAMID" | b"POLYAMIDE" | b"PLY" | b"PLIES")
}
