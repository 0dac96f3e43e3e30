//! Steps of a scale or a key.

/// The least of 1, 2 and 5 times powers of ten that is no less.
pub fn round_step(least: f64) -> f64 {
    let ten = 10_f64.powf(least.log10().floor());
    let steps = [1.0, 2.0, 5.0, 10.0].map(|times| times * ten);
    steps.into_iter().find(|step| *step >= least).unwrap_or(10.0 * ten)
}
