//! `weight/bracket-rating`

use super::overweight;
use crate::case::Case;
use crate::physics::power::{self, Against};
use crate::physics::weight;
use crate::quantity::{Measure, Text, say};
use crate::rig::Rig;
use crate::rig::{Bracket, Group, Missing};
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Term};
use uom::si::f64::Mass;

rule! {
    /// The engines on each bracket against its maker's rating: their number, their power together
    /// and their weight together.
    ///
    /// **Why.** A bracket that lets go takes the engines with it, and leaves holes below the
    /// waterline.
    ///
    /// **Limit.** At most the engines, the power and the weight that its maker gives.
    ///
    /// **Source.** The bracket maker's rating.
    ///
    /// **When it warns.** It fails above any of the three: choose a bracket of a higher rating, and
    /// see that the transom behind it is rated too.
    BRACKET_RATING = Weight "weight/bracket-rating", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    rig.after.ask()?;
    let hung: Vec<(&Group, &Bracket)> =
        rig.after.groups.iter().filter_map(|group| Some((group, group.bracket.as_ref()?))).collect();
    if hung.is_empty() {
        return Ok(Finding::not_applicable(Text::from("The engines hang on the transom itself.")));
    }
    let mut worst: Option<Finding> = None;
    for (group, bracket) in hung {
        let finding = match one(rig, group, bracket) {
            Ok(finding) => finding,
            Err(missing) => Finding::unmeasured(missing),
        };
        finding.keep_worse(&mut worst);
    }
    Ok(worst.unwrap_or_else(|| Finding::unmeasured(vec![rig.after.missing()])))
}

fn one(rig: &Rig, group: &Group, bracket: &Bracket) -> Result<Finding, Vec<Missing>> {
    let weights = group.engine_weights();
    let missing: Vec<Missing> = [bracket.rated_weight.ask().err(), bracket.rated_power.ask().err()]
        .into_iter()
        .flatten()
        .chain(group.engines.iter().filter_map(|engine| engine.power.ask().err()))
        .chain(weights.as_ref().err().into_iter().flatten().cloned())
        .collect();
    let (Some(rated_weight), Some(rated_power), Ok(weights), true) =
        (bracket.rated_weight.reading(), bracket.rated_power.reading(), weights, missing.is_empty())
    else {
        return Err(missing);
    };
    let mut sheet = Sheet::default();
    let total = weight::total(&mut sheet, "W", "weight of the engines", &weights);
    let power = group
        .engines
        .iter()
        .filter_map(|engine| Some(Term::new(engine.label.clone(), engine.power.reading()?.value)))
        .reduce(|a, b| a + b)
        .map(|sum| sheet.set("P", "power of the engines", sum));
    let name = bracket.name.as_str();
    let count = group.engines.len();
    let rated_count = bracket.spec.engines.map_or(count, usize::from);
    let weight_limit = Measure::of(rated_weight.value);
    let power_limit = Measure::of(rated_power.value);
    let written: Vec<_> =
        group.engines.iter().filter_map(|one| Some((one.label.clone(), one.power.reading()?))).collect();
    let over = matches!(power::against(&mut Sheet::default(), &written, rated_power), Against::Over);
    let asked = Asked {
        engines: (count > rated_count).then_some(count),
        power: power.as_ref().filter(|_| over).map(Term::measure),
        weight: overweight(total.value(), rated_weight.value).then(|| mend::pounds_up(total.value())),
    };
    if count > rated_count {
        return Ok(Finding::new(Verdict::Fail, say!("{} engines on `{}`, which takes {}.", count, name, rated_count))
            .remedy(mend::change(asked.words(mend::choose(rig), " a bracket for {}."), asked.like(group, bracket)))
            .working(sheet));
    }
    if let Some(power) = power.filter(|_| over) {
        return Ok(Finding::new(
            Verdict::Fail,
            say!("{} on `{}`, which is rated for {}.", power.measure(), name, power_limit),
        )
        .remedy(mend::change(
            asked.words(mend::choose(rig), " a bracket rated for {} or more."),
            asked.like(group, bracket),
        ))
        .against(power.measure(), Limit::AtMost(power_limit))
        .working(sheet));
    }
    let found = total.measure();
    let finding = if overweight(total.value(), rated_weight.value) {
        Finding::new(Verdict::Fail, say!("{} on `{}`, which is rated for {}.", found, name, weight_limit)).remedy(
            mend::change(
                asked.words(mend::choose(rig), " a bracket rated for {} or more."),
                asked.like(group, bracket),
            ),
        )
    } else {
        Finding::new(
            Verdict::Pass,
            say!("{} on `{}`, rated for {}; number and power are within its rating too.", found, name, weight_limit),
        )
    };
    Ok(finding.against(found, Limit::AtMost(weight_limit)).working(sheet))
}

/// What a bracket lacks of what hangs on it.
struct Asked {
    engines: Option<usize>,
    power: Option<Measure>,
    weight: Option<Mass>,
}

impl Asked {
    /// All of it, in a sentence.
    fn words(&self, choose: &str, template: &str) -> Text {
        let engines = self.engines.map(|count| say!("{} engines", count));
        let measures = [self.power, self.weight.map(Measure::of)].into_iter().flatten().map(Text::from);
        let all = Text::join(engines.into_iter().chain(measures), " and ");
        let (before, behind) = template.split_once("{}").unwrap_or((template, ""));
        Text::from(choose).then(Text::from(before)).then(all).then(Text::from(behind))
    }

    /// A bracket like this one but for that.
    fn like(&self, group: &Group, bracket: &Bracket) -> [Change; 2] {
        let engines = self.engines.map(|count| ("engines", count.to_string()));
        let power = self.power.map(|power| ("rated_power", mend::quoted(power)));
        let weight = self.weight.map(|weight| ("rated_weight", mend::quoted(Measure::of(weight))));
        let fields: Vec<_> = [engines, power, weight].into_iter().flatten().collect();
        Change::like(&format!("{}.bracket", group.entry), &bracket.spec, &fields)
    }
}
