//! The way of one point of an engine, from its own axes into the boat's, as a person can redo it.
//!
//! Own axes: from the middle of the bracket's rest, as a mounting sheet measures; forward, to port, up; upright, steered ahead.

use nalgebra::{Point3, Vector3};
use uom::si::f64::{Angle, Length, Ratio};

use super::body::{ConvexBody, metres, radians};
use super::chain::{EngineChain, Part};
use crate::working::{Sheet, Term, cos, root, sin};

/// A point is on a corner, an edge or a face that comes within this of it, in metres: far below any gap.
const ON_IT: f64 = 1e-6;
/// Most corners of which every three are tried.
const MOST_CORNERS: usize = 40;
/// Steps are told for a tilt tube that lies square across and a steering axis that is upright over it, within this.
const SQUARE: f64 = 1e-9;

/// A corner of a body and the share that a point has of it: shares come to one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Share {
    /// Which of the body's points.
    pub corner: usize,
    /// How much of it.
    pub share: f64,
}

/// Of which corners a point of their hull lies between: one, two on an edge, three on a face; none where it is on none of
/// these.
pub fn between(corners: &[Point3<f64>], point: &Point3<f64>) -> Vec<Share> {
    let near = |at: Vector3<f64>| (at - point.coords).norm() <= ON_IT;
    let one = corners.iter().position(|corner| near(corner.coords));
    if let Some(corner) = one {
        return vec![Share { corner, share: 1.0 }];
    }
    for (i, a) in corners.iter().enumerate() {
        for (j, b) in corners.iter().enumerate().skip(i + 1) {
            let along = b - a;
            let share = (point - a).dot(&along) / along.norm_squared();
            if (0.0..=1.0).contains(&share) && near(a.coords + along * share) {
                return vec![Share { corner: i, share: 1.0 - share }, Share { corner: j, share }];
            }
        }
    }
    if corners.len() > MOST_CORNERS {
        return Vec::new();
    }
    for (i, a) in corners.iter().enumerate() {
        for (j, b) in corners.iter().enumerate().skip(i + 1) {
            for (k, c) in corners.iter().enumerate().skip(j + 1) {
                if let Some([second, third]) = on_face(a, &(b - a), &(c - a), point) {
                    let first = Share { corner: i, share: 1.0 - second - third };
                    return vec![first, Share { corner: j, share: second }, Share { corner: k, share: third }];
                }
            }
        }
    }
    Vec::new()
}

/// The shares of the two edges of a triangle at which a point lies in it.
fn on_face(a: &Point3<f64>, one: &Vector3<f64>, other: &Vector3<f64>, point: &Point3<f64>) -> Option<[f64; 2]> {
    let normal = one.cross(other);
    let double = normal.norm_squared();
    let off = point - a;
    if double <= f64::MIN_POSITIVE || off.dot(&normal).abs() / double.sqrt() > ON_IT {
        return None;
    }
    let (second, third) = (off.cross(other).dot(&normal) / double, one.cross(&off).dot(&normal) / double);
    (second >= 0.0 && third >= 0.0 && second + third <= 1.0).then_some([second, third])
}

/// How an engine stands.
#[derive(Debug, Clone, Copy)]
pub struct Stand {
    /// Tilt from upright.
    pub tilt: Angle,
    /// Steering, starboard positive.
    pub steer: Angle,
    /// Height of its lifting bracket, where it has one.
    pub lift: Option<Length>,
}

/// A point in boat axes, as terms.
pub type Place = [Term<Length>; 3];

/// Writes down how a point of a body comes from the corners on which it lies to its place in the boat, and gives that place.
/// Names and symbols end with `mark`; the names are those of the table that stands beside it. Nothing where the engine's axes
/// are not those of an outboard on its transom.
pub fn follow(
    sheet: &mut Sheet,
    mark: &str,
    chain: &EngineChain,
    (part, body): (Part, &ConvexBody),
    shares: &[Share],
    stand: Stand,
) -> Option<Place> {
    let (tube, pivot, origin) = (chain.tilt_axis(), chain.steering_axis(), chain.origin());
    let square = (tube.direction().into_inner() - Vector3::y()).norm() <= SQUARE
        && (pivot.direction().into_inner() - Vector3::z()).norm() <= SQUARE
        && (tube.point().y - pivot.point().y).abs() <= SQUARE;
    if !square || shares.is_empty() {
        return None;
    }
    let length = |name: &str, value: f64| Term::new(format!("{name} {mark}"), metres(value));
    let [forward, port, height] = own_axes(sheet, mark, body, shares, origin);
    let tube_forward = length("forward of tube", tube.point().x - origin.x);
    let tube_height = length("height of tube", tube.point().z - origin.z);
    let (before, aside) = match part {
        Part::Head => {
            let aft = length("aft of steering axis", origin.x - pivot.point().x);
            let turn = Term::new(format!("steering {mark}"), stand.steer);
            let arm = &forward + &aft;
            let ahead = &arm * &cos(turn.clone()) - &port * &sin(turn.clone());
            (ahead - aft - tube_forward, arm * sin(turn.clone()) + port * cos(turn))
        }
        Part::Swivel | Part::Bracket => (forward - tube_forward, port),
    };
    let u = sheet.set(&format!("u{mark}"), "steered, forward of the tilt tube before tilting", before);
    let w = sheet.set(&format!("w{mark}"), "above the tilt tube before tilting", height - tube_height);
    let (over, up) = match part {
        Part::Head | Part::Swivel => {
            let tilt = Term::new(format!("tilt {mark}"), stand.tilt);
            let over = &u * &cos(tilt.clone()) + &w * &sin(tilt.clone());
            (over, &w * &cos(tilt.clone()) - &u * &sin(tilt))
        }
        Part::Bracket => (u, w),
    };
    let at = tube.point();
    let x = length("boat forward of tube", at.x) + over;
    let y = length("boat port of tube", at.y) + aside;
    let z = length("boat height of tube", at.z) + up;
    let place = [
        sheet.set(&format!("x{mark}"), "tilted, forward in the boat", x),
        sheet.set(&format!("y{mark}"), "to port in the boat", y),
        sheet.set(&format!("z{mark}"), "tilted, up in the boat", z),
    ];
    Some(lifted(sheet, mark, chain, stand.lift, place))
}

/// The point in the engine's own axes: a corner, or between the corners on which it lies.
fn own_axes(sheet: &mut Sheet, mark: &str, body: &ConvexBody, shares: &[Share], origin: Point3<f64>) -> Place {
    let ways = [("a", "forward"), ("b", "port"), ("c", "height")];
    let corner = |share: &Share| body.points()[share.corner] - origin;
    std::array::from_fn(|i| {
        let (symbol, way) = ways[i];
        // Where all corners agree, nothing lies between them.
        let agree = shares.iter().all(|share| (corner(share)[i] - corner(&shares[0])[i]).abs() <= SQUARE);
        if agree {
            return Term::new(format!("{way} of corner {mark}"), metres(corner(&shares[0])[i]));
        }
        let mut sum: Option<Term<Length>> = None;
        for (share, letter) in shares.iter().zip(LETTERS) {
            let part = Term::new(format!("share of corner {mark}{letter}"), Ratio::from(share.share));
            let one = part * Term::new(format!("{way} of corner {mark}{letter}"), metres(corner(share)[i]));
            sum = Some(match sum {
                None => one,
                Some(sum) => sum + one,
            });
        }
        let sum = sum.unwrap_or_else(|| Term::constant(Length::default()));
        sheet.set(&format!("{symbol}{mark}"), &format!("{way} of the point between the corners"), sum)
    })
}

/// Which of several corners.
pub const LETTERS: [&str; 3] = ["i", "j", "k"];

/// The place once the bracket is raised.
fn lifted(sheet: &mut Sheet, mark: &str, chain: &EngineChain, height: Option<Length>, [x, y, z]: Place) -> Place {
    let (Some(lift), Some(height)) = (chain.lift(), height) else {
        return [x, y, z];
    };
    let along = lift.along();
    let lean = Term::new("angle of the transom", radians((-along.x).atan2(along.z)));
    let h = Term::new("height of the bracket", height);
    let (mut forward, mut up) = (x - &h * &sin(lean.clone()), z + &h * &cos(lean.clone()));
    if let Some([length, hang]) = lift.arms() {
        let (length, hang) = (Term::new("length of its arms", length), Term::new("hang of its arms", hang));
        let reach = |below: Term<Length>| root(&length * &length - &below * &below);
        let k = reach(&h - &hang) - reach(hang.clone());
        let k = sheet.set(&format!("k{mark}"), "aft on the arms, square to the transom", k);
        forward = forward - &k * &cos(lean.clone());
        up = up - &k * &sin(lean);
    }
    [
        sheet.set(&format!("xh{mark}"), "raised, forward in the boat", forward),
        y,
        sheet.set(&format!("zh{mark}"), "raised, up in the boat", up),
    ]
}

/// Writes down how far two places are apart; negative where they overlap.
pub fn apart(sheet: &mut Sheet, one: &Place, other: &Place, overlap: bool) -> Term<Length> {
    let square = |i: usize| {
        let off = &other[i] - &one[i];
        &off * &off
    };
    let between = root(square(0) + square(1) + square(2));
    if overlap {
        let none = Term::constant(Length::default());
        sheet.remark("They overlap: their distance counts as less than nothing.");
        sheet.set("d", "least distance", none - between)
    } else {
        sheet.set("d", "least distance", between)
    }
}

/// Writes down a place on the surface of a rounded body: out from its core by the radius.
pub fn out_to_surface(sheet: &mut Sheet, mark: &str, place: Place, radius: Length, way: &Vector3<f64>) -> Place {
    if radius.value <= 0.0 {
        return place;
    }
    let radius = Term::new("radius", radius);
    let names = [("xr", "forward"), ("yr", "port"), ("zr", "up")];
    let mut i = 0;
    place.map(|at| {
        let (symbol, word) = names[i];
        let out = Term::new(format!("{word} in the direction to the other"), Ratio::from(way[i]));
        i += 1;
        sheet.set(&format!("{symbol}{mark}"), &format!("on its surface, {word} in the boat"), at + &radius * &out)
    })
}

/// A place that is given in the boat.
pub fn given(what: &str, at: &Point3<f64>) -> Place {
    let ways = ["forward", "port", "height"];
    std::array::from_fn(|i| Term::new(format!("{} of {what}", ways[i]), metres(at[i])))
}
