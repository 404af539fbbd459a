use serde::Serialize;

use crate::fastener::Thread;
use crate::source::{Grade, Source};

/// A row of the generic installer chart, for the bench alone: never beside a
/// nut, never prefilled.
///
/// ```
/// use lugbook::fastening::bench_rows;
/// assert!(bench_rows().all(|row| row.ftlb.0 < row.ftlb.1 && !row.source.grade.may_refuse()));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct ChartRow {
    /// The thread diameter as the chart writes it.
    pub diameter: &'static str,
    /// The chart's range in ft·lb, as printed; the threads are meant dry.
    pub ftlb: (f64, f64),
    /// What must stand beside it.
    pub label: ChartLabel,
    /// Where it was read.
    pub source: Source,
}

/// What must stand beside a chart value.
///
/// ```
/// use lugbook::fastening::{ChartLabel, bench_rows};
/// assert!(bench_rows().all(|row| row.label == ChartLabel::ChartValueNotForYourCar));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum ChartLabel {
    /// "Chart value, not for your car".
    ChartValueNotForYourCar,
}

/// Why the chart gives nothing for a thread.
///
/// ```
/// use lugbook::fastening::{NoChartValue, bench_chart};
/// assert!(matches!(bench_chart("M14 x 1.5".parse()?), Err(NoChartValue::MakersDisagree { .. })));
/// assert_eq!(bench_chart("M6 x 1".parse()?), Err(NoChartValue::NotOnChart));
/// # Ok::<(), lugbook::fastener::BadThread>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(tag = "because", rename_all = "kebab-case")]
pub enum NoChartValue {
    /// From 14 mm up published maker values for one thread lie far apart and far from the chart.
    MakersDisagree {
        /// Lowest and highest value that makers print for M14 x 1.5, N·m.
        makers_nm: (f64, f64),
        /// What the generic chart prints for 14 mm, N·m.
        chart_nm: (f64, f64),
    },
    /// The chart has no such diameter.
    NotOnChart,
}

const READ: Source = Source::read(Grade::Secondary, "generic installer chart");
const LABEL: ChartLabel = ChartLabel::ChartValueNotForYourCar;

/// Diameter in mm, then the row.
const ROWS: [(f64, ChartRow); 4] = [
    (10.0, ChartRow { diameter: "10 mm", ftlb: (45.0, 55.0), label: LABEL, source: READ }),
    (11.1125, ChartRow { diameter: "7/16 in", ftlb: (70.0, 80.0), label: LABEL, source: READ }),
    (12.0, ChartRow { diameter: "12 mm", ftlb: (70.0, 80.0), label: LABEL, source: READ }),
    (12.7, ChartRow { diameter: "1/2 in", ftlb: (75.0, 85.0), label: LABEL, source: READ }),
];

/// From this diameter on the chart gives nothing, mm.
const WITHHELD_FROM_MM: f64 = 14.0;

/// All rows of the generic chart that are given at all, thinnest first.
///
/// ```
/// use lugbook::fastening::bench_rows;
/// assert_eq!(bench_rows().next().map(|row| row.diameter), Some("10 mm"));
/// ```
pub fn bench_rows() -> impl Iterator<Item = ChartRow> {
    ROWS.iter().map(|(_, row)| *row)
}

/// The generic chart's row for a thread, for the bench alone.
///
/// ```
/// use lugbook::fastening::{bench_chart, NoChartValue};
/// assert_eq!(bench_chart("1/2-20 UNF".parse()?).unwrap().ftlb, (75.0, 85.0));
/// assert!(matches!(bench_chart("M14 x 1.5".parse()?), Err(NoChartValue::MakersDisagree { .. })));
/// # Ok::<(), lugbook::fastener::BadThread>(())
/// ```
///
/// # Errors
/// For threads of 14 mm and more, and for diameters that are not on the chart.
pub fn bench_chart(thread: Thread) -> Result<ChartRow, NoChartValue> {
    let diameter = thread.diameter_mm();
    if diameter >= WITHHELD_FROM_MM {
        return Err(NoChartValue::MakersDisagree { makers_nm: (150.0, 225.0), chart_nm: (115.0, 122.0) });
    }
    ROWS.iter().find(|(mm, _)| (mm - diameter).abs() < 0.01).map(|(_, row)| *row).ok_or(NoChartValue::NotOnChart)
}
