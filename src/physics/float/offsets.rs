//! Hulls from a table of offsets.

use nalgebra::{Point2, Point3};
use uom::si::angle::{degree, radian};
use uom::si::f64::{Angle, Length};
use uom::si::length::meter;

use super::error::LoftError;
use super::loft::{Fairing, loft};
use super::mesh::TriMesh;

/// Fractions of girth closer than this are one.
const SAME_GIRTH: f64 = 1e-9;
/// Slices between sections unless told otherwise.
const SLICES: usize = 8;
/// Largest rake of a transom, degrees.
const LARGEST_RAKE_DEG: f64 = 60.0;

/// One station of a table of offsets.
#[derive(Clone, Debug, PartialEq)]
pub struct Station {
    /// Distance forward of the origin, at the keel.
    pub x: Length,
    /// Half-breadth and height above the baseline of each point, metres, from the keel up to the sheer.
    pub points: Vec<Point2<f64>>,
}

/// How sections become a hull.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lofting {
    /// How lines run between sections.
    pub fairing: Fairing,
    /// Pieces between two neighbouring sections, 1 to [`MAX_SLICES`](super::MAX_SLICES).
    pub slices: usize,
    /// Rake of the transom, positive with the top aft: each point of the aftermost section stands aft of
    /// the keel by its height above it times the tangent.
    pub transom_rake: Angle,
}

impl Default for Lofting {
    fn default() -> Self {
        Self { fairing: Fairing::default(), slices: SLICES, transom_rake: Angle::new::<radian>(0.0) }
    }
}

/// Proportions of one station of the least form's fore body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeastFormStation {
    /// Distance from the transom over the length.
    pub part_of_length: f64,
    /// Half-breadth at the chine over that at the transom.
    pub chine_breadth: f64,
    /// Rise of the chine over the transom's chine, as a part of the transom's side height.
    pub chine_rise: f64,
    /// Height of the keel over that of the chine here.
    pub keel_height: f64,
    /// Half-breadth at the sheer over that at the transom.
    pub sheer_breadth: f64,
}

/// Something that the loft took for granted, for the reader to judge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Assumption {
    /// How the lines run between the given sections.
    Fairing(Fairing),
    /// The deck is flat across from sheer to sheer.
    FlatDeck,
    /// Sections have different numbers of points: matched by their part of the girth, not as knuckle lines.
    MatchedByGirth,
    /// Least form: the transom's section runs forward to this part of the length.
    PrismaticTo {
        /// Part of the length.
        part_of_length: f64,
    },
    /// Least form: breadth at the sheer over breadth at the chine, at the transom.
    SheerBeam {
        /// The ratio.
        ratio: f64,
    },
    /// Least form: the sheer is level.
    LevelSheer,
    /// Least form: the fore body has the proportions of this table.
    ForeBody {
        /// Stations, from aft to forward.
        stations: &'static [LeastFormStation],
    },
}

/// A lofted hull and what was assumed for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Lofted {
    /// The closed hull.
    pub mesh: TriMesh,
    /// What the loft took for granted.
    pub assumptions: Vec<Assumption>,
}

/// Lofts stations, from the aftermost forward, into a closed hull.
///
/// Where all stations have equally many points, the first points make a line, the second another, and so
/// on (knuckles keep their line); otherwise points are matched by part of the girth. A stem is a last
/// station of half-breadth zero. Points of a station above one another on the centreline are fine.
///
/// # Errors
/// [`LoftError`] where the stations make no hull.
pub fn mesh_from_offsets(stations: &[Station], lofting: &Lofting) -> Result<Lofted, LoftError> {
    for (section, station) in stations.iter().enumerate() {
        if station.points.len() < 2 {
            return Err(LoftError::TooFewPoints { section, points: station.points.len() });
        }
    }
    let xs: Vec<f64> = stations.iter().map(|s| s.x.get::<meter>()).collect();
    let points: Vec<&[Point2<f64>]> = stations.iter().map(|s| s.points.as_slice()).collect();
    loft_panels(&xs, &[points], lofting)
}

/// Lofts panels: for each panel the points of each section, the last point of a panel being the first of
/// the next.
pub(super) fn loft_panels(xs: &[f64], panels: &[Vec<&[Point2<f64>]>], lofting: &Lofting) -> Result<Lofted, LoftError> {
    if xs.len() < 2 {
        return Err(LoftError::TooFewSections { sections: xs.len() });
    }
    let rake = lofting.transom_rake;
    let rake_deg = rake.get::<degree>().abs();
    if rake_deg.is_nan() || rake_deg > LARGEST_RAKE_DEG {
        return Err(LoftError::OutOfRange { what: "the rake of the transom" });
    }
    for (section, x) in xs.iter().enumerate() {
        check_section(section, *x, panels)?;
    }
    let mut assumptions = vec![Assumption::Fairing(lofting.fairing), Assumption::FlatDeck];
    let mut sections = vec![Vec::new(); xs.len()];
    for panel in panels {
        let alike = panel.windows(2).all(|p| p[0].len() == p[1].len());
        let fractions = if alike { None } else { Some(all_fractions(panel)) };
        if !alike && !assumptions.contains(&Assumption::MatchedByGirth) {
            assumptions.push(Assumption::MatchedByGirth);
        }
        for (section, points) in sections.iter_mut().zip(panel) {
            let shared = usize::from(!section.is_empty());
            match &fractions {
                None => section.extend_from_slice(&points[shared..]),
                Some(fractions) => {
                    let at = at_fractions(points, fractions);
                    section.extend(at.into_iter().skip(shared));
                }
            }
        }
    }
    let count = sections.first().map_or(0, Vec::len);
    let keel_height = sections[0][0].y;
    let tangent = rake.get::<radian>().tan();
    let lines: Vec<Vec<Point3<f64>>> = (0..count)
        .map(|line| {
            let points = sections.iter().zip(xs).enumerate();
            points
                .map(|(section, (points, &x))| {
                    let p = points[line];
                    let aft = if section == 0 { (p.y - keel_height) * tangent } else { 0.0 };
                    Point3::new(x - aft, p.x, p.y)
                })
                .collect()
        })
        .collect();
    for line in &lines {
        if let Some(i) = line.windows(2).position(|p| p[1].x <= p[0].x) {
            return Err(LoftError::NotAscending { section: i + 1 });
        }
    }
    Ok(Lofted { mesh: loft(&lines, lofting.fairing, lofting.slices)?, assumptions })
}

fn check_section(section: usize, x: f64, panels: &[Vec<&[Point2<f64>]>]) -> Result<(), LoftError> {
    for point in panels.iter().flat_map(|panel| panel[section]) {
        if !(x.is_finite() && point.x.is_finite() && point.y.is_finite()) {
            return Err(LoftError::NotFinite { section });
        }
        if point.x < 0.0 {
            return Err(LoftError::NegativeHalfBreadth { section, half_breadth: point.x });
        }
    }
    Ok(())
}

/// For each point its part of the girth; a section without girth has none but its ends.
fn fractions(points: &[Point2<f64>]) -> Vec<f64> {
    let mut girth = 0.0;
    let along: Vec<f64> = std::iter::once(0.0)
        .chain(points.windows(2).map(|p| {
            girth += (p[1] - p[0]).norm();
            girth
        }))
        .collect();
    if girth > 0.0 {
        along.iter().map(|a| a / girth).collect()
    } else {
        let mut ends = vec![0.0; points.len()];
        ends[points.len() - 1] = 1.0;
        ends
    }
}

fn all_fractions(panel: &[&[Point2<f64>]]) -> Vec<f64> {
    let mut all: Vec<f64> = panel.iter().flat_map(|points| fractions(points)).collect();
    all.sort_by(f64::total_cmp);
    all.dedup_by(|one, other| *one - *other < SAME_GIRTH);
    all
}

fn at_fractions(points: &[Point2<f64>], wanted: &[f64]) -> Vec<Point2<f64>> {
    let own = fractions(points);
    wanted
        .iter()
        .map(|&f| {
            let next = own.partition_point(|&o| o < f - SAME_GIRTH);
            let next = next.min(points.len() - 1);
            if next == 0 || (own[next] - f).abs() <= SAME_GIRTH {
                return points[next];
            }
            let t = (f - own[next - 1]) / (own[next] - own[next - 1]);
            points[next - 1] + (points[next] - points[next - 1]) * t
        })
        .collect()
}
