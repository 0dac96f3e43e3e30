//! The sea trial: runs before and after, and what was promised.

use uom::si::f64::{Angle, AngularVelocity, Length, Mass, Time, Velocity, Volume, VolumeRate};

use super::bounds;
use crate::quantity::{DistancePerVolume, Reading};
use crate::reading::*;

things! {
    /// Trials with the old engines and with the new ones.
    pub struct Trial {
        /// With the engines that come off.
        before: Option<Sailed> = called("the trial before")
            .taken(Stop::Helm, "on the water, with the engines that come off",
                "both ways over the same water at four engine speeds or more, the last at full throttle: engine \
                speed, speed each way, fuel flow; `sternknee tape JOB --trial FILE` writes a sheet to take along"),
        /// With the engines that go on.
        after: Option<Sailed> = called("the trial after")
            .taken(Stop::Helm, "on the water, with the engines that go on",
                "the same runs, loaded alike, over the same water"),
        /// What was promised of the new engines.
        promised: Option<Promised> = called("what was promised")
            .taken(Stop::Papers, "the offer", "what the seller wrote: speed, distance for fuel, range, engine speed at full throttle"),
        /// Fuel that can be used, all tanks together; that of weights.tanks where left out.
        tank: Option<Reading<Volume>> = called("fuel that can be used").within(bounds::FUEL_ABOARD)
            .taken(Stop::Papers, "tank's label, or a fill from empty", "all tanks together").closely(gallon(2.0)),
    }
}

things! {
    /// One trial.
    pub struct Sailed {
        /// The day.
        date: Option<String>,
        /// Its runs.
        runs: Vec<Run> = called("run"),
        /// A file of runs (.csv), or a log of instruments (NMEA 0183, or .csv with a column of times), from the job's folder.
        file: Option<String> = named_file(&[".csv", ".nmea", ".log", ".txt"]),
        /// Persons aboard.
        persons: Option<u16> = called("persons aboard on the trial").within(bounds::CREW),
        /// Fuel aboard.
        fuel_aboard: Option<Reading<Volume>> = called("fuel aboard on the trial").within(bounds::FUEL_ABOARD)
            .closely(gallon(5.0)),
        /// Gear aboard beyond the boat's own.
        gear: Option<Reading<Mass>> = called("gear aboard on the trial").within(bounds::ITEM_WEIGHT).closely(lb(20.0)),
        /// Wind.
        wind: Option<Reading<Velocity>> = called("wind on the trial").within(bounds::WIND).closely(mph(3.0)),
        /// Sea.
        sea: Option<Sea>,
        /// From rest at full throttle until she planes.
        to_plane: Option<Reading<Time>> = called("time to plane").within(bounds::SECONDS).closely(second(0.5)),
        /// From rest at full throttle to 20 mph.
        to_20_mph: Option<Reading<Time>> = called("time to 20 mph").within(bounds::SECONDS).closely(second(0.5)),
        /// Turns of the wheel from lock to lock.
        lock_to_lock: Option<f64> = called("turns of the wheel, lock to lock").within(bounds::TURNS),
        /// The steering in hand.
        steering: Option<Effort>,
        /// When the propellers lose their bite.
        ventilates: Option<Ventilates>,
        /// When she porpoises.
        porpoises: Option<Porpoises>,
        /// What shakes.
        vibration: Option<Vibration>,
    }
}

things! {
    /// One run.
    pub struct Run {
        /// Engine speed, the mean of her engines.
        rpm: Option<Reading<AngularVelocity>> = called("engine speed").within(bounds::TRIAL_ROTATION).closely(rpm(50.0)),
        /// Speed one way.
        speed: Option<Reading<Velocity>> = called("speed").within(bounds::TRIAL_SPEED).closely(mph(0.2)),
        /// Speed the other way.
        back: Option<Reading<Velocity>> = called("speed back").within(bounds::TRIAL_SPEED).closely(mph(0.2)),
        /// Fuel of all engines.
        fuel: Option<Reading<VolumeRate>> = called("fuel flow").within(bounds::FUEL_FLOW).closely(gallon_per_hour(0.5)),
        /// Whether the throttles were open.
        full_throttle: bool,
        /// Trim of the engines, out positive.
        engine_trim: Option<Reading<Angle>> = called("engine trim in the run").within(bounds::ENGINE_TRIM).closely(deg(1.0)),
        /// Tabs down.
        tabs: Option<Reading<Angle>> = called("tabs down in the run").within(bounds::TAB_DOWN).closely(deg(1.0)),
    }
}

things! {
    /// What a dealer promised.
    pub struct Promised {
        /// Greatest speed.
        top_speed: Option<Reading<Velocity>> = called("promised speed").within(bounds::TRIAL_SPEED).closely(mph(1.0)),
        /// Distance for fuel at best cruise.
        economy: Option<Reading<DistancePerVolume>> = called("promised distance for fuel").within(bounds::ECONOMY)
            .closely(mile_per_gallon(0.1)),
        /// Range with a tenth kept back.
        range: Option<Reading<Length>> = called("promised range").within(bounds::RANGE).closely(mile(10.0)),
        /// Engine speed at full throttle.
        full_throttle: Option<Reading<AngularVelocity>> = called("promised engine speed at full throttle")
            .within(bounds::TRIAL_ROTATION).closely(rpm(100.0)),
    }
}

words! {
    /// The sea on a trial.
    pub enum Sea {
        /// Glassy or rippled.
        Calm = "calm";
        /// Wavelets to a foot.
        Slight = "slight";
        /// One to three feet.
        Moderate = "moderate";
        /// More.
        Rough = "rough";
    }

    /// The steering in hand.
    pub enum Effort {
        /// Two fingers.
        Light = "light";
        /// One hand.
        Firm = "firm";
        /// Both hands.
        Heavy = "heavy";
    }

    /// When the propellers lose their bite.
    pub enum Ventilates {
        Never = "never";
        /// Hard over at speed only.
        HardTurns = "hard_turns", "in hard turns";
        /// In any turn.
        Turns = "turns", "in any turn";
        /// Going straight.
        Straight = "straight", "going straight";
    }

    /// When she porpoises.
    pub enum Porpoises {
        Never = "never";
        /// With the engines trimmed far out only.
        TrimmedOut = "trimmed_out", "with the engines trimmed out";
        /// At some speeds, however trimmed.
        AtSomeSpeeds = "at_some_speeds", "at some speeds, however trimmed";
        /// At all speeds on plane.
        Always = "always";
    }

    /// What shakes.
    pub enum Vibration {
        None = "none";
        Slight = "slight";
        Strong = "strong";
    }
}
