//! Weight and centre from the ledger, thrust along the engines' own line, propellers and engines: what the reckoning runs on.

use uom::si::f64::{Angle, AngularVelocity, Area, Length, Mass, MassDensity, Ratio, Velocity, VolumeRate};
use uom::si::power::horsepower;

use super::bottom;
use crate::case::Case;
use crate::case::float::{Crew, Loaded, Side, State, plate_point};
use crate::job::{Cycle, EngineGroup, Running, Span};
use crate::physics::engine::{Engine as Motor, FULL_THROTTLE_GAL_HP_H, Kind, LIMITER, TWO_STROKE_MORE, left_by_age};
use crate::physics::matched::{Craft, Factors, Propulsion};
use crate::physics::propeller::{
    Curves, PITCH_RATIOS, Propeller, Sized, THROUGH_GEARS, USUAL_AREA_RATIO, USUAL_BLADES,
};
use crate::physics::running::{
    AIR, AIR_DRAG, Beside, Dragged, FRONT_HEIGHT_OF_BEAM, FRONT_OF_BEAM, LOWER_UNIT_DRAG, Planing, Tabs, ThrustLine,
    Water,
};
use crate::quantity::{Dimensioned, Measure, Reading, Text, say, standard_gravity};
use crate::reading::Absent;
use crate::reading::{gallon_per_hour, reading};
use crate::rig::{Engine, Group, Missing, Outfit};

/// Reynolds number of an outboard's blades at speed: the series is corrected to it. Common practice, no source: 4 to 8 million.
const BLADES_REYNOLDS: f64 = 5e6;
/// Tabs of a boat. Common practice, no source.
const USUAL_TABS: u8 = 2;

/// A propeller of an engine.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Screw {
    /// How many it has.
    pub blades: u8,
    /// Area of its blades over that of its disc.
    pub area_ratio: f64,
    /// Across the tips of its blades.
    pub diameter: Length,
    /// As marked, or as it was sought.
    pub pitch: Length,
    /// Whether its pitch was told.
    pub told: bool,
}

/// What the reckoning runs on, for one side of the repower.
#[derive(Clone, Debug)]
pub struct Built {
    /// The boat as she is loaded, with her engines and their propellers.
    pub craft: Craft,
    /// The loading in which she runs.
    pub loading: String,
    /// The propeller of each main engine, as told or as taken.
    pub screw: Screw,
    /// The engines' full-throttle band.
    pub band: Option<[AngularVelocity; 2]>,
    /// Upper blade tips below the water's surface behind the transom at the outermost engine, going straight, metres.
    pub tips: f64,
    /// The same at the engine that a hard turn lifts most.
    pub tips_in_turn: f64,
    /// Depth of the shaft under that surface, metres.
    pub shaft: f64,
    /// Middle of the propellers' shafts: forward of the transom and up from the bottom, metres.
    pub shafts: [f64; 2],
    /// Her centre of gravity: forward of the transom and up from the bottom, metres.
    pub centre: [f64; 2],
    /// Trim of the engines as she is reckoned, out positive.
    pub trim: Angle,
    /// The range of trim that the engines have, in and out; nothing where it is not known.
    pub trims: Option<[Angle; 2]>,
    /// What her main engines weigh.
    pub engines: Mass,
    /// What was taken for granted, in sentences.
    pub assumed: Vec<Text>,
}

/// By how much of its setback the water behind a transom has come up. Common practice, no source: an inch in twelve to an inch
/// in eight.
pub(super) const WATER_RISES: f64 = 0.1;
/// How far a boat banks in a hard turn. Common practice, no source: 15 to 20 degrees.
const BANKS_DEG: f64 = 15.0;

impl Built {
    /// Of this side.
    ///
    /// # Errors
    /// What is missing, or why the method does not tell her.
    pub(super) fn of(case: &Case, asked: &Running, side: Side) -> Result<Built, Absent> {
        let rig = case.rig;
        let outfit = match side {
            Side::Before => &rig.before,
            Side::After => &rig.after,
        };
        let engines = mains(outfit)?;
        let float = case.float().map_err(Clone::clone)?;
        let (loaded, state) = loading(&float.loadings, asked, side)?;
        let mut assumed = Vec::new();
        let centre = state.total.centre;
        let bottom = bottom::of(rig, centre.x, &mut assumed)?;
        let water = Water::of(float.water);
        let first = engines[0].1;
        let screw = screw(first, &mut assumed)?;
        let trim = asked.engine_trim.as_ref().map_or(Angle::default(), |trim| trim.value);
        let places = places(case, &engines)?;
        let middle = places.iter().fold([0.0; 2], |sum, place| {
            let count = places.len() as f64;
            [sum[0] + place.shaft[0] / count, sum[1] + place.shaft[1] / count]
        });
        // Trimmed out, the propeller pushes the stern down.
        let thrust = ThrustLine::through(middle, -trim, [centre.x, centre.z]);
        let beam = bottom.beam.si();
        let area = asked.front.as_ref().map_or(FRONT_OF_BEAM * beam * beam, |front| front.value.si());
        let front = Area::from_si(AIR_DRAG * area);
        let unit = LOWER_UNIT_DRAG * screw.diameter.si().powi(2) * engines.len() as f64;
        let dragged = vec![
            Dragged {
                area: front,
                density: MassDensity::from_si(AIR),
                below: Length::from_si(centre.z - FRONT_HEIGHT_OF_BEAM * beam),
            },
            Dragged { area: Area::from_si(unit), density: float.water, below: Length::from_si(centre.z - middle[1]) },
        ];
        let tabs = asked.tabs.as_ref().map(|tabs| Tabs {
            span: tabs.span.value * f64::from(tabs.count.unwrap_or(USUAL_TABS)),
            chord: tabs.chord.value,
            deflection: tabs.down.as_ref().map_or(Angle::default(), |down| down.value),
        });
        let motor = motor(case, first, side, &mut assumed)?;
        let gears = gears(first)?;
        let propulsion = Propulsion {
            engines: u8::try_from(engines.len()).unwrap_or(u8::MAX),
            engine: motor,
            gears,
            through: Ratio::from_si(THROUGH_GEARS),
            propeller: sized(&screw, float.water),
        };
        let planing = Planing {
            bottom,
            water,
            weight: state.total.mass * standard_gravity(),
            centre_forward: Length::from_si(centre.x),
            centre_above: Length::from_si(centre.z),
            thrust,
            speed: Velocity::default(),
            beside: Beside::default(),
        };
        let radius = 0.5 * screw.diameter.si();
        let depth = |place: &Place| place.depth;
        let least = |of: &dyn Fn(&Place) -> f64| places.iter().map(of).fold(f64::INFINITY, f64::min);
        let bank = BANKS_DEG.to_radians().tan();
        Ok(Built {
            craft: Craft { planing, dragged, tabs, propulsion, factors: Factors::default() },
            loading: loaded.name.clone(),
            screw,
            band: first.spec.full_throttle.as_ref().map(|band| [band.from.value, band.to.value]),
            tips: least(&|place| depth(place) - radius),
            tips_in_turn: least(&|place| depth(place) - place.rise - radius - place.across * bank),
            shaft: least(&depth),
            shafts: middle,
            centre: [centre.x, centre.z],
            trim,
            trims: first.trim.reading().map(|trims| [trims.from.value, trims.to.value]),
            engines: engines.iter().filter_map(|(_, engine)| engine.weight.reading()).map(|weight| weight.value).sum(),
            assumed,
        })
    }

    /// The craft with another propeller.
    pub fn with_screw(&self, screw: &Screw) -> Craft {
        let mut craft = self.craft.clone();
        craft.propulsion.propeller = sized(screw, self.craft.planing.water.density);
        craft
    }
}

/// A propeller as the series has it, stretched where its pitch lies outside.
fn sized(screw: &Screw, density: MassDensity) -> Sized {
    let ratio = (screw.pitch / screw.diameter).si();
    let held = ratio.clamp(*PITCH_RATIOS.start(), *PITCH_RATIOS.end());
    let blades = screw.blades.clamp(2, 7);
    let propeller = Propeller::new(blades, screw.area_ratio.clamp(0.3, 1.05), held);
    let curves =
        propeller.map_or_else(|_| Curves::none(), |propeller| Curves::at_reynolds(&propeller, BLADES_REYNOLDS));
    let diameter = screw.diameter.si();
    Sized { curves, diameter, density: density.si(), stretch: ratio / held, pitch: held * diameter }
}

/// Her main engines, alike.
fn mains(outfit: &Outfit) -> Result<Vec<(&Group, &Engine)>, Absent> {
    let mains: Vec<(&Group, &Engine)> =
        outfit.engines().filter(|(_, engine)| engine.role == crate::job::Role::Main).collect();
    let Some((_, first)) = mains.first() else {
        return Err(Absent::Waits(vec![outfit.missing()]));
    };
    let power = |engine: &Engine| engine.power.reading().map(|power| power.value);
    if mains.iter().any(|(_, engine)| power(engine) != power(first)) {
        return Err(Absent::NotApplicable(Text::from(
            "Her main engines are of different power: the reckoning takes them alike.",
        )));
    }
    Ok(mains)
}

/// The loading that is run in: the one named, else with the crew at their stations, else the first that floats with somebody or
/// something aboard.
fn loading<'f>(loadings: &'f [Loaded], asked: &Running, side: Side) -> Result<(&'f Loaded, &'f State), Absent> {
    let state = |loaded: &'f Loaded| match side {
        Side::Before => loaded.before.as_ref(),
        Side::After => loaded.after.as_ref(),
    };
    let named = asked.loading.as_ref().map(|name| {
        loadings.iter().find(|loaded| loaded.name == *name).ok_or_else(|| {
            let known: Vec<Text> = loadings.iter().map(|loaded| Text::from(loaded.name.as_str())).collect();
            Absent::NotApplicable(
                say!("No loading is called `{}`; there are: ", name.as_str())
                    .then(Text::join(known, ", "))
                    .then(Text::from(".")),
            )
        })
    });
    let loaded = match named {
        Some(found) => found?,
        None => loadings
            .iter()
            .find(|loaded| loaded.crew == Crew::AtStations)
            .or_else(|| loadings.iter().find(|loaded| loaded.crew != Crew::Ashore))
            .or_else(|| loadings.first())
            .ok_or_else(|| Absent::NotApplicable(Text::from("No loading of hers is known.")))?,
    };
    let state = state(loaded)
        .ok_or_else(|| Absent::NotApplicable(say!("`{}` is not known with these engines.", loaded.name.as_str())))?;
    Ok((loaded, state))
}

/// Where an engine's propeller works.
struct Place {
    /// The shaft, forward and up, metres.
    shaft: [f64; 2],
    /// Its depth under the water behind the transom, metres.
    depth: f64,
    /// How far off the centreline, metres.
    across: f64,
    /// By how much the bottom there stands above the keel, metres.
    rise: f64,
}

fn places(case: &Case, engines: &[(&Group, &Engine)]) -> Result<Vec<Place>, Absent> {
    let deadrise = case.rig.job.boat.deadrise().reading().map_or(0.0, |deadrise| deadrise.value.si());
    let mut missing = Vec::new();
    let mut places = Vec::new();
    for (group, engine) in engines {
        let gearcase = engine.spec.plate_to_propeller_shaft.as_ref().map(|down| down.value.si());
        let point = plate_point(case.rig, group, engine);
        match (point, gearcase) {
            (Ok(point), Some(gearcase)) => {
                let setback = group.setback().reading().map_or(0.0, |setback| setback.value.si());
                let rise = engine.y.si().abs() * deadrise.tan();
                // The bottom's line there, and what the water has come up behind it.
                let surface = rise + WATER_RISES * setback;
                let shaft = [point.x, point.z - gearcase];
                places.push(Place { shaft, depth: surface - shaft[1], across: engine.y.si().abs(), rise });
            }
            (point, gearcase) => {
                let lacking = gearcase.is_none().then(|| described(engine));
                Missing::gather(&mut missing, point.err().unwrap_or_default().into_iter().chain(lacking));
            }
        }
    }
    if missing.is_empty() { Ok(places) } else { Err(Absent::Waits(missing)) }
}

/// What a mounting sheet gives of the engine, as a missing reading.
fn described(engine: &Engine) -> Missing {
    Missing { measurement: reading!(EngineGroup.sheet), of: Some(engine.label.clone()) }
}

fn gears(engine: &Engine) -> Result<Ratio, Absent> {
    let gears = engine.spec.gear_ratio.as_ref().map(|ratio| ratio.value);
    gears.ok_or_else(|| Absent::Waits(vec![described(engine)]))
}

/// The engine as its class and its age have it.
fn motor(case: &Case, engine: &Engine, side: Side, assumed: &mut Vec<Text>) -> Result<Motor, Absent> {
    let power = engine.power.ask().map_err(|missing| Absent::Waits(vec![missing]))?.value;
    let band: &Span<AngularVelocity> =
        engine.spec.full_throttle.as_ref().ok_or_else(|| Absent::Waits(vec![described(engine)]))?;
    let kind = match engine.spec.cycle {
        Some(Cycle::TwoStroke) => Kind::TwoStroke,
        Some(Cycle::Electric) => Kind::Electric,
        _ => Kind::FourStroke,
    };
    let left = match (&case.rig.ran, side) {
        (Some(ran), Side::Before) => left_by_age(ran.hours, ran.compression),
        _ => Ratio::from_si(1.0),
    };
    if left.si() < 1.0 {
        assumed.push(say!("Age is taken to have left {} of the old engines' power.", Measure::of(left)));
    }
    let fuel = engine.spec.fuel_rate.as_ref().map_or_else(
        || match kind {
            Kind::Electric => VolumeRate::default(),
            kind => {
                let more = if kind == Kind::TwoStroke { TWO_STROKE_MORE } else { 1.0 };
                VolumeRate::from_si(gallon_per_hour(more * FULL_THROTTLE_GAL_HP_H * power.get::<horsepower>()).si())
            }
        },
        |fuel| fuel.value,
    );
    let rated = 0.5 * (band.from.value + band.to.value);
    Ok(Motor { kind, power, rated, most: band.to.value * LIMITER, left, fuel })
}

/// The propeller: as its hub is marked; what is not told is what is usual.
fn screw(engine: &Engine, assumed: &mut Vec<Text>) -> Result<Screw, Absent> {
    let told = engine.propeller.reading().cloned().unwrap_or_default();
    let value = |reading: &Option<Reading<Length>>| reading.as_ref().map(|reading| reading.value);
    let diameter = value(&told.diameter)
        .or(engine.spec.propeller_diameter.as_ref().map(|fits| fits.to.value))
        .ok_or_else(|| Absent::Waits(vec![described(engine)]))?;
    let pitch = value(&told.pitch);
    let screw = Screw {
        blades: told.blades.unwrap_or(USUAL_BLADES),
        area_ratio: told.area_ratio.as_ref().map_or(USUAL_AREA_RATIO, |ratio| ratio.value.si()),
        diameter,
        pitch: pitch.unwrap_or(diameter),
        told: pitch.is_some(),
    };
    if told.blades.is_none() || told.diameter.is_none() {
        assumed.push(say!(
            "The propeller of the {} is taken with {} blades and {} in diameter.",
            engine.label.as_str(),
            u32::from(screw.blades),
            Measure::tape(diameter)
        ));
    }
    Ok(screw)
}
