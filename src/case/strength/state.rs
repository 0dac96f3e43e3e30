//! One panel, factored with what stands behind it, and what loads do on it.

use std::sync::Arc;

use super::board::Board;
use super::show::length;
use crate::physics::strength::panel::{
    Factored, Layup, Load, Loaded, MeanMoment, PanelError, PlyStress, Point, Pressed, Push, SupportPart,
};
use crate::quantity::{Dimensioned, inches, say};
use crate::reading::Absent;

/// Thicknesses over which a support's push spreads on its way through the core: two to each side, as a slab is judged on a
/// perimeter two depths away (EN 1992-1-1, 6.4.2, value from memory); common practice, no source, for wood.
const SPREADS: f64 = 4.0;
/// Length of a tab over which its pull evens out. Common practice, no source: twice the usual width of a tab.
const ALONG_TAB_IN: f64 = 6.0;

/// How much of what it bears one way is used, and where most.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Used {
    /// 1 breaks.
    pub part: f64,
    /// Where most of it is used, in the transom's plane, m.
    pub at: Point,
    /// The stress, of bending.
    pub stress: Option<PlyStress>,
    /// The support and its push (N/m), of the others, and of bending where what lets go there decides.
    pub push: Option<(SupportPart, f64)>,
}

impl Used {
    /// Strength over load.
    pub fn factor(&self) -> f64 {
        1.0 / self.part.max(f64::MIN_POSITIVE)
    }
}

/// What a case does to the panel on one set of supports.
#[derive(Clone, Debug)]
pub struct Stood {
    /// Bending.
    pub bending: Used,
    /// The mean moments there, N·m per metre.
    pub moment: [f64; 3],
    /// What knees, stringers and the well's floor hand over, by the core's shear or their tabs; nothing where there are none.
    pub held: Used,
    /// All of it.
    pub loaded: Arc<Loaded>,
}

impl Stood {
    /// The worse of both.
    pub(super) fn worst(&self) -> Used {
        if self.held.part > self.bending.part { self.held } else { self.bending }
    }
}

/// A transom's panel factored, with some of what stands behind it.
#[derive(Debug)]
pub(super) struct State {
    pub factored: Factored,
    /// How many of its beds stand upright: those behind are level.
    pub uprights: usize,
}

impl State {
    /// What these loads do.
    ///
    /// # Errors
    /// As the kernel's; a panel without plies.
    pub(super) fn stood(&self, board: &Board, pressed: &[Pressed]) -> Result<Vec<Stood>, Absent> {
        let State { factored, uprights } = self;
        let Some(layup) = factored.panel().section.layup.as_ref() else {
            return Err(Absent::CannotBe(say!("The panel shows no stress to judge.")));
        };
        let judge = Judge { board, factored, layup, uprights: *uprights };
        let loaded = factored.bend_pressed(pressed).map_err(unfit)?;
        let most = factored.most_bent(layup, &loaded);
        Ok(loaded.into_iter().zip(most).map(|(loaded, most)| judge.stood(loaded, most)).collect())
    }
}

/// Loads on a panel: all that what they do there is made of.
pub(super) struct Laid {
    pub state: Arc<State>,
    pub tab: f64,
    pub sets: Vec<Vec<Load>>,
}

impl PartialEq for Laid {
    fn eq(&self, other: &Laid) -> bool {
        Arc::ptr_eq(&self.state, &other.state) && self.tab == other.tab && self.sets == other.sets
    }
}

struct Judge<'a> {
    board: &'a Board,
    factored: &'a Factored,
    layup: &'a Layup,
    uprights: usize,
}

impl Judge<'_> {
    fn stood(&self, loaded: Loaded, most: Option<(MeanMoment, PlyStress)>) -> Stood {
        let nothing = Used { part: 0.0, at: loaded.largest_at, stress: None, push: None };
        let moment = most.map_or([0.0; 3], |(mean, _)| mean.moment);
        let bending = most.map_or(nothing, |(mean, stress)| Used {
            part: stress.utilisation,
            at: mean.at,
            stress: Some(stress),
            push: None,
        });
        let mut held = nothing;
        let mut most = |push: Push, used: f64| {
            if used > held.part {
                held = Used { part: used, at: push.at, stress: None, push: Some((push.part, push.per_length)) };
            }
        };
        let [across, up] = shear_uses(self.layup);
        // Each side of an upright or a floor takes half.
        let unit =
            |part| if matches!(part, SupportPart::Bed(i) if i < self.uprights) { 0.5 * across } else { 0.5 * up };
        for push in self.factored.pushes(&loaded, SPREADS * self.board.width()) {
            most(push, push.per_length.abs() * unit(push.part));
        }
        for push in self.factored.pushes(&loaded, inches(ALONG_TAB_IN).si()) {
            most(push, push.per_length.abs() / self.board.tab);
        }
        Stood { bending, moment, held, loaded: Arc::new(loaded) }
    }
}

/// Use of the shear strength through the thickness for a shear of 1 N/m, across and up.
pub(super) fn shear_uses(layup: &Layup) -> [f64; 2] {
    [[1.0, 0.0], [0.0, 1.0]].map(|shear| layup.worst([0.0; 3], shear).map_or(0.0, |stress| stress.utilisation))
}

pub(super) fn unfit(error: PanelError) -> Absent {
    Absent::CannotBe(match error {
        PanelError::NoSupport => {
            say!("Nothing is said to hold the transom: what works on it cannot be reckoned.")
        }
        PanelError::LoadOutside { at: [across, up], .. } => say!(
            "What presses on the transom reaches past its edge, {} off the centreline and {} above the bottom: look at where bolts and bracket stand, and how far the bottom rises there.",
            length(across.abs()),
            length(up)
        ),
        _ => say!("The transom's panel cannot be solved: {}.", error.to_string()),
    })
}
