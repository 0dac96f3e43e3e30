//! `strength/bracket-moment`

use super::entry;
use crate::rules::mend::{self, Change, Mend, Remedy};
use uom::si::f64::{Acceleration, Angle, Length, Mass};

use crate::case::Case;
use crate::case::strength::show::times;
use crate::case::strength::{Footing, Laden, Strength};
use crate::quantity::{Dimensioned, Measure, Moment, Text, inches, say, standard_gravity};
use crate::rig::Rig;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Table, Term, cos};

rule! {
    /// The moment of the engines' weight about the transom, against what the bracket's rating by weight
    /// stands for.
    ///
    /// **Why.** A bracket is rated in pounds, for engines whose weight sits where it usually does. An
    /// engine that hangs farther aft turns it harder at the same weight.
    ///
    /// **Limit.** At most the rated weight at the bracket's own setback and an engine's usual centre, 12
    /// in aft of its mounting face.
    ///
    /// **Source.** The bracket maker's rating; common practice, no source (the usual centre).
    ///
    /// **When it warns.** Ask the bracket's maker with the engine's weight and centre, or choose the
    /// next rating up.
    BRACKET_MOMENT = Strength "strength/bracket-moment", judge;
}

/// Centre of an engine aft of its mounting face that a rating by weight has in mind. Common practice, no source.
const USUAL_CENTRE_IN: f64 = 12.0;

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    rig.after.ask()?;
    if rig.after.groups.iter().all(|group| group.bracket.is_none()) {
        return Ok(Finding::not_applicable(Text::from("The engines hang on the transom itself.")));
    }
    let strength = case.strength()?;
    Ok(strength
        .after
        .footings
        .iter()
        .filter(|footing| footing.on_bracket)
        .map(|footing| one(rig, footing, strength))
        .min_by(|a, b| a.0.total_cmp(&b.0))
        .map_or_else(|| Finding::unmeasured(vec![rig.after.missing()]), |(_, finding)| finding))
}

fn gravity() -> Term<Acceleration> {
    Term::new("g", standard_gravity())
}

fn one(rig: &Rig, footing: &Footing, strength: &Strength) -> (f64, Finding) {
    let group = rig.after.groups.get(footing.group);
    let Some(bracket) = group.and_then(|group| group.bracket.as_ref()) else {
        return (f64::INFINITY, Finding::unmeasured(vec![rig.after.missing()]));
    };
    let (rated, setback) = (bracket.rated_weight.ask(), bracket.setback.ask());
    let (Ok(rated), Ok(setback)) = (&rated, &setback) else {
        let missing = [rated.err(), setback.err()].into_iter().flatten().collect();
        return (f64::NEG_INFINITY, Finding::unmeasured(missing));
    };
    let rated_setback = bracket.spec.setback.as_ref().map_or(setback.value, |setback| setback.value);
    let lean = strength.board.lean();
    let mut sheet = Sheet::default();
    sheet.remark(say!(
        "Weights turn by how far aft they are, level: a face square off a transom that leans {} stands farther aft by 1 / cos θ.",
        Measure::of(lean)
    ));
    sheet.origin::<Mass>("Wr", rated.basis.origin());
    sheet.origin::<Length>("s", setback.basis.origin());
    sheet.origin::<Angle>("θ", strength.board.lean_from);
    let limit = sheet.set(
        "Mr",
        "moment that the rating by weight stands for",
        Term::new("Wr", rated.value)
            * gravity()
            * (Term::new("s", rated_setback) / cos(Term::new("θ", lean)) + Term::new("c", inches(USUAL_CENTRE_IN))),
    );
    let total = footing
        .hung
        .iter()
        .filter(|hung| !hung.is_bracket)
        .enumerate()
        .map(|(i, hung)| {
            let weight = sheet.given(&format!("m{}", i + 1), &hung.name, hung.mass, "what hangs there");
            let arm = format!("centre of the {} aft of the transom, level", hung.name);
            weight
                * gravity()
                * sheet.given(&format!("a{}", i + 1), &arm, Length::from_si(hung.aft), "what hangs there")
        })
        .reduce(|a, b| a + b);
    let Some(total) = total else {
        return (f64::INFINITY, Finding::unmeasured(vec![rig.after.missing()]));
    };
    let moment = sheet.set("M", "moment of the engines about the transom's face", total);
    let (found, most) = (Measure::of(moment.value()), Measure::of(limit.value()));
    let old = strength.before.as_ref().ok().map(at_rest);
    let (new, all) = (moment.value().si(), at_rest(&strength.after));
    let newton_metres = |value: f64| Measure::of(<Moment as Dimensioned>::from_si(value));
    let beside = old.map_or(Text::default(), |old| {
        say!(
            " All that hung on the transom before brought {}; all that hangs there now brings {}.",
            newton_metres(old),
            newton_metres(all)
        )
    });
    let over = moment.value() > limit.value();
    let name = footing.name.as_str();
    let finding = if over {
        let needed = rated.value * (new / limit.value().si());
        Finding::new(
            Verdict::Warn,
            say!(
                "The engines turn `{}` with {}, more than its rating of {} stands for.",
                name,
                found,
                Measure::of(rated.value)
            )
            .then(beside),
        )
        .remedy(Remedy::new(
            say!(
                "Ask its maker with the engines' weight and centre, or have one that is rated for {} or more.",
                Measure::of(mend::pounds_up(needed))
            ),
            [Mend::Ask, Mend::Change(with_rating(rig, footing, mend::pounds_up(needed)))],
        ))
    } else {
        Finding::new(
            Verdict::Pass,
            say!(
                "The engines turn `{}` with {}, within what its rating of {} stands for.",
                name,
                found,
                Measure::of(rated.value)
            )
            .then(beside),
        )
    };
    let row = |what: &str, value: f64, ratio: Text| vec![Text::from(what), Text::from(newton_metres(value)), ratio];
    let mut rows = Vec::new();
    rows.push(row("the engines on this bracket", new, Text::default()));
    rows.extend(old.map(|old| row("before, all that hung on the transom", old, Text::default())));
    let ratio = old.map_or(Text::default(), |old| times(old, all));
    rows.push(row("after, all that hangs on it", all, ratio));
    let table = Table::new("moment of the weight at rest about the transom", &["", "moment", "after / before"], rows);
    (limit.value().si() / new, finding.against(found, Limit::AtMost(most)).working(sheet).table(table))
}

/// Moment at rest of all that hangs, N·m.
fn at_rest(laden: &Laden) -> f64 {
    laden
        .footings
        .iter()
        .flat_map(|footing| &footing.hung)
        .map(|hung| hung.mass.si() * standard_gravity().si() * hung.aft)
        .sum()
}

/// A bracket like this one with another rated weight.
fn with_rating(rig: &Rig, footing: &Footing, weight: Mass) -> Vec<Change> {
    let bracket = rig.after.groups.get(footing.group).and_then(|group| group.bracket.as_ref());
    let spec = [("rated_weight", mend::quoted(Measure::of(weight)))];
    let entry = format!("{}.bracket", entry(rig, footing));
    bracket.map_or(Vec::new(), |bracket| Change::like(&entry, &bracket.spec, &spec).to_vec())
}
