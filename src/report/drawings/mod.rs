//! The drawings, a file each. Every one is made from the same case as the findings; one that lacks what
//! it needs is not made.

pub mod contour;
mod free_body;
mod hull;
pub mod kit;
mod margins;
mod panel;
pub(crate) mod places;
mod plot;
pub mod raster;
mod rigging;
mod righting;
mod running;
mod side;
mod stern;
pub(crate) mod sweep;
mod swing;
mod transom;
mod waters;

pub(crate) use kit::{Drawing, LETTERING};

use super::Report;
use crate::case::Case;
use crate::quantity::Units;

/// Every drawing of the report, in the order in which they are read.
pub(crate) fn all(report: &Report) -> Vec<Drawing> {
    let case = report.case;
    let units = one(report.units);
    [
        margins::drawing(report, units),
        side::before(case, units),
        side::after(case, units),
        transom::drawing(case, units),
        swing::side(case, units),
        swing::plan(case, units),
        free_body::drawing(case, units),
        panel::deflection(case, units),
        panel::stress(case, units),
        hull::profile(case, units),
        hull::sections(case, units),
        righting::drawing(case, units),
        rigging::drawing(case, units),
        running::thrust(case, units),
        running::trim(case, units),
    ]
    .into_iter()
    .flatten()
    .chain(running::over_engine_speed(case, units))
    .chain(running::costs(case))
    .collect()
}

/// The stern from the side with the engines that go on.
pub(crate) fn stern_after(case: &Case, units: Units) -> Option<Drawing> {
    side::after(case, units)
}

/// Lettered in both units a drawing cannot be read: the page has the metric figures.
pub(crate) fn one(units: Units) -> Units {
    match units {
        Units::Both => Units::Us,
        one => one,
    }
}
