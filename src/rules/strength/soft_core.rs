//! `strength/soft-core`

use uom::si::f64::{Length, Mass, Ratio};

use super::{DESIGN_FACTOR, factor, ready, verdict};
use crate::case::Case;
use crate::case::strength::show::ratio;
use crate::case::strength::{Core, FlexTest, Part, Strength};
use crate::job::tape;
use crate::physics::strength::knockdown::KnockDown;
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::rig::{Missing, Rig};
use crate::rules::rule::{given, rule};
use crate::rules::{Finding, Limit, Verdict};
use crate::working::{Sheet, Table};

rule! {
    /// What the surveyor's readings of the core leave of the transom: hammer, moisture meter, measured
    /// flex.
    ///
    /// **Why.** A wet core keeps its shape and loses its strength, and nothing shows until the bolts
    /// sink in.
    ///
    /// **Limit.** Every part of strength that leans on the core at least twice as strong as its load
    /// with what is left of it.
    ///
    /// **Source.** USDA Wood Handbook (green against dry wood), values from memory; common practice, no
    /// source (hammer, and strength as the square of a measured stiffness).
    ///
    /// **When it warns.** Hammer and meter rank a core, they do not measure it: make the next test that
    /// the finding names, then have a surveyor who is licensed to take a core sample. It fails where a
    /// part is loaded beyond what is left.
    SOFT_CORE = Strength "strength/soft-core", judge;
}

fn judge(case: &Case) -> Finding {
    let strength = given!(ready(case));
    let core = &strength.core;
    if !core.read {
        return Finding::unmeasured(vec![Missing::one(&tape::CORE_SOUNDING)]);
    }
    let parts = parts(case.rig, strength);
    let Some(weak) = parts.iter().min_by(|a, b| a.2.total_cmp(&b.2)) else {
        return Finding::new(Verdict::Unmeasured, Text::from("No bolt is known."));
    };
    let mut sheet = Sheet::default();
    for word in &core.words {
        sheet.remark(word.clone());
    }
    let left = core.left;
    let part = |value: f64| Measure::of(Ratio::from_si(value));
    sheet.remark(say!(
        "left of the core's stiffness {}, of its strength {}",
        part(left.stiffness),
        part(left.strength)
    ));
    if core.flex.is_some() {
        sheet.remark(Text::from(
            "a measured flex overrules hammer and meter; strength is taken as the square of stiffness",
        ));
    }
    let rows = parts.iter().map(|(words, sound, now)| vec![Text::from(*words), ratio(*sound), ratio(*now)]).collect();
    let table = Table::new("strength over load with the new engines", &["part", "core sound", "core as read"], rows);
    let read = Text::join(core.words.iter().cloned(), ", ");
    let lowered = left != KnockDown::SOUND;
    let judged = verdict(weak.2, DESIGN_FACTOR);
    let summary = if lowered {
        say!("By what was read of the core (").then(read).then(say!(
            ") {} of its strength is left, and the factor of the {} falls from {} to {}.",
            part(left.strength),
            weak.0,
            factor(weak.1),
            factor(weak.2)
        ))
    } else {
        say!("Nothing that was read of the core (").then(read).then(say!(") lowers its strength."))
    };
    // A core that was found wet warns whatever is left of the numbers.
    let shown = match judged {
        Verdict::Pass if lowered => Verdict::Warn,
        Verdict::Warn | Verdict::Fail if !lowered => Verdict::Pass,
        other => other,
    };
    let (found, least) = if lowered { (weak.2, DESIGN_FACTOR) } else { (left.strength, KnockDown::SOUND.strength) };
    let finding =
        Finding::new(shown, summary).against(factor(found), Limit::AtLeast(factor(least))).working(sheet).table(table);
    if shown == Verdict::Pass { finding } else { finding.remedy(next_test(core)) }
}

/// The parts that lean on the core: factor with a sound core, and as read.
fn parts(rig: &Rig, strength: &Strength) -> Vec<(&'static str, f64, f64)> {
    let all: Vec<_> = [Part::Bearing, Part::Crush, Part::Punch, Part::Tear]
        .into_iter()
        .filter_map(|part| {
            let now = strength.after.worst(part, rig, strength)?;
            let sound = strength.after.worst_with(part, rig, strength, KnockDown::SOUND)?;
            (now.demand > 1e-6).then(|| (part.words(), sound.factor(), now.factor()))
        })
        .collect();
    all
}

/// What to test next, nearest to hand first, and to whom to go.
fn next_test(core: &Core) -> Text {
    let refer = Text::from(
        " Hang nothing heavier on it meanwhile. Whether it is opened, dried or rebuilt is for a licensed surveyor and a licensed marine technician to say, by a core sample.",
    );
    if !core.percussion && core.flex.is_none() && !core.moisture {
        return Text::from(
            "Sound the whole transom with a plastic hammer a hand apart, and put a moisture meter beside it.",
        )
        .then(flex(core))
        .then(refer);
    }
    if core.flex.is_none() && core.test.is_none() {
        return Text::from("Have a core sample bored from inside at the lower bolts, and sealed again: this transom is too stiff for its flex to be read.").then(refer);
    }
    if core.flex.is_none() {
        return Text::from("Measure its flex.").then(flex(core)).then(refer);
    }
    Text::from("The flex is measured: have a core sample bored from inside at the lower bolts, and sealed again.")
        .then(refer)
}

fn flex(core: &Core) -> Text {
    let Some(test) = &core.test else {
        return Text::default();
    };
    let tape = |metres: f64| Measure::tape(Length::from_si(metres));
    say!(
        " Tilt the {} until its leg is level, hang {} on the gearcase {} aft of the transom, and read the top edge with a dial gauge from the splash-well: a sound transom of this lay-up moves {}. Write down what this one moves.",
        test.engine.as_str(),
        Measure::of(Mass::from_si(FlexTest::WEIGHT)),
        tape(test.arm),
        Measure::of(Length::from_si(test.moves))
    )
}
