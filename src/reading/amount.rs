//! So many of a unit, as a constant: what bounds and closenesses are written in.

use std::fmt;

use crate::quantity::{Kind, UNITS, Unit, grouped};

/// So many of a unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Amount {
    /// How many.
    pub value: f64,
    /// Of what.
    pub unit: Unit,
}

/// Marks of an inch or a degree that an amount is written in; finer ones stand in decimals.
const MARKS: f64 = 32.0;

impl Amount {
    /// In the coherent SI unit; of a temperature, from absolute zero.
    pub const fn si(self) -> f64 {
        self.value * self.unit.factor + self.unit.zero()
    }

    /// What it measures.
    pub const fn kind(self) -> Kind {
        self.unit.kind
    }

    fn figures(self) -> String {
        let (size, marks) = (self.value.abs(), self.value.abs() * MARKS);
        let fractions = matches!(self.unit.name, "in" | "deg") && marks == marks.round() && size < 1.0 && size > 0.0;
        if !fractions {
            return grouped(&size.to_string(), self.value < 0.0);
        }
        let (mut part, mut over) = (marks, MARKS);
        while part % 2.0 == 0.0 {
            part /= 2.0;
            over /= 2.0;
        }
        format!("{}{part}/{over}", if self.value < 0.0 { "-" } else { "" })
    }
}

/// `1/4 in`, `4,000 hp`, `0.499`.
impl fmt::Display for Amount {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        let figures = self.figures();
        if self.unit.name.is_empty() { f.write_str(&figures) } else { write!(f, "{figures} {}", self.unit.name) }
    }
}

/// A number without a unit.
const ONE: Unit = Unit { kind: Kind::Ratio, name: "", spellings: &[], factor: 1.0 };

/// The unit of this name. A name that is none stops the build: units of amounts are named in constants alone.
const fn unit(name: &str) -> Unit {
    let mut i = 0;
    while i < UNITS.len() {
        if same(UNITS[i].name, name) {
            return UNITS[i];
        }
        i += 1;
    }
    panic!("no such unit")
}

/// Whether two words are the same, while the program is built.
pub(super) const fn same(one: &str, other: &str) -> bool {
    let (one, other) = (one.as_bytes(), other.as_bytes());
    if one.len() != other.len() {
        return false;
    }
    let mut i = 0;
    while i < one.len() {
        if one[i] != other[i] {
            return false;
        }
        i += 1;
    }
    true
}

macro_rules! amounts {
    ($($name:ident = $unit:literal;)+) => {$(
        #[doc = concat!("So many ", $unit, ".")]
        pub const fn $name(value: f64) -> Amount {
            Amount { value, unit: const { unit($unit) } }
        }
    )+};
}

amounts! {
    inch = "in";
    foot = "ft";
    mm = "mm";
    metre = "m";
    lb = "lb";
    lbf = "lbf";
    hp = "hp";
    deg = "deg";
    litre = "L";
    gallon = "gal";
    mph = "mph";
    rpm = "rpm";
    second = "s";
    mile = "mi";
    mile_per_gallon = "mi/gal";
    square_foot = "ft²";
    mpa = "MPa";
    gpa = "GPa";
    lbf_ft = "lbf·ft";
    newton_metre = "N·m";
    newton = "N";
    ampere = "A";
    volt = "V";
    gallon_per_hour = "gal/h";
    kg_per_m3 = "kg/m³";
    gn = "gn";
    percent = "%";
    psi = "psi";
    inch_hg = "inHg";
    cubic_inch = "in³";
    square_mm = "mm²";
    ampere_hour = "Ah";
    fahrenheit = "°F";
    hour = "h";
}

/// A number without a unit.
pub const fn plain(value: f64) -> Amount {
    Amount { value, unit: ONE }
}
