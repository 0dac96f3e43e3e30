//! What a transom and its load cases are put together from.

use sternknee::case::Case;
use sternknee::case::strength::{Strength, Swept};
use sternknee::physics::strength::loads::Case as Kind;
use sternknee::physics::strength::panel::LineKind;
use sternknee::quantity::Basis;
use sternknee::rig::Rig;

use super::{KNEES, boat, rig};

fn strength<T>(text: &str, of: impl FnOnce(&Rig, &Strength) -> T) -> T {
    let rig = rig(text);
    let case = Case::new(&rig);
    of(&rig, case.strength().expect("strength"))
}

const ENGINE: &str = "four-stroke 40 hp inline-3";

/// Torsion of a bar of rectangular section, `k G a b³`: k is 0.229 where the sides are as 2 to 1, 0.281 as 4 to 1. Timoshenko and
/// Goodier, Theory of Elasticity, table of torsion constants (from memory). Bending is `E b h³ / 12`.
#[test]
fn a_stiffener_twists_and_bends_as_a_bar_of_its_section() {
    for (depth, height, k) in [(3.0_f64, 1.5_f64, 0.229), (1.5, 3.0, 0.229), (4.0, 1.0, 0.281)] {
        let more = format!(
            r#"top_stiffener: (material: "Douglas-fir marine plywood", depth: "{depth} in", height: "{height} in")"#
        );
        strength(&boat(ENGINE, "", KNEES, &more), |rig, strength| {
            let material = rig.structure.stiffener_material.as_ref().expect("a material");
            let [line] = strength.board.lines.as_slice() else { panic!("{:?}", strength.board.lines) };
            let LineKind::Beam { bending, torsion } = line.kind else { panic!("{line:?}") };
            let (depth, height) = (0.0254 * depth, 0.0254 * height);
            let (long, short) = (depth.max(height), depth.min(height));
            let read = torsion / (material.shear_modulus.value.value * long * short.powi(3));
            assert!((read / k - 1.0).abs() < 0.005, "{depth} {height}: {read}");
            let own = material.modulus_along.value.value * height * depth.powi(3) / 12.0;
            assert!((bending / own - 1.0).abs() < 1e-12, "{depth} {height}: {bending} {own}");
        });
    }
}

/// Of several engines one can be alone at full throttle; a single one is so anyway.
#[test]
fn one_engine_alone_is_a_case_of_twins_only() {
    let alone = |text: &str| {
        strength(text, |_, strength| {
            strength.after.cases.iter().filter(|case| case.alone).map(|case| case.kind).collect::<Vec<_>>()
        })
    };
    let single = boat(ENGINE, "", KNEES, "");
    assert_eq!(alone(&single), []);
    let (before, after) = single.split_once("engines_on").expect("engines");
    let twins = after.replace("at: [centre]", r#"at: [port("11 in"), starboard("11 in")]"#);
    assert_eq!(alone(&format!("{before}engines_on{twins}")), [Kind::StaticThrust]);
}

/// A bracket stands amidships of its engines: the middle of their places, from the middle of its bolts.
#[test]
fn a_brackets_own_weight_hangs_amidships_of_its_engines() {
    let text = boat(ENGINE, "", KNEES, "");
    let (before, after) = text.split_once("engines_on").expect("engines");
    let on = r#"bracket: (described: (kind: frame, setback: "12 in", drop: "0 in", weight: "90 lb")), bolts:"#;
    for (port, starboard) in [(11.0, 11.0), (16.0, 8.0), (6.0, 20.0)] {
        let at = format!(r#"at: [port("{port} in"), starboard("{starboard} in")]"#);
        let text = format!("{before}engines_on{}", after.replace("at: [centre]", &at).replace("bolts:", on));
        strength(&text, |_, strength| {
            let [footing] = strength.after.footings.as_slice() else { panic!("one bracket") };
            let own = |acting: &&(String, _)| acting.0.contains("bracket");
            let (_, acting) = footing.acting[0].iter().find(own).expect("the bracket's weight");
            let wanted = 0.0254 * 0.5 * (port - starboard) - footing.middle[0];
            assert!((acting.place[1] - wanted).abs() < 1e-9, "{port} {starboard}: {} {wanted}", acting.place[1]);
        });
    }
}

/// A transom told by its whole thickness has its one layer from there; told by layers, from them.
#[test]
fn a_layers_legend_says_where_its_thickness_is_from() {
    let from = |text: &str| strength(text, |rig, strength| strength.board.layers_from(rig));
    let plain = boat(ENGINE, "", KNEES, "");
    assert_eq!(from(&plain), Basis::Measured.origin());
    let papers = plain.replace(r#"thickness: "2 in""#, r#"thickness: (value: "2 in", basis: builder)"#);
    assert_eq!(from(&papers), Basis::Builder.origin());
    let layers = r#"lay_up: [(material: "Douglas-fir marine plywood", thickness: (value: "2 in", basis: catalog))]"#;
    assert_eq!(from(&boat(ENGINE, "", KNEES, layers)), Basis::Catalog.origin());
}

/// A reading is swept in even steps about what was told, and there its factors are those that are told.
#[test]
fn a_sweep_goes_in_even_steps_about_what_was_told() {
    strength(&boat(ENGINE, "", KNEES, ""), |rig, strength| {
        for swept in Swept::ALL {
            let sweep = strength.sweep(rig, swept).expect("told");
            assert!(sweep.points.len() > 3, "{swept:?}");
            for pair in sweep.points.windows(2) {
                assert!((pair[1].change - pair[0].change - swept.step()).abs() < 1e-12, "{swept:?}: {pair:?}");
            }
            let told = sweep.points.iter().find(|point| point.change == 0.0).expect("as told");
            let ways = sternknee::case::strength::SWEPT_WAYS;
            for (factor, way) in told.factors.iter().zip(ways) {
                assert!((factor / strength.after.bent.factor(way) - 1.0).abs() < 1e-9, "{swept:?} {way:?}");
            }
        }
    });
}
