//! Torque, order, clamp load and chart against published tables, and the
//! target against every step tried with exact fractions.
mod nuts;
mod plan;
mod tables;
mod target;
mod words;
