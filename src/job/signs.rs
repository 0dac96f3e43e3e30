//! What a transom shows of its work: the signs that are seen on it, and how long she ran with the old engines.

use serde::Deserialize;
use serde::de::IntoDeserializer;
use serde::de::value::Error;
use uom::si::f64::Ratio;

use super::bounds;
use crate::quantity::Reading;
use crate::reading::*;

words! {
    /// Something seen on a transom that works.
    pub enum Sign [PartialOrd, Ord] {
        WeepingBolts = "weeping_bolts", "bolts that weep";
        WashersSunkIn = "washers_sunk_in", "washers sunk in";
        CracksAtCutout = "cracks_at_cutout", "cracks at the cutout's corners";
        CracksAtBracket = "cracks_at_bracket", "cracks round the bracket";
        StainsOrRustStreaks = "stains_or_rust_streaks", "stains or rust streaks";
        FlexesByHand = "flexes_by_hand", "it flexes by hand";
        TabbingLetGo = "tabbing_let_go", "tabbing that has let go";
        GapAtCap = "gap_at_cap", "a gap under the cap";
        PaintLinesMoved = "paint_lines_moved", "paint or sealant lines that have moved";
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

impl Part for Signs {
    type Held = Self;

    fn held(&self) -> Option<&Self::Held> {
        Some(self)
    }

    fn form() -> Form {
        Form::List(Box::new(Sign::form()))
    }

    fn visit<'v>(&'v self, at: &Place<'_>, see: &mut See<'_, 'v>) {
        self.0.visit(at, see);
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

things! {
    /// How she has run with the engines that come off.
    pub struct Ran {
        /// For how many years.
        years: Option<f64> = called("years").within(bounds::YEARS),
        /// For how many hours.
        hours: Option<f64> = called("hours").within(bounds::HOURS),
        /// Compression of her weakest cylinder over that of a new engine.
        compression: Option<Reading<Ratio>> = called("compression of the weakest cylinder, of a new one's")
            .within(bounds::COMPRESSION)
            .taken(Stop::Engine, "old engines, plugs out", "a compression gauge at each cylinder, over what the maker gives")
            .closely(percent(3.0)).spot(130, 124),
        /// What the transom showed of it.
        signs: Option<Signs> = called("what the transom shows of it"),
    }
}
