//! The panel in every case, and what holds it.

use uom::si::f64::{Length, Pressure, Ratio};

use super::super::show::{length, place, ratio, resultant};
use super::super::{Governing, Laden, Strength};
use crate::physics::strength::panel::{Resultant, SupportPart};
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::working::{Part, Sheet, Table};

pub(super) fn part(when: &str, laden: &Laden, strength: &Strength) -> Part {
    let rows = laden
        .cases
        .iter()
        .zip(&laden.bent.effects)
        .map(|(case, effect)| {
            vec![Text::from(case.name()), Text::from(length(effect.deflection)), ratio(effect.use_of_strength)]
        })
        .collect();
    let stress = &laden.bent.stress;
    let mut tables = vec![Table::new("every case", &["case", "deflection", "stress over strength"], rows)];
    tables.push(reactions(stress, strength));
    let mut sheet = Sheet::default();
    solved(&mut sheet, "the case nearest to its strength", laden, stress, strength);
    if laden.bent.deflection.case != stress.case {
        solved(&mut sheet, "the case of ordinary running that moves it most", laden, &laden.bent.deflection, strength);
    }
    Part { title: format!("{when}: the transom panel"), tables, sheet }
}

/// What a solver gave: which, how well, and what.
pub fn solved(sheet: &mut Sheet, what: &str, laden: &Laden, governing: &Governing, strength: &Strength) {
    let solution = &governing.solution;
    let unknowns = solution.levels.last().map_or(0, |level| level.unknowns);
    let percent = |part: f64| Measure::of(Ratio::from_si((1000.0 * part).round() / 10.0));
    sheet.remark(
        say!("{}: {}", what, laden.cases[governing.case].name())
            .then(say!("; Reissner–Mindlin plate, quadratic triangles, {} unknowns, sparse Cholesky; ", unknowns))
            .then(if solution.error.is_finite() {
                say!(
                    "deflection to {} %, moments and shear forces all over to {} %",
                    percent(solution.error),
                    percent(solution.field_error)
                )
            } else {
                // A case that came to lead on a mesh that may not be made finer.
                Text::from("its error is not known")
            }),
    );
    sheet.remark(
        say!("largest deflection {}, ", length(solution.largest_deflection))
            .then(place(solution.largest_at, strength.board.top))
            .then(say!("; strength over stress {}, ", Measure::of(Ratio::from_si(governing.factor))))
            .then(place(governing.at, strength.board.top))
            .then(say!(" in the {}", ply(governing, strength))),
    );
    let plane = governing.stress.plane.map(|s| Measure::of(Pressure::from_si(s)));
    let through = governing.stress.through.map(|s| Measure::of(Pressure::from_si(s)));
    sheet.remark(say!(
        "stress there: across {}, up {}, in-plane shear {}, through the thickness {} and {}",
        plane[0],
        plane[1],
        plane[2],
        through[0],
        through[1]
    ));
}

/// The material in which the stress is nearest to its strength.
pub fn ply(governing: &Governing, strength: &Strength) -> String {
    strength.board.layers.get(governing.stress.ply).map_or(String::new(), |layer| layer.material.name.clone())
}

fn reactions(governing: &Governing, strength: &Strength) -> Table {
    let solution = &governing.solution;
    let sum = Resultant::total(solution.reactions.iter().map(|reaction| reaction.push));
    let mut rows: Vec<Vec<Text>> =
        solution.reactions.iter().map(|reaction| resultant(support(reaction.part, strength), reaction.push)).collect();
    rows.push(resultant(Text::from("all supports"), sum));
    rows.push(resultant(Text::from("all loads"), solution.load));
    Table::new(
        "free body: what holds the panel, moments about the bottom on the centreline",
        &["", "forward", "about port", "about up"],
        rows,
    )
}

fn support(part: SupportPart, strength: &Strength) -> Text {
    let board = &strength.board;
    match part {
        SupportPart::Edge(i) => {
            let (a, b) = (board.outline[i], board.outline[(i + 1) % board.outline.len()]);
            let side = 0.5 * (a[0] + b[0]);
            let edge = if (a[1] - b[1]).abs() > (a[0] - b[0]).abs()
                && board.rise * (a[0] - b[0]).abs() < 0.99 * (a[1] - b[1]).abs()
            {
                "side"
            } else {
                "bottom"
            };
            match side {
                side if side.abs() < 1e-6 => Text::from(edge),
                side if side > 0.0 => say!("{}, port", edge),
                _ => say!("{}, starboard", edge),
            }
        }
        SupportPart::Line(i) => match board.knees.get(i) {
            Some(knee) => say!(
                "knee {} to {}",
                Measure::tape(Length::from_si(knee.y.abs())),
                if knee.y > 0.0 { "port" } else { "starboard" }
            ),
            None => Text::from("stringer or well floor"),
        },
    }
}
