//! A hull lofted from sections, offsets, or the least that is known of her.

use nalgebra::{Point2, Point3};
use uom::si::f64::{Angle, Ratio};

use super::Built;
use crate::job::{Lines, Offset, OffsetStation, Section};
use crate::physics::float::{
    Assumption, Fairing, Hull, LeastForm, LoftError, Lofted, Lofting, Station, TapeSection, mesh_from_least_form,
    mesh_from_offsets, mesh_from_tape,
};
use crate::quantity::{Dimensioned, Measure, Text, degrees, say};
use crate::rig::Rig;
use crate::written::Slip;

/// How her lines are to run, and what was taken for granted of it.
pub(super) struct Lofter {
    lofting: Lofting,
    assumed: Vec<Text>,
}

impl Lofter {
    pub(super) fn of(rig: &Rig, lines: Lines) -> Self {
        let angle = rig.job.transom.angle().reading();
        let assumed = match angle {
            Some(_) => Vec::new(),
            None => vec![Text::from("Her transom is taken as plumb: its angle is not given.")],
        };
        Lofter {
            lofting: Lofting {
                fairing: match lines {
                    Lines::Fair => Fairing::Monotone,
                    Lines::Straight => Fairing::Straight,
                },
                transom_rake: angle.map_or(degrees(0.0), |angle| angle.value),
                ..Lofting::default()
            },
            assumed,
        }
    }

    pub(super) fn tape(self, sections: &[Section]) -> Result<Built, Slip> {
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
        let lofted = mesh_from_tape(&tape, &self.lofting).map_err(|error| fault("hull.sections", &error))?;
        let keel = tape.first().map_or(0.0, |s| s.keel.si());
        let sheer: Vec<_> = tape.iter().map(|s| (s.x.si(), s.sheer)).collect();
        Ok(self.built("tape readings of sections", lofted, &sheer, keel))
    }

    pub(super) fn offsets(self, stations: &[OffsetStation]) -> Result<Built, Slip> {
        let table: Vec<Station> = stations
            .iter()
            .map(|s| Station { x: s.forward.value, points: s.points.iter().map(point).collect() })
            .collect();
        let lofted = mesh_from_offsets(&table, &self.lofting).map_err(|error| fault("hull.stations", &error))?;
        let keel = table.first().and_then(|s| s.points.first());
        let keel = keel.map_or(0.0, |p| p.y);
        let sheer: Vec<_> = table.iter().filter_map(|s| Some((s.x.si(), *s.points.last()?))).collect();
        Ok(self.built("a table of offsets", lofted, &sheer, keel))
    }

    pub(super) fn least_form(self, form: &LeastForm) -> Result<Built, Slip> {
        let lofted = mesh_from_least_form(form, &self.lofting).map_err(|error| fault("boat.depth", &error))?;
        let half = 0.5 * form.chine_beam.si();
        let sheer: Vec<_> = lofted
            .assumptions
            .iter()
            .find_map(|assumption| match assumption {
                Assumption::SheerBeam { ratio } => Some(half * ratio),
                _ => None,
            })
            .map(|out| (0.0, Point2::new(out, form.depth.si())))
            .into_iter()
            .collect();
        let how = "the least form: length, chine beam, deadrise and depth";
        Ok(self.built(how, lofted, &sheer, 0.0))
    }

    fn built(mut self, how: &'static str, lofted: Lofted, sheer: &[(f64, Point2<f64>)], keel: f64) -> Built {
        self.assumed.extend(lofted.assumptions.iter().map(words));
        Built {
            how,
            hull: Hull::new(lofted.mesh.clone()),
            mesh: lofted.mesh,
            sheer: sheer_points(sheer, keel, self.lofting.transom_rake),
            assumed: self.assumed,
        }
    }
}

fn point(offset: &Offset) -> Point2<f64> {
    Point2::new(offset.out.value.si(), offset.up.value.si())
}

/// Sheer points of both sides, the aftermost raked as the transom is.
fn sheer_points(sheer: &[(f64, Point2<f64>)], keel: f64, rake: Angle) -> Vec<(String, Point3<f64>)> {
    let mut points = Vec::new();
    for (i, (x, p)) in sheer.iter().enumerate() {
        let x = if i == 0 { x - (p.y - keel) * rake.si().tan() } else { *x };
        let name = if i == 0 { "sheer at the transom" } else { "sheer" };
        for (side, sign) in [("port", 1.0), ("starboard", -1.0)] {
            if p.x > 0.0 || sign > 0.0 {
                let side = if p.x > 0.0 { side } else { "stem" };
                let at =
                    if i == 0 { format!("{name}, {side}") } else { format!("{name} at section {}, {side}", i + 1) };
                points.push((at, Point3::new(x, sign * p.x, p.y)));
            }
        }
    }
    points
}

fn words(assumption: &Assumption) -> Text {
    match assumption {
        Assumption::Fairing(Fairing::Straight) => Text::from("Her lines run straight from section to section."),
        Assumption::Fairing(Fairing::Monotone) => {
            Text::from("Her lines run fair through the sections, never outside of two neighbouring ones.")
        }
        Assumption::FlatDeck => {
            Text::from("She is taken as decked at the sheer; the heights of edges tell where water would come in.")
        }
        Assumption::MatchedByGirth => {
            Text::from("Her sections have different numbers of points: they are matched by their part of the girth.")
        }
        Assumption::PrismaticTo { part_of_length } => {
            say!("Her transom's section is taken to run forward over {} of the length.", ratio(*part_of_length))
        }
        Assumption::SheerBeam { ratio: wider } => {
            say!("Her sheer is taken as {} times as wide as the chine.", ratio(*wider))
        }
        Assumption::LevelSheer => Text::from("Her sheer is taken as level."),
        Assumption::ForeBody { stations } => say!(
            "Her bow is taken as that of a planing runabout, by {} usual proportions (common practice, no source); a few sections read with a tape are better.",
            stations.len()
        ),
    }
}

fn ratio(value: f64) -> Measure {
    Measure::of(Ratio::from_si(value))
}

fn fault(path: &str, error: &LoftError) -> Slip {
    let section = match error {
        LoftError::TooFewPoints { section, .. }
        | LoftError::NotFinite { section }
        | LoftError::NegativeHalfBreadth { section, .. }
        | LoftError::NotAscending { section } => Some(*section),
        _ => None,
    };
    Slip {
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
