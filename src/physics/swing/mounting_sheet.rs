//! What a maker's mounting sheet tells of an engine.

use uom::si::f64::{Angle, Length};

use super::chain::AngleRange;

/// The numbers of a mounting sheet. Lengths are along the boat's level axes with the engine upright
/// (driveshaft vertical) unless said otherwise.
#[derive(Debug, Clone, PartialEq)]
pub struct MountingSheet {
    /// What findings call the engine.
    pub name: String,
    /// From the bracket's rest on the transom's top down to the anti-ventilation plate.
    pub shaft_length: Length,
    /// From the plate down to the propeller shaft.
    pub plate_to_propeller_shaft: Length,
    /// Propeller diameter.
    pub propeller_diameter: Length,
    /// Greatest width of the powerhead.
    pub powerhead_width: Length,
    /// Top of the cowl above the rest.
    pub powerhead_height: Length,
    /// Cowl forward of the mounting face; negative when it stays behind it.
    pub powerhead_forward: Length,
    /// Cowl aft of the mounting face.
    pub powerhead_aft: Length,
    /// How far the engine reaches forward of the transom's outer top edge at full tilt, steered ahead.
    pub protrusion_at_full_tilt: Length,
    /// Highest point above the transom's top at full tilt, steered ahead.
    pub height_at_full_tilt: Length,
    /// Tilt range from upright; negative below is trimmed in. Its high end is full tilt.
    pub tilt: AngleRange,
    /// The transom angle that the tilt range is stated at.
    pub transom_angle: Angle,
    /// Steering each way.
    pub steering_each_way: Angle,
    /// Where the tilt tube is, if the sheet says: forward of the mounting face, and above the rest.
    pub tilt_tube: Option<[Length; 2]>,
}
