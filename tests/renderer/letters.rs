//! Letters of our own: center lines on a grid, drawn with a stroke.
//!
//! Capitals stand 7 units on the base line, small letters 5, tails reach 2 below. A path is written `M x y`, `L x y`
//! and `Q cx cy x y` as in vector drawings; the number before the colon is the letter's width.

/// How the curves of a letter are drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Corner {
    /// As curves.
    Round,
    /// As cut corners, the way letters milled into a mold with a straight cutter look.
    Cut,
}

/// A style of lettering.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Letters {
    /// Curves or cut corners.
    pub corner: Corner,
    /// Width of the stroke, as a share of the letters' height.
    pub weight: f32,
    /// How far the tops lean forward, as a share of the height.
    pub slant: f32,
    /// Width of the letters, 1 for as drawn.
    pub wide: f32,
    /// Space between letters, as a share of the height.
    pub space: f32,
    /// Only the letters' edge stands out.
    pub outline: bool,
}

impl Letters {
    /// Upright, round, medium.
    pub const PLAIN: Self =
        Self { corner: Corner::Round, weight: 0.15, slant: 0.0, wide: 1.0, space: 0.24, outline: false };
    /// Cut corners, heavy.
    pub const MILLED: Self =
        Self { corner: Corner::Cut, weight: 0.19, slant: 0.0, wide: 1.08, space: 0.27, outline: false };
    /// Leaning, heavy, outlined.
    pub const OUTLINED: Self =
        Self { corner: Corner::Round, weight: 0.24, slant: 0.18, wide: 1.2, space: 0.34, outline: true };
    /// Thin, for print.
    pub const PRINT: Self =
        Self { corner: Corner::Round, weight: 0.115, slant: 0.0, wide: 0.95, space: 0.22, outline: false };
    /// As by a hand with chalk.
    pub const CHALK: Self =
        Self { corner: Corner::Round, weight: 0.16, slant: 0.12, wide: 1.05, space: 0.3, outline: false };
}

/// One letter as straight pieces, in the units of its height, its left edge at 0.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Glyph {
    pub pieces: Vec<[(f32, f32); 2]>,
}

/// Lays out a line of text of the given height (of capitals); gives the letters and the line's length.
pub(crate) fn lay(text: &str, letters: &Letters, height: f32) -> (Vec<Glyph>, f32) {
    let unit = height / 7.0;
    let mut pen = 0.0;
    let mut glyphs = Vec::new();
    for letter in text.chars() {
        let (width, path) = path(letter);
        let place = |(x, y): (f32, f32)| (pen + x * unit * letters.wide + y * unit * letters.slant, y * unit);
        let pieces: Vec<_> = flatten(path, letters.corner).into_iter().map(|[a, b]| [place(a), place(b)]).collect();
        if !pieces.is_empty() {
            glyphs.push(Glyph { pieces });
        }
        pen += width * unit * letters.wide + letters.space * height;
    }
    (glyphs, (pen - letters.space * height).max(0.0))
}

/// Straight pieces of a path on the grid.
fn flatten(path: &str, corner: Corner) -> Vec<[(f32, f32); 2]> {
    let mut pieces = Vec::new();
    let mut pen = (0.0, 0.0);
    let mut words = path.split_whitespace();
    while let Some(order) = words.next() {
        let mut point = || {
            let mut number = || words.next().and_then(|word| word.parse::<f32>().ok()).expect("a path has numbers");
            (number(), number())
        };
        let mix = |a: (f32, f32), b: (f32, f32), t: f32| (a.0 + (b.0 - a.0) * t, a.1 + (b.1 - a.1) * t);
        match order {
            "M" => pen = point(),
            "L" => {
                let to = point();
                pieces.push([pen, to]);
                pen = to;
            }
            "Q" => {
                let (bend, to) = (point(), point());
                let stops: Vec<(f32, f32)> = match corner {
                    Corner::Round => (1..=7_u8)
                        .map(|n| {
                            let t = f32::from(n) / 7.0;
                            mix(mix(pen, bend, t), mix(bend, to, t), t)
                        })
                        .collect(),
                    Corner::Cut => vec![mix(pen, bend, 0.5), mix(bend, to, 0.5), to],
                };
                for stop in stops {
                    pieces.push([pen, stop]);
                    pen = stop;
                }
            }
            other => panic!("not an order of a path: {other}"),
        }
    }
    pieces
}

/// Width and center line of a letter; a letter that isn't drawn here is a mistake in the test that asks for it.
fn path(letter: char) -> (f32, &'static str) {
    match letter {
        ' ' => (2.6, ""),
        '0' => (4.6, "M 2.3 7 Q 4.6 7 4.6 4.8 L 4.6 2.2 Q 4.6 0 2.3 0 Q 0 0 0 2.2 L 0 4.8 Q 0 7 2.3 7"),
        '1' => (2.4, "M 0.2 5.5 L 2 7 L 2 0"),
        '2' => (4.6, "M 0 5.2 Q 0 7 2.3 7 Q 4.6 7 4.6 5.2 Q 4.6 4 3.4 3 L 0 0 L 4.6 0"),
        '3' => (
            4.6,
            "M 0 5.7 Q 0.4 7 2.3 7 Q 4.4 7 4.4 5.3 Q 4.4 3.7 1.8 3.7 Q 4.6 3.7 4.6 1.9 Q 4.6 0 2.3 0 Q 0.2 0 0 1.5",
        ),
        '4' => (4.8, "M 3.6 0 L 3.6 7 L 0 2 L 4.8 2"),
        '5' => (4.6, "M 4.3 7 L 0.6 7 L 0.3 3.7 Q 1.2 4.4 2.3 4.4 Q 4.6 4.4 4.6 2.2 Q 4.6 0 2.2 0 Q 0.4 0 0 1.4"),
        '6' => (
            4.6,
            "M 4.2 6.2 Q 3.6 7 2.4 7 Q 0 7 0 3.4 L 0 2.2 Q 0 0 2.3 0 Q 4.6 0 4.6 2.1 Q 4.6 4.2 2.4 4.2 Q 0.4 4.2 0 2.4",
        ),
        '7' => (4.4, "M 0 7 L 4.4 7 L 1.6 0"),
        '8' => (
            4.6,
            "M 2.3 3.8 Q 4.3 3.8 4.3 5.4 Q 4.3 7 2.3 7 Q 0.3 7 0.3 5.4 Q 0.3 3.8 2.3 3.8 Q 4.6 3.8 4.6 1.9 Q 4.6 0 2.3 0 Q 0 0 0 1.9 Q 0 3.8 2.3 3.8",
        ),
        '9' => (
            4.6,
            "M 0.4 0.8 Q 1 0 2.2 0 Q 4.6 0 4.6 3.6 L 4.6 4.8 Q 4.6 7 2.3 7 Q 0 7 0 4.9 Q 0 2.8 2.2 2.8 Q 4.2 2.8 4.6 4.6",
        ),
        'A' => (5.0, "M 0 0 L 2.5 7 L 5 0 M 0.8 2.2 L 4.2 2.2"),
        'B' => (
            4.5,
            "M 0 0 L 0 7 L 2.3 7 Q 4.2 7 4.2 5.4 Q 4.2 3.8 2.3 3.8 L 0 3.8 M 2.3 3.8 Q 4.5 3.8 4.5 1.9 Q 4.5 0 2.3 0 L 0 0",
        ),
        'C' => (4.6, "M 4.6 5.2 Q 4.4 7 2.4 7 Q 0 7 0 4.6 L 0 2.4 Q 0 0 2.4 0 Q 4.4 0 4.6 1.8"),
        'D' => (4.7, "M 0 0 L 0 7 L 2 7 Q 4.7 7 4.7 4.6 L 4.7 2.4 Q 4.7 0 2 0 L 0 0"),
        'E' => (4.1, "M 4.1 7 L 0 7 L 0 0 L 4.1 0 M 0 3.7 L 3.5 3.7"),
        'F' => (4.0, "M 4 7 L 0 7 L 0 0 M 0 3.6 L 3.4 3.6"),
        'G' => (4.8, "M 4.7 5.3 Q 4.4 7 2.4 7 Q 0 7 0 4.6 L 0 2.4 Q 0 0 2.4 0 Q 4.8 0 4.8 2 L 4.8 3.2 L 2.8 3.2"),
        'H' => (4.7, "M 0 0 L 0 7 M 4.7 0 L 4.7 7 M 0 3.6 L 4.7 3.6"),
        'I' => (1.0, "M 0.5 0 L 0.5 7"),
        'J' => (3.8, "M 3.8 7 L 3.8 2.1 Q 3.8 0 1.9 0 Q 0 0 0 2"),
        'K' => (4.7, "M 0 0 L 0 7 M 4.5 7 L 0 2.8 M 1.5 4.2 L 4.7 0"),
        'L' => (3.9, "M 0 7 L 0 0 L 3.9 0"),
        'M' => (5.6, "M 0 0 L 0 7 L 2.8 2.4 L 5.6 7 L 5.6 0"),
        'N' => (4.8, "M 0 0 L 0 7 L 4.8 0 L 4.8 7"),
        'O' => (5.0, "M 2.5 7 Q 5 7 5 4.6 L 5 2.4 Q 5 0 2.5 0 Q 0 0 0 2.4 L 0 4.6 Q 0 7 2.5 7"),
        'P' => (4.4, "M 0 0 L 0 7 L 2.3 7 Q 4.4 7 4.4 5 Q 4.4 3 2.3 3 L 0 3"),
        'Q' => (5.0, "M 2.5 7 Q 5 7 5 4.6 L 5 2.4 Q 5 0 2.5 0 Q 0 0 0 2.4 L 0 4.6 Q 0 7 2.5 7 M 3 1.8 L 5 -0.5"),
        'R' => (4.6, "M 0 0 L 0 7 L 2.3 7 Q 4.4 7 4.4 5.1 Q 4.4 3.2 2.3 3.2 L 0 3.2 M 2.4 3.2 L 4.6 0"),
        'S' => (
            4.5,
            "M 4.3 5.5 Q 4 7 2.2 7 Q 0.2 7 0.2 5.3 Q 0.2 3.9 2.2 3.6 Q 4.5 3.3 4.5 1.8 Q 4.5 0 2.2 0 Q 0.2 0 0 1.6",
        ),
        'T' => (4.6, "M 0 7 L 4.6 7 M 2.3 7 L 2.3 0"),
        'U' => (4.7, "M 0 7 L 0 2.3 Q 0 0 2.35 0 Q 4.7 0 4.7 2.3 L 4.7 7"),
        'V' => (4.8, "M 0 7 L 2.4 0 L 4.8 7"),
        'W' => (6.6, "M 0 7 L 1.6 0 L 3.3 5.6 L 5 0 L 6.6 7"),
        'X' => (4.8, "M 0 0 L 4.8 7 M 0 7 L 4.8 0"),
        'Y' => (4.8, "M 0 7 L 2.4 3.2 L 4.8 7 M 2.4 3.2 L 2.4 0"),
        'Z' => (4.5, "M 0 7 L 4.5 7 L 0 0 L 4.5 0"),
        'a' => (
            3.8,
            "M 0.4 4.4 Q 0.9 5 1.9 5 Q 3.8 5 3.8 3.4 L 3.8 0 M 3.8 2.9 L 1.6 2.7 Q 0 2.5 0 1.3 Q 0 0 1.6 0 Q 3.2 0 3.8 1.4",
        ),
        'b' => (4.0, "M 0 7 L 0 0 M 0 1.6 Q 0.4 0 2 0 Q 4 0 4 2.5 Q 4 5 2 5 Q 0.4 5 0 3.4"),
        'c' => (3.6, "M 3.6 3.8 Q 3.2 5 1.9 5 Q 0 5 0 2.5 Q 0 0 1.9 0 Q 3.2 0 3.6 1.2"),
        'd' => (4.0, "M 4 7 L 4 0 M 4 3.4 Q 3.6 5 2 5 Q 0 5 0 2.5 Q 0 0 2 0 Q 3.6 0 4 1.6"),
        'e' => (3.9, "M 0 2.7 L 3.9 2.7 Q 3.9 5 2 5 Q 0 5 0 2.5 Q 0 0 2 0 Q 3.4 0 3.8 1"),
        'f' => (2.6, "M 2.6 6.9 Q 1 7.2 1 5.4 L 1 0 M 0 4.8 L 2.4 4.8"),
        'g' => (
            4.0,
            "M 4 5 L 4 -0.2 Q 4 -2 2 -2 Q 0.7 -2 0.3 -1.2 M 4 3.4 Q 3.6 5 2 5 Q 0 5 0 2.5 Q 0 0 2 0 Q 3.6 0 4 1.6",
        ),
        'h' => (3.8, "M 0 7 L 0 0 M 0 3.2 Q 0.5 5 2.1 5 Q 3.8 5 3.8 3.2 L 3.8 0"),
        'i' => (0.8, "M 0.4 0 L 0.4 5 M 0.4 6.8 L 0.4 6.9"),
        'j' => (1.4, "M 1.2 5 L 1.2 -0.6 Q 1.2 -2 0 -1.9 M 1.2 6.8 L 1.2 6.9"),
        'k' => (3.7, "M 0 7 L 0 0 M 3.5 5 L 0 1.8 M 1.3 3 L 3.7 0"),
        'l' => (0.8, "M 0.4 0 L 0.4 7"),
        'm' => (6.0, "M 0 0 L 0 5 M 0 3.4 Q 0.4 5 1.6 5 Q 3 5 3 3.4 L 3 0 M 3 3.4 Q 3.4 5 4.6 5 Q 6 5 6 3.4 L 6 0"),
        'n' => (3.8, "M 0 0 L 0 5 M 0 3.2 Q 0.5 5 2.1 5 Q 3.8 5 3.8 3.2 L 3.8 0"),
        'o' => (4.0, "M 2 5 Q 4 5 4 2.5 Q 4 0 2 0 Q 0 0 0 2.5 Q 0 5 2 5"),
        'p' => (4.0, "M 0 5 L 0 -2 M 0 1.6 Q 0.4 0 2 0 Q 4 0 4 2.5 Q 4 5 2 5 Q 0.4 5 0 3.4"),
        'q' => (4.0, "M 4 5 L 4 -2 M 4 3.4 Q 3.6 5 2 5 Q 0 5 0 2.5 Q 0 0 2 0 Q 3.6 0 4 1.6"),
        'r' => (2.5, "M 0 0 L 0 5 M 0 3.1 Q 0.4 5 2.5 4.9"),
        's' => (
            3.4,
            "M 3.2 4.1 Q 2.9 5 1.7 5 Q 0.2 5 0.2 3.8 Q 0.2 2.8 1.7 2.6 Q 3.4 2.4 3.4 1.3 Q 3.4 0 1.7 0 Q 0.3 0 0 1",
        ),
        't' => (2.5, "M 1 6.6 L 1 1.2 Q 1 0 2.5 0.1 M 0 4.8 L 2.4 4.8"),
        'u' => (3.8, "M 0 5 L 0 1.8 Q 0 0 1.7 0 Q 3.3 0 3.8 1.8 M 3.8 5 L 3.8 0"),
        'v' => (3.8, "M 0 5 L 1.9 0 L 3.8 5"),
        'w' => (5.4, "M 0 5 L 1.3 0 L 2.7 4.2 L 4.1 0 L 5.4 5"),
        'x' => (3.7, "M 0 0 L 3.7 5 M 0 5 L 3.7 0"),
        'y' => (3.8, "M 0 5 L 1.9 0.2 M 3.8 5 L 1.5 -1.2 Q 1.1 -2 0.1 -2"),
        'z' => (3.4, "M 0 5 L 3.4 5 L 0 0 L 3.4 0"),
        '/' => (3.4, "M 0 -0.4 L 3.4 7.4"),
        '.' => (0.8, "M 0.4 0 L 0.4 0.1"),
        ',' => (0.8, "M 0.5 0.2 L 0.1 -1.2"),
        ':' => (0.8, "M 0.4 0.4 L 0.4 0.5 M 0.4 4.2 L 0.4 4.3"),
        '-' => (2.6, "M 0 3 L 2.6 3"),
        '–' => (4.2, "M 0 3 L 4.2 3"),
        '+' => (4.2, "M 0 3.2 L 4.2 3.2 M 2.1 5.3 L 2.1 1.1"),
        '×' => (3.4, "M 0 1.2 L 3.4 4.6 M 0 4.6 L 3.4 1.2"),
        '·' => (0.8, "M 0.4 2.9 L 0.4 3"),
        '°' => (1.8, "M 0.9 7 Q 1.8 7 1.8 6.1 Q 1.8 5.2 0.9 5.2 Q 0 5.2 0 6.1 Q 0 7 0.9 7"),
        '%' => (
            5.4,
            "M 0.6 0 L 4.8 7 M 1 7 Q 2 7 2 5.9 Q 2 4.8 1 4.8 Q 0 4.8 0 5.9 Q 0 7 1 7 M 4.4 2.2 Q 5.4 2.2 5.4 1.1 Q 5.4 0 4.4 0 Q 3.4 0 3.4 1.1 Q 3.4 2.2 4.4 2.2",
        ),
        '(' => (1.6, "M 1.6 7.6 Q 0 5.8 0 3.2 Q 0 0.6 1.6 -1.2"),
        ')' => (1.6, "M 0 7.6 Q 1.6 5.8 1.6 3.2 Q 1.6 0.6 0 -1.2"),
        '\'' => (0.8, "M 0.4 7 L 0.4 5.4"),
        // An arrow ahead, as molded behind the word for the direction of rotation.
        '→' => (9.0, "M 0 3.5 L 8.6 3.5 M 5.8 6 L 8.8 3.5 L 5.8 1"),
        '←' => (9.0, "M 0.4 3.5 L 9 3.5 M 3.2 6 L 0.2 3.5 L 3.2 1"),
        other => panic!("no letter is drawn for {other:?}"),
    }
}
