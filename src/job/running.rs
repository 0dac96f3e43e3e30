//! How she shall run: what the reckoning of planing asks for beyond her weights and her engines.

use uom::si::f64::{Angle, Area, Length, Velocity};

use super::bounds;
use crate::quantity::Reading;
use crate::reading::*;

things! {
    /// How she runs. That it is written at all asks for the prediction.
    pub struct Running {
        /// The loading in which she is looked at, by its name; with the crew at their stations where left out.
        loading: Option<String>,
        /// How far the engines are trimmed when she runs, from the shaft square to the bottom; out positive.
        engine_trim: Option<Reading<Angle>> = called("trim of the engines when she runs").within(bounds::ENGINE_TRIM)
            .taken(Stop::Helm, "trim gauge, or an angle gauge on the leg",
                "from the shaft parallel to the keel, out positive").closely(deg(1.0)).spot(426, 372),
        /// Her trim tabs.
        tabs: Option<TrimTabs> = called("trim tabs")
            .taken(Stop::Transom, "at the transom's lower edge",
                "span of one, length from hinge to edge, how many, how far down they stand: tabs: (span: \"18 in\", \
                chord: \"9 in\", down: \"5 deg\")").closely(inch(0.25)).spot(272, 392),
        /// Area that she shows to the wind from ahead.
        front: Option<Reading<Area>> = called("frontal area above water").within(bounds::FRONT)
            .taken(Stop::Papers, "a drawing, or photographs from ahead", "width times height above the water"),
        /// Greatest speed that her builder lets the hull run.
        hull_rated: Option<Reading<Velocity>> = called("greatest speed that the hull is rated for").within(bounds::SPEED)
            .taken(Stop::Papers, "builder's manual or plate", "ask with the hull number").closely(mph(1.0)),
        /// Greatest speed that the steering is rated for.
        steering_rated: Option<Reading<Velocity>> =
            called("greatest speed that the steering is rated for").within(bounds::SPEED)
            .taken(Stop::Papers, "the steering's manual", "the speed that its maker allows").closely(mph(1.0)),
    }
}

things! {
    /// Trim tabs at the transom.
    pub struct TrimTabs [whole] {
        /// Span of one, athwart.
        span: Reading<Length> = called("span of a trim tab").within(bounds::TAB_SPAN),
        /// From the hinge to the trailing edge.
        chord: Reading<Length> = called("length of a trim tab").within(bounds::TAB_CHORD),
        /// How many there are; two where left out.
        count: Option<u8> = called("number of trim tabs").within(bounds::TABS),
        /// How far they stand down from the bottom's line when she runs; none where left out.
        down: Option<Reading<Angle>> = called("how far down the tabs stand").within(bounds::TAB_DOWN),
    }
}
