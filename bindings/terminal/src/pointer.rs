//! What was typed, with a mark under the place that a refusal is about.

use textwrap::core::display_width;

/// The columns that the typed text may take, less its indent.
const WIDTH: usize = 72;
/// How much of a long text stands before the place.
const BEFORE: usize = 24;
/// The indent, so that the text stands apart from sentences.
const INDENT: &str = "  ";

/// One character as it is shown, with its columns.
struct Cell {
    shown: char,
    width: usize,
}

/// Signs that a screen joins, turns around or does not show at all.
fn is_hidden(c: char) -> bool {
    matches!(c,
        '\u{AD}' | '\u{200B}'..='\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2060}'..='\u{206F}'
        | '\u{FE00}'..='\u{FE0F}' | '\u{FEFF}' | '\u{1F1E6}'..='\u{1F1FF}' | '\u{1F3FB}'..='\u{1F3FF}'
        | '\u{E0000}'..='\u{E0FFF}')
}

fn cell(c: char) -> Cell {
    let shown = match c {
        _ if c.is_control() => ' ',
        _ if is_hidden(c) => '\u{FFFD}',
        _ => c,
    };
    Cell { shown, width: display_width(shown.encode_utf8(&mut [0; 4])) }
}

/// The text and the line under it: a caret under one character or a place where
/// something is missing, carets under several. A long text is shown around the place.
///
/// `at` and `len` are in characters; a mark on a combining sign stands under its letter.
pub fn lines(text: &str, at: usize, len: usize) -> [String; 2] {
    let cells: Vec<Cell> = text.chars().map(cell).collect();
    let mut at = at.min(cells.len());
    let mut end = at.saturating_add(len).min(cells.len());
    while at > 0 && cells.get(at).is_some_and(|cell| cell.width == 0) {
        at -= 1;
    }
    // The signs that sit on the last letter belong to it.
    while cells.get(end).is_some_and(|cell| cell.width == 0) {
        end += 1;
    }
    let columns = |from: usize, to: usize| cells.iter().take(to).skip(from).map(|cell| cell.width).sum::<usize>();
    let mut start = 0;
    if columns(0, cells.len()) > WIDTH {
        while columns(start, at) > BEFORE {
            start += 1;
        }
    }
    let mut stop = cells.len();
    if columns(start, stop) > WIDTH {
        stop = start;
        while columns(start, stop + 1) <= WIDTH - 2 {
            stop += 1;
        }
    }
    let cut = |is_cut: bool| if is_cut { "…" } else { "" };
    let shown: String = cells.iter().take(stop).skip(start).map(|cell| cell.shown).collect();
    let first = columns(start, at) + usize::from(start > 0);
    let marks = columns(at, end.min(stop)).max(1);
    [
        format!("{INDENT}{}{shown}{}", cut(start > 0), cut(stop < cells.len())).trim_end().to_owned(),
        format!("{INDENT}{}{}", " ".repeat(first), "^".repeat(marks)),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_caret_stands_under_the_place() {
        assert_eq!(lines("225/45X17", 6, 1), ["  225/45X17", "        ^"]);
        assert_eq!(lines("225/45R17 300W", 10, 3), ["  225/45R17 300W", "            ^^^"]);
        assert_eq!(lines("225/45R", 7, 0), ["  225/45R", "         ^"], "where something is missing");
        assert_eq!(lines("", 0, 0), ["", "  ^"]);
        assert_eq!(lines("91W", 9, 9), ["  91W", "     ^"], "never beyond the text");
    }

    #[test]
    fn wide_combining_and_hidden_signs_do_not_move_the_caret() {
        // Two columns each, by UAX #11.
        assert_eq!(lines("轮胎 91X", 5, 1), ["  轮胎 91X", "         ^"]);
        assert_eq!(lines("轮胎 91X", 1, 1), ["  轮胎 91X", "    ^^"]);
        // e and a combining acute: one column, and a mark on the accent stands under its letter.
        assert_eq!(lines("e\u{301}X", 2, 1), ["  e\u{301}X", "   ^"]);
        assert_eq!(lines("e\u{301}X", 1, 1), ["  e\u{301}X", "  ^"]);
        assert_eq!(lines("e\u{301}X", 0, 1), ["  e\u{301}X", "  ^"]);
        assert_eq!(lines("91\u{200B}\u{202E}W", 3, 1), ["  91\u{FFFD}\u{FFFD}W", "     ^"]);
        assert_eq!(lines("91\tW\u{1b}[2J", 3, 1), ["  91 W [2J", "     ^"]);
    }

    #[test]
    fn a_long_text_is_shown_around_the_place() {
        let text = format!("{}X{}", "1".repeat(500), "2".repeat(500));
        let [shown, marks] = lines(&text, 500, 1);
        assert!(shown.starts_with("  …1") && shown.ends_with("2…"), "{shown}");
        let column = marks.chars().position(|c| c == '^').unwrap();
        assert_eq!(shown.chars().nth(column), Some('X'));
        let [shown, marks] = lines(&text, 0, 1001);
        assert!(display_width(&shown) <= 76 && marks.len() <= 76, "{} {}", display_width(&shown), marks.len());
        for at in [0, 1, 30, 499, 990, 1000] {
            let [shown, marks] = lines(&text, at, 1);
            assert!(display_width(&shown) <= 76 && marks.len() <= 76);
        }
    }
}
