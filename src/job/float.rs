//! How she floats: the hull's shape, her freeboards as measured, what is aboard, the edges where water
//! comes in, and the loadings to look at.

use uom::si::f64::{Length, Mass, MassDensity, Ratio, Volume};

use super::Item;
use super::across::Across;
use super::bounds;
use crate::quantity::Reading;
use crate::reading::*;

choices! {
    /// The shape of the hull, in one of three ways.
    pub enum HullShape {
        /// A handful of sections read with a tape and a level, from the transom forward.
        Tape = "tape" {
            /// The sections.
            sections: Vec<Section> = called("section").up_to(60),
            /// How the lines run between them.
            [default] lines: Lines,
        };
        /// A table of offsets, from the transom forward.
        Offsets = "offsets" {
            /// The stations.
            stations: Vec<OffsetStation> = called("station").up_to(48),
            /// How the lines run between them.
            [default] lines: Lines,
        };
        /// A closed surface of triangles in boat axes: a stereolithography (STL) file.
        Mesh = "mesh" {
            /// The file, from the folder of the job.
            file: String = named_file(&[".stl"]),
            /// What one unit of the file is.
            unit: Reading<Length> = called("one unit of the file").within(bounds::UNIT),
        };
    }
}

words! {
    /// How lines run between sections.
    pub enum Lines [Default] {
        /// Fair, never bulging past the sections.
        [default] Fair = "fair";
        /// Straight from section to section.
        Straight = "straight";
    }
}

things! {
    /// One section of a hull with a chine.
    pub struct Section [whole] {
        /// Forward of the transom, at the keel.
        forward: Reading<Length> = called("forward of the transom").within(bounds::STATION),
        /// Height of the bottom on the centreline.
        keel: Reading<Length> = called("keel").within(bounds::UP),
        /// Knuckles between keel and chine, from the keel out.
        [default] bottom_knuckles: Vec<Offset> = called("knuckle of the bottom").up_to(12),
        /// The chine.
        chine: Offset = called("chine").naming_parts(),
        /// Knuckles between chine and sheer, upward.
        [default] side_knuckles: Vec<Offset> = called("knuckle of the side").up_to(12),
        /// The sheer.
        sheer: Offset = called("sheer").naming_parts(),
    }
}

things! {
    /// One station of a table of offsets.
    pub struct OffsetStation [whole] {
        /// Forward of the transom, at the keel.
        forward: Reading<Length> = called("forward of the transom").within(bounds::STATION),
        /// From the keel up to the sheer.
        points: Vec<Offset> = called("point").up_to(60),
    }
}

things! {
    /// A point of a section.
    pub struct Offset [whole] {
        /// Half-breadth: from the centreline out.
        out: Reading<Length> = called("half-breadth").within(bounds::OUT),
        /// Above the baseline.
        up: Reading<Length> = called("height").within(bounds::UP),
    }
}

things! {
    /// The water and how she lies in it.
    pub struct Afloat {
        /// The water.
        water: Option<Water> = called("the water").within(bounds::DENSITY)
            .taken(Stop::Afloat, "at the dock", "salt, fresh, or its density by a hydrometer").spot(186, 372),
        /// Freeboards or waterline marks as measured.
        marks: Vec<Mark> = called("freeboards").up_to(40)
            .taken(Stop::Afloat, "at the dock, in still water, everybody off",
                "plumb from a marked point of the sheer down to the water, at both corners of the transom and near \
                the stem; write where the point stands on the boat too").closely(inch(0.25)).spot(500, 66),
        /// Which engines hung on her then; the old ones before ordering, the new ones as fitted.
        engines: Option<EnginesThen> = called("engines that hung on her then"),
        /// Who was aboard then, and where.
        crew: Vec<CrewAt> = called("who was aboard then").up_to(40)
            .taken(Stop::Afloat, "at the dock", "how many, and where they sat or stood").closely(inch(6.0)).spot(300, 100),
        /// What else was aboard then that is no part of her: sandbags, tools.
        also: Vec<Item> = called("what else was aboard then").up_to(60)
            .taken(Stop::Afloat, "at the dock, on a scale", "sandbags, tools: what each weighs and where it lies"),
    }
}

choices! {
    /// The water she floats in.
    pub enum Water {
        Salt = "salt";
        Fresh = "fresh";
        /// Water of this density.
        Density = "density" (Reading<MassDensity>);
    }
}

words! {
    /// Which engines hung on her when the marks were taken.
    pub enum EnginesThen {
        Old = "old";
        New = "new";
        None = "none";
    }
}

things! {
    /// A point of the boat and its height above the water.
    pub struct Mark {
        /// What it is.
        what: Option<String> = label(),
        /// Forward of the transom.
        forward: Option<Reading<Length>> = called("forward of the transom").within(bounds::ALONG),
        /// Which side, and how far off the centreline.
        across: Option<Across> = called("off the centreline").within(bounds::ACROSS),
        /// Above the baseline.
        up: Option<Reading<Length>> = called("above the baseline").within(bounds::UP),
        /// Above the water, plumb: a freeboard; zero on the waterline.
        above_water: Option<Reading<Length>> = called("above water").within(bounds::FREEBOARD),
    }
}

things! {
    /// Weights of the boat and of what is aboard.
    pub struct Weights {
        /// The bare boat: no engines, brackets, liquids, persons or gear.
        boat: BoatWeight = called("the bare boat"),
        /// Tanks and live wells.
        tanks: Vec<TankEntry> = called("the tank's capacity and place").up_to(24)
            .taken(Stop::Aboard, "tank plate, or its outside measures",
                "capacity, and its centre forward of the transom and above the bottom")
            .closely(inch(2.0)).spot(262, 84),
        /// Places of persons.
        places: Vec<Seat> = called("places of persons").up_to(60)
            .taken(Stop::Aboard, "seats, benches, where they stand",
                "forward of the transom, off the centreline, and how high the middle of a person is above the \
                bottom").closely(inch(2.0)).spot(332, 66),
        /// What one person weighs.
        person: Option<Reading<Mass>> = called("weight of a person").within(bounds::PERSON)
            .taken(Stop::Aboard, "a bathroom scale", "the mean of those who go out in her, dressed").closely(lb(5.0)),
        /// How many go out in her.
        crew: Option<u16> = called("persons who go out in her").within(bounds::CREW)
            .taken(Stop::Aboard, "what she is used for", "as many as usually go"),
        /// Gear that is usually aboard.
        gear: Vec<Item> = called("gear that is usually aboard").up_to(100)
            .taken(Stop::Aboard, "on a scale", "anchor, chest, nets: what each weighs and where it lies"),
    }
}

things! {
    /// The bare boat.
    pub struct BoatWeight {
        /// Her weight.
        weight: Option<Reading<Mass>> = called("weight and centre of the bare boat").within(bounds::BOAT_WEIGHT)
            .taken(Stop::Aboard, "builder's papers, or a scale",
                "without engines, liquids, persons and gear; not needed where freeboards were measured")
            .closely(lb(50.0)),
        /// Her centre forward of the transom.
        forward: Option<Reading<Length>> = called("her centre, forward of the transom").within(bounds::ALONG)
            .taken(Stop::Aboard, "builder's papers, or two scales",
                "of the bare boat; not needed where freeboards were measured").closely(inch(2.0)),
        /// Her centre off the centreline.
        across: Option<Across> = called("her centre, off the centreline").within(bounds::ACROSS)
            .taken(Stop::Aboard, "builder's papers", "where she is not alike on both sides").closely(inch(1.0)),
        /// Her centre above the baseline.
        above: Option<Reading<Length>> = called("her centre, above the baseline").within(bounds::HEIGHT)
            .taken(Stop::Aboard, "builder's papers", "of the bare boat").closely(inch(2.0)),
    }
}

things! {
    /// A tank.
    pub struct TankEntry {
        /// What it is called.
        what: String = label(),
        /// What is in it.
        holds: Liquid = called("what it holds"),
        /// How much it takes.
        capacity: Option<Reading<Volume>> = called("capacity").within(bounds::TANK),
        /// How full it was when the marks were taken.
        fill: Option<Reading<Ratio>> = called("how full it was").within(bounds::FILL),
        /// Its centre forward of the transom.
        forward: Option<Reading<Length>> = called("its centre, forward of the transom").within(bounds::ALONG),
        /// Its centre off the centreline.
        across: Option<Across> = called("its centre, off the centreline").within(bounds::ACROSS),
        /// Its centre above the baseline.
        above: Option<Reading<Length>> = called("its centre, above the baseline").within(bounds::HEIGHT),
        /// Its length fore and aft, inside.
        length: Option<Reading<Length>> = called("its length inside").within(bounds::TANK_SIZE),
        /// Its width athwart, inside; between baffles, where they divide it.
        width: Option<Reading<Length>> = called("its width inside").within(bounds::TANK_SIZE),
    }
}

words! {
    /// What a tank holds.
    pub enum Liquid [Default] {
        [default] Fuel = "fuel";
        Water = "water";
        /// Water of the sea or lake, for bait or catch.
        LiveWell = "live_well", "live well";
    }
}

things! {
    /// A place for persons.
    pub struct Seat {
        /// What it is called.
        what: String = label(),
        /// How many it holds; one where nothing is said.
        holds: Option<u16> = called("persons that it holds").within(bounds::CREW),
        /// Forward of the transom.
        forward: Option<Reading<Length>> = called("forward of the transom").within(bounds::ALONG),
        /// Off the centreline.
        across: Option<Across> = called("off the centreline").within(bounds::ACROSS),
        /// Centre of a person there, above the baseline.
        above: Option<Reading<Length>> = called("a person there, above the baseline").within(bounds::HEIGHT),
    }
}

things! {
    /// So many persons at a place.
    pub struct CrewAt {
        /// How many; one where nothing is said.
        persons: Option<u16> = called("persons").within(bounds::CREW),
        /// A place of the job…
        at: Option<String> = label(),
        /// …or where they are: forward of the transom,
        forward: Option<Reading<Length>> = called("forward of the transom").within(bounds::ALONG),
        /// off the centreline,
        across: Option<Across> = called("off the centreline").within(bounds::ACROSS),
        /// and above the baseline.
        above: Option<Reading<Length>> = called("above the baseline").within(bounds::HEIGHT),
    }
}

things! {
    /// An edge where water can come in, or from which it must run off.
    pub struct Edge {
        /// What it is called.
        name: String = label(),
        /// What sort it is.
        kind: EdgeKind = called("sort of edge"),
        /// Forward of the transom; negative behind it.
        forward: Option<Reading<Length>> = called("forward of the transom").within(bounds::ALONG),
        /// Off the centreline.
        across: Option<Across> = called("off the centreline").within(bounds::ACROSS),
        /// Whether the same stands on the other side too.
        both_sides: bool,
        /// Above the baseline.
        up: Option<Reading<Length>> = called("above the baseline").within(bounds::UP),
    }
}

/// What is asked of a list of edges that has none to run off from.
pub const DRAINS: Declared = called("heights of sole and scuppers")
    .taken(
        Stop::Inside,
        "cockpit, and outside at the scuppers",
        "the sole at its lowest and the outlets' lower edges, above the level line through the bottom; kind: sole and kind: scupper",
    )
    .closely(inch(0.25))
    .spot(250, 112)
    .standing("Job", "edges", &["Heights of the cockpit's sole and of the scuppers' outlets."], None);
/// What is asked of a list of edges that has no sheer.
pub const SHEER: Declared = called("heights of the sheer")
    .taken(Stop::Inside, "along the sheer", "a few low points of it with their places; kind: sheer")
    .closely(inch(0.5))
    .spot(560, 74)
    .standing("Job", "edges", &["Heights of the sheer where it is low."], None);

words! {
    /// What sort of edge.
    pub enum EdgeKind [Default] {
        /// Lowest point where water comes in over the motorwell or the transom.
        Well = "well";
        /// Outlet of a scupper.
        Scupper = "scupper";
        /// Cockpit sole at its lowest.
        Sole = "sole";
        /// Sheer or washboard.
        Sheer = "sheer";
        /// Any other opening.
        [default] Other = "other";
    }
}

things! {
    /// A loading of the boat.
    pub struct Condition {
        /// What it is called.
        name: String = label(),
        /// How full the fuel tanks are.
        fuel: Option<Reading<Ratio>> = called("how full the fuel tanks are").within(bounds::FILL),
        /// How full the water tanks are.
        water: Option<Reading<Ratio>> = called("how full the water tanks are").within(bounds::FILL),
        /// How full the live wells are.
        live_well: Option<Reading<Ratio>> = called("how full the live wells are").within(bounds::FILL),
        /// Who is aboard, and where.
        crew: Vec<CrewAt> = called("who is aboard").up_to(40),
        /// Whether the usual gear stays ashore.
        gear_ashore: bool,
        /// What else is aboard.
        also: Vec<Item> = called("what else is aboard").up_to(60),
    }
}

things! {
    /// A well that the water fills up to its level outside: a motorwell with open drains.
    pub struct Flooded {
        /// What it is called.
        what: String = label(),
        /// Its after end forward of the transom; at the transom where it is left out.
        forward: Option<Reading<Length>> = called("its after end, forward of the transom").within(bounds::ALONG),
        /// Its middle off the centreline.
        across: Option<Across> = called("its middle, off the centreline").within(bounds::ACROSS),
        /// Its length fore and aft.
        length: Option<Reading<Length>> = called("its length").within(bounds::TANK_SIZE),
        /// Its width.
        width: Option<Reading<Length>> = called("its width").within(bounds::TANK_SIZE),
        /// Its floor above the baseline.
        floor: Option<Reading<Length>> = called("its floor above the baseline").within(bounds::UP),
    }
}
