//! The drawing kit: what a draughtsman has on the table. Things are laid out in millimetres of the
//! boat; lettering and dimension tracks in units of the paper, so that they stay readable at any scale.
//!
//! Nothing is lettered twice at one place: dimensions go into tracks, callouts into a column, and
//! other words are moved until they stand free.

mod board;
mod callouts;
mod dimension;
mod dimension_mark;
mod drawing;
mod fit;
pub(super) mod ink;
pub mod lettering;
mod marks;
mod paper;
mod scale_bar;
mod shape;
mod sheet;
pub mod steps;
pub mod tracks;
mod view;

pub(super) use board::{Board, Layout};
pub(super) use dimension::Side;
pub(crate) use drawing::Drawing;
pub(super) use drawing::number;
pub(crate) use lettering::LETTERING;
pub(super) use lettering::{Anchor, FONT, Rect, broken, settle, width};
pub(super) use marks::lettered;
pub(super) use shape::{Pen, Point, Shape, at};
