//! Which findings come from one cause.

/// What several findings have in common.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cause {
    /// The core was found soft or doubtful.
    SoftCore,
    /// What ties the transom to the hull has let go.
    LetGo,
    /// The shaft does not suit the transom.
    Shaft,
    /// More weight hangs on the stern than she was built or rated for.
    WeightAft,
    /// She runs faster than something is rated for.
    Speed,
    /// More persons go out in her than the plate says.
    Crew,
    /// Two engines stand too near each other.
    Spacing,
    /// An engine has no room to tilt and steer.
    Room,
}

/// From what a finding comes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Comes {
    /// The cause.
    pub cause: Cause,
    /// The rule whose finding tells of it best; that finding comes from it too.
    pub lead: &'static str,
}
