//! Pieces onto pages.

use super::marks::{Goal, Mark, Piece};

/// A page: what stands on it, from the top left of what may be printed on.
#[derive(Default)]
pub(super) struct Page {
    pub marks: Vec<Mark>,
    pub goals: Vec<Goal>,
    height: f64,
}

/// All pages.
pub(super) struct Paged {
    pub pages: Vec<Page>,
}

/// A line of the contents list.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct ContentsLine {
    pub title: String,
    pub id: String,
    /// The page's number, from 1.
    pub page: usize,
}

/// The contents list: a line a section.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Contents {
    pub lines: Vec<ContentsLine>,
}

impl Page {
    fn put(&mut self, piece: &Piece, gap: f64, scale: f64) {
        let y = self.height + gap;
        self.marks.extend(piece.marks.iter().map(|mark| mark.placed(0.0, y, scale)));
        self.goals.extend(piece.goals.iter().map(|goal| Goal { y: goal.y * scale + y, ..goal.clone() }));
        self.height = y + piece.height * scale;
    }
}

/// How many pieces from the first one on must stand on one page, and how high they are together.
fn together(pieces: &[Piece]) -> (usize, f64) {
    let count = pieces.iter().take_while(|piece| piece.keep).count() + 1;
    let chain = pieces.iter().take(count);
    (count.min(pieces.len()), chain.map(|piece| piece.gap + piece.height).sum())
}

/// Puts pieces onto pages of a height. A piece that is higher than a page is
/// made smaller until it fits: nothing is left out.
pub(super) fn onto_pages(pieces: Vec<Piece>, height: f64) -> Paged {
    let mut pages = vec![Page::default()];
    let mut at = 0;
    while let Some(rest) = pieces.get(at..).filter(|rest| !rest.is_empty()) {
        let (count, high) = together(rest);
        let begun = pages.last().is_some_and(|page| page.height > 0.0);
        // A chain that no page holds is set as it comes.
        let (count, high) =
            if high > height { (1, rest.first().map_or(0.0, |p| p.gap + p.height)) } else { (count, high) };
        if begun && pages.last().is_some_and(|page| page.height + high > height + 0.01) {
            pages.push(Page::default());
        }
        let Some(page) = pages.last_mut() else { break };
        for piece in rest.iter().take(count) {
            if page.height == 0.0
                && let Some(head) = &piece.head
            {
                page.put(head, 0.0, 1.0);
            }
            let gap = if page.height == 0.0 { 0.0 } else { piece.gap };
            let scale = ((height - page.height - gap) / piece.height.max(0.001)).clamp(0.05, 1.0);
            page.put(piece, gap, scale);
        }
        at += count;
    }
    Paged { pages }
}

impl Paged {
    /// The headings of sections with their pages.
    pub fn contents(&self) -> Contents {
        let mut lines = Vec::new();
        for (page, number) in self.pages.iter().zip(1..) {
            for goal in &page.goals {
                if let Some((2, title)) = &goal.heading {
                    lines.push(ContentsLine { title: title.clone(), id: goal.id.clone(), page: number });
                }
            }
        }
        Contents { lines }
    }

    /// On which page, from 0, a place of this name stands, and how far down.
    pub fn goal(&self, id: &str) -> Option<(usize, f64)> {
        self.pages
            .iter()
            .enumerate()
            .find_map(|(number, page)| page.goals.iter().find(|goal| goal.id == id).map(|goal| (number, goal.y)))
    }
}

#[cfg(test)]
mod tests {
    use std::rc::Rc;

    use super::*;
    use proptest::prelude::*;

    fn piece(height: f64, keep: bool) -> Piece {
        let goals = vec![Goal { id: String::new(), heading: None, y: 0.0 }];
        Piece { gap: 5.0, height, keep, goals, ..Piece::default() }
    }

    #[test]
    fn a_heading_never_stands_alone_at_the_end_of_a_page() {
        let pieces = vec![piece(80.0, false), piece(10.0, true), piece(20.0, false)];
        let pages = onto_pages(pieces, 100.0).pages;
        assert_eq!(pages.iter().map(|page| page.goals.len()).collect::<Vec<_>>(), [1, 2]);
    }

    #[test]
    fn a_tables_head_stands_again_above_what_begins_a_page() {
        let head = Rc::new(Piece { height: 12.0, ..Piece::default() });
        let row = Piece { gap: 0.0, head: Some(Rc::clone(&head)), ..piece(40.0, false) };
        let pages =
            onto_pages(vec![Piece { keep: true, ..(*head).clone() }, row.clone(), row.clone(), row], 100.0).pages;
        assert_eq!(pages.iter().map(|page| page.height).collect::<Vec<_>>(), [92.0, 52.0]);
    }

    proptest! {
        #[test]
        fn every_piece_stands_on_one_page_in_order_and_no_page_is_too_full(
            sizes in prop::collection::vec((1.0..260.0f64, any::<bool>()), 1..60)
        ) {
            let pieces: Vec<Piece> = sizes.iter().map(|(height, keep)| piece(*height, *keep)).collect();
            let pages = onto_pages(pieces, 200.0).pages;
            prop_assert_eq!(pages.iter().map(|page| page.goals.len()).sum::<usize>(), sizes.len());
            for page in &pages {
                prop_assert!(page.height <= 200.02, "{}", page.height);
                prop_assert!(page.goals.windows(2).all(|pair| pair[0].y <= pair[1].y));
            }
        }
    }
}
