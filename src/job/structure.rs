//! What the transom is built of, what holds it, how it is bolted to, and how hard she is driven.

use uom::si::f64::{Acceleration, Length, Mass, Ratio, Velocity};

use super::bounds;
use super::{Across, Signs};
use crate::quantity::{Moment, Reading};
use crate::reading::*;

things! {
    /// How the transom is built and held.
    pub struct Structure {
        /// Its layers from the outside in; where left out, all of it is the transom's material.
        lay_up: Vec<Layer> = called("what the transom is made of, layer by layer").up_to(40)
            .taken(Stop::Inside, "outside and inside of the transom, a hole or an edge",
                "to begin with, transom.material (its core, from the builder or an old hole) and transom.thickness; \
                closer, each layer's material and thickness from the outside in: from a drawing, the builder, or one \
                1/4 in hole from inside where an old one can be used or it will be covered, the skins measured and \
                the hole sealed")
            .closely(inch(0.03125)).spot(516, 264),
        /// How the hull's sides hold it.
        sides: Option<Bond> = called("how the hull's sides and bottom hold the transom")
            .taken(Stop::Inside, "inside, along the transom's edges, as far as hand and mirror reach",
                "tap along the tabbing or the welds and pry at their edges: `built_in`, `bonded`, or `loose` where any of \
                it has let go; the same for structure.bottom").spot(318, 290),
        /// How the hull's bottom holds it.
        bottom: Option<Bond> = called("how the hull's bottom holds the transom"),
        /// How the splash-well's floor holds it.
        well_floor: Option<Bond> = called("how the splash-well's floor holds the transom")
            .taken(Stop::Inside, "inside, under the well", "one of `loose`, `bonded`, `built_in`").spot(545, 300),
        /// Knees that stand against its inside.
        knees: Option<Vec<Upright>> = called("knees that stand against the transom").up_to(24)
            .taken(Stop::Inside, "inside, from the transom forward",
                "each knee's distance from the centreline, and how far up the transom it reaches; [] where there is \
                none").closely(inch(0.5)).spot(560, 358),
        /// Stringers that end on its inside.
        stringers: Option<Vec<Upright>> = called("stringers that end on the transom").up_to(24)
            .taken(Stop::Inside, "inside, from the transom forward",
                "each stringer's distance from the centreline, and how far up the transom it reaches; [] where \
                there is none").closely(inch(0.5)).spot(575, 375),
        /// How the deck holds the transom's upper edges beside the cutout.
        deck: Option<Bond> = called("how the deck holds the transom's upper edges")
            .taken(Stop::Inside, "inside, under the deck or the caps beside the cutout",
                "whether deck or side decks are glassed, screwed and bedded or welded to the transom beside the cutout: \
                `built_in`, `bonded`, or `loose` where there is no deck or it only lies there").spot(516, 250),
        /// The tabs that bond it to hull, knees and stringers.
        tabbing: Option<Tabbing> = called("tabbing that bonds the transom")
            .taken(Stop::Inside, "inside, along the transom's edges",
                "how far it lies on the transom, and how thick it is at an edge").closely(inch(0.0625)).spot(318, 290),
        /// A member that stiffens its top edge where the engines hang.
        top_stiffener: Option<Stiffener> = called("what stiffens the top edge")
            .taken(Stop::Inside, "inside, along the top edge",
                "its material, how deep it is fore and aft, and how high").closely(inch(0.0625)).spot(524, 276),
        /// Its upper corners above the bottom of the hull on the centreline, along the transom.
        corner_height: Option<Reading<Length>> = called("height of the upper corners").within(bounds::CORNER)
            .taken(Stop::Transom, "outside, at the transom's corners",
                "from the level line through the bottom at the centreline up along the transom")
            .closely(inch(0.5)).spot(328, 256),
        /// Moisture of the core by weight.
        moisture: Option<Reading<Ratio>> = called("moisture of the core").within(bounds::MOISTURE)
            .taken(Stop::Inside, "all over the transom",
                "a moisture meter, beside a sound dry place for comparison; by weight")
            .closely(percent(2.0)).spot(120, 345),
        /// What the hammer says of the core.
        percussion: Option<Sound> = called("what the hammer and the meter say of the core")
            .taken(Stop::Inside, "all over the transom, outside and inside",
                "tap with a plastic hammer, a hand apart: sharp, dull or dead; a moisture meter beside it, with a \
                sound dry place for comparison: structure.moisture").spot(120, 345),
        /// How far the top edge moved under a weight on the lower unit.
        flex: Option<Flex> = called("how far the top edge moves")
            .taken(Stop::Inside, "top edge of the transom, leg tilted level",
                "a person leans on the gearcase: what he weighs, how far aft of the transom, and how far the edge \
                moved by a rule that stands on the bottom").closely(inch(0.03125)).spot(240, 300),
        /// What is seen of the transom.
        signs: Option<Signs> = called("what is seen of the transom")
            .taken(Stop::Inside, "transom and well, outside and inside, engine tilted up",
                "rock the engine by its lower unit, look at bolts, washers, corners, cap and tabbing: any of \
                `weeping_bolts`, `washers_sunk_in`, `cracks_at_cutout`, `cracks_at_bracket`, \
                `stains_or_rust_streaks`, `flexes_by_hand`, `tabbing_let_go`, `gap_at_cap`, `paint_lines_moved`; \
                `[]` where nothing is seen")
            .spot(240, 345),
    }
}

things! {
    /// A layer of the transom.
    pub struct Layer [whole] {
        /// A name from the catalog's materials.
        material: String = label(),
        /// Its thickness.
        thickness: Reading<Length> = called("thickness").within(bounds::LAYER),
    }
}

words! {
    /// How an edge of the transom is held.
    pub enum Bond {
        /// Not at all, or no more.
        Loose = "loose";
        /// Tabbed or bedded: it cannot move, but it can turn.
        Bonded = "bonded";
        /// Moulded or welded in one with the hull: it can neither move nor turn.
        BuiltIn = "built_in", "built in";
    }
}

things! {
    /// A knee or a stringer's end on the inside of the transom.
    pub struct Upright [whole] {
        /// Where across.
        at: Across = called("off the centreline").within(bounds::ACROSS),
        /// How far up the transom it reaches, from the bottom of the hull there.
        height: Option<Reading<Length>> = called("how far up the transom").within(bounds::UPRIGHT),
        /// How wide it is itself.
        width: Option<Reading<Length>> = called("width").within(bounds::MEMBER),
        /// How far its fillet reaches on each side.
        fillet: Option<Reading<Length>> = called("fillet on each side").within(bounds::FILLET),
    }
}

things! {
    /// Laminate laid round the corner between the transom and what it is bonded to.
    pub struct Tabbing [whole] {
        /// How far it lies on the transom.
        width: Reading<Length> = called("tabbing on the transom").within(bounds::MEMBER),
        /// How thick it is.
        thickness: Reading<Length> = called("thickness of the tabbing").within(bounds::LAYER),
    }
}

things! {
    /// A member along the top edge.
    pub struct Stiffener [whole] {
        /// A name from the catalog's materials.
        material: String = called("material"),
        /// Fore and aft.
        depth: Reading<Length> = called("stiffener, fore and aft").within(bounds::MEMBER),
        /// Up and down.
        height: Reading<Length> = called("stiffener, up and down").within(bounds::MEMBER),
    }
}

words! {
    /// What the hammer says.
    pub enum Sound {
        Sharp = "sharp";
        /// Duller than its surroundings.
        Dull = "dull";
        /// Dead, or the hammer marks it.
        Dead = "dead";
    }
}

things! {
    /// A weight hung on the lower unit of an engine whose leg is tilted level, and what the top edge did.
    pub struct Flex [whole] {
        /// The weight: a person who leans on the gearcase.
        weight: Reading<Mass> = called("weight on the gearcase").within(bounds::PULL),
        /// From the transom's face aft to the weight.
        arm: Reading<Length> = called("aft of the transom's face").within(bounds::ARM),
        /// Of which engine, by its place; the centreline where left out.
        engine_at: Option<Across> = called("engine leant on, off the centreline").within(bounds::ACROSS),
        /// How far the transom's top edge moved there.
        moved: Reading<Length> = called("how far the edge moved").within(bounds::MOVED),
    }
}

things! {
    /// How hard she is driven.
    pub struct Operating {
        /// Greatest speed with the new engines, run or expected.
        top_speed: Option<Reading<Velocity>> = called("greatest speed with the new engines").within(bounds::SPEED)
            .taken(Stop::Helm, "run over a measured distance, or the offer",
                "the best two-way mean on a GPS, light; before the engines are there, what the dealer expects")
            .closely(mph(1.0)).spot(330, 118),
        /// Greatest speed with the old ones.
        old_top_speed: Option<Reading<Velocity>> = called("greatest speed with the old engines").within(bounds::SPEED)
            .taken(Stop::Helm, "run over a measured distance", "the best two-way mean on a GPS, light")
            .closely(mph(1.0)).spot(330, 118),
        /// Slamming on top of gravity, where somebody knows it better than the formula.
        acceleration: Option<Reading<Acceleration>> = called("slamming on top of gravity").within(bounds::ACCELERATION)
            .taken(Stop::Helm, "an accelerometer on the transom, or the builder",
                "where it is known better than the formula gives it").closely(gn(0.5)).spot(330, 118),
        /// What she weighs laden.
        displacement: Option<Reading<Mass>> = called("weight of the laden boat").within(bounds::DISPLACEMENT)
            .taken(Stop::Papers, "builder's papers, or a scale", "as she goes out").closely(lb(50.0)),
    }
}

things! {
    /// The bolts that hold an engine, or its bracket, to the transom.
    pub struct Bolting {
        /// A name from the catalog's bolt sizes.
        size: Option<String> = called("bolts"),
        /// A name from the catalog's bolt grades.
        grade: Option<String> = called("grade of the bolts"),
        /// Where they stand; where left out, the standard pattern, or a bracket's usual two rows.
        at: Vec<BoltPlace> = called("bolt").up_to(40),
        /// Outside diameter of the washers inside.
        washer: Option<Reading<Length>> = called("washers or plate under the nuts").within(bounds::WASHER)
            .taken(Stop::Bolts, "nuts inside the transom",
                "outside diameter and thickness of the washers, `washer: \"2 in\", washer_thickness: \"0.1 in\"`; or \
                the plate's size, thickness and material: `backing_plate`").closely(inch(0.0625)).spot(200, 325),
        /// How thick they are; the bolt size's plain washer where left out.
        washer_thickness: Option<Reading<Length>> = called("thickness of the washers").within(bounds::WASHER_THICKNESS),
        /// The plate behind them, one for all, or one like it for each.
        backing_plate: Option<BackingPlate> = called("backing plate"),
        /// To what they are tightened.
        torque: Option<Reading<Moment>> = called("torque of the mounting bolts").within(bounds::TORQUE)
            .taken(Stop::Bolts, "nuts inside the transom",
                "a torque wrench, the nut just moving; before the engines hang, the torque that they shall get")
            .closely(lbf_ft(2.0)).spot(200, 325),
        /// How thread and nut face are found.
        thread: Option<ThreadState> = called("how thread and nut face are found"),
        /// The face that lies on the transom.
        face: Option<Face> = called("face on the transom"),
        /// What fills the core where they go through it.
        inserts: Option<Inserts> = called("what fills the core at the bolts")
            .taken(Stop::Bolts, "a bolt hole, one bolt drawn",
                "one of none, sleeves, solid (wood or laminate let in), by what the hole's wall shows").spot(157, 336),
    }
}

words! {
    /// What the core was filled with at the bolts.
    pub enum Inserts {
        /// Nothing: the bolts go through the bare core.
        None = "none";
        /// Compression sleeves, one round each bolt.
        Sleeves = "sleeves", "compression sleeves";
        /// Solid wood or laminate let in, in place of the core.
        Solid = "solid", "solid wood or laminate";
    }
}

things! {
    /// A bolt's place.
    pub struct BoltPlace [whole] {
        /// Where across.
        at: Across = called("off the centreline").within(bounds::ACROSS),
        /// Below the transom's top.
        below: Reading<Length> = called("below the top").within(bounds::ON_TRANSOM),
    }
}

things! {
    /// A plate on the inside, under the nuts.
    pub struct BackingPlate [whole] {
        /// A name from the catalog's materials.
        material: String = called("material of the backing plate"),
        /// Across.
        width: Reading<Length> = called("backing plate, across").within(bounds::PLATE),
        /// Up and down.
        height: Reading<Length> = called("backing plate, up and down").within(bounds::PLATE),
        /// Its thickness.
        thickness: Reading<Length> = called("thickness of the backing plate").within(bounds::MEMBER),
    }
}

words! {
    /// How a thread is found.
    pub enum ThreadState {
        Dry = "dry";
        Oiled = "oiled";
        /// Stainless with anti-seize paste.
        Paste = "paste";
    }
}

things! {
    /// The face of an engine's clamp bracket, or of a setback bracket, that lies on the transom.
    pub struct Face [whole] {
        /// Its upper edge below the transom's top.
        below: Reading<Length> = called("face, its upper edge below the top").within(bounds::BELOW),
        /// Across.
        width: Reading<Length> = called("face, across").within(bounds::FACE),
        /// Up and down.
        height: Reading<Length> = called("face, up and down").within(bounds::FACE),
    }
}
