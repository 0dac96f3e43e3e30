//! What each bolt of a group carries.
//!
//! Shear: the elastic group of J. E. Shigley, Mechanical Engineering Design, section 8-12 (primary shear by area, secondary shear
//! by area times distance from the centroid). Tension from a moment: the bracket is a stiff plate that turns
//! about the edge of its foot that is pressed on (compression-edge model, common practice for brackets on timber and steel);
//! bolt tension grows with the distance from that edge.
//!
//! Coordinates are the transom's: `y` to port, `z` up the transom, m; forces N, moments N·m, plain `f64`.

/// A bolt of a group. Its place, the foot's edges and the load's place are from one origin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bolt {
    /// To port, m.
    pub y: f64,
    /// Up the transom, m.
    pub z: f64,
    /// Stress area, m².
    pub area: f64,
}

/// Edges of the bracket's foot about which it can turn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Foot {
    /// Heel, the lowest edge: its z, m.
    pub bottom: f64,
    /// Toe, the highest edge: its z, m.
    pub top: f64,
    /// Starboard edge, the least y, m.
    pub starboard: f64,
    /// Port edge, the greatest y, m.
    pub port: f64,
}

/// Forces and moments that the bracket brings to the mounting face, at the point `at`, in boat axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GroupLoad {
    /// Where the forces act, `[y, z]`, m.
    pub at: [f64; 2],
    /// Along x, forward: pushes the foot on the transom when positive.
    pub push: f64,
    /// Along y and z, in the mounting face.
    pub shear: [f64; 2],
    /// About x: turns the group in its own plane.
    pub twist: f64,
    /// About y: positive presses the upper edge on the transom (x forward, y to port, z up; a forward force above `at`).
    pub pitch: f64,
    /// About z: positive presses the starboard edge.
    pub yaw: f64,
}

/// What one bolt carries, N.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BoltForces {
    /// Each bolt's share of the force in the face, `[y, z]`.
    pub primary: [f64; 2],
    /// From the turning of the group in its plane.
    pub secondary: [f64; 2],
    /// Size of the sum.
    pub shear: f64,
    /// From `pitch`, `yaw` and a pull; never negative.
    pub tension: f64,
}

/// The whole group.
#[derive(Debug, Clone, PartialEq)]
pub struct GroupForces {
    /// One for each bolt, in the order given.
    pub bolts: Vec<BoltForces>,
    /// Area-weighted centre of the bolts, m.
    pub centroid: [f64; 2],
    /// Force with which the foot's lower or upper edge presses on the transom under `pitch` and `push`, N.
    pub edge_pitch: f64,
    /// Height of that edge, or of the middle of the pressure where no bolt is pulled, m.
    pub pivot_z: f64,
    /// Force at the pressed side edge under `yaw`, N.
    pub edge_yaw: f64,
    /// Place of that edge, to port, m.
    pub pivot_y: f64,
}

/// Why a group cannot be worked out.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum GroupError {
    /// There is no bolt.
    #[error("a bolt group needs at least one bolt")]
    NoBolts,
    /// A number is infinite or not a number.
    #[error("{what} of the bolt group is not a finite number")]
    NotFinite {
        /// Whose: the foot's, a force's, a moment's or a bolt's.
        what: &'static str,
    },
    /// A bolt's area is not above zero.
    #[error("bolt {index} has no area")]
    NoArea {
        /// Index of the bolt, from 0.
        index: usize,
    },
    /// A bolt stands beyond an edge of the foot.
    #[error("bolt {index} lies outside the bracket's foot")]
    OutsideFoot {
        /// Index of the bolt, from 0.
        index: usize,
    },
    /// The load twists a group whose bolts all stand in one place.
    #[error("a twisting moment needs two bolts apart from each other")]
    CannotTwist,
    /// All bolts stand on the edge that the foot turns about, and cannot hold it down.
    #[error("the bolts all lie on the edge that the bracket turns about")]
    NoArm,
}

/// Distributes a load over the bolts. Errors: no bolts, no area, a bolt off the foot, nothing to resist a moment.
pub fn bolt_forces(bolts: &[Bolt], foot: Foot, load: GroupLoad) -> Result<GroupForces, GroupError> {
    check(bolts, foot, load)?;
    let area: f64 = bolts.iter().map(|b| b.area).sum();
    let centroid = [
        bolts.iter().map(|b| b.area * b.y).sum::<f64>() / area,
        bolts.iter().map(|b| b.area * b.z).sum::<f64>() / area,
    ];
    let arms: Vec<[f64; 2]> = bolts.iter().map(|b| [b.y - centroid[0], b.z - centroid[1]]).collect();
    let polar: f64 = bolts.iter().zip(&arms).map(|(b, [y, z])| b.area * (y * y + z * z)).sum();
    let offset = [load.at[0] - centroid[0], load.at[1] - centroid[1]];
    let twist = load.twist + offset[0] * load.shear[1] - offset[1] * load.shear[0];
    let lever = load.shear[0].hypot(load.shear[1]) * extent(bolts).max(offset[0].hypot(offset[1]));
    if polar <= 1e-12 * area && twist.abs() > 1e-9 * lever.max(f64::MIN_POSITIVE) {
        return Err(GroupError::CannotTwist);
    }
    let spin = if polar > 0.0 { twist / polar } else { 0.0 };

    // The push counts in pitch only; in yaw it would count twice. Leaving its relief out of yaw is on the safe side.
    let yaw = load.yaw - load.push * offset[0];
    let up = tilt(bolts, |b| b.z, load.pitch, load.push, load.at[1], [foot.bottom, foot.top])?;
    // About z a positive moment presses the starboard (lower y) edge: the mirror of pitch.
    let across = tilt(bolts, |b| b.y, -yaw, 0.0, centroid[0], [foot.starboard, foot.port])?;
    let forces = bolts
        .iter()
        .zip(&arms)
        .enumerate()
        .map(|(i, (b, [y, z]))| {
            let primary = load.shear.map(|f| f * b.area / area);
            let secondary = [-spin * b.area * z, spin * b.area * y];
            BoltForces {
                primary,
                secondary,
                shear: (primary[0] + secondary[0]).hypot(primary[1] + secondary[1]),
                tension: up.tensions[i] + across.tensions[i],
            }
        })
        .collect();
    Ok(GroupForces {
        bolts: forces,
        centroid,
        edge_pitch: up.edge,
        pivot_z: up.pivot,
        edge_yaw: across.edge,
        pivot_y: across.pivot,
    })
}

/// How a foot stands after a moment and a push in one plane.
struct Tilt {
    tensions: Vec<f64>,
    /// Force of the pressed edge, and its place.
    edge: f64,
    pivot: f64,
}

/// The foot turns about the edge that is pressed on; `moment` presses the high edge where positive, and `push` acts at `at`.
/// Equilibrium about that edge gives the tensions, in proportion to area and arm, and then the edge's force. Where even
/// the edge would have to pull, the foot hangs free and the bolts share as an elastic group.
fn tilt(
    bolts: &[Bolt],
    along: impl Fn(&Bolt) -> f64,
    moment: f64,
    push: f64,
    at: f64,
    [low, high]: [f64; 2],
) -> Result<Tilt, GroupError> {
    // What the bolts must hold about each edge, lest the foot lift off.
    let opens = [-(moment + push * (at - low)), moment + push * (at - high)];
    let (pivot, opening) = if opens[0] >= opens[1] { (low, opens[0]) } else { (high, opens[1]) };
    if opening <= 0.0 {
        // Pressed on within the foot: no bolt is pulled, and the push stands at its own place.
        let pivot = if push > 0.0 { at + moment / push } else { pivot };
        return Ok(Tilt { tensions: vec![0.0; bolts.len()], edge: push.max(0.0), pivot });
    }
    let arm = |b: &Bolt| (along(b) - pivot).abs();
    let inertia: f64 = bolts.iter().map(|b| b.area * arm(b).powi(2)).sum();
    if inertia <= 0.0 {
        return Err(GroupError::NoArm);
    }
    let tensions: Vec<f64> = bolts.iter().map(|b| opening * b.area * arm(b) / inertia).collect();
    let edge = tensions.iter().sum::<f64>() + push;
    if edge >= 0.0 {
        return Ok(Tilt { tensions, edge, pivot });
    }
    let area: f64 = bolts.iter().map(|b| b.area).sum();
    let centre = bolts.iter().map(|b| b.area * along(b)).sum::<f64>() / area;
    let inertia: f64 = bolts.iter().map(|b| b.area * (along(b) - centre).powi(2)).sum();
    let turn = if inertia > 0.0 { -(moment + push * (at - centre)) / inertia } else { 0.0 };
    let hanging = |b: &Bolt| (b.area * (-push / area + turn * (along(b) - centre))).max(0.0);
    Ok(Tilt { tensions: bolts.iter().map(hanging).collect(), edge: 0.0, pivot })
}

/// The greatest shear and tension of the upper and of the lower bolts, told apart at the centroid: `[upper, lower]`,
/// each `(shear, tension)`, N. A group in one row has no lower bolts, and zeros for them.
pub fn row_shares(bolts: &[Bolt], forces: &GroupForces) -> [(f64, f64); 2] {
    let worst = |upper: bool| {
        bolts
            .iter()
            .zip(&forces.bolts)
            .filter(|(b, _)| (b.z >= forces.centroid[1]) == upper)
            .fold((0.0_f64, 0.0_f64), |(s, t), (_, f)| (s.max(f.shear), t.max(f.tension)))
    };
    [worst(true), worst(false)]
}

fn extent(bolts: &[Bolt]) -> f64 {
    bolts.iter().map(|b| (b.y - bolts[0].y).hypot(b.z - bolts[0].z)).fold(0.0, f64::max)
}

fn check(bolts: &[Bolt], foot: Foot, load: GroupLoad) -> Result<(), GroupError> {
    if bolts.is_empty() {
        return Err(GroupError::NoBolts);
    }
    let finite = |values: &[f64], what| {
        if values.iter().all(|v| v.is_finite()) { Ok(()) } else { Err(GroupError::NotFinite { what }) }
    };
    finite(&[foot.bottom, foot.top, foot.starboard, foot.port], "the foot")?;
    finite(&[load.at[0], load.at[1], load.push, load.shear[0], load.shear[1]], "a force")?;
    finite(&[load.twist, load.pitch, load.yaw], "a moment")?;
    for (index, b) in bolts.iter().enumerate() {
        finite(&[b.y, b.z, b.area], "a bolt")?;
        if b.area <= 0.0 {
            return Err(GroupError::NoArea { index });
        }
        if b.y < foot.starboard || b.y > foot.port || b.z < foot.bottom || b.z > foot.top {
            return Err(GroupError::OutsideFoot { index });
        }
    }
    Ok(())
}
