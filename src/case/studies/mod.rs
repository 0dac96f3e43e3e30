//! Questions that a job puts outright: a swing, a panel, a bolt group, a planing prism, a propeller. They are answered with
//! figures, and are no findings of a boat.

mod bolts;
mod panel;
mod planing;
mod propeller;
mod swing;

use uom::si::f64::{MassDensity, Ratio};

use super::Case;
use crate::job::Water as JobWater;
use crate::physics::weight::FRESH_WATER_LB_FT3;
use crate::quantity::{Dimensioned, Measure, Style, Text, pounds_per_cubic_foot};
use crate::working::{Part, Sheet, Table};
use crate::written::Slip;

pub use bolts::BoltAnswer;
pub use panel::PanelAnswer;

/// A figure of an answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Its key, with its unit, for another program.
    pub key: &'static str,
    /// What it is.
    pub meaning: &'static str,
    /// For showing.
    pub shown: Measure,
    /// In the unit of its key, unrounded.
    pub value: f64,
}

/// The answer to a question put outright.
#[derive(Clone, Debug, PartialEq)]
pub struct Answered {
    /// The field of the job that asks.
    pub name: &'static str,
    /// What a working calls it.
    pub title: &'static str,
    /// What comes out, figure by figure; none where the method does not tell it.
    pub figures: Vec<Figure>,
    /// Whether all is answered that such a question can be.
    pub in_full: bool,
    /// Why nothing, or not all, is answered; and what else must be said.
    pub notes: Vec<Text>,
    /// By which method, and where it is from.
    pub source: &'static str,
    /// More than a figure each.
    pub tables: Vec<Table>,
    /// How they came about.
    pub sheet: Sheet,
}

impl<'a> Case<'a> {
    /// The answer to a question of a panel, where the job holds one.
    pub fn panel_study(&self) -> Option<Result<&PanelAnswer, &Slip>> {
        let answer = self.begun.panel_study.get_or_init(|| {
            let (study, layers) = self.rig.structure.panel_study.as_ref()?;
            Some(PanelAnswer::of(study, layers))
        });
        answer.as_ref().map(Result::as_ref)
    }

    /// The answer to a question of a bolt group, where the job holds one.
    pub fn bolt_study(&self) -> Option<Result<BoltAnswer, Slip>> {
        BoltAnswer::of(self.rig).transpose()
    }

    /// The answers to all questions that the job puts outright.
    pub fn studies(&self) -> Vec<Answered> {
        let swing = self.swing().study.as_ref().and_then(|study| study.as_ref().ok()).map(swing::answered);
        swing.into_iter().chain(self.strength_studies()).chain(self.running_studies()).collect()
    }

    /// Those of strength.
    fn strength_studies(&self) -> impl Iterator<Item = Answered> {
        let panel = self.panel_study().and_then(Result::ok).map(PanelAnswer::answered);
        let bolts = self.bolt_study().and_then(Result::ok).map(BoltAnswer::answered);
        panel.into_iter().chain(bolts)
    }

    /// Those of running.
    fn running_studies(&self) -> impl Iterator<Item = Answered> {
        let planing = self.rig.job.planing_study.as_ref().map(planing::answered);
        let propeller = self.rig.job.propeller_study.as_ref().and_then(|study| propeller::answered(study).ok());
        planing.into_iter().chain(propeller)
    }

    /// What those questions ask and cannot be answered.
    pub fn study_faults(&self) -> Vec<Slip> {
        let panel = self.panel_study().and_then(Result::err).cloned();
        let bolts = self.bolt_study().and_then(Result::err);
        let propeller = self.rig.job.propeller_study.as_ref().and_then(|study| propeller::answered(study).err());
        [panel, bolts, propeller].into_iter().flatten().collect()
    }

    /// The working of the questions of strength.
    pub(super) fn strength_study_parts(&self) -> Vec<Part> {
        self.strength_studies().map(Answered::part).collect()
    }

    /// The working of the questions of running.
    pub(super) fn running_study_parts(&self) -> Vec<Part> {
        self.running_studies().map(Answered::part).collect()
    }
}

impl Answered {
    /// Its figures, one below the other.
    pub fn answer(&self) -> Table {
        let rows = self.figures.iter().map(|figure| vec![Text::from(figure.meaning), Text::from(figure.shown)]);
        Table::new("answer", &["", ""], rows.collect())
    }

    /// What is told besides its figures and notes.
    pub fn working(self) -> Part {
        Part { title: format!("working of {}", self.title), tables: self.tables, sheet: self.sheet }
    }

    /// All of it as a part of a working: figures first.
    pub fn part(self) -> Part {
        let answer = self.answer();
        let mut sheet = Sheet::default();
        for note in self.notes {
            sheet.remark(note);
        }
        sheet.append(self.sheet);
        Part { title: self.title.to_owned(), tables: std::iter::once(answer).chain(self.tables).collect(), sheet }
    }
}

/// Salt water, as everywhere else. Source: Coast Guard boatbuilder's handbook: 64 lb/ft³.
const SALT_WATER_LB_FT3: f64 = 64.0;

fn density(water: Option<&JobWater>) -> MassDensity {
    match water {
        Some(JobWater::Fresh) => pounds_per_cubic_foot(FRESH_WATER_LB_FT3),
        Some(JobWater::Density(density)) => density.value,
        Some(JobWater::Salt) | None => pounds_per_cubic_foot(SALT_WATER_LB_FT3),
    }
}

fn figure<Q: Dimensioned>(key: &'static str, meaning: &'static str, value: Q, number: f64) -> Figure {
    Figure { key, meaning, shown: Measure::styled(value, Style::Digits), value: number }
}

/// A factor of safety, told in two digits.
fn factor(key: &'static str, meaning: &'static str, value: f64) -> Figure {
    Figure { key, meaning, shown: Measure::styled(Ratio::from_si(value), Style::Factor), value }
}

fn si<Q: Dimensioned>(key: &'static str, meaning: &'static str, value: Q) -> Figure {
    figure(key, meaning, value, value.si())
}
