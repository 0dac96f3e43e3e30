//! Why there is no answer: one type for all of it, carried by `?`.

use super::Missing;
use crate::quantity::Text;

/// Why there is no answer.
#[derive(Clone, Debug, PartialEq)]
pub enum Absent {
    /// It waits for readings.
    Waits(Vec<Missing>),
    /// The question has no meaning for this boat, and why.
    NotApplicable(Text),
    /// What is given cannot be, or contradicts itself, and how.
    CannotBe(Text),
}

impl Absent {
    /// Why, in a sentence.
    pub fn words(&self) -> Text {
        match self {
            Absent::Waits(missing) => Missing::awaited(missing),
            Absent::NotApplicable(why) | Absent::CannotBe(why) => why.clone(),
        }
    }
}

impl From<Missing> for Absent {
    fn from(missing: Missing) -> Self {
        Absent::Waits(vec![missing])
    }
}

impl From<Vec<Missing>> for Absent {
    fn from(missing: Vec<Missing>) -> Self {
        Absent::Waits(missing)
    }
}

/// Several readings asked for at once: all of them, or everything that is missing of them.
pub trait All {
    /// What they are.
    type Readings;

    /// All of them.
    ///
    /// # Errors
    /// Every one that is missing.
    fn all(self) -> Result<Self::Readings, Vec<Missing>>;
}

#[allow(non_snake_case, reason = "a type and its value share a name")]
mod several {
    use super::{All, Missing};

    macro_rules! all {
    ($($one:ident $index:tt),+) => {
        impl<$($one),+> All for ($(Result<$one, Missing>,)+) {
            type Readings = ($($one,)+);

            fn all(self) -> Result<Self::Readings, Vec<Missing>> {
                let missing: Vec<Missing> = [$(self.$index.as_ref().err().cloned()),+].into_iter().flatten().collect();
                match self {
                    ($(Ok($one),)+) => Ok(($($one,)+)),
                    _ => Err(missing),
                }
            }
        }
    };
}
    all!(A 0, B 1);
    all!(A 0, B 1, C 2);
    all!(A 0, B 1, C 2, D 3);
    all!(A 0, B 1, C 2, D 3, E 4);
}
