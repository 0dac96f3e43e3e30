//! The jobs to fill in that `start` writes, for each sitting a short one and one with every field.

use super::Sitting;

/// The commented job for this sitting, with every field.
pub fn template(sitting: Sitting) -> &'static str {
    match sitting {
        Sitting::BeforeOrdering => include_str!("start/before_ordering.ron"),
        Sitting::AsFitted => include_str!("start/as_fitted.ron"),
        Sitting::Study => include_str!("start/study.ron"),
    }
}

/// The commented job of what is in hand in ten minutes; a question at the desk has one form.
pub fn short(sitting: Sitting) -> &'static str {
    match sitting {
        Sitting::BeforeOrdering => include_str!("start/before_ordering_short.ron"),
        Sitting::AsFitted => include_str!("start/as_fitted_short.ron"),
        Sitting::Study => template(sitting),
    }
}
