//! What a transom shows of its work: the signs that are seen on it, and how long she ran with the old engines.

use serde::Deserialize;
use serde::de::IntoDeserializer;
use serde::de::value::Error;

/// Something seen on a transom that works.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Sign {
    WeepingBolts,
    WashersSunkIn,
    CracksAtCutout,
    CracksAtBracket,
    StainsOrRustStreaks,
    FlexesByHand,
    TabbingLetGo,
    GapAtCap,
    PaintLinesMoved,
}

impl Sign {
    /// Every sign.
    pub const ALL: [Sign; 9] = [
        Sign::WeepingBolts,
        Sign::WashersSunkIn,
        Sign::CracksAtCutout,
        Sign::CracksAtBracket,
        Sign::StainsOrRustStreaks,
        Sign::FlexesByHand,
        Sign::TabbingLetGo,
        Sign::GapAtCap,
        Sign::PaintLinesMoved,
    ];

    /// The sign in words.
    pub fn words(self) -> &'static str {
        match self {
            Sign::WeepingBolts => "bolts that weep",
            Sign::WashersSunkIn => "washers sunk in",
            Sign::CracksAtCutout => "cracks at the cutout's corners",
            Sign::CracksAtBracket => "cracks round the bracket",
            Sign::StainsOrRustStreaks => "stains or rust streaks",
            Sign::FlexesByHand => "it flexes by hand",
            Sign::TabbingLetGo => "tabbing that has let go",
            Sign::GapAtCap => "a gap under the cap",
            Sign::PaintLinesMoved => "paint or sealant lines that have moved",
        }
    }
}

/// The signs that were seen, each once; none where somebody looked and found none. Written `none`, or as a list.
#[derive(Clone, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(try_from = "Written")]
pub struct Signs(Vec<Sign>);

impl Signs {
    /// The signs, in one order.
    pub fn seen(&self) -> &[Sign] {
        &self.0
    }

    /// What the one tells or the other; `None` where neither was looked for.
    pub fn both(one: Option<&Signs>, other: Option<&Signs>) -> Option<Signs> {
        if one.is_none() && other.is_none() {
            return None;
        }
        Some(Signs::of(one.into_iter().chain(other).flat_map(Signs::seen).copied()))
    }

    fn of(signs: impl Iterator<Item = Sign>) -> Signs {
        let mut signs: Vec<Sign> = signs.collect();
        signs.sort();
        signs.dedup();
        Signs(signs)
    }
}

/// Signs as a person writes them: words without quotes.
#[derive(Deserialize)]
#[serde(untagged, expecting = "none, or a list of signs such as [weeping_bolts, cracks_at_cutout], expected")]
enum Written {
    Word(String),
    Words(Vec<String>),
}

/// The word for no sign at all.
const NONE: &str = "none";

impl TryFrom<Written> for Signs {
    type Error = Error;

    fn try_from(written: Written) -> Result<Self, Error> {
        let words = match written {
            Written::Word(word) if word == NONE => Vec::new(),
            Written::Word(word) => vec![word],
            Written::Words(words) => words,
        };
        let read = |word: &String| Sign::deserialize(IntoDeserializer::<Error>::into_deserializer(word.as_str()));
        Ok(Signs::of(words.iter().map(read).collect::<Result<Vec<_>, _>>()?.into_iter()))
    }
}

/// How she has run with the engines that come off.
#[derive(Clone, Debug, Default, PartialEq, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Ran {
    /// For how many years.
    pub years: Option<f64>,
    /// For how many hours.
    pub hours: Option<f64>,
    /// What the transom showed of it.
    pub signs: Option<Signs>,
}
