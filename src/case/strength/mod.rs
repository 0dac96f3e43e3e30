//! The transom under load: what each engine or bracket brings to it, what each bolt, the core and the panel make of
//! it, before and after.

mod bend;
mod board;
mod brought;
mod core;
mod driving;
mod fields;
mod footing;
mod grip;
mod other;
mod parts;
pub mod show;
mod state;
mod store;
mod sweep;

use std::sync::{Arc, OnceLock};

use super::Case;
use crate::physics::strength::knockdown::KnockDown;
use crate::quantity::{Basis, Dimensioned, Measure, Text, say};
use crate::reading::Absent;
use crate::rig::{Missing, Outfit, Rig};
use crate::working::Sheet;

pub use bend::{Bent, Effect, Panels, Way};
pub(in crate::case) use board::ply_material;
pub use board::{Board, Guessed, Knee, Open};
pub use core::{Core, FlexRead, FlexTest, core_words, hammer_words, moisture_words};
pub use driving::Driving;
pub use fields::Fields;
use footing::LoadCase;
pub use footing::{Footing, Hung};
pub use grip::{Part, Pressed, Side, Worst, backing_plate};
pub use other::Cure;
pub use parts::{FROM_WORK, ply, solved, support, sweep_part};
pub use state::{Stood, Used};
pub use store::{Kept, Store};
pub use sweep::{SWEPT_WAYS, Sweep, SweepPoint, Swept};

/// What strength makes of a rig.
#[derive(Clone, Debug)]
pub struct Strength {
    /// The transom; what was not told of it at its least.
    pub board: Board,
    /// What is left of its core.
    pub core: Core,
    /// How she is driven with the new engines.
    pub driving: Driving,
    /// With the new engines.
    pub after: Laden,
    /// With the old ones, or why that cannot be said.
    pub before: Result<Laden, Text>,
    /// What was not told of the transom, and what it would be at its best; nothing where all was told.
    pub open: Vec<Open>,
    /// The transom at its best, where something was not told.
    pub best: Option<Board>,
    /// The panel with the new engines on that, and with each of `open` alone at its best, worked out when asked for.
    at_best: OnceLock<Option<Bent>>,
    each_at_best: OnceLock<Vec<(Open, Bent)>>,
    /// The panel as it might be mended, each worked out when asked for.
    cures: Vec<OnceLock<Option<Bent>>>,
    /// What was taken for granted.
    pub assumed: Vec<Text>,
    /// How the slamming came about.
    pub sheet: Sheet,
    /// Where panels are kept.
    store: Arc<Store>,
}

/// A transom with an outfit on it.
#[derive(Clone, Debug)]
pub struct Laden {
    /// The load cases.
    pub cases: Vec<LoadCase>,
    /// The faces on it.
    pub footings: Vec<Footing>,
    /// The panel.
    pub bent: Bent,
}

impl<'a> Case<'a> {
    /// The transom under load.
    ///
    /// # Errors
    /// What is missing, or why it cannot be reckoned.
    pub fn strength(&self) -> Result<&Strength, &Absent> {
        self.strength.get_or_init(|| Strength::of(self)).as_ref()
    }
}

impl Strength {
    fn of(case: &Case) -> Result<Strength, Absent> {
        let (rig, store) = (case.rig, &case.store);
        if !rig.structure.asked {
            return Err(Absent::Waits(door(rig)));
        }
        let mut missing = Vec::new();
        let board = Board::of(rig, Guessed::LEAST).map_err(|no| gather(no, &mut missing));
        if let Err(lacking) = rig.after.ask() {
            missing.push(lacking);
        }
        let mut estimated = Vec::new();
        let speed = driving::top_speed(case, &mut estimated).map_err(|lacking| missing.push(lacking));
        let (board, speed) = match (board, speed) {
            (Ok(board), Ok(speed)) if missing.is_empty() => (board, speed),
            (Err(Some(no)), _) if missing.is_empty() => return Err(no),
            _ => return Err(Absent::Waits(missing)),
        };
        let mut assumed = board.assumed.clone();
        assumed.extend(estimated);
        let mut sheet = Sheet::default();
        let driving = Driving::of(case, speed, &mut sheet, &mut assumed);
        let footings = footing::footings(rig, &rig.after, &board, driving, &mut assumed)?;
        let mut old_assumed = Vec::new();
        let before = old(rig, &board, driving, &mut old_assumed);
        let core = Core::of(rig, &board, &footings, before.as_deref().ok())?;
        let left = core.left;
        let outfits = [(&rig.after, Some(&footings)), (&rig.before, before.as_ref().ok())];
        let outfits = outfits.into_iter().filter_map(|(outfit, footings)| {
            footings.map(|footings| brought::load_sets(&board, footings, footing::cases(outfit).len()))
        });
        store.begin(&board, left).map_err(state::unfit)?;
        Panels::ahead(&board, left, store, &outfits.collect::<Vec<_>>());
        let panels = Panels::of(&board, left, store)?;
        let outfits = [(&rig.after, Ok(footings)), (&rig.before, before)];
        let [after, before] = store.both(|i| {
            let (outfit, footings) = &outfits[i];
            let footings = footings.as_ref().map_err(|text| Absent::CannotBe(text.clone()))?;
            Laden::of(store, &board, &panels, footing::cases(outfit), footings.clone())
        });
        let (after, before) = (after?, before.map_err(why));
        for text in old_assumed {
            if before.is_ok() && !assumed.contains(&text) {
                assumed.push(text);
            }
        }
        let open = Open::of(rig);
        let best = if open.is_empty() { None } else { Some(Board::of(rig, Guessed::BEST)?) };
        Ok(Strength {
            board,
            core,
            driving,
            after,
            before,
            open,
            best,
            at_best: OnceLock::new(),
            each_at_best: OnceLock::new(),
            cures: Strength::untried(),
            assumed,
            sheet,
            store: store.clone(),
        })
    }

    /// What is left of the core.
    pub fn left(&self) -> KnockDown {
        self.core.left
    }
}

/// The few readings that open the door, and the engines.
fn door(rig: &Rig) -> Vec<Missing> {
    rig.structure.door().into_iter().chain(rig.after.ask().err()).collect()
}

fn gather(no: Absent, missing: &mut Vec<Missing>) -> Option<Absent> {
    match no {
        Absent::Waits(lacking) => {
            missing.extend(lacking);
            None
        }
        no => Some(no),
    }
}

fn why(no: Absent) -> Text {
    match no {
        Absent::Waits(missing) => {
            let names: Vec<String> = missing.iter().map(Missing::name).collect();
            say!("it waits for: {}", names.join("; "))
        }
        Absent::NotApplicable(text) | Absent::CannotBe(text) => text,
    }
}

/// The old engines' faces; their speed from the new one by the root of the powers where it is not given.
fn old(rig: &Rig, board: &Board, driving: Driving, assumed: &mut Vec<Text>) -> Result<Vec<Footing>, Text> {
    if rig.before.is_empty() {
        return Err(Text::from("no old engine is given"));
    }
    let power = |outfit: &Outfit| -> Result<f64, Absent> {
        let powers = outfit.main_power()?;
        Ok(powers.iter().map(|(_, power)| power.si()).sum())
    };
    let told = &rig.structure.operating.old_top_speed;
    let speed_from = told.as_ref().map_or(Basis::Assumed, |speed| speed.basis).origin();
    let speed = match told {
        Some(speed) => speed.value,
        None => {
            let (old, new) = (power(&rig.before).map_err(why)?, power(&rig.after).map_err(why)?);
            let speed = driving.speed * (old / new).sqrt();
            assumed.push(say!(
                "With the old engines she is taken to have run {}: speed as the root of power.",
                Measure::of(speed)
            ));
            speed
        }
    };
    footing::footings(rig, &rig.before, board, Driving { speed, speed_from, ..driving }, assumed).map_err(why)
}
