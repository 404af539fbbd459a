//! Words into lines.

use textwrap::core::Fragment;
use textwrap::wrap_algorithms::wrap_first_fit;

use super::blocks::Setter;
use super::drawing;
use super::marks::{Ink, Kid, Mark, Piece, Role, Shape};
use super::tree::{Element, Node};

/// How a run of text looks.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Style {
    pub size: f64,
    pub bold: bool,
    pub ink: Ink,
    link: Option<String>,
}

impl Style {
    pub fn new(size: f64) -> Self {
        Self { size, bold: false, ink: Ink::Black, link: None }
    }

    pub fn bold(self) -> Self {
        Self { bold: true, ..self }
    }

    pub fn soft(self) -> Self {
        Self { ink: Ink::Soft, ..self }
    }

    /// From one baseline to the next.
    pub fn leading(&self) -> f64 {
        self.size * 1.36
    }
}

/// What stands in a line.
#[derive(Debug, Clone)]
enum Content<'t> {
    Text(String),
    Icon(&'t Element),
}

/// A word, or a small drawing, with the space behind it.
#[derive(Debug, Clone)]
struct Word<'t> {
    content: Content<'t>,
    style: Style,
    width: f64,
    space: f64,
}

impl Fragment for Word<'_> {
    fn width(&self) -> f64 {
        self.width
    }

    fn whitespace_width(&self) -> f64 {
        self.space
    }

    fn penalty_width(&self) -> f64 {
        0.0
    }
}

/// Gathers words; each list is what stands between two forced breaks.
struct Gathering<'t, 's> {
    setter: &'s Setter<'s>,
    parts: Vec<Vec<Word<'t>>>,
}

impl<'t> Gathering<'t, '_> {
    fn nodes(&mut self, nodes: &'t [Node], style: &Style) {
        for node in nodes {
            match node {
                Node::Text(text) => self.text(text, style),
                Node::Element(element) => self.element(element, style),
            }
        }
    }

    fn element(&mut self, element: &'t Element, style: &Style) {
        match element.name.as_str() {
            "br" => self.parts.push(Vec::new()),
            "svg" => {
                let (width, _) = drawing::icon_size(element, style.size);
                let space = style.size * 0.35;
                self.push(Word { content: Content::Icon(element), style: style.clone(), width, space });
            }
            _ => {
                let mut inner = style.clone();
                inner.bold |= element.name == "strong" || element.has_class("state") || element.has_class("status");
                if element.has_class("small") || element.has_class("who") {
                    inner.size = inner.size.min(8.5);
                    inner.ink = Ink::Soft;
                }
                if let Some(to) = element.get("href").and_then(|href| href.strip_prefix('#')) {
                    inner.link = Some(to.to_owned());
                }
                self.nodes(&element.nodes, &inner);
            }
        }
    }

    fn push(&mut self, word: Word<'t>) {
        if let Some(last) = self.parts.last_mut() {
            last.push(word);
        }
    }

    fn text(&mut self, text: &str, style: &Style) {
        let space = self.setter.faces.width(" ", style.size, style.bold);
        let spaced = |c: char| c.is_ascii_whitespace();
        if text.starts_with(spaced)
            && let Some(before) = self.parts.last_mut().and_then(|part| part.last_mut())
        {
            before.space = before.space.max(space);
        }
        let mut words = text.split_ascii_whitespace().peekable();
        while let Some(word) = words.next() {
            let last = words.peek().is_none();
            let space = if last && !text.ends_with(spaced) { 0.0 } else { space };
            let width = self.setter.faces.width(word, style.size, style.bold);
            self.push(Word { content: Content::Text(word.to_owned()), style: style.clone(), width, space });
        }
    }
}

impl Setter<'_> {
    fn words<'t>(&self, nodes: &'t [Node], style: &Style) -> Vec<Vec<Word<'t>>> {
        let mut gathering = Gathering { setter: self, parts: vec![Vec::new()] };
        gathering.nodes(nodes, style);
        gathering.parts
    }

    /// The widest word, and the width without any break but forced ones.
    pub fn widths(&self, nodes: &[Node], style: &Style) -> (f64, f64) {
        let parts = self.words(nodes, style);
        let widest = parts.iter().flatten().map(|word| word.width).fold(0.0, f64::max);
        let whole = parts.iter().map(|part| part.iter().map(|word| word.width + word.space).sum::<f64>());
        (widest, whole.fold(0.0, f64::max))
    }

    /// Lines of a width: a piece a line, and what stands in them.
    pub fn lines(&self, nodes: &[Node], style: &Style, width: f64) -> (Vec<Piece>, Vec<Kid>) {
        let (mut pieces, mut kids) = (Vec::new(), Vec::new());
        for part in self.words(nodes, style) {
            let words: Vec<Word<'_>> = part.into_iter().flat_map(|word| self.fitting(word, width)).collect();
            for line in wrap_first_fit(&words, &[width]) {
                if !line.is_empty() {
                    pieces.push(self.line(line, style, &mut kids));
                }
            }
        }
        (pieces, kids)
    }

    /// A word cut into pieces that fit a line.
    fn fitting<'t>(&self, word: Word<'t>, width: f64) -> Vec<Word<'t>> {
        let Content::Text(text) = &word.content else { return vec![word] };
        if word.width <= width {
            return vec![word];
        }
        let measure = |text: &str| self.faces.width(text, word.style.size, word.style.bold);
        let piece = |text: String, space: f64| Word {
            width: measure(&text),
            content: Content::Text(text),
            style: word.style.clone(),
            space,
        };
        let (mut pieces, mut now) = (Vec::new(), String::new());
        for c in text.chars() {
            now.push(c);
            if measure(&now) > width && now.chars().count() > 1 {
                now.pop();
                pieces.push(piece(std::mem::take(&mut now), 0.0));
                now.push(c);
            }
        }
        pieces.push(piece(now, word.space));
        pieces
    }

    /// One line: words of one look that follow one another are one run.
    fn line(&self, words: &[Word<'_>], style: &Style, kids: &mut Vec<Kid>) -> Piece {
        let leading = style.leading();
        let baseline = leading * 0.76;
        let mut piece = Piece { height: leading, ..Piece::default() };
        let (mut x, mut at) = (0.0, 0);
        while let Some(word) = words.get(at) {
            let Content::Text(first) = &word.content else {
                if let Content::Icon(svg) = word.content {
                    let (width, height) = drawing::icon_size(svg, word.style.size);
                    let icon = drawing::marks(svg, self.faces, None, width, height);
                    piece.marks.extend(icon.iter().map(|mark| mark.placed(x, baseline - height * 0.82, 1.0)));
                }
                x += word.width + word.space;
                at += 1;
                continue;
            };
            let (begin, mut text, mut space) = (x, first.clone(), word.space);
            x += word.width + word.space;
            at += 1;
            while let Some(next) = words.get(at).filter(|next| next.style == word.style) {
                let Content::Text(more) = &next.content else { break };
                if space > 0.0 {
                    text.push(' ');
                }
                text.push_str(more);
                (x, space) = (x + next.width + next.space, next.space);
                at += 1;
            }
            // A space at the end sets words apart for who copies the text.
            text.push(' ');
            self.run(&mut piece, kids, &word.style, (begin, baseline, x - space - begin), text);
        }
        piece
    }

    fn run(&self, piece: &mut Piece, kids: &mut Vec<Kid>, style: &Style, at: (f64, f64, f64), text: String) {
        let (x, y, width) = at;
        let leaf = self.leaf();
        let says = text.trim_end().to_owned();
        let shape = Shape::Text { x, y, size: style.size, bold: style.bold, ink: style.ink, text };
        piece.marks.push(Mark { leaf: Some(leaf), shape });
        let Some(to) = &style.link else { return kids.push(Kid::Leaf(leaf)) };
        piece.marks.push(super::marks::rule(x, y + 1.5, width, 0.5, style.ink));
        let link = self.leaf();
        let shape = Shape::Link { x, y: y - style.size, width, height: style.size * 1.3, to: to.clone(), says };
        piece.marks.push(Mark { leaf: Some(link), shape });
        kids.push(Kid::Branch(Role::Link, vec![Kid::Leaf(leaf), Kid::Leaf(link)]));
    }
}
