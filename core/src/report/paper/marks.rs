//! What is put on a page, and what it means.

use std::rc::Rc;

/// The inks of a printed page.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Ink {
    Black,
    /// For small print.
    Soft,
    /// For rules and frames.
    Line,
    /// A bar.
    Fill,
    /// The band of a forecast.
    Band,
    Paper,
}

impl Ink {
    /// Gray, 0 black to 255 white: the values of the style's print palette.
    pub fn gray(self) -> u8 {
        match self {
            Self::Black => 0,
            Self::Soft => 0x33,
            Self::Line => 0x77,
            Self::Fill => 0x44,
            Self::Band => 0xdd,
            Self::Paper => 0xff,
        }
    }
}

/// A piece of an outline, in points from the top left.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Segment {
    Move(f64, f64),
    Line(f64, f64),
    Quad([f64; 4]),
    Cubic([f64; 6]),
    Close,
}

/// A line's ink, width and dashes.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Pen {
    pub ink: Ink,
    pub width: f64,
    pub dash: Vec<f64>,
}

#[derive(Clone)]
pub(super) enum Shape {
    Text {
        x: f64,
        y: f64,
        size: f64,
        bold: bool,
        ink: Ink,
        text: String,
    },
    Path {
        segments: Vec<Segment>,
        fill: Option<Ink>,
        pen: Option<Pen>,
    },
    Picture {
        x: f64,
        y: f64,
        width: f64,
        height: f64,
        image: krilla::image::Image,
    },
    /// Leads to the part of this name.
    Link {
        x: f64,
        y: f64,
        width: f64,
        height: f64,
        to: String,
        says: String,
    },
}

/// Something on a page; without a leaf it is no part of what the page says.
#[derive(Clone)]
pub(super) struct Mark {
    pub leaf: Option<usize>,
    pub shape: Shape,
}

impl Mark {
    pub fn plain(shape: Shape) -> Self {
        Self { leaf: None, shape }
    }

    /// The same mark, scaled, then moved.
    pub fn placed(&self, x: f64, y: f64, scale: f64) -> Self {
        let (px, py) = (|v: f64| v * scale + x, |v: f64| v * scale + y);
        let shape = match &self.shape {
            Shape::Text { x, y, size, bold, ink, text } => {
                Shape::Text { x: px(*x), y: py(*y), size: size * scale, bold: *bold, ink: *ink, text: text.clone() }
            }
            Shape::Path { segments, fill, pen } => Shape::Path {
                segments: segments.iter().map(|segment| segment.mapped(px, py)).collect(),
                fill: *fill,
                pen: pen.as_ref().map(|pen| Pen {
                    width: pen.width * scale,
                    dash: pen.dash.iter().map(|dash| dash * scale).collect(),
                    ink: pen.ink,
                }),
            },
            Shape::Picture { x, y, width, height, image } => Shape::Picture {
                x: px(*x),
                y: py(*y),
                width: width * scale,
                height: height * scale,
                image: image.clone(),
            },
            Shape::Link { x, y, width, height, to, says } => Shape::Link {
                x: px(*x),
                y: py(*y),
                width: width * scale,
                height: height * scale,
                to: to.clone(),
                says: says.clone(),
            },
        };
        Self { leaf: self.leaf, shape }
    }
}

impl Segment {
    fn mapped(self, px: impl Fn(f64) -> f64, py: impl Fn(f64) -> f64) -> Self {
        match self {
            Self::Move(x, y) => Self::Move(px(x), py(y)),
            Self::Line(x, y) => Self::Line(px(x), py(y)),
            Self::Quad([a, b, c, d]) => Self::Quad([px(a), py(b), px(c), py(d)]),
            Self::Cubic([a, b, c, d, e, f]) => Self::Cubic([px(a), py(b), px(c), py(d), px(e), py(f)]),
            Self::Close => Self::Close,
        }
    }
}

/// The outline of a rectangle.
pub(super) fn rectangle(x: f64, y: f64, width: f64, height: f64) -> Vec<Segment> {
    vec![
        Segment::Move(x, y),
        Segment::Line(x + width, y),
        Segment::Line(x + width, y + height),
        Segment::Line(x, y + height),
        Segment::Close,
    ]
}

/// A level line.
pub(super) fn rule(x: f64, y: f64, width: f64, thick: f64, ink: Ink) -> Mark {
    let segments = vec![Segment::Move(x, y), Segment::Line(x + width, y)];
    Mark::plain(Shape::Path { segments, fill: None, pen: Some(Pen { ink, width: thick, dash: Vec::new() }) })
}

/// What a part of the document is to a reader.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Role {
    Heading(u16, String),
    Paragraph,
    List,
    Item,
    Label,
    Body,
    Table,
    Head,
    Rows,
    Row,
    ColumnName,
    RowName,
    Cell,
    Caption,
    Figure(String),
    Contents,
    ContentsItem,
    Link,
    Section,
}

/// A part of the document: a leaf that stands on pages, or a branch.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Kid {
    Leaf(usize),
    Branch(Role, Vec<Kid>),
}

/// A heading or another place that can be led to.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Goal {
    pub id: String,
    /// Level and text, when it is a heading.
    pub heading: Option<(u16, String)>,
    pub y: f64,
}

/// Something that is never cut by the end of a page.
#[derive(Clone, Default)]
pub(super) struct Piece {
    /// Space above, unless it begins a page.
    pub gap: f64,
    pub height: f64,
    pub marks: Vec<Mark>,
    pub goals: Vec<Goal>,
    /// Stands on the page of what follows.
    pub keep: bool,
    /// Stands above it again when it begins a page.
    pub head: Option<Rc<Piece>>,
}

impl Piece {
    /// Pieces one below the other, as one.
    pub fn stacked(pieces: Vec<Piece>) -> Piece {
        let mut whole = Piece::default();
        for piece in pieces {
            let y = whole.height + if whole.marks.is_empty() { 0.0 } else { piece.gap };
            whole.take(&piece, 0.0, y);
            whole.height = y + piece.height;
        }
        whole
    }

    /// Takes the marks and goals of another piece at a place.
    pub fn take(&mut self, piece: &Piece, x: f64, y: f64) {
        self.marks.extend(piece.marks.iter().map(|mark| mark.placed(x, y, 1.0)));
        self.goals.extend(piece.goals.iter().map(|goal| Goal { y: goal.y + y, ..goal.clone() }));
    }
}
