//! SVG drawings of our own pages: lines, rectangles, circles and text by class.

use super::faces::Faces;
use super::marks::{Ink, Mark, Pen, Segment, Shape, rectangle};
use super::tree::Element;

/// How far the control points of a quarter of a circle stand out: 4/3 (√2 − 1).
const ROUND: f64 = 0.552_284_749_830_793_6;

/// How a class is drawn.
#[derive(Debug, Clone, Default)]
struct Look {
    fill: Option<Ink>,
    pen: Option<Pen>,
}

fn pen(ink: Ink, width: f64, dash: &[f64]) -> Option<Pen> {
    Some(Pen { ink, width, dash: dash.to_vec() })
}

/// The looks of the style sheet's classes, as printed. Shapes of no known class are drawn as thin lines.
fn look(class: &str) -> Look {
    use Ink::{Band, Black, Fill, Line, Paper};
    let (fill, pen) = match class {
        "line" => (None, pen(Black, 2.2, &[])),
        "solid" => (Some(Black), None),
        "cut" => (None, pen(Paper, 2.6, &[])),
        "front-mark" | "axle" | "rim" => (None, pen(Line, 2.0, &[])),
        "body" => (Some(Paper), pen(Line, 2.0, &[])),
        "wheel" => (Some(Paper), pen(Black, 2.5, &[])),
        "wheel worked" => (Some(Black), pen(Black, 2.5, &[])),
        "arrow" => (None, pen(Black, 2.6, &[])),
        "arrow planned" => (None, pen(Black, 2.6, &[6.0, 5.0])),
        "bar" => (Some(Fill), None),
        "bar lowest" | "dot" => (Some(Black), None),
        "bar before" => (None, pen(Black, 1.5, &[4.0, 3.0])),
        "limit" => (None, pen(Black, 2.0, &[2.0, 3.0])),
        "nut nut-final" => (Some(Black), pen(Black, 2.0, &[])),
        "nut nut-not-proven" => (Some(Paper), pen(Black, 3.0, &[])),
        "nut nut-snug" => (Some(Paper), pen(Black, 4.0, &[])),
        "nut nut-begun" => (Some(Paper), pen(Black, 1.5, &[])),
        "nut nut-nothing" => (Some(Paper), pen(Black, 1.5, &[3.0, 3.0])),
        "nut-bar" => (None, pen(Black, 2.5, &[])),
        "grid-line" => (None, pen(Line, 0.8, &[])),
        "band" => (Some(Band), pen(Line, 1.0, &[])),
        "forecast" => (None, pen(Black, 2.0, &[6.0, 4.0])),
        "read" => (None, pen(Black, 2.0, &[])),
        "baseline" => (None, pen(Line, 6.0, &[])),
        "ink" => (None, pen(Black, 22.0, &[])),
        "dot-slipped" => (Some(Paper), pen(Black, 2.0, &[])),
        _ => (None, pen(Black, 1.0, &[])),
    };
    Look { fill, pen }
}

/// Size, weight and ink of a text of a class.
fn lettering(class: &str) -> (f64, bool, Ink) {
    match class {
        "name" => (17.0, true, Ink::Black),
        "front" | "bar-name" | "tick" => (13.0, false, Ink::Soft),
        "bar-number" => (14.0, true, Ink::Black),
        "nut-number nut-number-final" => (14.0, true, Ink::Paper),
        _ if class.starts_with("nut-number") => (14.0, true, Ink::Black),
        _ => (13.0, false, Ink::Black),
    }
}

/// Left, top, width and height of what a drawing shows.
fn view(svg: &Element) -> [f64; 4] {
    let mut numbers = svg.get("viewbox").unwrap_or_default().split_whitespace().filter_map(|n| n.parse().ok());
    [(); 4].map(|()| numbers.next().unwrap_or(1.0))
}

/// A drawing's height for its width.
pub(super) fn aspect(svg: &Element) -> f64 {
    let [_, _, width, height] = view(svg);
    height / width.max(0.001)
}

/// The size of a drawing that stands in a line of text.
pub(super) fn icon_size(svg: &Element, letters: f64) -> (f64, f64) {
    let size = if svg.has_class("legend-nut") { 16.0 } else { letters * 1.1 };
    (size, size)
}

/// A drawing of this size; all of its marks are one leaf.
pub(super) fn marks(svg: &Element, faces: &Faces, leaf: Option<usize>, width: f64, height: f64) -> Vec<Mark> {
    let [left, top, wide, high] = view(svg);
    let scale = (width / wide.max(0.001)).min(height / high.max(0.001));
    let mut shapes = Vec::new();
    gather(svg, faces, &mut shapes);
    let place = |shape| Mark { leaf, shape }.placed(-left * scale, -top * scale, scale);
    shapes.into_iter().map(place).collect()
}

fn gather(parent: &Element, faces: &Faces, out: &mut Vec<Shape>) {
    for element in parent.elements() {
        let class = element.get("class").unwrap_or_default();
        let segments = match element.name.as_str() {
            "title" | "desc" | "defs" => continue,
            "text" => {
                out.push(text(element, class, faces));
                continue;
            }
            "rect" => rounded(element),
            "circle" => circle(element.number("cx"), element.number("cy"), element.number("r")),
            "path" => path(element.get("d").unwrap_or_default()),
            _ => {
                gather(element, faces, out);
                continue;
            }
        };
        let Look { fill, pen } = look(class);
        let head = element.get("marker-end").and(pen.as_ref()).and_then(|pen| arrow_head(&segments, pen));
        out.push(Shape::Path { segments, fill, pen });
        out.extend(head);
    }
}

fn text(element: &Element, class: &str, faces: &Faces) -> Shape {
    let (size, bold, ink) = lettering(class);
    let text = element.text();
    let width = faces.width(&text, size, bold);
    let before = match element.get("text-anchor") {
        Some("middle") => width / 2.0,
        Some("end") => width,
        _ => 0.0,
    };
    Shape::Text { x: element.number("x") - before, y: element.number("y"), size, bold, ink, text }
}

/// A rectangle, its corners rounded by `rx`.
fn rounded(element: &Element) -> Vec<Segment> {
    let [x, y, width, height, round] = ["x", "y", "width", "height", "rx"].map(|name| element.number(name));
    if round <= 0.0 {
        return rectangle(x, y, width, height);
    }
    let (right, bottom, k) = (x + width, y + height, round * (1.0 - ROUND));
    vec![
        Segment::Move(x + round, y),
        Segment::Line(right - round, y),
        Segment::Cubic([right - k, y, right, y + k, right, y + round]),
        Segment::Line(right, bottom - round),
        Segment::Cubic([right, bottom - k, right - k, bottom, right - round, bottom]),
        Segment::Line(x + round, bottom),
        Segment::Cubic([x + k, bottom, x, bottom - k, x, bottom - round]),
        Segment::Line(x, y + round),
        Segment::Cubic([x, y + k, x + k, y, x + round, y]),
        Segment::Close,
    ]
}

fn circle(x: f64, y: f64, r: f64) -> Vec<Segment> {
    let k = r * ROUND;
    vec![
        Segment::Move(x + r, y),
        Segment::Cubic([x + r, y + k, x + k, y + r, x, y + r]),
        Segment::Cubic([x - k, y + r, x - r, y + k, x - r, y]),
        Segment::Cubic([x - r, y - k, x - k, y - r, x, y - r]),
        Segment::Cubic([x + k, y - r, x + r, y - k, x + r, y]),
        Segment::Close,
    ]
}

/// An outline of absolute commands M, L, H, V, Q, C and Z (SVG 2, 9.3).
fn path(d: &str) -> Vec<Segment> {
    let mut segments = Vec::new();
    let mut at = (0.0, 0.0);
    let starts: Vec<usize> =
        d.char_indices().filter(|(_, c)| c.is_ascii_alphabetic() && *c != 'e').map(|(i, _)| i).collect();
    for (begin, end) in starts.iter().zip(starts.iter().skip(1).copied().chain([d.len()])) {
        let part = d.get(*begin..end).unwrap_or_default();
        let (command, rest) = part.split_at_checked(1).unwrap_or_default();
        let numbers: Vec<f64> = rest.split([' ', ',']).filter_map(|number| number.parse().ok()).collect();
        match (command, numbers.as_slice()) {
            ("M", [x, y]) => segments.push(Segment::Move(*x, *y)),
            ("L", [x, y]) => segments.push(Segment::Line(*x, *y)),
            ("H", [x]) => segments.push(Segment::Line(*x, at.1)),
            ("V", [y]) => segments.push(Segment::Line(at.0, *y)),
            ("Q", [a, b, x, y]) => segments.push(Segment::Quad([*a, *b, *x, *y])),
            ("C", [a, b, c, d, x, y]) => segments.push(Segment::Cubic([*a, *b, *c, *d, *x, *y])),
            ("Z", []) => segments.push(Segment::Close),
            _ => {}
        }
        at = segments.last().and_then(|segment| end_of(*segment)).map_or(at, |(_, end)| end);
    }
    segments
}

type Point = (f64, f64);

/// The last control point of a segment, when it has one, and its end.
fn end_of(segment: Segment) -> Option<(Option<Point>, Point)> {
    match segment {
        Segment::Move(x, y) | Segment::Line(x, y) => Some((None, (x, y))),
        Segment::Quad([a, b, x, y]) | Segment::Cubic([_, _, a, b, x, y]) => Some((Some((a, b)), (x, y))),
        Segment::Close => None,
    }
}

/// The head at the end of an arrow: five and a half line widths, as its marker in the page.
fn arrow_head(segments: &[Segment], pen: &Pen) -> Option<Shape> {
    let (last, before) = segments.split_last()?;
    let (control, (x, y)) = end_of(*last)?;
    let (from_x, from_y) = match control {
        Some(control) => control,
        None => end_of(*before.last()?)?.1,
    };
    let length = (x - from_x).hypot(y - from_y).max(0.001);
    let (ux, uy) = ((x - from_x) / length, (y - from_y) / length);
    let size = 5.5 * pen.width;
    let (tip, back, half) = (0.2 * size, 0.8 * size, 0.5 * size);
    let (bx, by) = (x - ux * back, y - uy * back);
    let segments = vec![
        Segment::Move(x + ux * tip, y + uy * tip),
        Segment::Line(bx - uy * half, by + ux * half),
        Segment::Line(bx + uy * half, by - ux * half),
        Segment::Close,
    ];
    Some(Shape::Path { segments, fill: Some(pen.ink), pen: None })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_class_of_a_shape_in_the_style_sheet_is_drawn_by_its_own_look() {
        let css = include_str!("../card.css");
        let shapes = css
            .lines()
            .filter(|line| line.contains("stroke:") || line.starts_with(".solid") || line.starts_with(".dot{"));
        let mut known = 0;
        for line in shapes.filter(|line| line.starts_with('.') && !line.contains("text")) {
            for selector in line.split('{').next().unwrap_or_default().split(',') {
                let class = selector.trim_start_matches('.').replace('.', " ");
                let parts = ["planned", "nut"];
                if parts.contains(&class.as_str()) || class.starts_with("status") {
                    continue;
                }
                let class = match class.as_str() {
                    nut if nut.starts_with("nut-") && nut != "nut-bar" => format!("nut {nut}"),
                    class => class.to_owned(),
                };
                let thin = Look { fill: None, pen: pen(Ink::Black, 1.0, &[]) };
                let found = look(&class);
                let unknown = found.fill == thin.fill && found.pen == thin.pen;
                assert!(!unknown, "{class}");
                known += 1;
            }
        }
        assert!(known >= 15, "{known}");
    }

    #[test]
    fn an_outline_reads_its_commands_and_keeps_the_pen_where_it_stands() {
        let read = path("M1 2 H5 V7 Q1 1 2 2 C0 0 1 1 3 4 L-1 .5 Z");
        assert_eq!(
            read,
            [
                Segment::Move(1.0, 2.0),
                Segment::Line(5.0, 2.0),
                Segment::Line(5.0, 7.0),
                Segment::Quad([1.0, 1.0, 2.0, 2.0]),
                Segment::Cubic([0.0, 0.0, 1.0, 1.0, 3.0, 4.0]),
                Segment::Line(-1.0, 0.5),
                Segment::Close,
            ]
        );
    }
}
