//! A panel and a bolt group that a study gives outright.

use uom::si::f64::{Area, Force, Pressure, Ratio};

use super::board::ply_material;
use super::parts::table;
use super::show::{force, length, moment};
use crate::case::Case;
use crate::job::{
    BoltStudy, EdgeHold, LineDoes, PanelLoad, PanelPlace, PanelShape, PanelStiffness, PanelStudy,
};
use crate::physics::strength::bolts::{
    Bolt, Foot, GroupError, GroupForces, GroupLoad, bolt_forces, proof_load, shear_capacity,
};
use crate::physics::strength::panel::{
    Accuracy, EdgeSupport, Layup, Line, LineKind, Load, Material, Panel, PanelError,
    PlateStiffness, Ply, PlyStress, Point, Rect, Resultant, Section, Solution, Strength,
    SupportPart,
};
use crate::quantity::{Dimensioned, Measure, Moment, Reading, Text, say};
use crate::rig::{Layer, Rig};
use crate::working::{Part, Sheet, Table, Term};

/// What a study asks cannot be.
#[derive(Clone, Debug, PartialEq)]
pub struct StudyFault {
    /// The entry of the job.
    pub path: String,
    /// What is wrong.
    pub message: String,
    /// What would do.
    pub help: String,
}

/// A solved panel.
#[derive(Clone, Debug)]
pub struct PanelAnswer {
    pub panel: Panel,
    pub solution: Solution,
    /// What was asked of the error.
    pub asked: f64,
    /// The place nearest to its strength, where strengths are known.
    pub weakest: Option<(Point, PlyStress)>,
    /// Greatest moments across, up and twisting (N·m per m), with their places.
    pub moments: [(f64, Point); 3],
}

/// A bolt group under its load.
#[derive(Clone, Debug)]
pub struct BoltAnswer {
    pub bolts: Vec<Bolt>,
    pub forces: GroupForces,
    /// Tension and shear that a bolt of the grade bears, N.
    pub capacity: Option<[f64; 2]>,
    /// How the capacities came about.
    pub sheet: Sheet,
}

/// Error of the largest deflection where none is asked.
const ACCURACY: f64 = 0.01;
/// Most unknowns of a study: a second's work.
const MOST_UNKNOWNS: usize = 60_000;
/// Strength so great that nothing is held against it, Pa.
const UNBREAKABLE: f64 = 1e30;

impl<'a> Case<'a> {
    /// The answer to a study of a panel, where the job holds one.
    pub fn panel_study(&self) -> Option<Result<&PanelAnswer, &StudyFault>> {
        let answer = self.panel_study.get_or_init(|| {
            let (study, layers) = self.rig.structure.panel_study.as_ref()?;
            Some(panel(study, layers))
        });
        answer.as_ref().map(Result::as_ref)
    }

    /// The answer to a study of a bolt group, where the job holds one.
    pub fn bolt_study(&self) -> Option<Result<BoltAnswer, StudyFault>> {
        bolts(self.rig).transpose()
    }

    /// What the studies of the job ask and cannot be answered.
    pub fn study_faults(&self) -> Vec<StudyFault> {
        let panel = self.panel_study().and_then(Result::err).cloned();
        let bolts = self.bolt_study().and_then(Result::err);
        panel.into_iter().chain(bolts).collect()
    }
}

fn panel(study: &PanelStudy, layers: &[Layer]) -> Result<PanelAnswer, StudyFault> {
    let outline = match &study.shape {
        PanelShape::Rectangle { width, height } => {
            let (w, h) = (width.value.si(), height.value.si());
            vec![[0.0, 0.0], [w, 0.0], [w, h], [0.0, h]]
        }
        PanelShape::Polygon(corners) => corners.iter().map(place).collect(),
    };
    let known = !matches!(
        &study.stiffness,
        PanelStiffness::Outright { .. }
            | PanelStiffness::Plate {
                yield_stress: None,
                ..
            }
    );
    let panel = Panel {
        outline,
        edges: study.edges.iter().map(|edge| hold(*edge)).collect(),
        section: section(&study.stiffness, layers)
            .map_err(|error| fault(error, "panel_study.stiffness"))?,
        regions: Vec::new(),
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
    let asked = study
        .accuracy
        .as_ref()
        .map_or(ACCURACY, |accuracy| accuracy.value.si());
    let accuracy = Accuracy {
        relative: asked,
        fields: Accuracy::default().fields,
        most_unknowns: MOST_UNKNOWNS,
    };
    let solution = panel
        .solve(&loads, accuracy)
        .map_err(|error| fault(error, "panel_study"))?;
    let weakest = solution
        .weakest
        .filter(|_| known)
        .map(|worst| (worst.at, worst.stress));
    let moments = [0, 1, 2].map(|k| {
        solution
            .forces
            .iter()
            .max_by(|a, b| a.moment[k].abs().total_cmp(&b.moment[k].abs()))
            .map_or((0.0, [0.0; 2]), |force| {
                (force.moment[k], solution.mesh.nodes[force.node as usize])
            })
    });
    Ok(PanelAnswer {
        panel,
        solution,
        asked,
        weakest,
        moments,
    })
}

fn place(at: &PanelPlace) -> Point {
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
        PanelStiffness::Plate {
            modulus,
            poisson,
            thickness,
            yield_stress,
        } => {
            let unbreakable = uom::si::f64::Pressure::from_si(UNBREAKABLE);
            let strength = Strength::VonMises {
                yield_stress: yield_stress
                    .as_ref()
                    .map_or(unbreakable, |stress| stress.value),
            };
            let material = Material::isotropic(modulus.value, poisson.value.si(), strength);
            Section::layup(Layup::new(vec![Ply {
                material,
                thickness: thickness.value,
            }])?)
        }
        PanelStiffness::Layers(_) => {
            let plies = layers
                .iter()
                .map(|layer| Ply {
                    material: ply_material(&layer.material.spec),
                    thickness: layer.thickness,
                })
                .collect();
            Section::layup(Layup::new(plies)?)
        }
        PanelStiffness::Outright {
            bending_across,
            bending_up,
            coupling,
            twisting,
            shear_across,
            shear_up,
        } => Ok(Section::stiffness(PlateStiffness {
            d11: bending_across.value.si(),
            d12: coupling.value.si(),
            d22: bending_up.value.si(),
            d66: twisting.value.si(),
            s1: shear_across.value.si(),
            s2: shear_up.value.si(),
        })),
    }
}

fn load(load: &PanelLoad) -> Load {
    match load {
        PanelLoad::Pressure(pressure) => Load::Pressure(pressure.value.si()),
        PanelLoad::Patch {
            across,
            up,
            width,
            height,
            force,
        } => Load::Patch {
            area: Rect {
                centre: [across.value.si(), up.value.si()],
                width: width.value.si(),
                height: height.value.si(),
            },
            force: force.value.si(),
        },
        PanelLoad::Point { across, up, force } => Load::Point {
            at: [across.value.si(), up.value.si()],
            force: force.value.si(),
        },
    }
}

/// The kernel's error at the entry that it is about.
fn fault(error: PanelError, otherwise: &str) -> StudyFault {
    let (path, help) = match &error {
        PanelError::Outline { .. }
        | PanelError::OutlineCrosses { .. }
        | PanelError::OutlineDegenerate { .. } => (
            "panel_study.shape".to_owned(),
            "walk round the panel once, corner by corner; counting starts at 0",
        ),
        PanelError::NoSupport | PanelError::Mechanism => (
            "panel_study.edges".to_owned(),
            "hold an edge (simple or clamped), or give lines that hold it",
        ),
        PanelError::LoadOutside { index, .. } => (
            format!("panel_study.loads[{index}]"),
            "all of a patch must lie on the panel",
        ),
        PanelError::LineOutside { index, .. } => (
            format!("panel_study.lines[{index}]"),
            "all of a line must lie on the panel",
        ),
        PanelError::NoPlies | PanelError::StiffnessIndefinite => (
            "panel_study.stiffness".to_owned(),
            "check moduli, Poisson's ratio and thickness",
        ),
        _ => (otherwise.to_owned(), ""),
    };
    StudyFault {
        path,
        message: error.to_string(),
        help: help.to_owned(),
    }
}

fn si<Q: Dimensioned>(reading: Option<&Reading<Q>>) -> f64 {
    reading.map_or(0.0, |reading| reading.value.si())
}

fn bolts(rig: &Rig) -> Result<Option<BoltAnswer>, StudyFault> {
    let Some((study, size, grade)) = &rig.structure.bolt_study else {
        return Ok(None);
    };
    let area: Area = size.spec.stress_area.value;
    let bolts: Vec<Bolt> = study
        .bolts
        .iter()
        .map(|bolt| Bolt {
            y: bolt.across.value.si(),
            z: bolt.up.value.si(),
            area: area.si(),
        })
        .collect();
    let foot = Foot {
        bottom: study.face.bottom.value.si(),
        top: study.face.top.value.si(),
        starboard: study.face.starboard.value.si(),
        port: study.face.port.value.si(),
    };
    let forces = bolt_forces(&bolts, foot, group_load(study)).map_err(bolt_fault)?;
    let mut sheet = Sheet::default();
    let capacity = grade.as_ref().map(|grade| {
        let spec = &grade.spec;
        let proof = spec
            .proof
            .as_ref()
            .map_or(spec.yield_strength.value, |proof| proof.value);
        let area = Term::new("As", area);
        let tension: Force = proof_load(&mut sheet, proof, &area).value();
        let shear: Force = shear_capacity(&mut sheet, spec.tensile.value, &area).value();
        [tension.si(), shear.si()]
    });
    Ok(Some(BoltAnswer {
        bolts,
        forces,
        capacity,
        sheet,
    }))
}

fn group_load(study: &BoltStudy) -> GroupLoad {
    GroupLoad {
        at: place(&study.at),
        push: si(study.push.as_ref()),
        shear: [si(study.across.as_ref()), si(study.up.as_ref())],
        twist: si::<Moment>(study.twist.as_ref()),
        pitch: si::<Moment>(study.pitch.as_ref()),
        yaw: si::<Moment>(study.yaw.as_ref()),
    }
}

fn bolt_fault(error: GroupError) -> StudyFault {
    let path = match error {
        GroupError::OutsideFoot { index } | GroupError::NoArea { index } => {
            format!("bolt_study.bolts[{index}]")
        }
        GroupError::NoBolts | GroupError::CannotTwist | GroupError::NoArm => {
            "bolt_study.bolts".to_owned()
        }
        GroupError::NotFinite { .. } => "bolt_study".to_owned(),
    };
    StudyFault {
        path,
        message: error.to_string(),
        help: "check the bolts against the face and the load".to_owned(),
    }
}

/// The working of a job's studies.
pub(super) fn parts(case: &Case) -> Vec<Part> {
    let panel = case.panel_study().and_then(Result::ok).map(panel_part);
    let bolts = case
        .bolt_study()
        .and_then(Result::ok)
        .map(|answer| bolt_part(&answer));
    panel.into_iter().chain(bolts).collect()
}

impl PanelAnswer {
    /// Its figures.
    pub fn tables(&self) -> Vec<Table> {
        let solution = &self.solution;
        let row = |what: &str, value: Measure, at: Point| {
            vec![
                Text::from(what),
                Text::from(value),
                Text::from(length(at[0])),
                Text::from(length(at[1])),
            ]
        };
        let mut rows = vec![row(
            "largest deflection",
            length(solution.largest_deflection),
            solution.largest_at,
        )];
        for (what, (value, at)) in [
            "moment of a unit of width, bending across",
            "moment of a unit of width, bending up",
            "moment of a unit of width, twisting",
        ]
        .into_iter()
        .zip(self.moments)
        {
            rows.push(row(what, force(value), at));
        }
        if let Some((at, stress)) = &self.weakest {
            for (what, value) in [
                ("stress across, at the weak place", stress.plane[0]),
                ("stress up", stress.plane[1]),
                ("shear in the plane", stress.plane[2]),
                ("shear through the thickness, across", stress.through[0]),
                ("shear through the thickness, up", stress.through[1]),
            ] {
                rows.push(row(what, Measure::of(Pressure::from_si(value)), *at));
            }
            rows.push(row(
                "stress over strength",
                Measure::of(Ratio::from_si(stress.utilisation)),
                *at,
            ));
        }
        let mut held: Vec<Vec<Text>> = solution
            .reactions
            .iter()
            .map(|reaction| {
                let name = match reaction.part {
                    SupportPart::Edge(i) => say!("edge {}", i),
                    SupportPart::Line(i) => say!("line {}", i),
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
                vec![
                    say!("{}", level.nodes),
                    say!("{}", level.unknowns),
                    Text::from(length(level.deflection)),
                ]
            })
            .collect();
        vec![
            table("largest figures", &["", "value", "across", "up"], rows),
            table(
                "what holds it, edges and lines counted from 0",
                &["", "forward", "about across", "about up"],
                held,
            ),
            table("meshes", &["nodes", "unknowns", "deflection"], meshes),
        ]
    }

    /// Which solver, and how well.
    pub fn remark(&self) -> Text {
        let percent = |part: f64| Measure::of(Ratio::from_si((1e4 * part).round() / 100.0));
        let unknowns = self
            .solution
            .levels
            .last()
            .map_or(0, |level| level.unknowns);
        say!(
            "Reissner–Mindlin plate, quadratic triangles, {} unknowns, sparse Cholesky; largest deflection to {} % ({} % asked)",
            unknowns,
            percent(self.solution.error),
            percent(self.asked)
        )
    }
}

fn resultant(name: Text, push: Resultant) -> Vec<Text> {
    vec![
        name,
        Text::from(force(push.force)),
        Text::from(moment(push.moment_y)),
        Text::from(moment(push.moment_z)),
    ]
}

fn panel_part(answer: &PanelAnswer) -> Part {
    let mut sheet = Sheet::default();
    sheet.remark(answer.remark());
    Part {
        title: "the panel asked about".to_owned(),
        tables: answer.tables(),
        sheet,
    }
}

impl BoltAnswer {
    /// Bolt by bolt.
    pub fn table(&self) -> Table {
        let rows = self
            .bolts
            .iter()
            .zip(&self.forces.bolts)
            .map(|(bolt, forces)| {
                let mut row = vec![Text::from(length(bolt.y)), Text::from(length(bolt.z))];
                row.extend(
                    forces
                        .primary
                        .iter()
                        .chain(&forces.secondary)
                        .map(|f| Text::from(force(*f))),
                );
                row.extend([
                    Text::from(force(forces.shear)),
                    Text::from(force(forces.tension)),
                ]);
                row
            })
            .collect();
        table(
            "bolt by bolt",
            &[
                "across",
                "up",
                "primary across",
                "primary up",
                "secondary across",
                "secondary up",
                "shear",
                "tension",
            ],
            rows,
        )
    }

    /// Greatest tension and greatest shear, N.
    pub fn greatest(&self) -> [f64; 2] {
        let most = |value: fn(&crate::physics::strength::bolts::BoltForces) -> f64| {
            self.forces.bolts.iter().map(value).fold(0.0, f64::max)
        };
        [most(|bolt| bolt.tension), most(|bolt| bolt.shear)]
    }
}

fn bolt_part(answer: &BoltAnswer) -> Part {
    let mut sheet = answer.sheet.clone();
    let [across, up] = answer.forces.centroid;
    sheet.remark(say!(
        "centre of the bolts: {} across, {} up",
        length(across),
        length(up)
    ));
    sheet.remark(say!(
        "edge pressed on: {} at {} up",
        force(answer.forces.edge_pitch),
        length(answer.forces.pivot_z)
    ));
    Part {
        title: "the bolt group asked about".to_owned(),
        tables: vec![answer.table()],
        sheet,
    }
}
