//! What lies on the transom: the face of each engine or bracket with its bolts, and the loads on it.

use uom::si::f64::{Angle, Length, Mass, Ratio, Velocity};

use super::NoStrength;
use super::board::Board;
use crate::catalog::{BoltGrade, BoltSize, Entry};
use crate::job::{BracketKind, Face};
use crate::physics::fit;
use crate::physics::strength::bolts::{Bolt, Foot, GroupForces, bolt_forces};
use crate::physics::strength::loads::{
    self, Case as Kind, DISC_EFFICIENCY, FaceLoad, OVERALL_EFFICIENCY, TRAILER_ACCELERATION,
};
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::rig::{Bolts, Engine, Group, Missing, Outfit, Rig};
use crate::working::Sheet;

/// A face on the transom with its bolts.
#[derive(Clone, Debug)]
pub struct Footing {
    /// What it is of: an engine, or a bracket.
    pub name: String,
    /// Whether it is a bracket's.
    pub on_bracket: bool,
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
    /// The engines on it, weights and places; the bracket's own weight.
    pub hung: Vec<Hung>,
    /// Loads about `middle`, a case an element.
    pub loads: Vec<FaceLoad>,
    /// What they do to the bolts.
    pub forces: Vec<GroupForces>,
    /// How the loads came about.
    pub sheet: Sheet,
}

/// A weight on a face.
#[derive(Clone, Debug)]
pub struct Hung {
    pub name: String,
    pub mass: Mass,
    /// Aft of the transom's face, m.
    pub aft: f64,
}

/// A load case of an outfit.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadCase {
    /// What happens.
    pub kind: Kind,
    /// Whether one engine drives alone.
    pub alone: bool,
}

impl LoadCase {
    /// Its name.
    pub fn name(&self) -> &'static str {
        if self.alone {
            "one engine alone, static full thrust"
        } else {
            self.kind.name()
        }
    }
}

/// How she is driven, in the kernel's terms.
#[derive(Clone, Copy, Debug)]
pub struct Driving {
    pub speed: Velocity,
    /// Slamming on top of gravity, in g.
    pub slamming: f64,
}

/// What the job leaves open of an engine. Common practice, no source, for all of them.
const CENTRE_AFT_IN: f64 = 12.0;
const CENTRE_ABOVE_IN: f64 = 5.0;
const PLATE_TO_SHAFT_IN: f64 = 8.0;
const PROPELLER_IN: f64 = 14.0;
const STEERING_DEG: f64 = 30.0;
const TILT_DEG: f64 = 70.0;
/// Propeller aft of the mounting face over the engine's centre aft of it. Common practice, no source.
const PROPELLER_OF_CENTRE: f64 = 1.5;
/// Step between hole rows. Source: trade association bolt pattern in general use.
const HOLE_STEP_IN: f64 = 0.75;
/// Height of an engine's face below the transom's top: its heel. Common practice, no source.
const HEEL_IN: f64 = 12.0;
/// Face beyond the outermost bolts. Common practice, no source.
const BEYOND_BOLTS_IN: f64 = 1.0;
/// Width and height of a box or frame bracket's face for one engine, and what each further engine adds to the
/// width; bolts in two rows, so many in each row for one engine and more for each further one. Common practice, no source.
const BRACKET_WIDTH_IN: f64 = 18.0;
const BRACKET_HEIGHT_IN: f64 = 16.0;
const BRACKET_ROW: usize = 3;
/// Bolts inside the edge of a bracket's face. Common practice, no source.
const BRACKET_EDGE_IN: f64 = 2.0;
/// Face and bolts of a small auxiliary bracket. Common practice, no source.
const AUXILIARY_FACE_IN: [f64; 2] = [8.0, 10.0];
const AUXILIARY_SIZE: &str = "3/8-16";
/// Size and grade where none is given: the trade association's pattern is drilled for 1/2 in.
const SIZE: &str = "1/2-13";
const GRADE: &str = "A4-70";
/// Standard gravity, m/s². Source: ISO 80000-3.
const GRAVITY: f64 = 9.80665;
/// Wood between a raised heel and the bottom's edge, m: so little that it does not matter, enough for a mesh.
const CLEAR: f64 = 0.005;

/// The cases of an outfit.
pub fn cases(outfit: &Outfit) -> Vec<LoadCase> {
    let mut cases: Vec<LoadCase> = Kind::ALL
        .into_iter()
        .map(|kind| LoadCase { kind, alone: false })
        .collect();
    if outfit.mains().len() > 1 {
        cases.push(LoadCase {
            kind: Kind::StaticThrust,
            alone: true,
        });
    }
    cases
}

/// Every face of an outfit with its loads.
///
/// # Errors
/// What is missing, or what cannot be.
pub fn footings(
    rig: &Rig,
    outfit: &Outfit,
    board: &Board,
    driving: Driving,
    assumed: &mut Vec<Text>,
) -> Result<Vec<Footing>, NoStrength> {
    let missing: Vec<Missing> = outfit
        .engines()
        .flat_map(|(group, engine)| {
            [
                engine.weight.ask().err(),
                engine.power.ask().err(),
                engine.rest_to_plate.ask().err(),
                group.setback().ask().err(),
                group.drop().ask().err(),
            ]
        })
        .flatten()
        .fold(Vec::new(), |mut all, one| {
            if !all.contains(&one) {
                all.push(one);
            }
            all
        });
    if !missing.is_empty() {
        return Err(NoStrength::Missing(missing));
    }
    let mut all = Vec::new();
    let shared = shared_mass(outfit);
    let alone = outfit.mains().first().map(|engine| engine.label.clone());
    let outfit_cases = cases(outfit);
    for group in &outfit.groups {
        let faces: Vec<Vec<&Engine>> = match &group.bracket {
            Some(_) => vec![group.engines.iter().collect()],
            None => group.engines.iter().map(|engine| vec![engine]).collect(),
        };
        for engines in faces {
            let mut footing = bare(rig, group, &engines, board, assumed)?;
            note(&mut footing, group, &engines, shared, assumed);
            let (loads, sheet) = sum(
                &footing,
                group,
                &engines,
                board,
                driving,
                shared,
                &outfit_cases,
                alone.as_deref(),
            )?;
            footing.loads = loads;
            footing.sheet = sheet;
            footing.forces = footing
                .loads
                .iter()
                .map(|load| {
                    bolt_forces(&footing.bolts, footing.face, load.on_bolts(footing.middle))
                })
                .collect::<Result<_, _>>()
                .map_err(|error| {
                    NoStrength::Unfit(say!(
                        "The bolts of the {}: {}.",
                        footing.name.as_str(),
                        error.to_string()
                    ))
                })?;
            all.push(footing);
        }
    }
    Ok(all)
}

/// What else hangs there, spread over the main engines.
fn shared_mass(outfit: &Outfit) -> Mass {
    let sum = outfit
        .items
        .iter()
        .filter(|entry| entry.item.on_transom)
        .filter_map(|entry| entry.weight.reading())
        .fold(Mass::default(), |sum, weight| sum + weight.value);
    sum / outfit.mains().len().max(1) as f64
}

/// The face and its bolts, without loads.
fn bare(
    rig: &Rig,
    group: &Group,
    engines: &[&Engine],
    board: &Board,
    assumed: &mut Vec<Text>,
) -> Result<Footing, NoStrength> {
    let y = engines.iter().map(|engine| engine.y.si()).sum::<f64>() / engines.len().max(1) as f64;
    let name = match (&group.bracket, engines) {
        (Some(bracket), _) => bracket.name.clone(),
        (None, [engine, ..]) => engine.label.clone(),
        (None, []) => "engine".to_owned(),
    };
    let kind = group.bracket.as_ref().and_then(|bracket| bracket.spec.kind);
    let given = group.bolts.clone();
    let small = kind == Some(BracketKind::Auxiliary);
    let size = pick(
        given.size.clone(),
        &rig.tables.bolt_sizes,
        if small { AUXILIARY_SIZE } else { SIZE },
    );
    let grade = pick(given.grade.clone(), &rig.tables.bolt_grades, GRADE);
    let (Some(size), Some(grade)) = (size, grade) else {
        return Err(NoStrength::Unfit(Text::from(
            "The catalog has no bolt size or grade to reckon with; name both under bolts.",
        )));
    };
    if given.size.is_none() || given.grade.is_none() {
        assumed.push(say!(
            "The {} is taken to be held by {} bolts of {}.",
            name.as_str(),
            size.name.as_str(),
            grade.name.as_str()
        ));
    }
    let drop = group.drop().reading().map_or(0.0, |drop| drop.value.si());
    let places = places(rig, group, kind, y, drop, engines, board, &name, assumed);
    let face = face(
        given.said.face.as_ref(),
        kind,
        y,
        drop,
        engines.len(),
        &places,
        board,
    );
    let area = size.spec.stress_area.value.si();
    let bolts: Vec<Bolt> = places.iter().map(|&[y, z]| Bolt { y, z, area }).collect();
    for bolt in &bolts {
        let on = board.bottom(bolt.y).is_some_and(|bottom| bolt.z > bottom) && bolt.z < board.top;
        let within = bolt.y >= face.starboard
            && bolt.y <= face.port
            && bolt.z >= face.bottom
            && bolt.z <= face.top;
        if !on || !within {
            return Err(NoStrength::Unfit(say!(
                "A bolt of the {} would stand {} off the centreline and {} below the top: outside the transom, or of the face that it holds.",
                name.as_str(),
                Measure::tape(Length::from_si(bolt.y.abs())),
                Measure::tape(Length::from_si(board.top - bolt.z))
            )));
        }
    }
    let count = bolts.len().max(1) as f64;
    let middle = [
        bolts.iter().map(|b| b.y).sum::<f64>() / count,
        bolts.iter().map(|b| b.z).sum::<f64>() / count,
    ];
    Ok(Footing {
        name,
        on_bracket: group.bracket.is_some(),
        bolts,
        face,
        middle,
        size,
        grade,
        given,
        hung: Vec::new(),
        loads: Vec::new(),
        forces: Vec::new(),
        sheet: Sheet::default(),
    })
}

fn pick<T: Clone>(given: Option<Entry<T>>, entries: &[Entry<T>], name: &str) -> Option<Entry<T>> {
    given.or_else(|| {
        entries
            .iter()
            .find(|entry| entry.name == name)
            .or(entries.first())
            .cloned()
    })
}

/// Where the bolts stand, `[y, z]`.
#[expect(
    clippy::too_many_arguments,
    reason = "each is a different thing that decides where bolts stand"
)]
fn places(
    rig: &Rig,
    group: &Group,
    kind: Option<BracketKind>,
    y: f64,
    drop: f64,
    engines: &[&Engine],
    board: &Board,
    name: &str,
    assumed: &mut Vec<Text>,
) -> Vec<[f64; 2]> {
    let own = &group.bolts.said.at;
    if !own.is_empty() {
        let nearest = |at: f64| {
            let mut by_distance: Vec<&Engine> = group.engines.iter().collect();
            by_distance.sort_by(|a, b| (a.y.si() - at).abs().total_cmp(&(b.y.si() - at).abs()));
            by_distance
                .first()
                .is_some_and(|engine| engines.iter().any(|one| one.label == engine.label))
        };
        return own
            .iter()
            .map(|place| [place.at.y().si(), board.top - place.below.value.si()])
            .filter(|place| group.bracket.is_some() || nearest(place[0]))
            .collect();
    }
    if matches!(
        kind,
        None | Some(BracketKind::SetbackPlate | BracketKind::JackPlate)
    ) {
        let lower_by = match rig.transom.upper_holes.reading() {
            Some(upper) if group.bracket.is_none() => {
                upper.value.si() - inches(fit::UPPER_BELOW_TOP_IN).si()
            }
            _ => drop.max(0.0),
        };
        return fit::pattern(Length::from_si(y))
            .iter()
            .map(|hole| [hole.y.si(), board.top - hole.below.si() - lower_by])
            .collect();
    }
    assumed.push(say!(
        "The bolts of the {} are taken to stand in two rows; its template gives their places.",
        name
    ));
    let edge = inches(BRACKET_EDGE_IN).si();
    let (size, row) = match kind {
        Some(BracketKind::Auxiliary) => (AUXILIARY_FACE_IN.map(|side| inches(side).si()), 2),
        _ => (bracket_face(engines.len()), BRACKET_ROW + engines.len() - 1),
    };
    let top = board.top - drop.max(0.0);
    let bottom = (top - size[1]).max(floor_of(board, y, 0.5 * size[0]));
    [top - edge, bottom + edge]
        .into_iter()
        .flat_map(|z| {
            (0..row).map(move |i| {
                let part = i as f64 / (row - 1).max(1) as f64 - 0.5;
                [y + part * (size[0] - 2.0 * edge), z]
            })
        })
        .collect()
}

fn bracket_face(engines: usize) -> [f64; 2] {
    let width = BRACKET_WIDTH_IN * engines.max(1) as f64;
    [inches(width).si(), inches(BRACKET_HEIGHT_IN).si()]
}

/// Lowest a face may reach between `y - half` and `y + half`.
fn floor_of(board: &Board, y: f64, half: f64) -> f64 {
    board.rise * (y.abs() + half) + CLEAR
}

/// The face: as given, or from its kind; cut off at the transom's edges.
fn face(
    given: Option<&Face>,
    kind: Option<BracketKind>,
    y: f64,
    drop: f64,
    engines: usize,
    bolts: &[[f64; 2]],
    board: &Board,
) -> Foot {
    let beyond = inches(BEYOND_BOLTS_IN).si();
    let low = |k: usize| bolts.iter().map(|b| b[k]).fold(f64::INFINITY, f64::min);
    let high = |k: usize| bolts.iter().map(|b| b[k]).fold(f64::NEG_INFINITY, f64::max);
    let (mut starboard, mut port, top, mut bottom) = match given {
        Some(face) => {
            let half = 0.5 * face.width.value.si();
            let top = board.top - face.below.value.si();
            (y - half, y + half, top, top - face.height.value.si())
        }
        None => {
            let (top, height) = match kind {
                None => (board.top, inches(HEEL_IN).si()),
                Some(BracketKind::SetbackPlate | BracketKind::JackPlate) => {
                    (board.top - drop, inches(HEEL_IN).si())
                }
                Some(BracketKind::Auxiliary) => {
                    (board.top - drop, inches(AUXILIARY_FACE_IN[1]).si())
                }
                Some(BracketKind::Box | BracketKind::Frame) => {
                    (board.top - drop, bracket_face(engines)[1])
                }
            };
            let bottom = (top.min(board.top) - height).min(low(1) - beyond);
            (low(0) - beyond, high(0) + beyond, top, bottom)
        }
    };
    starboard = starboard.max(-board.chine[0] + CLEAR);
    port = port.min(board.chine[0] - CLEAR);
    let reach = starboard.abs().max(port.abs());
    bottom = bottom.max(board.rise * reach + CLEAR);
    Foot {
        bottom,
        top: top.min(board.top),
        starboard,
        port,
    }
}

/// Notes the weights on the face and what was taken for granted of the engines.
fn note(
    footing: &mut Footing,
    group: &Group,
    engines: &[&Engine],
    shared: Mass,
    assumed: &mut Vec<Text>,
) {
    let setback = setback(group);
    for engine in engines {
        let spec = &engine.spec;
        let weight = engine
            .weight
            .reading()
            .map_or(Mass::default(), |weight| weight.value);
        let more = if engine.role == crate::job::Role::Main {
            shared
        } else {
            Mass::default()
        };
        footing.hung.push(Hung {
            name: engine.label.clone(),
            mass: weight + more,
            aft: setback + centre_aft(engine),
        });
        let unknown: Vec<&str> = [
            (
                "its centre of gravity",
                spec.centre_aft.is_none() || spec.centre_above.is_none(),
            ),
            ("its gearcase", spec.plate_to_propeller_shaft.is_none()),
            ("its propeller", spec.propeller_diameter.is_none()),
            ("its steering", spec.steering.is_none()),
            ("its tilt", spec.full_tilt.is_none()),
        ]
        .into_iter()
        .filter_map(|(what, unknown)| unknown.then_some(what))
        .collect();
        if !unknown.is_empty() {
            assumed.push(say!(
                "Of the {} usual figures are taken for {}: none is given.",
                engine.label.as_str(),
                unknown.join(", ")
            ));
        }
        if engine.holes_up.reading().is_none() && !group.is_lifted() {
            assumed.push(say!(
                "The {} is taken to hang in its lowest hole for its loads.",
                engine.label.as_str()
            ));
        }
    }
    if let Some(bracket) = &group.bracket {
        match bracket.weight.reading() {
            Some(weight) => footing.hung.push(Hung {
                name: bracket.name.clone(),
                mass: weight.value,
                aft: 0.5 * setback,
            }),
            None => assumed.push(say!(
                "`{}` is reckoned without its own weight: it is not given.",
                bracket.name.as_str()
            )),
        }
    }
}

fn setback(group: &Group) -> f64 {
    group
        .setback()
        .reading()
        .map_or(0.0, |setback| setback.value.si())
}

fn centre_aft(engine: &Engine) -> f64 {
    engine
        .spec
        .centre_aft
        .as_ref()
        .map_or(inches(CENTRE_AFT_IN).si(), |aft| aft.value.si())
}

/// From the middle of a face's bolts down to the propeller shaft of an engine on it, m.
pub fn shaft_down(footing: &Footing, group: &Group, engine: &Engine, board: &Board) -> f64 {
    let leg = engine
        .rest_to_plate
        .reading()
        .map_or(0.0, |leg| leg.value.si());
    let gearcase = engine
        .spec
        .plate_to_propeller_shaft
        .as_ref()
        .map_or(inches(PLATE_TO_SHAFT_IN).si(), |d| d.value.si());
    footing.middle[1] - (rest(group, engine, board) - leg - gearcase)
}

/// Height of the bracket's rest of an engine, m.
fn rest(group: &Group, engine: &Engine, board: &Board) -> f64 {
    let drop = group.drop().reading().map_or(0.0, |drop| drop.value.si());
    let rows = engine
        .holes_up
        .reading()
        .map_or(0.0, |rows| f64::from(*rows));
    board.top - drop + inches(HOLE_STEP_IN).si() * rows
}

/// The loads of each case about the face's middle, and how those of its first engine came about.
#[expect(
    clippy::too_many_arguments,
    reason = "each is a different thing that makes a load"
)]
fn sum(
    footing: &Footing,
    group: &Group,
    engines: &[&Engine],
    board: &Board,
    driving: Driving,
    shared: Mass,
    cases: &[LoadCase],
    alone: Option<&str>,
) -> Result<(Vec<FaceLoad>, Sheet), NoStrength> {
    let setback = setback(group);
    let outfit = loads::Outfit {
        speed: driving.speed,
        slamming: Ratio::from_si(driving.slamming),
        disc_efficiency: DISC_EFFICIENCY,
        overall_efficiency: OVERALL_EFFICIENCY,
    };
    let mut totals = vec![FaceLoad::default(); cases.len()];
    let mut kept = Sheet::default();
    for (i, engine) in engines.iter().enumerate() {
        let spec = &engine.spec;
        let (aft, up) = (
            centre_aft(engine),
            spec.centre_above
                .as_ref()
                .map_or(inches(CENTRE_ABOVE_IN).si(), |z| z.value.si()),
        );
        let tilt = spec
            .full_tilt
            .as_ref()
            .map_or(TILT_DEG.to_radians(), |tilt| tilt.value.si());
        let weight = engine
            .weight
            .reading()
            .map_or(Mass::default(), |weight| weight.value);
        let more = if engine.role == crate::job::Role::Main {
            shared
        } else {
            Mass::default()
        };
        let length = Length::from_si;
        let kernel = loads::Engine {
            mass: weight + more,
            power: engine
                .power
                .reading()
                .map_or(Default::default(), |power| power.value),
            propeller: spec
                .propeller_diameter
                .as_ref()
                .map_or(inches(PROPELLER_IN), |d| d.to.value),
            weight_aft: length(setback + aft),
            tilted_aft: length(setback + aft * tilt.cos() - up * tilt.sin()),
            weight_up: length(rest(group, engine, board) + up - footing.middle[1]),
            shaft_down: length(shaft_down(footing, group, engine, board)),
            propeller_aft: length(setback + PROPELLER_OF_CENTRE * aft),
            steering: spec
                .steering
                .as_ref()
                .map_or(Angle::from_si(STEERING_DEG.to_radians()), |angle| {
                    angle.value
                }),
        };
        let mut sheet = Sheet::default();
        let own = loads::cases(&mut sheet, &kernel, &outfit).map_err(|error| {
            NoStrength::Unfit(say!(
                "The loads of the {}: {}.",
                engine.label.as_str(),
                error.to_string()
            ))
        })?;
        if i == 0 {
            kept.remark(say!("of the {}:", engine.label.as_str()));
            kept.append(sheet);
        }
        let of = |kind: Kind| {
            own.iter()
                .find(|(one, _)| *one == kind)
                .map_or(FaceLoad::default(), |(_, load)| *load)
        };
        for (total, case) in totals.iter_mut().zip(cases) {
            let drives = !case.alone || alone == Some(engine.label.as_str());
            let load = of(if drives { case.kind } else { Kind::Static });
            *total = total.plus(loads::both(&[(engine.y.si() - footing.middle[0], load)]));
        }
    }
    if let Some(weight) = group
        .bracket
        .as_ref()
        .and_then(|bracket| bracket.weight.reading())
    {
        for (total, case) in totals.iter_mut().zip(cases) {
            let force = -weight.value.si() * GRAVITY * (1.0 + heavier(case.kind, driving));
            *total = total.plus(FaceLoad::at([-0.5 * setback, 0.0, 0.0], [0.0, 0.0, force]));
        }
    }
    Ok((totals, kept))
}

/// What a case adds to gravity, in g.
pub fn heavier(kind: Kind, driving: Driving) -> f64 {
    match kind {
        Kind::Slamming => driving.slamming,
        Kind::Trailer => TRAILER_ACCELERATION,
        _ => 0.0,
    }
}

impl Footing {
    /// Which bolt it is, in words.
    pub fn bolt(&self, index: usize) -> Text {
        let Some(bolt) = self.bolts.get(index) else {
            return Text::default();
        };
        let row = if bolt.z >= self.middle[1] {
            "upper"
        } else {
            "lower"
        };
        let off = Length::from_si(bolt.y.abs());
        if off.si() < 1e-3 {
            return say!("{} bolt on the centreline", row);
        }
        say!(
            "{} bolt {} to {}",
            row,
            Measure::tape(off),
            if bolt.y > 0.0 { "port" } else { "starboard" }
        )
    }
}
