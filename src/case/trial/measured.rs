//! One trial: its runs from the job and from its file, each with mean, fuel, range and slip.

use uom::si::angular_velocity::radian_per_second;
use uom::si::f64::{AngularVelocity, Length, Mass, MassDensity, Power, Ratio, Velocity, Volume, VolumeRate};

use super::super::float::Side;
use crate::job::{Role, Run, Sailed};
use crate::logged::{Damage, Log, Logged};
use crate::physics::trial::{
    Point, Stretch, distance_per_volume, mean, pairs, pitch_speed, range_with_reserve, slip, stretches,
};
use crate::quantity::{Basis, Dimensioned, DistancePerVolume, Reading, Text, pounds};
use crate::rig::{Engine, Rig, Sailing};
use crate::working::{Sheet, Term};

/// A value with how far off it may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Doubtful<Q> {
    /// As measured or as reckoned.
    pub value: Q,
    /// How far off it may be, either way.
    pub doubt: Q,
}

/// A run, and what it comes to.
#[derive(Clone, Debug)]
pub struct Done {
    /// Engine speed, the mean of her engines.
    pub engine: Option<AngularVelocity>,
    /// Mean of both ways, or of the one way that was run.
    pub speed: Option<Doubtful<Velocity>>,
    /// Half of the difference between the ways; nothing where it was run one way.
    pub current: Option<Velocity>,
    /// Fuel flow of all engines.
    pub fuel: Option<VolumeRate>,
    /// Distance that a volume of fuel takes her.
    pub economy: Option<DistancePerVolume>,
    /// How far the fuel that can be used takes her, a tenth kept back.
    pub range: Option<Length>,
    /// By how much she falls short of the speed of the marked pitch, as a part of that speed.
    pub slip: Option<Ratio>,
    /// Whether the throttles were open: as told, or taken so of the fastest engine speed in a file.
    pub full_throttle: bool,
    /// How it came about.
    pub sheet: Sheet,
}

/// A trial.
#[derive(Clone, Debug)]
pub struct Measured {
    /// What the job says of it.
    pub said: Sailed,
    /// Its runs by engine speed, the slowest first.
    pub runs: Vec<Done>,
    /// What was damaged of its log.
    pub damage: Option<Damage>,
    /// Rated power of the main engines together, where it is known.
    pub power: Option<Power>,
    /// What was taken for granted, in sentences.
    pub assumed: Vec<Text>,
}

/// How closely fuel flow is read, as a part. Common practice, no source: flow meters of outboards are good for 3 %.
pub(super) const FUEL_READ: f64 = 0.03;
/// Weight of a person where it is not told. Common practice, no source.
const PERSON_LB: f64 = 185.0;
/// Weight of gasoline, kg/m³. Common practice, no source: 6.2 lb/gal.
const FUEL_KG_M3: f64 = 740.0;
/// Runs as near in engine speed as this are at equal speed of the engine. Common practice, no source.
const FULL_WITHIN: f64 = 0.02;

impl Measured {
    pub(super) fn of(rig: &Rig, sailing: &Sailing, side: Side, tank: Option<Volume>) -> Measured {
        let outfit = match side {
            Side::Before => &rig.before,
            Side::After => &rig.after,
        };
        let mains: Vec<&Engine> =
            outfit.engines().map(|(_, engine)| engine).filter(|engine| engine.role == Role::Main).collect();
        let mut assumed = Vec::new();
        let mut runs: Vec<Raw> = sailing.said.runs.iter().map(Raw::of).collect();
        let mut damage = None;
        match &sailing.logged {
            Some(Logged::Rows(rows)) => runs.extend(rows.iter().map(|row| Raw {
                engine: row.engine,
                there: row.speed,
                back: row.back,
                fuel: row.fuel,
                from: Some(FILE),
                ..Raw::default()
            })),
            Some(Logged::Log(log)) => {
                damage = Some(log.damage);
                runs.extend(of_log(log));
            }
            None => {}
        }
        if sailing.logged.is_some() && !runs.iter().any(|run| run.full_throttle) {
            let speed = |run: &Raw| run.engine.map_or(0.0, |engine| engine.si());
            let most = runs.iter().map(speed).fold(0.0, f64::max);
            for run in runs.iter_mut().filter(|run| most > 0.0 && speed(run) >= (1.0 - FULL_WITHIN) * most) {
                run.full_throttle = true;
            }
            assumed.push(Text::from(
                "The fastest engine speed in the trial's file is taken as full throttle: a file does not tell it.",
            ));
        }
        let pitch = mains.first().and_then(|engine| pitch_of(engine));
        let mut runs: Vec<Done> = runs.iter().map(|run| run.done(pitch, tank)).collect();
        runs.sort_by(|a, b| along(a).total_cmp(&along(b)));
        let power: Option<Power> = mains.iter().map(|engine| engine.power.reading().map(|power| power.value)).sum();
        Measured { said: sailing.said.clone(), runs, damage, power: power.filter(|p| p.si() > 0.0), assumed }
    }

    /// The fastest run at full throttle.
    pub fn full_throttle(&self) -> Option<&Done> {
        let full = self.runs.iter().filter(|run| run.full_throttle);
        full.max_by(|a, b| speed(a).total_cmp(&speed(b)))
    }

    /// Her greatest speed of all runs.
    pub fn top(&self) -> Option<&Done> {
        self.runs.iter().filter(|run| run.speed.is_some()).max_by(|a, b| speed(a).total_cmp(&speed(b)))
    }

    /// The run that goes farthest on a gallon.
    pub fn best_cruise(&self) -> Option<&Done> {
        let told = self.runs.iter().filter(|run| run.economy.is_some());
        let of = |run: &Done| run.economy.map_or(0.0, |economy| economy.si());
        told.max_by(|a, b| of(a).total_cmp(&of(b)))
    }

    /// Weight of persons, fuel and gear aboard, as far as told; nothing where none of it is.
    pub fn load(&self, rig: &Rig) -> Option<Mass> {
        let person = rig.job.weights.person.as_ref().map_or(pounds(PERSON_LB), |person| person.value);
        let persons = self.said.persons.map(|persons| person * f64::from(persons));
        let fuel = self.said.fuel_aboard.as_ref().map(|fuel| fuel.value * MassDensity::from_si(FUEL_KG_M3));
        let gear = self.said.gear.as_ref().map(|gear| gear.value);
        [persons?, fuel?, gear.unwrap_or_default()].into_iter().reduce(|a, b| a + b)
    }

    /// The runs as points of a curve: what they are ordered by and what is compared, each in its coherent SI unit.
    pub fn points(&self, along: Curve, value: Curve) -> Vec<Point> {
        let points = self.runs.iter().map(|run| {
            let (along, _) = along.of(run)?;
            let (value, doubt) = value.of(run)?;
            Some(Point { along, value, doubt })
        });
        points.flatten().collect()
    }

    /// Fuel of all engines at this speed, between runs; nothing beyond them.
    pub fn fuel_at(&self, speed: Velocity) -> Option<Doubtful<VolumeRate>> {
        let point = crate::physics::trial::at(&self.points(Curve::Speed, Curve::Fuel), speed.si())?;
        Some(Doubtful { value: VolumeRate::from_si(point.value), doubt: VolumeRate::from_si(point.doubt) })
    }
}

/// What runs are ordered by or compared in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Curve {
    Engine,
    Speed,
    Fuel,
    Economy,
}

impl Curve {
    /// Value and doubt of a run.
    fn of(self, run: &Done) -> Option<(f64, f64)> {
        let fuel = |fuel: VolumeRate| (fuel.si(), FUEL_READ * fuel.si());
        match self {
            Curve::Engine => run.engine.map(|engine| (engine.si(), 0.0)),
            Curve::Speed => run.speed.map(|speed| (speed.value.si(), speed.doubt.si())),
            Curve::Fuel => run.fuel.map(fuel),
            Curve::Economy => {
                let (economy, speed) = (run.economy?.si(), run.speed?);
                Some((economy, economy * FUEL_READ.hypot(speed.doubt.si() / speed.value.si())))
            }
        }
    }
}

fn speed(run: &Done) -> f64 {
    run.speed.map_or(0.0, |speed| speed.value.si())
}

fn along(run: &Done) -> f64 {
    run.engine.map_or(speed(run), |engine| engine.si())
}

/// Gears and marked pitch, where both are known.
fn pitch_of(engine: &Engine) -> Option<(&Reading<Ratio>, &Reading<Length>)> {
    let gears = engine.spec.gear_ratio.as_ref()?;
    Some((gears, engine.propeller.reading()?.pitch.as_ref()?))
}

/// Where runs are from that do not stand in the job.
const FILE: &str = "the trial's file";

/// A run as it was written down.
#[derive(Clone, Copy, Debug, Default)]
struct Raw {
    engine: Option<AngularVelocity>,
    there: Option<Velocity>,
    back: Option<Velocity>,
    read: Option<Velocity>,
    fuel: Option<VolumeRate>,
    full_throttle: bool,
    /// Where its figures are from, as a legend says it; told in the job where nothing stands here.
    from: Option<&'static str>,
}

impl Raw {
    fn of(run: &Run) -> Raw {
        fn value<Q: Dimensioned>(reading: &Option<Reading<Q>>) -> Option<Q> {
            reading.as_ref().map(|reading| reading.value)
        }
        Raw {
            engine: value(&run.rpm),
            there: value(&run.speed),
            back: value(&run.back),
            read: run.speed.as_ref().and_then(|speed| speed.tolerance),
            fuel: value(&run.fuel),
            full_throttle: run.full_throttle,
            from: run.speed.as_ref().map(|speed| speed.basis.origin()),
        }
    }

    fn done(&self, pitch: Option<(&Reading<Ratio>, &Reading<Length>)>, tank: Option<Volume>) -> Done {
        let mut sheet = Sheet::default();
        let from = self.from.unwrap_or(Basis::Measured.origin());
        sheet.origin::<Velocity>("V1", from);
        sheet.origin::<Velocity>("V2", from);
        sheet.origin::<VolumeRate>("f", from);
        sheet.origin::<AngularVelocity>("n", from);
        sheet.told("i", pitch.map(|(gears, _)| gears));
        sheet.told("p", pitch.map(|(_, pitch)| pitch));
        let mean = self.there.map(|there| mean(&mut sheet, there, self.back, self.read));
        let fuel = self.fuel.filter(|fuel| fuel.si() > 0.0);
        let economy = mean
            .as_ref()
            .zip(fuel)
            .map(|(mean, fuel)| distance_per_volume(&mut sheet, &mean.speed, &Term::new("f", fuel)));
        let range =
            economy.as_ref().zip(tank).map(|(economy, tank)| range_with_reserve(&mut sheet, tank, economy).value());
        let turned = self.engine.zip(pitch).filter(|(engine, _)| engine.si() > 0.0);
        let slip = mean.as_ref().zip(turned).map(|(mean, (engine, (gears, pitch)))| {
            let marked = pitch_speed(&mut sheet, engine, gears.value, pitch.value);
            slip(&mut sheet, &mean.speed, &marked).value()
        });
        Done {
            engine: self.engine,
            speed: mean.as_ref().map(|mean| Doubtful { value: mean.speed.value(), doubt: mean.doubt }),
            current: mean.as_ref().and_then(|mean| mean.current.as_ref()).map(Term::value),
            fuel,
            economy: economy.as_ref().map(Term::value),
            range,
            slip,
            full_throttle: self.full_throttle,
            sheet,
        }
    }
}

/// The runs of a log: its steady stretches, two by two where they are the two ways of one run.
fn of_log(log: &Log) -> Vec<Raw> {
    let found = stretches(&log.samples);
    let velocity = |stretch: &Stretch| Velocity::from_si(stretch.speed);
    let runs = pairs(&found).into_iter().map(|(one, back)| {
        let both = |value: fn(&Stretch) -> Option<f64>| match back.as_ref().and_then(value) {
            Some(other) => value(&one).map(|value| 0.5 * (value + other)),
            None => value(&one),
        };
        Raw {
            engine: both(|s| s.engine).map(AngularVelocity::new::<radian_per_second>),
            there: Some(velocity(&one)),
            back: back.as_ref().map(velocity),
            read: None,
            fuel: both(|s| s.fuel).map(VolumeRate::from_si),
            full_throttle: false,
            from: Some(FILE),
        }
    });
    runs.collect()
}
