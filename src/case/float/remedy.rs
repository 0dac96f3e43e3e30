//! What would put her back: how far something must move, and how much weight her stern takes.

use nalgebra::Point3;
use uom::si::f64::{Angle, Length, Mass};

use super::{Float, Movable, State};
use crate::physics::float::{Floating, Load, Outcome, equilibrium};
use crate::quantity::Dimensioned;

/// How far forward things can be stowed, as a part of the length. Common practice, no source.
const FOREMOST_OVER_LENGTH: f64 = 0.75;
/// Most steps of the search; a few are enough for what is all but linear.
const STEPS: usize = 60;
/// A goal is met within this, in its own SI unit (m or rad): far below what anyone reads.
const MET: f64 = 1e-9;

/// Something moved forward by so much, with which a goal is just met.
#[derive(Clone, Debug, PartialEq)]
pub struct Shift {
    /// What is moved.
    pub name: String,
    /// Its weight.
    pub mass: Mass,
    /// How far forward, where that is enough.
    pub forward: Option<Length>,
    /// Where it then stands, forward of the transom.
    pub to: Length,
    /// What it takes to move it.
    pub movable: Movable,
    /// Its entry in the job, where it has one by itself.
    pub entry: Option<String>,
}

impl Float {
    /// For everything that can be stowed elsewhere, how far forward it must go until the goal is no
    /// longer below zero; the easiest to move first, among equals the shortest way. Things that cannot
    /// do it alone come last.
    pub fn shifts(&self, state: &State, goal: &dyn Fn(&Floating) -> f64) -> Vec<Shift> {
        let mut shifts: Vec<Shift> = state
            .entries
            .iter()
            .filter(|entry| entry.movable.can_move() && entry.weight.mass.si() > 0.0)
            .map(|entry| {
                let foremost = self.foremost(state);
                let (x, kg) = (entry.weight.centre.x, entry.weight.mass.si());
                let total = state.total;
                let after = |forward: f64| {
                    let centre = total.centre + nalgebra::Vector3::x() * (kg * forward / total.mass.si());
                    self.goal_at(state, total.mass, centre, goal)
                };
                let forward = root(0.0, (foremost - x).max(0.0), &after);
                Shift {
                    name: entry.name.clone(),
                    mass: entry.weight.mass,
                    forward: forward.map(Length::from_si),
                    to: Length::from_si(x + forward.unwrap_or((foremost - x).max(0.0))),
                    movable: entry.movable,
                    entry: entry.entry.clone(),
                }
            })
            .collect();
        shifts.sort_by(|a, b| {
            let rank = |s: &Shift| (s.forward.is_none(), s.movable);
            let way = |s: &Shift| s.forward.map_or(f64::INFINITY, Dimensioned::si);
            rank(a).cmp(&rank(b)).then(way(a).total_cmp(&way(b)))
        });
        shifts
    }

    /// Several things moved forward one after the other, each as far as it can go, until the goal is
    /// met; `None` where all of them together do not meet it.
    pub fn plan(&self, state: &State, goal: &dyn Fn(&Floating) -> f64) -> Option<Vec<Shift>> {
        let mut steps = self.shifts(state, goal);
        if let Some(first) = steps.first()
            && first.forward.is_some()
        {
            steps.truncate(1);
            return Some(steps);
        }
        steps.sort_by(|a, b| {
            let moment = |s: &Shift| s.mass.si() * s.to.si();
            a.movable.cmp(&b.movable).then(moment(b).total_cmp(&moment(a)))
        });
        let total = state.total;
        let mut centre = total.centre;
        let mut plan = Vec::new();
        for step in steps {
            let entry = state.entries.iter().find(|entry| entry.name == step.name && entry.movable == step.movable)?;
            let reach = self.foremost(state) - entry.weight.centre.x;
            if reach <= 0.0 {
                continue;
            }
            let share = entry.weight.mass.si() / total.mass.si();
            let after = |forward: f64| {
                let centre = centre + nalgebra::Vector3::x() * (share * forward);
                self.goal_at(state, total.mass, centre, goal)
            };
            let forward = root(0.0, reach, &after);
            let moved = forward.unwrap_or(reach);
            plan.push(Shift {
                forward: Some(Length::from_si(moved)),
                to: Length::from_si(entry.weight.centre.x + moved),
                ..step
            });
            if forward.is_some() {
                return Some(plan);
            }
            centre.x += share * reach;
        }
        None
    }

    /// How far forward a thing can go.
    fn foremost(&self, state: &State) -> f64 {
        FOREMOST_OVER_LENGTH * self.hull(state.side).bounds().1.x
    }

    /// How she heels once weights were moved across by this moment, to port; nothing where she then does not float upright.
    pub fn heel_with(&self, state: &State, moment: f64) -> Option<Angle> {
        let mut centre = state.total.centre;
        centre.y += moment / state.total.mass.si();
        let load = Load { mass: state.total.mass, centre, water: self.water };
        match equilibrium(self.hull(state.side), &load) {
            Ok(Outcome::Stable(floating)) => Some(floating.attitude().heel),
            _ => None,
        }
    }

    /// Where ballast is put forward, in boat axes: on the centreline, as far forward as things go.
    pub fn ballast_place(&self, state: &State) -> Point3<f64> {
        Point3::new(self.foremost(state), 0.0, state.total.centre.z)
    }

    /// Centre and weight of what hangs on the stern and stays there: engines, brackets.
    pub fn on_stern(&self, state: &State) -> Option<(Point3<f64>, Mass)> {
        let fixed = state.entries.iter().skip(1).filter(|entry| entry.movable == Movable::No);
        let (kg, moment) = fixed.fold((0.0, nalgebra::Vector3::zeros()), |(kg, moment), entry| {
            let mass = entry.weight.mass.si();
            (kg + mass, moment + entry.weight.centre.coords * mass)
        });
        (kg > 0.0).then(|| (Point3::from(moment / kg), Mass::from_si(kg)))
    }

    /// The mass that, put at this point (or, below zero, taken from it), just meets the goal.
    pub fn mass_at(
        &self,
        state: &State,
        point: &Point3<f64>,
        (least, most): (Mass, Mass),
        goal: &dyn Fn(&Floating) -> f64,
    ) -> Option<Mass> {
        let with = |kg: f64| self.goal_with(state, point, Mass::from_si(kg), goal);
        root(least.si(), most.si(), &with).map(Mass::from_si)
    }

    /// What the goal comes to with this mass put at this point; nothing where she then does not float upright.
    pub fn goal_with(
        &self,
        state: &State,
        point: &Point3<f64>,
        more: Mass,
        goal: &dyn Fn(&Floating) -> f64,
    ) -> Option<f64> {
        let total = state.total;
        let mass = total.mass + more;
        let centre = (total.centre.coords * total.mass.si() + point.coords * more.si()) / mass.si();
        self.goal_at(state, mass, Point3::from(centre), goal)
    }

    fn goal_at(&self, state: &State, mass: Mass, centre: Point3<f64>, goal: &dyn Fn(&Floating) -> f64) -> Option<f64> {
        let load = Load { mass, centre, water: self.water };
        match equilibrium(self.hull(state.side), &load) {
            Ok(Outcome::Stable(floating)) => Some(goal(&floating)),
            _ => None,
        }
    }
}

/// Where a function changes sign between two places, by false position with a halved end (the Illinois
/// rule); `None` where it does not, or where she does not float on the way.
fn root(from: f64, to: f64, f: &dyn Fn(f64) -> Option<f64>) -> Option<f64> {
    let (mut a, mut b) = (from, to);
    let (mut fa, mut fb) = (f(a)?, f(b)?);
    if fa.abs() <= MET {
        return Some(a);
    }
    if fa * fb > 0.0 || a == b {
        return None;
    }
    for _ in 0..STEPS {
        let x = b - fb * (b - a) / (fb - fa);
        let fx = f(x)?;
        if fx.abs() <= MET || (b - a).abs() <= 1e-12 * (1.0 + b.abs()) {
            return Some(x);
        }
        if fx * fb < 0.0 {
            (a, fa) = (b, fb);
        } else {
            fa *= 0.5;
        }
        (b, fb) = (x, fx);
    }
    Some(b)
}
