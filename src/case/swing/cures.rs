//! What would clear a swing that comes too near: setback, height, a tilt or steering limit, spacing.

use nalgebra::Vector3;
use uom::si::f64::Length;

use super::swept::{Cure, Spacing, Swept, refused};
use super::{Answer, effort};
use crate::physics::swing::{Clearance, Effort, Move, Shift, Swing, SwingError, least_shift, permitted_range};
use crate::quantity::{Dimensioned, inches};

/// Farthest setback and lift tried, and the finest worth telling apart. Common practice, no source: beyond
/// them another bracket or shaft is wanted.
const FARTHEST_AFT_IN: f64 = 30.0;
const FARTHEST_UP_IN: f64 = 12.0;
const FINEST_IN: f64 = 1.0 / 32.0;
/// Farthest spread of two engines tried.
const FARTHEST_APART_IN: f64 = 36.0;

/// The whole cure of a sweep against the boat.
pub(super) fn cure(swept: &Swept) -> Answer<Cure> {
    let shift = |direction, most| {
        let way = Move { direction, most: inches(most), step: inches(FINEST_IN) };
        match least_shift(&swept.scene, &way, swept.margin, &effort()) {
            Ok(Shift::Clears { by, .. }) => Ok(Some(by)),
            Ok(Shift::NotWithin { .. } | Shift::Undecided { .. }) => Ok(None),
            Err(error) => Err(refused(&error)),
        }
    };
    Ok(Cure {
        aft: shift(-Vector3::x(), FARTHEST_AFT_IN)?,
        up: shift(Vector3::z(), FARTHEST_UP_IN)?,
        ..limits(swept, &effort())?
    })
}

/// Only the limits of tilt and steering, looked for so long.
pub(super) fn limits(swept: &Swept, effort: &Effort) -> Answer<Cure> {
    let limit = |swing, margin| permitted_range(&swept.scene, swing, margin, effort).map_err(|error| refused(&error));
    let touches_from = if swept.touches() {
        limit(Swing::Tilt, Length::default())?.stopped_by.map(|stop| stop.pose.tilt)
    } else {
        None
    };
    Ok(Cure {
        aft: None,
        up: None,
        tilt: limit(Swing::Tilt, swept.margin)?,
        steer: limit(Swing::SteerBothWays, swept.margin)?,
        touches_from,
    })
}

/// The spacing at which two engines keep their distance, from their clearance as they are and as spread by so many
/// metres more. A pose that comes nearer than the margin by `d` rules out every spread within `d` of the
/// present one, because no point moves farther than the spread; each candidate is certified over the whole range. In
/// contact the depth is one of several ways apart and rules out nothing: what was leapt over is halved until it is found.
pub(super) fn spacing(
    clearance: &Clearance,
    margin: Length,
    now: f64,
    spread: impl Fn(f64) -> Result<Clearance, SwingError>,
) -> Result<Spacing, SwingError> {
    let (margin, finest) = (margin.value, inches(FINEST_IN).value);
    let now = Length::from_si(now);
    // Up to `blocked` no spread keeps them apart, from `by` on this one does.
    let (mut blocked, mut by) = (0.0, 0.0);
    let mut found = clearance.clone();
    while found.lower.value < margin {
        if by > inches(FARTHEST_APART_IN).value {
            return Ok(Spacing { now, needed: None });
        }
        let room = margin - found.upper.value;
        blocked = if found.upper.value > 0.0 { by + room } else { by };
        by += room.max(finest);
        found = spread(by)?;
    }
    while by - blocked > finest {
        let middle = 0.5 * (blocked + by);
        let found = spread(middle)?;
        if found.lower.value >= margin {
            by = middle;
        } else {
            blocked = middle;
        }
    }
    Ok(Spacing { now, needed: Some(now + Length::from_si(by)) })
}
