//! A soft core: by how much a surveyor's reading lowers stiffness and strength.
//!
//! All factors here are common practice, no source: they rank a reading, and a core sample or a measured flex
//! overrules them. The measured flex goes through [`super::panel::scale_of_part`].

/// What the hammer says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Percussion {
    /// Sharp, as sound wood is.
    Sound,
    /// Duller than its surroundings.
    Dull,
    /// Dead, or the hammer marks it.
    Dead,
}

/// Parts of the sound core's properties that are left.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct KnockDown {
    /// Of its moduli; 1 where nothing is lost.
    pub stiffness: f64,
    /// Of its strengths; 1 where nothing is lost.
    pub strength: f64,
}

impl KnockDown {
    /// All of a sound core.
    pub const SOUND: Self = Self { stiffness: 1.0, strength: 1.0 };

    /// The lower of both, factor by factor.
    pub fn lower(self, other: Self) -> Self {
        Self { stiffness: self.stiffness.min(other.stiffness), strength: self.strength.min(other.strength) }
    }
}

/// Moisture by weight (percent) below which wood keeps the strength that handbooks give. Source: Wood Handbook, USDA, strength
/// at 12 % moisture; joinery is dry to about 15 % (common practice).
const DRY: f64 = 15.0;
/// Fibre saturation, percent: above it strength falls no further by moisture alone. Source: Wood Handbook, about 30 %
/// (value from memory).
const SATURATED: f64 = 30.0;
/// Modulus of elasticity and strength of green wood over wood at 12 %. Source: Wood Handbook, coast Douglas-fir
/// green against dry, 10.8/13.4 GPa and compression 26.1/49.9 MPa (values from memory).
const GREEN: KnockDown = KnockDown { stiffness: 0.80, strength: 0.52 };

/// From moisture in percent by weight; falls in a straight line from dry to saturated. `None` if not finite or negative.
pub fn by_moisture(percent: f64) -> Option<KnockDown> {
    if !percent.is_finite() || percent < 0.0 {
        return None;
    }
    let part = ((percent - DRY) / (SATURATED - DRY)).clamp(0.0, 1.0);
    let between = |green: f64| 1.0 + part * (green - 1.0);
    Some(KnockDown { stiffness: between(GREEN.stiffness), strength: between(GREEN.strength) })
}

/// From the hammer. Common practice, no source.
pub fn by_percussion(heard: Percussion) -> KnockDown {
    match heard {
        Percussion::Sound => KnockDown::SOUND,
        Percussion::Dull => KnockDown { stiffness: 0.6, strength: 0.4 },
        Percussion::Dead => KnockDown { stiffness: 0.2, strength: 0.1 },
    }
}

/// From a measured flex: strength is taken to fall as the square of stiffness, for rot takes strength first. Common practice,
/// no source. `scale` as from the panel's inverse; more than 1 counts as sound. `None` if not finite or not positive.
pub fn by_flex(scale: f64) -> Option<KnockDown> {
    let left = scale.min(1.0);
    (scale.is_finite() && scale > 0.0).then_some(KnockDown { stiffness: left, strength: left * left })
}
