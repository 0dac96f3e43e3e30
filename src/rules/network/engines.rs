//! `network/engines`

use super::told;
use crate::case::Case;
use crate::quantity::{Text, say};
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// Whether the new engines reach the network.
    ///
    /// **Why.** A display without a gateway shows nothing of the engine that it was bought for.
    ///
    /// **Limit.** Each engine on the network by itself or through its own gateway.
    ///
    /// **Source.** The engines' papers.
    ///
    /// **When it warns.** It warns where they do not.
    ENGINES = Network "network/engines", judge;
}

fn judge(case: &Case) -> Judgement {
    let network = told(case)?;
    let reach = network.engines_reach_it().ask()?;
    if *reach {
        return Ok(Finding::new(Verdict::Pass, Text::from("The engines reach the network.")));
    }
    let engines = case.rig.after.mains().len().max(1);
    Ok(Finding::new(Verdict::Warn, Text::from("The engines do not reach the network."))
        .remedy(mend::change(
            "Fit the gateway that the engines' maker gives, each with a number of its own.",
            [Change::to("rigging.network.engines_reach_it", "true")],
        ))
        .buys("engine gateway", say!("{}", engines)))
}
