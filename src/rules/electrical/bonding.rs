//! `electrical/bonding`

use super::told;
use crate::case::Case;
use crate::job::rigging::{self, Anodes};
use crate::quantity::Text;
use crate::reading::{Missing, reading};
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// Anodes, and whether engines and a metal bracket are joined by wire.
    ///
    /// **Why.** New engines bring other alloys beside an old bracket: the anode that is lacking is made up for by a lower unit or by
    /// the bracket.
    ///
    /// **Limit.** Sound anodes on engines and bracket; engines and bracket bonded where she lies afloat with a metal one.
    ///
    /// **Source.** Common practice, no source; ABYC E-2 treats cathodic protection (from memory).
    ///
    /// **When it warns.** It warns of worn or missing anodes, and of a bracket that is not bonded.
    BONDING = Electrical "electrical/bonding", judge;
}

fn judge(case: &Case) -> Judgement {
    let electrical = told(case)?;
    let anodes = electrical.anodes().ask()?;
    let bracket = case.rig.after.groups.iter().any(|group| group.bracket.is_some());
    let mut worst: Option<Finding> = None;
    if *anodes != Anodes::Sound {
        let how = if *anodes == Anodes::Worn { "The anodes are worn." } else { "There are no anodes." };
        Finding::new(Verdict::Warn, Text::from(how))
            .remedy(mend::change(
                if bracket {
                    "Fit new anodes, bare and tight on clean metal, on each engine and on the bracket; never paint them."
                } else {
                    "Fit new anodes, bare and tight on clean metal, on each engine; never paint them."
                },
                [Change::to("rigging.electrical.anodes", "sound")],
            ))
            .buys("anodes", Text::from(if bracket { "for each engine and the bracket" } else { "for each engine" }))
            .keep_worse(&mut worst);
    }
    if bracket && electrical.bonded == Some(false) {
        Finding::new(Verdict::Warn, Text::from("The engines are not bonded to their bracket."))
            .remedy(mend::change(
                "Join each engine and the bracket by a wire of 8 AWG.",
                [Change::to("rigging.electrical.bonded", "true")],
            ))
            .buys("bonding wires", Text::from("8 AWG, engine to bracket, one each"))
            .keep_worse(&mut worst);
    }
    if let Some(worst) = worst {
        return Ok(worst);
    }
    Ok(match (bracket, electrical.bonded) {
        (true, None) => Finding::unmeasured(vec![Missing::one(reading!(rigging::Electrical.anodes))]),
        _ => Finding::new(Verdict::Pass, Text::from("Anodes are sound.")),
    })
}
