//! The rules: a folder a family, a file a rule, and here the one list of them all.

#![allow(clippy::result_large_err, reason = "a finding is made once a rule, whether early or late")]

mod asked_back;
mod cause;
mod cautions;
mod controls;
mod doubt;
mod electrical;
mod finding;
mod fit;
mod fuel;
mod height;
pub mod mend;
mod network;
mod power;
pub mod rule;
mod running;
mod steering;
mod stern;
mod strength;
mod swing;
mod trailer;
mod trial;
mod weight;
mod worth;

pub use cause::{Cause, Comes, by_cause};
pub use cautions::cautions;
pub(crate) use controls::goes;
pub use doubt::{Decides, Doubt, Taken, doubt_by_reading, measure_next};
pub use finding::{Finding, Judgement, Limit, ToBuy, Verdict};
pub use rule::{Family, Judged, Rule};
pub(crate) use strength::DESIGN_FACTOR;

use crate::case::Case;
use crate::working::{Part, Sheet};

/// Every rule, in the order of the report.
pub const ALL: &[&Rule] = &[
    &power::PLATE_LIMIT,
    &power::FORMULA_LIMIT,
    &power::TOO_LITTLE,
    &power::MATCHED_PAIR,
    &weight::TRANSOM_RATING,
    &weight::RATED_BASIS,
    &weight::BRACKET_RATING,
    &weight::PLATE_PERSONS,
    &weight::CAPACITY_LEFT,
    &weight::SWAMPED_FLOTATION,
    &weight::OLD_TO_NEW,
    &height::SHAFT_MATCH,
    &height::PLATE_WINDOW,
    &height::TRANSOM_ANGLE,
    &fit::BOLT_PATTERN,
    &fit::TOP_EDGE,
    &fit::TRANSOM_THICKNESS,
    &fit::CENTRE_DISTANCE,
    &stern::TRIM_CHANGE,
    &stern::WELL_EDGE,
    &stern::SCUPPERS,
    &stern::FREEBOARD,
    &stern::LIST,
    &stern::METACENTRIC_HEIGHT,
    &stern::CREW_TO_SIDE,
    &stern::CAPACITY_FROM_SHAPE,
    &stern::BRACKET_IMMERSION,
    &stern::PLATE_IMMERSED,
    &swing::FULL_TILT,
    &swing::STEERING_LOCK,
    &swing::NEIGHBOUR,
    &swing::CYLINDER,
    &swing::TIE_BAR,
    &swing::LIFTS_CLEAR,
    &swing::GROUND,
    &swing::PERMITTED_RANGE,
    &strength::BOLTS_TENSION,
    &strength::BOLTS_SHEAR,
    &strength::BOLTS_COMBINED,
    &strength::BOLT_TORQUE,
    &strength::CORE_BEARING,
    &strength::WASHER_CRUSH,
    &strength::PUNCHING,
    &strength::TOP_EDGE_TEAR,
    &strength::BENDING,
    &strength::CORE_SHEAR,
    &strength::PANEL_DEFLECTION,
    &strength::BRACKET_MOMENT,
    &strength::KNEES,
    &strength::SOFT_CORE,
    &strength::CORE_UNDER_BOLTS,
    &strength::TABBING,
    &strength::SIGNS,
    &steering::TURNS,
    &steering::EFFORT,
    &steering::RATING,
    &steering::CABLE,
    &steering::TOE,
    &steering::LINES,
    &steering::ACTUATOR,
    &fuel::SUCTION,
    &fuel::ONE_FEED,
    &fuel::BOILING,
    &fuel::HOSE,
    &fuel::VENT_AND_FILL,
    &fuel::ENDURANCE,
    &electrical::CRANKING,
    &electrical::STARTER_CABLE,
    &electrical::VOLTAGE_DROP,
    &electrical::AMPACITY,
    &electrical::FUSE,
    &electrical::DAY_BALANCE,
    &electrical::ISOLATION,
    &electrical::BONDING,
    &controls::LEVERS,
    &controls::CABLES,
    &controls::CUT_OFF,
    &controls::START_IN_GEAR,
    &controls::GAUGES,
    &controls::TUBE,
    &controls::OLD_RIGGING,
    &network::BACKBONE,
    &network::TERMINATORS,
    &network::VOLTAGE,
    &network::ENGINES,
    &trailer::LOAD,
    &trailer::COUPLING,
    &trailer::BRAKES,
    &trailer::BEHIND,
    &running::FULL_THROTTLE_BAND,
    &running::PITCH,
    &running::SLIP,
    &running::TOP_SPEED,
    &running::OVER_THE_HUMP,
    &running::TRIM,
    &running::PORPOISING,
    &running::TABS,
    &running::VENTILATION,
    &trial::FULL_THROTTLE,
    &trial::FUEL,
    &trial::SLIP,
    &trial::TWO_WAYS,
    &trial::EQUAL_LOAD,
    &trial::COMPARABLE,
    &trial::BEHAVIOUR,
    &trial::PROMISED,
    &worth::SEASON,
    &worth::PAYBACK,
];

/// The rule of this id.
pub fn find(id: &str) -> Option<&'static Rule> {
    ALL.iter().copied().find(|rule| rule.id == id)
}

/// The working of a family whose findings are calculations by themselves: a part for each, with what it says.
pub fn parts(case: &Case, family: Family) -> Vec<Part> {
    let rules = ALL.iter().filter(|rule| rule.family == family);
    rules
        .map(|rule| {
            let finding = (rule.judge)(case);
            let mut sheet = Sheet::default();
            sheet.remark(finding.summary);
            sheet.append(finding.working);
            Part { title: rule.full_name(), tables: finding.tables, sheet }
        })
        .collect()
}

/// Judges a case by every rule. A pure function: the same rig gives the same findings.
pub fn judge(case: &Case) -> Vec<Judged> {
    judge_families(case, |_| true)
}

/// Judges a case by the rules of some families.
pub fn judge_families(case: &Case, wanted: impl Fn(Family) -> bool) -> Vec<Judged> {
    let rules: Vec<&Rule> = ALL.iter().copied().filter(|rule| wanted(rule.family)).collect();
    let mut findings: Vec<(usize, Finding)> = Vec::new();
    for turn in turns(&rules) {
        let made = case.each(turn.len(), |i| (rules[turn[i]].judge)(case));
        findings.extend(turn.into_iter().zip(made));
    }
    findings.sort_by_key(|(i, _)| *i);
    let judged = rules.into_iter().zip(findings).map(|(rule, (_, finding))| Judged { rule, finding, doubt: None });
    let mut judged: Vec<Judged> = judged.collect();
    asked_back::hold_back(case.rig, &mut judged);
    cause::settle(case, &mut judged);
    judged
}

/// In what order several hands take the rules: the first of each slow family before all others, for it makes what the rest of them
/// share; that rest in a turn of its own, so that no hand waits for what another makes.
fn turns(rules: &[&Rule]) -> [Vec<usize>; 2] {
    const SLOW: [Family; 3] = [Family::Strength, Family::Running, Family::Swing];
    let firsts = SLOW.map(|family| rules.iter().position(|rule| rule.family == family));
    let place = |i: &usize| firsts.iter().position(|first| *first == Some(*i)).unwrap_or(SLOW.len());
    let (mut now, later): (Vec<usize>, Vec<usize>) =
        (0..rules.len()).partition(|i| place(i) < SLOW.len() || !SLOW.contains(&rules[*i].family));
    now.sort_by_key(place);
    [now, later]
}
