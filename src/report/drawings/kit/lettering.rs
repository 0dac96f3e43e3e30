//! Lettering: how much room words take, and where there is room for them.

/// Height of the letters, in units of the paper.
pub(in super::super) const FONT: f64 = 13.0;
/// Room between two pieces of lettering.
const GAP: f64 = 3.0;

/// Where words hang on their point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in super::super) enum Anchor {
    Start,
    Middle,
    End,
}

impl Anchor {
    pub(super) fn word(self) -> &'static str {
        match self {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        }
    }
}

/// Room that words take at this height of letters, rather too much than too little: the reader's system
/// chooses the typeface, so the widths are those of a wide one.
pub(in super::super) fn width(words: &str, font: f64) -> f64 {
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
pub(in super::super) struct Rect {
    pub left: f64,
    pub top: f64,
    pub right: f64,
    pub bottom: f64,
}

impl Rect {
    /// The box of words whose baseline's anchor point is here.
    pub(in super::super) fn of(
        words: &str,
        x: f64,
        baseline: f64,
        anchor: Anchor,
        font: f64,
    ) -> Rect {
        let wide = width(words, font);
        let left = match anchor {
            Anchor::Start => x,
            Anchor::Middle => x - wide / 2.0,
            Anchor::End => x - wide,
        };
        Rect {
            left,
            top: baseline - font * 0.95,
            right: left + wide,
            bottom: baseline + font * 0.28,
        }
    }

    pub(in super::super) fn overlaps(&self, other: &Rect) -> bool {
        self.left < other.right + GAP
            && other.left < self.right + GAP
            && self.top < other.bottom + GAP / 2.0
            && other.top < self.bottom + GAP / 2.0
    }

    pub(in super::super) fn moved(&self, x: f64, y: f64) -> Rect {
        Rect {
            left: self.left + x,
            top: self.top + y,
            right: self.right + x,
            bottom: self.bottom + y,
        }
    }
}

/// Moves words along a direction, to and fro and ever farther, until they stand free of what is there.
/// Returns how far they were moved.
pub(in super::super) fn settle(
    wanted: &Rect,
    along: (f64, f64),
    taken: &[Rect],
    within: &Rect,
) -> (f64, f64) {
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

/// Spreads boxes of equal height along a column, in the order given, each as near its wanted place as
/// the others let it. The first can go no higher than `top`. Returns their places.
pub(super) fn spread(wanted: &[f64], height: f64, top: f64, bottom: f64) -> Vec<f64> {
    let mut places: Vec<f64> = Vec::with_capacity(wanted.len());
    for place in wanted {
        let least = places.last().map_or(top, |last| last + height);
        places.push(place.max(least));
    }
    // What ran out at the bottom is pushed back up.
    let mut most = bottom;
    for place in places.iter_mut().rev() {
        *place = place.min(most);
        most = *place - height;
    }
    // A column that is too full runs on downwards rather than off the top.
    let mut least = top;
    for place in &mut places {
        *place = place.max(least);
        least = *place + height;
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn spread_boxes_keep_their_order_and_never_overlap(
            mut wanted in prop::collection::vec(-50.0f64..500.0, 0..20), height in 5.0f64..30.0,
        ) {
            wanted.sort_by(f64::total_cmp);
            let places = spread(&wanted, height, 0.0, 300.0);
            prop_assert!(places.windows(2).all(|pair| pair[1] - pair[0] >= height - 1e-9));
            prop_assert!(places.first().is_none_or(|first| *first >= -1e-9));
        }

        #[test]
        fn settled_words_stand_free(x in 0.0f64..200.0, y in 20.0f64..200.0) {
            let taken = [Rect { left: 40.0, top: 40.0, right: 160.0, bottom: 160.0 }];
            let within = Rect { left: -200.0, top: -200.0, right: 600.0, bottom: 600.0 };
            let wanted = Rect::of("28 in", x, y, Anchor::Middle, FONT);
            let (dx, dy) = settle(&wanted, (0.0, 1.0), &taken, &within);
            prop_assert!(!wanted.moved(dx, dy).overlaps(&taken[0]));
        }
    }
}
