//! `strength/washer-crush`

use uom::si::f64::{Force, Length};

use super::{CORE_FIRST, DESIGN_FACTOR, Judged, at_bolts, beside, capacity_sheet, ready};
use crate::case::Case;
use crate::case::strength::{PLATE_MATERIAL_YIELD, Part, Strength, plate_for};
use crate::physics::strength::bolts::{bearing_under_washer, washer_area};
use crate::physics::strength::knockdown::KnockDown;
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::rules::rule::{given, rule};
use crate::rules::{Finding, Verdict};
use crate::working::Sheet;

rule! {
    /// The core under the washers or the backing plate: crushed, or punched through.
    ///
    /// **Why.** A washer that sinks in slackens its bolt at every sea, and the next one up takes its
    /// share. A plate behind the bolts spreads the pull.
    ///
    /// **Limit.** The pull that crushes the core over the area that nut, washer and plate spread it to,
    /// and the pull that punches that area through, each at least twice the greatest pull.
    ///
    /// **Source.** EN 1993-1-8, 6.2.5 (how far a plate spreads a force), value from memory; ISO 12215-5,
    /// design stress half of the ultimate, value from memory.
    ///
    /// **When it warns.** Set a backing plate of the size that the finding gives. It fails where the
    /// pull is more than the core bears.
    WASHER_CRUSH = Strength "strength/washer-crush", judge;
}

/// Steps in which plates are sold and cut, and the thinnest that stays flat. Common practice, no source.
const THICKNESS_STEP_IN: f64 = 1.0 / 16.0;
const THINNEST_IN: f64 = 0.1875;
const SIZE_STEP_IN: f64 = 1.0;

fn judge(case: &Case) -> Finding {
    let strength = given!(ready(case));
    let crush = at_bolts(Part::Crush, DESIGN_FACTOR, "core under the nut", case.rig, strength);
    let punch = at_bolts(Part::Punch, DESIGN_FACTOR, "transom round the nut, punched through,", case.rig, strength);
    let (part, judged) = match (crush, punch) {
        (Ok(crush), Ok(punch)) if punch.worst.factor() < crush.worst.factor() => (Part::Punch, punch),
        (Ok(crush), _) => (Part::Crush, crush),
        (Err(finding), _) => return *finding,
    };
    let mut sheet = capacity_sheet(part, &judged, case.rig, strength);
    let across = judged.footing.spread(&strength.board, strength.left());
    sheet.remark(say!(
        "nut, washer and what lies behind them spread the pull over {} across",
        Measure::of(Length::from_si(across))
    ));
    // The crushing force's own steps say the area already.
    let mut aside = Sheet::default();
    let area = washer_area(
        if part == Part::Crush { &mut aside } else { &mut sheet },
        Length::from_si(across),
        Length::from_si(judged.footing.hole()),
    );
    bearing_under_washer(&mut sheet, Force::from_si(judged.worst.demand), &area);
    let mut finding =
        judged.finding.clone().working(sheet).table(beside("greatest pull on a bolt", Part::Crush, strength));
    if finding.verdict != Verdict::Pass {
        finding = finding.remedy(plate(&judged, strength));
    }
    finding
}

/// A backing plate that is enough: its thickness from the spread, its size from the bolts.
fn plate(judged: &Judged, strength: &Strength) -> Text {
    let footing = judged.footing;
    let board = &strength.board;
    let through = board.mean(strength.left(), |material| material.shear_strength.value.si());
    let pull = DESIGN_FACTOR * judged.worst.demand;
    let (thickness, across) = plate_for(footing, board, strength.left(), pull);
    let punched = pull / (std::f64::consts::PI * board.thickness() * through);
    let reach = 0.5 * (across.max(punched) - 1.5 * footing.diameter()).max(0.0);
    let crushing = strength.left().strength * board.core_material().crushing_strength.value.si();
    let thickness = thickness.max(reach / (PLATE_MATERIAL_YIELD / (3.0 * crushing)).sqrt());
    let step = inches(THICKNESS_STEP_IN).si();
    let thickness = (thickness.max(inches(THINNEST_IN).si()) / step).ceil() * step;
    let wide = |k: fn(&crate::physics::strength::bolts::Bolt) -> f64| {
        let low = footing.bolts.iter().map(k).fold(f64::INFINITY, f64::min);
        let high = footing.bolts.iter().map(k).fold(f64::NEG_INFINITY, f64::max);
        let step = inches(SIZE_STEP_IN).si();
        ((high - low + across.max(punched)) / step).ceil() * step
    };
    let (width, height) = (wide(|bolt| bolt.y), wide(|bolt| bolt.z));
    let tape = |metres: f64| Measure::tape(Length::from_si(metres));
    let near = footing
        .bolts
        .iter()
        .enumerate()
        .any(|(i, a)| footing.bolts[i + 1..].iter().any(|b| (a.y - b.y).hypot(a.z - b.z) < across.max(punched)));
    if near && strength.left() != KnockDown::SOUND {
        return Text::from(CORE_FIRST);
    }
    if near {
        return say!(
            "The bolts of the {} stand too near each other for any plate to spread their pull: spread it over {} bolts or more.",
            footing.name.as_str(),
            (footing.bolts.len() as f64 * DESIGN_FACTOR / judged.worst.factor()).ceil() as usize
        );
    }
    say!(
        "Set a backing plate of aluminium 5083-H116 plate, {} by {} and {} thick, behind the bolts of the {}.",
        tape(width),
        tape(height),
        tape(thickness),
        footing.name.as_str()
    )
}
