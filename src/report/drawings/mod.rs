//! The drawings, a file each. Every one is made from the same case as the findings; one that lacks what
//! it needs is not made.

mod kit;
mod margins;
pub(crate) mod places;
mod side;
mod stern;
mod transom;

pub(crate) use kit::Drawing;

use super::Report;

/// Every drawing of the report, in the order in which they are read.
pub(crate) fn all(report: &Report) -> Vec<Drawing> {
    let (case, units) = (report.case, report.units);
    [
        margins::drawing(report),
        side::before(case, units),
        side::after(case, units),
        transom::drawing(case, units),
    ]
    .into_iter()
    .flatten()
    .collect()
}
