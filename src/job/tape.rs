//! Where each reading is taken, and how: the text of the measuring sheet, written once.

/// One reading that a job can hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Measurement {
    /// Its field in the job.
    pub field: &'static str,
    /// What it is called.
    pub name: &'static str,
    /// Where on the boat it is taken.
    pub place: &'static str,
    /// How it is taken.
    pub how: &'static str,
    /// How closely it is worth taking; empty where it is read off or chosen.
    pub closeness: &'static str,
}

macro_rules! measurements {
    ($($id:ident = $field:literal, $name:literal, $place:literal, $how:literal, $closeness:literal;)+) => {
        $(
            #[doc = $name]
            pub const $id: Measurement = Measurement {
                field: $field, name: $name, place: $place, how: $how, closeness: $closeness,
            };
        )+

        /// All of them, in the order of one walk round the boat: papers, helm, sides, stern, engines.
        pub const ALL: &[Measurement] = &[$($id),+];
    };
}

measurements! {
    CRAFT = "boat.craft", "what sort of craft she is", "papers, or a look",
        "one of monohull, multihull, sailboat, canoe, kayak, inflatable", "";
    PLATE = "plate", "capacity or builder's plate", "at the helm or inside the transom",
        "read it as it stands; write none where there is none, illegible where it cannot be read", "";
    PLATE_POWER = "plate.power", "power on the plate", "capacity or builder's plate",
        "the figure behind \"motor\" or the engine symbol", "";
    PLATE_PERSONS = "plate.persons", "persons on the plate", "capacity or builder's plate",
        "the number of persons", "";
    PLATE_PERSONS_WEIGHT = "plate.persons_weight", "persons' weight on the plate",
        "capacity plate", "the weight that stands beside the number of persons", "";
    PLATE_TOTAL_WEIGHT = "plate.total_weight", "total weight on the plate", "capacity plate",
        "the figure for persons, motor and gear", "";
    STABILITY_TEST = "boat.stability_test", "weight found in the stability test",
        "the builder's papers", "the weight A of 33 CFR 183.41, as the builder tested her", "";
    TRANSOM_RATING = "boat.transom_rating", "weight that the builder lets the transom carry",
        "builder's manual, or a letter from the builder",
        "ask with the hull number; a dealer's opinion is not a rating", "";
    STEERING = "steering", "how she will be steered", "helm",
        "one of tiller, remote_mechanical, remote_hydraulic, remote_electric", "";
    TOP_SPEED = "operating.top_speed", "greatest speed with the new engines", "run over a measured distance, or the offer",
        "the best two-way mean on a GPS, light; before the engines are there, what the dealer expects", "1 mph";
    BOAT_LENGTH = "boat.length", "overall length", "along the deck, stem to transom",
        "straight and level, without pulpits, platforms and brackets; plumb down from both ends and tape between the marks", "1 in";
    BEAM = "boat.beam", "greatest beam", "where she is widest",
        "plumb down from both sides, rub rails left out, and tape between the marks", "1/2 in";
    HULL = "hull", "shape of the hull", "round the boat, on the trailer or ashore, keel level",
        "at the transom and four more places forward: height of keel, chine and sheer above a level line through the bottom at the transom, and half the breadth at chine and sheer: hull: tape(sections: [...]); at the least boat.length, boat.chine_beam, boat.deadrise and boat.depth", "1/2 in";
    MARKS = "afloat.marks", "freeboards", "at the dock, in still water, everybody off",
        "plumb from a marked point of the sheer down to the water, at both corners of the transom and near the stem; write where the point stands on the boat too", "1/4 in";
    BOAT_WEIGHT = "weights.boat", "weight and centre of the bare boat", "builder's papers, or a scale",
        "without engines, liquids, persons and gear; not needed where freeboards were measured", "50 lb";
    EDGES = "edges", "height of the well's edge", "motorwell, or the transom's top where there is no well",
        "the lowest point where water would come aboard: above the level line through the bottom, forward of the transom, off the centreline; kind: well", "1/4 in";
    DRAINS = "edges", "heights of sole and scuppers", "cockpit, and outside at the scuppers",
        "the sole at its lowest and the outlets' lower edges, above the level line through the bottom; kind: sole and kind: scupper", "1/4 in";
    SHEER_EDGES = "edges", "heights of the sheer", "along the sheer",
        "a few low points of it with their places; kind: sheer", "1/2 in";
    FLOODED = "flooded", "wells that the water fills", "motorwell",
        "length, width and the floor's height above the level line through the bottom, where its drains are open and the floor is near the water", "1/2 in";
    TANK = "weights.tanks", "the tank's capacity and place", "tank plate, or its outside measures",
        "capacity, and its centre forward of the transom and above the bottom", "2 in";
    BOTTOM = "boat.bottom", "shape of the bottom", "under the hull, a third from the stern",
        "one of flat_hard_chine, vee, round, cathedral", "";
    TRANSOM_WIDTH = "boat.transom_width", "greatest width of the transom", "across the transom",
        "at its widest, handles and fittings left out", "1/2 in";
    AFT_QUARTER_BEAM = "boat.aft_quarter_beam", "broadest beam in the aftermost quarter",
        "between the transom and a quarter of the length forward", "plumb down from both sides and tape between the marks", "1/2 in";
    DEADRISE = "boat.deadrise", "deadrise at the transom", "on the bottom, beside the keel at the transom",
        "boat level athwartships; angle finder across a strake-free stretch, both sides, take the mean", "1/2 deg";
    CHINE_BEAM = "boat.chine_beam", "beam between the chines at the transom", "under the transom",
        "from chine to chine", "1/2 in";
    DEPTH = "boat.depth", "depth at the transom", "outside, at the transom's corner",
        "from the level line through the bottom at the centreline up to the sheer", "1/2 in";
    TRANSOM_HEIGHT = "transom.height", "transom height at the centreline", "outside, on the centreline",
        "straightedge along the bottom of the keel out past the transom; tape from the top where the engine hangs, along the transom, to the straightedge", "1/8 in";
    TRANSOM_ANGLE = "transom.angle", "transom angle", "outside, beside the engine's place",
        "boat level fore and aft; angle finder flat on the transom, from vertical", "1/2 deg";
    TRANSOM_THICKNESS = "transom.thickness", "transom thickness", "at the upper bolt holes",
        "caliper over the top edge, caps left out, or a hooked wire through a hole", "1/16 in";
    CUTOUT_WIDTH = "transom.cutout_width", "width of the cutout", "top of the transom",
        "between the sides at the height of the engine's bracket; where the top is level all across, write cutout: none instead", "1/4 in";
    TOP_EDGE = "transom.top_edge", "finish of the transom's top", "top of the transom",
        "one of sealed, capped, bare", "";
    LAY_UP = "structure.lay_up", "what the transom is made of, layer by layer", "outside and inside of the transom, a hole or an edge",
        "drill one 1/4 in hole from inside where an old one can be used or it will be covered, measure the skins, and seal it: each layer's material and thickness from the outside in, from that hole, a drawing or the builder; or transom.material and transom.thickness where it is all one", "1/32 in";
    KNEES = "structure.knees", "knees that stand against the transom", "inside, from the transom forward",
        "each knee's distance from the centreline, and how far up the transom it reaches; [] where there is none", "1/2 in";
    STRINGERS = "structure.stringers", "stringers that end on the transom", "inside, from the transom forward",
        "each stringer's distance from the centreline, and how far up the transom it reaches; [] where there is none", "1/2 in";
    WELL_FLOOR = "structure.well_floor", "how the splash-well's floor holds the transom", "inside, under the well",
        "one of loose, bonded, built_in", "";
    CORE_SOUNDING = "structure.percussion", "what the hammer and the meter say of the core", "all over the transom, outside and inside",
        "tap with a plastic hammer, a hand apart: sharp, dull or dead; a moisture meter beside it, with a sound dry place for comparison: structure.moisture", "";
    SIGNS = "structure.signs", "what is seen of the transom", "transom and well, outside and inside, engine tilted up",
        "rock the engine by its lower unit, look at bolts, washers, corners, cap and tabbing: any of weeping_bolts, washers_sunk_in, cracks_at_cutout, cracks_at_bracket, stains_or_rust_streaks, flexes_by_hand, tabbing_let_go, gap_at_cap, paint_lines_moved; [] where nothing is seen", "";
    HELD = "structure.sides", "how the hull's sides and bottom hold the transom", "inside, along the transom's edges, as far as hand and mirror reach",
        "tap along the tabbing or the welds and pry at their edges: built_in, bonded, or loose where any of it has let go; the same for structure.bottom", "";
    RAN = "ran", "how she has run with the engines that come off", "hour meter and the owner's papers",
        "years and hours, and what the transom shows of them: ran: (years: 12, hours: 900, signs: none)", "";
    SPLASH_WELL = "transom.splash_well", "depth of the splash-well", "inside, at the transom",
        "from the transom's top down its inside to the floor of the well: floor(\"12 in\"); none where there is no well", "1/4 in";
    UPPER_HOLES = "transom.upper_holes", "upper bolt holes below the top", "outside, at the upper bolts",
        "from the transom's top down to the centres of the upper bolts", "1/16 in";
    HOLES = "transom.holes", "existing bolt holes", "outside and inside of the transom",
        "each hole's distance from the centreline and from the transom's top, and its diameter; filled: true where it is plugged and glassed over", "1/16 in";
    WELL_LENGTH = "well.length", "length of the motorwell", "inside, on the centreline",
        "from the outside of the transom's top, level, forward to the top of the well's forward wall", "1/4 in";
    WELL_RIM = "well.rim_above", "rim of the motorwell above the transom's top", "inside, at the well's forward wall",
        "straightedge level from the rim aft over the transom; down from it to the transom's top; negative where the rim lies lower", "1/4 in";
    WATERLINE = "waterline", "waterline at the transom, at rest", "outside, on the centreline, afloat",
        "usual gear aboard, nobody aft; from the transom's top along it down to the water", "1/2 in";
    TRAILER = "trailer", "whether she travels on a trailer", "on the trailer, hitched up",
        "none, or on(keel_above_ground: \"24 in\"): from the road up to the bottom of the hull at the transom", "1/2 in";
    TRAILER_HEIGHT = "trailer.keel_above_ground", "height of the hull over the road", "on the trailer, hitched up, at the transom",
        "from the road up to the bottom of the hull at the transom", "1/2 in";
    ENGINE_POWER = "engines_on[].described.power", "rated power of the engine", "its plate or mounting sheet",
        "power at the propeller shaft", "";
    ENGINE_WEIGHT = "engines_on[].described.running_weight", "weight of the engine as it hangs", "mounting sheet, or a scale",
        "with fluids and propeller; on a crane scale where there is one", "5 lb";
    OLD_ENGINES = "engines_off", "engines that come off", "transom, engine plates",
        "class or description, place and weight of each", "";
    NEW_ENGINES = "engines_on", "engines that go on", "the offer, or the engines themselves",
        "class or description, place and weight of each", "";
    PROPELLERS = "engines_on[].propellers", "hand of each propeller", "on the propeller or its papers",
        "seen from astern, going ahead: right turns clockwise", "";
    PROPELLER = "engines_on[].propeller", "propeller", "on its hub, or its papers",
        "blades, and the two numbers on the hub: diameter, then pitch: propeller: (blades: 3, diameter: \"15-1/2 in\", pitch: \"17 in\")", "";
    SHAFT = "engines_on[].shaft", "shaft length", "engine, or the offer",
        "from the bracket's rest straight down to the anti-ventilation plate; the trade names it after the transom height", "1/4 in";
    HOLES_UP = "engines_on[].holes_up", "hole row in which the engine hangs", "engine bracket",
        "0 with the bracket's rest on the transom's top, one more for each hole up", "";
    SETBACK = "engines_on[].setback", "setback", "between transom and bracket face",
        "from the transom's face to the face on which the engine hangs, square to it", "1/8 in";
    DROP = "engines_on[].drop", "drop of the bracket's top", "behind the transom",
        "straightedge level from the transom's top aft over the bracket; plumb down from it to the top of the bracket's face", "1/8 in";
    BRACKET_BOTTOM = "engines_on[].bracket.bottom", "height of the bracket's lowest point", "behind the transom",
        "straightedge along the bottom out past the transom; up to the bracket's lowest point", "1/4 in";
    BRACKET_VOLUME = "engines_on[].bracket.described.buoyant_volume", "volume of the bracket's closed box", "its plate or papers",
        "as its maker gives it, or its outside length by width by height", "";
    BRACKET_RATING = "engines_on[].bracket.described", "the bracket's rated power, weight and count", "its plate or papers",
        "as its maker gives them", "";
    ENGINE_HOLE_ROWS = "engines_on[].described.hole_rows", "rows of holes in the engine's bracket", "mounting sheet, or the engine's bracket",
        "count the rows of the upper bolts", "";
    ENGINE_THICKNESS = "engines_on[].described.transom_thickness", "transom thickness that the engine takes", "mounting sheet",
        "from and to", "";
    ENGINE_ANGLE = "engines_on[].described.transom_angle", "transom angle that the engine is laid out for", "mounting sheet",
        "the angle at which its trim range is stated", "";
    ENGINE_TRIM = "engines_on[].described.trim", "the engine's trim range", "mounting sheet",
        "in (under) and out, at that transom angle", "";
    ENGINE_CENTRES = "engines_on[].described.centre_distance", "least distance between centres of two such engines", "mounting sheet",
        "for parallel steering over the full range", "";
    ENGINE_SWEEP = "engines_on[].described.powerhead.clearance_each_way", "clearance of the powerhead at full lock", "mounting sheet",
        "from the engine's centreline to the farthest point each way at full lock", "1/2 in";
    ENGINE_CENTRE = "engines_on[].described.centre_aft", "the engine's centre of gravity", "mounting sheet",
        "aft of the mounting face and above the bracket's rest, engine down", "1 in";
    ITEM_PLACE = "goes_on[].forward", "where it stands", "on the boat",
        "its centre forward of the transom and above the bottom", "2 in";
    ENGINE_SWING = "engines_on[].sheet", "the engine's tilt, steering and powerhead", "mounting sheet",
        "full_tilt, steering, transom_angle, width, height, forward_at_full_tilt, height_at_full_tilt; an engine described in place needs its trim, propeller_diameter and plate_to_propeller_shaft too", "1/4 in";
    BOLTS = "engines_on[].bolts", "size and grade of the mounting bolts", "bolt heads outside, nuts inside the transom",
        "thread size with a gauge or a known nut, the grade as the head is marked: bolts: (size: \"1/2-13\", grade: \"A4-70\"); before the engines hang, the bolts that they shall get", "";
    WASHERS = "engines_on[].bolts.washer", "washers or plate under the nuts", "nuts inside the transom",
        "outside diameter and thickness of the washers, washer: \"2 in\", washer_thickness: \"0.1 in\"; or the plate's size, thickness and material: backing_plate", "1/16 in";
    BOLT_TORQUE = "engines_on[].bolts.torque", "torque of the mounting bolts", "nuts inside the transom",
        "a torque wrench, the nut just moving; before the engines hang, the torque that they shall get", "2 lbf·ft";
    INSERTS = "engines_on[].bolts.inserts", "what fills the core at the bolts", "a bolt hole, one bolt drawn",
        "one of none, sleeves, solid (wood or laminate let in), by what the hole's wall shows", "";
    ITEM_WEIGHT = "goes_on[].weight", "weight of what goes on or comes off with the engines", "a scale, or its papers",
        "everything of that name together", "1 lb";
    RIG_HELM = "rigging.steering.helm", "the hydraulic helm", "at the helm, plate on the pump",
        "what a turn displaces, and at what pressure it lets go; or a class of the catalog", "";
    RIG_WHEEL = "rigging.steering.wheel", "diameter of the wheel", "at the helm", "across its rim", "1/2 in";
    RIG_CYLINDER = "rigging.steering.cylinder", "the steering cylinder", "plate on the cylinder, or its papers",
        "bore, rod, stroke, whether its rod comes out at both ends, power and speed that it is rated for; or a class of the catalog", "1/16 in";
    RIG_STEERING_LINES = "rigging.steering.lines", "the hydraulic lines", "helm to stern, and the print on the hose",
        "length one way, inside, rated pressure; whether they were bled till the wheel stands", "1 ft";
    RIG_STEERING_CABLE = "rigging.steering.cable", "the steering cable", "helm to stern, and the mark on the cable",
        "marked length, legs from corner to corner with the bends between them, power and speed that it is rated for; free play: how far the wheel turns before the engine does", "1 in";
    RIG_TIE_BAR = "rigging.steering.tie_bar", "length of the tie bar", "between the engines' steering arms",
        "pin to pin, engines ahead; the arm from the steering axis to its pin", "1/16 in";
    RIG_ACTUATOR = "rigging.steering.actuator", "the electric actuator", "its papers, and the wire's run",
        "greatest current, least voltage, length of its wire one way, and the wire", "";
    RIG_LEVERS = "rigging.controls.levers", "how the levers reach the engines", "at the helm, and the offer",
        "levers: one of cables, electronic, tiller; engines_take: what the new engines take", "";
    RIG_CONTROL_CABLES = "rigging.controls.cables", "the control cables", "lever to engine, and the mark on the cable",
        "marked length, legs from corner to corner with the bends between them, age", "1 in";
    RIG_CUT_OFF = "rigging.controls.cut_off", "engine cut-off switch and its link", "at the helm, or on the tiller",
        "one of none, switch_alone, with_link", "";
    RIG_START_IN_GEAR = "rigging.controls.starts_in_gear", "whether an engine starts in gear", "at the helm, engine tilted clear and nobody near the propeller",
        "lever in gear, turn the key for a moment: true where it cranks", "";
    RIG_GAUGES = "rigging.controls.gauges", "gauges, and what they understand", "at the helm, and the engine's papers",
        "each that stays: analogue, digital or both; engines_speak: what the new engines tell", "";
    RIG_TUBES = "rigging.tubes", "what passes through the rigging tube", "at both ends of the tube",
        "its inside, its sharpest bend, and the diameter of all that passes, ends and plugs with it", "1/16 in";
    RIG_KEPT = "rigging.kept", "what of the old rigging stays", "helm, well and bilge",
        "what comes off, in comes_off with its part; what stays, with its age", "";
    RIG_NETWORK = "rigging.network", "the instruments' backbone", "along its run",
        "cable, length end to end, terminators, where power enters", "1 ft";
    RIG_DEVICES = "rigging.network.devices", "load of the network's devices", "plate on each device",
        "its load equivalents (50 mA each), where it joins the backbone, and the drop's length", "1 ft";
    RIG_GATEWAY = "rigging.network.engines_reach_it", "whether the engines reach the network", "the engine's papers",
        "by themselves, or through a gateway each", "";
    RIG_FUEL_LINES = "rigging.fuel.lines", "the fuel lines", "tank to engine",
        "length, elbows, barbed ends and valves; how many engines each feeds", "6 in";
    RIG_FUEL_HOSE = "rigging.fuel.lines[].hose", "the fuel hose", "print on the hose",
        "inside, whether it is for gasoline and fire tested; or a class of the catalog", "";
    RIG_FUEL_LIFT = "rigging.fuel.lines[].lift", "lift from the tank's bottom to the engine's pump", "tank and engine, boat level",
        "plumb from the pick-up's end up to the pump; negative where the tank stands higher", "1 in";
    RIG_FUEL_HEAT = "rigging.fuel.temperature", "temperature of the fuel on the hottest day", "thermometer in the tank, or the local papers",
        "in summer, after a day in the sun", "5 °F";
    RIG_VENT_FILL = "rigging.fuel.vent", "vent and fill hoses", "print on the hoses, at the deck fitting", "the inside of both", "";
    RIG_BATTERIES = "rigging.electrical.batteries", "the starting batteries", "plate on the battery",
        "cold cranking current, what it is for, how many engines it starts", "";
    RIG_COLDEST = "rigging.electrical.coldest", "coldest that she is started in", "the owner, or the local papers", "the morning of the coldest trip", "5 °F";
    RIG_BATTERY_CABLE = "rigging.electrical.batteries[].cable", "battery cable", "battery to starter, and the print on it",
        "gauge, and length one way", "6 in";
    RIG_STARTER = "engines_on[].described.starting", "starter's current", "engine's sheet", "the current, or the cold cranking current that the manual asks for", "";
    RIG_CIRCUITS = "rigging.electrical.circuits", "wires and what they carry", "battery to device, and the print on the wire",
        "gauge, length one way, current; whether safety hangs on it", "6 in";
    RIG_FUSES = "rigging.electrical.circuits[].fuse", "the fuses", "at the battery, and the print on the fuse",
        "rating, and how far along the wire from the battery it sits", "1 in";
    RIG_DAY = "rigging.electrical.cruising", "a day's current", "the owner, and plates on what draws current",
        "hours a day at cruise and at idle; each load's current and hours", "";
    RIG_ALTERNATOR = "engines_on[].described.alternator", "alternator's current", "engine's sheet", "the rated current", "";
    RIG_PARALLEL = "rigging.electrical.parallel", "how the batteries are joined", "at the batteries", "one of none, switch, isolator", "";
    RIG_ANODES = "rigging.electrical.anodes", "anodes and bonding", "engines and bracket, out of the water",
        "anodes: none, worn or sound; bonded: whether engines and bracket are joined by wire", "";
    RIG_TRAILER = "rigging.towed.trailer", "the trailer's ratings", "plate on the trailer, print on tyres and coupling",
        "empty weight, rated weight, axles, tyres, coupling, brakes; or a class of the catalog", "";
    RIG_AXLE = "rigging.towed.axle", "axle and coupling", "beside the trailer, boat on it",
        "plumb from the transom and from the axle to the ground: axle forward of the transom, coupling forward of the axle", "1 in";
    RIG_BEHIND = "rigging.towed.behind", "how far the engines stand out behind the lamps", "behind the trailer, engines as towed",
        "from the lamps aft to the farthest point; lamps_seen: whether lamps and number plate are seen", "1 in";
}

impl Measurement {
    /// Its place in the walk round the boat.
    pub fn order(&self) -> usize {
        ALL.iter().position(|other| other == self).unwrap_or(ALL.len())
    }
}
