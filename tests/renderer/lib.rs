//! Draws sidewalls of invented tires for tests and the demo.
