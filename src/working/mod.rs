//! The calculation sheet: the formula that a person reads is the one that ran.
//!
//! A [`Term`] is a quantity that remembers how it came about. The ordinary operators on terms
//! evaluate, with `uom` checking dimensions, and build the expression at the same time; a [`Sheet`]
//! collects the lines.
//!
//! ```
//! use sternknee::quantity::Units;
//! use sternknee::working::{Sheet, Term, tan};
//! use uom::si::{angle::degree, f64::{Angle, Length}, length::inch};
//!
//! let mut sheet = Sheet::default();
//! let y = Term::new("y", Length::new::<inch>(14.0));
//! let deadrise = Term::new("β", Angle::new::<degree>(22.0));
//! let rise = sheet.set("Δh", "rise of the bottom off centre", y * tan(deadrise));
//! assert!((rise.value().get::<inch>() - 5.66).abs() < 0.005);
//! assert_eq!(
//!     sheet.lines()[0].show(Units::Us),
//!     "Δh = y · tan(β) = 14.00 in · tan(22.0 deg) = 5.66 in"
//! );
//! ```

mod expression;
mod figure;
mod sheet;
mod table;
mod term;

pub use expression::{Expression, Operator};
pub use figure::Figure;
pub use sheet::{Line, Origin, Sheet};
pub use table::{Part, Table};
pub use term::{
    Term, cbrt, ceil_to_multiple, cos, exp, max, min, number, pi, power, root, root_of_squares, round, sin, sqrt, tan,
};
