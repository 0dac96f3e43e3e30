//! From what the job says of her shape to a hull.

mod brackets;
mod loft;
mod mesh;

use nalgebra::Point3;
use uom::si::f64::Angle;

use super::ledger::{value, y_of};
use crate::case::Case;
use crate::job::{HullShape, Lines};
use crate::physics::float::{Hull, LeastForm, TriMesh};
use crate::quantity::{Dimensioned, Text, say};
use crate::reading::Absent;
use crate::rig::{Rig, Shape};
use crate::written::Slip;

pub use brackets::BracketBox;
pub(super) use brackets::boxes;

/// A hull that was built, and what it took for granted.
#[derive(Clone, Debug)]
pub struct Built {
    /// How it was made, in words.
    pub how: &'static str,
    /// The closed surface.
    pub mesh: TriMesh,
    /// The same less its flooded wells.
    pub hull: Hull,
    /// Points of the sheer, port and starboard, where the shape tells them.
    pub sheer: Vec<(String, Point3<f64>)>,
    /// What was assumed.
    pub assumed: Vec<Text>,
}

impl Built {
    /// The trim at which her sheer, from the transom to the stem, lies level; where the shape tells it.
    pub fn sheer_level(&self) -> Option<Angle> {
        let along = |(_, a): &&(String, Point3<f64>), (_, b): &&(String, Point3<f64>)| a.x.total_cmp(&b.x);
        let (_, aft) = self.sheer.iter().min_by(along)?;
        let (_, fore) = self.sheer.iter().max_by(along)?;
        (fore.x > aft.x).then(|| Angle::from_si(-((fore.z - aft.z) / (fore.x - aft.x)).atan()))
    }
}

impl Case<'_> {
    /// Why the job's shape is no hull, if it is none.
    pub fn shape_fault(&self) -> Option<Slip> {
        self.shape()?.as_ref().err().cloned()
    }

    /// The hull of the rig, where its shape is given.
    fn shape(&self) -> Option<&Result<Built, Slip>> {
        let build = || Some(with_wells(self.rig, self.rig.shape.reading()?));
        self.begun.shape.get_or_init(build).as_ref()
    }
}

/// The hull of the rig.
pub(super) fn built(case: &Case) -> Result<Built, Absent> {
    let shape = case.rig.shape.ask();
    shape?;
    match case.shape() {
        Some(Ok(built)) => Ok(built.clone()),
        Some(Err(fault)) => Err(Absent::CannotBe(say!("{}: {}.", fault.path.as_str(), fault.message.as_str()))),
        None => Err(Absent::Waits(Vec::new())),
    }
}

/// The hull less the wells that the water fills.
fn with_wells(rig: &Rig, shape: &Shape) -> Result<Built, Slip> {
    let mut built = build(rig, shape)?;
    let top = built.sheer.iter().map(|(_, point)| point.z).fold(built.hull.bounds().1.z, f64::min);
    for (i, well) in rig.job.flooded.iter().enumerate() {
        let fault = |message: String| Slip {
            path: format!("flooded[{i}]"),
            message,
            help: "a well lies inside the hull, its floor below the sheer; places are in boat axes".to_owned(),
        };
        let (Some(length), Some(width), Some(floor)) =
            (value(well.length.as_ref()), value(well.width.as_ref()), value(well.floor.as_ref()))
        else {
            continue;
        };
        let (x, y) = (value(well.forward.as_ref()).unwrap_or(0.0), y_of(well.across.as_ref()));
        if floor >= top {
            return Err(fault(format!("`{}` has its floor above the sheer", well.what)));
        }
        let body =
            TriMesh::cuboid(Point3::new(x, y - 0.5 * width, floor), Point3::new(x + length, y + 0.5 * width, top))
                .map_err(|error| fault(format!("`{}`: {error}", well.what)))?;
        built.hull = built.hull.with_cut_out(body).map_err(|error| fault(format!("`{}`: {error}", well.what)))?;
        built
            .assumed
            .push(say!("`{}` is taken as open to the water: it fills to the level outside.", well.what.as_str()));
    }
    Ok(built)
}

fn build(rig: &Rig, shape: &Shape) -> Result<Built, Slip> {
    match shape {
        Shape::Mesh { bytes, unit } => mesh::built(bytes, *unit),
        // The resolver turns a mesh into its bytes.
        Shape::Lines(HullShape::Mesh { file, .. }) => Err(Slip {
            path: "hull.file".to_owned(),
            message: format!("`{file}` was not read"),
            help: "check the name; it counts from the folder of the job".to_owned(),
        }),
        Shape::Lines(HullShape::Tape { sections, lines }) => loft::Lofter::of(rig, *lines).tape(sections),
        Shape::Lines(HullShape::Offsets { stations, lines }) => loft::Lofter::of(rig, *lines).offsets(stations),
        Shape::Least { length, chine_beam, deadrise, depth } => loft::Lofter::of(rig, Lines::Fair)
            .least_form(&LeastForm { length: *length, chine_beam: *chine_beam, deadrise: *deadrise, depth: *depth }),
    }
}
