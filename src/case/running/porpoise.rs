//! Where she porpoises, and what brings her out of it: tried on her, not told from habit.

use uom::si::angle::degree;
use uom::si::f64::{Angle, Length, Mass, Velocity};

use super::Predicted;
use crate::physics::matched::{Craft, Steady};
use crate::physics::running::{MOST_DEFLECTION, Tabs, ThrustLine};
use crate::quantity::{Dimensioned, Measure, Text, degrees, inches, say, standard_gravity};

/// The speed at which she stands nearest to porpoising, or farthest beyond its limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nearest {
    pub speed: Velocity,
    pub trim: Angle,
    pub limit: Angle,
}

impl Nearest {
    /// By how much she trims more than the limit; negative below it.
    pub fn excess(&self) -> Angle {
        self.trim - self.limit
    }
}

/// What brings her out of it, each by itself, as far as it does.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Cures {
    /// Engines trimmed to this.
    pub trim_in: Option<Angle>,
    /// Tabs down by this, and whether she has them.
    pub tabs: Option<(Tabs, bool)>,
    /// Her centre farther forward by this.
    pub weight_forward: Option<Length>,
    /// This much more setback.
    pub setback: Option<Length>,
}

/// Tabs that are fitted where there are none: span of both over the beam, length. Common practice, no source.
const FITTED_SPAN_OF_BEAM: f64 = 0.3;
const FITTED_CHORD_IN: f64 = 9.0;
/// Steps and ends of the searches. Common practice, no source.
const TRIM_STEP_DEG: f64 = 1.0;
const TAB_STEP_DEG: f64 = 1.0;
const FORWARD_STEP_IN: f64 = 1.0;
const MOST_FORWARD_IN: f64 = 12.0;
const SETBACK_STEP_IN: f64 = 2.0;
const MOST_SETBACK_IN: f64 = 6.0;

impl Predicted {
    /// Where she comes nearest to porpoising on plane, among the speeds that her engines hold; nothing where the limit is not told.
    pub fn nearest_porpoising(&self) -> Option<Nearest> {
        nearest(&self.range.points, self.planes())
    }

    /// The speed from which she planes.
    fn planes(&self) -> Velocity {
        self.getting_up.map_or(Velocity::default(), |up| up.planes)
    }

    /// The same with her engines trimmed to this.
    pub fn trimmed_to(&self, trim: Angle) -> Option<Nearest> {
        self.tried(&Craft { planing: self.with_trim(trim), ..self.built.craft.clone() })
    }

    fn with_trim(&self, trim: Angle) -> crate::physics::running::Planing {
        let built = &self.built;
        let thrust = ThrustLine::through(built.shafts, -trim, built.centre);
        crate::physics::running::Planing { thrust, ..built.craft.planing }
    }

    fn tried(&self, craft: &Craft) -> Option<Nearest> {
        let planes = self.planes();
        // The speeds that she has: another trim hardly changes them.
        let points: Vec<Steady> = self
            .range
            .points
            .iter()
            .filter(|point| point.is_held() && point.speed >= planes)
            .filter_map(|point| craft.steady(point.speed).ok())
            .collect();
        nearest(&points, planes)
    }

    /// What brings her out of it.
    pub fn cures(&self) -> Cures {
        let built = &self.built;
        let cured = |craft: &Craft| self.tried(craft).is_none_or(|nearest| nearest.excess().si() <= 0.0);
        let steps =
            |most: f64, step: f64| (1..).map(move |i| f64::from(i) * step).take_while(move |value| *value <= most);
        let least_trim = built.trims.map_or(built.trim, |[least, _]| least);
        let room = (built.trim - least_trim).get::<degree>();
        let trim_in = steps(room, TRIM_STEP_DEG)
            .map(|step| built.trim - degrees(step))
            .find(|trim| cured(&Craft { planing: self.with_trim(*trim), ..built.craft.clone() }));
        let fitted = built.craft.tabs.is_some();
        let tabs = built.craft.tabs.unwrap_or(Tabs {
            span: built.craft.planing.bottom.beam * FITTED_SPAN_OF_BEAM,
            chord: inches(FITTED_CHORD_IN),
            deflection: Angle::default(),
        });
        let tabs = steps(MOST_DEFLECTION, TAB_STEP_DEG)
            .map(|step| Tabs { deflection: degrees(step), ..tabs })
            .filter(|tried| tried.deflection > tabs.deflection)
            .find(|tried| cured(&Craft { tabs: Some(*tried), ..built.craft.clone() }))
            .map(|tabs| (tabs, fitted));
        let moved = |forward: Length, aft: Length| {
            let [x, z] = built.centre;
            let centre = [x + forward.si(), z];
            let shafts = [built.shafts[0] - aft.si(), built.shafts[1]];
            let mut planing = built.craft.planing;
            planing.centre_forward += forward;
            planing.thrust = ThrustLine::through(shafts, -built.trim, centre);
            Craft { planing, ..built.craft.clone() }
        };
        let weight_forward = steps(MOST_FORWARD_IN, FORWARD_STEP_IN)
            .map(inches)
            .find(|forward| cured(&moved(*forward, Length::default())));
        let mass: Mass = built.craft.planing.weight / standard_gravity();
        let setback = steps(MOST_SETBACK_IN, SETBACK_STEP_IN)
            .map(inches)
            .find(|aft| cured(&moved(-*aft * (built.engines / mass).si(), *aft)));
        Cures { trim_in, tabs, weight_forward, setback }
    }
}

fn nearest(points: &[Steady], planes: Velocity) -> Option<Nearest> {
    let told = points.iter().filter(|point| point.is_held() && point.speed >= planes);
    told.filter_map(|point| Some(Nearest { speed: point.speed, trim: point.running.trim, limit: point.porpoises? }))
        .max_by(|a, b| a.excess().si().total_cmp(&b.excess().si()))
}

impl Cures {
    /// In a sentence; nothing where none of them does.
    pub fn told(&self, mass: Mass) -> Option<Text> {
        let mut all = Vec::new();
        if let Some(trim) = self.trim_in {
            let word = if trim.si() < 0.0 { "in" } else { "out" };
            all.push(say!("trim the engines to {} {}", Measure::of(trim.abs()), word));
        }
        if let Some((tabs, fitted)) = &self.tabs {
            all.push(if *fitted {
                say!("set the tabs {} down", Measure::of(tabs.deflection))
            } else {
                say!(
                    "fit a pair of tabs, each {} by {}, {} down",
                    Measure::tape(tabs.span * 0.5),
                    Measure::tape(tabs.chord),
                    Measure::of(tabs.deflection)
                )
            });
        }
        if let Some(forward) = self.weight_forward {
            // So far forward as a person's weight would have to go.
            let arm = forward * (mass / Mass::from_si(MOVED_KG)).si();
            all.push(say!(
                "bring her centre {} forward, as {} moved {} would",
                Measure::tape(forward),
                Measure::of(Mass::from_si(MOVED_KG)),
                Measure::styled(arm, crate::quantity::Style::FeetInches)
            ));
        }
        if let Some(aft) = self.setback {
            all.push(say!("set the engines {} farther aft", Measure::tape(aft)));
        }
        (!all.is_empty()).then(|| {
            say!("Tried on her, each by itself is enough: ").then(Text::join(all, "; or ")).then(Text::from("."))
        })
    }
}

/// A weight as it is moved by hand, kg: 200 lb.
const MOVED_KG: f64 = 90.718_474;
