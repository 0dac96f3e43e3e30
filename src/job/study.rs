//! Questions of strength put outright: a panel with its loads, a bolt group with its forces.

use serde::Deserialize;
use uom::si::f64::{Force, Length, Pressure, Ratio};

use super::Layer;
use crate::quantity::{Moment, Reading};

/// A panel, given outright for a study.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PanelStudy {
    /// Its shape.
    pub shape: PanelShape,
    /// What it is made of.
    pub stiffness: PanelStiffness,
    /// How each edge is held: bottom, port, top, starboard of a rectangle; from each corner to the next of a polygon.
    pub edges: Vec<EdgeHold>,
    /// Lines that carry or stiffen it.
    #[serde(default)]
    pub lines: Vec<PanelLine>,
    /// What bears on it.
    pub loads: Vec<PanelLoad>,
    /// How far the largest deflection may be off; 1 % where left out.
    pub accuracy: Option<Reading<Ratio>>,
}

/// The shape of a panel.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum PanelShape {
    /// With one corner at the origin.
    Rectangle { width: Reading<Length>, height: Reading<Length> },
    /// Corner after corner, either way round.
    Polygon(Vec<PanelPlace>),
}

/// A place on a panel.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PanelPlace {
    pub across: Reading<Length>,
    pub up: Reading<Length>,
}

/// What makes a panel stiff.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum PanelStiffness {
    /// One material alike in all directions.
    Plate {
        modulus: Reading<Pressure>,
        poisson: Reading<Ratio>,
        thickness: Reading<Length>,
        /// Yield stress, where stresses shall be held against one.
        yield_stress: Option<Reading<Pressure>>,
    },
    /// Layers of the catalog's materials, from one face to the other.
    Layers(Vec<Layer>),
    /// Stiffness of an orthotropic plate outright.
    Outright {
        /// Bending stiffness across, moment per curvature of a unit of width.
        bending_across: Reading<Moment>,
        /// Bending stiffness up.
        bending_up: Reading<Moment>,
        /// Coupling of both by Poisson's ratio.
        coupling: Reading<Moment>,
        /// Twisting stiffness.
        twisting: Reading<Moment>,
        /// Shear stiffness through the thickness, a metre of width: across.
        shear_across: Reading<Force>,
        /// The same: up.
        shear_up: Reading<Force>,
    },
}

/// How an edge of a studied panel is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum EdgeHold {
    Free,
    Simple,
    Clamped,
}

/// A line on a studied panel.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PanelLine {
    pub from: PanelPlace,
    pub to: PanelPlace,
    pub does: LineDoes,
}

/// What a line does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LineDoes {
    /// It holds the panel, which can turn on it.
    Holds,
    /// It holds the panel and keeps it from turning.
    Clamps,
}

/// A load on a studied panel; positive pushes forward.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum PanelLoad {
    Pressure(Reading<Pressure>),
    Patch {
        across: Reading<Length>,
        up: Reading<Length>,
        width: Reading<Length>,
        height: Reading<Length>,
        force: Reading<Force>,
    },
    Point {
        across: Reading<Length>,
        up: Reading<Length>,
        force: Reading<Force>,
    },
}

/// A bolt group, given outright for a study.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoltStudy {
    /// A name from the catalog's bolt sizes.
    pub size: String,
    /// A name from the catalog's bolt grades, where forces shall be held against one.
    pub grade: Option<String>,
    /// Where the bolts stand.
    pub bolts: Vec<PanelPlace>,
    /// The face that they hold: its lower edge, upper edge, starboard and port edge.
    pub face: StudyFace,
    /// Where the forces act.
    pub at: PanelPlace,
    /// Forward, onto the face.
    pub push: Option<Reading<Force>>,
    /// In the face, to port.
    pub across: Option<Reading<Force>>,
    /// In the face, up.
    pub up: Option<Reading<Force>>,
    /// Turns the group in its plane, from port towards up.
    pub twist: Option<Reading<Moment>>,
    /// Presses the upper edge on where positive.
    pub pitch: Option<Reading<Moment>>,
    /// Presses the starboard edge on where positive.
    pub yaw: Option<Reading<Moment>>,
}

/// Edges of a studied face.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StudyFace {
    pub bottom: Reading<Length>,
    pub top: Reading<Length>,
    pub starboard: Reading<Length>,
    pub port: Reading<Length>,
}
