//! The boat, her plate and her transom.

use uom::si::f64::{Angle, Length, Mass, Power};

use super::across::Across;
use super::bounds;
use crate::quantity::{Reading, inches};
use crate::reading::*;

things! {
    /// The boat herself.
    pub struct Boat {
        /// Her name or description.
        name: Option<String> = label(),
        /// What sort of craft she is; a regulation may not apply to some.
        craft: Option<Craft> = called("what sort of craft she is")
            .taken(Stop::Papers, "papers, or a look", "one of monohull, multihull, sailboat, canoe, kayak, inflatable"),
        /// The shape of her bottom, as the power formula distinguishes it.
        bottom: Option<Bottom> = called("shape of the bottom")
            .taken(Stop::Hull, "under the hull, a third from the stern",
                "one of `flat_hard_chine`, `vee`, `round`, `cathedral`").spot(606, 412),
        /// Straight horizontal overall length over the deck, without outboard brackets, bow sprits and
        /// the like (33 CFR 183.3).
        length: Option<Reading<Length>> = called("overall length").within(bounds::BOAT_LENGTH)
            .taken(Stop::Hull, "along the deck, stem to transom",
                "straight and level, without pulpits, platforms and brackets; plumb down from both ends and tape \
                between the marks").closely(inch(1.0)).spot(470, 186).in_feet(),
        /// Greatest beam.
        beam: Option<Reading<Length>> = called("greatest beam").within(bounds::BEAM)
            .taken(Stop::Hull, "where she is widest",
                "plumb down from both sides, rub rails left out, and tape between the marks")
            .closely(inch(0.5)).spot(402, 40).in_feet(),
        /// Greatest width of the transom, handles and fittings excluded.
        transom_width: Option<Reading<Length>> = called("greatest width of the transom").within(bounds::WIDTH)
            .taken(Stop::Hull, "across the transom", "at its widest, handles and fittings left out")
            .closely(inch(0.5)).spot(78, 322).in_feet(),
        /// Broadest beam in the aftermost quarter of the length: asked for where there is no full transom.
        aft_quarter_beam: Option<Reading<Length>> = called("broadest beam in the aftermost quarter").within(bounds::WIDTH)
            .taken(Stop::Hull, "between the transom and a quarter of the length forward",
                "plumb down from both sides and tape between the marks").closely(inch(0.5)).spot(232, 48).in_feet(),
        /// Deadrise at the transom.
        deadrise: Option<Reading<Angle>> = called("deadrise at the transom").within(bounds::DEADRISE)
            .taken(Stop::Hull, "on the bottom, beside the keel at the transom",
                "boat level athwartships; angle finder across a strake-free stretch, both sides, take the mean")
            .closely(deg(0.5)).spot(232, 390),
        /// Beam between the chines at the transom.
        chine_beam: Option<Reading<Length>> = called("beam between the chines at the transom").within(bounds::WIDTH)
            .taken(Stop::Hull, "under the transom", "from chine to chine").closely(inch(0.5)).spot(120, 384).in_feet(),
        /// From the bottom of the hull up to the sheer, at the transom.
        depth: Option<Reading<Length>> = called("depth at the transom").within(bounds::DEPTH)
            .taken(Stop::Hull, "outside, at the transom's corner",
                "from the level line through the bottom at the centreline up to the sheer")
            .closely(inch(0.5)).spot(328, 340).in_feet(),
        /// The year she was designed or built.
        year: Option<u16> = called("year").within(bounds::YEAR)
            .taken(Stop::Papers, "builder's plate or hull number", "the year she was built, or designed"),
        /// Design category.
        category: Option<Category> = called("design category")
            .taken(Stop::Papers, "builder's plate", "A, B, C or D, as it stands there"),
        /// Weight found in the stability test of 33 CFR 183.41, where she was put to it.
        stability_test: Option<Reading<Mass>> = called("weight found in the stability test").within(bounds::LOAD)
            .taken(Stop::Papers, "the builder's papers", "the weight A of 33 CFR 183.41, as the builder tested her"),
        /// How she carries her fuel.
        fuel: Option<Fuel> = called("how fuel is carried")
            .taken(Stop::Papers, "a look", "one of `permanent_tanks`, `portable_tanks`"),
        /// How hull and transom are built.
        construction: Option<Construction> = called("how she is built")
            .taken(Stop::Papers, "papers, or a look",
                "one of `moulded_glass`, `plywood_on_frames`, `riveted_plate`, `welded_plate`"),
        /// What her builder lets the transom carry.
        transom_rating: Option<Reading<Mass>> = called("weight that the builder lets the transom carry").within(bounds::LOAD)
            .taken(Stop::Papers, "builder's manual, or a letter from the builder",
                "ask with the hull number; a dealer's opinion is not a rating"),
        /// What her builder rates her for in power, where it is not on a plate.
        power_rating: Option<Reading<Power>> = called("power that her builder rates her for").within(bounds::BOAT_POWER)
            .taken(Stop::Papers, "builder's manual, or a letter from the builder", "where it is not on a plate"),
    }
}

words! {
    /// The sort of craft.
    pub enum Craft {
        /// One hull, made for outboard power.
        Monohull = "monohull";
        Multihull = "multihull";
        Sailboat = "sailboat";
        Canoe = "canoe";
        Kayak = "kayak";
        Inflatable = "inflatable";
    }
}

words! {
    /// The shape of the bottom.
    pub enum Bottom {
        /// Flat with hard chines: the power formula allows it less.
        FlatHardChine = "flat_hard_chine", "flat with hard chines";
        Vee = "vee";
        Round = "round";
        /// Several vees side by side under one deck.
        Cathedral = "cathedral";
    }
}

words! {
    /// How hull and transom are built.
    pub enum Construction {
        /// Skins of glass moulded over a core.
        MouldedGlass = "moulded_glass", "moulded glass";
        /// Plywood on frames, with or without a thin sheath.
        PlywoodOnFrames = "plywood_on_frames", "plywood on frames";
        /// Riveted metal plate, a board behind it at the transom.
        RivetedPlate = "riveted_plate", "riveted plate";
        /// Welded metal plate, stiffened or with a board behind it.
        WeldedPlate = "welded_plate", "welded plate";
    }
}

words! {
    /// How fuel is carried, as 33 CFR 183.41 distinguishes it.
    pub enum Fuel {
        /// In tanks built in; counted with the boat's own weight.
        PermanentTanks = "permanent_tanks", "permanent tanks";
        /// In portable tanks; counted against the weight capacity.
        PortableTanks = "portable_tanks", "portable tanks";
    }
}

words! {
    /// Design category (ISO 12217).
    pub enum Category {
        A = "A";
        B = "B";
        C = "C";
        D = "D";
    }
}

choices! {
    /// The plate at the helm or on the transom.
    pub enum Plate {
        /// A US capacity plate (33 CFR 183, subpart B).
        Capacity = "capacity" {
            /// "… persons"
            persons: Option<u16> = called("persons on the plate").within(bounds::PERSONS)
                .taken(Stop::Papers, "capacity or builder's plate", "the number of persons").spot(352, 78),
            /// "… or … lb"
            persons_weight: Option<Reading<Mass>> = called("persons' weight on the plate").within(bounds::LOAD)
                .taken(Stop::Papers, "capacity plate", "the weight that stands beside the number of persons")
                .spot(352, 78),
            /// "persons, motor, gear"
            total_weight: Option<Reading<Mass>> = called("total weight on the plate").within(bounds::LOAD)
                .taken(Stop::Papers, "capacity plate", "the figure for persons, motor and gear").spot(352, 78),
            /// "motor"
            power: Option<Reading<Power>> = called("power on the plate").within(bounds::BOAT_POWER)
                .taken(Stop::Papers, "capacity or builder's plate", "the figure behind \"motor\" or the engine symbol")
                .spot(352, 78),
        };
        /// A builder's plate (ISO 14945).
        Builders = "builders" {
            /// Persons.
            persons: Option<u16> = called("persons on the plate").within(bounds::PERSONS)
                .taken(Stop::Papers, "capacity or builder's plate", "the number of persons").spot(352, 78),
            /// Greatest load that the plate gives.
            load: Option<Reading<Mass>> = called("load on the plate").within(bounds::LOAD)
                .taken(Stop::Papers, "builder's plate", "the greatest load that it gives").spot(352, 78),
            /// Greatest power, where it gives one.
            power: Option<Reading<Power>> = called("power on the plate").within(bounds::BOAT_POWER)
                .taken(Stop::Papers, "capacity or builder's plate", "the figure behind \"motor\" or the engine symbol")
                .spot(352, 78),
        };
        /// There is none.
        None = "none";
        /// There is one that cannot be read.
        Illegible = "illegible";
    }
}

things! {
    /// The transom, at the engines.
    pub struct Transom {
        /// From its top, where the engine hangs, along it to the bottom of the hull at the centreline.
        height: Option<Reading<Length>> = called("transom height at the centreline").within(bounds::TRANSOM_HEIGHT)
            .taken(Stop::Transom, "outside, on the centreline",
                "straightedge along the bottom of the keel out past the transom; tape from the top where the engine \
                hangs, along the transom, to the straightedge").closely(inch(0.125)).spot(180, 350),
        /// The same off the centreline, where it was taken.
        heights: Vec<OffCentreHeight> = called("transom height").up_to(24)
            .taken(Stop::Transom, "outside, at each engine's centreline",
                "from the top along the transom to the bottom of the hull there").closely(inch(0.125)).spot(140, 330),
        /// From vertical, top aft.
        angle: Option<Reading<Angle>> = called("transom angle").within(bounds::TRANSOM_ANGLE)
            .taken(Stop::Transom, "outside, beside the engine's place",
                "boat level fore and aft; angle finder flat on the transom, from vertical")
            .closely(deg(0.5)).spot(533, 384),
        /// Through everything that the bolts go through.
        thickness: Option<Reading<Length>> = called("transom thickness").within(bounds::THICKNESS)
            .taken(Stop::Transom, "at the upper bolt holes",
                "caliper over the top edge, caps left out, or a hooked wire through a hole")
            .closely(inch(0.0625)).spot(516, 264),
        /// What it is made of: a name from the catalog's materials.
        material: Option<String> = called("material"),
        /// What was found of its core.
        core: Option<Core> = called("core"),
        /// Width of the cutout in which the engines hang.
        cutout_width: Option<Reading<Length>> = called("width of the cutout").within(bounds::WIDTH)
            .taken(Stop::Transom, "top of the transom",
                "between the sides at the height of the engine's bracket; where the top is level all across, write \
                cutout: none instead").closely(inch(0.25)).spot(148, 268),
        /// Said where there is no cutout to measure.
        cutout: Option<Cutout> = called("cutout"),
        /// How its top edge is finished.
        top_edge: Option<TopEdge> = called("finish of the transom's top")
            .taken(Stop::Transom, "top of the transom", "one of sealed, capped, bare").spot(215, 282),
        /// The splash-well inside of it.
        splash_well: Option<SplashWell> = called("depth of the splash-well").within(bounds::ON_TRANSOM)
            .taken(Stop::Inside, "inside, at the transom",
                "from the transom's top down its inside to the floor of the well: floor(\"12 in\"); none where \
                there is no well").closely(inch(0.25)).spot(590, 334),
        /// From its top down to the upper bolt holes of the new engines, as fitted or as planned.
        upper_holes: Option<Reading<Length>> = called("upper bolt holes below the top").within(bounds::ON_TRANSOM)
            .taken(Stop::Transom, "outside, at the upper bolts",
                "from the transom's top down to the centres of the upper bolts").closely(inch(0.0625)).spot(160, 296),
        /// Holes that are there already.
        holes: Vec<Hole> = called("existing bolt holes").up_to(200)
            .taken(Stop::Transom, "outside and inside of the transom",
                "each hole's distance from the centreline and from the transom's top, and its diameter; filled: \
                true where it is plugged and glassed over").closely(inch(0.0625)).spot(200, 325),
    }
}

/// How near a height must have been taken to count for a place. Common practice, no source: half the
/// width of a straightedge.
const SAME_PLACE_IN: f64 = 1.0;

impl Transom {
    /// The height measured at this distance off the centreline, where one was.
    pub fn height_at(&self, y: Length) -> Option<&Reading<Length>> {
        if y.abs() < inches(SAME_PLACE_IN) {
            return self.height.as_ref();
        }
        self.heights.iter().find(|taken| (taken.at.y() - y).abs() < inches(SAME_PLACE_IN)).map(|taken| &taken.height)
    }
}

words! {
    /// Where the top is not cut down for the engines.
    pub enum Cutout {
        /// There is none: the top is level all across.
        None = "none";
    }
}

choices! {
    /// The splash-well inside of the transom.
    pub enum SplashWell {
        /// There is none: the inside of the transom is open down to the bilge or the sole.
        None = "none";
        /// From the transom's top down to the well's floor.
        Floor = "floor" (Reading<Length>);
    }
}

words! {
    /// What sounding and probing said of the core.
    pub enum Core {
        Sound = "sound";
        /// Damp or doubtful.
        Suspect = "suspect";
        Soft = "soft";
    }
}

words! {
    /// How the top of the transom is finished.
    pub enum TopEdge {
        /// Glassed over or solid.
        Sealed = "sealed";
        /// Under a metal or plastic cap.
        Capped = "capped";
        /// The core shows.
        Bare = "bare";
    }
}

things! {
    /// A transom height taken off the centreline.
    pub struct OffCentreHeight [whole] {
        /// Where.
        at: Across = called("off the centreline").within(bounds::ACROSS),
        /// From the top along the transom to the bottom of the hull there.
        height: Reading<Length> = called("transom height off the centreline").within(bounds::TRANSOM_HEIGHT),
    }
}

things! {
    /// A hole in the transom.
    pub struct Hole [whole] {
        /// Where across.
        at: Across = called("off the centreline").within(bounds::ACROSS),
        /// From the transom's top down to its centre.
        below: Reading<Length> = called("below the top").within(bounds::ON_TRANSOM),
        /// Its diameter.
        diameter: Option<Reading<Length>> = called("diameter").within(bounds::HOLE_DIAMETER),
        /// Whether it was plugged and glassed over: then it weakens nothing.
        [default] filled: bool = called("plugged and glassed over"),
    }
}

words! {
    /// How she is steered.
    pub enum Steering {
        Tiller = "tiller";
        /// Wheel with a mechanical cable.
        RemoteMechanical = "remote_mechanical", "remote mechanical";
        /// Wheel with a hydraulic cylinder.
        RemoteHydraulic = "remote_hydraulic", "remote hydraulic";
        /// Wheel with an electric actuator.
        RemoteElectric = "remote_electric", "remote electric";
    }
}

impl Steering {
    /// Whether a wheel steers her from away from the engine, as 33 CFR 183.53 has it.
    pub fn is_remote(self) -> bool {
        self != Steering::Tiller
    }
}
