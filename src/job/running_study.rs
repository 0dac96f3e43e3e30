//! Questions of running put outright: a planing prism, a propeller.

use uom::si::f64::{Angle, AngularVelocity, Length, Mass, Ratio, Velocity};

use super::bounds;
use super::float::Water;
use crate::quantity::Reading;
use crate::reading::*;

things! {
    /// A planing prism, given outright.
    pub struct PlaningStudy [whole] {
        /// What she weighs.
        weight: Reading<Mass> = field().within(bounds::STUDY_WEIGHT),
        /// Her centre forward of the transom.
        centre_forward: Reading<Length> = field().within(bounds::STUDY_PLACE),
        /// Her centre above the keel.
        centre_above: Reading<Length> = field().within(bounds::STUDY_PLACE),
        /// Beam between the chines.
        beam: Reading<Length> = field().within(bounds::STUDY_LENGTH),
        /// Deadrise.
        deadrise: Reading<Angle> = field().within(bounds::STUDY_DEADRISE),
        /// Angle of the thrust line to the keel; positive where it lifts. Along the keel where left out.
        thrust_angle: Option<Reading<Angle>> = field().within(bounds::STUDY_ANGLE),
        /// Distance of the thrust line from her centre; positive below it. Through it where left out.
        thrust_below: Option<Reading<Length>> = field().within(bounds::STUDY_PLACE),
        /// Speed.
        speed: Reading<Velocity> = field().within(bounds::STUDY_SPEED),
        /// The water; salt where left out.
        water: Option<Water> = field().within(bounds::DENSITY),
    }
}

things! {
    /// A propeller of the B-series, given outright.
    pub struct PropellerStudy [whole] {
        /// Its blades.
        blades: u8 = field().within(bounds::BLADES),
        /// Diameter.
        diameter: Reading<Length> = field().within(bounds::STUDY_LENGTH),
        /// Pitch.
        pitch: Reading<Length> = field().within(bounds::STUDY_LENGTH),
        /// Expanded area of its blades over that of its disc.
        area_ratio: Reading<Ratio> = field().within(bounds::BLADE_AREA),
        /// Speed of the water to it.
        speed: Option<Reading<Velocity>> = field().within(bounds::STUDY_SPEED_OR_REST),
        /// Its own turns.
        rpm: Option<Reading<AngularVelocity>> = field().within(bounds::STUDY_ROTATION),
        /// Advance `J = V / (n D)`, in place of speed or turns.
        advance: Option<Reading<Ratio>> = field().within(bounds::ADVANCE),
        /// Reynolds number at 0.75 of the radius; the series' own, two million, where left out.
        reynolds: Option<f64> = field().within(bounds::REYNOLDS),
        /// How deep its shaft lies, where cavitation is asked about.
        depth: Option<Reading<Length>> = field().within(bounds::STUDY_PLACE),
        /// The water; salt where left out.
        water: Option<Water> = field().within(bounds::DENSITY),
    }
}
