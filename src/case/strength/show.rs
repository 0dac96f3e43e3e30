//! Figures of strength for showing.

use uom::si::f64::{Force, Length, Pressure, Ratio};

use crate::physics::strength::panel::{Layup, PlateStiffness, Resultant, Section, written_layers};
use crate::quantity::{Dimensioned, Measure, Moment, Text, inches, say};
use crate::working::{Sheet, Table};

/// A ratio too great to mean anything.
const ENDLESS: f64 = 1e3;

/// Nearer to the top than this, a place is at the top edge, m.
const EDGE: f64 = 1e-3;

/// A force in N.
pub fn force(newtons: f64) -> Measure {
    Measure::of(Force::from_si(newtons))
}

/// A moment in N·m.
pub fn moment(newton_metres: f64) -> Measure {
    Measure::of(<Moment as Dimensioned>::from_si(newton_metres))
}

/// A length in m, in decimals.
pub fn length(metres: f64) -> Measure {
    Measure::of(Length::from_si(metres))
}

/// A row of a free body: the push and its moments.
pub(in crate::case) fn resultant(name: Text, push: Resultant) -> Vec<Text> {
    vec![name, Text::from(force(push.force)), Text::from(moment(push.moment_y)), Text::from(moment(push.moment_z))]
}

/// What a plate bears of bending, twisting and shear, a unit of its width.
pub(in crate::case) fn stiffness(title: &str, plate: &PlateStiffness) -> Table {
    let row = |what: &str, symbol: &str, value: Measure| vec![Text::from(what), Text::from(symbol), Text::from(value)];
    let rows = vec![
        row("bending, across", "D11", moment(plate.d11)),
        row("bending, up", "D22", moment(plate.d22)),
        row("bending one way by bending the other", "D12", moment(plate.d12)),
        row("twisting", "D66", moment(plate.d66)),
        row("shear through the thickness, across, a metre of width", "S1", force(plate.s1)),
        row("shear through the thickness, up, a metre of width", "S2", force(plate.s2)),
    ];
    Table::new(title, &["", "symbol", "stiffness"], rows)
}

/// The layers that a panel's stiffness is summed up of, from the outside in: what each is, and what it gives.
pub(in crate::case) fn layers(names: &[&str], layup: &Layup) -> [Table; 2] {
    let pressure = |stress: Pressure| Text::from(Measure::of(stress));
    let name = |i: usize| match names.get(i) {
        Some(name) => say!("{}: {}", i + 1, *name),
        None => say!("{}", i + 1),
    };
    let made = layup.layers().enumerate().map(|(i, layer)| {
        let material = &layer.ply.material;
        vec![
            name(i),
            Text::from(Measure::of(layer.ply.thickness)),
            pressure(material.modulus_y),
            pressure(material.modulus_z),
            Text::from(Measure::of(Ratio::from_si(material.poisson))),
            pressure(material.shear_plane),
        ]
    });
    let gives = layup.layers().enumerate().map(|(i, layer)| {
        let [across, up] = layer.from_neutral;
        vec![
            say!("{}", i + 1),
            Text::from(length(layer.middle)),
            Text::from(length(across)),
            Text::from(length(up)),
            Text::from(moment(layer.share[0][0])),
            Text::from(moment(layer.share[1][1])),
            Text::from(moment(layer.share[0][1])),
            Text::from(moment(layer.share[2][2])),
        ]
    });
    [
        Table::new("layers from the outside in", &["layer", "t", "E1, across", "E2, up", "ν", "G"], made.collect()),
        Table::new(
            "where its middle lies, inward, and what it gives",
            &["layer", "x, off the panel's middle", "off the neutral axis, across", "up", "D11", "D22", "D12", "D66"],
            gives.collect(),
        ),
    ]
}

/// Bending stiffness and Poisson's ratios of a panel, line by line; layer by layer where its layers are known.
pub(in crate::case) fn write_stiffness(sheet: &mut Sheet, section: &Section) {
    let plate = &section.stiffness;
    let given = |sheet: &mut Sheet, symbol: &str, meaning: &str, value: f64| {
        sheet.given(symbol, meaning, <Moment as Dimensioned>::from_si(value), "the table of stiffness")
    };
    let [across, up, coupling] = match &section.layup {
        Some(layup) => written_layers(sheet, layup),
        None => [
            given(sheet, "D11", "stiffness of bending across", plate.d11),
            given(sheet, "D22", "stiffness of bending up", plate.d22),
            given(sheet, "D12", "stiffness of bending one way by bending the other", plate.d12),
        ],
    };
    if plate.d11 > 0.0 && plate.d22 > 0.0 {
        sheet.set("ν1", "Poisson's ratio: how it bends up when it is bent across", &coupling / &up);
        sheet.set("ν2", "how it bends across when it is bent up", coupling / across);
    }
}

/// A plain ratio, or words where it has no end.
pub fn ratio(value: f64) -> Text {
    if value.is_finite() && value < ENDLESS {
        Text::from(Measure::of(Ratio::from_si(value)))
    } else {
        Text::from("over 1,000")
    }
}

/// How many times more after than before; a dash where there was nothing before.
pub fn times(before: f64, after: f64) -> Text {
    if before.abs() > 1e-9 { ratio(after / before) } else { Text::from("–") }
}

/// Step in which places on the transom are told, in: the solver's mesh knows them no better. Common practice, no source.
const PLACE_IN: f64 = 0.25;

/// A place on the transom in words.
pub fn place(at: [f64; 2], top: f64) -> Text {
    let step = inches(PLACE_IN).si();
    let tape = |metres: f64| Measure::tape(Length::from_si((metres / step).round() * step));
    let across = if at[0].abs() < 0.5 * step {
        Text::from("on the centreline")
    } else {
        say!("{} to {}", tape(at[0].abs()), if at[0] > 0.0 { "port" } else { "starboard" })
    };
    if top - at[1] < EDGE {
        return across.then(Text::from(", at the top edge"));
    }
    across.then(say!(", {} below the top", tape(top - at[1])))
}
