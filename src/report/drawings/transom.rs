//! The transom from astern: engines, centre distances, bolt holes old and new, deadrise, what a
//! powerhead sweeps at full lock, cutout and bracket.

use super::kit::{Board, Drawing, Layout, Pen, Point, Shape, Side, at, ink};
use super::stern::{Hanging, Stern, hanging, mm};
use crate::case::Case;
use crate::physics::fit;
use crate::quantity::{Measure, Units, inches};

/// Sides of the transom above the cutout are drawn so much higher, in millimetres: nobody measured
/// them, and a broken line says so.
const SIDES_MM: f64 = 130.0;
/// Outline of an engine below its cowling, in millimetres: only indicated.
const LEG_MM: f64 = 75.0;
const PLATE_MM: f64 = 150.0;
/// Powerhead of an engine whose class gives no size, in millimetres: only indicated.
const HEAD_WIDE_MM: f64 = 450.0;
const HEAD_HIGH_MM: f64 = 700.0;

/// The drawing, where the transom's height is known.
pub(super) fn drawing(case: &Case, units: Units) -> Option<Drawing> {
    let stern = Stern::of(case.rig)?;
    let half = stern.half.or(stern.chine).or(stern.cutout)?;
    let engines = hanging(case, &stern, &case.rig.after);
    let mut board = Board::default();
    hull(&mut board, &stern, half);
    brackets(&mut board, &engines);
    for engine in &engines {
        outline(&mut board, engine);
    }
    holes(&mut board, case, &stern, &engines);
    dimensions(&mut board, case, &stern, &engines, units);
    let mut notes = vec![
        "Port is on the left. Heights are taken along the transom. Full lines are readings; thin and broken lines only indicate what nobody measured.".to_owned(),
    ];
    if !case.rig.transom.holes.is_empty() {
        notes.push("Crossed circles: holes that are there already. Open circles: holes of the standard pattern for the engines going on.".to_owned());
    }
    notes.extend(rows(&engines));
    let description = describe(&stern, &engines, units);
    board.finish(
        Layout {
            name: "transom",
            title: "The transom from astern".to_owned(),
            description,
            notes,
        },
        units,
    )
}

/// In which row the engines are drawn, where nobody said so.
pub(super) fn rows(engines: &[Hanging]) -> Vec<String> {
    let mut said: Vec<String> = Vec::new();
    for engine in engines.iter().filter(|engine| !engine.row_given) {
        let line = format!("The {} is drawn {}.", engine.engine.label, engine.row);
        said.push(line);
    }
    said
}

fn describe(stern: &Stern, engines: &[Hanging], units: Units) -> String {
    let length = |value: f64| Measure::tape(inches(value / 25.4)).show(units);
    let mut words = format!(
        "Seen from astern: a transom {} high at the centreline",
        length(stern.height)
    );
    for engine in engines {
        words.push_str(&format!(
            "; {} {}",
            engine.engine.label,
            if engine.y == 0.0 {
                "on the centreline".to_owned()
            } else {
                format!(
                    "{} to {}",
                    length(engine.y.abs()),
                    if engine.y > 0.0 { "port" } else { "starboard" }
                )
            }
        ));
    }
    words + "."
}

/// The outline: bottom to the chines, sides, top with its cutout. Seen from astern, port is left.
fn hull(board: &mut Board, stern: &Stern, half: f64) {
    let chine = stern.chine.unwrap_or(half).min(half);
    let low = stern.rise(chine);
    let top = stern.height;
    let sides = top + SIDES_MM;
    let cutout = stern.cutout.map_or(half, |cutout| cutout.min(half));
    let open = stern.cutout.is_some();
    let upper = if open { sides } else { top };
    let mut outline: Vec<Point> = vec![
        at(0.0, 0.0),
        at(chine, low),
        at(half, (low + upper) / 2.0),
        at(half, upper),
    ];
    if open {
        outline.extend([
            at(cutout, sides),
            at(cutout, top),
            at(-cutout, top),
            at(-cutout, sides),
        ]);
    }
    outline.extend([
        at(-half, upper),
        at(-half, (low + upper) / 2.0),
        at(-chine, low),
    ]);
    board.area(outline, Pen::HIDDEN.filled(ink::HULL));
    let bottom = if stern.deadrise_given {
        Pen::EDGE
    } else {
        Pen::HIDDEN
    };
    board.line(vec![at(-chine, low), at(0.0, 0.0), at(chine, low)], bottom);
    board.line(vec![at(-cutout, top), at(cutout, top)], Pen::EDGE);
    board.line(vec![at(0.0, -60.0), at(0.0, sides + 40.0)], Pen::CENTRE);
}

fn outline(board: &mut Board, hanging: &Hanging) {
    let x = -hanging.y;
    let head = hanging.engine.spec.powerhead.clone().unwrap_or_default();
    let given = head.width.is_some() && head.height.is_some();
    let wide = head.width.map_or(HEAD_WIDE_MM, |width| mm(width.value)) / 2.0;
    let high = head.height.map_or(HEAD_HIGH_MM, |height| mm(height.value));
    let pen = if given { Pen::NEW } else { Pen::HIDDEN };
    let top = hanging.rest + high;
    let round = wide * 0.35;
    let cowl = vec![
        at(x - wide, hanging.rest + 40.0),
        at(x - wide, top - round),
        at(x - wide + round, top),
        at(x + wide - round, top),
        at(x + wide, top - round),
        at(x + wide, hanging.rest + 40.0),
        at(x + LEG_MM, hanging.rest - 60.0),
        at(x - LEG_MM, hanging.rest - 60.0),
    ];
    let Some(plate) = hanging.plate else {
        board.area(cowl, pen.filled(ink::ENGINE));
        return;
    };
    let hub = hanging
        .engine
        .spec
        .plate_to_propeller_shaft
        .as_ref()
        .map_or(plate - 200.0, |down| plate - mm(down.value));
    board.area(
        vec![
            at(x - LEG_MM, hanging.rest),
            at(x + LEG_MM, hanging.rest),
            at(x + LEG_MM * 0.8, plate),
            at(x + 30.0, hub),
            at(x - 30.0, hub),
            at(x - LEG_MM * 0.8, plate),
        ],
        Pen::INDICATED,
    );
    board.area(cowl, pen.filled(ink::ENGINE));
    board.line(
        vec![at(x - PLATE_MM, plate), at(x + PLATE_MM, plate)],
        Pen::NEW,
    );
    if let Some(propeller) = &hanging.engine.spec.propeller_diameter {
        board.draw(Shape::Circle(
            at(x, hub),
            mm(propeller.to.value) / 2.0,
            Pen::HIDDEN,
        ));
    }
    board.line(vec![at(x, hub), at(x, top + 30.0)], Pen::CENTRE);
    board.words(
        at(x, hanging.rest + high * 0.62),
        (0.0, 1.0),
        ink::NEW,
        hanging.engine.label.replace(' ', "\n"),
    );
}

/// A bracket's face: its top is a reading, its outline is not.
fn brackets(board: &mut Board, engines: &[Hanging]) {
    let mut done: Vec<*const crate::rig::Group> = Vec::new();
    for hanging in engines
        .iter()
        .filter(|engine| engine.group.bracket.is_some())
    {
        let group: *const crate::rig::Group = hanging.group;
        if done.contains(&group) {
            continue;
        }
        done.push(group);
        let mates: Vec<f64> = engines
            .iter()
            .filter(|engine| std::ptr::eq(engine.group, hanging.group))
            .map(|engine| -engine.y)
            .collect();
        let reach = mm(inches(fit::UPPER_PAIR_IN / 2.0)) + 40.0;
        let left = mates.iter().copied().fold(f64::INFINITY, f64::min) - reach;
        let right = mates.iter().copied().fold(f64::NEG_INFINITY, f64::max) + reach;
        let low = hanging.top - 400.0;
        board.area(
            vec![
                at(left, hanging.top),
                at(right, hanging.top),
                at(right, low),
                at(left, low),
            ],
            Pen::HIDDEN.filled(ink::BRACKET),
        );
        board.line(
            vec![at(left, hanging.top), at(right, hanging.top)],
            Pen::EDGE,
        );
    }
}

fn holes(board: &mut Board, case: &Case, stern: &Stern, engines: &[Hanging]) {
    for hanging in engines.iter().filter(|engine| !engine.group.is_lifted()) {
        for hole in fit::pattern(hanging.engine.y) {
            board.draw(Shape::Hole {
                centre: at(-mm(hole.y), hanging.top - mm(hole.below)),
                diameter: mm(inches(fit::BOLT_DIAMETER_IN)),
                pen: Pen::NEW,
                crossed: false,
            });
        }
    }
    for hole in &case.rig.transom.holes {
        let diameter = hole
            .diameter
            .as_ref()
            .map_or(mm(inches(fit::BOLT_DIAMETER_IN)), |d| mm(d.value));
        board.draw(Shape::Hole {
            centre: at(-mm(hole.at.y()), stern.height - mm(hole.below.value)),
            diameter,
            pen: Pen::OLD,
            crossed: true,
        });
    }
}

fn dimensions(board: &mut Board, case: &Case, stern: &Stern, engines: &[Hanging], units: Units) {
    let tape = |length| Measure::tape(length).show(units);
    let rig = case.rig;
    if let Some(width) = rig.boat.transom_width.reading() {
        let half = mm(width.value) / 2.0;
        let y = stern.height;
        board.dimension(
            "transom-width",
            Side::Below,
            at(-half, y),
            at(half, y),
            tape(width.value),
        );
    }
    if let Some(chine) = rig.boat.chine_beam.reading() {
        let (half, y) = (mm(chine.value) / 2.0, stern.rise(mm(chine.value) / 2.0));
        let words = format!("{} between chines", tape(chine.value));
        board.dimension("chine-beam", Side::Below, at(-half, y), at(half, y), words);
    }
    if let Some(cutout) = rig.transom.cutout_width.reading() {
        let half = mm(cutout.value) / 2.0;
        let words = format!("cutout {}", tape(cutout.value));
        board.dimension(
            "cutout-width",
            Side::Below,
            at(-half, stern.height),
            at(half, stern.height),
            words,
        );
    }
    for pair in engines.windows(2) {
        let low = pair[0].plate.unwrap_or(pair[0].rest);
        board.dimension(
            "centre-distance",
            Side::Below,
            at(-pair[0].y, low),
            at(-pair[1].y, pair[1].plate.unwrap_or(pair[1].rest)),
            format!(
                "{} between centres",
                tape(pair[0].engine.y - pair[1].engine.y)
            ),
        );
    }
    for hanging in engines {
        let Some(reach) = hanging.engine.clearance_each_way.reading() else {
            continue;
        };
        let head = hanging.engine.spec.powerhead.as_ref();
        let high = head
            .and_then(|head| head.height.as_ref())
            .map_or(HEAD_HIGH_MM, |height| mm(height.value));
        let (x, y, k) = (-hanging.y, hanging.rest + high * 0.85, mm(reach.value));
        board.line(
            vec![at(x - k, y), at(x - k, y - high * 0.5)],
            Pen::NEW.dashed("3 3"),
        );
        board.line(
            vec![at(x + k, y), at(x + k, y - high * 0.5)],
            Pen::NEW.dashed("3 3"),
        );
        board.dimension(
            "sweep",
            Side::Above,
            at(x - k, y),
            at(x + k, y),
            format!("sweeps {}", tape(reach.value * 2.0)),
        );
    }
    let reach = stern.half.or(stern.chine).unwrap_or(0.0);
    if let Some(height) = rig.transom.height.reading() {
        board.dimension(
            "transom-height",
            Side::Left,
            at(-stern.cutout.unwrap_or(0.0).min(reach), stern.height),
            at(0.0, 0.0),
            tape(height.value),
        );
    }
    if let Some(deadrise) = rig.boat.deadrise.reading() {
        let far = reach * 0.62;
        board.callout(
            at(far, stern.rise(far)),
            format!("deadrise {}", Measure::of(deadrise.value).show(units)),
        );
    }
    if let Some(hanging) = engines.last() {
        if let Some(plate) = hanging.plate {
            board.callout(at(-hanging.y + PLATE_MM, plate), "plate".to_owned());
        }
        if let Some(bracket) = &hanging.group.bracket {
            board.callout(
                at(-hanging.y + 120.0, hanging.top),
                format!("top of {}", short(&bracket.name)),
            );
        }
    }
    board.callout(
        at(stern.cutout.unwrap_or(reach).min(reach), stern.height),
        "transom's top".to_owned(),
    );
}

/// A bracket's name without the words behind the comma.
pub(super) fn short(name: &str) -> String {
    let first = name.split(',').next().unwrap_or(name);
    if first.chars().count() > 24 {
        "the bracket".to_owned()
    } else {
        first.to_owned()
    }
}
