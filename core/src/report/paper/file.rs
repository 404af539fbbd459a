//! Pages into the PDF, with tags, bookmarks and page numbers.

use std::num::NonZeroU16;

use krilla::Document;
use krilla::SerializeSettings;
use krilla::annotation::{Annotation, LinkAnnotation, Target};
use krilla::color::luma;
use krilla::configure::{Configuration, Validator};
use krilla::destination::{Destination, XyzDestination};
use krilla::geom::{Path, PathBuilder, Point, Rect, Size, Transform};
use krilla::metadata::Metadata;
use krilla::num::NormalizedF32;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::paint::{Fill, LineCap, LineJoin, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::tagging::{
    ArtifactType, ContentTag, Identifier, ListNumbering, SpanTag, TableHeaderScope, Tag, TagGroup, TagKind, TagTree,
};

use super::faces::Faces;
use super::marks::{Ink, Kid, Mark, Pen, Role, Segment, Shape};
use super::pages::{Page, Paged};
use super::{FOOT, MARGIN, Sheet, Unprintable};
use crate::words::Words;

/// Everything a file is made of.
pub(super) struct Book<'b> {
    pub paged: Paged,
    pub kids: Vec<Kid>,
    pub title: String,
    pub lang: String,
    pub sheet: Sheet,
    pub faces: &'b Faces,
    pub words: &'b Words,
}

/// What stands on pages for each leaf.
type Placed = Vec<Vec<Identifier>>;

/// The file's bytes.
pub(super) fn write(book: &Book<'_>) -> Result<Vec<u8>, Unprintable> {
    let settings = SerializeSettings {
        configuration: Configuration::new_with_validator(Validator::UA1),
        enable_tagging: true,
        ..SerializeSettings::default()
    };
    let mut document = Document::new_with(settings);
    let mut placed = Placed::new();
    for (page, number) in book.paged.pages.iter().zip(1..) {
        book.page(&mut document, page, number, &mut placed)?;
    }
    let mut tree = TagTree::new().with_lang(Some(book.lang.clone()));
    for kid in &book.kids {
        if let Some(group) = group(kid, &placed) {
            tree.push(group);
        }
    }
    document.set_tag_tree(tree);
    document.set_outline(book.outline());
    let maker = concat!("Lugbook ", env!("CARGO_PKG_VERSION")).to_owned();
    document.set_metadata(Metadata::new().title(book.title.clone()).language(book.lang.clone()).creator(maker));
    document.finish().map_err(|why| Unprintable::Refused { why: format!("{why:?}") })
}

/// The library draws in single precision.
fn f(value: f64) -> f32 {
    value as f32
}

impl Book<'_> {
    fn page(
        &self,
        document: &mut Document,
        page: &Page,
        number: usize,
        placed: &mut Placed,
    ) -> Result<(), Unprintable> {
        let (width, height) = self.sheet.size();
        let settings = PageSettings::from_wh(f(width), f(height)).ok_or(Unprintable::Length)?;
        let mut sheet = document.start_page_with(settings);
        let mut surface = sheet.surface();
        let marks: Vec<Mark> = page.marks.iter().map(|mark| mark.placed(MARGIN, MARGIN, 1.0)).collect();
        // Marks of one leaf that follow one another are one piece of content.
        let drawn: Vec<&Mark> = marks.iter().filter(|mark| !matches!(mark.shape, Shape::Link { .. })).collect();
        for run in drawn.chunk_by(|a, b| a.leaf == b.leaf) {
            let text = run.iter().all(|mark| matches!(mark.shape, Shape::Text { .. }));
            let tag = match run.first().and_then(|mark| mark.leaf) {
                Some(_) if text => ContentTag::Span(SpanTag::empty()),
                Some(_) => ContentTag::Other,
                None => ContentTag::Artifact(ArtifactType::Other),
            };
            let identifier = surface.start_tagged(tag);
            for mark in run {
                self.draw(&mut surface, &mark.shape);
            }
            surface.end_tagged();
            if let Some(leaf) = run.first().and_then(|mark| mark.leaf) {
                put(placed, leaf, identifier);
            }
        }
        self.foot(&mut surface, number, width, height);
        surface.finish();
        for mark in &marks {
            let Shape::Link { x, y, width, height, to, says } = &mark.shape else { continue };
            let Some((page, down)) = self.paged.goal(to) else { continue };
            let goal = XyzDestination::new(page, Point::from_xy(f(MARGIN), f(MARGIN + down)));
            let rect = Rect::from_xywh(f(*x), f(*y), f(*width), f(*height)).ok_or(Unprintable::Length)?;
            let link = LinkAnnotation::new(rect, Target::Destination(Destination::Xyz(goal)));
            let identifier = sheet.add_tagged_annotation(Annotation::new_link(link, Some(says.clone())));
            if let Some(leaf) = mark.leaf {
                put(placed, leaf, identifier);
            }
        }
        sheet.finish();
        Ok(())
    }

    /// The document's title and the page's number, at the foot of the sheet.
    fn foot(&self, surface: &mut Surface<'_>, number: usize, width: f64, height: f64) {
        let count = self.paged.pages.len();
        let says = self.words.text("paper-page", &[("number", number.into()), ("of", count.into())]);
        let size = 8.0;
        let y = height - MARGIN + FOOT * 0.3;
        let right = width - MARGIN - self.faces.width(&says, size, false);
        let mut title = self.title.clone();
        while self.faces.width(&title, size, false) > right - MARGIN - 12.0 && title.pop().is_some() {}
        surface.start_tagged(ContentTag::Artifact(ArtifactType::Footer));
        for (x, text) in [(MARGIN, title), (right, says)] {
            self.draw(surface, &Shape::Text { x, y, size, bold: false, ink: Ink::Soft, text });
        }
        surface.end_tagged();
    }

    fn draw(&self, surface: &mut Surface<'_>, shape: &Shape) {
        match shape {
            Shape::Text { x, y, size, bold, ink, text } => {
                let face = self.faces.face(*bold);
                surface.set_stroke(None);
                surface.set_fill(Some(fill(*ink)));
                let at = Point::from_xy(f(*x), f(*y));
                surface.draw_glyphs(at, &face.glyphs(text), face.font.clone(), text, f(*size), false);
            }
            Shape::Path { segments, fill: inside, pen } => {
                let Some(path) = outline(segments) else { return };
                surface.set_fill(inside.map(fill));
                surface.set_stroke(pen.as_ref().map(stroke));
                surface.draw_path(&path);
            }
            Shape::Picture { x, y, width, height, image } => {
                let Some(size) = Size::from_wh(f(*width), f(*height)) else { return };
                surface.push_transform(&Transform::from_translate(f(*x), f(*y)));
                surface.draw_image(image.clone(), size);
                surface.pop();
            }
            Shape::Link { .. } => {}
        }
    }

    /// Bookmarks: the document's own heading, and the sections below it.
    fn outline(&self) -> Outline {
        let mut outline = Outline::new();
        for (page, number) in self.paged.pages.iter().zip(0..) {
            for goal in &page.goals {
                let Some((level, title)) = goal.heading.as_ref().filter(|(level, _)| *level <= 2) else { continue };
                let at = XyzDestination::new(number, Point::from_xy(f(MARGIN), f(MARGIN + goal.y)));
                let title = if *level == 1 { &self.title } else { title };
                outline.push_child(OutlineNode::new(title.clone(), at));
            }
        }
        if self.paged.pages.iter().all(|page| page.goals.iter().all(|goal| goal.heading.is_none())) {
            // A page of labels has no heading of its own.
            outline.push_child(OutlineNode::new(self.title.clone(), XyzDestination::new(0, Point::from_xy(0.0, 0.0))));
        }
        outline
    }
}

fn put(placed: &mut Placed, leaf: usize, identifier: Identifier) {
    if placed.len() <= leaf {
        placed.resize_with(leaf + 1, Vec::new);
    }
    if let Some(all) = placed.get_mut(leaf) {
        all.push(identifier);
    }
}

/// A branch with what stands on pages in it; nothing when nothing does.
fn group(kid: &Kid, placed: &Placed) -> Option<TagGroup> {
    let Kid::Branch(role, kids) = kid else { return None };
    let mut group = TagGroup::new(tag(role));
    let mut any = false;
    for kid in kids {
        match kid {
            Kid::Leaf(leaf) => {
                for identifier in placed.get(*leaf).into_iter().flatten() {
                    group.push(*identifier);
                    any = true;
                }
            }
            Kid::Branch(..) => {
                if let Some(inner) = self::group(kid, placed) {
                    group.push(inner);
                    any = true;
                }
            }
        }
    }
    // An empty cell keeps its place in the row.
    (any || matches!(role, Role::Cell | Role::ColumnName | Role::RowName)).then_some(group)
}

fn tag(role: &Role) -> TagKind {
    match role {
        Role::Heading(level, title) => {
            Tag::Hn(NonZeroU16::new(*level).unwrap_or(NonZeroU16::MIN), Some(title.clone())).into()
        }
        Role::Paragraph => Tag::P.into(),
        Role::List => Tag::L(ListNumbering::None).into(),
        Role::Item => Tag::LI.into(),
        Role::Label => Tag::Lbl.into(),
        Role::Body => Tag::LBody.into(),
        Role::Table => Tag::Table.into(),
        Role::Head => Tag::THead.into(),
        Role::Rows => Tag::TBody.into(),
        Role::Row => Tag::TR.into(),
        Role::ColumnName => Tag::TH(TableHeaderScope::Column).into(),
        Role::RowName => Tag::TH(TableHeaderScope::Row).into(),
        Role::Cell => Tag::TD.into(),
        Role::Caption => Tag::Caption.into(),
        Role::Figure(alt) => Tag::Figure(Some(alt.clone())).into(),
        Role::Contents => Tag::TOC.into(),
        Role::ContentsItem => Tag::TOCI.into(),
        Role::Link => Tag::Link.into(),
        Role::Section => Tag::Section.into(),
    }
}

fn fill(ink: Ink) -> Fill {
    Fill { paint: luma::Color::new(ink.gray()).into(), opacity: NormalizedF32::ONE, rule: Default::default() }
}

fn stroke(pen: &Pen) -> Stroke {
    let dash = StrokeDash { array: pen.dash.iter().map(|dash| f(*dash)).collect(), offset: 0.0 };
    Stroke {
        paint: luma::Color::new(pen.ink.gray()).into(),
        width: f(pen.width),
        line_cap: if pen.dash.is_empty() { LineCap::Round } else { LineCap::Butt },
        line_join: LineJoin::Round,
        dash: (!pen.dash.is_empty()).then_some(dash),
        ..Stroke::default()
    }
}

fn outline(segments: &[Segment]) -> Option<Path> {
    let mut builder = PathBuilder::new();
    for segment in segments {
        match *segment {
            Segment::Move(x, y) => builder.move_to(f(x), f(y)),
            Segment::Line(x, y) => builder.line_to(f(x), f(y)),
            Segment::Quad([a, b, x, y]) => builder.quad_to(f(a), f(b), f(x), f(y)),
            Segment::Cubic([a, b, c, d, x, y]) => builder.cubic_to(f(a), f(b), f(c), f(d), f(x), f(y)),
            Segment::Close => builder.close(),
        }
    }
    builder.finish()
}
