//! `trailer/brakes`

use super::{loaded, told};
use crate::case::Case;
use crate::case::rigging::asked;
use crate::job::rigging::{self, Chosen};
use crate::physics::rigging::trailer;
use crate::quantity::{Dimensioned, Measure, Text, pounds, say};
use crate::reading::reading;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;

rule! {
    /// Whether the trailer has brakes for what it weighs.
    ///
    /// **Why.** Three thousand pounds behind a car push it through the next crossing.
    ///
    /// **Limit.** Brakes from 3,000 lb all told. Local law decides: in some places from 1,500 lb, in Europe from 750 kg.
    ///
    /// **Source.** Common practice, no source; the local law varies by state and country and takes its place.
    ///
    /// **When it warns.** It warns of a heavier trailer without.
    BRAKES = Trailer "trailer/brakes", judge;
}

/// From here on a trailer has brakes. Common practice, no source, lb; local law varies.
const FROM_LB: f64 = 3000.0;

fn judge(case: &Case) -> Judgement {
    let towed = told(case)?;
    let brakes = towed.trailer.spec().and_then(|spec| spec.brakes.as_ref());
    let road = loaded(case, towed)?;
    let brakes = asked(brakes, reading!(rigging::TrailerSpec.brakes)).ask()?;
    let mut sheet = Sheet::default();
    let all_up = trailer::all_up(&mut sheet, &road.weights);
    let (found, limit) = (all_up.measure(), Measure::of(pounds(FROM_LB)));
    if *brakes {
        return Ok(Finding::new(
            Verdict::Pass,
            say!("The trailer has brakes for its {}; look what the local law asks for.", found),
        )
        .found(found)
        .working(sheet));
    }
    let finding = if all_up.value().exceeds(pounds(FROM_LB)) {
        Finding::new(Verdict::Warn, say!("The trailer weighs {} with all on it and has no brakes.", found))
            .remedy(mend::change(
                "Fit brakes and a breakaway, and look what the local law asks for.",
                towed.trailer.spec().map_or(Vec::new(), |spec| {
                    Change::like("rigging.towed.trailer", spec, &[("brakes", "true".to_owned())]).to_vec()
                }),
            ))
            .buys("trailer brakes with breakaway", Text::from("for each axle"))
    } else {
        Finding::new(
            Verdict::Pass,
            say!("The trailer weighs {} with all on it: commonly it needs no brakes; the local law decides.", found),
        )
    };
    Ok(finding.against(found, Limit::AtMost(limit)).working(sheet))
}
