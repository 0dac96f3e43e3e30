//! A panel's stiffness layer by layer, by the functions that its plate runs on: in numbers for the plate, in terms for a sheet.

use uom::si::f64::{Length, Pressure, Ratio};

use super::layup::Layup;
use super::stiffness::{TWELVE, narrowed, share};
use crate::quantity::{Dimensioned, Moment};
use crate::working::{Sheet, Term, number};

/// Bending stiffness of a panel of plies, line by line: across, up, one way by the other. The sums are the plate's own.
pub fn written(sheet: &mut Sheet, layup: &Layup) -> [Term<Moment>; 3] {
    let mut sums: [Vec<Term<Moment>>; 4] = Default::default();
    let stretched = layup.stretches();
    for (i, layer) in layup.layers().enumerate() {
        let i = i + 1;
        let material = &layer.ply.material;
        let given = |sheet: &mut Sheet, symbol: &str, meaning: &str, value: Pressure| {
            sheet.given(symbol, meaning, value, LAYERS)
        };
        let (e1, e2) = (
            given(sheet, "E1", "modulus of the layer, across", material.modulus_y),
            given(sheet, "E2", "modulus of the layer, up", material.modulus_z),
        );
        let poisson = Ratio::from_si(material.poisson);
        let nu = sheet.given("ν", "how the layer narrows up when it is stretched across", poisson, LAYERS);
        let part = narrowed(e1.clone(), e2.clone(), nu.clone(), number(1.0));
        let name = |symbol: &str| format!("{symbol}({i})");
        let part = sheet.set(&name("κ"), &format!("layer {i}: part that both ways together leave"), part);
        let across = sheet.set(&name("Q11"), &format!("layer {i}: stiffness across"), e1 / &part);
        let up = sheet.set(&name("Q22"), &format!("layer {i}: stiffness up"), e2.clone() / &part);
        let both = sheet.set(&name("Q12"), &format!("layer {i}: stiffness one way by the other"), nu * e2 / part);
        let twist = given(sheet, "G", "shear modulus of the layer in its plane", material.shear_plane);
        let thick = sheet.given("t", "thickness of the layer", layer.ply.thickness, LAYERS);
        let middle = Length::from_si(layer.middle);
        let middle = sheet.given("x", "middle of the layer, inward of the panel's", middle, LAYERS);
        let shift = |sheet: &mut Sheet, symbol: &str, [row, column]: [usize; 2]| {
            let meaning = "the panel's middle: what it is stretched by as it bends";
            sheet.given(symbol, meaning, Length::from_si(layup.shift(row, column)), NO_PULL)
        };
        let turns = |sheet: &mut Sheet, parts: &[(&Term<Pressure>, &str, [usize; 2])]| {
            let parts = parts.iter().map(|(plane, symbol, at)| *plane * shift(sheet, symbol, *at));
            parts.reduce(|a, b| a + b).filter(|_| stretched)
        };
        let turned = [
            turns(sheet, &[(&across, "s11", [0, 0]), (&both, "s21", [1, 0])]),
            turns(sheet, &[(&both, "s12", [0, 1]), (&up, "s22", [1, 1])]),
            turns(sheet, &[(&across, "s12", [0, 1]), (&both, "s22", [1, 1])]),
            turns(sheet, &[(&twist, "s66", [2, 2])]),
        ];
        for (k, (plane, turned)) in [across, up, both, twist].into_iter().zip(turned).enumerate() {
            let (symbol, words) = SHARES[k];
            let share = share(plane, turned, thick.clone(), middle.clone(), number(TWELVE));
            sums[k].push(sheet.set(&name(symbol), &format!("layer {i}: share of {words}"), share));
        }
    }
    let mut sums = sums.into_iter().enumerate().map(|(k, shares)| {
        let (symbol, words) = SHARES[k];
        let none = Term::constant(Moment::from_si(0.0));
        sheet.set(symbol, words, shares.into_iter().reduce(|a, b| a + b).unwrap_or(none))
    });
    let mut next = || sums.next().unwrap_or_else(|| Term::constant(Moment::from_si(0.0)));
    let (across, up, both, _) = (next(), next(), next(), next());
    [across, up, both]
}

/// Where the layers' figures are from, and where the panel's middle is stretched.
const LAYERS: &str = "the table of layers";
const NO_PULL: &str = "that all layers together are not pulled";
/// The plate's stiffnesses of bending, in words.
const SHARES: [(&str, &str); 4] = [
    ("D11", "stiffness of bending across"),
    ("D22", "stiffness of bending up"),
    ("D12", "stiffness of bending one way by bending the other"),
    ("D66", "stiffness of twisting"),
];
