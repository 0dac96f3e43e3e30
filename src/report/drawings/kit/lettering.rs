//! Lettering: how much room words take, and where there is room for them.

/// Style of all lettering: a rim keeps lines off the words.
pub(crate) const LETTERING: &str = "text:not(.bare){stroke:#fff;stroke-width:4px;stroke-linejoin:round;paint-order:stroke}text:not([fill]){fill:#1d2733}";
/// Height of the letters, in units of the paper.
pub const FONT: f64 = 13.0;
/// Room between two pieces of lettering.
const GAP: f64 = 3.0;

/// Where words hang on their point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// By their beginning.
    Start,
    /// By their middle.
    Middle,
    /// By their end.
    End,
}

impl Anchor {
    /// As SVG says it; nothing for the one that it takes by itself.
    pub(super) fn word(self) -> Option<&'static str> {
        match self {
            Anchor::Start => None,
            Anchor::Middle => Some("middle"),
            Anchor::End => Some("end"),
        }
    }
}

/// Words in lines no wider than the room. A number stays on one line with its unit.
pub fn broken(words: &str, room: f64) -> Vec<String> {
    let mut kept: Vec<String> = Vec::new();
    for word in words.split(' ') {
        match kept.last_mut() {
            Some(number) if number.ends_with(|c: char| c.is_ascii_digit()) && word.starts_with(char::is_alphabetic) => {
                *number = format!("{number} {word}");
            }
            _ => kept.push(word.to_owned()),
        }
    }
    let mut lines: Vec<String> = Vec::new();
    for words in kept {
        match lines.last_mut() {
            Some(line) if width(&format!("{line} {words}"), FONT) <= room => {
                *line = format!("{line} {words}");
            }
            _ => lines.push(words),
        }
    }
    lines
}

/// Room that words take at this height of letters, rather too much than too little: the reader's system
/// chooses the typeface, so the widths are those of a wide one.
pub fn width(words: &str, font: f64) -> f64 {
    let em: f64 = words
        .chars()
        .map(|c| match c {
            'i' | 'j' | 'l' | '\'' | '|' => 0.30,
            ' ' | '.' | ',' | ':' | ';' | '(' | ')' | '/' | '-' | 'f' | 't' | 'r' => 0.41,
            'm' | 'w' | 'M' | 'W' | '%' | '@' => 0.98,
            c if c.is_ascii_digit() => 0.64,
            c if c.is_ascii_uppercase() => 0.72,
            c if c.is_ascii() => 0.62,
            _ => 0.80,
        })
        .sum();
    em * font
}

/// A box on the paper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rect {
    /// Its left side.
    pub left: f64,
    /// Its upper side, which is the lesser: the paper counts downwards.
    pub top: f64,
    /// Its right side.
    pub right: f64,
    /// Its lower side.
    pub bottom: f64,
}

impl Rect {
    /// The box of words whose baseline's anchor point is here.
    pub fn of(words: &str, x: f64, baseline: f64, anchor: Anchor, font: f64) -> Rect {
        let wide = width(words, font);
        let left = match anchor {
            Anchor::Start => x,
            Anchor::Middle => x - wide / 2.0,
            Anchor::End => x - wide,
        };
        Rect { left, top: baseline - font * 0.95, right: left + wide, bottom: baseline + font * 0.28 }
    }

    /// Whether the two are nearer than two pieces of lettering may stand.
    pub fn overlaps(&self, other: &Rect) -> bool {
        self.left < other.right + GAP
            && other.left < self.right + GAP
            && self.top < other.bottom + GAP / 2.0
            && other.top < self.bottom + GAP / 2.0
    }

    /// The same box so far to the right, and down.
    pub fn moved(&self, x: f64, y: f64) -> Rect {
        Rect { left: self.left + x, top: self.top + y, right: self.right + x, bottom: self.bottom + y }
    }
}

/// Moves words along a direction, to and fro and ever farther, until they stand free of what is there.
/// Returns how far they were moved.
pub fn settle(wanted: &Rect, along: (f64, f64), taken: &[Rect], within: &Rect) -> (f64, f64) {
    let fits = |rect: &Rect| {
        rect.left >= within.left
            && rect.right <= within.right
            && rect.top >= within.top
            && rect.bottom <= within.bottom
            && !taken.iter().any(|other| rect.overlaps(other))
    };
    let step = 2.0;
    (0..400)
        .flat_map(|i| {
            let far = f64::from(i) * step;
            [far, -far]
        })
        .map(|far| (along.0 * far, along.1 * far))
        .find(|(x, y)| fits(&wanted.moved(*x, *y)))
        .unwrap_or((0.0, 0.0))
}

/// Spreads boxes along a column, in the order given, each as near its wanted place as the others let it.
/// A box is the wanted place of its middle and its height; the first can go no higher than `top`. Returns
/// the places of their middles.
pub fn spread(wanted: &[(f64, f64)], top: f64, bottom: f64) -> Vec<f64> {
    // Pushed down from the top; what ran out at the bottom is pushed back up; a column that is too full
    // runs on downwards rather than off the top.
    let down = |places: &[f64]| -> Vec<f64> {
        let mut least = top;
        places
            .iter()
            .zip(wanted)
            .map(|(place, (_, high))| {
                let place = place.max(least + high / 2.0);
                least = place + high / 2.0;
                place
            })
            .collect()
    };
    let places: Vec<f64> = wanted.iter().map(|(place, _)| *place).collect();
    let mut places = down(&places);
    let mut most = bottom;
    for (place, (_, high)) in places.iter_mut().zip(wanted).rev() {
        *place = place.min(most - high / 2.0);
        most = *place - high / 2.0;
    }
    down(&places)
}
