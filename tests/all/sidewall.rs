//! Sidewall markings against the tables of the trade.

mod read;
