//! The whole working of strength, part by part.

use uom::si::f64::{Length, Pressure, Ratio};

use super::show::{force, length, moment, place, ratio, times};

use super::{Footing, Governing, Laden, NoStrength, Part as Way, Strength};
use crate::case::Case;
use crate::physics::strength::panel::{Resultant, SupportPart};
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::rig::{Missing, Rig};
use crate::working::{Part, Sheet, Table};

/// The panel, among the parts.
pub const PANEL_WORDS: &str = "transom panel, bent";

impl Way {
    /// Every part, in the order of a report.
    pub const ALL: [Way; 7] = [
        Way::Tension,
        Way::Shear,
        Way::Combined,
        Way::Bearing,
        Way::Crush,
        Way::Punch,
        Way::Tear,
    ];

    /// What gives way.
    pub fn words(self) -> &'static str {
        match self {
            Way::Tension => "bolts, pulled",
            Way::Shear => "bolts, sheared",
            Way::Combined => "bolts, pulled and sheared",
            Way::Bearing => "core, pressed by the bolts' shanks",
            Way::Crush => "core, crushed under washers or plate",
            Way::Punch => "transom, punched through by washers or plate",
            Way::Tear => "transom, torn out to its top edge",
        }
    }
}

impl Strength {
    /// Every part's least factor, after and before, with its case: the panel last.
    pub fn factors(&self, rig: &Rig) -> Vec<(&'static str, f64, Option<f64>, &'static str)> {
        let before = self.before.as_ref().ok();
        let mut all: Vec<_> = Way::ALL
            .into_iter()
            .filter_map(|way| {
                let worst = self.after.worst(way, rig, self)?;
                let old = before
                    .and_then(|laden| laden.worst(way, rig, self))
                    .map(|worst| worst.factor());
                Some((
                    way.words(),
                    worst.factor(),
                    old,
                    self.after.cases[worst.case].name(),
                ))
            })
            .collect();
        let panel = &self.after.bent.stress;
        let old = before.map(|laden| laden.bent.stress.factor);
        all.push((
            PANEL_WORDS,
            panel.factor,
            old,
            self.after.cases[panel.case].name(),
        ));
        all
    }

    /// The part that gives way first.
    pub fn governing(&self, rig: &Rig) -> Option<(&'static str, f64, Option<f64>, &'static str)> {
        self.factors(rig)
            .into_iter()
            .min_by(|a, b| a.1.total_cmp(&b.1))
    }
}

impl Case<'_> {
    /// The working of strength: studies, loads, bolts, panel, core.
    pub fn strength_parts(&self) -> Vec<Part> {
        let mut parts = super::study::parts(self);
        match self.strength() {
            Ok(strength) => parts.extend(strength.parts(self.rig)),
            Err(_) if !parts.is_empty() => {}
            Err(no) => parts.push(nothing(no)),
        }
        parts
    }
}

fn nothing(no: &NoStrength) -> Part {
    let mut sheet = Sheet::default();
    match no {
        NoStrength::Missing(missing) => {
            let names: Vec<String> = missing.iter().map(Missing::name).collect();
            sheet.remark(say!("Waits for: {}.", names.join("; ")));
        }
        NoStrength::Unfit(why) => sheet.remark(why.clone()),
    }
    Part {
        title: "strength".to_owned(),
        sheet,
        ..Part::default()
    }
}

impl Strength {
    fn parts(&self, rig: &Rig) -> Vec<Part> {
        let mut parts = vec![self.summary(rig)];
        if let Ok(before) = &self.before {
            parts.extend(outfit("before", before, self));
        }
        parts.extend(outfit("after", &self.after, self));
        parts.push(self.core_part());
        parts
    }

    fn summary(&self, rig: &Rig) -> Part {
        let mut sheet = self.sheet.clone();
        for text in &self.assumed {
            sheet.remark(say!("assumed: ").then(text.clone()));
        }
        if let Err(why) = &self.before {
            sheet.remark(say!("nothing stands beside it from before: ").then(why.clone()));
        }
        let rows = self
            .factors(rig)
            .into_iter()
            .map(|(words, after, before, case)| {
                vec![
                    Text::from(words),
                    before.map_or(Text::from("–"), ratio),
                    ratio(after),
                    before.map_or(Text::from("–"), |before| times(before, after)),
                    Text::from(case),
                ]
            })
            .collect();
        Part {
            title: "what gives way first".to_owned(),
            tables: vec![table(
                "strength over load, before and after",
                &[
                    "part",
                    "before",
                    "after",
                    "after / before",
                    "governing case",
                ],
                rows,
            )],
            sheet,
        }
    }

    fn core_part(&self) -> Part {
        let mut sheet = Sheet::default();
        for word in &self.core.words {
            sheet.remark(word.clone());
        }
        let left = self.core.left;
        let ratio = |value: f64| Measure::of(Ratio::from_si(value));
        sheet.remark(say!(
            "left of the core's stiffness: {}; of its strength: {}",
            ratio(left.stiffness),
            ratio(left.strength)
        ));
        let layers = self
            .board
            .layers
            .iter()
            .map(|layer| {
                vec![
                    Text::from(layer.material.name.as_str()),
                    Text::from(Measure::of(layer.thickness)),
                ]
            })
            .collect();
        let section = &self.after.bent.stress.panel.section.stiffness;
        let rows = vec![
            vec![
                Text::from("bending, across"),
                Text::from(moment(section.d11)),
            ],
            vec![Text::from("bending, up"), Text::from(moment(section.d22))],
            vec![Text::from("twisting"), Text::from(moment(section.d66))],
            vec![
                Text::from("shear through the thickness, across, a metre of width"),
                Text::from(force(section.s1)),
            ],
            vec![
                Text::from("shear through the thickness, up, a metre of width"),
                Text::from(force(section.s2)),
            ],
        ];
        Part {
            title: "the transom and its core".to_owned(),
            tables: vec![
                table(
                    "layers from the outside in",
                    &["material", "thickness"],
                    layers,
                ),
                table(
                    "stiffness of a unit of width, core as read",
                    &["", "stiffness"],
                    rows,
                ),
            ],
            sheet,
        }
    }
}

fn outfit(when: &str, laden: &Laden, strength: &Strength) -> Vec<Part> {
    let mut parts: Vec<Part> = laden
        .footings
        .iter()
        .map(|footing| on_bolts(when, footing, laden))
        .collect();
    parts.push(bent(when, laden, strength));
    parts
}

fn on_bolts(when: &str, footing: &Footing, laden: &Laden) -> Part {
    let loads = laden
        .cases
        .iter()
        .zip(&footing.loads)
        .map(|(case, load)| {
            let mut row = vec![Text::from(case.name())];
            row.extend(load.force.map(|f| Text::from(force(f))));
            row.extend(load.moment.map(|m| Text::from(moment(m))));
            row
        })
        .collect();
    let hung = footing
        .hung
        .iter()
        .map(|hung| {
            vec![
                Text::from(hung.name.as_str()),
                Text::from(Measure::of(hung.mass)),
                Text::from(length(hung.aft)),
            ]
        })
        .collect();
    let mut tables = vec![
        table(
            "weights, and their centres aft of the transom",
            &["", "weight", "aft"],
            hung,
        ),
        table(
            "forces and moments about the middle of the bolts (forward, to port, up)",
            &[
                "case",
                "forward",
                "to port",
                "up",
                "about forward",
                "about port",
                "about up",
            ],
            loads,
        ),
    ];
    for (case, group) in laden.cases.iter().zip(&footing.forces) {
        let rows = group
            .bolts
            .iter()
            .enumerate()
            .map(|(i, bolt)| {
                vec![
                    footing.bolt(i),
                    Text::from(force(bolt.shear)),
                    Text::from(force(bolt.tension)),
                ]
            })
            .chain(std::iter::once(vec![
                say!("edge pressed on, {} up the transom", length(group.pivot_z)),
                Text::default(),
                Text::from(force(-group.edge_pitch)),
            ]))
            .collect();
        tables.push(table(
            &format!("bolt by bolt: {}", case.name()),
            &["bolt", "shear", "tension"],
            rows,
        ));
    }
    Part {
        title: format!("{when}: {}", footing.name),
        tables,
        sheet: footing.sheet.clone(),
    }
}

fn bent(when: &str, laden: &Laden, strength: &Strength) -> Part {
    let rows = laden
        .cases
        .iter()
        .zip(&laden.bent.glances)
        .map(|(case, glance)| {
            vec![
                Text::from(case.name()),
                Text::from(length(glance.deflection)),
                ratio(glance.use_of_strength),
            ]
        })
        .collect();
    let stress = &laden.bent.stress;
    let mut tables = vec![table(
        "a first look at every case, on a coarse mesh",
        &["case", "deflection", "stress over strength"],
        rows,
    )];
    tables.push(reactions(stress, strength));
    let mut sheet = Sheet::default();
    solved(
        &mut sheet,
        "the case nearest to its strength",
        laden,
        stress,
        strength,
    );
    if laden.bent.deflection.case != stress.case {
        solved(
            &mut sheet,
            "the case of ordinary running that moves it most",
            laden,
            &laden.bent.deflection,
            strength,
        );
    }
    Part {
        title: format!("{when}: the transom panel"),
        tables,
        sheet,
    }
}

/// What a solver gave: which, how well, and what.
pub fn solved(
    sheet: &mut Sheet,
    what: &str,
    laden: &Laden,
    governing: &Governing,
    strength: &Strength,
) {
    let solution = &governing.solution;
    let unknowns = solution.levels.last().map_or(0, |level| level.unknowns);
    let percent = |part: f64| Measure::of(Ratio::from_si((1000.0 * part).round() / 10.0));
    sheet.remark(
        say!("{}: {}", what, laden.cases[governing.case].name())
            .then(say!("; Reissner–Mindlin plate, quadratic triangles, {} unknowns, sparse Cholesky; deflection to {} %, moments and shear forces all over to {} %", unknowns, percent(solution.error), percent(solution.field_error))),
    );
    sheet.remark(
        say!(
            "largest deflection {}, ",
            length(solution.largest_deflection)
        )
        .then(place(solution.largest_at, strength.board.top))
        .then(say!(
            "; strength over stress {}, ",
            Measure::of(Ratio::from_si(governing.factor))
        ))
        .then(place(governing.at, strength.board.top))
        .then(say!(" in the {}", ply(governing, strength))),
    );
    let plane = governing
        .stress
        .plane
        .map(|s| Measure::of(Pressure::from_si(s)));
    let through = governing
        .stress
        .through
        .map(|s| Measure::of(Pressure::from_si(s)));
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
    strength
        .board
        .layers
        .get(governing.stress.ply)
        .map_or(String::new(), |layer| layer.material.name.clone())
}

fn reactions(governing: &Governing, strength: &Strength) -> Table {
    let solution = &governing.solution;
    let sum = Resultant::total(solution.reactions.iter().map(|reaction| reaction.push));
    let row = |name: Text, push: Resultant| {
        vec![
            name,
            Text::from(force(push.force)),
            Text::from(moment(push.moment_y)),
            Text::from(moment(push.moment_z)),
        ]
    };
    let mut rows: Vec<Vec<Text>> = solution
        .reactions
        .iter()
        .map(|reaction| row(support(reaction.part, strength), reaction.push))
        .collect();
    rows.push(row(Text::from("all supports"), sum));
    rows.push(row(Text::from("all loads"), solution.load));
    table(
        "free body: what holds the panel, moments about the bottom on the centreline",
        &["", "forward", "about port", "about up"],
        rows,
    )
}

fn support(part: SupportPart, strength: &Strength) -> Text {
    let board = &strength.board;
    match part {
        SupportPart::Edge(i) => {
            let (a, b) = (
                board.outline[i],
                board.outline[(i + 1) % board.outline.len()],
            );
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

pub(super) fn table(title: &str, heads: &[&str], rows: Vec<Vec<Text>>) -> Table {
    Table {
        title: title.to_owned(),
        heads: heads.iter().map(|head| (*head).to_owned()).collect(),
        rows,
    }
}
