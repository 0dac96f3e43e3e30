//! The working that is printed of a bolt group and of the loads on it comes to what the solver counted with.

use proptest::prelude::*;
use sternknee::case::Case;
use sternknee::physics::strength::bolts::{
    Bolt, BoltForces, Foot, GroupLoad, WrittenGroup, WrittenLoad, bolt_forces, written_pull, written_shear,
};
use sternknee::quantity::{Dimensioned, Moment};
use sternknee::working::{Line, Sheet, Term};
use uom::si::f64::Force;

use super::{KNEES, boat, rig};

fn bolts() -> impl Strategy<Value = Vec<Bolt>> {
    let bolt = (-0.4_f64..0.4, 0.05_f64..0.6).prop_map(|(y, z)| Bolt { y, z, area: 9e-5 });
    prop::collection::vec(bolt, 2..9)
}

/// The pull and the shear of each bolt, as counted and as written, under a push, shears across and up, and moments about the
/// line aft, the line across and the line up.
fn counted_and_written(bolts: &[Bolt], force: [f64; 3], moment: [f64; 3], at: [f64; 2]) -> Vec<[[f64; 2]; 2]> {
    let foot = Foot { bottom: 0.0, top: 0.65, starboard: -0.45, port: 0.45 };
    let [push, across, up] = force;
    let [twist, pitch, yaw] = moment;
    let Ok(counted) = bolt_forces(bolts, foot, GroupLoad { at, push, shear: [across, up], twist, pitch, yaw }) else {
        return Vec::new();
    };
    let group = WrittenGroup { bolts, foot, bolts_from: "measured", foot_from: "measured" };
    let term = |symbol: &str, newtons: f64| Term::new(symbol, Force::from_si(newtons));
    let turn = |symbol: &str, value: f64| Term::new(symbol, <Moment as Dimensioned>::from_si(value));
    let written = WrittenLoad {
        at,
        at_from: "measured",
        force: [term("P", push), term("Y", across), term("U", up)],
        moment: [turn("Mx", twist), turn("Mp", pitch), turn("Mz", yaw)],
    };
    let both = |(i, bolt): (usize, &BoltForces)| {
        let pull = written_pull(&mut Sheet::default(), &group, &written, i).value().si();
        let shear = written_shear(&mut Sheet::default(), &group, &written, i).value().si();
        [[bolt.tension, pull], [bolt.shear, shear]]
    };
    counted.bolts.iter().enumerate().map(both).collect()
}

fn differ([counted, written]: [f64; 2]) -> bool {
    (written - counted).abs() > 1e-9 * (1.0 + counted)
}

proptest! {
    #[test]
    fn each_bolt_is_written_with_the_forces_that_were_counted(
        bolts in bolts(), force in prop::array::uniform3(-2e4_f64..2e4), moment in prop::array::uniform3(-1e4_f64..1e4),
        at in (-0.2_f64..0.2, 0.1_f64..0.5),
    ) {
        for pair in counted_and_written(&bolts, force, moment, [at.0, at.1]).into_iter().flatten() {
            prop_assert!(!differ(pair), "{pair:?}");
        }
    }
}

/// Bolts that stand less than a thousandth of a millimetre from a row, to a side of the middle, are not of that row.
#[test]
fn bolts_that_all_but_stand_in_a_row_are_written_where_they_stand() {
    let places = [
        -0.15886680003778444,
        -0.022241767650535774,
        -0.09708360825672614,
        0.19166832840656287,
        -0.16761261756968232,
        -0.2018015048334802,
        -0.3788880677247265,
        -0.06645180206518836,
    ];
    let bolts = places.map(|y| Bolt { y, z: 0.05, area: 9e-5 });
    let found = counted_and_written(&bolts, [0.0; 3], [1087.6927999376703, 0.0, 0.0], [0.0, 0.1]);
    assert_eq!(found.len(), bolts.len());
    for pair in found.into_iter().flatten() {
        assert!(!differ(pair), "{pair:?}");
    }
}

/// Direct shear (Shigley, section 8-12): what works through the middle of a group and does not turn it is shared evenly.
#[test]
fn what_does_not_turn_a_group_is_written_as_shared_evenly() {
    let bolts = [(-0.1, 0.2), (0.1, 0.2), (-0.1, 0.4), (0.1, 0.4)].map(|(y, z)| Bolt { y, z, area: 9e-5 });
    let foot = Foot { bottom: 0.0, top: 0.65, starboard: -0.45, port: 0.45 };
    let group = WrittenGroup { bolts: &bolts, foot, bolts_from: "measured", foot_from: "measured" };
    let term = |symbol: &str, newtons: f64| Term::new(symbol, Force::from_si(newtons));
    let turn = |symbol: &str| Term::new(symbol, <Moment as Dimensioned>::from_si(0.0));
    let written = WrittenLoad {
        at: [0.0, 0.3],
        at_from: "measured",
        force: [term("P", 0.0), term("Y", 3000.0), term("U", -4000.0)],
        moment: [turn("Mx"), turn("Mp"), turn("Mz")],
    };
    let shear = written_shear(&mut Sheet::default(), &group, &written, 2).value().si();
    assert!((shear - 5000.0 / 4.0).abs() < 1e-9, "{shear}");
}

/// The last result under a symbol.
fn last(sheet: &Sheet, wanted: &str) -> Option<f64> {
    sheet.lines().iter().rev().find_map(|line| match line {
        Line::Step { symbol, result, .. } if symbol == wanted => Some(result.si),
        _ => None,
    })
}

#[test]
fn the_working_of_a_boat_comes_to_the_greatest_pull_and_shear_of_its_bolts() {
    let rig = rig(&boat("four-stroke 115 hp inline-4", "", KNEES, ""));
    let case = Case::new(&rig);
    let strength = case.strength().expect("strength");
    let parts = case.strength_parts();
    for footing in &strength.after.footings {
        let bolts = || footing.forces.iter().flat_map(|group| &group.bolts);
        let most =
            [bolts().map(|bolt| bolt.tension).fold(0.0, f64::max), bolts().map(|bolt| bolt.shear).fold(0.0, f64::max)];
        let lead = format!("after: {}: ", footing.name);
        let written: Vec<&Sheet> =
            parts.iter().filter(|part| part.title.starts_with(&lead)).map(|part| &part.sheet).collect();
        for (symbol, most) in ["N", "V"].into_iter().zip(most) {
            let found = written.iter().filter_map(|sheet| last(sheet, symbol)).fold(0.0, f64::max);
            assert!((found - most).abs() < 1e-9 * most, "{symbol}: {found} {most}");
        }
    }
}

/// Where weight and thrust act on a leaning transom, by the vectors of its own axes: `[aft, up]`, square off it and up along it.
mod arms {
    use proptest::prelude::*;
    use sternknee::physics::strength::loads::{Arms, Hang};
    use sternknee::quantity::Dimensioned;
    use sternknee::working::{Sheet, Term};
    use uom::si::f64::{Angle, Length};

    fn metres(value: f64) -> Length {
        Length::from_si(value)
    }

    fn si(term: &Term<Length>) -> f64 {
        term.value().si()
    }

    fn hang() -> Hang {
        Hang {
            height: metres(0.508),
            lean: Angle::from_si(0.0),
            middle: metres(0.381),
            setback: metres(0.0),
            drop: metres(0.0),
            holes_up: 0,
            centre_aft: metres(0.3),
            centre_above: metres(0.2),
            tilt: Angle::from_si(0.0),
            leg: metres(0.508),
            gearcase: metres(0.2),
        }
    }

    /// A 20 in leg on a 20 in upright transom, bolts 5 in below its top, shaft 200 mm below the plate.
    #[test]
    fn of_an_upright_transom_they_are_sums_of_the_tapes_own_lengths() {
        let arms = Arms::of(&mut Sheet::default(), &hang());
        let told = [&arms.weight_aft, &arms.tilted_aft, &arms.weight_up, &arms.propeller_aft, &arms.shaft_down].map(si);
        for (told, wanted) in told.into_iter().zip([0.3, 0.3, 0.327, 0.45, 0.581]) {
            assert!((told - wanted).abs() < 1e-12, "{told} {wanted}");
        }
    }

    proptest! {
        #[test]
        fn of_a_leaning_one_they_are_the_vectors_of_its_axes(
            lean in 0.0..0.4_f64, middle in 0.2..0.5_f64, setback in 0.0..0.9_f64, drop in -0.2..0.3_f64, rows in 0_u8..5,
            tilt in 0.0..1.3_f64,
        ) {
            let hang = Hang {
                lean: Angle::from_si(lean), middle: metres(middle), setback: metres(setback), drop: metres(drop), holes_up: rows,
                tilt: Angle::from_si(tilt), ..hang()
            };
            let arms = Arms::of(&mut Sheet::default(), &hang);
            let (square, along) = ([lean.cos(), -lean.sin()], [lean.sin(), lean.cos()]);
            // The rest lies on the face that is set off square, at its plumb height; rows of holes are 3/4 in apart.
            let height = (0.508 + 0.01905 * f64::from(rows)) * along[1] - drop;
            let up_the_face = (height - setback * square[1]) / along[1];
            let [aft, up] = [0, 1].map(|k| setback * square[k] + (up_the_face - middle) * along[k]);
            // Tilted up, the head goes forward and the leg aft, about the rest.
            let tilted = aft + 0.3 * tilt.cos() - 0.2 * tilt.sin();
            let wanted = [aft + 0.3, tilted, up + 0.2, aft + 0.45, 0.708 - up];
            let told = [&arms.weight_aft, &arms.tilted_aft, &arms.weight_up, &arms.propeller_aft, &arms.shaft_down].map(si);
            for (told, wanted) in told.into_iter().zip(wanted) {
                prop_assert!((told - wanted).abs() < 1e-12, "{} {}", told, wanted);
            }
        }
    }
}
