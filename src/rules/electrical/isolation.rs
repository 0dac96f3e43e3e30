//! `electrical/isolation`

use super::told;
use crate::case::Case;
use crate::job::rigging::{self, Does, Parallel};
use crate::quantity::{Text, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// Whether the battery that starts an engine can be emptied by anything else, and whether another can help it.
    ///
    /// **Why.** A live well that runs all day on the only battery leaves nobody to start the engine.
    ///
    /// **Limit.** A battery that starts shares with house loads only where there is a second one, and with a switch or an isolator
    /// between; more than one engine, no fewer starting batteries than engines, or a way to join them.
    ///
    /// **Source.** Common practice, no source; ABYC E-10 and E-11 treat batteries and switches (from memory).
    ///
    /// **When it warns.** It warns of either.
    ISOLATION = Electrical "electrical/isolation", judge;
}

fn judge(case: &Case) -> Judgement {
    let electrical = told(case)?;
    if electrical.batteries.is_empty() || electrical.batteries.iter().any(|entry| entry.does.is_none()) {
        return Ok(Finding::unmeasured(vec![Missing::one(reading!(rigging::Electrical.batteries))]));
    }
    let shared = electrical.batteries.iter().any(|entry| entry.does == Some(Does::Both));
    if electrical.batteries.len() == 1 {
        // Whatever draws current has no other battery to draw it from, whether told as a circuit or by its hours.
        let feeds = !electrical.loads.is_empty() || !electrical.circuits.is_empty();
        return Ok(if feeds {
            Finding::new(Verdict::Warn, Text::from("One battery starts the engine and feeds all else."))
                .remedy(mend::yard("Add a house battery with an isolator, or carry a jump pack and a rope."))
                .buys("house battery and isolator", Text::from("one"))
        } else {
            Finding::new(
                Verdict::Pass,
                Text::from("One battery starts the engine; nothing else is told to hang on it."),
            )
        });
    }
    let parallel = electrical.parallel().ask()?;
    let engines = case.rig.after.mains().len();
    let starts = electrical.batteries.iter().filter(|entry| entry.does != Some(Does::House)).count();
    Ok(match parallel {
        Parallel::None if shared => {
            Finding::new(Verdict::Warn, Text::from("A battery that starts also feeds the house, with nothing between."))
                .remedy(mend::change(
                    "Fit an isolator or charging relay, and a switch to join the batteries by hand.",
                    [Change::to("rigging.electrical.parallel", "isolator")],
                ))
                .buys("isolator or charging relay, and parallel switch", Text::from("for the alternators' current"))
        }
        Parallel::None if starts < engines => Finding::new(
            Verdict::Warn,
            match starts {
                1 => say!("{} engines start from one battery.", engines),
                _ => say!("{} engines start from {} batteries that cannot be joined.", engines, starts),
            },
        )
        .remedy(mend::change(
            "Fit a switch to join them, or a battery for each engine.",
            [Change::to("rigging.electrical.parallel", "switch")],
        ))
        .buys("parallel switch", Text::from("for the starters' current")),
        Parallel::None => {
            Finding::new(Verdict::Pass, Text::from("What starts is kept apart from what feeds the house."))
        }
        Parallel::Switch => {
            Finding::new(Verdict::Pass, Text::from("Batteries are joined by a switch, left open but for starting."))
        }
        Parallel::Isolator => Finding::new(Verdict::Pass, Text::from("An isolator holds the starting battery back.")),
    })
}
