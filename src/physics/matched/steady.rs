//! One speed: the thrust that she asks for, what the propellers turn at, what the engines could do.

use std::f64::consts::TAU;

use uom::si::f64::{Angle, AngularVelocity, Force, Power, Ratio, Velocity, VolumeRate};

use crate::physics::engine::Engine;
use crate::physics::propeller::{Sized, Turning};
use crate::physics::root::root;
use crate::physics::running::{
    Beside, Dragged, Outside, Planing, Porpoising, Running, Tabs, displaced, hump, porpoising, within,
};
use crate::quantity::{Dimensioned, degrees, standard_gravity};

/// Volume Froude number from which she planes. Common practice, no source.
pub const PLANES_FROM: f64 = 2.0;

/// What a trial says of her drag and of her propellers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factors {
    /// Her drag over the reckoned one.
    pub drag: f64,
    /// The pitch by which her propellers work over the marked one.
    pub pitch: f64,
}

impl Default for Factors {
    fn default() -> Self {
        Factors { drag: 1.0, pitch: 1.0 }
    }
}

/// What drives her: engines alike, with propellers alike.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Propulsion {
    /// How many engines, with one propeller each.
    pub engines: u8,
    /// What each of them gives and burns.
    pub engine: Engine,
    /// Turns of the engine for one of the propeller.
    pub gears: Ratio,
    /// Part of the power that comes through the gears.
    pub through: Ratio,
    /// The propeller of each, its pitch as marked; [`Craft::sized`] has the pitch by which it works.
    pub propeller: Sized,
}

/// A loaded boat with her engines.
#[derive(Clone, Debug, PartialEq)]
pub struct Craft {
    /// Her bottom, weight, centre and thrust line; its speed and what acts beside are filled in.
    pub planing: Planing,
    /// Air and lower units.
    pub dragged: Vec<Dragged>,
    /// Her trim tabs, where she has any.
    pub tabs: Option<Tabs>,
    /// Her engines and propellers.
    pub propulsion: Propulsion,
    /// What a trial says of her; both 1 where it says nothing.
    pub factors: Factors,
}

/// How she runs at one speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Steady {
    /// That speed, through the water.
    pub speed: Velocity,
    /// How she planes at it, drag as reckoned: hump and factors count in `thrust`.
    pub running: Running,
    /// The hump's factor on the bottom's drag.
    pub hump: Ratio,
    /// Thrust of all propellers that she asks for.
    pub thrust: Force,
    /// Thrust of all of them at full throttle.
    pub available: Force,
    /// Engine speed at full throttle.
    pub full_throttle: AngularVelocity,
    /// Engine speed that holds her there.
    pub engine: AngularVelocity,
    /// Power of each engine at its propeller shaft that holds her there.
    pub power: Power,
    /// Fuel of all engines.
    pub fuel: VolumeRate,
    /// `1 − V / (n · pitch)`, the pitch as marked.
    pub slip: Ratio,
    /// Efficiency of the propellers.
    pub efficiency: Ratio,
    /// Turns, coefficients, thrust and torque of one propeller.
    pub turning: Turning,
    /// Her speed over that of gravity on the cube root of what she displaces.
    pub froude: Ratio,
    /// Trims between which she begins to porpoise, where she planes and that is told.
    pub porpoises: Option<Porpoising>,
}

impl Steady {
    /// Thrust that is left at full throttle over the thrust that she asks for.
    pub fn margin(&self) -> f64 {
        self.available.si() / self.thrust.si() - 1.0
    }

    /// Her trim, where she planes: on the way there the bow wave has its part in it, of which a prism knows nothing.
    pub fn trim(&self) -> Option<Angle> {
        (self.froude.si() >= PLANES_FROM).then_some(self.running.trim)
    }

    /// Whether the engines can hold her there.
    pub fn is_held(&self) -> bool {
        self.available >= self.thrust
    }
}

/// Trim at which a tab's own drag is first reckoned; what comes out corrects it.
const FIRST_TRIM_DEG: f64 = 4.0;
/// Times that her trim is corrected by what blades and tabs do at it: each leaves about a hundredth of what was left.
const CORRECTIONS: usize = 2;
/// How near two speeds of an engine are alike, and how slow it barely turns, as parts of its greatest.
const ALIKE: f64 = 1e-14;
const BARELY: f64 = 1e-3;

/// Slip as the trade defines it, `1 − V / (n · pitch)`: speeds in the same unit.
pub fn slip(speed: Velocity, pitch_speed: Velocity) -> Ratio {
    Ratio::from_si(1.0 - speed.si() / pitch_speed.si())
}

impl Craft {
    /// How she planes at this speed, drag as reckoned.
    ///
    /// # Errors
    /// Where the method does not tell it.
    pub fn running(&self, speed: Velocity) -> Result<(Running, Beside), Outside> {
        let froude = self.froude(speed);
        if froude < hump::FROM {
            return Err(Outside::Floats(froude));
        }
        let dragged = self.dragged.iter().map(|one| one.at(speed)).fold(Beside::default(), |sum, one| sum + one);
        let beside = |trim: Angle, blades: Force| {
            let tabs = self.tabs.map_or(Beside::default(), |tabs| {
                let Planing { bottom, water, centre_forward, .. } = self.planing;
                tabs.at(speed, water.density, bottom.beam, trim, centre_forward)
            });
            dragged + tabs + Beside { blades, ..Beside::default() }
        };
        let settled = |beside: Beside, near| Planing { speed, beside, ..self.planing }.settled(near);
        let mut at = beside(degrees(FIRST_TRIM_DEG), Force::default());
        let mut running = settled(at, None)?;
        for _ in 0..CORRECTIONS {
            let turning = self.turning(speed, self.thrust(&running, &at, self.hump(froude)));
            let blades = self.sized().square_to_shaft(&turning) * f64::from(self.propulsion.engines);
            at = beside(running.trim, Force::from_si(blades));
            running = settled(at, Some(running.trim))?;
        }
        within(running.speed_coefficient, running.trim, running.wetted)?;
        Ok((running, at))
    }

    /// The hump's factor on the bottom's drag at this volume Froude number.
    fn hump(&self, froude: f64) -> f64 {
        hump::factor((self.planing.centre_forward / self.planing.bottom.beam).si(), froude)
    }

    /// Thrust of all propellers that she asks for as she planes, N: the bottom's part times the hump's factor.
    fn thrust(&self, running: &Running, beside: &Beside, hump: f64) -> f64 {
        let cosine = self.planing.thrust.angle.si().cos();
        let besides = beside.drag.si() * running.trim.si().cos();
        let bottom = running.thrust.si() * cosine - besides;
        self.factors.drag * (hump * bottom + besides) / cosine
    }

    /// One propeller, as it turns where all of them pull so many newtons.
    fn turning(&self, speed: Velocity, thrust: f64) -> Turning {
        self.sized().pulling(thrust / f64::from(self.propulsion.engines), speed.si())
    }

    /// How she runs at this speed.
    ///
    /// # Errors
    /// Where the method does not tell it.
    pub fn steady(&self, speed: Velocity) -> Result<Steady, Outside> {
        let (running, beside) = self.running(speed)?;
        Ok(self.driven(speed, running, beside))
    }

    /// Her volume Froude number.
    fn froude(&self, speed: Velocity) -> f64 {
        let volume = displaced(self.planing.weight, self.planing.water.density);
        hump::volume_froude(speed.si(), volume, standard_gravity().si())
    }

    /// The trims between which she begins to porpoise: told by the lift coefficient of all she weighs, as the models were towed
    /// whose limits they are, whatever tabs carry of it.
    fn porpoises(&self, speed: Velocity, froude: f64) -> Option<Porpoising> {
        let head = 0.5 * self.planing.water.density.si() * speed.si().powi(2);
        let lift = self.planing.weight.si() / (head * self.planing.bottom.beam.si().powi(2));
        let planes = froude >= PLANES_FROM;
        planes.then(|| porpoising(self.planing.bottom.deadrise, Ratio::from_si(lift))).flatten()
    }

    /// Engines and propellers put behind how she planes.
    pub(super) fn driven(&self, speed: Velocity, running: Running, beside: Beside) -> Steady {
        let froude = self.froude(speed);
        let hump = self.hump(froude);
        let thrust = self.thrust(&running, &beside, hump);
        let drive = &self.propulsion;
        let gears = drive.gears.si();
        let turning = self.turning(speed, thrust);
        let power = turning.power / drive.through.si();
        let engine = TAU * turning.turns * gears;
        let full = self.full_throttle(speed);
        let marked = drive.propeller.stretch * drive.propeller.pitch;
        let fuel = drive.engine.fuel_at(power, engine) * f64::from(drive.engines);
        Steady {
            speed,
            running,
            hump: Ratio::from_si(hump),
            thrust: Force::from_si(thrust),
            available: Force::from_si(full.thrust * f64::from(drive.engines)),
            full_throttle: AngularVelocity::from_si(TAU * full.turns * gears),
            engine: AngularVelocity::from_si(engine),
            power: Power::from_si(power),
            fuel: VolumeRate::from_si(fuel),
            slip: slip(speed, Velocity::from_si(turning.turns * marked)),
            efficiency: Ratio::from_si(turning.open_water.efficiency()),
            turning,
            froude: Ratio::from_si(froude),
            porpoises: self.porpoises(speed, froude),
        }
    }

    /// The propeller with the pitch by which it works.
    pub fn sized(&self) -> Sized {
        let own = self.propulsion.propeller;
        Sized { stretch: own.stretch * self.factors.pitch, ..own }
    }

    /// One propeller at full throttle at this speed: where the engine's power is what it asks for, or the limiter holds it.
    pub fn full_throttle(&self, speed: Velocity) -> Turning {
        let (drive, sized) = (&self.propulsion, self.sized());
        let gears = drive.gears.si();
        let most = drive.engine.most.si() / (TAU * gears);
        let surplus = |turns: f64| {
            let given = drive.engine.full_throttle(TAU * turns * gears) * drive.through.si();
            given - sized.turning(turns, speed.si()).power
        };
        if surplus(most) >= 0.0 {
            return sized.turning(most, speed.si());
        }
        // Barely turning it asks for less than any engine has.
        let ends = [BARELY * most, most];
        sized.turning(root(ends, ends.map(surplus), ALIKE * most, surplus), speed.si())
    }
}
