//! Factored panels, kept for what else comes to hang on the same transom.

use std::fmt;
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

use super::board::Board;
use super::state::{Laid, State, Stood, unfit};
use crate::hands::{Hands, both, each, one_pair};
use crate::physics::strength::knockdown::KnockDown;
use crate::physics::strength::panel::{Fineness, Load, Meshed, Panel, PanelError, Pressed, Shape};
use crate::reading::Absent;

/// Panels that are kept, the last used; one takes some five megabytes. Common practice, no source: a transom with all its
/// cures is about twenty.
const MOST_PANELS: usize = 40;
/// Meshes that are kept, the last used.
const MOST_MESHES: usize = 12;
/// Loads with what they do on a panel, some megabyte each, the last used: the old engines' for each greatest speed with the new
/// ones, and the new ones' last.
const MOST_STOOD: usize = 48;
/// The same loads on the nodes of a mesh.
const MOST_PRESSED: usize = 24;

/// Factored panels and their meshes. What is taken from it is what would have been made: it is looked up by everything that it is
/// made of, to the last bit.
#[derive(Debug)]
pub struct Store {
    /// Its meshes are so many times as fine as what is told needs.
    times: f64,
    /// Who works out several panels.
    hands: Hands,
    meshes: Kept<(Shape, Fineness), Meshed>,
    states: Kept<Made, Result<Arc<State>, PanelError>>,
    pressed: Kept<OnMesh, Result<Vec<Pressed>, PanelError>>,
    stood: Kept<Laid, Result<Vec<Stood>, Absent>>,
}

/// Sets of loads on the mesh of a shape.
type OnMesh = (Shape, Fineness, Vec<Vec<Load>>);

/// What a panel is made of.
#[derive(PartialEq)]
struct Made {
    panel: Panel,
    shape: Shape,
    fineness: Fineness,
    /// How many of its beds are knees and stringers; a floor stands behind them.
    uprights: usize,
}

impl Default for Store {
    fn default() -> Self {
        Store::of_meshes(1.0)
    }
}

impl Store {
    /// A store of panels on meshes so many times as fine as what is told needs.
    pub fn of_meshes(times: f64) -> Self {
        Store {
            times,
            hands: one_pair,
            meshes: Kept::new(MOST_MESHES),
            states: Kept::new(MOST_PANELS),
            pressed: Kept::new(MOST_PRESSED),
            stood: Kept::new(MOST_STOOD),
        }
    }

    /// A store whose panels are worked out by these hands.
    pub fn by(hands: Hands) -> Self {
        Store { hands, ..Store::default() }
    }

    /// What each of so many tasks gives that do not wait for each other.
    pub(in crate::case) fn each<T: Send>(&self, count: usize, of: impl Fn(usize) -> T + Sync) -> Vec<T> {
        each(self.hands, count, of)
    }

    /// The same of two.
    pub(super) fn both<T: Send>(&self, of: impl Fn(usize) -> T + Sync) -> [T; 2] {
        both(self.hands, of)
    }

    /// The panel of a transom with its core knocked down.
    ///
    /// # Errors
    /// Why it cannot be solved.
    pub(super) fn state(&self, board: &Board, left: KnockDown) -> Result<Arc<State>, PanelError> {
        let fineness = board.fineness(self.times);
        let uprights = board.knees.len() + board.stringers.len();
        let made = Made { panel: board.panel(left)?, shape: board.shape, fineness, uprights };
        let state = self.states.get(made, |Made { panel, .. }| {
            Ok(Arc::new(State { factored: panel.clone().factored(&self.meshed(board))?, uprights }))
        });
        state.as_ref().clone()
    }

    /// Makes what the panels of a transom share, before several hands want it.
    ///
    /// # Errors
    /// Why it cannot be made.
    pub(super) fn begin(&self, board: &Board, left: KnockDown) -> Result<(), PanelError> {
        board.panel(left)?.begin(&self.meshed(board))
    }

    /// Makes what tells a transom's moments, before it is asked for.
    pub(super) fn begin_means(&self, board: &Board) {
        self.meshed(board).begin_means();
    }

    fn meshed(&self, board: &Board) -> Arc<Meshed> {
        let fineness = board.fineness(self.times);
        self.meshes.get((board.shape, fineness), |_| Meshed::of(board.shape, fineness))
    }

    /// What several sets of loads do on a panel of a transom; taken out of store where they were on it before: the old engines'
    /// while others are tried, the new ones' while something else is.
    ///
    /// # Errors
    /// Why that cannot be solved.
    pub(super) fn stood(&self, board: &Board, state: &Arc<State>, sets: &[Vec<Load>]) -> Result<Vec<Stood>, Absent> {
        let laid = Laid { state: state.clone(), tab: board.tab, sets: sets.to_vec() };
        let stood = self.stood.get(laid, |Laid { state, sets, .. }| {
            let on = (board.shape, board.fineness(self.times), sets.clone());
            let pressed = self.pressed.get(on, |(.., sets)| state.factored.pressed(sets));
            state.stood(board, Result::as_ref(&pressed).map_err(|error| unfit(error.clone()))?)
        });
        stood.as_ref().clone()
    }
}

/// Things by what they are made of, the last used of them.
pub struct Kept<K, V> {
    most: usize,
    /// The last used last. Each is made outside the lock, by the first who asks.
    all: Mutex<Vec<(Arc<K>, Once<V>)>>,
}

/// A thing that is made when it is first asked for.
type Once<V> = Arc<OnceLock<Arc<V>>>;

impl<K: PartialEq, V> Kept<K, V> {
    /// Room for so many.
    pub fn new(most: usize) -> Self {
        Kept { most, all: Mutex::new(Vec::new()) }
    }

    /// The thing that is made of this: the one that is kept, or else a new one in the place of the one that was unused longest.
    pub fn get(&self, of: K, make: impl FnOnce(&K) -> V) -> Arc<V> {
        let (key, place) = {
            // A thread that panicked left a list that is whole.
            let mut all = self.all.lock().unwrap_or_else(PoisonError::into_inner);
            let entry = match all.iter().position(|(key, _)| **key == of) {
                Some(index) => all.remove(index),
                None => (Arc::new(of), Arc::default()),
            };
            if all.len() >= self.most {
                all.remove(0);
            }
            all.push((entry.0.clone(), entry.1.clone()));
            entry
        };
        place.get_or_init(|| Arc::new(make(&key))).clone()
    }
}

impl<K, V> fmt::Debug for Kept<K, V> {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        write!(f, "the last {}", self.most)
    }
}
