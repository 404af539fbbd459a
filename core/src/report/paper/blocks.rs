//! Blocks of a page into pieces that are never cut.

use std::cell::Cell;

use super::faces::Faces;
use super::lines::Style;
use super::marks::{Goal, Ink, Kid, Mark, Pen, Piece, Role, Shape, rectangle, rule};
use super::pages::Contents;
use super::tree::{Element, Node};
use crate::words::Words;

/// Sizes of letters, in points.
pub(super) const BODY: f64 = 9.5;
pub(super) const SMALL: f64 = 8.5;
const RECORD: f64 = 8.0;
/// Width of the words that name a finding's state, and of the record's columns.
const STATE: f64 = 112.0;
const RECORD_COLUMNS: (f64, f64) = (32.0, 108.0);
/// A paragraph of more lines may go on on the next page.
const WHOLE: usize = 4;

/// Sets blocks; counts the leaves it gives out.
pub(super) struct Setter<'s> {
    pub faces: &'s Faces,
    contents: Option<(&'s Contents, &'s Words)>,
    leaves: Cell<usize>,
}

/// Where a block stands: how wide it may be, and how its text looks.
#[derive(Debug, Clone)]
pub(super) struct Frame {
    pub width: f64,
    pub style: Style,
    /// How many columns a grid has in here.
    pub columns: usize,
}

impl Frame {
    pub fn narrowed(&self, width: f64) -> Self {
        Self { width, ..self.clone() }
    }
}

/// Whether an element begins a block of its own.
fn is_block(element: &Element) -> bool {
    let inline_svg = element.has_class("shape") || element.has_class("legend-nut");
    match element.name.as_str() {
        "svg" => !inline_svg,
        "h1" | "h2" | "h3" | "p" | "ul" | "ol" | "dl" | "table" | "div" | "figure" | "figcaption" | "section"
        | "header" | "footer" | "img" => true,
        _ => false,
    }
}

impl<'s> Setter<'s> {
    pub fn new(faces: &'s Faces, contents: Option<(&'s Contents, &'s Words)>) -> Self {
        Self { faces, contents, leaves: Cell::new(0) }
    }

    /// A new leaf.
    pub fn leaf(&self) -> usize {
        let leaf = self.leaves.get();
        self.leaves.set(leaf + 1);
        leaf
    }

    /// The whole document; a contents list stands behind its header.
    pub fn document(&self, main: &Element, width: f64) -> (Vec<Piece>, Vec<Kid>) {
        let frame = Frame { width, style: Style::new(BODY), columns: 2 };
        let (mut pieces, mut kids) = (Vec::new(), Vec::new());
        let header = main.nodes.iter().position(|node| matches!(node, Node::Element(e) if e.name == "header"));
        let (before, after) = main.nodes.split_at_checked(header.map_or(0, |at| at + 1)).unwrap_or_default();
        kids.extend(self.children(before, &frame, &mut pieces));
        if let Some((contents, words)) = self.contents {
            kids.extend(self.contents_list(contents, words, width, &mut pieces));
        }
        kids.extend(self.children(after, &frame, &mut pieces));
        (pieces, kids)
    }

    /// Blocks and, between them, text as paragraphs.
    pub fn children(&self, nodes: &[Node], frame: &Frame, out: &mut Vec<Piece>) -> Vec<Kid> {
        let mut kids = Vec::new();
        let mut rest = nodes;
        while let Some(first) = rest.first() {
            match first {
                Node::Element(element) if is_block(element) => {
                    let heading = out.last().is_some_and(|last| last.goals.iter().any(|goal| goal.heading.is_some()));
                    let begins = out.len();
                    kids.extend(self.block(element, frame, out));
                    // What a section is about stands by what it is about.
                    if heading
                        && out.len() == begins + 1
                        && element.name == "p"
                        && let Some(line) = out.last_mut()
                    {
                        line.keep = true;
                    }
                    rest = rest.get(1..).unwrap_or_default();
                }
                _ => {
                    let block = |node: &Node| matches!(node, Node::Element(element) if is_block(element));
                    let end = rest.iter().position(block).unwrap_or(rest.len());
                    let (inline, after) = rest.split_at_checked(end).unwrap_or_default();
                    kids.extend(self.paragraph(inline, frame, 2.0, out));
                    rest = after;
                }
            }
        }
        kids
    }

    fn block(&self, element: &Element, frame: &Frame, out: &mut Vec<Piece>) -> Vec<Kid> {
        let begins = out.len();
        let kids = match element.name.as_str() {
            "h1" => self.heading(element, 1, frame, out),
            "h2" => self.heading(element, 2, frame, out),
            "h3" => self.heading(element, 3, frame, out),
            "p" => self.styled_paragraph(element, frame, out),
            "ul" | "ol" => self.list(element, frame, out),
            "dl" => self.particulars(element, frame, out),
            "table" => self.table(element, frame, out),
            "svg" => self.drawing(element, frame, out),
            "img" => self.picture(element, frame, out),
            "figure" => self.figure(element, frame, out),
            "div" if element.has_class("grid") => self.grid(element, frame, out),
            "div" if element.has_class("beside") => self.beside(element, frame, out),
            "div" if element.has_class("labels") => {
                self.side_by_side(&element.elements().collect::<Vec<_>>(), 2, 14.0, frame, out)
            }
            "section" if element.has_class("label") => self.label(element, frame, out),
            "section" => {
                let columns = if element.get("id") == Some("photos") { 3 } else { frame.columns };
                let inner = Frame { columns, ..frame.clone() };
                vec![Kid::Branch(Role::Section, self.children(&element.nodes, &inner, out))]
            }
            "footer" => {
                let gap = Piece { gap: 16.0, height: 4.0, keep: true, ..Piece::default() };
                out.push(Piece { marks: vec![rule(0.0, 0.0, frame.width, 1.2, Ink::Black)], ..gap });
                let kids = self.children(&element.nodes, frame, out);
                // It is short, and stands on one page.
                let last = out.len().saturating_sub(1);
                out.iter_mut().take(last).skip(begins).for_each(|piece| piece.keep = true);
                kids
            }
            _ => self.children(&element.nodes, frame, out),
        };
        if let (Some(id), Some(first), false) = (element.get("id"), out.get_mut(begins), element.name.starts_with('h'))
        {
            first.goals.push(Goal { id: id.to_owned(), heading: None, y: 0.0 });
        }
        kids
    }

    fn heading(&self, element: &Element, level: u16, frame: &Frame, out: &mut Vec<Piece>) -> Vec<Kid> {
        let (size, gap) = match level {
            1 => (19.0, 2.0),
            2 => (13.0, 20.0),
            _ => (10.5, 9.0),
        };
        let style = Style::new(size).bold();
        let (lines, leaves) = self.lines(&element.nodes, &style, frame.width);
        let mut piece = Piece { gap, keep: true, ..Piece::stacked(lines) };
        if level == 2 {
            piece.marks.push(rule(0.0, piece.height + 1.0, frame.width, 1.2, Ink::Black));
            piece.height += 5.0;
        }
        let text = element.text();
        let id = element.get("id").unwrap_or_default().to_owned();
        piece.goals.push(Goal { id, heading: Some((level, text.clone())), y: 0.0 });
        out.push(piece);
        vec![Kid::Branch(Role::Heading(level, text), leaves)]
    }

    /// A paragraph with the look that its class gives it.
    fn styled_paragraph(&self, element: &Element, frame: &Frame, out: &mut Vec<Piece>) -> Vec<Kid> {
        let mut style = frame.style.clone();
        if element.has_class("small") {
            style = Style::new(style.size.min(SMALL)).soft();
        }
        if element.has_class("where") {
            style = Style::new(30.0).bold();
        }
        if element.has_class("kicker") || element.has_class("recheck") {
            style = style.bold();
        }
        let (framed, notice) = (element.has_class("next") || element.has_class("recheck"), element.has_class("notice"));
        let frame = Frame { style, ..frame.clone() };
        if !framed && !notice {
            return self.paragraph(&element.nodes, &frame, 3.0, out);
        }
        let (pad, side) = (5.0, 8.0);
        let (lines, leaves) = self.lines(&element.nodes, &frame.style, frame.width - 2.0 * side);
        let text = Piece::stacked(lines);
        let height = text.height + 2.0 * pad;
        let mut piece = Piece { gap: 6.0, height, ..Piece::default() };
        let pen = |width| Some(Pen { ink: Ink::Black, width, dash: Vec::new() });
        let (segments, fill, pen) = if framed {
            (rectangle(0.6, 0.6, frame.width - 1.2, height - 1.2), None, pen(1.2))
        } else {
            (rectangle(0.0, 0.0, 3.0, height), Some(Ink::Black), None)
        };
        piece.marks.push(Mark::plain(Shape::Path { segments, fill, pen }));
        piece.take(&text, side, pad);
        out.push(piece);
        vec![Kid::Branch(Role::Paragraph, leaves)]
    }

    fn paragraph(&self, nodes: &[Node], frame: &Frame, gap: f64, out: &mut Vec<Piece>) -> Vec<Kid> {
        let (lines, leaves) = self.lines(nodes, &frame.style, frame.width);
        let count = lines.len();
        if count <= WHOLE {
            if count > 0 {
                out.push(Piece { gap, ..Piece::stacked(lines) });
            }
        } else {
            for (mut line, number) in lines.into_iter().zip(1..) {
                // No line of it stands alone at the end or the beginning of a page.
                line.keep = number == 1 || number + 1 == count;
                line.gap = if number == 1 { gap } else { 0.0 };
                out.push(line);
            }
        }
        if leaves.is_empty() { Vec::new() } else { vec![Kid::Branch(Role::Paragraph, leaves)] }
    }

    fn list(&self, element: &Element, frame: &Frame, out: &mut Vec<Piece>) -> Vec<Kid> {
        let items: Vec<&Element> = element.elements().filter(|item| item.name == "li").collect();
        let mut kids = Vec::new();
        if element.has_class("legend") {
            let small = Frame { style: Style::new(SMALL).soft(), ..frame.clone() };
            kids = self.side_by_side(&items, 2, 4.0, &small, out);
        }
        for item in items.iter().filter(|_| !element.has_class("legend")) {
            if element.has_class("record") {
                kids.extend(self.row(item, &[RECORD_COLUMNS.0, RECORD_COLUMNS.1], RECORD, frame, out));
            } else if element.has_class("findings") {
                kids.extend(self.row(item, &[STATE], BODY, frame, out));
            } else {
                kids.extend(self.item(item, !element.has_class("plain"), frame, out));
            }
        }
        let items = kids.into_iter().map(|kid| match kid {
            Kid::Branch(Role::Item, kids) => Kid::Branch(Role::Item, kids),
            kid => Kid::Branch(Role::Item, vec![Kid::Branch(Role::Body, vec![kid])]),
        });
        let items: Vec<Kid> = items.collect();
        if items.is_empty() { Vec::new() } else { vec![Kid::Branch(Role::List, items)] }
    }

    fn item(&self, item: &Element, bullet: bool, frame: &Frame, out: &mut Vec<Piece>) -> Option<Kid> {
        let indent = if bullet { 11.0 } else { 0.0 };
        let mut pieces = Vec::new();
        let body = self.children(&item.nodes, &frame.narrowed(frame.width - indent), &mut pieces);
        let mut kids = Vec::new();
        for (piece, first) in pieces.iter().zip(std::iter::once(true).chain(std::iter::repeat(false))) {
            let mut placed = Piece { gap: if first { 2.0 } else { piece.gap }, marks: Vec::new(), ..piece.clone() };
            placed.goals.clear();
            placed.take(piece, indent, 0.0);
            if first && bullet {
                let leaf = self.leaf();
                let size = frame.style.size;
                let y = frame.style.leading() * 0.76;
                let text = "• ".to_owned();
                let shape = Shape::Text { x: 2.0, y, size, bold: false, ink: Ink::Black, text };
                placed.marks.insert(0, Mark { leaf: Some(leaf), shape });
                kids.push(Kid::Branch(Role::Label, vec![Kid::Leaf(leaf)]));
            }
            out.push(placed);
        }
        kids.push(Kid::Branch(Role::Body, body));
        (!pieces.is_empty()).then_some(Kid::Branch(Role::Item, kids))
    }

    /// An item whose parts stand in columns: these widths, then the rest.
    fn row(&self, item: &Element, widths: &[f64], size: f64, frame: &Frame, out: &mut Vec<Piece>) -> Option<Kid> {
        let mut row = Piece { gap: 0.0, ..Piece::default() };
        let (mut kids, mut x) = (Vec::new(), 0.0);
        for (part, number) in item.elements().zip(0..) {
            let width = widths.get(number).copied().unwrap_or(frame.width - x);
            let inner = Frame { width: width - 6.0, style: Style::new(size), ..frame.clone() };
            let mut pieces = Vec::new();
            let nodes = std::slice::from_ref(part).iter().cloned().map(Node::Element).collect::<Vec<_>>();
            kids.extend(self.children(&nodes, &inner, &mut pieces));
            let cell = Piece::stacked(pieces);
            row.take(&cell, x, 2.0);
            row.height = row.height.max(cell.height + 5.0);
            x += width;
        }
        row.marks.push(rule(0.0, row.height - 0.5, frame.width, 0.4, Ink::Line));
        out.push(row);
        (!kids.is_empty()).then_some(Kid::Branch(Role::Item, vec![Kid::Branch(Role::Body, kids)]))
    }

    /// Headings with the pages they stand on.
    fn contents_list(&self, contents: &Contents, words: &Words, width: f64, out: &mut Vec<Piece>) -> Vec<Kid> {
        let style = Style::new(BODY);
        let heading = [Node::Text(words.text("paper-contents", &[]))];
        let (lines, leaves) = self.lines(&heading, &Style::new(10.5).bold(), width);
        out.push(Piece { gap: 14.0, keep: true, ..Piece::stacked(lines) });
        let mut items = Vec::new();
        for line in &contents.lines {
            let mut piece = Piece { gap: 1.0, height: style.leading(), ..Piece::default() };
            let y = style.leading() * 0.76;
            let number = line.page.to_string();
            let begins = width - self.faces.width(&number, BODY, false);
            let (title, page, link) = (self.leaf(), self.leaf(), self.leaf());
            for (leaf, x, text) in [(title, 0.0, format!("{} ", line.title)), (page, begins, number)] {
                let shape = Shape::Text { x, y, size: BODY, bold: false, ink: Ink::Black, text };
                piece.marks.push(Mark { leaf: Some(leaf), shape });
            }
            let from = self.faces.width(&line.title, BODY, false) + 6.0;
            let segments = vec![super::marks::Segment::Move(from, y), super::marks::Segment::Line(begins - 6.0, y)];
            let pen = Some(Pen { ink: Ink::Line, width: 0.6, dash: vec![0.6, 3.0] });
            piece.marks.push(Mark::plain(Shape::Path { segments, fill: None, pen }));
            let (to, says) = (line.id.clone(), line.title.clone());
            let shape = Shape::Link { x: 0.0, y: 0.0, width, height: piece.height, to, says };
            piece.marks.push(Mark { leaf: Some(link), shape });
            out.push(piece);
            let kids = [title, page, link].map(Kid::Leaf).to_vec();
            items.push(Kid::Branch(Role::ContentsItem, vec![Kid::Branch(Role::Link, kids)]));
        }
        vec![Kid::Branch(Role::Paragraph, leaves), Kid::Branch(Role::Contents, items)]
    }
}
