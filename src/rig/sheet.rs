//! Numbers of a mounting sheet, put together from its class and the very engine's.

use uom::si::f64::{Angle, Length};

use crate::job::{EngineSpec, MountingNumbers, Powerhead};
use crate::quantity::Basis;

/// Numbers of a mounting sheet, all but the shaft's length.
#[derive(Clone, Debug)]
pub struct SwingSheet {
    /// Trim from the shaft square to the bottom, in (negative) and out, at the sheet's transom angle.
    pub trim: [Angle; 2],
    /// Full tilt from upright, at the sheet's transom angle.
    pub full_tilt: Angle,
    /// Steering, each way.
    pub steering: Angle,
    /// The transom angle that they are stated at.
    pub transom_angle: Angle,
    /// Anti-ventilation plate down to the propeller shaft.
    pub plate_to_propeller_shaft: Length,
    /// The largest propeller that fits it.
    pub propeller_diameter: Length,
    /// Powerhead: width.
    pub width: Length,
    /// Powerhead: top above the rest, engine down.
    pub height: Length,
    /// Farthest forward of the mounting face at full tilt.
    pub forward_at_full_tilt: Length,
    /// Highest above the rest at full tilt.
    pub height_at_full_tilt: Length,
    /// Tilt tube forward of the mounting face and above the rest, where the sheet says.
    pub tilt_tube: Option<[Length; 2]>,
}

impl SwingSheet {
    /// The numbers, where all of them are known.
    pub fn of(spec: &EngineSpec) -> Option<Self> {
        let head = spec.powerhead.as_ref()?;
        let trim = spec.trim.as_ref()?;
        Some(SwingSheet {
            trim: [trim.from.value, trim.to.value],
            full_tilt: spec.full_tilt.as_ref()?.value,
            steering: spec.steering.as_ref()?.value,
            transom_angle: spec.transom_angle.as_ref()?.value,
            plate_to_propeller_shaft: spec.plate_to_propeller_shaft.as_ref()?.value,
            propeller_diameter: spec.propeller_diameter.as_ref()?.to.value,
            width: head.width.as_ref()?.value,
            height: head.height.as_ref()?.value,
            forward_at_full_tilt: head.forward_at_full_tilt.as_ref()?.value,
            height_at_full_tilt: head.height_at_full_tilt.as_ref()?.value,
            tilt_tube: spec.tilt_tube.as_ref().map(|tube| [tube.forward.value, tube.above.value]),
        })
    }
}

/// The spec with the numbers of the very engine's mounting sheet in place of its class's.
pub(super) fn with_sheet(mut spec: EngineSpec, sheet: Option<&MountingNumbers>) -> EngineSpec {
    let Some(sheet) = sheet.cloned() else {
        return spec;
    };
    macro_rules! replace {
        ($($field:expr => $with:ident;)+) => {$(
            if let Some(reading) = sheet.$with {
                $field = Some(reading.from_basis(Basis::Builder));
            }
        )+};
    }
    let head = spec.powerhead.get_or_insert_with(Powerhead::default);
    replace!(
        head.width => width;
        head.height => height;
        head.forward_at_full_tilt => forward_at_full_tilt;
        head.height_at_full_tilt => height_at_full_tilt;
        spec.full_tilt => full_tilt;
        spec.steering => steering;
        spec.transom_angle => transom_angle;
    );
    if let Some(mut tube) = sheet.tilt_tube {
        tube.forward = tube.forward.from_basis(Basis::Builder);
        tube.above = tube.above.from_basis(Basis::Builder);
        spec.tilt_tube = Some(tube);
    }
    spec
}
