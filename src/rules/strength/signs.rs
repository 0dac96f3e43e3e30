//! `strength/signs`

use super::core_first;
use super::soft_core::core_doubted;
use crate::case::Case;
use crate::job::{self, Sign, Signs, Sitting};
use crate::quantity::{Text, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend;
use crate::rules::rule::rule;
use crate::rules::{Finding, Verdict};
use crate::working::Table;

rule! {
    /// What is seen of the transom: bolts that weep, sunk washers, cracks, streaks, a give under the hand.
    ///
    /// **Why.** A transom shows that it works long before it lets go, and eyes find it sooner than any
    /// reckoning.
    ///
    /// **Limit.** No sign of work. Of signs that were seen at one time and not at another, those seen count.
    ///
    /// **Source.** Common practice, no source.
    ///
    /// **When it warns.** Do for each sign what the finding says before more weight or power hangs there.
    /// It fails where the transom gives to the hand or its tabbing has let go, and where washers have sunk
    /// into a core that another reading doubts.
    SIGNS = Strength "strength/signs", judge;
}

fn judge(case: &Case) -> Finding {
    let rig = case.rig;
    let now = rig.structure.said.signs.as_ref();
    let then = rig.ran.as_ref().and_then(|ran| ran.then.as_ref());
    let seen = Signs::both(now, then).unwrap_or_default();
    if seen.seen().is_empty() {
        return if now.is_some() {
            Finding::new(Verdict::Pass, Text::from("Somebody looked, and the transom shows no sign of work."))
        } else {
            unseen(case)
        };
    }
    let doubted = core_doubted(case);
    let verdict = seen.seen().iter().map(|sign| verdict(*sign, doubted)).min().unwrap_or(Verdict::Warn);
    let told = seen.seen().iter().map(|sign| say!("{} ({})", sign.words(), means(*sign)));
    let mut summary = say!("The transom shows ").then(Text::join(told, "; ")).then(Text::from("."));
    if doubted && seen.seen().contains(&Sign::WashersSunkIn) {
        summary = summary.then(Text::from(" The core is doubted besides: it gives way under the washers."));
    }
    let mut remedy = Vec::new();
    let none = |signs: Option<&Signs>| signs.is_some_and(|signs| signs.seen().is_empty());
    if none(now) || none(then) {
        summary = summary.then(Text::from(
            " What is told of the time with the old engines and of now does not agree: what was seen counts.",
        ));
        remedy.push("Look once more, and write the same under ran.signs and structure.signs.");
    }
    // Washers that sink into a doubtful core want nothing but the core looked at.
    let of_the_core = |sign: &Sign| doubted && *sign == Sign::WashersSunkIn;
    remedy.extend(seen.seen().iter().filter(|sign| !of_the_core(sign)).map(|sign| cure(*sign)));
    let rows = seen.seen().iter().map(|sign| [sign.words(), means(*sign), cure(*sign)].map(Text::from).to_vec());
    let table = Table::new("what is seen", &["sign", "what it usually means", "what to do"], rows.collect());
    Finding::new(verdict, summary)
        .remedy(if remedy.is_empty() {
            core_first()
        } else {
            mend::look(Text::join(remedy.into_iter().map(Text::from), " "))
        })
        .table(table)
}

/// Nobody looked. A plain job before ordering is asked for no more than the other checks of strength ask for.
fn unseen(case: &Case) -> Finding {
    let asked = case.rig.structure.asked || case.rig.job.sitting == Sitting::AsFitted;
    match case.strength() {
        Err(waits) if !asked => waits.into(),
        _ => Finding::unmeasured(vec![Missing::one(reading!(job::Structure.signs))]),
    }
}

fn verdict(sign: Sign, core_doubted: bool) -> Verdict {
    match sign {
        Sign::FlexesByHand | Sign::TabbingLetGo => Verdict::Fail,
        Sign::WashersSunkIn if core_doubted => Verdict::Fail,
        Sign::WashersSunkIn
        | Sign::WeepingBolts
        | Sign::CracksAtCutout
        | Sign::CracksAtBracket
        | Sign::StainsOrRustStreaks
        | Sign::GapAtCap
        | Sign::PaintLinesMoved => Verdict::Warn,
    }
}

/// What a sign usually means. Common practice, no source.
fn means(sign: Sign) -> &'static str {
    match sign {
        Sign::WeepingBolts => "water goes in and out at the holes, and into the core",
        Sign::WashersSunkIn => "the core under them is crushed: washers too small, nuts too tight, or a soft core",
        Sign::CracksAtCutout => "the transom bends in and out there",
        Sign::CracksAtBracket => "the skin works over the bracket's edge, or the core behind it has given",
        Sign::StainsOrRustStreaks => "water has been inside and comes out again",
        Sign::FlexesByHand => "the core, the skins or what holds them has given",
        Sign::TabbingLetGo => "the hull no longer holds the transom there",
        Sign::GapAtCap => "the top edge moves or the core swells, and rain runs in",
        Sign::PaintLinesMoved => "the engine or its bracket has shifted on the transom",
    }
}

/// What to do about a sign. Common practice, no source.
fn cure(sign: Sign) -> &'static str {
    match sign {
        Sign::WeepingBolts => {
            "Draw a lower bolt: bed all of them anew where the hole is dry and light, have the core surveyed where it is wet or dark."
        }
        Sign::WashersSunkIn => {
            "Sound the core round the washers; where it is sharp and dry, set the nuts on a backing plate."
        }
        Sign::CracksAtCutout => {
            "Grind a crack out: where it goes into the laminate, have it mended and the transom stiffened before more hangs there."
        }
        Sign::CracksAtBracket => {
            "Take the bracket off, grind a crack out and sound the core behind it; mend the laminate before it goes back."
        }
        Sign::StainsOrRustStreaks => {
            "Find where the water comes from, and put hammer and moisture meter to the core round it."
        }
        Sign::FlexesByHand => {
            "Run no engine on it: have a licensed surveyor find out whether core, skins or tabbing have given."
        }
        Sign::TabbingLetGo => {
            "Run no engine on it: have the tabbing ground off and laid up anew by a licensed marine technician."
        }
        Sign::GapAtCap => "Lift the cap, look at the core's edge, and seal it before the cap goes back.",
        Sign::PaintLinesMoved => {
            "Draw the bolts and look at holes and shanks; where the holes are round, bed the bracket anew and torque the nuts."
        }
    }
}
