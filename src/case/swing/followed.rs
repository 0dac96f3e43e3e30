//! Where a least distance is attained, as it can be redone by hand: the corners that meet, and each one's way into the boat.

use nalgebra::{Point3, Vector3};
use uom::si::f64::Length;

use super::swept::Swept;
use super::words::body_words;
use crate::physics::swing::followed::{LETTERS, Place, Stand, apart, between, follow, given, out_to_surface};
use crate::physics::swing::{Clearance, ConvexBody, End, EngineChain, Owner, Part, whence};
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::working::{Sheet, Table};

/// A distance worked out again agrees with the certified one within this, in metres; else it is not told.
const AGREES: f64 = 1e-6;

/// The corners that meet, and the way of each.
pub(super) struct Followed {
    pub table: Option<Table>,
    pub sheet: Sheet,
}

/// One of the two bodies of a least distance.
struct Side<'c> {
    mark: &'static str,
    /// What its point is called in the lines before.
    told: &'static str,
    owner: Owner,
    name: &'c str,
    on: Point3<f64>,
    /// From its surface to the other's.
    way: Vector3<f64>,
}

pub(super) fn followed(swept: &Swept, clearance: &Clearance) -> Followed {
    let way = clearance.direction.into_inner();
    let (body, other) = (&clearance.body, &clearance.other);
    let sides = [
        Side {
            mark: "1",
            told: "the point on the one",
            owner: body.owner,
            name: &body.name,
            on: clearance.on_body,
            way,
        },
        Side {
            mark: "2",
            told: "the point on the other",
            owner: other.owner,
            name: &other.name,
            on: clearance.on_other,
            way: -way,
        },
    ];
    let mut sheet = Sheet::default();
    let mut rows = Vec::new();
    let places = sides.map(|side| {
        let found = of_engine(swept, clearance, &side).and_then(|engine| engine.followed(&side, &mut sheet, &mut rows));
        found.unwrap_or_else(|| given(side.told, &side.on))
    });
    let mut last = Sheet::default();
    let [one, two] = &places;
    let distance = apart(&mut last, one, two, clearance.upper.value < 0.0);
    if (distance.value() - clearance.upper).value.abs() <= AGREES {
        sheet.append(last);
    }
    let heads = ["", "what", "forward", "port", "height", "where from"];
    let title = if is_outright(&swept.scene.engine) {
        "corners that meet, and the axes, from the tilt axis, before tilting"
    } else {
        "corners that meet, and the axes, from the engine's rest, upright"
    };
    let table = (!rows.is_empty()).then(|| Table::new(title, &heads, rows));
    Followed { table, sheet }
}

/// Whether an engine's axes were given outright: then it counts from the tilt axis, and has no rest on a bracket.
fn is_outright(chain: &EngineChain) -> bool {
    (chain.origin() - chain.tilt_axis().point()).norm() <= FLAT
}

/// A body of an engine, with the chain that carries it and how that stands.
struct OfEngine<'s> {
    chain: &'s EngineChain,
    part: Part,
    body: &'s ConvexBody,
    stand: Stand,
}

fn of_engine<'s>(swept: &'s Swept, clearance: &Clearance, side: &Side) -> Option<OfEngine<'s>> {
    let pose = &clearance.pose;
    let (chain, tilt) = match side.owner {
        Owner::Engine(_) => (&swept.scene.engine, pose.tilt),
        Owner::Neighbour(_) => (&swept.scene.neighbour.as_ref()?.chain, pose.neighbour_tilt.unwrap_or(pose.tilt)),
        Owner::Rod | Owner::Obstacle => return None,
    };
    let (chain, stand) = match chain.stood() {
        Some(stood) => (&stood.chain, Stand { tilt: stood.tilt, steer: stood.steer, lift: pose.lift }),
        None => (chain, Stand { tilt, steer: pose.steer, lift: pose.lift }),
    };
    let (part, body) = chain.bodies().iter().find(|(_, body)| body.name() == side.name)?;
    Some(OfEngine { chain, part: *part, body, stand })
}

impl OfEngine<'_> {
    fn followed(&self, side: &Side, sheet: &mut Sheet, rows: &mut Vec<Vec<Text>>) -> Option<Place> {
        let (chain, body, stand) = (self.chain, self.body, self.stand);
        let carried =
            |point: &Point3<f64>| chain.raised(chain.carried(self.part, *point, stand.tilt, stand.steer), stand.lift);
        let corners: Vec<Point3<f64>> = body.points().iter().map(carried).collect();
        let radius = body.radius();
        let shares = between(&corners, &(side.on - side.way * radius.value));
        let place = follow(sheet, side.mark, chain, (self.part, body), &shares, stand)?;
        for (share, letter) in shares.iter().zip(LETTERS) {
            let letter = if shares.len() > 1 { letter } else { "" };
            rows.push(row(&format!("corner {}{letter}", side.mark), body, share.corner, chain.origin()));
        }
        rows.extend(self.axes(side.mark));
        Some(out_to_surface(sheet, side.mark, place, radius, &side.way))
    }
}

impl OfEngine<'_> {
    /// Where the engine's two axes lie: in its own axes, and the one that stays in the boat.
    fn axes(&self, mark: &str) -> [Vec<Text>; 3] {
        let chain = self.chain;
        let [fitted, hung] = if is_outright(chain) {
            ["as the job has it"; 2]
        } else {
            ["as fitted to the mounting sheet", "where the engine hangs"]
        };
        let [tube, pivot] = [chain.tilt_axis(), chain.steering_axis()].map(|axis| axis.point());
        let row = |name: String, what: &str, at: [f64; 3], from: &str| {
            let mut row = vec![Text::from(name.as_str()), Text::from(what)];
            row.extend(at.map(|value| Text::from(Measure::of(Length::from_si(value)))));
            row.push(Text::from(from));
            row
        };
        let own = |at: Point3<f64>| (at - chain.origin()).into();
        [
            row(format!("tube {mark}"), "tilt tube", own(tube), fitted),
            row(format!("steering axis {mark}"), "steering axis", own(pivot), fitted),
            row(format!("boat, tube {mark}"), "tilt tube, in the boat", tube.coords.into(), hung),
        ]
    }
}

fn row(name: &str, body: &ConvexBody, corner: usize, origin: Point3<f64>) -> Vec<Text> {
    let (words, end) = corner_words(body, corner);
    let at = body.points()[corner] - origin;
    let mut row = vec![Text::from(name), say!("{} of {}", words, body_words(body.name()))];
    row.extend([at.x, at.y, at.z].map(|value| Text::from(Measure::of(Length::from_si(value)))));
    row.push(Text::from(whence(body.name(), end).as_deref().unwrap_or("as the job has it")));
    row
}

/// A size below which a body has no two ends, in metres.
const FLAT: f64 = 1e-9;

/// `forward upper port corner`, and at which ends of the body it is.
fn corner_words(body: &ConvexBody, corner: usize) -> (String, End) {
    let at = body.points()[corner];
    let end = |axis: usize| {
        let along = || body.points().iter().map(|point| point[axis]);
        let (low, high) = (along().fold(f64::INFINITY, f64::min), along().fold(f64::NEG_INFINITY, f64::max));
        (high - low > FLAT).then(|| at[axis] > 0.5 * (low + high))
    };
    let words = [(0, "forward", "after"), (2, "upper", "lower"), (1, "port", "starboard")]
        .into_iter()
        .filter_map(|(axis, high, low)| Some(if end(axis)? { high } else { low }));
    let words: Vec<&str> = words.chain(["corner"]).collect();
    (words.join(" "), End { forward: end(0).unwrap_or(true), upper: end(2).unwrap_or(true) })
}

/// Most corners of a body that its outline is told by: a disc has more.
const TOLD_CORNERS: usize = 8;

/// The outline of an engine: the port corners of every body that moves and has no more than a few.
pub(super) fn outline(chain: &EngineChain) -> Table {
    let middle = chain.origin().y;
    let rows = chain
        .bodies()
        .iter()
        .filter(|(part, body)| *part == Part::Head && body.points().len() <= TOLD_CORNERS)
        .flat_map(|(_, body)| {
            let corners = body.points().iter().enumerate().filter(|(_, point)| point.y >= middle);
            corners.map(|(corner, _)| row("", body, corner, chain.origin()).split_off(1))
        })
        .collect();
    Table::new(
        "outline, port side, from the middle of the bracket's rest, upright",
        &["corner", "forward", "to port", "up", "where from"],
        rows,
    )
}
