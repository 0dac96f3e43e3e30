//! What stands round the engines, in SI.

use uom::si::f64::{Angle, Length};

use super::Slot;
use crate::job::{
    self, BoxedObstacle, Cylinder, EngineSpec, Job, MountingNumbers, Powerhead, SteeringGear, SwingStudy, TieBar,
    Trailer,
};
use crate::quantity::{Basis, Reading};
use crate::reading::reading;

/// Everything that engines must keep clear of, and what moves with them.
#[derive(Clone, Debug)]
pub struct Surroundings {
    /// From the outside of the transom's top forward to the well's forward wall.
    pub well_length: Slot<Reading<Length>>,
    /// Between the well's sides, where it is not the cutout's width.
    pub well_width: Option<Reading<Length>>,
    /// The well's rim above the transom's top.
    pub rim_above: Slot<Reading<Length>>,
    /// What else stands there.
    pub obstacles: Vec<BoxedObstacle>,
    /// The steering cylinder, as far as it was described.
    pub cylinder: Option<Cylinder>,
    /// The tie bar, as far as it was described.
    pub tie_bar: Option<TieBar>,
    /// From the transom's top along it down to the water at rest.
    pub waterline: Slot<Reading<Length>>,
    /// Whether she travels on a trailer.
    pub trailer: Slot<OnTrailer>,
    /// A question given outright.
    pub study: Option<SwingStudy>,
}

/// How she stands on a trailer.
#[derive(Clone, Debug)]
#[expect(clippy::large_enum_variant, reason = "a job has one of them; a box would only hide its fields")]
pub enum OnTrailer {
    /// She never does.
    Never,
    /// She does.
    Stands {
        /// From the road up to the bottom of the hull at the transom.
        keel_above_ground: Slot<Reading<Length>>,
        /// How far her bow stands up.
        bow_up: Option<Reading<Angle>>,
        /// Tilt at which the engines are towed.
        towing_tilt: Option<Reading<Angle>>,
        /// Bunks, cross members, lamps.
        parts: Vec<BoxedObstacle>,
    },
}

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
    pub(super) fn of(spec: &EngineSpec) -> Option<Self> {
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

impl Surroundings {
    pub(super) fn of(job: &Job) -> Self {
        let SteeringGear { cylinder, tie_bar } = job.steering_gear.clone();
        Surroundings {
            well_length: Slot::new(job.well.length.clone(), reading!(job::Well.length)),
            well_width: job.well.width.clone(),
            rim_above: Slot::new(job.well.rim_above.clone(), reading!(job::Well.rim_above)),
            obstacles: job.obstacles.clone(),
            cylinder,
            tie_bar,
            waterline: Slot::new(job.waterline.clone(), reading!(job::Job.waterline)),
            trailer: Slot::new(job.trailer.clone().map(stand), reading!(job::Job.trailer)),
            study: job.swing_study.clone(),
        }
    }
}

fn stand(trailer: Trailer) -> OnTrailer {
    match trailer {
        Trailer::None => OnTrailer::Never,
        Trailer::On { keel_above_ground, bow_up, towing_tilt, parts } => OnTrailer::Stands {
            keel_above_ground: Slot::new(keel_above_ground, reading!(job::Trailer.keel_above_ground)),
            bow_up,
            towing_tilt,
            parts,
        },
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
