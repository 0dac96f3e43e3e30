//! What all that hangs on a face brings to it in a case, line by line: each weight and thrust with its arm.

use uom::si::f64::{Angle, Force, Length, Ratio};

use super::cases::{Acting, FaceLoad};
use crate::physics::strength::bolts::{MIDDLE, WrittenLoad};
use crate::quantity::{Dimensioned, Moment};
use crate::working::{Sheet, Term, cos, number, sin};

/// Less than this of a force or an arm is none, N and m.
const NOTHING: f64 = 1e-9;

impl FaceLoad {
    /// Of all that acts on a face whose top leans aft so far.
    pub fn of(acting: &[Acting], lean: Angle) -> FaceLoad {
        let all = acting.iter().map(|one| FaceLoad::at(one.place, one.force));
        all.fold(FaceLoad::default(), FaceLoad::plus).leaning(lean)
    }
}

/// The terms of a sum, each with its sign.
#[derive(Default)]
struct Sum<Q> {
    plus: Vec<Term<Q>>,
    minus: Vec<Term<Q>>,
}

impl<Q: Dimensioned> Sum<Q>
where
    Term<Q>: std::ops::Add<Output = Term<Q>> + std::ops::Sub<Output = Term<Q>>,
{
    /// The sum on a line of its own; nothing where it has no terms.
    fn line(self, sheet: &mut Sheet, symbol: &str, meaning: &str, negative: fn(Term<Q>) -> Term<Q>) -> Option<Term<Q>> {
        let add = |terms: Vec<Term<Q>>| terms.into_iter().reduce(|sum, more| sum + more);
        let sum = match (add(self.plus), add(self.minus)) {
            (Some(plus), Some(minus)) => plus - minus,
            (Some(plus), None) => plus,
            (None, minus) => negative(minus?),
        };
        Some(sheet.set(symbol, meaning, sum))
    }
}

/// The lines of [`FaceLoad::of`], for what acts under these names; `at` is where the moments are taken, the middle of the bolts
/// (`[y, z]`, m).
pub fn written_face_load(
    sheet: &mut Sheet,
    acting: &[(&str, Acting)],
    lean: Angle,
    lean_from: &str,
    at: [f64; 2],
) -> WrittenLoad {
    let (mut ahead, mut aside, mut down) = (Vec::new(), Vec::new(), Vec::new());
    let (mut port, mut square, mut along) =
        (Sum::<Moment>::default(), Sum::<Moment>::default(), Sum::<Moment>::default());
    for (i, (name, one)) in acting.iter().enumerate() {
        let i = i + 1;
        let ([x, y, z], [fx, fy, fz]) = (one.place, one.force);
        let arm = |sheet: &mut Sheet, symbol: &str, what: &str, metres: f64| {
            sheet.given(&format!("{symbol}{i}"), &format!("{name}: {what}"), Length::from_si(metres), ABOVE)
        };
        let is = |value: f64| value.abs() > NOTHING;
        if is(fz) {
            let weight = sheet.given(
                &format!("F{i}"),
                &format!("weight of the {name} in this case"),
                Force::from_si(-fz),
                ABOVE,
            );
            let aft = arm(sheet, "a", "aft of the middle of the bolts", -x);
            let turns =
                sheet.set(&format!("M{i}"), &format!("moment of that weight about port: {name}"), &weight * aft);
            port.minus.push(turns);
            if is(y) {
                let off = arm(sheet, "y", "to port of the middle of the bolts", y);
                square.minus.push(&weight * off);
            }
            down.push(weight);
        }
        if is(fx) {
            let thrust = sheet.given(&format!("T{i}"), &format!("thrust of the {name}"), Force::from_si(fx), ABOVE);
            let below = arm(sheet, "h", "its shaft below the middle of the bolts", -z);
            let turns =
                sheet.set(&format!("Q{i}"), &format!("moment of that thrust about port: {name}"), &thrust * below);
            port.minus.push(turns);
            if is(y) {
                let off = arm(sheet, "y", "to port of the middle of the bolts", y);
                along.minus.push(&thrust * off);
            }
            ahead.push(thrust);
        }
        if is(fy) {
            let side = sheet.given(&format!("S{i}"), &format!("side force of the {name}"), Force::from_si(fy), ABOVE);
            let below = arm(sheet, "h", "its shaft below the middle of the bolts", -z);
            let aft = arm(sheet, "p", "its propeller aft of the middle of the bolts", -x);
            square.plus.push(&side * below);
            along.minus.push(&side * aft);
            aside.push(side);
        }
    }
    let turned: fn(Term<Moment>) -> Term<Moment> = |moment| number(-1.0) * moment;
    let pulled: fn(Term<Force>) -> Term<Force> = |force| number(-1.0) * force;
    let none = Term::constant(Moment::from_si(0.0));
    let about_port = port.line(sheet, "Mp", "moment about port: negative lifts the upper bolts", turned);
    let about_square = square.line(sheet, "M0", "moment about the line forward", turned);
    let about_up = along.line(sheet, "Mv", "moment about the plumb line", turned);
    let all = |sheet: &mut Sheet, symbol: &str, meaning: &str, terms: Vec<Term<Force>>| {
        Sum { plus: terms, minus: Vec::new() }.line(sheet, symbol, meaning, pulled)
    };
    let ahead = all(sheet, "X", "all thrust, forward", ahead);
    let aside = all(sheet, "Y", "force on the face to port", aside);
    let down = all(sheet, "W", "all weight in this case", down);
    let lean = sheet.given("θ", "angle of the transom from plumb", lean, lean_from);
    let (cosine, sine) = (|| cos(lean.clone()), || sin(lean.clone()));
    let times =
        |force: &Option<Term<Force>>, part: Term<Ratio>| force.iter().map(|force| force * part.clone()).collect();
    let push = Sum { plus: times(&ahead, cosine()), minus: times(&down, sine()) };
    let push = push.line(sheet, "Fx", "force on the face square to the transom, forward", pulled);
    let up: Vec<Term<Force>> = [times(&down, cosine()), times(&ahead, sine())].concat();
    let up = Sum { plus: Vec::new(), minus: up }.line(sheet, "U", "force on the face up along the transom", pulled);
    let times = |moment: &Option<Term<Moment>>, part: Term<Ratio>| -> Vec<Term<Moment>> {
        moment.iter().map(|moment| moment * part.clone()).collect()
    };
    let twist = Sum { plus: [times(&about_square, cosine()), times(&about_up, sine())].concat(), minus: Vec::new() };
    let twist = twist.line(sheet, "Mx", "moment about the line square to the transom", turned);
    let yaw = Sum { plus: times(&about_up, cosine()), minus: times(&about_square, sine()) };
    let yaw = yaw.line(sheet, "Mz", "moment about the line up along the transom", turned);
    let force = |force: Option<Term<Force>>| force.unwrap_or_else(|| Term::constant(Force::from_si(0.0)));
    let moment = |moment: Option<Term<Moment>>| moment.unwrap_or_else(|| none.clone());
    WrittenLoad {
        at,
        at_from: MIDDLE,
        force: [push, aside, up].map(force),
        moment: [twist, about_port, yaw].map(moment),
    }
}

/// Where forces and arms of a case are from.
const ABOVE: &str = "lines above";
