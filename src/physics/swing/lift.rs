//! A bracket that lifts its engine: moved as it stands, not turned.

use nalgebra::{Unit, Vector3};
use uom::si::f64::Length;

use super::body::metres;
use super::error::{SwingError, finite, positive};

/// What an arm may miss the travel by, in metres: rounding alone.
const REACHES: f64 = 1e-9;

/// How a bracket carries an engine from the bottom of its travel up.
///
/// Its variable is the height itself where it goes straight, and the angle of the arms where it hangs on parallel arms.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lift {
    along: Unit<Vector3<f64>>,
    aft: Unit<Vector3<f64>>,
    travel: f64,
    arms: Option<Arms>,
}

/// Parallel arms.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Arms {
    length: f64,
    hang: f64,
}

impl Lift {
    /// Straight up along `along` by `travel`; `aft` is square to it, away from what carries the bracket.
    ///
    /// # Errors
    /// A travel that is not more than nothing, a direction of no length.
    pub fn straight(along: Vector3<f64>, aft: Vector3<f64>, travel: Length) -> Result<Self, SwingError> {
        let unit = |what: &str, direction: Vector3<f64>| {
            Unit::try_new(direction, f64::MIN_POSITIVE)
                .filter(|unit| unit.iter().all(|one| one.is_finite()))
                .ok_or_else(|| SwingError::AxisWithoutLength { axis: what.to_owned() })
        };
        Ok(Self {
            along: unit("the way up of the lifting bracket", along)?,
            aft: unit("the way aft of the lifting bracket", aft)?,
            travel: positive("the travel of the lifting bracket", travel.value)?,
            arms: None,
        })
    }

    /// The same travel on parallel arms of this length between their pins, whose after pins lie `hang` below the forward
    /// ones at the bottom of the travel.
    ///
    /// # Errors
    /// Arms that are too short for that.
    pub fn on_arms(self, length: Length, hang: Length) -> Result<Self, SwingError> {
        let (length, hang) =
            (positive("the arms of the lifting bracket", length.value)?, finite("their pins", hang.value)?);
        let highest = self.travel - hang;
        if hang.abs() > length + REACHES || highest.abs() > length + REACHES {
            return Err(SwingError::ArmsTooShort { length, hang, travel: self.travel });
        }
        Ok(Self { arms: Some(Arms { length, hang }), ..self })
    }

    /// How far it goes up.
    pub fn travel(&self) -> Length {
        metres(self.travel)
    }

    /// Length of its arms, and how far their after pins lie below the forward ones at the bottom; nothing where it goes
    /// straight.
    pub fn arms(&self) -> Option<[Length; 2]> {
        self.arms.map(|arms| [metres(arms.length), metres(arms.hang)])
    }

    /// The way up.
    pub fn along(&self) -> Unit<Vector3<f64>> {
        self.along
    }

    /// The way aft, square to it.
    pub fn aft(&self) -> Unit<Vector3<f64>> {
        self.aft
    }

    /// Where it has moved to, raised so high.
    pub fn raised(&self, height: Length) -> Vector3<f64> {
        self.moved(self.at(height.value))
    }

    /// The variable from bottom to top.
    pub fn range(&self) -> [f64; 2] {
        [self.at(0.0), self.at(self.travel)]
    }

    /// The variable at a height.
    fn at(&self, height: f64) -> f64 {
        match self.arms {
            None => height,
            Some(arms) => ((height - arms.hang) / arms.length).clamp(-1.0, 1.0).asin(),
        }
    }

    /// The height at a value of the variable.
    pub(super) fn height(&self, at: f64) -> f64 {
        match self.arms {
            None => at,
            Some(arms) => arms.length * at.sin() + arms.hang,
        }
    }

    /// Where it has moved to from the bottom of its travel.
    pub fn moved(&self, at: f64) -> Vector3<f64> {
        let up = self.along.into_inner() * self.height(at);
        match self.arms {
            None => up,
            Some(arms) => up + self.aft.into_inner() * (arms.length * (at.cos() - self.at(0.0).cos())),
        }
    }

    /// How it moves as the variable grows.
    pub fn pace(&self, at: f64) -> Vector3<f64> {
        match self.arms {
            None => self.along.into_inner(),
            Some(arms) => (self.along.into_inner() * at.cos() - self.aft.into_inner() * at.sin()) * arms.length,
        }
    }

    /// Length of the pace, and how fast the pace itself changes at most.
    pub fn reach_and_bend(&self) -> [f64; 2] {
        match self.arms {
            None => [1.0, 0.0],
            Some(arms) => [arms.length, arms.length],
        }
    }
}
