//! What clears a swing: setback, height and limits, as far as boat and parts allow them.

use uom::si::f64::Length;

use super::{TOLD_IN, stop};
use crate::case::swing::{Answer, Cure, FACE, Swept, Swing, TUB};
use crate::case::{Case, Rows, holes_up, row_of};
use crate::job::{self, BracketKind, BracketSpec};
use crate::physics::height::HOLE_ROW_STEP_IN;
use crate::quantity::{Basis, Dimensioned, Measure, Reading, Text, degrees, inches, say};
use crate::reading::{Absent, reading};
use crate::rig::{Bracket, Engine, Group, Slot};
use crate::rules::mend::{self, Change, Remedy};

/// The shallowest setback plate. Common practice, no source.
const SHALLOWEST_IN: f64 = 4.0;
/// The farthest that a lifting bracket is blocked out from the transom. Common practice, no source.
const FARTHEST_BLOCKED_IN: f64 = 12.0;
/// The deepest that one bolts to a transom without a bracket. Common practice, no source.
const DEEPEST_PLATE_IN: f64 = 12.0;
/// A tilt stop below this leaves the propeller in the water, and nobody sets it. Common practice, no source.
const LEAST_STOP_DEG: f64 = 40.0;

/// Setback, holes and limits that clear an engine of the boat, each by itself, as far as boat and parts allow them.
pub(super) fn cures(case: &Case, swept: &Swept, own: &[Own]) -> Remedy {
    let none = || {
        mend::yard(
            "Neither setback nor height nor a limit within reason clears it: another bracket, another class, or another boat.",
        )
    };
    let Some(cure) = &swept.cure else {
        return none();
    };
    let hung = case.rig.after.engines().find(|(_, engine)| engine.label == swept.label);
    let strikes_anothers_bracket = hung.is_some_and(|(group, _)| group.bracket.is_none())
        && [TUB, FACE].contains(&swept.clearance.other.name.as_str());
    let too_near = |all: &[Swept]| all.iter().any(|one| !one.keeps());
    if strikes_anothers_bracket && case.swing().neighbours.as_ref().is_ok_and(|all| too_near(all)) {
        return mend::first(
            "It strikes the bracket of the engine beside it: set the two farther apart, as “neighbour” says.",
            "swing/neighbour",
        );
    }
    // What clears this one has to clear the same engine everywhere else that the rule looks.
    let swing = case.swing();
    let alike: Vec<&Cure> = own
        .iter()
        .flat_map(|of| of(swing).iter().flatten())
        .filter(|other| other.label == swept.label && other.other == swept.other)
        .filter_map(|other| other.cure.as_ref())
        .collect();
    let cos = case.rig.job.transom.angle().reading().map_or(1.0, |angle| angle.value.value.cos());
    let mut ways: Vec<Remedy> = Vec::new();
    ways.extend(carried_lower(case, swept, own));
    let aft = alike.iter().map(|cure| cure.aft).reduce(|one, other| Some(one?.max(other?))).flatten();
    if let (Some(aft), Some((group, _))) = (aft.filter(|_| swept.other.is_none()), hung) {
        ways.extend(set_back(case, group, aft * cos, own));
    }
    if let (Some(up), Some((group, engine))) = (cure.up, hung) {
        ways.extend(hung_higher(case, group, engine, up / cos));
    }
    let tilt = alike.iter().map(|cure| cure.tilt.up_to).reduce(|one, other| Some(one?.min(other?))).flatten();
    match (tilt, hung) {
        (Some(limit), Some((group, _)))
            if !cure.tilt.whole_range && limit > swept.scene.tilt.low() && limit >= degrees(LEAST_STOP_DEG) =>
        {
            ways.push(mend::change(
                say!("stop the tilt at {} from upright", stop(limit)),
                [Change::told(format!("{}.tilt_stop", group.entry), stop(limit))],
            ));
        }
        _ => {}
    }
    match cure.steer.up_to {
        Some(limit) if !cure.steer.whole_range && stop(limit).si > 0.0 => {
            ways.push(mend::care(say!("keep the helm within {} each way when she is tilted", stop(limit))))
        }
        _ => {}
    }
    if ways.is_empty() {
        return none();
    }
    let head = if ways.len() > 1 { "One of these clears it by {}: " } else { "To clear it by {}: " };
    one_of(say!(head, Measure::tape(swept.margin)), ways)
}

/// Several ways, each by itself.
pub(super) fn one_of(before: Text, ways: Vec<Remedy>) -> Remedy {
    let words = Text::join(ways.iter().map(|way| way.words.clone()), "; or ");
    Remedy::new(before.then(words).then(Text::from(".")), ways.into_iter().flat_map(|way| way.ways))
}

/// The sweeps that a rule judges.
pub(super) type Own = fn(&Swing) -> &Answer<Vec<Swept>>;

/// How often a height is tried, a step lower each time, once the limit was found. Common practice, no source.
const HEIGHTS_TRIED: usize = 4;

/// The lifting bracket of either engine of a sweep raised no higher than clears it, where raising is what brings them too near.
pub(super) fn carried_lower(case: &Case, swept: &Swept, own: &[Own]) -> Option<Remedy> {
    let limit = swept.lift.as_ref().filter(|limit| !limit.whole_travel)?.up_to?;
    let named = |label: &str| label == swept.label || swept.other.as_deref() == Some(label);
    let lifts = |group: &&Group| group.lift().is_some() && group.engines.iter().any(|engine| named(&engine.label));
    let group = case.rig.after.groups.iter().find(lifts)?;
    let mut height = mend::down(limit, TOLD_IN);
    for _ in 0..HEIGHTS_TRIED {
        if height <= Length::default() {
            return None;
        }
        let mut rig = case.rig.clone();
        let there = rig.after.groups.iter_mut().find(|one| one.entry == group.entry)?;
        there.bracket.as_mut()?.raised = Some(thought_of(height));
        if clears(case.swing(), Case::new(&rig).swing(), own) {
            let entry = format!("{}.bracket.raised", group.entry);
            let words = say!(
                "carry the {} with its bracket raised no more than {}",
                &group.engines.first()?.label,
                Measure::tape(height)
            );
            return Some(mend::change(words, [Change::told(entry, Measure::tape(height))]));
        }
        height -= inches(TOLD_IN);
    }
    None
}

/// A length that nobody measured.
fn thought_of(value: Length) -> Reading<Length> {
    Reading { value, tolerance: None, written: None, basis: Basis::Assumed, note: None }
}

/// An engine set farther aft: on its bracket, or on a plate, where there is one so deep; in a row that the plate's window then
/// allows. What it then swings past, the plate among it, is swept again.
fn set_back(case: &Case, group: &Group, by: Length, own: &[Own]) -> Option<Remedy> {
    let by = mend::up(by, TOLD_IN);
    let (entry, now) = (&group.entry, group.setback().reading()?.value);
    let deep = if by.exceeds(inches(SHALLOWEST_IN)) { by } else { inches(SHALLOWEST_IN) };
    let (words, setback, mut changes) = match &group.bracket {
        Some(_) if group.is_lifted() && by.exceeds(inches(FARTHEST_BLOCKED_IN)) => return None,
        Some(_) if group.is_lifted() => {
            let far = Change::to(format!("{entry}.setback"), mend::exactly(now + by));
            (say!("set it {} farther aft", Measure::tape(by)), now + by, vec![far])
        }
        Some(bracket) => {
            let spec = [("setback", mend::exactly(now + by))];
            let mut changes = Change::like(&format!("{entry}.bracket"), &bracket.spec, &spec).to_vec();
            changes.push(Change::out(format!("{entry}.setback")));
            let there = Measure::tape(now + by);
            (say!("set it {} farther aft, on a bracket of {} setback", Measure::tape(by), there), now + by, changes)
        }
        None if by.exceeds(inches(DEEPEST_PLATE_IN)) => return None,
        None => {
            let plate = format!("(described: (kind: setback_plate, setback: {}, drop: \"0 in\"))", mend::exactly(deep));
            let plate = Change::to(format!("{entry}.bracket"), plate);
            (say!("set it {} aft on a setback plate", Measure::tape(deep)), deep, vec![plate])
        }
    };
    let mut rig = case.rig.clone();
    let there = rig.after.groups.iter_mut().find(|one| one.entry == group.entry)?;
    let slot = Slot::new(Some(thought_of(setback)), reading!(job::EngineGroup.setback));
    match &mut there.bracket {
        Some(bracket) => bracket.setback = slot,
        None => {
            there.bracket =
                Some(plate(slot, Slot::new(Some(thought_of(Length::default())), reading!(job::EngineGroup.drop))))
        }
    }
    let mut row = None;
    for engine in there.engines.iter().filter(|_| !group.is_lifted()) {
        // Where no height can be told, none is spoken of.
        let Ok(rows) = Rows::of(case.rig, group, engine) else { continue };
        let rows = rows.behind(setback);
        let hangs = engine.holes_up.reading().copied().map(usize::from);
        match hangs {
            Some(hangs) if rows.allows(hangs) => {}
            Some(_) => row = Some(rows.best()?),
            None => {
                rows.best()?;
            }
        }
    }
    if let Some(row) = row {
        changes.push(Change::to(format!("{entry}.holes_up"), row.to_string()));
        let up = u8::try_from(row).ok()?;
        for engine in &mut there.engines {
            engine.holes_up = Slot::new(Some(up), reading!(job::EngineGroup.holes_up));
        }
    }
    let then = Case::new(&rig);
    clears(case.swing(), then.swing(), own).then(|| {
        let words = match row {
            Some(row) => words.then(say!(", {}", holes_up(row))),
            None => words,
        };
        mend::change(words, changes)
    })
}

/// A plate that is only thought of.
fn plate(setback: Slot<Reading<Length>>, drop: Slot<Reading<Length>>) -> Bracket {
    let spec = BracketSpec { kind: Some(BracketKind::SetbackPlate), ..BracketSpec::default() };
    Bracket {
        name: "setback plate".to_owned(),
        setback,
        drop,
        rated_power: Slot::new(None, reading!(job::BracketSpec.rated_power)),
        rated_weight: Slot::new(None, reading!(job::BracketSpec.rated_weight)),
        weight: Slot::new(None, reading!(job::BracketSpec.weight)),
        bottom: Slot::new(None, reading!(job::Hung.bottom)),
        width: None,
        travel: Slot::new(None, reading!(job::Hung.travel)),
        raised: None,
        spec,
    }
}

/// Whether a rule's own sweeps all keep their distance, and nothing else strikes that did not.
fn clears(before: &Swing, then: &Swing, own: &[Own]) -> bool {
    let all: [Own; 6] = [
        |swing| &swing.full_tilt,
        |swing| &swing.raised,
        |swing| &swing.lock,
        |swing| &swing.neighbours,
        |swing| &swing.cylinder,
        |swing| &swing.tie_bar,
    ];
    let struck = |swept: &Answer<Vec<Swept>>| swept.iter().flatten().filter(|one| one.touches()).count();
    own.iter().all(|of| match of(then) {
        Ok(all) => all.iter().all(Swept::keeps),
        Err(open) => matches!(open, Absent::NotApplicable(_)),
    }) && all.iter().all(|of| struck(of(then)) <= struck(of(before)))
}

/// An engine hung so much higher along the transom, by whole rows: where its bracket has the row, and the plate's window allows
/// it.
fn hung_higher(case: &Case, group: &Group, engine: &Engine, up: Length) -> Option<Remedy> {
    if group.is_lifted() {
        return None;
    }
    let holes = ((up / inches(HOLE_ROW_STEP_IN)).value - 1e-9).ceil().max(1.0) as usize;
    let row = row_of(case.rig, group, engine).0 + holes;
    let rows = Rows::of(case.rig, group, engine).ok()?;
    rows.allows(row).then(|| {
        mend::change(
            say!("hang it {}", holes_up(row)),
            [Change::to(format!("{}.holes_up", group.entry), row.to_string())],
        )
    })
}
