//! What stands side by side: tables, names beside values, grids of figures.

use std::rc::Rc;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use krilla::image::Image;

use super::blocks::{Frame, SMALL, Setter};
use super::drawing;
use super::lines::Style;
use super::marks::{Goal, Ink, Kid, Mark, Pen, Piece, Role, Shape, rectangle, rule};
use super::tree::{Element, Node};

/// Between columns.
const GUTTER: f64 = 14.0;
/// Behind the text of a table's cell.
const PAD: f64 = 7.0;
/// Below this width two names stand in a row, not three.
const NARROW: f64 = 300.0;
/// The highest a picture stands (60 mm).
const PICTURE: f64 = 170.0;

impl Setter<'_> {
    /// Elements in columns of one width, row by row.
    pub fn side_by_side(
        &self,
        elements: &[&Element],
        columns: usize,
        gap: f64,
        frame: &Frame,
        out: &mut Vec<Piece>,
    ) -> Vec<Kid> {
        let count = u32::try_from(columns).map_or(1.0, f64::from);
        let width = (frame.width - GUTTER * (count - 1.0)) / count;
        let mut kids = Vec::new();
        for (row, number) in elements.chunks(columns.max(1)).zip(0..) {
            let mut whole = Piece { gap: if number == 0 { gap.max(6.0) } else { gap }, ..Piece::default() };
            for (element, column) in row.iter().zip(0u32..) {
                let mut pieces = Vec::new();
                let node = [Node::Element((*element).clone())];
                let inner = frame.narrowed(width);
                kids.extend(match element.name.as_str() {
                    "li" | "div" => self.children(&element.nodes, &inner, &mut pieces),
                    _ => self.children(&node, &inner, &mut pieces),
                });
                let cell = Piece::stacked(pieces);
                whole.take(&cell, (width + GUTTER) * f64::from(column), 0.0);
                whole.height = whole.height.max(cell.height);
            }
            out.push(whole);
        }
        kids
    }

    /// Names above values, three in a row.
    pub fn particulars(&self, element: &Element, frame: &Frame, out: &mut Vec<Piece>) -> Vec<Kid> {
        let pairs: Vec<&Element> = element.elements().filter(|pair| pair.name == "div").collect();
        let pairs: Vec<Element> = pairs
            .into_iter()
            .map(|pair| {
                let mut pair = pair.clone();
                for node in &mut pair.nodes {
                    if let Node::Element(part) = node {
                        // A name reads as small print, a value as a paragraph or as the blocks in it.
                        let blocks = part.elements().any(|inner| matches!(inner.name.as_str(), "ul" | "ol" | "p"));
                        let small = part.name == "dt";
                        part.name = if blocks { "div" } else { "p" }.to_owned();
                        if small {
                            part.set("class", "small");
                        }
                    }
                }
                pair
            })
            .collect();
        let columns = if frame.width < NARROW { 2 } else { 3 };
        self.side_by_side(&pairs.iter().collect::<Vec<_>>(), columns, 5.0, frame, out)
    }

    /// A label to cut out: a frame around what it says.
    pub fn label(&self, element: &Element, frame: &Frame, out: &mut Vec<Piece>) -> Vec<Kid> {
        let (side, pad) = (10.0, 8.0);
        let mut pieces = Vec::new();
        let kids = self.children(&element.nodes, &frame.narrowed(frame.width - 2.0 * side), &mut pieces);
        let text = Piece::stacked(pieces);
        let mut whole = Piece { height: text.height + 2.0 * pad, ..Piece::default() };
        let segments = rectangle(0.8, 0.8, frame.width - 1.6, whole.height - 1.6);
        let pen = Some(Pen { ink: Ink::Black, width: 1.6, dash: Vec::new() });
        whole.marks.push(Mark::plain(Shape::Path { segments, fill: None, pen }));
        whole.take(&text, side, pad);
        out.push(whole);
        vec![Kid::Branch(Role::Section, kids)]
    }

    pub fn grid(&self, element: &Element, frame: &Frame, out: &mut Vec<Piece>) -> Vec<Kid> {
        let columns = if element.has_class("wheels") { 4 } else { frame.columns };
        self.side_by_side(&element.elements().collect::<Vec<_>>(), columns, 12.0, frame, out)
    }

    /// A drawing with a table at its side.
    pub fn beside(&self, element: &Element, frame: &Frame, out: &mut Vec<Piece>) -> Vec<Kid> {
        let left = 190.0;
        let (mut whole, mut kids, mut x) = (Piece { gap: 6.0, ..Piece::default() }, Vec::new(), 0.0);
        for (part, first) in element.elements().zip(std::iter::once(true).chain(std::iter::repeat(false))) {
            let width = if first { left } else { frame.width - x };
            let mut pieces = Vec::new();
            kids.extend(self.children(&[Node::Element(part.clone())], &frame.narrowed(width), &mut pieces));
            let cell = Piece::stacked(pieces);
            whole.take(&cell, x, 0.0);
            whole.height = whole.height.max(cell.height);
            x += width + GUTTER;
        }
        out.push(whole);
        kids
    }

    /// A figure is one piece: its caption and its picture stay together.
    pub fn figure(&self, element: &Element, frame: &Frame, out: &mut Vec<Piece>) -> Vec<Kid> {
        let mut pieces = Vec::new();
        let kids = self.children(&element.nodes, frame, &mut pieces);
        let mut whole = Piece::stacked(pieces);
        whole.gap = 6.0;
        out.push(whole);
        kids
    }

    pub fn drawing(&self, svg: &Element, frame: &Frame, out: &mut Vec<Piece>) -> Vec<Kid> {
        let widest = if svg.has_class("nuts") {
            118.0
        } else if svg.has_class("drawing") {
            190.0
        } else if svg.has_class("signature") {
            150.0
        } else {
            250.0
        };
        let width = frame.width.min(widest);
        let height = width * drawing::aspect(svg);
        let leaf = self.leaf();
        let marks = drawing::marks(svg, self.faces, Some(leaf), width, height);
        out.push(Piece { gap: 3.0, height, marks, ..Piece::default() });
        let said = [svg.child("title"), svg.child("desc")].into_iter().flatten().map(Element::text);
        let alt = said.collect::<Vec<_>>().join(". ");
        vec![Kid::Branch(Role::Figure(alt), vec![Kid::Leaf(leaf)])]
    }

    /// A picture that stands in the page; one that can't be read says its words.
    pub fn picture(&self, img: &Element, frame: &Frame, out: &mut Vec<Piece>) -> Vec<Kid> {
        let alt = img.get("alt").unwrap_or_default().to_owned();
        let bytes = img.get("src").and_then(|src| src.strip_prefix("data:image/jpeg;base64,"));
        let bytes = bytes.and_then(|text| STANDARD.decode(text).ok());
        let image = bytes.and_then(|bytes| Image::from_jpeg(bytes.into(), false).ok());
        let Some(image) = image else {
            let mut pieces = Vec::new();
            let kids = self.children(&[Node::Text(alt)], frame, &mut pieces);
            out.extend(pieces);
            return kids;
        };
        let (wide, high) = image.size();
        let ratio = f64::from(high) / f64::from(wide.max(1));
        let width = frame.width.min(PICTURE / ratio.max(0.01));
        let height = width * ratio;
        let leaf = self.leaf();
        let shape = Shape::Picture { x: 0.0, y: 0.0, width, height, image };
        out.push(Piece { gap: 3.0, height, marks: vec![Mark { leaf: Some(leaf), shape }], ..Piece::default() });
        vec![Kid::Branch(Role::Figure(alt), vec![Kid::Leaf(leaf)])]
    }

    pub fn table(&self, table: &Element, frame: &Frame, out: &mut Vec<Piece>) -> Vec<Kid> {
        let rows = |part: &str| -> Vec<Vec<&Element>> {
            let part = table.child(part).into_iter().flat_map(Element::elements).filter(|row| row.name == "tr");
            part.map(|row| row.elements().collect()).collect()
        };
        let (head, body) = (rows("thead"), rows("tbody"));
        let style = Style::new(SMALL);
        let widths = self.column_widths(&head, &body, &style, frame.width);
        let mut kids = Vec::new();
        if let Some(caption) = table.child("caption") {
            let (lines, leaves) = self.lines(&caption.nodes, &style.clone().soft(), frame.width);
            out.push(Piece { gap: 5.0, keep: true, ..Piece::stacked(lines) });
            kids.push(Kid::Branch(Role::Caption, leaves));
        }
        let mut head_piece: Option<Rc<Piece>> = None;
        let mut head_rows = Vec::new();
        for row in &head {
            let (mut piece, cells) = self.table_row(row, &widths, &style.clone().bold().soft(), Role::ColumnName);
            piece.keep = true;
            let marks = piece.marks.iter().map(|mark| Mark { leaf: None, ..mark.clone() }).collect();
            head_piece = Some(Rc::new(Piece { marks, goals: Vec::<Goal>::new(), head: None, ..piece.clone() }));
            out.push(piece);
            head_rows.push(Kid::Branch(Role::Row, cells));
        }
        let mut body_rows = Vec::new();
        for row in &body {
            let (piece, cells) = self.table_row(row, &widths, &style, Role::RowName);
            out.push(Piece { head: head_piece.clone(), ..piece });
            body_rows.push(Kid::Branch(Role::Row, cells));
        }
        for (role, rows) in [(Role::Head, head_rows), (Role::Rows, body_rows)] {
            if !rows.is_empty() {
                kids.push(Kid::Branch(role, rows));
            }
        }
        vec![Kid::Branch(Role::Table, kids)]
    }

    fn table_row(&self, row: &[&Element], widths: &[f64], style: &Style, named: Role) -> (Piece, Vec<Kid>) {
        let mut piece = Piece::default();
        let (mut x, mut kids) = (0.0, Vec::new());
        for (cell, width) in row.iter().zip(widths) {
            let bold = cell.name == "th";
            let style = if bold { style.clone().bold() } else { style.clone() };
            let (lines, leaves) = self.lines(&cell.nodes, &style, width - PAD);
            let text = Piece::stacked(lines);
            piece.take(&text, x, 2.5);
            piece.height = piece.height.max(text.height + 5.5);
            kids.push(Kid::Branch(if bold { named.clone() } else { Role::Cell }, leaves));
            x += width;
        }
        piece.height = piece.height.max(style.leading() + 5.5);
        piece.marks.push(rule(0.0, piece.height - 0.5, widths.iter().sum(), 0.4, Ink::Line));
        (piece, kids)
    }

    /// Each column as wide as its text wants, or, when that is too much, as its
    /// longest word needs and a share of what is left.
    fn column_widths(&self, head: &[Vec<&Element>], body: &[Vec<&Element>], style: &Style, whole: f64) -> Vec<f64> {
        let count = head.iter().chain(body).map(Vec::len).max().unwrap_or_default();
        let mut wants = vec![(0.0f64, 0.0f64); count];
        for row in head.iter().chain(body) {
            for (cell, want) in row.iter().zip(&mut wants) {
                let bold = if cell.name == "th" { style.clone().bold() } else { style.clone() };
                let (least, most) = self.widths(&cell.nodes, &bold);
                *want = (want.0.max(least + PAD), want.1.max(most + PAD));
            }
        }
        let (least, most) = wants.iter().fold((0.0, 0.0), |sum, want| (sum.0 + want.0, sum.1 + want.1));
        let share = |want: &(f64, f64)| {
            if most <= whole {
                want.1 + (whole - most) * want.1 / most.max(1.0)
            } else if least <= whole {
                want.0 + (whole - least) * (want.1 - want.0) / (most - least).max(1.0)
            } else {
                whole * want.0 / least.max(1.0)
            }
        };
        wants.iter().map(share).collect()
    }
}
