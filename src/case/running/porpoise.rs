//! Where she porpoises, and what brings her out of it: tried on her, not told from habit.

use uom::si::angle::degree;
use uom::si::f64::{Angle, Length, Mass, Velocity};

use super::Predicted;
use super::craft::{Screw, WATER_RISES};
use super::predicted::FOURTH_BLADE_AREA;
use crate::physics::matched::Craft;
use crate::physics::propeller::USUAL_BLADES;
use crate::physics::running::{MOST_DEFLECTION, Outside, Planing, Porpoising, TRIMS, Tabs, ThrustLine};
use crate::quantity::{Dimensioned, Measure, Style, Text, degrees, inches, say, standard_gravity};

/// Which of the two published limits she is held against.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Held {
    /// The lower: of a boat that was seen to porpoise.
    Strictly,
    /// The higher: beyond it both say that she porpoises.
    Usually,
}

impl Held {
    fn limit(self, between: Porpoising) -> Angle {
        match self {
            Held::Strictly => between.from,
            Held::Usually => between.to,
        }
    }
}

/// The speed at which she stands nearest to porpoising, or farthest beyond its limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nearest {
    /// The speed.
    pub speed: Velocity,
    /// Her trim there, bow up.
    pub trim: Angle,
    /// Trims between which she begins to porpoise there, by the one limit and by the other.
    pub between: Porpoising,
    /// The limit that she is held against.
    pub limit: Angle,
}

impl Nearest {
    /// By how much she trims more than the limit; negative below it.
    pub fn excess(&self) -> Angle {
        self.trim - self.limit
    }
}

/// What is enough by itself, and whether only with the engines trimmed right in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Enough<T> {
    /// The least of what was tried that is enough.
    pub by: T,
    /// Whether it is enough only with the engines trimmed right in.
    pub trimmed_in: bool,
}

/// What brings her out of it, each as far as it does.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Cures {
    /// Engines trimmed to this.
    pub trim_in: Option<Angle>,
    /// Tabs down by this.
    pub tabs: Option<Enough<Tabs>>,
    /// Whether she has tabs.
    pub has_tabs: bool,
    /// Her centre farther forward by this.
    pub weight_forward: Option<Enough<Length>>,
    /// This much more setback, the engines higher by what the water comes up.
    pub setback: Option<Enough<Length>>,
    /// The trade's cure: a fourth blade with a few inches more of setback.
    pub fourth_blade: Option<FourthBlade>,
}

/// A propeller with a fourth blade, and what it does with [`BLADE_SETBACK_IN`] more of setback.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FourthBlade {
    /// The propeller, of the pitch with which it turns most nearly as the one that it replaces.
    pub screw: Screw,
    /// Whether propeller and setback together bring her out of it.
    pub enough: bool,
    /// By how much it changes her trim where she stands farthest beyond the limit.
    pub trims: Angle,
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
/// Setback that is given with a fourth blade. Common practice, no source.
pub const BLADE_SETBACK_IN: f64 = 4.0;
/// Inches of pitch that a fourth blade may take. Common practice, no source.
const BLADE_PITCHES_IN: [f64; 4] = [0.0, 1.0, 2.0, 3.0];

impl Predicted {
    /// Where she comes nearest to porpoising, among the speeds on plane that her engines hold; nothing where the limit is not told.
    pub fn nearest_porpoising(&self, held: Held) -> Option<Nearest> {
        self.tried(&self.built.craft, held)
    }

    /// The same with her engines trimmed right in; nothing where their range is not known.
    pub fn trimmed_in(&self, held: Held) -> Option<Nearest> {
        self.tried(&self.right_in()?, held)
    }

    /// How she is with her engines trimmed right in.
    fn right_in(&self) -> Option<Craft> {
        let least = self.built.trims.map(|[least, _]| least).filter(|least| *least < self.built.trim)?;
        Some(self.moved(&self.built.craft, least, Moved::default()))
    }

    /// Her centre and shafts elsewhere, her engines trimmed to this.
    fn moved(&self, craft: &Craft, trim: Angle, by: Moved) -> Craft {
        let built = &self.built;
        let centre = [built.centre[0] + by.forward, built.centre[1]];
        let shafts = [built.shafts[0] - by.aft, built.shafts[1] + by.up];
        let thrust = ThrustLine::through(shafts, -trim, centre);
        let planing = Planing { centre_forward: Length::from_si(centre[0]), thrust, ..craft.planing };
        Craft { planing, ..craft.clone() }
    }

    /// The speeds on plane that she holds: another trim hardly changes them.
    fn speeds(&self) -> impl Iterator<Item = Velocity> {
        self.range.points.iter().filter(|point| point.is_held() && point.trim().is_some()).map(|point| point.speed)
    }

    fn tried(&self, craft: &Craft, held: Held) -> Option<Nearest> {
        self.speeds()
            .filter_map(|speed| {
                let steady = craft.steady(speed).ok()?;
                let between = steady.porpoises?;
                Some(Nearest { speed, trim: steady.running.trim, between, limit: held.limit(between) })
            })
            .max_by(|a, b| a.excess().si().total_cmp(&b.excess().si()))
    }

    /// Whether she stays below the limit at every speed, or runs flatter than the method tells.
    fn cured(&self, craft: &Craft, held: Held) -> bool {
        self.speeds().all(|speed| match craft.steady(speed) {
            Ok(steady) => steady.porpoises.is_none_or(|between| steady.running.trim <= held.limit(between)),
            Err(Outside::Trim(trim)) => trim < *TRIMS.start(),
            Err(_) => false,
        })
    }

    /// What brings her out of it.
    pub fn cures(&self, held: Held) -> Cures {
        let built = &self.built;
        let least = built.trims.map_or(built.trim, |[least, _]| least);
        let trim_in = steps((built.trim - least).get::<degree>(), TRIM_STEP_DEG)
            .map(|step| built.trim - degrees(step))
            .find(|trim| self.cured(&self.moved(&built.craft, *trim, Moved::default()), held));
        let has_tabs = built.craft.tabs.is_some();
        let own = built.craft.tabs.unwrap_or(Tabs {
            span: built.craft.planing.bottom.beam * FITTED_SPAN_OF_BEAM,
            chord: inches(FITTED_CHORD_IN),
            deflection: Angle::default(),
        });
        let tabs = steps(MOST_DEFLECTION, TAB_STEP_DEG)
            .map(degrees)
            .filter(|deflection| *deflection > own.deflection)
            .map(|deflection| Tabs { deflection, ..own });
        let mass: Mass = built.craft.planing.weight / standard_gravity();
        let of_engines = (built.engines / mass).si();
        let tabbed = |tabs: &Tabs| (Some(*tabs), Moved::default());
        let forward = |by: &Length| (None, Moved { forward: by.si(), ..Moved::default() });
        let set_back = |by: Length| {
            let aft = by.si();
            Moved { forward: -aft * of_engines, aft, up: WATER_RISES * aft }
        };
        let setback = |by: &Length| (None, set_back(*by));
        Cures {
            trim_in,
            tabs: self.enough(tabs, tabbed, held),
            has_tabs,
            weight_forward: self.enough(steps(MOST_FORWARD_IN, FORWARD_STEP_IN).map(inches), forward, held),
            setback: self.enough(steps(MOST_SETBACK_IN, SETBACK_STEP_IN).map(inches), setback, held),
            fourth_blade: self.fourth_blade(set_back(inches(BLADE_SETBACK_IN)), held),
        }
    }

    /// A fourth blade in place of a third, her engines moved by so much: of the pitch with which they turn as they do at her greatest
    /// speed.
    fn fourth_blade(&self, by: Moved, held: Held) -> Option<FourthBlade> {
        let (built, own) = (&self.built, self.built.screw);
        let at = self.nearest_porpoising(held)?;
        let fast = self.range.top.as_ref().or_else(|| self.range.points.iter().rev().find(|point| point.is_held()))?;
        let turns = |craft: &Craft| craft.full_throttle(fast.speed).turns;
        let off = |screw: &Screw| (turns(&built.with_screw(screw)) - turns(&built.craft)).abs();
        let screw = BLADE_PITCHES_IN
            .map(|less| Screw {
                blades: own.blades + 1,
                area_ratio: own.area_ratio * FOURTH_BLADE_AREA,
                pitch: own.pitch - inches(less),
                ..own
            })
            .into_iter()
            .filter(|screw| own.blades == USUAL_BLADES && screw.pitch.si() > 0.0)
            .min_by(|a, b| off(a).total_cmp(&off(b)))?;
        let craft = self.moved(&built.with_screw(&screw), built.trim, by);
        let trims = craft.steady(at.speed).ok()?.running.trim - at.trim;
        Some(FourthBlade { screw, enough: self.cured(&craft, held), trims })
    }

    /// The first of these that is enough, with her engines as they are; else with them trimmed right in.
    fn enough<T>(
        &self,
        tried: impl Iterator<Item = T> + Clone,
        with: impl Fn(&T) -> (Option<Tabs>, Moved),
        held: Held,
    ) -> Option<Enough<T>> {
        let built = &self.built;
        let least = built.trims.map(|[least, _]| least).filter(|least| *least < built.trim);
        [Some(built.trim), least].into_iter().enumerate().find_map(|(i, trim)| {
            let trim = trim?;
            let by = tried.clone().find(|one| {
                let (tabs, moved) = with(one);
                let craft = Craft { tabs: tabs.or(built.craft.tabs), ..built.craft.clone() };
                self.cured(&self.moved(&craft, trim, moved), held)
            })?;
            Some(Enough { by, trimmed_in: i > 0 })
        })
    }
}

/// Her centre forward, her shafts aft and up, metres.
#[derive(Clone, Copy, Default)]
struct Moved {
    forward: f64,
    aft: f64,
    up: f64,
}

fn steps(most: f64, step: f64) -> impl Iterator<Item = f64> + Clone {
    (1..).map(move |i| f64::from(i) * step).take_while(move |value| *value <= most)
}

impl Cures {
    /// In sentences; nothing where none of them does.
    pub fn told(&self, mass: Mass) -> Option<Text> {
        let mut all: Vec<(bool, Text)> = Vec::new();
        if let Some(trim) = self.trim_in {
            let word = if trim.si() < 0.0 { "in" } else { "out" };
            all.push((false, say!("trim the engines to {} {}", Measure::of(trim.abs()), word)));
        }
        if let Some(Enough { by: tabs, trimmed_in }) = &self.tabs {
            let words = if self.has_tabs {
                say!("set the tabs {} down, and up again for full speed", Measure::of(tabs.deflection))
            } else {
                say!(
                    "fit a pair of tabs, each {} wide and {} long, and set them {} down, up again for full speed",
                    Measure::tape(tabs.span * 0.5),
                    Measure::tape(tabs.chord),
                    Measure::of(tabs.deflection)
                )
            };
            all.push((*trimmed_in, words));
        }
        if let Some(Enough { by: forward, trimmed_in }) = self.weight_forward {
            // So far forward as a person's weight would have to go.
            let arm = forward * (mass / Mass::from_si(MOVED_KG)).si();
            let words = say!(
                "bring her centre {} forward, as {} moved {} would",
                Measure::tape(forward),
                Measure::of(Mass::from_si(MOVED_KG)),
                Measure::styled(arm, Style::FeetInches)
            );
            all.push((trimmed_in, words));
        }
        if let Some(Enough { by: aft, trimmed_in }) = self.setback {
            let up = aft * WATER_RISES;
            let words = say!("set the engines {} farther aft and {} higher", Measure::tape(aft), Measure::tape(up));
            all.push((trimmed_in, words));
        }
        if let Some(FourthBlade { screw, enough: true, .. }) = &self.fourth_blade {
            let words = say!(
                "take a propeller of {} blades, a fifth more of blade, and {} of pitch, with the engines {} farther aft",
                u32::from(screw.blades),
                Measure::tape(screw.pitch),
                Measure::tape(inches(BLADE_SETBACK_IN))
            );
            all.push((false, words));
        }
        let of = |trimmed_in: bool| -> Vec<Text> {
            all.iter().filter(|(with, _)| *with == trimmed_in).map(|(_, words)| words.clone()).collect()
        };
        let (alone, with) = (of(false), of(true));
        let sentence = |heads: [&str; 2], all: Vec<Text>| {
            let head = Text::from(heads[usize::from(all.len() > 1)]);
            (!all.is_empty()).then(|| head.then(Text::join(all, "; or ")).then(Text::from(".")))
        };
        let alone = sentence(["Tried on her, this is enough: ", "Tried on her, each by itself is enough: "], alone);
        let with = sentence(["Tried on her, enough with the engines trimmed right in: "; 2], with);
        let told = [alone, with];
        let told: Vec<Text> = told.into_iter().flatten().collect();
        (!told.is_empty()).then(|| Text::join(told, " "))
    }
}

/// A weight as it is moved by hand, kg: 200 lb.
const MOVED_KG: f64 = 90.718_474;
