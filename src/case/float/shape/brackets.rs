//! The closed boxes of brackets, which float with her.

use nalgebra::Point3;
use uom::si::f64::{Length, Volume};

use crate::case::stern::Stern;
use crate::job::BracketKind;
use crate::physics::float::TriMesh;
use crate::quantity::{Dimensioned, Measure, Style, Text, inches, say};
use crate::rig::{Group, Outfit, Rig};

/// A bracket's closed box, and where it stands.
#[derive(Clone, Debug)]
pub struct BracketBox {
    /// Its bracket's name.
    pub name: String,
    /// Which group of its outfit hangs on it.
    pub group: usize,
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
pub(in crate::case::float) fn boxes(rig: &Rig, outfit: &Outfit, assumed: &mut Vec<Text>) -> Vec<BracketBox> {
    let mut all = Vec::new();
    for (index, group) in outfit.groups.iter().enumerate() {
        let Some(bracket) = &group.bracket else {
            continue;
        };
        if bracket.spec.kind != Some(BracketKind::Box) {
            continue;
        }
        match bracket_box(rig, index, group, assumed) {
            Some(body) => all.push(body),
            None => assumed.push(say!(
                "The buoyancy of `{}` is left out: its volume, setback or lowest point is not given (the careful way).",
                bracket.name.as_str()
            )),
        }
    }
    all
}

fn bracket_box(rig: &Rig, index: usize, group: &Group, assumed: &mut Vec<Text>) -> Option<BracketBox> {
    let bracket = group.bracket.as_ref()?;
    let volume = bracket.spec.buoyant_volume.as_ref()?.value;
    let stern = Stern::of(rig).ok()?;
    let setback = bracket.setback.reading()?.value;
    let bottom = bracket.bottom.reading()?.value.si();
    let ys = || group.engines.iter().map(|engine| engine.y.si());
    let (low, high) = ys().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), y| (l.min(y), h.max(y)));
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
    if setback.si() <= 0.0 || width <= 0.0 || volume.si() <= 0.0 {
        return None;
    }
    // The setback is square to the transom: level, the box is longer.
    let long = setback.si() / stern.angle.si().cos();
    let depth = volume.si() / (long * width);
    // Leaning with the transom it touches it all the way up and overlaps it nowhere; its volume stays.
    let upright = TriMesh::cuboid(
        Point3::new(-long, middle - 0.5 * width, bottom),
        Point3::new(0.0, middle + 0.5 * width, bottom + depth),
    )
    .ok()?;
    let vertices =
        upright.vertices().iter().map(|v| Point3::new(v.x + stern.face(Length::from_si(0.0), v.z), v.y, v.z)).collect();
    let mesh = TriMesh::new(vertices, upright.faces().to_vec()).ok()?;
    assumed.push(say!(
        "`{}` is taken as a closed box of {}, {} deep from its lowest point.",
        bracket.name.as_str(),
        Measure::styled(volume, Style::Bulk),
        Measure::tape(Length::from_si(depth))
    ));
    Some(BracketBox { name: bracket.name.clone(), group: index, mesh, volume, depth: Length::from_si(depth) })
}
