//! What one bolt of a group carries, line by line: the working of [`super::bolt_forces`], and comes to the same.

use uom::si::f64::{Area, Force, Length, Ratio};

use super::group::{Bolt, Foot};
use crate::quantity::{Dimensioned, Measure, Moment, say};
use crate::working::{Sheet, Term, max, number, root_of_squares};

/// A bolt group to be written.
#[derive(Clone, Copy, Debug)]
pub struct WrittenGroup<'b> {
    /// All of one size.
    pub bolts: &'b [Bolt],
    /// The foot that they hold.
    pub foot: Foot,
    /// Where the places of the bolts are from, in words.
    pub bolts_from: &'b str,
    /// Where those of the foot's edges are from, in words.
    pub foot_from: &'b str,
}

/// What comes to the face, as the lines above have it, in its own axes: square to it (forward), to port, up along it.
#[derive(Clone, Debug)]
pub struct WrittenLoad {
    /// Where the forces act, `[y, z]`, m.
    pub at: [f64; 2],
    /// Where that place is from, in words.
    pub at_from: &'static str,
    /// Along these axes.
    pub force: [Term<Force>; 3],
    /// About them at that place, right-handed.
    pub moment: [Term<Moment>; 3],
}

/// Nearer to each other than this, bolts stand in one row, m: above what is lost in counting, below what a row read by
/// its first bolt may be off without its working leaving what was counted.
const SAME_ROW: f64 = 1e-10;
/// So many newton metres are none.
const NOTHING: f64 = 1e-9;
/// Where the place is from at which loads act that are taken at the bolts' middle.
pub const MIDDLE: &str = "the middle of the bolts";

/// Places that differ, lowest first, each with how many bolts stand there.
fn rows(places: impl Iterator<Item = f64>) -> Vec<(f64, usize)> {
    let mut sorted: Vec<f64> = places.collect();
    sorted.sort_by(f64::total_cmp);
    let mut rows: Vec<(f64, usize)> = Vec::new();
    for place in sorted {
        match rows.last_mut() {
            Some((last, count)) if (place - *last).abs() < SAME_ROW => *count += 1,
            _ => rows.push((place, 1)),
        }
    }
    rows
}

fn is_nothing(moment: &Term<Moment>) -> bool {
    moment.value().si().abs() < NOTHING
}

fn length(metres: f64) -> Length {
    Length::from_si(metres)
}

fn force(newtons: f64) -> Force {
    Force::from_si(newtons)
}

/// "row 2, 4 bolts".
fn row_words(what: &str, index: usize, count: usize) -> String {
    let bolts = if count == 1 { "1 bolt".to_owned() } else { format!("{count} bolts") };
    format!("{what} {}, {bolts}", index + 1)
}

/// The sum of squares of levers, each so many times.
fn squares(levers: &[(Term<Length>, usize)]) -> Term<Area> {
    let square = |(lever, count): &(Term<Length>, usize)| {
        let once = lever * lever;
        if *count == 1 { once } else { number(*count as f64) * once }
    };
    let all = levers.iter().map(square).reduce(|sum, more| sum + more);
    all.unwrap_or_else(|| Term::constant(Area::from_si(0.0)))
}

/// An edge about which a foot heels, and the rows of bolts that hold it there.
struct Heel<'w> {
    /// Its symbol, what it is, and where it lies, m.
    symbol: &'w str,
    edge: &'w str,
    at: f64,
    /// Whether the bolts lie on its high side.
    low: bool,
    /// Symbols of a place, a lever and the sum of their squares.
    symbols: [&'w str; 3],
    row: &'w str,
    /// Along which axis places are taken.
    along: fn(&Bolt) -> f64,
}

impl Heel<'_> {
    /// The levers of all rows with their bolts, the sum of their squares, and the lever of one bolt.
    fn levers(&self, sheet: &mut Sheet, group: &WrittenGroup, bolt: usize) -> Levers {
        let [place, lever, sum] = self.symbols;
        let edge = sheet.given(self.symbol, self.edge, length(self.at), group.foot_from);
        let own = group.bolts.get(bolt).map_or(f64::NAN, self.along);
        let mut all = Vec::new();
        let mut of_bolt = None;
        for (i, (at, count)) in rows(group.bolts.iter().map(self.along)).into_iter().enumerate() {
            let row = row_words(self.row, i, count);
            let stands =
                sheet.given(&format!("{place}{}", i + 1), &format!("place of {row}"), length(at), group.bolts_from);
            let off = if self.low { &stands - &edge } else { &edge - &stands };
            let off = sheet.set(&format!("{lever}{}", i + 1), &format!("lever of {row}"), off);
            if (own - at).abs() < SAME_ROW {
                of_bolt = Some(off.clone());
            }
            all.push((off, count));
        }
        let squares = sheet.set(sum, "squares of the levers, every bolt's", squares(&all));
        Levers { of_bolt: of_bolt.unwrap_or_else(|| Term::constant(Length::from_si(0.0))), all, squares }
    }
}

struct Levers {
    of_bolt: Term<Length>,
    all: Vec<(Term<Length>, usize)>,
    squares: Term<Area>,
}

/// The pull on the bolt of this number.
pub fn written_pull(sheet: &mut Sheet, group: &WrittenGroup, load: &WrittenLoad, bolt: usize) -> Term<Force> {
    let pulls = [upright(sheet, group, load, bolt), level(sheet, group, load, bolt)];
    let sum = pulls.into_iter().flatten().reduce(|sum, more| sum + more);
    match sum {
        Some(sum) => sheet.set("N", "pull on the bolt", sum),
        None => {
            sheet.remark("The face is pressed on all over: no bolt is pulled.");
            Term::new("N", force(0.0))
        }
    }
}

/// What the moment about port and the push do: the foot heels about its lower or its upper edge.
fn upright(sheet: &mut Sheet, group: &WrittenGroup, load: &WrittenLoad, bolt: usize) -> Option<Term<Force>> {
    let ([push, ..], [_, pitch, _]) = (&load.force, &load.moment);
    let at = sheet.given("zm", "height at which the forces act, up the transom", length(load.at[1]), load.at_from);
    let edges = [("zl", "lower edge of the face, up the transom"), ("zu", "upper edge of the face, up the transom")];
    let foot = group.foot;
    let [low, high] = [0, 1].map(|i| {
        let (symbol, meaning) = edges[i];
        sheet.given(symbol, meaning, length([foot.bottom, foot.top][i]), group.foot_from)
    });
    let about_low = number(-1.0) * (pitch + push * (&at - low));
    let about_low = sheet.set("Ml", "what lifts the face off about its lower edge", about_low);
    let about_high = sheet.set("Mu", "what lifts the face off about its upper edge", pitch + push * (&at - high));
    let side = usize::from(about_high.value().si() > about_low.value().si());
    let opening = if side == 0 { about_low } else { about_high };
    if opening.value().si() <= 0.0 {
        sheet.remark("Neither edge is lifted: the face lies on, and nothing about port pulls on a bolt.");
        return None;
    }
    let (symbol, edge) = edges[side];
    let pivot = [foot.bottom, foot.top][side];
    sheet.remark(say!(
        "Of the two the load lifts it more about its {} edge, {} up the transom: about that it heels. It is stiff, so a bolt is pulled by its lever from there.",
        ["lower", "upper"][side],
        Measure::of(length(pivot))
    ));
    let symbols = ["z", "l", "Σl²"];
    let heel = Heel { symbol, edge, at: pivot, low: side == 0, symbols, row: "row", along: |bolt| bolt.z };
    let levers = heel.levers(sheet, group, bolt);
    let pull = sheet.set("Np", "pull on the bolt by its lever", &opening * &levers.of_bolt / &levers.squares);
    let all = levers.all.iter().map(|(lever, count)| number(*count as f64) * lever).reduce(|sum, more| sum + more)?;
    let pressed = opening * all / levers.squares + push;
    let pressed = sheet.set("E", "force of the edge that is pressed on: all those pulls, and the push", pressed);
    if pressed.value().si() >= 0.0 { Some(pull) } else { Some(hanging(sheet, group, load, bolt)) }
}

/// The pull on a bolt of a foot that hangs free of the transom: its share of the pull, and its lever's from the middle.
fn hanging(sheet: &mut Sheet, group: &WrittenGroup, load: &WrittenLoad, bolt: usize) -> Term<Force> {
    sheet.remark(
        "That edge would have to pull: the face hangs free on its bolts, which share as a group about their middle.",
    );
    let ([push, ..], [_, pitch, _]) = (&load.force, &load.moment);
    let count = group.bolts.len().max(1) as f64;
    let middle = group.bolts.iter().map(|one| one.z).sum::<f64>() / count;
    let (symbols, row) = (["z", "m", "Σm²"], "row");
    let edge = "middle of the bolts, up the transom";
    let heel = Heel { symbol: "zc", edge, at: middle, low: true, symbols, row, along: |bolt| bolt.z };
    let middle_from = WrittenGroup { foot_from: group.bolts_from, ..*group };
    let levers = heel.levers(sheet, &middle_from, bolt);
    let at = sheet.given("zm", "height at which the forces act, up the transom", length(load.at[1]), load.at_from);
    let middle = sheet.given("zc", edge, length(middle), group.bolts_from);
    let share = number(-1.0) * push / sheet.given("nb", "bolts", Ratio::from_si(count), group.bolts_from);
    let pull = if levers.squares.value().si() > 0.0 {
        let about = sheet.set("Mc", "moment about the middle of the bolts", pitch + push * (at - middle));
        share - about * levers.of_bolt / levers.squares
    } else {
        share
    };
    sheet.set("Np", "pull on the bolt", max(pull, Term::constant(force(0.0))))
}

/// What the moment about the line up along the face does: the foot heels about a side edge.
fn level(sheet: &mut Sheet, group: &WrittenGroup, load: &WrittenLoad, bolt: usize) -> Option<Term<Force>> {
    let count = group.bolts.len().max(1) as f64;
    let off = load.at[0] - group.bolts.iter().map(|one| one.y).sum::<f64>() / count;
    let mut yaw = load.moment[2].clone();
    if off.abs() >= SAME_ROW {
        let off = sheet.given("yo", "how far to port of the bolts' middle the forces act", length(off), load.at_from);
        yaw = sheet.set("Mzc", "moment about the line up along it, at the bolts' middle", yaw - &load.force[0] * off);
    }
    if is_nothing(&yaw) {
        return None;
    }
    let starboard = yaw.value().si() > 0.0;
    let (symbol, side, at) = if starboard {
        ("ys", "starboard edge of the face", group.foot.starboard)
    } else {
        ("yp", "port edge of the face", group.foot.port)
    };
    sheet.remark(say!(
        "The moment about the line up along the face presses its {} edge on, {} off the centreline: about that it heels too.",
        if starboard { "starboard" } else { "port" },
        Measure::of(length(at.abs()))
    ));
    let symbols = ["yr", "k", "Σk²"];
    let heel = Heel { symbol, edge: side, at, low: starboard, symbols, row: "upright row", along: |bolt| bolt.y };
    let levers = heel.levers(sheet, group, bolt);
    let opening = if starboard { yaw } else { number(-1.0) * yaw };
    Some(sheet.set("Ny", "pull on the bolt by that lever", opening * levers.of_bolt / levers.squares))
}

/// The shear on the bolt of this number.
pub fn written_shear(sheet: &mut Sheet, group: &WrittenGroup, load: &WrittenLoad, bolt: usize) -> Term<Force> {
    let [_, across, up] = &load.force;
    let (bolts, from) = (group.bolts, group.bolts_from);
    let n = bolts.len().max(1) as f64;
    let middle = [bolts.iter().map(|b| b.y).sum::<f64>() / n, bolts.iter().map(|b| b.z).sum::<f64>() / n];
    let offset = [load.at[0] - middle[0], load.at[1] - middle[1]];
    let mut twist = load.moment[0].clone();
    if offset.iter().any(|off| off.abs() >= SAME_ROW) {
        let to_port = "how far to port of the bolts' middle the forces act";
        let to_port = sheet.given("yo", to_port, length(offset[0]), load.at_from);
        let above = sheet.given("zo", "how far above it", length(offset[1]), load.at_from);
        twist = sheet.set("Mt", "what twists the group about its middle", twist + to_port * up - above * across);
    }
    let count = sheet.given("nb", "bolts", Ratio::from_si(n), from);
    if is_nothing(&twist) {
        return sheet.set("V", "shear on the bolt", root_of_squares(across / &count, up / &count));
    }
    let mut all = Vec::new();
    for (k, symbol, side) in [(0, "b", "to a side of the middle"), (1, "e", "above or below the middle")] {
        let off = |one: &Bolt| (if k == 0 { one.y - middle[0] } else { one.z - middle[1] }).abs();
        for (i, (at, bolts)) in rows(bolts.iter().map(off)).into_iter().enumerate() {
            let meaning = format!("distance {side} of {bolts} of the bolts");
            all.push((sheet.given(&format!("{symbol}{}", i + 1), &meaning, length(at), from), bolts));
        }
    }
    let sum = sheet.set("Σr²", "squares of the bolts' distances from their middle", squares(&all));
    let [y, z] = bolts.get(bolt).map_or([0.0; 2], |one| [one.y - middle[0], one.z - middle[1]]);
    let y = sheet.given("yb", "the bolt, to port of the middle", length(y), from);
    let z = sheet.given("zb", "the bolt, above the middle", length(z), from);
    let sideways = sheet.set("Vy", "to port: its share, less the twist's", across / &count - &twist * z / &sum);
    let upward = sheet.set("Vz", "up: its share, and the twist's", up / count + twist * y / sum);
    sheet.set("V", "shear on the bolt", root_of_squares(sideways, upward))
}
