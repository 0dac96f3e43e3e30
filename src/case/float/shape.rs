//! From what the job says of her shape to a hull.

use nalgebra::{Point2, Point3, Vector3};
use uom::si::angle::radian;
use uom::si::f64::{Angle, Length, Volume};
use uom::si::length::meter;

use super::NoFloat;
use super::ledger::{value, y_of};
use crate::job::{BracketKind, HullShape, Lines, Offset};
use crate::physics::float::{
    Assumption, Fairing, Hull, LeastForm, LoftError, Lofting, MeshError, Station, StlError,
    TapeSection, TriMesh, mesh_from_least_form, mesh_from_offsets, mesh_from_stl, mesh_from_tape,
};
use crate::quantity::{Dimensioned, Measure, Style, Text, degrees, inches, say};
use crate::rig::{Group, Outfit, Rig, Shape};

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

/// Why a shape is no hull: the entry of the job, what is wrong, what would do.
#[derive(Clone, Debug, PartialEq)]
pub struct ShapeFault {
    /// The entry.
    pub path: String,
    /// What is wrong.
    pub message: String,
    /// What would do.
    pub help: String,
}

/// Why the job's shape is no hull, if it is none.
pub fn shape_fault(rig: &Rig) -> Option<ShapeFault> {
    let shape = rig.afloat.shape.reading()?;
    with_wells(rig, shape).err()
}

/// Builds the hull of the rig.
pub(super) fn built(rig: &Rig) -> Result<Built, NoFloat> {
    let shape = rig
        .afloat
        .shape
        .ask()
        .map_err(|missing| NoFloat::Missing(vec![missing]))?;
    with_wells(rig, shape)
        .map_err(|fault| NoFloat::Cannot(say!("{}: {}.", fault.path, fault.message)))
}

/// The hull less the wells that the water fills.
fn with_wells(rig: &Rig, shape: &Shape) -> Result<Built, ShapeFault> {
    let mut built = build(rig, shape)?;
    let top = built
        .sheer
        .iter()
        .map(|(_, point)| point.z)
        .fold(built.hull.bounds().1.z, f64::min);
    for (i, well) in rig.afloat.flooded.iter().enumerate() {
        let fault = |message: String| ShapeFault {
            path: format!("flooded[{i}]"),
            message,
            help: "a well lies inside the hull, its floor below the sheer; places are in boat axes"
                .to_owned(),
        };
        let (Some(length), Some(width), Some(floor)) = (
            value(well.length.as_ref()),
            value(well.width.as_ref()),
            value(well.floor.as_ref()),
        ) else {
            continue;
        };
        let (x, y) = (
            value(well.forward.as_ref()).unwrap_or(0.0),
            y_of(well.across.as_ref()),
        );
        if floor >= top {
            return Err(fault(format!(
                "`{}` has its floor above the sheer",
                well.what
            )));
        }
        let body = TriMesh::cuboid(
            Point3::new(x, y - 0.5 * width, floor),
            Point3::new(x + length, y + 0.5 * width, top),
        )
        .map_err(|error| fault(format!("`{}`: {error}", well.what)))?;
        built.hull = built
            .hull
            .with_cut_out(body)
            .map_err(|error| fault(format!("`{}`: {error}", well.what)))?;
        built.assumed.push(say!(
            "`{}` is taken as open to the water: it fills to the level outside.",
            well.what.as_str()
        ));
    }
    Ok(built)
}

fn build(rig: &Rig, shape: &Shape) -> Result<Built, ShapeFault> {
    let rake = rig
        .transom
        .angle
        .reading()
        .map_or(degrees(0.0), |angle| angle.value);
    let mut assumed = Vec::new();
    if rig.transom.angle.reading().is_none() && !matches!(shape, Shape::Mesh { .. }) {
        assumed.push(Text::from(
            "Her transom is taken as plumb: its angle is not given.",
        ));
    }
    let lofting = |lines: Lines| Lofting {
        fairing: match lines {
            Lines::Fair => Fairing::Monotone,
            Lines::Straight => Fairing::Straight,
        },
        transom_rake: rake,
        ..Lofting::default()
    };
    let fault = |path: &str| {
        let path = path.to_owned();
        move |error: LoftError| loft_fault(&path, &error)
    };
    let (how, lofted, sheer) = match shape {
        Shape::Mesh { bytes, unit } => {
            let mesh = mesh_from_stl(bytes, *unit).map_err(|error| stl_fault(&error))?;
            look_at_mesh(&mesh, &mut assumed);
            return Ok(Built {
                how: "a closed mesh from a file",
                hull: Hull::new(mesh.clone()),
                mesh,
                sheer: Vec::new(),
                assumed,
            });
        }
        Shape::Lines(HullShape::Tape { sections, lines }) => {
            let tape: Vec<TapeSection> = sections
                .iter()
                .map(|s| TapeSection {
                    x: s.forward.value,
                    keel: s.keel.value,
                    bottom_knuckles: s.bottom_knuckles.iter().map(point).collect(),
                    chine: point(&s.chine),
                    side_knuckles: s.side_knuckles.iter().map(point).collect(),
                    sheer: point(&s.sheer),
                })
                .collect();
            let lofted = mesh_from_tape(&tape, &lofting(*lines)).map_err(fault("hull.sections"))?;
            let keel = tape.first().map_or(0.0, |s| s.keel.get::<meter>());
            let sheer = tape.iter().map(|s| (s.x.get::<meter>(), s.sheer)).collect();
            ("tape readings of sections", lofted, (sheer, keel))
        }
        Shape::Lines(HullShape::Offsets { stations, lines }) => {
            let table: Vec<Station> = stations
                .iter()
                .map(|s| Station {
                    x: s.forward.value,
                    points: s.points.iter().map(point).collect(),
                })
                .collect();
            let lofted =
                mesh_from_offsets(&table, &lofting(*lines)).map_err(fault("hull.stations"))?;
            let keel = table
                .first()
                .and_then(|s| s.points.first())
                .map_or(0.0, |p| p.y);
            let sheer = table
                .iter()
                .filter_map(|s| Some((s.x.get::<meter>(), *s.points.last()?)))
                .collect();
            ("a table of offsets", lofted, (sheer, keel))
        }
        // The resolver turns a mesh into its bytes.
        Shape::Lines(HullShape::Mesh { file, .. }) => {
            return Err(ShapeFault {
                path: "hull.file".to_owned(),
                message: format!("`{file}` was not read"),
                help: "check the name; it counts from the folder of the job".to_owned(),
            });
        }
        Shape::Least {
            length,
            chine_beam,
            deadrise,
            depth,
        } => {
            let form = LeastForm {
                length: *length,
                chine_beam: *chine_beam,
                deadrise: *deadrise,
                depth: *depth,
            };
            let lofted =
                mesh_from_least_form(&form, &lofting(Lines::Fair)).map_err(fault("boat.depth"))?;
            let half = 0.5 * chine_beam.get::<meter>();
            let sheer = lofted
                .assumptions
                .iter()
                .find_map(|assumption| match assumption {
                    Assumption::SheerBeam { ratio } => Some(half * ratio),
                    _ => None,
                })
                .map(|out| vec![(0.0, Point2::new(out, depth.get::<meter>()))])
                .unwrap_or_default();
            (
                "the least form: length, chine beam, deadrise and depth",
                lofted,
                (sheer, 0.0),
            )
        }
    };
    assumed.extend(lofted.assumptions.iter().map(words));
    Ok(Built {
        how,
        hull: Hull::new(lofted.mesh.clone()),
        mesh: lofted.mesh,
        sheer: sheer_points(&sheer.0, sheer.1, rake),
        assumed,
    })
}

fn point(offset: &Offset) -> Point2<f64> {
    Point2::new(offset.out.value.si(), offset.up.value.si())
}

/// Sheer points of both sides, the aftermost raked as the transom is.
fn sheer_points(
    sheer: &[(f64, Point2<f64>)],
    keel: f64,
    rake: Angle,
) -> Vec<(String, Point3<f64>)> {
    let mut points = Vec::new();
    for (i, (x, p)) in sheer.iter().enumerate() {
        let x = if i == 0 {
            x - (p.y - keel) * rake.get::<radian>().tan()
        } else {
            *x
        };
        let name = if i == 0 {
            "sheer at the transom"
        } else {
            "sheer"
        };
        for (side, sign) in [("port", 1.0), ("starboard", -1.0)] {
            if p.x > 0.0 || sign > 0.0 {
                let side = if p.x > 0.0 { side } else { "stem" };
                let at = if i == 0 {
                    format!("{name}, {side}")
                } else {
                    format!("{name} at section {}, {side}", i + 1)
                };
                points.push((at, Point3::new(x, sign * p.x, p.y)));
            }
        }
    }
    points
}

/// What a mesh alone cannot be asked, and what about it looks wrong.
fn look_at_mesh(mesh: &TriMesh, assumed: &mut Vec<Text>) {
    let hull = Hull::new(mesh.clone());
    let (low, high) = hull.bounds();
    assumed.push(Text::from(
        "The mesh is taken to stand in boat axes: x forward from the transom, y to port, z up from the bottom.",
    ));
    if high.z <= 0.02 * (high.z - low.z) {
        assumed.push(Text::from(
            "The mesh lies below its own baseline: it may be upside down, or its origin is not at the bottom of the hull. Look at it before anything here is used.",
        ));
        return;
    }
    let middle = Length::new::<meter>(0.5 * (low.z + high.z));
    let plane = crate::physics::float::WaterPlane::at(crate::physics::float::Attitude {
        sinkage: middle,
        ..Default::default()
    });
    if let Ok(plane) = plane {
        let below = hull.cut(&plane).volume / hull.volume();
        if below.si() > MOST_BELOW_THE_MIDDLE {
            assumed.push(Text::from(
                "The greater part of the mesh lies in its lower half: it may be upside down. Look at it before anything here is used.",
            ));
        }
    }
}

/// Share of a hull's volume that lies below half its height at the most. Common practice, no source: a
/// box has half, a boat less.
const MOST_BELOW_THE_MIDDLE: f64 = 0.6;

fn words(assumption: &Assumption) -> Text {
    match assumption {
        Assumption::Fairing(Fairing::Straight) => {
            Text::from("Her lines run straight from section to section.")
        }
        Assumption::Fairing(Fairing::Monotone) => Text::from(
            "Her lines run fair through the sections, never outside of two neighbouring ones.",
        ),
        Assumption::FlatDeck => Text::from(
            "She is taken as decked at the sheer; the heights of edges tell where water would come in.",
        ),
        Assumption::MatchedByGirth => Text::from(
            "Her sections have different numbers of points: they are matched by their part of the girth.",
        ),
        Assumption::PrismaticTo { part_of_length } => say!(
            "Her transom's section is taken to run forward over {} of the length.",
            ratio(*part_of_length)
        ),
        Assumption::SheerBeam { ratio: wider } => say!(
            "Her sheer is taken as {} times as wide as the chine.",
            ratio(*wider)
        ),
        Assumption::LevelSheer => Text::from("Her sheer is taken as level."),
        Assumption::ForeBody { stations } => say!(
            "Her bow is taken as that of a planing runabout, by {} usual proportions (common practice, no source); a few sections read with a tape are better.",
            stations.len()
        ),
    }
}

fn ratio(value: f64) -> Measure {
    Measure::of(uom::si::f64::Ratio::from_si(value))
}

fn loft_fault(path: &str, error: &LoftError) -> ShapeFault {
    let section = match error {
        LoftError::TooFewPoints { section, .. }
        | LoftError::NotFinite { section }
        | LoftError::NegativeHalfBreadth { section, .. }
        | LoftError::NotAscending { section } => Some(*section),
        _ => None,
    };
    ShapeFault {
        path: match section {
            Some(section) if path.starts_with("hull") => format!("{path}[{section}]"),
            _ => path.to_owned(),
        },
        message: match error {
            LoftError::Mesh(mesh) => format!("these sections enclose no hull: {mesh}"),
            other => other.to_string(),
        },
        help: match error {
            LoftError::NotAscending { .. } => {
                "each section stands forward of the one before at every height; a raked transom's top counts"
            }
            LoftError::OutOfRange { .. } => "check length, chine_beam, deadrise and depth",
            _ => "check the heights and half-breadths of the sections",
        }
        .to_owned(),
    }
}

fn stl_fault(error: &StlError) -> ShapeFault {
    let (message, help) = match error {
        StlError::Mesh(mesh) => (
            format!("the mesh is not the surface of a hull: {mesh}"),
            match mesh {
                MeshError::Open { .. } => {
                    "close it there: deck and transom belong to it; places are in boat axes"
                }
                MeshError::InsideOut { .. } => {
                    "turn its triangles round: outward, corners counter-clockwise seen from outside"
                }
                MeshError::Inconsistent { .. } => "turn one of the two triangles there",
                MeshError::TooLarge { .. } => "check `unit`: 1 mm for most drawings",
                _ => "mend it in the program that drew it",
            },
        ),
        StlError::Truncated { .. } => (error.to_string(), "write the file anew"),
        other => (
            other.to_string(),
            "an STL file, ascii or binary, of the closed hull is expected",
        ),
    };
    ShapeFault {
        path: "hull.file".to_owned(),
        message,
        help: help.to_owned(),
    }
}

/// A bracket's closed box, and where it stands.
#[derive(Clone, Debug)]
pub struct BracketBox {
    /// Its name.
    pub name: String,
    /// Its closed surface.
    pub mesh: TriMesh,
    /// Its volume.
    pub volume: Volume,
    /// Depth from its top to its bottom.
    pub depth: Length,
}

/// How far a box that several engines hang on reaches beyond the outer ones' centrelines, together.
/// Common practice, no source.
const BOX_BEYOND_CENTRES_IN: f64 = 18.0;

/// The boxes that the brackets of an outfit are; those whose place is not known are left out, and said.
pub(super) fn boxes(rig: &Rig, outfit: &Outfit, assumed: &mut Vec<Text>) -> Vec<BracketBox> {
    let mut all = Vec::new();
    for group in &outfit.groups {
        let Some(bracket) = &group.bracket else {
            continue;
        };
        if bracket.spec.kind != Some(BracketKind::Box) {
            continue;
        }
        match bracket_box(rig, group, assumed) {
            Some(body) => all.push(body),
            None => assumed.push(say!(
                "The buoyancy of `{}` is left out: its volume, setback or lowest point is not given (the careful way).",
                bracket.name.as_str()
            )),
        }
    }
    all
}

fn bracket_box(rig: &Rig, group: &Group, assumed: &mut Vec<Text>) -> Option<BracketBox> {
    let bracket = group.bracket.as_ref()?;
    let volume = bracket.spec.buoyant_volume.as_ref()?.value;
    let setback = bracket.setback.reading()?.value.si();
    let bottom = bracket.bottom.reading()?.value.si();
    let angle = rig
        .transom
        .angle
        .reading()
        .map_or(0.0, |angle| angle.value.si());
    let ys = || group.engines.iter().map(|engine| engine.y.si());
    let (low, high) = ys().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), y| {
        (l.min(y), h.max(y))
    });
    let middle = 0.5 * (low + high);
    let width = match &bracket.width {
        Some(width) => width.value.si(),
        None => {
            let width = (high - low) + inches(BOX_BEYOND_CENTRES_IN).si();
            assumed.push(say!(
                "`{}` is taken as {} wide: its engines' spread and {} (common practice, no source).",
                bracket.name.as_str(),
                Measure::tape(Length::from_si(width)),
                Measure::tape(inches(BOX_BEYOND_CENTRES_IN))
            ));
            width
        }
    };
    if setback <= 0.0 || width <= 0.0 || volume.si() <= 0.0 {
        return None;
    }
    let depth = volume.si() / (setback * width);
    // Leaning with the transom it touches it all the way up and overlaps it nowhere; its volume stays.
    let upright = TriMesh::cuboid(
        Point3::new(-setback, middle - 0.5 * width, bottom),
        Point3::new(0.0, middle + 0.5 * width, bottom + depth),
    )
    .ok()?;
    let vertices = upright
        .vertices()
        .iter()
        .map(|v| v + Vector3::new(-v.z * angle.tan(), 0.0, 0.0))
        .collect();
    let mesh = TriMesh::new(vertices, upright.faces().to_vec()).ok()?;
    assumed.push(say!(
        "`{}` is taken as a closed box of {}, {} deep from its lowest point.",
        bracket.name.as_str(),
        Measure::styled(volume, Style::Bulk),
        Measure::tape(Length::from_si(depth))
    ));
    Some(BracketBox {
        name: bracket.name.clone(),
        mesh,
        volume,
        depth: Length::from_si(depth),
    })
}
