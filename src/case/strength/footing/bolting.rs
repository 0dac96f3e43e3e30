//! The face of an engine or bracket, and where its bolts stand.

use uom::si::f64::Length;

use super::super::board::Board;
use super::Footing;
use crate::case::{bolt_places, drop_along};
use crate::catalog::Entry;
use crate::job::{Bolting, BracketKind};
use crate::physics::strength::bolts::{Bolt, Foot};
use crate::quantity::{Basis, Dimensioned, Measure, Reading, Text, horsepower, inches, say};
use crate::reading::Absent;
use crate::rig::{Engine, Group, Rig};
use crate::working::Sheet;

/// Height of an engine's face, from the transom's top to its heel, where its mounting sheet does not say. Common practice,
/// no source.
const HEEL_IN: f64 = 12.0;
/// Face beyond the outermost bolts, and so much of a wider one that presses beyond them: the arms of an outboard's bracket stand at
/// the bolts. Common practice, no source.
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
/// Engines of less power come with clamp screws. Common practice, no source.
const CLAMPED_BELOW_HP: f64 = 25.0;
/// Wood between a raised heel and the bottom's edge, m: so little that it does not matter, enough for a mesh.
const CLEAR: f64 = 0.005;

/// The face and its bolts, without loads.
pub(super) fn bare(
    rig: &Rig,
    index: usize,
    group: &Group,
    engines: &[&Engine],
    board: &Board,
    assumed: &mut Vec<Text>,
) -> Result<Footing, Absent> {
    let name = match (&group.bracket, engines) {
        (Some(bracket), _) => bracket.name.clone(),
        (None, [engine, ..]) => engine.label.clone(),
        (None, []) => "engine".to_owned(),
    };
    let seat = Seat::of(rig, group, engines, board);
    let given = group.bolts.clone();
    let usual_size = match seat.kind {
        Some(BracketKind::Auxiliary) => AUXILIARY_SIZE,
        _ => SIZE,
    };
    let size = pick(&given.size, &rig.tables.bolt_sizes, usual_size);
    let grade = pick(&given.grade, &rig.tables.bolt_grades, GRADE);
    let (Some(size), Some(grade)) = (size, grade) else {
        return Err(Absent::CannotBe(Text::from(
            "The catalog has no bolt size or grade to reckon with; name both under bolts.",
        )));
    };
    let clamped = is_clamped(group, engines);
    if !clamped && (given.size.is_none() || given.grade.is_none()) {
        assumed.push(say!(
            "The {} is taken to be held by {} bolts of {}.",
            name.as_str(),
            size.name.as_str(),
            grade.name.as_str()
        ));
    }
    let (places, told) = seat.places(rig);
    if !told {
        assumed.push(say!(
            "The bolts of the {} are taken to stand in two rows; its template gives their places.",
            name.as_str()
        ));
    }
    let face = seat.face(&places);
    let area = size.spec.stress_area.value.si();
    let bolts: Vec<Bolt> = places.iter().map(|&[y, z]| Bolt { y, z, area }).collect();
    if let Some(bolt) = bolts.iter().find(|bolt| !holds(bolt, &face, board)) {
        return Err(Absent::CannotBe(say!(
            "A bolt of the {} would stand {} off the centreline and {} below the top: outside the transom, or of the face that it holds.",
            name.as_str(),
            Measure::tape(Length::from_si(bolt.y.abs())),
            Measure::tape(Length::from_si(board.top - bolt.z))
        )));
    }
    let count = bolts.len().max(1) as f64;
    let middle = [bolts.iter().map(|b| b.y).sum::<f64>() / count, bolts.iter().map(|b| b.z).sum::<f64>() / count];
    Ok(Footing {
        name,
        on_bracket: group.bracket.is_some(),
        group: index,
        bolts,
        face,
        middle,
        size,
        grade,
        clamped,
        sheet_torque: match (&group.bracket, engines) {
            (Some(bracket), _) => bracket.spec.torque.as_ref(),
            (None, [engine, ..]) => engine.spec.torque.as_ref(),
            (None, []) => None,
        }
        .map(|torque| torque.value),
        given,
        bolts_from: match (group.bolts.said.at.is_empty(), told) {
            (false, _) => Basis::Measured.origin(),
            (true, true) => "the trade's bolt pattern",
            (true, false) => Basis::Assumed.origin(),
        },
        face_from: seat.face_from(),
        hung: Vec::new(),
        acting: Vec::new(),
        loads: Vec::new(),
        forces: Vec::new(),
        pressed: Vec::new(),
        sheet: Sheet::default(),
    })
}

/// Whether clamp screws hold it: a small engine on the transom itself, of whose bolts nothing is said.
fn is_clamped(group: &Group, engines: &[&Engine]) -> bool {
    let Bolting { size, grade, at, washer, washer_thickness: _, backing_plate, torque, thread: _, face: _, inserts: _ } =
        &group.bolts.said;
    let silent = size.is_none()
        && grade.is_none()
        && at.is_empty()
        && washer.is_none()
        && backing_plate.is_none()
        && torque.is_none();
    let small = horsepower(CLAMPED_BELOW_HP);
    silent
        && group.bracket.is_none()
        && engines.iter().all(|engine| engine.power.reading().is_some_and(|power| power.value < small))
}

/// Whether a bolt goes through both the transom and the face.
fn holds(bolt: &Bolt, face: &Foot, board: &Board) -> bool {
    board.bottom(bolt.y).is_some_and(|bottom| bolt.z > bottom)
        && bolt.z < board.top
        && (face.starboard..=face.port).contains(&bolt.y)
        && (face.bottom..=face.top).contains(&bolt.z)
}

fn pick<T: Clone>(given: &Option<Entry<T>>, entries: &[Entry<T>], name: &str) -> Option<Entry<T>> {
    given.clone().or_else(|| entries.iter().find(|entry| entry.name == name).or(entries.first()).cloned())
}

/// Where a face comes to lie.
struct Seat<'a> {
    group: &'a Group,
    engines: &'a [&'a Engine],
    board: &'a Board,
    kind: Option<BracketKind>,
    /// Its middle to port, m.
    y: f64,
    /// Its top below the transom's, along it, m.
    drop: f64,
}

impl<'a> Seat<'a> {
    fn of(rig: &Rig, group: &'a Group, engines: &'a [&'a Engine], board: &'a Board) -> Self {
        Seat {
            group,
            engines,
            board,
            kind: group.bracket.as_ref().and_then(|bracket| bracket.spec.kind),
            y: engines.iter().map(|engine| engine.y.si()).sum::<f64>() / engines.len().max(1) as f64,
            drop: drop_along(rig, group).si(),
        }
    }

    /// Where the bolts stand, `[y, z]`, and whether job or trade says so.
    fn places(&self, rig: &Rig) -> (Vec<[f64; 2]>, bool) {
        let top = self.board.top;
        if let Some(places) = bolt_places(rig, self.group, self.engines) {
            return (places.iter().map(|bolt| [bolt.y.si(), top - bolt.below.si()]).collect(), true);
        }
        let face = self.template().unwrap_or_default();
        let edge = inches(BRACKET_EDGE_IN).si();
        let row = match self.kind {
            Some(BracketKind::Auxiliary) => 2,
            _ => BRACKET_ROW + self.engines.len() - 1,
        };
        let top = top - self.drop.max(0.0);
        let floor = self.floor(self.y.abs() + 0.5 * face[0]);
        let bottom = (top - face[1]).max(floor);
        let places = [top - edge, bottom + edge].into_iter().flat_map(|z| {
            (0..row).map(move |i| {
                let part = i as f64 / (row - 1).max(1) as f64 - 0.5;
                [self.y + part * (face[0] - 2.0 * edge), z]
            })
        });
        (places.collect(), false)
    }

    /// Width and height of a face that has a template of its own, m.
    fn template(&self) -> Option<[f64; 2]> {
        let [width, height] = match self.kind {
            None | Some(BracketKind::SetbackPlate | BracketKind::JackPlate) => return None,
            Some(BracketKind::Auxiliary) => AUXILIARY_FACE_IN,
            Some(BracketKind::Box | BracketKind::Frame) => {
                [BRACKET_WIDTH_IN * self.engines.len().max(1) as f64, BRACKET_HEIGHT_IN]
            }
        };
        Some([inches(width).si(), self.height(height)])
    }

    /// Height of the face as the bracket or the engine's mounting sheet has it, m, or the usual one.
    fn height(&self, usual_in: f64) -> f64 {
        self.told_height().map_or(inches(usual_in).si(), |height| height.value.si())
    }

    fn told_height(&self) -> Option<&Reading<Length>> {
        match &self.group.bracket {
            Some(bracket) => bracket.spec.face_height.as_ref(),
            None => self.engines.iter().find_map(|engine| engine.spec.bracket_height.as_ref()),
        }
    }

    /// Where its edges are from: told, from the height that bracket or mounting sheet have, or as usual.
    fn face_from(&self) -> &'static str {
        match &self.group.bolts.said.face {
            Some(face) => face.height.basis.origin(),
            None => self.told_height().map_or(Basis::Assumed.origin(), |height| height.basis.origin()),
        }
    }

    /// Lowest that a face may reach which comes so far off the centreline, m.
    fn floor(&self, off: f64) -> f64 {
        self.board.rise * off + CLEAR
    }

    /// The face: as given, or from its kind; cut off at the transom's edges.
    fn face(&self, bolts: &[[f64; 2]]) -> Foot {
        let board = self.board;
        let beyond = inches(BEYOND_BOLTS_IN).si();
        let lowest = bolts.iter().map(|bolt| bolt[1]).fold(f64::INFINITY, f64::min);
        let [from, to] = arms(bolts.iter().map(|bolt| bolt[0]));
        let (starboard, port, top, bottom) = match &self.group.bolts.said.face {
            Some(face) => {
                let half = 0.5 * face.width.value.si();
                let top = board.top - face.below.value.si();
                (self.y - half, self.y + half, top, top - face.height.value.si())
            }
            None => {
                let height = self.template().map_or_else(|| self.height(HEEL_IN), |face| face[1]);
                let top = board.top - self.drop;
                let bottom = (top.min(board.top) - height).min(lowest - beyond);
                (from, to, top, bottom)
            }
        };
        let starboard = starboard.max(-board.chine[0] + CLEAR);
        let port = port.min(board.chine[0] - CLEAR);
        Foot {
            // Corners beyond the arms may hang over the bottom's edge.
            bottom: bottom.max(self.floor(starboard.max(from).abs().max(port.min(to).abs()))),
            top: top.min(board.top),
            starboard,
            port,
        }
    }
}

/// From where to where a face presses whose bolts stand there, m.
pub(super) fn arms(bolts: impl Iterator<Item = f64>) -> [f64; 2] {
    let beyond = inches(BEYOND_BOLTS_IN).si();
    let [least, most] = bolts.fold([f64::INFINITY, f64::NEG_INFINITY], |[least, most], y| [least.min(y), most.max(y)]);
    [least - beyond, most + beyond]
}
