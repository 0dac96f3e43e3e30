//! `trial/behaviour`

use super::{ready, with};
use crate::case::Case;
use crate::job::{Effort, Porpoises, Sailed, Ventilates, Vibration};
use crate::quantity::{Text, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// What the trial says in words: ventilation, porpoising, vibration, the steering in hand.
    ///
    /// **Why.** What cannot be read off a gauge is what hurts somebody: a stern that lets go in a turn, a
    /// wheel that kicks or takes nine turns to bring her round.
    ///
    /// **Limit.** No ventilation but in hard turns, no porpoising but trimmed out, no strong vibration, a
    /// wheel for one hand, no more than seven turns from lock to lock.
    ///
    /// **Source.** Common practice, no source (4 to 7 turns).
    ///
    /// **When it warns.** Lower the engines or change the propellers; trim and stow; balance the
    /// propellers; a larger helm pump.
    BEHAVIOUR = Trial "trial/behaviour", judge;
}

/// Turns from lock to lock. Common practice, no source: 4 to 7.
const MOST_TURNS: f64 = 7.0;

fn judge(case: &Case) -> Judgement {
    let trials = ready(case)?;
    let Some((side, trial)) = trials.latest() else {
        return Ok(Finding::unmeasured(vec![Missing::one(reading!(Sailed.ventilates))]));
    };
    let said = &trial.said;
    let mut missing = Vec::new();
    let mut lacks = |is_told: bool, declared| {
        if !is_told {
            missing.push(Missing::one(declared));
        }
    };
    lacks(said.ventilates.is_some(), reading!(Sailed.ventilates));
    lacks(said.porpoises.is_some(), reading!(Sailed.porpoises));
    lacks(said.vibration.is_some(), reading!(Sailed.vibration));
    let mut wrong = Vec::new();
    let mut cures = Vec::new();
    let mut note = |what: Text, cure: &'static str| {
        wrong.push(what);
        cures.push(Text::from(cure));
    };
    if let Some(one @ (Ventilates::Turns | Ventilates::Straight)) = said.ventilates {
        note(
            say!("the propellers draw air {}", one.words()),
            "Set the engines a hole lower, or try a cupped or larger blade.",
        );
    }
    if let Some(one @ (Porpoises::AtSomeSpeeds | Porpoises::Always)) = said.porpoises {
        note(say!("she porpoises {}", one.words()), "See “porpoising” for what brings her out of it.");
    }
    if said.vibration == Some(Vibration::Strong) {
        note(Text::from("she shakes"), "Look at propellers, shafts and mounts before she runs again.");
    }
    if said.steering == Some(Effort::Heavy) {
        note(
            Text::from("the wheel takes both hands"),
            "Look for air in the steering, a bent tie bar or wrong trim; set the trim anodes.",
        );
    }
    if let Some(turns) = said.lock_to_lock.filter(|turns| *turns > MOST_TURNS) {
        note(
            say!("the wheel takes {} turns from lock to lock", turns.to_string()),
            "Take a helm pump of more volume a turn, or cylinders of less.",
        );
    }
    if !wrong.is_empty() {
        return Ok(Finding::new(
            Verdict::Warn,
            say!("On the trial {} ", with(side)).then(Text::join(wrong, "; ")).then(Text::from(".")),
        )
        .remedy(mend::look(Text::join(cures, " "))));
    }
    if !missing.is_empty() {
        return Ok(Finding::unmeasured(missing));
    }
    Ok(Finding::new(Verdict::Pass, say!("On the trial {} nothing of her behaviour was amiss.", with(side))))
}
