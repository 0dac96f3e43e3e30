//! Questions of strength put outright: a panel with its loads, a bolt group with its forces.

use uom::si::f64::{Force, Length, Pressure, Ratio};

use super::Layer;
use super::bounds;
use crate::quantity::{Moment, Reading};
use crate::reading::*;

things! {
    /// A panel, given outright for a study.
    pub struct PanelStudy [whole] {
        /// Its shape.
        shape: PanelShape,
        /// What it is made of.
        stiffness: PanelStiffness,
        /// How each edge is held: bottom, port, top, starboard of a rectangle; from each corner to the next of a polygon.
        edges: Vec<EdgeHold>,
        /// Lines that carry or stiffen it.
        [default] lines: Vec<PanelLine>,
        /// What bears on it.
        loads: Vec<PanelLoad> = called("load").within(bounds::STUDY_PRESSURE),
        /// How far the largest deflection may be off; 1 % where left out.
        accuracy: Option<Reading<Ratio>> = called("accuracy").within(bounds::ACCURACY),
    }
}

choices! {
    /// The shape of a panel.
    pub enum PanelShape {
        /// With one corner at the origin.
        Rectangle = "rectangle" {
            /// Across.
            width: Reading<Length> = field().within(bounds::STUDY_LENGTH),
            /// Up.
            height: Reading<Length> = field().within(bounds::STUDY_LENGTH),
        };
        /// Corner after corner, either way round.
        Polygon = "polygon" (Vec<PanelPlace>);
    }
}

things! {
    /// A place on a panel.
    pub struct PanelPlace [whole] {
        /// Across, from the panel's origin.
        across: Reading<Length> = field().within(bounds::STUDY_PLACE),
        /// Up, from the panel's origin.
        up: Reading<Length> = field().within(bounds::STUDY_PLACE),
    }
}

choices! {
    /// What makes a panel stiff.
    pub enum PanelStiffness {
        /// One material alike in all directions.
        Plate = "plate" {
            /// Modulus of elasticity.
            modulus: Reading<Pressure> = field().within(bounds::MODULUS),
            /// Poisson's ratio.
            poisson: Reading<Ratio> = field().within(bounds::POISSON),
            /// Its thickness.
            thickness: Reading<Length> = field().within(bounds::STUDY_THICKNESS),
            /// Yield stress, where stresses shall be held against one.
            yield_stress: Option<Reading<Pressure>> = field().within(bounds::STRESS),
        };
        /// Layers of the catalog's materials, from one face to the other.
        Layers = "layers" (Vec<Layer>);
        /// Stiffness of an orthotropic plate outright.
        Outright = "outright" {
            /// Bending stiffness across, moment per curvature of a unit of width.
            bending_across: Reading<Moment> = field().within(bounds::STIFFNESS),
            /// Bending stiffness up.
            bending_up: Reading<Moment> = field().within(bounds::STIFFNESS),
            /// Coupling of both by Poisson's ratio.
            coupling: Reading<Moment> = field().within(bounds::COUPLING),
            /// Twisting stiffness.
            twisting: Reading<Moment> = field().within(bounds::STIFFNESS),
            /// Shear stiffness through the thickness, a metre of width: across.
            shear_across: Reading<Force> = field().within(bounds::SHEAR_STIFFNESS),
            /// The same: up.
            shear_up: Reading<Force> = field().within(bounds::SHEAR_STIFFNESS),
        };
    }
}

words! {
    /// How an edge of a studied panel is held.
    pub enum EdgeHold {
        Free = "free";
        Simple = "simple";
        Clamped = "clamped";
    }
}

things! {
    /// A line on a studied panel.
    pub struct PanelLine [whole] {
        /// One end.
        from: PanelPlace,
        /// The other.
        to: PanelPlace,
        /// What it does to the panel.
        does: LineDoes,
    }
}

words! {
    /// What a line does.
    pub enum LineDoes {
        /// It holds the panel, which can turn on it.
        Holds = "holds";
        /// It holds the panel and keeps it from turning.
        Clamps = "clamps";
    }
}

choices! {
    /// A load on a studied panel; positive pushes forward.
    pub enum PanelLoad {
        Pressure = "pressure" (Reading<Pressure>);
        Patch = "patch" {
            /// Its middle, across.
            across: Reading<Length> = field().within(bounds::STUDY_PLACE),
            /// Its middle, up.
            up: Reading<Length> = field().within(bounds::STUDY_PLACE),
            /// How wide it is.
            width: Reading<Length> = field().within(bounds::STUDY_LENGTH),
            /// How high it is.
            height: Reading<Length> = field().within(bounds::STUDY_LENGTH),
            /// All of it together.
            force: Reading<Force> = field().within(bounds::STUDY_FORCE),
        };
        Point = "point" {
            /// Where it acts, across.
            across: Reading<Length> = field().within(bounds::STUDY_PLACE),
            /// Where it acts, up.
            up: Reading<Length> = field().within(bounds::STUDY_PLACE),
            /// How strong it is.
            force: Reading<Force> = field().within(bounds::STUDY_FORCE),
        };
    }
}

things! {
    /// A bolt group, given outright for a study.
    pub struct BoltStudy [whole] {
        /// A name from the catalog's bolt sizes.
        size: String,
        /// A name from the catalog's bolt grades, where forces shall be held against one.
        grade: Option<String>,
        /// Where the bolts stand.
        bolts: Vec<PanelPlace>,
        /// The face that they hold: its lower edge, upper edge, starboard and port edge.
        face: StudyFace,
        /// Where the forces act.
        at: PanelPlace,
        /// Forward, onto the face.
        push: Option<Reading<Force>> = field().within(bounds::STUDY_FORCE),
        /// In the face, to port.
        across: Option<Reading<Force>> = field().within(bounds::STUDY_FORCE),
        /// In the face, up.
        up: Option<Reading<Force>> = field().within(bounds::STUDY_FORCE),
        /// Turns the group in its plane, from port towards up.
        twist: Option<Reading<Moment>> = field().within(bounds::STUDY_MOMENT),
        /// Presses the upper edge on where positive.
        pitch: Option<Reading<Moment>> = field().within(bounds::STUDY_MOMENT),
        /// Presses the starboard edge on where positive.
        yaw: Option<Reading<Moment>> = field().within(bounds::STUDY_MOMENT),
    }
}

things! {
    /// Edges of a studied face.
    pub struct StudyFace [whole] {
        /// Its lower edge, up.
        bottom: Reading<Length> = field().within(bounds::STUDY_PLACE),
        /// Its upper edge, up.
        top: Reading<Length> = field().within(bounds::STUDY_PLACE),
        /// Its edge to starboard, across.
        starboard: Reading<Length> = field().within(bounds::STUDY_PLACE),
        /// Its edge to port, across.
        port: Reading<Length> = field().within(bounds::STUDY_PLACE),
    }
}
