//! `strength/soft-core`

use crate::rules::mend;
use uom::si::f64::{Length, Mass, Ratio};

use super::{DESIGN_FACTOR, factor};
use crate::case::Case;
use crate::case::strength::show::ratio;
use crate::case::strength::{FlexRead, FlexTest, Part, Strength, core_words, hammer_words, moisture_words};
use crate::job::{self, Core, Sitting, Sound};
use crate::physics::strength::knockdown::KnockDown;
use crate::quantity::{Dimensioned, Measure, Style, Text, say};
use crate::reading::reading;
use crate::rig::{Missing, Rig};
use crate::rules::rule::rule;
use crate::rules::{Finding, Verdict};
use crate::working::{Sheet, Table};

rule! {
    /// What was read of the core by word, hammer, moisture meter and measured flex.
    ///
    /// **Why.** A wet core keeps its shape and loses its strength, and nothing shows until the bolts
    /// sink in.
    ///
    /// **Limit.** A sharp sound, moisture of at most 20 % by weight, and a flex as of a sound core. Of
    /// readings that do not agree the worst counts.
    ///
    /// **Source.** Common practice, no source (hammer, 20 %, flex, and what is refused); USDA Wood Handbook
    /// (fibre saturation; green against dry wood), values from memory.
    ///
    /// **When it warns.** Hammer and meter rank a core, they do not measure it: make the next test that
    /// the finding names, then have a surveyor who is licensed to take a core sample. It fails where the
    /// core was found soft or dead, is soaked from 28 % on, or has lost half its strength by its flex,
    /// whichever way the gauge was off: the trade hangs no engine on that.
    SOFT_CORE = Strength "strength/soft-core", judge;
}

/// Moisture by weight above which a core counts as damp. Common practice, no source: joinery is dry to about 15 %, and rot
/// needs more than 20 %.
const DAMP: f64 = 0.20;
/// Moisture by weight from which a core counts as soaked: fibre saturation, about 30 % and a little less in some woods.
/// Source: USDA Wood Handbook, value from memory.
const SOAKED: f64 = 0.28;

/// One reading of the core, and what it comes to by itself.
struct Said {
    verdict: Verdict,
    words: Text,
    /// How it is taken again.
    again: &'static str,
}

/// Whether the trade hangs nothing on this core until it is settled.
pub(super) fn core_refused(case: &Case) -> bool {
    said(case).iter().any(|one| one.verdict == Verdict::Fail)
}

/// Whether any reading speaks against the core.
pub(in crate::rules) fn core_doubted(case: &Case) -> bool {
    said(case).iter().any(|one| one.verdict <= Verdict::Warn)
}

fn judge(case: &Case) -> Finding {
    let rig = case.rig;
    let said = said(case);
    let worst = said.iter().map(|one| one.verdict).min();
    let strength = match case.strength() {
        Ok(strength) => Some(strength),
        // A flex that cannot be reckoned yet may be a bad one; where nothing else is told either, it is as with every part.
        Err(waits) if rig.structure.said.flex.is_some() && worst.is_none_or(|worst| worst > Verdict::Warn) => {
            return waits.into();
        }
        Err(waits) if worst.is_none() && !asks(rig) => return waits.into(),
        Err(_) => None,
    };
    let Some(worst) = worst else {
        return Finding::unmeasured(vec![Missing::one(reading!(job::Structure.percussion))]);
    };
    let read = Text::join(said.iter().map(|one| one.words.clone()), ", ");
    let summary = match worst {
        Verdict::Fail => say!("The core is soft by what was read of it (")
            .then(read)
            .then(say!("): the trade hangs no engine on it until that is settled.")),
        Verdict::Warn => say!("The core is doubtful by what was read of it (").then(read).then(say!(").")),
        _ => say!("Nothing that was read of the core (").then(read).then(say!(") speaks against it.")),
    };
    let contradiction = contradiction(&said);
    let mut summary = match &contradiction {
        Some((told, _)) => summary.then(told.clone()),
        None => summary,
    };
    let mut sheet = Sheet::default();
    for one in &said {
        sheet.remark(one.words.clone());
    }
    let mut tables = Vec::new();
    if let Some(strength) = strength {
        summary = summary.then(what_is_left(rig, strength, &mut sheet, &mut tables));
    }
    let mut finding = Finding::new(worst, summary).working(sheet);
    for table in tables {
        finding = finding.table(table);
    }
    if worst == Verdict::Pass {
        return finding;
    }
    let again = contradiction.map(|(_, again)| say!("{} ", again)).unwrap_or_default();
    let next = if worst == Verdict::Fail { Text::from(OPEN_IT) } else { next_test(rig, strength) };
    finding.remedy(mend::look(again.then(next).then(Text::from(WHO_SAYS))))
}

/// Whether a job that tells nothing of its core is one to ask: somebody stood at the transom, or strength is in question.
fn asks(rig: &Rig) -> bool {
    let transom = &rig.job.transom;
    let told = transom.height.is_some()
        || transom.thickness.is_some()
        || transom.angle.is_some()
        || transom.material.is_some();
    rig.structure.asked || (told && rig.job.sitting != Sitting::Study)
}

/// Every reading of the core.
fn said(case: &Case) -> Vec<Said> {
    let rig = case.rig;
    let read = &rig.structure.said;
    let mut all = Vec::new();
    if let Some(core) = rig.job.transom.core {
        all.push(Said {
            verdict: match core {
                Core::Sound => Verdict::Pass,
                Core::Suspect => Verdict::Warn,
                Core::Soft => Verdict::Fail,
            },
            words: core_words(core),
            again: "Probe the core again at the lower bolts.",
        });
    }
    if let Some(sound) = read.percussion {
        all.push(Said {
            verdict: match sound {
                Sound::Sharp => Verdict::Pass,
                Sound::Dull => Verdict::Warn,
                Sound::Dead => Verdict::Fail,
            },
            words: hammer_words(sound),
            again: "Sound the whole transom again with a plastic hammer, a hand apart.",
        });
    }
    if let Some(moisture) = &read.moisture {
        let value = moisture.value;
        all.push(Said {
            verdict: if !Ratio::from_si(SOAKED).exceeds(value) {
                Verdict::Fail
            } else if value.exceeds(Ratio::from_si(DAMP)) {
                Verdict::Warn
            } else {
                Verdict::Pass
            },
            words: moisture_words(value),
            again: "Take the moisture again, with a sound dry place of the same wood for comparison.",
        });
    }
    if read.flex.is_some()
        && let Ok(strength) = case.strength()
        && let Some(flex) = strength.core.flex
        && let Some(words) = strength.core.words.last()
    {
        let vouched = all.iter().any(|one| one.verdict == Verdict::Pass);
        all.push(Said {
            verdict: by_flex(flex, vouched),
            words: words.clone(),
            again: "Measure the flex again with a dial gauge, held from the boat and not from the ground.",
        });
    }
    all
}

/// What a flex comes to. It refuses the core only where half of its strength has gone for certain, and with it all of the factor of
/// practice; it warns where that cannot be told, unless what was read is no worse than doubtful and another reading vouches
/// for the core.
fn by_flex(flex: FlexRead, vouched: bool) -> Verdict {
    let refused = |left: KnockDown| left.strength <= 1.0 / DESIGN_FACTOR;
    if refused(flex.certain()) {
        Verdict::Fail
    } else if flex.certain() != KnockDown::SOUND || refused(flex.read()) || (refused(flex.doubted()) && !vouched) {
        Verdict::Warn
    } else {
        Verdict::Pass
    }
}

/// The best and the worst reading where they do not agree, and which of them to take again.
fn contradiction(said: &[Said]) -> Option<(Text, &'static str)> {
    let good = said.iter().find(|one| one.verdict == Verdict::Pass)?;
    let bad = said.iter().find(|one| one.verdict == Verdict::Fail)?;
    let told = say!(" These do not agree: ")
        .then(good.words.clone())
        .then(say!(", but "))
        .then(bad.words.clone())
        .then(say!("; the worse of them counts."));
    Some((told, good.again))
}

/// What the readings leave of every part that leans on the core: told, not judged.
fn what_is_left(rig: &Rig, strength: &Strength, sheet: &mut Sheet, tables: &mut Vec<Table>) -> Text {
    let left = strength.left();
    let part = |value: f64| Measure::of(Ratio::from_si(value));
    sheet.remark(say!(
        "left of the core's stiffness {}, of its strength {}",
        part(left.stiffness),
        part(left.strength)
    ));
    if let Some(flex) = strength.core.flex {
        sheet.remark(say!(
            "a measured flex overrules hammer and meter here: with its tolerance, and a sound transom moving up to {} times as far as it is worked out to, between {} and {} of the stiffness is left, and only what has gone for certain is taken off; strength is taken as the square of stiffness",
            part(FlexRead::MODEL),
            part(flex.doubted().stiffness),
            part(flex.certain().stiffness)
        ));
    }
    let parts = parts(rig, strength);
    let rows = parts.iter().map(|(words, sound, now)| vec![Text::from(*words), ratio(*sound), ratio(*now)]).collect();
    tables.push(Table::new("strength over load with the new engines", &["part", "core sound", "core as read"], rows));
    match parts.iter().min_by(|a, b| a.2.total_cmp(&b.2)) {
        Some((words, sound, now)) if left != KnockDown::SOUND => say!(
            " With {} of its strength left the factor of the {} falls from {} to {}.",
            Measure::styled(Ratio::from_si(left.strength), Style::Share),
            *words,
            factor(*sound),
            factor(*now)
        ),
        _ => Text::default(),
    }
}

/// The parts that lean on the core: factor with a sound core, and as read.
fn parts(rig: &Rig, strength: &Strength) -> Vec<(&'static str, f64, f64)> {
    let all: Vec<_> = [Part::Bearing, Part::Punch, Part::Tear]
        .into_iter()
        .filter_map(|part| {
            let now = strength.after.worst(part, rig, strength)?;
            let sound = strength.after.worst_with(part, rig, strength, KnockDown::SOUND)?;
            (now.demand > 1e-6).then(|| (part.words(), sound.factor(), now.factor()))
        })
        .collect();
    all
}

/// What to do with a core that was found soft: no more weight is hung on it to test it.
const OPEN_IT: &str = "Run no engine on it and hang no weight on it. Sound it from edge to edge to find how far it goes, and have a core sample bored from inside at the lower bolts.";
const WHO_SAYS: &str = " Whether it is opened, dried or rebuilt is for a licensed surveyor and a licensed marine technician to say, by a core sample.";

/// What to test next, nearest to hand first, and to whom to go.
fn next_test(rig: &Rig, strength: Option<&Strength>) -> Text {
    let said = &rig.structure.said;
    let test = strength.and_then(|strength| strength.core.test.as_ref());
    let next = if said.flex.is_some() && strength.is_some() {
        Text::from("The flex is measured: have a core sample bored from inside at the lower bolts, and sealed again.")
    } else if said.percussion.is_none() && said.moisture.is_none() {
        let sounding =
            "Sound the whole transom with a plastic hammer a hand apart, and put a moisture meter beside it.";
        Text::from(sounding).then(test.map(how_to_flex).unwrap_or_default())
    } else {
        match (strength, test) {
            (_, Some(test)) => Text::from("Measure its flex.").then(how_to_flex(test)),
            (Some(_), None) => Text::from(
                "Have a core sample bored from inside at the lower bolts, and sealed again: this transom is too stiff for its flex to be read.",
            ),
            (None, None) => Text::from(
                "Measure its flex: tilt the engine until its leg is level, hang a known weight on the gearcase, and read the top edge with a dial gauge from the splash-well. Written down under structure.flex, with the lay-up and the top speed it says what is left of the core.",
            ),
        }
    };
    next.then(Text::from(" Hang nothing heavier on it meanwhile."))
}

fn how_to_flex(test: &FlexTest) -> Text {
    let tape = |metres: f64| Measure::tape(Length::from_si(metres));
    say!(
        " Tilt the {} until its leg is level, hang {} on the gearcase {} aft of the transom, and read the top edge with a dial gauge from the splash-well: a sound transom of this lay-up moves {}. Write down what this one moves.",
        test.engine.as_str(),
        Measure::of(Mass::from_si(FlexTest::WEIGHT)),
        tape(test.arm),
        Measure::of(Length::from_si(test.moves))
    )
}
