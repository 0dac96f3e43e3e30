//! The whole working of the swing: chain, ranges, surroundings, every bound with its gap.

use nalgebra::Point3;

use super::followed::{followed, outline};
use super::hang::Hanging;
use super::swept::Swept;
use super::words::{body_words, pose_words, touch_words};
use super::{Answer, Swing};
use crate::case::Case;
use crate::physics::swing::{AngleRange, Lift, Obstacle, Outcome, Part as Link, Solved};
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::reading::Absent;
use crate::working::{Part, Sheet, Table};
use uom::si::f64::Length;

fn metres(value: f64) -> Measure {
    Measure::of(Length::from_si(value))
}

fn point_cells(point: &Point3<f64>) -> [Text; 3] {
    [point.x, point.y, point.z].map(|value| Text::from(metres(value)))
}

impl Case<'_> {
    /// The working of the swing.
    pub fn swing_parts(&self) -> Vec<Part> {
        let swing = self.swing();
        let mut parts = Vec::new();
        if let Some(study) = &swing.study {
            parts.push(match study {
                Ok(question) => swept_part("the question", &question.swept),
                Err(open) => Part::said("the question", open.words()),
            });
            if swing.engines.is_err() {
                return parts;
            }
        }
        match &swing.engines {
            Ok(engines) => parts.extend(engines.iter().map(chain_part)),
            Err(open) => {
                parts.push(Part::said("engines", open.words()));
                return parts;
            }
        }
        if let Ok(around) = &swing.around {
            let mut part = Part {
                title: "what stands round them".to_owned(),
                tables: vec![obstacle_table(&around.known)],
                ..Part::default()
            };
            if !around.missing.is_empty() {
                part.sheet.remark(Absent::Waits(around.missing.clone()).words());
                part.sheet.remark(Text::from("Until then everything forward of the transom counts as solid."));
            }
            parts.push(part);
        }
        for (title, answer) in [
            ("whole range against the boat", &swing.full_tilt),
            ("whole travel of the lifting bracket, against the boat", &swing.raised),
            ("running, lock to lock, against the boat", &swing.lock),
            ("engine against engine", &swing.neighbours),
            ("steering cylinder", &swing.cylinder),
            ("tie bar", &swing.tie_bar),
        ] {
            // Most boats have no lifting bracket.
            if !(std::ptr::eq(answer, &swing.raised) && matches!(answer, Err(Absent::NotApplicable(_)))) {
                sweeps(&mut parts, title, answer);
            }
        }
        parts.push(water_part(swing));
        parts.extend(ground_parts(swing));
        parts
    }
}

fn sweeps(parts: &mut Vec<Part>, title: &str, answer: &Answer<Vec<Swept>>) {
    match answer {
        Ok(all) => {
            for swept in all {
                let who = match &swept.other {
                    Some(other) => format!("{title}: {} and {other}", swept.label),
                    None => format!("{title}: {}", swept.label),
                };
                parts.push(swept_part(&who, swept));
            }
        }
        Err(open) => parts.push(Part::said(title, open.words())),
    }
}

fn range_row(what: &str, range: AngleRange) -> Vec<Text> {
    vec![Text::from(what), Text::from(Measure::of(range.low())), Text::from(Measure::of(range.high()))]
}

fn lift_row(lift: &Lift) -> Vec<Text> {
    let height = |value| Text::from(Measure::of(value));
    vec![Text::from("height of the lifting bracket"), height(Length::default()), height(lift.travel())]
}

fn link(part: Link) -> &'static str {
    match part {
        Link::Bracket => "stands",
        Link::Swivel => "tilts",
        Link::Head => "tilts and steers",
    }
}

fn extent<'p>(points: impl Iterator<Item = &'p Point3<f64>>, radius: f64) -> [Text; 6] {
    let mut low = [f64::INFINITY; 3];
    let mut high = [f64::NEG_INFINITY; 3];
    for point in points {
        for i in 0..3 {
            low[i] = low[i].min(point[i] - radius);
            high[i] = high[i].max(point[i] + radius);
        }
    }
    [low[0], high[0], low[1], high[1], low[2], high[2]].map(|value| Text::from(metres(value)))
}

/// Heads of an extent's six cells.
const EXTENT: [&str; 6] = ["aft", "forward", "starboard", "port", "low", "high"];

fn chain_part(engine: &Hanging) -> Part {
    let chain = &engine.fitted.chain;
    let mut axes = Vec::new();
    for (name, axis) in [("tilt tube", chain.tilt_axis()), ("steering axis", chain.steering_axis())] {
        let mut row = vec![Text::from(name)];
        row.extend(point_cells(&axis.point()));
        axes.push(row);
    }
    let mut rest = vec![Text::from("bracket's rest")];
    rest.extend(point_cells(&engine.rest));
    axes.push(rest);
    let bodies = chain
        .bodies()
        .iter()
        .map(|(part, body)| {
            let mut row = vec![Text::from(body.name()), Text::from(link(*part))];
            row.extend(extent(body.points().iter(), body.radius().value));
            row
        })
        .collect();
    let mut heads = vec!["body", "link"];
    heads.extend(EXTENT);
    let mut sheet = Sheet::default();
    sheet.remark(match engine.fitted.solved {
        Solved::Cowl { forward, aft } => say!(
            "fitted to the mounting sheet: with that tilt tube the cowl reaches {} forward of the mounting face and {} aft of it, engine down",
            Measure::of(forward),
            Measure::of(aft)
        ),
        Solved::TiltTube { forward, above } => say!(
            "fitted to the mounting sheet: the tilt tube lies {} forward of the mounting face and {} above the rest",
            Measure::of(forward),
            Measure::of(above)
        ),
    });
    sheet.append((*engine.fitted.working).clone());
    sheet.remark(Text::from(
        "angles count from upright; boat axes from the centreline at the bottom of the transom: forward, to port, up; bodies upright, steered ahead",
    ));
    Part {
        title: format!("chain of the {}", engine.label),
        tables: vec![
            Table::new("axes", &["", "forward", "to port", "up"], axes),
            Table::new(
                "ranges",
                &["", "from", "to"],
                [
                    range_row("tilt", engine.fitted.tilt),
                    range_row("running", engine.running),
                    range_row("steering (starboard positive)", engine.fitted.steer),
                ]
                .into_iter()
                .chain(engine.lift.as_ref().map(lift_row))
                .collect(),
            ),
            Table::new("bodies", &heads, bodies),
            outline(chain),
        ],
        sheet,
    }
}

fn obstacle_table(obstacles: &[Obstacle]) -> Table {
    let rows = obstacles
        .iter()
        .filter_map(|obstacle| match obstacle {
            Obstacle::Body(body) => {
                let mut row = vec![Text::from(body.name())];
                row.extend(extent(body.points().iter(), body.radius().value));
                Some(row)
            }
            Obstacle::HalfSpace(_) => None,
        })
        .collect();
    let mut heads = vec!["body"];
    heads.extend(EXTENT);
    Table::new("obstacles", &heads, rows)
}

/// The bound, its gap, where it is attained, and the way of the points that meet with the corners on which they lie.
pub fn swept_working(swept: &Swept) -> (Option<Table>, Sheet) {
    let mut sheet = swept_sheet(swept);
    let followed = followed(swept, &swept.clearance);
    sheet.append(followed.sheet);
    (followed.table, sheet)
}

/// The bound, its gap, where it is attained.
pub fn swept_sheet(swept: &Swept) -> Sheet {
    let clearance = &swept.clearance;
    let mut sheet = Sheet::default();
    sheet.remark(say!(
        "least distance by branch and bound over every pose: certified at least {}, attained {}, gap {}, {} boxes, {} pairs of bodies{}",
        Measure::of(clearance.lower),
        Measure::of(clearance.upper),
        Measure::of(clearance.gap()),
        clearance.boxes,
        clearance.pairs,
        match clearance.outcome {
            Outcome::Certified => "",
            Outcome::GapNotReached => "; the boxes ran out before the gap was reached",
        }
    ));
    sheet.remark(
        say!("between {} and {}, with ", body_words(&clearance.body.name), body_words(&clearance.other.name))
            .then(pose_words(&clearance.pose, swept)),
    );
    for (what, point) in [("on the one", clearance.on_body), ("on the other", clearance.on_other)] {
        sheet.remark(say!(
            "point {}: {} forward, {} to port, {} up",
            what,
            metres(point.x),
            metres(point.y),
            metres(point.z)
        ));
    }
    sheet
}

fn swept_part(title: &str, swept: &Swept) -> Part {
    let mut ranges =
        vec![range_row("tilt", swept.scene.tilt), range_row("steering (starboard positive)", swept.scene.steer)];
    if let Some(lift) = swept.lifts() {
        ranges.push(lift_row(lift));
    }
    let (corners, mut sheet) = swept_working(swept);
    for other in &swept.also {
        sheet.remark(
            say!("nearer than wanted besides: ")
                .then(touch_words(other, swept))
                .then(Text::from(", with "))
                .then(pose_words(&other.pose, swept)),
        );
    }
    Part {
        title: title.to_owned(),
        tables: vec![Table::new("ranges", &["", "from", "to"], ranges)].into_iter().chain(corners).collect(),
        sheet,
    }
}

fn water_part(swing: &Swing) -> Part {
    let rows = match &swing.water {
        Ok(all) => all
            .iter()
            .map(|one| {
                vec![
                    Text::from(one.label.as_str()),
                    Text::from(one.condition.name()),
                    Text::from(Measure::of(one.clearance.height)),
                    Text::from(one.clearance.body.as_str()),
                    Text::from(Measure::of(one.gearcase.height)),
                ]
            })
            .collect(),
        Err(open) => return Part::said("over the water at full tilt", open.words()),
    };
    Part {
        title: "over the water at full tilt".to_owned(),
        tables: vec![Table::new(
            "lowest points over the water",
            &["engine", "condition", "propeller and skeg", "what", "gearcase"],
            rows,
        )],
        ..Part::default()
    }
}

fn ground_parts(swing: &Swing) -> Vec<Part> {
    let all = match &swing.ground {
        Ok(all) => all,
        Err(open) => return vec![Part::said("over the road", open.words())],
    };
    let mut parts = Vec::new();
    for one in all {
        let mut part = swept_part(&format!("over the road: {}", one.road.label), &one.road);
        part.tables.push(Table::new(
            "height over the road, steered ahead",
            &["position", "height", "what"],
            [("full tilt", &one.tilted), ("down", &one.down)]
                .map(|(position, height)| {
                    vec![Text::from(position), Text::from(Measure::of(height.height)), Text::from(height.body.as_str())]
                })
                .to_vec(),
        ));
        parts.push(part);
        if let Some(trailer) = &one.trailer {
            parts.push(swept_part(&format!("parts of the trailer: {}", trailer.label), trailer));
        }
    }
    parts
}
