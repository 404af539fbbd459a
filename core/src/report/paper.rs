//! Pages on paper: the card or the history as a PDF, laid out from its own HTML.
//!
//! The HTML page is the one document: what a section says, it says once, and
//! the PDF can say nothing else. Of HTML and SVG only what our own pages use is
//! known; anything else is set as plain text, and a test holds the pages to it.
//!
//! A PDF has its fonts embedded and cut to the letters used, page numbers,
//! bookmarks, a contents list when it is long, tables that repeat their head
//! after a page's end, and tags for a screen reader (PDF/UA-1, ISO 14289-1).
//! The same page gives the same bytes.
//!
//! # Files
//! `tree` HTML read back · `faces` fonts and widths · `lines` words into lines ·
//! `blocks` blocks into pieces that are never cut · `boxes` tables, columns and
//! figures · `drawing` SVG · `pages` pieces onto pages · `file` pages into the PDF.

mod blocks;
mod boxes;
mod drawing;
mod faces;
mod file;
mod lines;
mod marks;
mod pages;
mod tree;

use crate::words::Words;

/// A sheet of paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Sheet {
    /// 8 1/2 by 11 in (ANSI/ASME Y14.1, size A).
    #[default]
    Letter,
    /// 210 by 297 mm (ISO 216).
    A4,
}

impl Sheet {
    /// Width and height in points, 72 to the inch.
    fn size(self) -> (f64, f64) {
        match self {
            Self::Letter => (612.0, 792.0),
            Self::A4 => (595.276, 841.89),
        }
    }
}

/// Why a page could not be put on paper: a fault of this program.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Unprintable {
    /// The fonts that are built in can't be read.
    #[error("fonts")]
    Fonts,
    /// The page has nothing in it.
    #[error("empty page")]
    Empty,
    /// A length came to be no number.
    #[error("length")]
    Length,
    /// The PDF library refused.
    #[error("{why}")]
    Refused {
        /// What it said.
        why: String,
    },
}

/// Space kept free at the sheet's sides, top and bottom, in points (14 mm).
const MARGIN: f64 = 39.7;
/// Height of the line with the page's number.
const FOOT: f64 = 16.0;
/// A document of more pages begins with a contents list.
const LONG: usize = 3;

/// A page of ours as a PDF.
///
/// # Errors
/// When the PDF library refuses, which no page of ours makes it do.
pub fn pdf(html: &str, sheet: Sheet, words: &Words) -> Result<Vec<u8>, Unprintable> {
    let root = tree::read(html);
    let faces = faces::Faces::load().ok_or(Unprintable::Fonts)?;
    let title = root.find("title").map(tree::Element::text).unwrap_or_default();
    let lang = root.find("html").and_then(|html| html.get("lang")).unwrap_or("en").to_owned();
    let Some(main) = root.find("main") else { return Err(Unprintable::Empty) };

    let setting = |contents: Option<&pages::Contents>| {
        let (width, height) = sheet.size();
        let setter = blocks::Setter::new(&faces, contents.map(|contents| (contents, words)));
        let (pieces, kids) = setter.document(main, width - 2.0 * MARGIN);
        (pages::onto_pages(pieces, height - 2.0 * MARGIN - FOOT), kids)
    };
    let (mut paged, mut kids) = setting(None);
    if paged.pages.len() > LONG {
        // Its height is that of its lines, so the numbers of the second setting hold.
        let draft = paged.contents();
        let contents = setting(Some(&draft)).0.contents();
        (paged, kids) = setting(Some(&contents));
    }
    file::write(&file::Book { paged, kids, title, lang, sheet, faces: &faces, words })
}
