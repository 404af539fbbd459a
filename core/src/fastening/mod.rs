//! Tightening a wheel: what to set the wrench to, in which order, in which
//! passes, and what each nut's answer means.
//!
//! A torque is only ever computed from what a manual prints for this vehicle.
//! The vehicle maker's manual stands above everything here.

mod adapter;
mod answer;
mod bar;
mod chart;
mod clamp;
mod order;
mod overrun;
mod passes;
mod plan;
mod recheck;
mod target;

pub use adapter::{Adapter, BadAdapter};
pub use answer::outcome;
pub use bar::{BAR_SHARE, BarAdvice, BarStanding, BarWarning, advise, choose};
pub use chart::{ChartLabel, ChartRow, NoChartValue, bench_chart, bench_rows};
pub use clamp::{CLAMP_SCATTER, ClampLoad, Finish, NutFactor, PropertyClass, clamp_load, nut_factors, proof_load_kn};
pub use order::{OPPOSITE_FIRST, order};
pub use overrun::{Overrun, overrun};
pub use passes::{Round, SNUG_PERCENT, passes};
pub use plan::{Caution, Gate, Plan, Request, Stop, gate, plan};
pub use recheck::{Recheck, RecheckOrigin, TRADE_RECHECK, recheck, trade_recheck};
pub use target::{Band, NoTarget, Problem, Target, target, target_through};

pub use crate::fastener::{
    Bar, Gun, Layer, Mounting, NutOutcome, Pass, Printed, RecheckAt, Stage, TorqueSpec, UnitClash, Wrench, accuracy_of,
    judge,
};
