//! The measuring sheet's sketch: a boat from above, her stern from astern and from the side, with a
//! numbered place for each reading. A sketch, not to scale.

use maud::{Markup, html};

use super::kit::{Drawing, FONT, Rect, ink, number, settle, width};
use crate::reading::Declared;

const WIDE: f64 = 660.0;
const HIGH: f64 = 452.0;

/// Where on the sketch a reading is taken; nothing for what is read off papers.
fn spot(measurement: &Declared) -> Option<(f64, f64)> {
    measurement.spot.map(|(from_left, from_top)| (from_left.into(), from_top.into()))
}

/// Whether a reading has a place on the sketch.
pub(crate) fn is_placed(measurement: &Declared) -> bool {
    spot(measurement).is_some()
}

/// The sketch with the numbers of these readings at their places.
pub(crate) fn drawing(numbered: &[(usize, &Declared)]) -> Drawing {
    let mut spots: Vec<((f64, f64), Vec<usize>)> = Vec::new();
    for (number, measurement) in numbered {
        if let Some(place) = spot(measurement) {
            match spots.iter_mut().find(|(known, _)| *known == place) {
                Some((_, numbers)) => numbers.push(*number),
                None => spots.push((place, vec![*number])),
            }
        }
    }
    let mut taken = view_words_rects();
    let paper = Rect { left: 4.0, top: 4.0, right: WIDE - 4.0, bottom: HIGH - 4.0 };
    let badges: Vec<Markup> =
        spots.iter().map(|(place, numbers)| badge(*place, &ranges(numbers), &mut taken, &paper)).collect();
    Drawing {
        name: "places",
        title: "Where the readings are taken".to_owned(),
        description: "A boat from above, her stern from astern and from the side. Each number is the number of a reading in the list below.".to_owned(),
        notes: vec!["A sketch, not to scale. Numbers that are not on it are read off papers and plates.".to_owned()],
        size: (WIDE, HIGH),
        scale: None,
        narrow: None,
        body: html! { (sketch()) @for badge in &badges { (badge) } },
    }
}

/// `4`, `4–6`, `4, 9`.
fn ranges(numbers: &[usize]) -> String {
    let mut parts: Vec<(usize, usize)> = Vec::new();
    for number in numbers {
        match parts.last_mut() {
            Some((_, last)) if *last + 1 == *number => *last = *number,
            _ => parts.push((*number, *number)),
        }
    }
    let words: Vec<String> =
        parts.iter().map(|(from, to)| if from == to { from.to_string() } else { format!("{from}–{to}") }).collect();
    words.join(", ")
}

fn badge(place: (f64, f64), words: &str, taken: &mut Vec<Rect>, paper: &Rect) -> Markup {
    let (x, y) = place;
    let half = (width(words, FONT) / 2.0 + 6.0).max(11.0);
    let wanted = Rect { left: x - half, top: y - 11.0, right: x + half, bottom: y + 11.0 };
    // The shorter way, up and down or to the sides.
    let ways = [(0.0, 1.0), (1.0, 0.0), (0.7, 0.7), (0.7, -0.7)].map(|along| settle(&wanted, along, taken, paper));
    let (dx, dy) = ways
        .into_iter()
        .filter(|(dx, dy)| {
            let moved = wanted.moved(*dx, *dy);
            !taken.iter().any(|other| moved.overlaps(other))
        })
        .min_by(|a, b| a.0.hypot(a.1).total_cmp(&b.0.hypot(b.1)))
        .unwrap_or((0.0, 0.0));
    let at = wanted.moved(dx, dy);
    taken.push(at);
    html! {
        @if dx != 0.0 || dy != 0.0 {
            line x1=(number(x)) y1=(number(y)) x2=(number(x + dx)) y2=(number(y + dy)) stroke=(ink::INK) stroke-width="1" {}
            circle cx=(number(x)) cy=(number(y)) r="2" fill=(ink::INK) {}
        }
        rect x=(number(at.left)) y=(number(at.top)) width=(number(half * 2.0)) height="22" rx="11" fill=(ink::INK) {}
        text class="bare" x=(number(x + dx)) y=(number(y + dy + FONT * 0.36)) text-anchor="middle" fill=(ink::PAPER) font-weight="600" { (words) }
    }
}

/// What the views are called, and where it stands.
const VIEWS: [(&str, f64, f64); 5] = [
    ("from above", 8.0, 206.0),
    ("from astern, port on the left", 8.0, 446.0),
    ("from the side", 560.0, 446.0),
    ("bow", 600.0, 18.0),
    ("stern", 8.0, 18.0),
];

fn view_words_rects() -> Vec<Rect> {
    VIEWS
        .iter()
        .map(|(words, x, y)| Rect { left: *x, top: *y - FONT, right: *x + width(words, FONT), bottom: *y + 4.0 })
        .collect()
}

fn sketch() -> Markup {
    let line = |d: &str, stroke: &str, wide: &str, dashes: Option<&str>| {
        html! { path d=(d) fill="none" stroke=(stroke) stroke-width=(wide) stroke-dasharray=[dashes] {} }
    };
    html! {
        // From above, bow to the right.
        path d="M130 45H420C520 47 590 75 628 95C590 115 520 143 420 145H130Z" fill=(ink::HULL) stroke=(ink::INK) stroke-width="1.6" {}
        path d="M150 57H415C500 60 560 80 590 95C560 110 500 130 415 133H150Z" fill=(ink::PAPER) stroke=(ink::SOFT) stroke-width="1" {}
        path d="M130 70H168V120H130Z" fill=(ink::BRACKET) stroke=(ink::SOFT) stroke-width="1" {}
        path d="M320 75H345V115H320Z" fill=(ink::BRACKET) stroke=(ink::SOFT) stroke-width="1" {}
        path d="M52 78H112C122 82 128 88 130 95C128 102 122 108 112 112H52C44 104 44 86 52 78Z" fill=(ink::ENGINE) stroke=(ink::NEW) stroke-width="1.6" {}
        (line("M130 172H628M130 164V180M628 152V180", ink::SOFT, "1", None))
        (line("M402 45V145M232 45V145", ink::SOFT, "0.8", Some("4 3")))
        (line("M30 95H640", ink::SOFT, "0.8", Some("9 3 2 3")))
        // From astern.
        path d="M30 250L30 350L60 372L180 410L300 372L330 350V250H262V282H98V250Z" fill=(ink::HULL) stroke=(ink::INK) stroke-width="1.6" {}
        (line("M180 226V428", ink::SOFT, "0.8", Some("9 3 2 3")))
        (line("M98 268H262M92 282V274M98 262V276M262 262V276", ink::SOFT, "0.8", None))
        @for (x, y) in [(150.0, 298.0), (210.0, 298.0), (157.0, 336.0), (203.0, 336.0)] {
            circle cx=(number(x)) cy=(number(y)) r="4" fill=(ink::PAPER) stroke=(ink::INK) stroke-width="1.2" {}
        }
        // From the side, bow to the right: bottom and transom, well, bracket, engine.
        path d="M540 412L506 276H652V412Z" fill=(ink::HULL) stroke="none" {}
        (line("M652 412H540L506 276H520L534 334H622", ink::INK, "1.6", None))
        path d="M507 280L468 280L482 336L521 336Z" fill=(ink::BRACKET) stroke=(ink::SOFT) stroke-width="1" {}
        path d="M444 292H458L478 372H452Z" fill=(ink::ENGINE) stroke=(ink::SOFT) stroke-width="1" {}
        path d="M448 372H482L486 392L470 398L474 426L462 424L446 396L424 392Z" fill=(ink::ENGINE) stroke=(ink::SOFT) stroke-width="1" {}
        path d="M466 268L472 330H460L446 276Z" fill=(ink::ENGINE) stroke=(ink::SOFT) stroke-width="1" {}
        path d="M452 278L437 218Q434 212 428 212H396Q389 212 390 220L402 266Q404 272 410 274L440 296Z" fill=(ink::ENGINE) stroke=(ink::NEW) stroke-width="1.6" {}
        (line("M420 372H492", ink::NEW, "2.6", None))
        (line("M421 366V420", ink::SOFT, "2.6", None))
        @for (words, x, y) in VIEWS {
            text x=(number(x)) y=(number(y)) fill=(ink::SOFT) { (words) }
        }
    }
}
