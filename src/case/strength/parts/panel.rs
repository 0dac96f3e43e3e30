//! The panel in every case, and what holds it.

use uom::si::f64::{Length, Pressure, Ratio};

use super::super::show::{force, length, place, ratio, resultant};
use super::super::{Bent, Board, Knee, Laden, Strength, Used, Way};
use crate::physics::strength::panel::{PlyStress, Resultant, SupportPart};
use crate::quantity::{Dimensioned, Measure, Style, Text, say};
use crate::working::{Part, Sheet, Table};

pub(super) fn part(when: &str, laden: &Laden, strength: &Strength) -> Part {
    let bent = &laden.bent;
    let rows = laden
        .cases
        .iter()
        .zip(bent.effects.iter())
        .map(|(case, effect)| {
            let mut row = vec![Text::from(case.name()), Text::from(length(effect.braced().loaded.largest_deflection))];
            row.extend(effect.used.iter().map(|used| ratio(used.part)));
            row
        })
        .collect();
    let heads = ["case", "deflection", "bending: load over strength", "shear at supports", "tabs"];
    let mut tables = vec![Table::new("every case", &heads, rows)];
    let (bending, _) = bent.worst(Way::Bending);
    tables.extend(reactions(bent, bending, strength));
    let mut sheet = Sheet::default();
    solved(&mut sheet, "the case that bends it most", laden, bending, strength);
    let (moved, _) = bent.deflection();
    if moved != bending {
        solved(&mut sheet, "the case of ordinary running that moves it most", laden, moved, strength);
    }
    Part { title: format!("{when}: the transom panel"), tables, sheet }
}

/// What a solver gave of a case: which solver, and what.
pub fn solved(sheet: &mut Sheet, what: &str, laden: &Laden, case: usize, strength: &Strength) {
    let bent = &laden.bent;
    let Some((factored, stood)) = bent.told(case) else { return };
    let board = &strength.board;
    sheet.remark(say!(
        "{}: {}; Reissner–Mindlin plate on springs, quadratic triangles, {} unknowns, sparse Cholesky; a mesh twice as fine moves a factor by less than 2 %",
        what,
        laden.cases[case].name(),
        factored.unknowns()
    ));
    let bending = &stood.bending;
    sheet.remark(
        say!("largest deflection {}, ", length(stood.loaded.largest_deflection))
            .then(place(stood.loaded.largest_at, board.top))
            .then(say!("; most bent ").then(place(bending.at, board.top)))
            .then(say!(": moments are told as means over {}, the panel's thickness or 2 in", length(board.width()))),
    );
    if bending.stress.is_some() {
        let [across, up, twist] = stood.moment.map(force);
        sheet.remark(say!("moments of a unit of width there: across {}, up {}, twisting {}", across, up, twist));
    }
    let told = &bent.effects[case].used[Way::Bending as usize];
    if let Some(push) = &told.push {
        sheet.remark(say!("what gives way first is the hold of the ").then(support(push.0, board)).then(say!(
            ", which pushes with {} a metre; strength over load {}",
            force(push.1),
            factor(told)
        )));
    }
    if bent.effects[case].stood.len() > 1 {
        sheet.remark(if bent.effects[case].told == 0 {
            "told with all that stands behind it"
        } else {
            "told with less behind it: the rest would let go first, or gathers bending beside it"
        });
    }
    if let Some(stress) = &bending.stress {
        let [across, up, shear] = stress.plane.map(|s| Measure::of(Pressure::from_si(s)));
        sheet.remark(say!(
            "stress there in the {}: across {}, up {}, in-plane shear {}; strength over stress {}",
            ply(stress, strength),
            across,
            up,
            shear,
            factor(bending)
        ));
    }
}

fn factor(used: &Used) -> Measure {
    Measure::styled(Ratio::from_si(used.factor()), Style::Factor)
}

/// The material in which a stress stands.
pub fn ply(stress: &PlyStress, strength: &Strength) -> String {
    strength.board.layers.get(stress.ply).map_or(String::new(), |layer| layer.material.name.clone())
}

fn reactions(bent: &Bent, case: usize, strength: &Strength) -> Option<Table> {
    let (factored, stood) = bent.told(case)?;
    let (reactions, load) = factored.reactions(&stood.loaded);
    let sum = Resultant::total(reactions.iter().map(|reaction| reaction.push));
    let mut rows: Vec<Vec<Text>> =
        reactions.iter().map(|reaction| resultant(support(reaction.part, &strength.board), reaction.push)).collect();
    rows.push(resultant(Text::from("all supports"), sum));
    rows.push(resultant(Text::from("all loads"), load));
    Some(Table::new(
        "free body: what holds the panel, moments about the bottom on the centreline",
        &["", "forward", "about port", "about up"],
        rows,
    ))
}

/// A support in words.
pub fn support(part: SupportPart, board: &Board) -> Text {
    let upright = |what: &str, knee: &Knee| {
        say!(
            "{} {} to {}",
            what,
            Measure::tape(Length::from_si(knee.y.abs())),
            if knee.y > 0.0 { "port" } else { "starboard" }
        )
    };
    match part {
        SupportPart::Edge(i) => {
            let (a, b) = (board.outline[i], board.outline[(i + 1) % board.outline.len()]);
            let side = 0.5 * (a[0] + b[0]);
            let edge = if a[1].max(b[1]) <= board.chine[1] + 1e-9 {
                "bottom"
            } else if a[1] == b[1] {
                "deck"
            } else {
                "side"
            };
            let (which, to) = if side > 0.0 { ("port", "to port") } else { ("starboard", "to starboard") };
            match edge {
                _ if side.abs() < 1e-6 => Text::from(edge),
                "side" => say!("{} side", which),
                _ => say!("{} {}", edge, to),
            }
        }
        SupportPart::Bed(i) => {
            let stringer = i.checked_sub(board.knees.len());
            match (board.knees.get(i), stringer.and_then(|i| board.stringers.get(i))) {
                (Some(knee), _) => upright("knee", knee),
                (None, Some(stringer)) => upright("stringer", stringer),
                (None, None) => Text::from("well floor"),
            }
        }
        SupportPart::Line(_) => Text::from("top edge"),
    }
}
