//! A pair of engines and the bar between them: a linkage of four bars, solved in closed form. Plain numbers: metres and
//! radians, positive to port.

use std::f64::consts::{PI, TAU};

/// Toe between two engines from which their propellers fight each other. Common practice, no source: 2 deg.
pub const MOST_TOE_DEG: f64 = 2.0;
/// Steps over the sweep at which the toe is looked at: half a degree and less at 35 deg each way.
const STEPS: i32 = 160;

/// Two steering arms and the bar that joins their pins. The arms point forward from the axes, each turned towards the
/// other by `splay`, engines ahead.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Linkage {
    /// Between the axes about which the engines are steered, m.
    pub spread: f64,
    /// From an axis to its pin, m.
    pub arm: f64,
    /// How far each arm is turned inboard, engines ahead, rad.
    pub splay: f64,
    /// From pin to pin of the bar, m.
    pub bar: f64,
}

/// Why a linkage cannot be.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum LinkageError {
    /// The bar does not reach, or is too long, at this angle of the port engine, rad.
    #[error("the bar does not join the pins when the port engine stands at {0} rad")]
    NotJoined(f64),
}

impl Linkage {
    /// The bar with which both engines stand ahead together.
    pub fn parallel_bar(&self) -> f64 {
        self.spread - 2.0 * self.arm * self.splay.sin()
    }

    /// Angle of the starboard engine, rad, when the port one stands at this angle, both from ahead, positive when the
    /// arm swings to port.
    ///
    /// # Errors
    /// A bar that does not join the pins there.
    pub fn follows(&self, port: f64) -> Result<f64, LinkageError> {
        // The port axis at +spread/2; its arm points forward, turned inboard (to starboard) by the splay.
        let at = port - self.splay;
        let (y, x) = (self.spread + self.arm * at.sin(), self.arm * at.cos());
        // The starboard pin lies on a circle about the starboard axis: y·sin β + x·cos β = c.
        let far = y.hypot(x);
        let c = (far * far + self.arm * self.arm - self.bar * self.bar) / (2.0 * self.arm);
        if far == 0.0 || (c / far).abs() > 1.0 || !c.is_finite() {
            return Err(LinkageError::NotJoined(port));
        }
        let (towards, half) = (y.atan2(x), (c / far).acos());
        // Of the two ways to join the pins the one near the port engine's own angle is built; the angles count whole turns.
        let turned = |angle: f64| at + (angle - at + PI).rem_euclid(TAU) - PI;
        let nearer = |a: f64, b: f64| if (a - at).abs() <= (b - at).abs() { a } else { b };
        Ok(nearer(turned(towards - half), turned(towards + half)) - self.splay)
    }

    /// Toe at this angle of the port engine, rad: how much more the port engine stands over than the starboard one.
    ///
    /// # Errors
    /// As [`Linkage::follows`].
    pub fn toe(&self, port: f64) -> Result<f64, LinkageError> {
        Ok(port - self.follows(port)?)
    }

    /// The largest toe over a sweep this far each way, rad, with the port engine's angle there.
    ///
    /// # Errors
    /// As [`Linkage::follows`].
    pub fn largest_toe(&self, lock: f64) -> Result<(f64, f64), LinkageError> {
        let mut worst = (0.0_f64, 0.0_f64);
        for i in -STEPS..=STEPS {
            let port = lock * f64::from(i) / f64::from(STEPS);
            let toe = self.toe(port)?;
            if toe.abs() > worst.0.abs() {
                worst = (toe, port);
            }
        }
        Ok(worst)
    }
}
