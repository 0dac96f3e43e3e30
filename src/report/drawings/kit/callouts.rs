//! Callouts: words in a column beside the drawing with leaders to what they name, or, where there is no
//! room for a column, letters that key them to words below.

use maud::{Markup, html};

use super::dimension::Callout;
use super::lettering::{FONT, broken, spread};
use super::marks::lettered;
use super::paper::{EDGE, ELBOW, LINE, MOST_LINES, Paper, WIDEST_COLUMN};
use super::view::View;
use super::{Anchor, Rect, ink, number, width};

/// Height of a callout of so many lines: lines of one callout stand closer than two callouts.
fn high(lines: usize) -> f64 {
    LINE + (lines.max(1) - 1) as f64 * (LINE - 2.0)
}

/// The callouts of a drawing on one paper, from the top down.
pub(super) struct Column {
    /// Each callout, with its words in lines as wide as the column may be.
    callouts: Vec<(Callout, Vec<String>)>,
    keyed: bool,
}

impl Column {
    /// Broken for the paper; keyed on a narrow one, and where their words would leave the drawing too little.
    pub(super) fn of(callouts: &[Callout], paper: &Paper) -> Column {
        let mut order: Vec<Callout> = callouts.to_vec();
        order.sort_by(|a, b| b.point.y.total_cmp(&a.point.y));
        let room = WIDEST_COLUMN * paper.wide;
        let callouts: Vec<(Callout, Vec<String>)> = order
            .into_iter()
            .map(|callout| {
                let lines = broken(&callout.words, room);
                (callout, lines)
            })
            .collect();
        let too_long = callouts.iter().any(|(_, lines)| lines.len() > MOST_LINES || widest(lines) > room);
        Column { callouts, keyed: paper.keyed || too_long }
    }

    /// Width of the column with its leaders; `least` is what its words take at least.
    pub(super) fn width(&self, least: f64) -> f64 {
        let words = self.callouts.iter().map(|(_, lines)| widest(lines)).fold(least, f64::max);
        match (self.keyed, words > 0.0) {
            (_, false) => 0.0,
            (true, true) => width("a", FONT) + ELBOW,
            (false, true) => words + ELBOW,
        }
    }

    /// The marks, with the left edge of the column at `left`.
    pub(super) fn marks(&self, left: f64, view: &View, taken: &mut Vec<Rect>) -> Vec<Markup> {
        let shown: Vec<Vec<String>> = self
            .callouts
            .iter()
            .enumerate()
            .map(|(i, (_, lines))| if self.keyed { vec![letter(i)] } else { lines.clone() })
            .collect();
        let wanted: Vec<(f64, f64)> = self
            .callouts
            .iter()
            .zip(&shown)
            .map(|((callout, _), lines)| (view.y(callout.point.y), high(lines.len())))
            .collect();
        let bottom = view.bottom().max(view.top + 40.0);
        let places = spread(&wanted, EDGE + LINE / 2.0, bottom + LINE / 2.0);
        let mut marks = Vec::new();
        for (((callout, _), lines), y) in self.callouts.iter().zip(&shown).zip(places) {
            let (px, py) = view.point(callout.point);
            let bend = (left - ELBOW).max(px);
            let first = y - (lines.len() - 1) as f64 * (LINE - 2.0) / 2.0 + FONT * 0.36;
            let baseline = |i: usize| first + i as f64 * (LINE - 2.0);
            for (i, line) in lines.iter().enumerate() {
                taken.push(Rect::of(line, left, baseline(i), Anchor::Start, FONT));
            }
            marks.push(html! {
                polyline points=(format!("{},{} {},{} {},{}", number(px), number(py), number(bend), number(py), number(left - 3.0), number(y)))
                    fill="none" stroke=(ink::SOFT) stroke-width="0.8" {}
                circle cx=(number(px)) cy=(number(py)) r="1.8" fill=(ink::SOFT) {}
                @for (i, line) in lines.iter().enumerate() {
                    (lettered(left, baseline(i), Anchor::Start, ink::INK, line))
                }
            });
        }
        marks
    }

    /// The words below the drawing, where letters stand for them.
    pub(super) fn key(&self, wide: f64) -> Vec<String> {
        if !self.keyed {
            return Vec::new();
        }
        let room = wide - 2.0 * EDGE - 4.0;
        self.callouts
            .iter()
            .enumerate()
            .flat_map(|(i, (callout, _))| broken(&format!("{}: {}", letter(i), callout.words), room))
            .collect()
    }
}

fn widest(lines: &[String]) -> f64 {
    lines.iter().map(|line| width(line, FONT)).fold(0.0, f64::max)
}

/// The letter that keys a callout.
fn letter(index: usize) -> String {
    let letters = "abcdefghijklmnopqrstuvwxyz";
    letters.chars().nth(index).map_or_else(|| (index + 1).to_string(), |letter| letter.to_string())
}
