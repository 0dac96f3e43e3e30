//! What lies on the transom: the face of each engine or bracket with its bolts, and the loads on it.

mod bolting;
mod figures;
mod loads;

use uom::si::f64::{Length, Mass};

use super::board::Board;
use super::driving::Driving;
use crate::catalog::{BoltGrade, BoltSize, Entry};
use crate::physics::strength::bolts::{Bolt, Foot, GroupForces};
use crate::physics::strength::loads::{Acting, FaceLoad};
use crate::quantity::{Dimensioned, Measure, Moment, Text, say};
use crate::reading::Absent;
use crate::rig::{Bolts, Engine, Group, ItemOfOutfit, Missing, Outfit, Rig};
use crate::working::Sheet;

use figures::{Figures, setback};
use loads::Driven;

pub(super) use loads::{LoadCase, cases, heavier};

/// A face on the transom with its bolts.
#[derive(Clone, Debug)]
pub struct Footing {
    /// What it is of: an engine, or a bracket.
    pub name: String,
    /// Whether it is a bracket's.
    pub on_bracket: bool,
    /// Which group of its outfit hangs on it.
    pub group: usize,
    /// Its bolts, m and m².
    pub bolts: Vec<Bolt>,
    /// Its edges, m.
    pub face: Foot,
    /// The middle of its bolts, to which loads are reduced, m.
    pub middle: [f64; 2],
    /// The thread.
    pub size: Entry<BoltSize>,
    /// The grade.
    pub grade: Entry<BoltGrade>,
    /// What the job says of its bolts.
    pub given: Bolts,
    /// Whether it is a small engine's that nothing says is bolted: its clamp screws hold it.
    pub clamped: bool,
    /// To what its mounting sheet lets its bolts be tightened.
    pub sheet_torque: Option<Moment>,
    /// The engines on it, weights and places; the bracket's own weight.
    pub hung: Vec<Hung>,
    /// Where the places of its bolts are from, as a legend says it.
    pub bolts_from: &'static str,
    /// Where the places of its edges are from, likewise.
    pub face_from: &'static str,
    /// What acts on it in every case, about `middle`, each by its name.
    pub acting: Vec<Vec<(String, Acting)>>,
    /// Loads about `middle`, a case an element: square to the face (forward), to port, up along it.
    pub loads: Vec<FaceLoad>,
    /// What they do to the bolts.
    pub forces: Vec<GroupForces>,
    /// The same with no more of the face than its [`Footing::arms`]: so the panel takes them.
    pub pressed: Vec<GroupForces>,
    /// How the loads came about.
    pub sheet: Sheet,
}

/// A weight on a face.
#[derive(Clone, Debug)]
pub struct Hung {
    /// The engine, what hangs beside it, or the bracket.
    pub name: String,
    /// What it weighs; of what is spread over several engines, this one's part.
    pub mass: Mass,
    /// Its centre aft of the transom's face, level, m.
    pub aft: f64,
    /// Whether it is the bracket itself.
    pub is_bracket: bool,
}

/// Every face of an outfit with its loads.
///
/// # Errors
/// What is missing, or what cannot be.
pub(super) fn footings(
    rig: &Rig,
    outfit: &Outfit,
    board: &Board,
    driving: Driving,
    assumed: &mut Vec<Text>,
) -> Result<Vec<Footing>, Absent> {
    let mut missing = Vec::new();
    for (group, engine) in outfit.engines() {
        let asked = [
            engine.weight.ask().err(),
            engine.power.ask().err(),
            engine.rest_to_plate.ask().err(),
            group.setback().ask().err(),
            group.drop().ask().err(),
        ];
        Missing::gather(&mut missing, asked.into_iter().flatten());
    }
    if !missing.is_empty() {
        return Err(Absent::Waits(missing));
    }
    let mut all = Vec::new();
    let share = share(outfit);
    let beside = beside(outfit);
    let driven = Driven::of(outfit, board, driving);
    for (index, group) in outfit.groups.iter().enumerate() {
        let faces: Vec<Vec<&Engine>> = match &group.bracket {
            Some(_) => vec![group.engines.iter().collect()],
            None => group.engines.iter().map(|engine| vec![engine]).collect(),
        };
        for engines in faces {
            let mut footing = bolting::bare(rig, index, group, &engines, board, assumed)?;
            let engines: Vec<Figures> =
                engines.into_iter().map(|engine| Figures::of(group, engine, board, share)).collect();
            footing.hung = hung(group, &engines, &beside, board, assumed);
            assumed.extend(engines.iter().filter_map(|engine| engine.propeller(driving.speed)));
            driven.load(&mut footing, group, &engines)?;
            all.push(footing);
        }
    }
    Ok(all)
}

/// What else hangs there, spread over the main engines.
fn share(outfit: &Outfit) -> Mass {
    let sum = items(outfit)
        .filter_map(|entry| entry.weight.reading())
        .fold(Mass::default(), |sum, weight| sum + weight.value);
    sum / outfit.mains().len().max(1) as f64
}

/// What it is called: a main engine's share of it.
fn beside(outfit: &Outfit) -> String {
    let names: Vec<&str> = items(outfit).map(|entry| entry.item.what.as_str()).collect();
    match outfit.mains().len() {
        0 | 1 => names.join(", "),
        mains => format!("{}, one part in {mains}", names.join(", ")),
    }
}

fn items(outfit: &Outfit) -> impl Iterator<Item = &ItemOfOutfit> {
    outfit.items.iter().filter(|entry| entry.item.on_transom)
}

/// The weights on a face; says what was taken for granted of them.
fn hung(group: &Group, engines: &[Figures], beside: &str, board: &Board, assumed: &mut Vec<Text>) -> Vec<Hung> {
    let mut all = Vec::new();
    for figures in engines {
        let label = figures.engine.label.as_str();
        all.push(Hung {
            name: label.to_owned(),
            mass: figures.mass - figures.beside,
            aft: figures.weight_aft().si(),
            is_bracket: false,
        });
        if figures.beside > Mass::default() {
            all.push(Hung {
                name: beside.to_owned(),
                mass: figures.beside,
                aft: figures.weight_aft().si(),
                is_bracket: false,
            });
        }
        if !figures.usual.is_empty() {
            assumed.push(say!(
                "Of the {} usual figures are taken for {}: none is given.",
                label,
                figures.usual.join(", ")
            ));
        }
        if figures.engine.holes_up.reading().is_none() && !group.is_lifted() {
            assumed.push(say!("The {} is taken to hang in its lowest hole for its loads.", label));
        }
    }
    if let Some(bracket) = &group.bracket {
        match bracket.weight.reading() {
            Some(weight) => all.push(Hung {
                name: bracket.name.clone(),
                mass: weight.value,
                aft: 0.5 * board.level(setback(group)).si(),
                is_bracket: true,
            }),
            None => {
                assumed.push(say!("`{}` is reckoned without its own weight: it is not given.", bracket.name.as_str()))
            }
        }
    }
    all
}

impl Footing {
    /// The part of the face that presses: from arm to arm at the outer bolts. What reaches farther presses less and nearer to the
    /// sides, and so a wider face never harms.
    pub fn arms(&self) -> Foot {
        let [starboard, port] = bolting::arms(self.bolts.iter().map(|bolt| bolt.y));
        Foot { starboard: self.face.starboard.max(starboard), port: self.face.port.min(port), ..self.face }
    }

    /// Which bolt it is, in words.
    pub fn bolt(&self, index: usize) -> Text {
        let Some(bolt) = self.bolts.get(index) else {
            return Text::default();
        };
        let row = if bolt.z >= self.middle[1] { "upper" } else { "lower" };
        let off = Length::from_si(bolt.y.abs());
        if off.si() < 1e-3 {
            return say!("{} bolt on the centreline", row);
        }
        say!("{} bolt {} to {}", row, Measure::tape(off), if bolt.y > 0.0 { "port" } else { "starboard" })
    }
}
