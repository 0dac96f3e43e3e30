//! The schematic of fuel and current: a line each for every fuel line, battery cable and circuit, with values on it.
//! Symbols after IEC 60617 where it has one (battery, fuse), else our own.

use maud::{Markup, html};

use super::kit::{Anchor, Drawing, FONT, broken, ink, lettered, number, width};
use crate::case::Case;
use crate::case::rigging::{current, fuel};
use crate::job::Liquid;
use crate::job::rigging::{Chosen, Electrical, FuelRig};
use crate::quantity::{Measure, Style, Units};

const WIDE: f64 = 660.0;
/// From a row's top to the middle of its symbols, to its first words, and from line to line of them.
const MIDDLE: f64 = 22.0;
const WORDS: f64 = 50.0;
const LINE: f64 = 15.0;
/// Between rows, and between words side by side.
const BETWEEN: f64 = 16.0;
const APART: f64 = 12.0;
/// More rows than these are not read on one sheet.
const MOST_ROWS: usize = 14;

/// What a symbol stands for.
#[derive(Clone, Copy)]
enum Symbol {
    Tank,
    Valve,
    Hose,
    Filter,
    Bulb,
    Engine,
    Battery,
    Fuse,
    Wire,
    Load,
}

struct Node {
    symbol: Symbol,
    words: String,
    value: String,
}

fn node(symbol: Symbol, words: &str, value: String) -> Node {
    Node { symbol, words: words.to_owned(), value }
}

/// The schematic, where fuel or current was told.
pub(super) fn drawing(case: &Case, units: Units) -> Option<Drawing> {
    let rigging = &case.rig.job.rigging;
    let mut rows: Vec<Vec<Node>> = Vec::new();
    if let Some(rig) = &rigging.fuel {
        rows.extend(fuel_rows(case, rig, units));
    }
    if let Some(electrical) = &rigging.electrical {
        rows.extend(battery_rows(case, electrical, units));
        rows.extend(circuit_rows(electrical, units));
    }
    let left_out = rows.len().saturating_sub(MOST_ROWS);
    rows.truncate(MOST_ROWS);
    if rows.is_empty() {
        return None;
    }
    let mut notes =
        vec!["A schematic, not to scale: what is connected to what, with what flows and what is lost.".to_owned()];
    if left_out > 0 {
        notes.push(format!("{left_out} further lines are not drawn; the tables have them."));
    }
    let description = format!(
        "{} lines: fuel from the tank to the engines, current from the batteries to starters and loads.",
        rows.len()
    );
    let mut high = 0.0;
    let placed: Vec<(f64, Vec<Placed>)> = rows
        .into_iter()
        .map(|row| {
            let (top, row) = (high, placed(row));
            let lines = row.iter().map(|placed| placed.words.len() + placed.value.len()).max().unwrap_or(0);
            high += WORDS + LINE * lines as f64 + BETWEEN - LINE;
            (top, row)
        })
        .collect();
    Some(Drawing {
        name: "rigging",
        title: "Fuel and current".to_owned(),
        description,
        notes,
        size: (WIDE, high),
        scale: None,
        narrow: None,
        body: html! { @for (top, row) in &placed { (line(row, *top)) } },
    })
}

fn fuel_rows(case: &Case, rig: &FuelRig, units: Units) -> Vec<Vec<Node>> {
    let tanks = case.rig.job.weights.tanks.iter().filter(|tank| tank.holds == Liquid::Fuel);
    let tank =
        tanks.filter_map(|tank| tank.capacity.as_ref()).map(|capacity| Measure::of(capacity.value).show(units)).next();
    let fed = rig.lines.iter().enumerate().filter_map(|(i, line)| fuel::fed(case, line, i).ok());
    fed.map(|fed| {
        let (line, hydraulic) = (fed.line, fed.hydraulic);
        let mut row = vec![node(Symbol::Tank, "tank", tank.clone().unwrap_or_default())];
        if line.anti_siphon == Some(true) {
            row.push(node(Symbol::Valve, "anti-siphon", String::new()));
        }
        let length = Measure::styled(hydraulic.length, Style::FeetInches).show(units);
        row.push(node(Symbol::Hose, &format!("hose {}", Measure::tape(hydraulic.bore).show(units)), length));
        if line.separator == Some(true) || line.filter.is_some() {
            row.push(node(Symbol::Filter, "separator", String::new()));
        }
        if line.bulb == Some(true) {
            row.push(node(Symbol::Bulb, "bulb", String::new()));
        }
        let value = format!(
            "{} at {}",
            Measure::styled(fed.flow.value(), Style::Round).show(units),
            Measure::styled(fed.suction.value(), Style::Suction).show(units)
        );
        let engines = match line.engines.unwrap_or(1) {
            1 => format!("engine on {}", fed.name),
            many => format!("{many} engines on {}", fed.name),
        };
        row.push(node(Symbol::Engine, &engines, value));
        row
    })
    .collect()
}

fn battery_rows(case: &Case, electrical: &Electrical, units: Units) -> Vec<Vec<Node>> {
    let wired = current::starting(electrical)
        .filter_map(|(i, entry)| Some((entry, current::starter_cable(case, entry, i).ok()?)));
    wired
        .map(|(entry, wired)| {
            let rated = entry.battery.spec().and_then(|battery| battery.cranking.as_ref());
            let wire = entry.cable.as_ref().map_or("wire", |cable| cable.wire.name("wire"));
            vec![
                node(
                    Symbol::Battery,
                    &wired.name,
                    rated.map_or(String::new(), |rated| Measure::of(rated.value).show(units)),
                ),
                node(Symbol::Wire, wire, Measure::styled(wired.length, Style::FeetInches).show(units)),
                node(Symbol::Engine, "starter", lost(&wired, units)),
            ]
        })
        .collect()
}

fn circuit_rows(electrical: &Electrical, units: Units) -> Vec<Vec<Node>> {
    let wired = electrical
        .circuits
        .iter()
        .enumerate()
        .filter_map(|(i, circuit)| Some((circuit, current::circuit(circuit, i).ok()?)));
    wired
        .map(|(circuit, wired)| {
            let mut row = vec![node(Symbol::Battery, "battery", String::new())];
            if let Some(rating) = circuit.fuse.spec().and_then(|fuse| fuse.rating.as_ref()) {
                row.push(node(Symbol::Fuse, "fuse", Measure::of(rating.value).show(units)));
            }
            row.push(node(
                Symbol::Wire,
                circuit.wire.name("wire"),
                Measure::styled(wired.length, Style::FeetInches).show(units),
            ));
            row.push(node(Symbol::Load, &wired.name, lost(&wired, units)));
            row
        })
        .collect()
}

/// `20 A, 0.45 V lost`
fn lost(wired: &current::Wired, units: Units) -> String {
    format!("{}, {} lost", Measure::of(wired.current).show(units), wired.drop.measure().show(units))
}

/// A symbol with its place along the row, and its words in lines that keep to its room.
struct Placed {
    symbol: Symbol,
    x: f64,
    words: Vec<String>,
    value: Vec<String>,
}

/// A row's symbols, each in the middle of an equal part of it.
fn placed(row: Vec<Node>) -> Vec<Placed> {
    let part = WIDE / row.len().max(1) as f64;
    let lines = |words: &str| -> Vec<String> {
        let all = if words.is_empty() { Vec::new() } else { broken(words, part - APART) };
        all.iter().map(|line| cut(line, part - APART)).collect()
    };
    let place = |(i, node): (usize, Node)| Placed {
        symbol: node.symbol,
        x: part * (i as f64 + 0.5),
        words: lines(&node.words),
        value: lines(&node.value),
    };
    row.into_iter().enumerate().map(place).collect()
}

/// One row: symbols on a line, words under each.
fn line(row: &[Placed], top: f64) -> Markup {
    let middle = top + MIDDLE;
    let ends = row.first().zip(row.last()).map(|(first, last)| (first.x, last.x));
    html! {
        @if let Some((from, to)) = ends {
            line x1=(number(from)) y1=(number(middle)) x2=(number(to)) y2=(number(middle)) stroke=(ink::INK) stroke-width="1.4" {}
        }
        @for placed in row {
            (symbol(placed.symbol, placed.x, middle))
            @for (i, (words, colour)) in placed.words.iter().map(|words| (words, ink::INK)).chain(placed.value.iter().map(|value| (value, ink::SOFT))).enumerate() {
                (lettered(placed.x, top + WORDS + LINE * i as f64, Anchor::Middle, colour, words))
            }
        }
    }
}

/// A word wider than its room ends where that does.
fn cut(words: &str, room: f64) -> String {
    if width(words, FONT) <= room {
        return words.to_owned();
    }
    let mut kept: String = words.to_owned();
    while !kept.is_empty() && width(&format!("{kept}…"), FONT) > room {
        kept.pop();
    }
    format!("{}…", kept.trim_end())
}

fn symbol(symbol: Symbol, x: f64, y: f64) -> Markup {
    let rect = |w: f64, h: f64, fill: &str| {
        html! {
            rect x=(number(x - w / 2.0)) y=(number(y - h / 2.0)) width=(number(w)) height=(number(h)) fill=(fill) stroke=(ink::INK) stroke-width="1.4" {}
        }
    };
    let stroke = |d: String| html! { path d=(d) fill="none" stroke=(ink::INK) stroke-width="1.4" {} };
    let at = |dx: f64, dy: f64| format!("{} {}", number(x + dx), number(y + dy));
    match symbol {
        Symbol::Tank => {
            html! { (rect(44.0, 26.0, ink::HULL)) (stroke(format!("M{}H{}", at(-22.0, -5.0), number(x + 22.0)))) }
        }
        Symbol::Valve => {
            html! { path d=(format!("M{}L{}V{}L{}Z", at(-11.0, -9.0), at(11.0, 9.0), number(y - 9.0), at(-11.0, 9.0))) fill=(ink::PAPER) stroke=(ink::INK) stroke-width="1.4" {} }
        }
        Symbol::Hose => {
            html! { line x1=(number(x - 22.0)) y1=(number(y)) x2=(number(x + 22.0)) y2=(number(y)) stroke=(ink::NEW) stroke-width="5" {} }
        }
        Symbol::Filter => {
            html! { path d=(format!("M{}L{}L{}L{}Z", at(0.0, -13.0), at(13.0, 0.0), at(0.0, 13.0), at(-13.0, 0.0))) fill=(ink::PAPER) stroke=(ink::INK) stroke-width="1.4" {} (stroke(format!("M{}V{}", at(0.0, -13.0), number(y + 13.0)))) }
        }
        Symbol::Bulb => {
            html! { ellipse cx=(number(x)) cy=(number(y)) rx="17" ry="9" fill=(ink::PAPER) stroke=(ink::INK) stroke-width="1.4" {} }
        }
        Symbol::Engine => {
            html! { rect x=(number(x - 17.0)) y=(number(y - 14.0)) width="34" height="28" rx="7" fill=(ink::ENGINE) stroke=(ink::NEW) stroke-width="1.8" {} }
        }
        // IEC 60617: the long stroke is the positive pole.
        Symbol::Battery => html! {
            rect x=(number(x - 4.0)) y=(number(y - 14.0)) width="8" height="28" fill=(ink::PAPER) stroke="none" {}
            (stroke(format!("M{}V{}M{}V{}", at(-4.0, -7.0), number(y + 7.0), at(4.0, -13.0), number(y + 13.0))))
        },
        // IEC 60617: a rectangle with the conductor through it.
        Symbol::Fuse => {
            html! { (rect(30.0, 11.0, ink::PAPER)) (stroke(format!("M{}H{}", at(-15.0, 0.0), number(x + 15.0)))) }
        }
        Symbol::Wire => {
            html! { line x1=(number(x - 22.0)) y1=(number(y)) x2=(number(x + 22.0)) y2=(number(y)) stroke=(ink::OLD) stroke-width="3" {} }
        }
        Symbol::Load => {
            html! { circle cx=(number(x)) cy=(number(y)) r="12" fill=(ink::PAPER) stroke=(ink::INK) stroke-width="1.4" {} }
        }
    }
}
