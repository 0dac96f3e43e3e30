//! Hull, propeller and engine put together: what she does at every speed, how fast she goes, how she gets over the hump; and
//! the two factors by which a trial corrects the reckoning.

mod fit;
mod getting_up;
mod range;
mod steady;

pub use fit::{Fit, Observed, PRIOR_DRAG, PRIOR_PITCH, TRANSFER_DIAMETER, TRANSFER_DRAG, TRANSFER_PITCH, fit};
pub use getting_up::{GettingUp, getting_up};
pub use range::{HIGHEST, LOWEST, Planed, Range, STEP};
pub use steady::{Craft, Factors, PLANES_FROM, Propulsion, Steady, slip};
