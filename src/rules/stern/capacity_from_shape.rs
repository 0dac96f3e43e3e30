//! `stern/capacity-from-shape`

use crate::rules::mend;
use nalgebra::Point3;
use uom::si::f64::{Angle, Mass};

use crate::case::Case;
use crate::case::float::Float;
use crate::job::{self, EdgeKind, Fuel, Liquid, Plate};
use crate::physics::capacity::{self, RESERVE_OVER_CAPACITY};
use crate::physics::float::maximum_displacement;
use crate::physics::weight::{self, FRESH_WATER_LB_FT3};
use crate::quantity::{Dimensioned, Measure, Text, pounds_per_cubic_foot, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::weight::outside_small_boats;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Term};

rule! {
    /// The total weight on her capacity plate against a fifth of her reserve of displacement, worked out
    /// from her own shape.
    ///
    /// **Why.** A plate may be worn, wrong or for another hull; her shape is not.
    ///
    /// **Limit.** (maximum displacement − boat weight) / 5, not less than the plate by more than a shape taken
    /// with a tape leaves open: a twentieth of the maximum displacement. That is what she displaces, level, when
    /// the water just reaches the first place where it comes aboard. What of her is level the regulation
    /// leaves open: keel or sheer, whichever gives her more; the other is told.
    ///
    /// **Source.** 33 CFR 183.35 (weight capacity of outboard boats); 33 CFR 183.41 (persons); Common practice,
    /// no source (the twentieth).
    ///
    /// **When it warns.** Check sections, edges and weight; if they stand, load her to the lesser of the
    /// two and ask the builder.
    CAPACITY_FROM_SHAPE = Stern "stern/capacity-from-shape", judge;
}

/// How far the maximum displacement of a hull taken with a tape may be off, as a part of it: half an inch on each
/// breadth and a quarter on the edge. Common practice, no source.
const TAPE_CLOSENESS: f64 = 0.05;

/// What she may carry when this of her is level.
struct Carries<'f> {
    level: &'static str,
    capacity: Term<Mass>,
    most: Mass,
    /// Where the water first comes aboard.
    first: &'f str,
}

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    match outside_small_boats(rig) {
        Ok(None) => {}
        Ok(Some(why)) => return Ok(Finding::not_applicable(why)),
        Err(missing) => return Ok(Finding::unmeasured(missing)),
    }
    let float = case.float()?;
    let mut sheet = Sheet::default();
    let boat = boat_weight(float, rig.job.boat.fuel, &rig.job.weights.tanks, &mut sheet);
    let attitudes = [("keel", Some(Angle::from_si(0.0))), ("sheer", float.built.sheer_level())];
    let ways = attitudes.into_iter().filter_map(|(level, trim)| carries(float, level, trim?, &boat, &mut sheet));
    let mut ways: Vec<Carries> = ways.collect();
    ways.sort_by(|a, b| a.most.si().total_cmp(&b.most.si()));
    let (Some(least), Some(most)) = (ways.first(), ways.last()) else {
        return Ok(Finding::unmeasured(vec![Missing::one(reading!(job::Job.edges))]));
    };
    capacity::persons(&mut sheet, &most.capacity);
    sheet.remark("persons: before motor, controls, batteries and portable fuel are taken off");
    let found = most.capacity.measure();
    let mut says = say!("By her shape she may carry {} with her {} level", found, most.level);
    if least.level != most.level {
        says = says.then(say!(", {} with her {} level", least.capacity.measure(), least.level));
    }
    let plate = match rig.job.plate().ask() {
        Ok(Plate::Capacity { total_weight: Some(total), .. }) => total.value,
        Ok(Plate::Builders { load: Some(load), .. }) => load.value,
        _ => {
            return Ok(Finding {
                missing: vec![Missing::one(reading!(job::Plate.total_weight))],
                ..Finding::new(Verdict::Unmeasured, says.then(Text::from("; no plate is given to compare it with.")))
            }
            .found(found)
            .working(sheet));
        }
    };
    let open = TAPE_CLOSENESS * most.most / RESERVE_OVER_CAPACITY;
    let limit = plate - open;
    let says = says.then(say!(
        ", and her plate says {}; a shape taken with a tape leaves {} open.",
        Measure::of(plate),
        Measure::of(open)
    ));
    let finding = if most.capacity.value() < limit {
        Finding::new(Verdict::Warn, says).remedy(mend::care(say!(
            "Load her to {} at the most until the builder has explained the plate; check the height of the {} first.",
            least.capacity.measure(),
            least.first
        )))
    } else {
        Finding::new(Verdict::Pass, says)
    };
    Ok(finding.against(found, Limit::AtLeast(Measure::of(limit))).working(sheet))
}

/// What she may carry with this of her level, line by line; nothing where no edge is known.
fn carries<'f>(
    float: &'f Float,
    level: &'static str,
    trim: Angle,
    boat: &Term<Mass>,
    sheet: &mut Sheet,
) -> Option<Carries<'f>> {
    let edges: Vec<_> = float.edges_of(&[EdgeKind::Well, EdgeKind::Sheer, EdgeKind::Other]).collect();
    let points: Vec<Point3<f64>> = edges.iter().map(|edge| edge.point).collect();
    let fresh = pounds_per_cubic_foot(FRESH_WATER_LB_FT3);
    // Brackets are no part of the boat's own displacement.
    let most = maximum_displacement(&float.built.hull, &points, fresh, trim).ok()?;
    let first = edges.get(most.first).map_or("", |edge| edge.name.as_str());
    sheet.remark(say!(
        "her {} level, the water first reaches the {} at a draft of {} at the transom; fresh water, cut exactly",
        level,
        first,
        Measure::tape(most.draft)
    ));
    let capacity = capacity::weight(sheet, &Term::new("Wd", most.mass), boat);
    Some(Carries { level, capacity, most: most.mass, first })
}

/// The bare boat with her permanent tanks full.
fn boat_weight(float: &Float, fuel: Option<Fuel>, tanks: &[crate::job::TankEntry], sheet: &mut Sheet) -> Term<Mass> {
    let mut parts = vec![("bare boat".to_owned(), float.bare.weight.mass)];
    if fuel != Some(Fuel::PortableTanks) {
        for tank in tanks.iter().filter(|tank| tank.holds == Liquid::Fuel) {
            if let Some(mass) = float.full(tank) {
                parts.push((tank.what.clone(), mass));
            }
        }
    }
    if fuel.is_none() {
        sheet.remark("boat.fuel is not given: her tanks are taken as permanent, the careful way");
    }
    weight::total(sheet, "Wb", "boat weight, permanent tanks full", &parts)
}
