//! What stands round the engines when they tilt and steer: well, obstacles, steering gear, trailer.
//!
//! Everything is measured from one place, the outside top edge of the transom: forward of it and above
//! it, level; what lies behind or below is negative.

use serde::Deserialize;
use uom::si::f64::{Angle, Length};

use super::engines::Across;
use crate::quantity::Reading;

/// The motorwell or splash-well inside the transom. Its floor is `transom.splash_well`.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Well {
    /// From the outside of the transom's top forward to the top of the well's forward wall.
    pub length: Option<Reading<Length>>,
    /// Between its sides; the width of the cutout where left out.
    pub width: Option<Reading<Length>>,
    /// Its rim, at the forward wall, above the transom's top; negative below.
    pub rim_above: Option<Reading<Length>>,
}

/// Anything else that an engine could strike: a hatch, seat, platform, ladder, bunk. A box with its
/// sides along the boat.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoxedObstacle {
    /// What it is.
    pub name: String,
    /// From and to, forward of the outside of the transom's top; negative aft of it.
    pub forward: (Reading<Length>, Reading<Length>),
    /// From and to, across.
    pub across: (Across, Across),
    /// From and to, above the transom's top; negative below it.
    pub up: (Reading<Length>, Reading<Length>),
}

/// What moves with the engines to steer them.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct SteeringGear {
    /// The steering cylinder or actuator.
    pub cylinder: Option<Cylinder>,
    /// The bar between two engines.
    pub tie_bar: Option<TieBar>,
}

/// A steering cylinder or actuator carried by the tilt tube, so that it tilts with the engine.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
#[expect(clippy::large_enum_variant, reason = "a job has one of them; a box would only hide its fields")]
pub enum Cylinder {
    /// Nothing of the sort stands forward of the engine.
    None,
    /// It is there; what is left out is taken as common practice has it.
    Fitted {
        /// Its centre line forward of the tilt tube's, engine upright.
        forward: Option<Reading<Length>>,
        /// Its centre line above the tilt tube's, engine upright.
        above: Option<Reading<Length>>,
        /// Length that it sweeps across the boat, rod ends and hose fittings with it.
        length: Option<Reading<Length>>,
        /// Diameter, fittings and hoses with it.
        diameter: Option<Reading<Length>>,
    },
}

/// The bar between two engines.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum TieBar {
    /// There is none.
    None,
    /// It is there; what is left out is taken as common practice has it.
    Fitted {
        /// Its pins forward of the tilt tube, engine upright, steered ahead.
        forward: Option<Reading<Length>>,
        /// Its pins above the tilt tube, engine upright.
        above: Option<Reading<Length>>,
        /// Diameter.
        diameter: Option<Reading<Length>>,
    },
}

/// Whether she travels on a trailer.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Trailer {
    /// She does not.
    None,
    /// She does.
    On {
        /// From the road up to the bottom of the hull at the transom.
        keel_above_ground: Option<Reading<Length>>,
        /// How far her bow stands up on it, against her level trim.
        bow_up: Option<Reading<Angle>>,
        /// Tilt at which the engines are towed, from upright; full tilt where left out.
        towing_tilt: Option<Reading<Angle>>,
        /// Bunks, cross members, lamps.
        #[serde(default)]
        parts: Vec<BoxedObstacle>,
    },
}

/// Numbers from the mounting sheet of the very engine, in place of its class's.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct MountingNumbers {
    /// Full tilt, from upright, at the sheet's transom angle.
    pub full_tilt: Option<Reading<Angle>>,
    /// Steering, each way.
    pub steering: Option<Reading<Angle>>,
    /// Transom angle that the sheet's angles are stated at.
    pub transom_angle: Option<Reading<Angle>>,
    /// Greatest width of the powerhead.
    pub width: Option<Reading<Length>>,
    /// From the bracket's rest to the powerhead's top, engine down.
    pub height: Option<Reading<Length>>,
    /// How far anything comes forward of the mounting face at full tilt.
    pub forward_at_full_tilt: Option<Reading<Length>>,
    /// Highest point above the bracket's rest at full tilt.
    pub height_at_full_tilt: Option<Reading<Length>>,
    /// The tilt tube.
    pub tilt_tube: Option<TiltTube>,
}

/// Where the tilt tube is.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TiltTube {
    /// Its centre forward of the mounting face.
    pub forward: Reading<Length>,
    /// Its centre above the bracket's rest.
    pub above: Reading<Length>,
}
