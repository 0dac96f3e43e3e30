//! What the yard has to hang on her, and all ways in which it could go together.

use uom::si::f64::Length;

use super::hang::{Hang, MARK, own_distance};
use super::yard::stays;
use super::{Prices, Yard};
use crate::job::{self, BracketKind, BracketSpec, Cycle, EngineGroup, EngineSpec, Steering};
use crate::quantity::{Dimensioned, inches};

/// Least distance between centres of two engines where no sheet tells it. Common practice, no source.
const APART_IN: f64 = 26.0;
/// Distances that are tried beyond the least. Common practice, no source: builders leave two to six inches.
const WIDER_IN: [f64; 4] = [0.0, 2.0, 4.0, 6.0];

/// What is tried.
#[derive(Clone, Copy, Default)]
pub struct Offer<'a> {
    /// The yard's price list: only what stands in it is tried.
    pub prices: Option<&'a Prices>,
    /// Only classes whose name holds this.
    pub only: Option<&'a str>,
}

impl Offer<'_> {
    /// Every way in which engines could hang, in a stable order: class by class as the catalog has them, shaft, one or two, what
    /// they hang on, distance, hole row. Older two-strokes come off in a repower; they are tried where a price list has them.
    pub fn hangs(&self, yard: &Yard) -> Vec<Hang> {
        let mut all = Vec::new();
        for entry in &yard.catalog.engines {
            if self.tries(&entry.name, &entry.spec) {
                self.of_class(yard, &entry.name, &entry.spec, &mut all);
            }
        }
        all.retain(|hang| is_free(yard, hang));
        all
    }

    fn tries(&self, name: &str, spec: &EngineSpec) -> bool {
        let wanted = self.only.is_none_or(|only| name.contains(only));
        wanted
            && match self.prices {
                Some(prices) => prices.has(name),
                None => spec.cycle != Some(Cycle::TwoStroke),
            }
    }

    fn of_class(&self, yard: &Yard, class: &str, spec: &EngineSpec, all: &mut Vec<Hang>) {
        let shafts: Vec<Option<Length>> = match spec.shafts.as_slice() {
            [] | [_] => vec![None],
            several => several.iter().map(|shaft| Some(shaft.name.value)).collect(),
        };
        let rows: Vec<Option<u8>> = spec.hole_rows.map_or(vec![None], |rows| (0..rows).map(Some).collect());
        for shaft in shafts {
            let named = shaft.or_else(|| Some(spec.shafts.first()?.name.value));
            let Some(engine_price) = self.price(class, named) else { continue };
            for count in 1..=2 {
                let apart = if count == 1 { vec![0.0] } else { distances(yard, spec) };
                for bracket in self.brackets(yard, count) {
                    let Some(bracket_price) = bracket.map_or(Some(None), |name| self.price(name, None)) else {
                        continue;
                    };
                    let price = engine_price.map(|price| price * count as f64 + bracket_price.unwrap_or(0.0));
                    for apart in &apart {
                        all.extend(rows.iter().map(|row| Hang {
                            class: class.to_owned(),
                            power: spec.power.as_ref().map(|power| power.value),
                            shaft,
                            count,
                            apart: *apart,
                            bracket: bracket.map(str::to_owned),
                            row: *row,
                            price,
                        }));
                    }
                }
            }
        }
    }

    /// Nothing where the list does not have it; a price, or none where there is no list.
    fn price(&self, name: &str, shaft: Option<Length>) -> Option<Option<f64>> {
        match self.prices {
            Some(prices) => prices.of(name, shaft).map(Some),
            None => Some(None),
        }
    }

    /// On the transom itself, and on each bracket that is made for as many engines. With a price list, on those that it has and on
    /// the one that the job names.
    fn brackets<'y>(&self, yard: &Yard<'y>, count: usize) -> Vec<Option<&'y str>> {
        let takes = |spec: &BracketSpec| {
            spec.kind != Some(BracketKind::Auxiliary)
                && spec.engines.is_none_or(|engines| usize::from(engines) == count)
        };
        let offered = |name: &str| self.prices.is_none_or(|prices| prices.has(name));
        let entries = yard.catalog.brackets.iter();
        let made = entries.filter(|entry| takes(&entry.spec) && offered(&entry.name)).map(|entry| entry.name.as_str());
        std::iter::once(None).chain(made.map(Some)).collect()
    }
}

/// Whether no auxiliary, which stays, stands where these would hang.
fn is_free(yard: &Yard, hang: &Hang) -> bool {
    let stays = stays(yard.job);
    let others = yard.job.engines_on.iter().filter(|group| stays(group));
    let taken: Vec<Length> = others.flat_map(EngineGroup::places).map(|at| at.y()).collect();
    hang.at().iter().all(|at| taken.iter().all(|y| (at.y() - *y).abs().si() >= job::ONE_PLACE.si()))
}

/// How far apart two are tried, inches: as near as their sheet lets them, a little more, and as the job has its own. None where
/// she is steered by a tiller, or the transom is narrower than that.
fn distances(yard: &Yard, spec: &EngineSpec) -> Vec<f64> {
    if yard.job.steering == Some(Steering::Tiller) {
        return Vec::new();
    }
    let inch = inches(1.0).si();
    let least = spec.centre_distance.as_ref().map_or(APART_IN, |least| least.value.si() / inch);
    let least = (least / MARK - 1e-6).ceil() * MARK;
    let width = yard.job.boat.transom_width.as_ref().map_or(f64::INFINITY, |width| width.value.si() / inch);
    let mut all: Vec<f64> = WIDER_IN.iter().map(|wider| least + wider).chain(own_distance(yard)).collect();
    all.retain(|apart| *apart >= least && *apart <= width);
    all.sort_by(f64::total_cmp);
    all.dedup();
    all
}
