//! A propeller's thrust and torque as cubics of its advance, and what it turns at for a speed and a thrust.

use std::f64::consts::PI;

use super::series::{OpenWater, Propeller};
use super::table::{Monomial, THRUST, TORQUE};
use crate::physics::root::root;
use crate::working::Figure;

/// Reynolds number, at 0.75 of the radius, that the polynomials are for. Source: as the polynomials.
pub const REYNOLDS: f64 = 2e6;
/// Between these the correction for it is told. Source: Oosterveld and van Oossanen 1975, value from memory.
pub const REYNOLDS_RANGE: [f64; 2] = [2e6, 2e9];

/// Powers of the advance: 0 to 3.
const POWERS: usize = 4;
/// Halvings or steps of a solver, at most.
const STEPS: usize = 200;

/// Thrust and torque coefficients of one propeller as cubics of the advance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Curves {
    thrust: [f64; POWERS],
    torque: [f64; POWERS],
    /// The advance at which it stops pulling.
    pub no_thrust: f64,
}

impl Curves {
    /// Of none: it neither pulls nor asks for torque.
    pub fn none() -> Self {
        Curves { thrust: [0.0; POWERS], torque: [0.0; POWERS], no_thrust: 1.0 }
    }

    /// Of a propeller at the Reynolds number of the series.
    pub fn of(propeller: &Propeller) -> Self {
        let of = |terms: &[Monomial]| {
            let mut all = [0.0; POWERS];
            let bases = [propeller.pitch_ratio(), propeller.area_ratio(), f64::from(propeller.blades())];
            for (coefficient, [advance, powers @ ..]) in terms {
                let product: f64 = bases.iter().zip(powers).map(|(base, power)| base.powi(i32::from(*power))).product();
                all[usize::from(*advance)] += coefficient * product;
            }
            all
        };
        Curves::from_cubics(of(&THRUST), of(&TORQUE))
    }

    /// The same at another Reynolds number, within what the correction is told for. Source: Oosterveld and van Oossanen 1975,
    /// the polynomials of ΔKT and ΔKQ; values from memory (they come to nothing at the series' own number, which a test holds).
    pub fn at_reynolds(propeller: &Propeller, reynolds: f64) -> Self {
        let own = Curves::of(propeller);
        let l = reynolds.clamp(REYNOLDS_RANGE[0], REYNOLDS_RANGE[1]).log10() - 0.301;
        let (p, a, z) = (propeller.pitch_ratio(), propeller.area_ratio(), f64::from(propeller.blades()));
        let (l2, p2, p6, a2) = (l * l, p * p, p.powi(6), a * a);
        let thrust = [
            0.000_353_485,
            -0.004_781_25 * a * p + 0.000_095_4 * l * z * a * p + 0.000_003_204_9 * l * z * z * a * p.powi(3),
            -0.003_337_58 * a + 0.000_257_792 * l2 * a + 0.000_064_319_2 * l * p6
                - 0.000_011_063_6 * l2 * p6
                - 0.000_027_630_5 * l2 * z * a,
            0.0,
        ];
        let torque = [
            -0.000_591_412 + 0.006_968_98 * p - 0.000_066_665_4 * z * p6 + 0.016_081_8 * a2
                - 0.000_938_091 * l * p
                - 0.000_595_93 * l * p2
                + 0.000_078_209_9 * l2 * p2
                + 0.000_023_017_1 * l * z * p6
                - 0.000_001_843_41 * l2 * z * p6
                - 0.004_002_52 * l * a2
                + 0.000_220_915 * l2 * a2,
            -0.000_000_885_28 * l2 * z * a * p,
            0.000_005_219_9 * l * z * a,
            0.0,
        ];
        let plus = |a: [f64; POWERS], b: [f64; POWERS]| std::array::from_fn(|i| a[i] + b[i]);
        Curves::from_cubics(plus(own.thrust, thrust), plus(own.torque, torque))
    }

    fn from_cubics(thrust: [f64; POWERS], torque: [f64; POWERS]) -> Self {
        let mut curves = Curves { thrust, torque, no_thrust: 0.0 };
        let (mut low, mut high) = (0.0, 1.0);
        while curves.at(high).thrust > 0.0 && high < MOST_ADVANCE {
            (low, high) = (high, high + 0.25);
        }
        for _ in 0..STEPS {
            let middle = 0.5 * (low + high);
            if middle <= low || middle >= high {
                break;
            }
            if curves.at(middle).thrust > 0.0 { low = middle } else { high = middle }
        }
        curves.no_thrust = low;
        curves
    }

    /// What it gives at this advance.
    pub fn at(&self, advance: f64) -> OpenWater {
        let cubic = |c: &[f64; POWERS]| c.iter().rev().fold(0.0, |sum, c| sum * advance + c);
        OpenWater { advance, thrust: cubic(&self.thrust), torque: cubic(&self.torque) }
    }

    /// By how much the torque coefficient grows with the advance, `dK_Q/dJ`.
    pub fn torque_slope(&self, advance: f64) -> f64 {
        let [_, one, two, three] = self.torque;
        one + advance * (2.0 * two + advance * 3.0 * three)
    }

    /// The advance at which it gives `K_T / J²`, that is a thrust over ρ V² D², whatever it turns at; the one at which it stops
    /// pulling where none is asked.
    pub fn advance_for(&self, thrust_over_speed: f64) -> f64 {
        if thrust_over_speed <= 0.0 {
            return self.no_thrust;
        }
        let more = |advance: f64| self.at(advance).thrust - thrust_over_speed * advance * advance;
        let ends = [0.0, self.no_thrust];
        root(ends, ends.map(more), ALIKE * self.no_thrust, more)
    }
}

/// How near two advances are alike, as a part of the greatest.
const ALIKE: f64 = 1e-14;
/// No propeller of the series pulls at a greater advance.
const MOST_ADVANCE: f64 = 2.0;

/// A propeller that turns: what it pulls and asks for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turning {
    /// Turns a second.
    pub turns: f64,
    /// Its advance and its coefficients there.
    pub open_water: OpenWater,
    /// N.
    pub thrust: f64,
    /// N·m.
    pub torque: f64,
    /// W.
    pub power: f64,
}

/// A propeller of a size in a water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sized {
    /// Its coefficients by advance, at the curves' own pitch.
    pub curves: Curves,
    /// m.
    pub diameter: f64,
    /// kg/m³.
    pub density: f64,
    /// Its pitch, as it works, over that of the curves: at equal slip it pulls alike, and asks for torque with the pitch. So
    /// pitches are told that the series does not hold, and what cup and wear make of the marked one. Common practice, no source.
    pub stretch: f64,
    /// Pitch of the curves, m.
    pub pitch: f64,
}

impl Sized {
    /// Turning so many times a second while she goes so many metres a second; it is taken never to brake her.
    pub fn turning(&self, turns: f64, speed: f64) -> Turning {
        let advance = speed / (turns * self.diameter);
        let own = self.curves.at((advance / self.stretch).min(self.curves.no_thrust));
        let open_water = OpenWater { advance, thrust: own.thrust, torque: own.torque * self.stretch };
        let base = self.density * turns * turns * self.diameter.powi(4);
        let torque = open_water.torque * base * self.diameter;
        Turning { turns, open_water, thrust: open_water.thrust * base, torque, power: 2.0 * PI * turns * torque }
    }

    /// Turning as it must to pull so many newtons at this speed, m/s, more than zero.
    pub fn pulling(&self, thrust: f64, speed: f64) -> Turning {
        let asked = thrust / (self.density * (speed * self.diameter).powi(2));
        let advance = self.stretch * self.curves.advance_for(asked * self.stretch * self.stretch);
        self.turning(speed / (advance * self.diameter), speed)
    }
}

/// Thrust over projected blade area and the head of the blades' own speed at 0.7 of the radius, from which a tenth of the blades'
/// backs cavitates: `0.494 σ^0.88`. Source: Gawn and Burrill's line as Blount and Hubble 1981 fit it; value from memory.
pub fn cavitation_limit<N: Figure>(sigma: N) -> N {
    N::number(0.494) * sigma.power(0.88)
}

/// Projected over expanded blade area, `1.067 − 0.229 P/D`. Source: Burrill, value from memory.
pub fn projected<N: Figure>(pitch_ratio: N) -> N {
    N::number(1.067) - N::number(0.229) * pitch_ratio
}

/// Pressure of the air less that of the water's vapour at 15 °C, Pa. Source: ICAO standard atmosphere; steam tables, value from
/// memory.
pub const AIR_LESS_VAPOUR: f64 = 101_325.0 - 1_706.0;

/// How a turning propeller is loaded, over the load from which a tenth of its blades' backs cavitates: above 1 the open-water
/// figures promise too much. `immersed` is the depth of the shaft, m; gravity in m/s².
pub fn cavitation(
    sized: &Sized,
    propeller: &Propeller,
    turning: &Turning,
    speed: f64,
    immersed: f64,
    gravity: f64,
) -> f64 {
    let round = 0.7 * PI * turning.turns * sized.diameter;
    let head = 0.5 * sized.density * (speed * speed + round * round);
    let sigma = (AIR_LESS_VAPOUR + sized.density * gravity * immersed) / head;
    let disc = 0.25 * PI * sized.diameter * sized.diameter;
    let area = disc * propeller.area_ratio() * projected(propeller.pitch_ratio());
    turning.thrust / (area * head) / cavitation_limit(sigma)
}
