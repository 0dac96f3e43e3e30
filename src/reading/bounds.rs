//! Between what and what a reading can be.

use std::fmt;

use super::Amount;
use crate::quantity::Kind;

/// The range in which a value of this sort can be: outside it, somebody slipped.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bounds {
    /// From one amount to another.
    Between(Amount, Amount),
    /// From one count to another.
    Count(f64, f64),
}

/// From one amount to another of the same kind; anything else stops the build.
pub const fn between(least: Amount, most: Amount) -> Bounds {
    assert!(least.kind() as u8 == most.kind() as u8, "bounds of two kinds");
    assert!(least.si() < most.si(), "bounds that run backwards");
    Bounds::Between(least, most)
}

/// From one count to another.
pub const fn count(least: f64, most: f64) -> Bounds {
    assert!(least < most, "bounds that run backwards");
    Bounds::Count(least, most)
}

impl Bounds {
    /// The least, in the coherent SI unit.
    pub const fn least(&self) -> f64 {
        match self {
            Bounds::Between(least, _) => least.si(),
            Bounds::Count(least, _) => *least,
        }
    }

    /// The most, in the coherent SI unit.
    pub const fn most(&self) -> f64 {
        match self {
            Bounds::Between(_, most) => most.si(),
            Bounds::Count(_, most) => *most,
        }
    }

    /// What they bound; nothing where it is a count.
    pub const fn kind(&self) -> Option<Kind> {
        match self {
            Bounds::Between(least, _) => Some(least.kind()),
            Bounds::Count(..) => None,
        }
    }

    /// Whether a value in the coherent SI unit lies within them.
    pub fn hold(&self, si: f64) -> bool {
        (self.least()..=self.most()).contains(&si)
    }
}

/// `1/4 in and 8 in`.
impl fmt::Display for Bounds {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        match self {
            Bounds::Between(least, most) => write!(f, "{least} and {most}"),
            Bounds::Count(least, most) => write!(f, "{least} and {most}"),
        }
    }
}
