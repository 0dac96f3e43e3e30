//! `trailer/behind`

use super::told;
use crate::case::Case;
use crate::quantity::{Dimensioned, Measure, Text, feet, say};
use crate::reading::All;
use crate::rules::mend;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};

rule! {
    /// What stands out behind the trailer: engines, lamps, number plate, and what holds the engines up.
    ///
    /// **Why.** Engines on a bracket stand a yard behind the lamps: whoever follows sees them last. Towed on their own lift they
    /// wear its seals and drop.
    ///
    /// **Limit.** 4 ft behind the lamps without a flag or a lamp board; lamps and number plate seen; the engines on a support.
    ///
    /// **Source.** Common practice, no source; the local law varies.
    ///
    /// **When it warns.** It warns of each.
    BEHIND = Trailer "trailer/behind", judge;
}

/// How far things may stand out behind. Common practice, no source: what most places allow without a flag, ft.
const BEHIND_FT: f64 = 4.0;

fn judge(case: &Case) -> Judgement {
    let towed = told(case)?;
    let (behind, seen) = (towed.behind().ask(), towed.lamps_seen().ask()).all()?;
    let (found, limit) = (Measure::tape(behind.value), Measure::tape(feet(BEHIND_FT)));
    let mut wrong: Vec<Text> = Vec::new();
    if behind.value.exceeds(feet(BEHIND_FT)) {
        wrong.push(say!("the engines stand {} out behind the lamps", found));
    }
    if !seen {
        wrong.push(Text::from("the engines hide lamps or number plate"));
    }
    if towed.supported == Some(false) {
        wrong.push(Text::from("the engines hang on their own lift"));
    }
    let finding = if wrong.is_empty() {
        Finding::new(Verdict::Pass, say!("The engines stand {} out behind; lamps and plate are seen.", found))
    } else {
        Finding::new(Verdict::Warn, Text::from("On the road ").then(Text::join(wrong, "; ")).then(Text::from(".")))
            .remedy(mend::yard(
                "Hang a lamp board with the number plate and a flag behind the engines, and tow them on a support.",
            ))
            .buys("lamp board with flag, and engine support", Text::from("one for each engine"))
    };
    Ok(finding.against(found, Limit::AtMost(limit)))
}
