//! The jobs to fill in that `start` writes, one for each sitting.

use super::Sitting;

/// The commented job for this sitting.
pub fn template(sitting: Sitting) -> &'static str {
    match sitting {
        Sitting::BeforeOrdering => include_str!("start/before_ordering.ron"),
        Sitting::AsFitted => include_str!("start/as_fitted.ron"),
        Sitting::Study => include_str!("start/study.ron"),
    }
}
