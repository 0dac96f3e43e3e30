//! A panel that a job gives outright: put together, solved, told.

use uom::si::f64::{Force, Length, Pressure, Ratio};

use super::{Answered, factor, si};
use crate::case::strength::ply_material;
use crate::case::strength::show::{force, layers, length, resultant, stiffness, write_stiffness};
use crate::job::{EdgeHold, LineDoes, PanelLoad, PanelPlace, PanelShape, PanelStiffness, PanelStudy};
use crate::physics::strength::panel::{
    Accuracy, EdgeSupport, Layup, Line, LineKind, Load, Material, Panel, PanelError, PlateStiffness, Ply, PlyStress,
    Point, Rect, Resultant, Section, Solution, Strength, SupportPart,
};
use crate::quantity::{Dimensioned, Measure, Style, Text, say};
use crate::rig::Layer;
use crate::working::{Sheet, Table, number};
use crate::written::Slip;

/// A solved panel.
#[derive(Clone, Debug)]
pub struct PanelAnswer {
    /// The panel as it was solved, in the study's own axes.
    pub panel: Panel,
    /// What the solver found, and how closely.
    pub solution: Solution,
    /// What was asked of the error.
    pub asked: f64,
    /// The place nearest to its strength, where strengths are known.
    pub weakest: Option<(Point, PlyStress)>,
    /// Greatest moments across, up and twisting (N·m per m), with their places.
    pub moments: [(f64, Point); 3],
}

/// Error of the largest deflection where none is asked.
const ACCURACY: f64 = 0.01;
/// Error of moments and shear over the whole panel that is asked for, weighed by energy.
const FIELDS: f64 = 0.1;
/// Most unknowns of a study: a second's work.
const MOST_UNKNOWNS: usize = 60_000;
/// Strength so great that nothing is held against it, Pa.
const UNBREAKABLE: f64 = 1e30;

impl PanelAnswer {
    pub(super) fn of(study: &PanelStudy, layers: &[Layer]) -> Result<PanelAnswer, Slip> {
        let outline = match &study.shape {
            PanelShape::Rectangle { width, height } => {
                let (w, h) = (width.value.si(), height.value.si());
                vec![[0.0, 0.0], [w, 0.0], [w, h], [0.0, h]]
            }
            PanelShape::Polygon(corners) => corners.iter().map(place).collect(),
        };
        let known = !matches!(
            &study.stiffness,
            PanelStiffness::Outright { .. } | PanelStiffness::Plate { yield_stress: None, .. }
        );
        let panel = Panel {
            outline,
            edges: study.edges.iter().map(|edge| hold(*edge)).collect(),
            section: section(&study.stiffness, layers).map_err(|error| fault(error, "panel_study.stiffness"))?,
            regions: Vec::new(),
            beds: Vec::new(),
            lines: study
                .lines
                .iter()
                .map(|line| Line {
                    from: place(&line.from),
                    to: place(&line.to),
                    kind: match line.does {
                        LineDoes::Holds => LineKind::Supported,
                        LineDoes::Clamps => LineKind::Clamped,
                    },
                })
                .collect(),
        };
        let loads: Vec<Load> = study.loads.iter().map(load).collect();
        let asked = study.accuracy.as_ref().map_or(ACCURACY, |accuracy| accuracy.value.si());
        let accuracy = Accuracy { relative: asked, fields: FIELDS, most_unknowns: MOST_UNKNOWNS };
        let solution = panel.solve(&loads, accuracy).map_err(|error| fault(error, "panel_study"))?;
        let weakest = solution.weakest.filter(|_| known).map(|worst| (worst.at, worst.stress));
        let moments = [0, 1, 2].map(|k| {
            solution
                .forces
                .iter()
                .max_by(|a, b| a.moment[k].abs().total_cmp(&b.moment[k].abs()))
                .map_or((0.0, [0.0; 2]), |force| (force.moment[k], solution.mesh.nodes[force.node as usize]))
        });
        Ok(PanelAnswer { panel, solution, asked, weakest, moments })
    }

    /// Its figures.
    fn tables(&self) -> Vec<Table> {
        let solution = &self.solution;
        let row = |what: &str, value: Measure, known: &str, at: Point| {
            vec![
                Text::from(what),
                Text::from(value),
                Text::from(known),
                Text::from(length(at[0])),
                Text::from(length(at[1])),
            ]
        };
        let known = known_to(solution.error);
        let mut rows =
            vec![row("largest deflection", digits(length(solution.largest_deflection)), &known, solution.largest_at)];
        for ((what, (value, at)), error) in [
            "moment of a unit of width, bending across",
            "moment of a unit of width, bending up",
            "moment of a unit of width, twisting",
        ]
        .into_iter()
        .zip(self.moments)
        .zip(solution.moment_errors)
        {
            rows.push(row(what, digits(force(value)), &known_to(error), at));
        }
        if let Some((at, stress)) = &self.weakest {
            for (what, value) in [
                ("stress across, at the weak place", stress.plane[0]),
                ("stress up", stress.plane[1]),
                ("shear in the plane", stress.plane[2]),
                ("shear through the thickness, across", stress.through[0]),
                ("shear through the thickness, up", stress.through[1]),
            ] {
                rows.push(row(what, Measure::of(Pressure::from_si(value)), "", *at));
            }
            let used = Measure::of(Ratio::from_si(stress.utilisation));
            rows.push(row("stress over strength", used, "", *at));
        }
        let mut held: Vec<Vec<Text>> = solution
            .reactions
            .iter()
            .map(|reaction| {
                let name = match reaction.part {
                    SupportPart::Edge(i) => say!("edge {}", i),
                    SupportPart::Line(i) => say!("line {}", i),
                    SupportPart::Bed(i) => say!("bed {}", i),
                };
                resultant(name, reaction.push)
            })
            .collect();
        let sum = Resultant::total(solution.reactions.iter().map(|reaction| reaction.push));
        held.push(resultant(Text::from("all supports"), sum));
        held.push(resultant(Text::from("all loads"), solution.load));
        let meshes = solution
            .levels
            .iter()
            .map(|level| {
                vec![say!("{}", level.nodes), say!("{}", level.unknowns), Text::from(digits(length(level.deflection)))]
            })
            .collect();
        vec![
            Table::new("largest figures", &["", "value", "known to", "across", "up"], rows),
            Table::new(
                "what holds it, edges and lines counted from 0",
                &["", "forward", "about across", "about up"],
                held,
            ),
            Table::new("meshes", &["nodes", "unknowns", "deflection"], meshes),
        ]
    }

    /// Which solver, and how well.
    /// How it was solved, and how closely.
    pub fn remark(&self) -> Text {
        let Solution { error, field_error, ref levels, .. } = self.solution;
        let unknowns = levels.last().map_or(0, |level| level.unknowns);
        let solver = say!("Reissner–Mindlin plate, quadratic triangles, {} unknowns, sparse Cholesky; ", unknowns);
        let [reached, asked] = [error, self.asked].map(known_to);
        let told = solver.then(if error <= self.asked {
            say!("largest deflection to {} ({} asked)", reached, asked)
        } else {
            say!("{} was asked of the largest deflection, the solver reached {}", asked, reached)
        });
        if field_error <= FIELDS {
            return told;
        }
        let [reached, asked] = [field_error, FIELDS].map(known_to);
        told.then(say!(
            "; {} was asked of moments and shear over the whole panel, the solver reached {}",
            asked,
            reached
        ))
    }

    /// As an answer to the question.
    pub(super) fn answered(&self) -> Answered {
        let section = &self.panel.section;
        let mut sheet = Sheet::default();
        write_stiffness(&mut sheet, section);
        let mut notes = vec![self.remark()];
        let [across, up, twist] = self.moments.map(|(value, _)| value);
        let metres = |key, meaning, value| si(key, meaning, Length::from_si(value));
        let moment = |key, meaning, value| si(key, meaning, Force::from_si(value));
        let mut figures = vec![
            metres("deflection_m", "largest deflection, forward positive", self.solution.largest_deflection),
            moment("moment_across_n", "greatest moment of a unit of width, bending across", across),
            moment("moment_up_n", "greatest moment of a unit of width, bending up", up),
            moment("moment_twist_n", "greatest moment of a unit of width, twisting", twist),
        ];
        if let Some((_, stress)) = &self.weakest {
            let used = Ratio::from_si(stress.utilisation);
            let used = sheet.given("u", "stress over strength at the weak place", used, "the largest figures");
            let over = sheet.set("f", "strength over stress", number(1.0) / used);
            figures.push(factor("strength_over_stress", "strength over stress at the weak place", over.value().si()));
            notes.push(Text::from("Beside a point load, a kink or a held corner the stress grows with the mesh: a plate's theory knows no end of it there."));
        }
        let mut tables: Vec<Table> = section.layup.iter().flat_map(|layup| layers(&[], layup)).collect();
        tables.push(stiffness("stiffness of a unit of width", &section.stiffness));
        tables.extend(self.tables());
        Answered {
            name: "panel_study",
            title: "the panel asked about",
            figures,
            in_full: self.weakest.is_some(),
            notes,
            source: "Reissner–Mindlin plate solved by finite elements",
            tables,
            sheet,
        }
    }
}

/// A figure as an answer tells it.
fn digits(figure: Measure) -> Measure {
    Measure { style: Style::Digits, ..figure }
}

/// Least error that is told, as a part: what is left of the digits after the equations are solved is not known better.
const LEAST_TOLD: f64 = 1e-6;

/// An error, as a part, in percent with two digits, rounded up: so it is never told as less than it is, nor as nothing.
fn known_to(part: f64) -> String {
    // An estimate as large as the figure itself says nothing of it.
    if part.is_nan() || part >= 1.0 {
        return "not known".to_owned();
    }
    let percent = 100.0 * part.max(LEAST_TOLD);
    let decimals = 1 - percent.log10().floor() as i32;
    let scale = 10_f64.powi(decimals);
    // What is a whole number of digits but for rounding is not rounded up.
    let up = (percent * scale - ROUNDING).ceil() / scale;
    let digits = format!("{up:.*}", decimals.max(0) as usize);
    let digits = if digits.contains('.') { digits.trim_end_matches('0').trim_end_matches('.') } else { &digits };
    format!("{digits} %")
}

/// Parts of the last digit told that are rounding.
const ROUNDING: f64 = 1e-6;

pub(super) fn place(at: &PanelPlace) -> Point {
    [at.across.value.si(), at.up.value.si()]
}

fn hold(edge: EdgeHold) -> EdgeSupport {
    match edge {
        EdgeHold::Free => EdgeSupport::Free,
        EdgeHold::Simple => EdgeSupport::Simple,
        EdgeHold::Clamped => EdgeSupport::Clamped,
    }
}

fn section(stiffness: &PanelStiffness, layers: &[Layer]) -> Result<Section, PanelError> {
    match stiffness {
        PanelStiffness::Plate { modulus, poisson, thickness, yield_stress } => {
            let unbreakable = Pressure::from_si(UNBREAKABLE);
            let strength =
                Strength::VonMises { yield_stress: yield_stress.as_ref().map_or(unbreakable, |stress| stress.value) };
            let material = Material::isotropic(modulus.value, poisson.value.si(), strength);
            Section::layup(Layup::new(vec![Ply { material, thickness: thickness.value }])?)
        }
        PanelStiffness::Layers(_) => {
            let plies = layers
                .iter()
                .map(|layer| Ply {
                    material: ply_material(&layer.material.spec, layer.thickness),
                    thickness: layer.thickness,
                })
                .collect();
            Section::layup(Layup::new(plies)?)
        }
        PanelStiffness::Outright { bending_across, bending_up, coupling, twisting, shear_across, shear_up } => {
            Ok(Section::stiffness(PlateStiffness {
                d11: bending_across.value.si(),
                d12: coupling.value.si(),
                d22: bending_up.value.si(),
                d66: twisting.value.si(),
                s1: shear_across.value.si(),
                s2: shear_up.value.si(),
            }))
        }
    }
}

fn load(load: &PanelLoad) -> Load {
    match load {
        PanelLoad::Pressure(pressure) => Load::Pressure(pressure.value.si()),
        PanelLoad::Patch { across, up, width, height, force } => Load::Patch {
            area: Rect {
                centre: [across.value.si(), up.value.si()],
                width: width.value.si(),
                height: height.value.si(),
            },
            force: force.value.si(),
        },
        PanelLoad::Point { across, up, force } => {
            Load::Point { at: [across.value.si(), up.value.si()], force: force.value.si() }
        }
    }
}

/// The kernel's error at the entry that it is about.
fn fault(error: PanelError, otherwise: &str) -> Slip {
    let (path, help) = match &error {
        PanelError::Outline { .. } | PanelError::OutlineCrosses { .. } | PanelError::OutlineDegenerate { .. } => {
            ("panel_study.shape".to_owned(), "walk round the panel once, corner by corner; counting starts at 0")
        }
        PanelError::NoSupport | PanelError::Mechanism => {
            ("panel_study.edges".to_owned(), "hold an edge (simple or clamped), or give lines that hold it")
        }
        PanelError::LoadOutside { index, .. } => {
            (format!("panel_study.loads[{index}]"), "all of a patch must lie on the panel")
        }
        PanelError::LineOutside { index, .. } => {
            (format!("panel_study.lines[{index}]"), "all of a line must lie on the panel")
        }
        PanelError::NoPlies | PanelError::StiffnessIndefinite => {
            ("panel_study.stiffness".to_owned(), "check moduli, Poisson's ratio and thickness")
        }
        _ => (otherwise.to_owned(), ""),
    };
    Slip { path, message: error.to_string(), help: help.to_owned() }
}
