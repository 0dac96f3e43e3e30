//! A sentence whose numbers wait for the reader's choice of units.

use super::{Measure, Units};

/// Words and measures in order.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Text(Vec<Piece>);

/// A part of a [`Text`].
#[derive(Clone, Debug, PartialEq)]
pub enum Piece {
    /// Words as they stand.
    Words(String),
    /// A number to be shown in the units that are asked for.
    Measure(Measure),
}

impl Text {
    /// The template with each `{}` replaced by a piece; pieces left over follow at the end.
    pub fn fill(template: &str, pieces: Vec<Piece>) -> Self {
        let mut text = Text::default();
        let mut pieces = pieces.into_iter();
        for (i, words) in template.split("{}").enumerate() {
            if i > 0 {
                text.0.extend(pieces.next());
            }
            if !words.is_empty() {
                text.0.push(Piece::Words(words.to_owned()));
            }
        }
        text.0.extend(pieces);
        text
    }

    /// Its words and measures in order.
    pub fn pieces(&self) -> &[Piece] {
        &self.0
    }

    /// The sentence in these units.
    pub fn show(&self, units: Units) -> String {
        self.0
            .iter()
            .map(|piece| match piece {
                Piece::Words(words) => words.clone(),
                Piece::Measure(measure) => measure.show(units),
            })
            .collect()
    }

    /// The measure, where the text is one and nothing else.
    pub fn as_measure(&self) -> Option<Measure> {
        match self.0.as_slice() {
            [Piece::Measure(measure)] => Some(*measure),
            _ => None,
        }
    }

    /// The text with another behind it.
    #[must_use]
    pub fn then(mut self, mut more: Text) -> Self {
        self.0.append(&mut more.0);
        self
    }

    /// Several texts with a separator between.
    pub fn join(texts: impl IntoIterator<Item = Text>, separator: &str) -> Self {
        let mut joined = Text::default();
        for text in texts {
            if !joined.0.is_empty() {
                joined.0.push(Piece::Words(separator.to_owned()));
            }
            joined = joined.then(text);
        }
        joined
    }
}

impl From<&str> for Text {
    fn from(words: &str) -> Self {
        Text(vec![Piece::Words(words.to_owned())])
    }
}

impl From<Measure> for Text {
    fn from(measure: Measure) -> Self {
        Text(vec![Piece::Measure(measure)])
    }
}

impl From<Measure> for Piece {
    fn from(measure: Measure) -> Self {
        Piece::Measure(measure)
    }
}

impl From<Text> for Vec<Piece> {
    fn from(text: Text) -> Self {
        text.0
    }
}

impl From<&str> for Piece {
    fn from(words: &str) -> Self {
        Piece::Words(words.to_owned())
    }
}

impl From<String> for Piece {
    fn from(words: String) -> Self {
        Piece::Words(words)
    }
}

impl From<&String> for Piece {
    fn from(words: &String) -> Self {
        Piece::Words(words.clone())
    }
}

impl From<usize> for Piece {
    fn from(count: usize) -> Self {
        Piece::Words(count.to_string())
    }
}

impl From<u32> for Piece {
    fn from(count: u32) -> Self {
        Piece::Words(count.to_string())
    }
}

/// The words with a capital at their beginning.
pub(crate) fn capitalised(words: &str) -> String {
    let mut chars = words.chars();
    chars.next().map(|first| first.to_uppercase().chain(chars).collect()).unwrap_or_default()
}

/// What has no name of its own in a list: `second circuit` for the one at 1.
pub(crate) fn nth(of: &str, index: usize) -> String {
    const WORDS: [&str; 10] =
        ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"];
    WORDS.get(index).map_or_else(|| format!("{of} {}", index + 1), |word| format!("{word} {of}"))
}

/// A [`Text`] from a template and whatever goes into its `{}`: measures, words, counts.
macro_rules! say {
    ($template:expr $(, $piece:expr)* $(,)?) => {
        $crate::quantity::Text::fill($template, vec![$($crate::quantity::Piece::from($piece)),*])
    };
}
pub(crate) use say;
