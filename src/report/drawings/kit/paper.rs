//! The papers on which a drawing is laid out, and the measures of a draughtsman's hand on them.

/// The paper: its width in units, about as many pixels as it is wide on a screen; the greatest height of
/// what is drawn to scale; and whether callouts are keyed by a letter to words below the drawing, where
/// there is no room for a column beside it.
#[derive(Clone, Copy)]
pub(super) struct Paper {
    pub wide: f64,
    pub highest: f64,
    pub keyed: bool,
}

/// For a screen and for print: no higher than lets two stand on one sheet with letters large enough to read.
pub(super) const SHEET: Paper = Paper { wide: 660.0, highest: 380.0, keyed: false };
/// For a phone.
pub(super) const SLIP: Paper = Paper { wide: 380.0, highest: 420.0, keyed: true };
/// Share of the paper that a column of callouts may take.
pub(super) const WIDEST_COLUMN: f64 = 0.31;
/// Lines that a callout of the column may have.
pub(super) const MOST_LINES: usize = 2;
/// Room round the edge of the paper.
pub(super) const EDGE: f64 = 6.0;
/// Height of a track of level dimensions.
pub(super) const TRACK_HIGH: f64 = 23.0;
/// Room between the drawing and its first track.
pub(super) const FIRST: f64 = 20.0;
/// Height of a line of words.
pub(super) const LINE: f64 = 17.0;
/// Length of the slanting part of a leader.
pub(super) const ELBOW: f64 = 16.0;
