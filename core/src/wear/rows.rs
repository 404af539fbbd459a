//! The file form of a history: rows of `distance_km, at, depth_mm…`.
//!
//! A header names the columns. `distance_km` (or `distance_mi`) and `at` are
//! needed; every column that begins with `depth_mm` or `depth_32` is a groove,
//! from the outer one inward; `tire` names the tire, so that it can be followed
//! when it moves; `lowest_mm` is the lowest spot seen. Without `tire`, a place
//! holds one tire until its depth grows, which no tire's does: then a new one
//! was fitted. `at` is where the tire stood when it came in.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::measure::{Depth, DepthUnit, Distance, DistanceUnit, Misread, THIRTY_SECOND_MM, number_of};
use crate::vehicle::Place;

use super::history::{History, MOST_READINGS, Reading};

/// A depth that grows by more than this is another tire: twice the step of a common gauge.
const REPLACED_MM: f64 = 2.0 * THIRTY_SECOND_MM;

/// The rows of a file, each as named cells.
///
/// ```
/// use lugbook::wear::Rows;
/// assert_eq!(Rows::default().history().unwrap_err().column, "distance_km");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Rows {
    /// The header's names.
    pub header: Vec<String>,
    /// The cells of each row.
    pub rows: Vec<Vec<String>>,
}

/// A row that can't be used.
///
/// ```
/// use lugbook::wear::Rows;
/// let header = vec!["distance_km".to_owned(), "at".to_owned(), "depth_mm".to_owned()];
/// let row = vec!["0".to_owned(), "XX".to_owned(), "8.0".to_owned()];
/// let bad = Rows { header, rows: vec![row] }.history().unwrap_err();
/// assert_eq!((bad.row, bad.column.as_str()), (1, "at"));
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, thiserror::Error)]
#[error("row {row}: {mistake:?}")]
pub struct BadRow {
    /// The row from 1 after the header; 0 for the header itself.
    pub row: usize,
    /// The column's name.
    pub column: String,
    /// What is wrong.
    pub mistake: RowMistake,
}

/// What is wrong with a row.
///
/// ```
/// use lugbook::wear::{RowMistake, Rows};
/// let header = vec!["distance_km".to_owned(), "at".to_owned(), "depth_mm".to_owned()];
/// let row = vec!["0".to_owned(), "XX".to_owned(), "8.0".to_owned()];
/// let bad = Rows { header, rows: vec![row] }.history().unwrap_err();
/// assert_eq!(bad.mistake, RowMistake::NoSuchPlace { text: "XX".to_owned() });
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "mistake")]
pub enum RowMistake {
    /// A column is missing.
    MissingColumn,
    /// No place of that name.
    NoSuchPlace {
        /// What stands there.
        text: String,
    },
    /// Not a reading.
    Unreadable {
        /// What stands there.
        text: String,
        /// Why not.
        #[serde(skip)]
        why: Misread,
    },
    /// No groove has a depth.
    NoDepth,
    /// More rows than a history may have.
    TooMany {
        /// How many may be.
        most: usize,
    },
}

impl Rows {
    /// The rows as a history.
    ///
    /// # Errors
    /// The first cell that can't be used, by row and column.
    ///
    /// ```
    /// use lugbook::wear::Rows;
    /// let text = |cells: &[&str]| cells.iter().map(|c| (*c).to_owned()).collect::<Vec<_>>();
    /// let rows = Rows {
    ///     header: text(&["distance_km", "at", "depth_mm"]),
    ///     rows: vec![text(&["0", "FL", "8.0"]), text(&["15000", "FL", "6.5"])],
    /// };
    /// assert_eq!(rows.history().unwrap().readings.len(), 2);
    /// ```
    pub fn history(&self) -> Result<History, BadRow> {
        let names: Vec<String> = self.header.iter().map(|name| name.trim().to_lowercase()).collect();
        let find = |name: &str| names.iter().position(|n| n == name);
        let missing = |name: &str| BadRow { row: 0, column: name.to_owned(), mistake: RowMistake::MissingColumn };
        let (distance, unit) = match (find("distance_km"), find("distance_mi")) {
            (Some(at), _) => (at, DistanceUnit::Kilometre),
            (None, Some(at)) => (at, DistanceUnit::Mile),
            (None, None) => return Err(missing("distance_km")),
        };
        let place = find("at").ok_or_else(|| missing("at"))?;
        let grooves: Vec<(usize, DepthUnit)> = names
            .iter()
            .enumerate()
            .filter_map(|(at, name)| {
                let unit = if name.starts_with("depth_mm") {
                    DepthUnit::Millimetre
                } else if name.starts_with("depth_32") {
                    DepthUnit::ThirtySecond
                } else {
                    return None;
                };
                Some((at, unit))
            })
            .collect();
        if grooves.is_empty() {
            return Err(missing("depth_mm"));
        }
        if self.rows.len() > MOST_READINGS {
            let mistake = RowMistake::TooMany { most: MOST_READINGS };
            return Err(BadRow { row: MOST_READINGS + 1, column: String::new(), mistake });
        }
        let (tire, lowest) = (find("tire"), find("lowest_mm"));
        let mut readings = Vec::with_capacity(self.rows.len());
        for (number, row) in (1..).zip(&self.rows) {
            let line = Line { number, row, names: &names };
            let odometer = Distance::new(line.number(distance)?, unit).map_err(|why| line.unreadable(distance, why))?;
            let text = line.cell(place);
            let at =
                Place::parse(text).ok_or_else(|| line.bad(place, RowMistake::NoSuchPlace { text: text.to_owned() }))?;
            let mut depths = Vec::new();
            for (column, unit) in &grooves {
                if !line.cell(*column).is_empty() {
                    let value = line.number(*column)?;
                    depths.push(Depth::new(value, *unit).map_err(|why| line.unreadable(*column, why))?);
                }
            }
            if depths.is_empty() {
                let column = grooves.first().map_or(0, |(column, _)| *column);
                return Err(line.bad(column, RowMistake::NoDepth));
            }
            let lowest = match lowest.filter(|column| !line.cell(*column).is_empty()) {
                Some(column) => Some(
                    Depth::new(line.number(column)?, DepthUnit::Millimetre)
                        .map_err(|why| line.unreadable(column, why))?,
                ),
                None => None,
            };
            let name = tire.map(|column| line.cell(column).to_owned()).filter(|name| !name.is_empty());
            let named = name.is_some();
            readings.push((
                named,
                Reading { tire: name.unwrap_or_default(), odometer, at, grooves: depths, lowest, practice: false },
            ));
        }
        name_unnamed(&mut readings);
        Ok(History { readings: readings.into_iter().map(|(_, reading)| reading).collect(), moves: Vec::new() })
    }
}

/// Names tires by place, a new one wherever the depth grows.
fn name_unnamed(readings: &mut [(bool, Reading)]) {
    let mut order: Vec<usize> = (0..readings.len()).collect();
    let km = |i: &usize| readings.get(*i).map_or(0.0, |(_, r)| r.odometer.in_unit(DistanceUnit::Kilometre));
    order.sort_by(|a, b| km(a).total_cmp(&km(b)).then(a.cmp(b)));
    let mut seen: BTreeMap<Place, (u32, f64)> = BTreeMap::new();
    for index in order {
        let Some((named, reading)) = readings.get_mut(index) else { continue };
        if *named {
            continue;
        }
        let depth = reading.least_mm().unwrap_or(0.0);
        let entry = seen.entry(reading.at).or_insert((1, depth));
        if depth > entry.1 + REPLACED_MM {
            entry.0 += 1;
        }
        entry.1 = depth;
        reading.tire = if entry.0 == 1 { reading.at.to_string() } else { format!("{} {}", reading.at, entry.0) };
    }
}

/// One row while it is read.
struct Line<'a> {
    number: usize,
    row: &'a [String],
    names: &'a [String],
}

impl Line<'_> {
    fn cell(&self, column: usize) -> &str {
        self.row.get(column).map_or("", |cell| cell.trim())
    }

    fn bad(&self, column: usize, mistake: RowMistake) -> BadRow {
        BadRow { row: self.number, column: self.names.get(column).cloned().unwrap_or_default(), mistake }
    }

    fn unreadable(&self, column: usize, why: Misread) -> BadRow {
        let text = self.cell(column).chars().take(24).collect();
        self.bad(column, RowMistake::Unreadable { text, why })
    }

    fn number(&self, column: usize) -> Result<f64, BadRow> {
        number_of(self.cell(column)).map_err(|why| self.unreadable(column, why))
    }
}
