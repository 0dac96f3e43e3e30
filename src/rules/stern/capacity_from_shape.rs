//! `stern/capacity-from-shape`

use nalgebra::Point3;
use uom::si::f64::Mass;

use super::floated;
use crate::case::Case;
use crate::case::float::Float;
use crate::job::{EdgeKind, Fuel, Liquid, Plate, tape};
use crate::physics::capacity;
use crate::physics::float::maximum_displacement;
use crate::physics::weight::{self, FRESH_WATER_LB_FT3};
use crate::quantity::{Measure, pounds_per_cubic_foot, say};
use crate::rig::Missing;
use crate::rules::rule::{given, rule};
use crate::rules::weight::outside_small_boats;
use crate::rules::{Finding, Limit, Verdict};
use crate::working::{Sheet, Term};

rule! {
    /// The total weight on her capacity plate against a fifth of her reserve of displacement, worked out
    /// from her own shape.
    ///
    /// **Why.** A plate may be worn, wrong or for another hull; her shape is not.
    ///
    /// **Limit.** (maximum displacement − boat weight) / 5; maximum displacement is what she displaces,
    /// level, when the water just reaches the first place where it comes aboard.
    ///
    /// **Source.** 33 CFR 183.35 (weight capacity of outboard boats); 33 CFR 183.41 (persons).
    ///
    /// **When it warns.** Check sections, edges and weight; if they stand, load her to the lesser of the
    /// two and ask the builder.
    CAPACITY_FROM_SHAPE = Stern "stern/capacity-from-shape", judge;
}

fn judge(case: &Case) -> Finding {
    let rig = case.rig;
    match outside_small_boats(rig) {
        Ok(None) => {}
        Ok(Some(why)) => return Finding::not_applicable(why),
        Err(missing) => return Finding::unmeasured(missing),
    }
    let float = given!(floated(case));
    let edges: Vec<_> = float.edges_of(&[EdgeKind::Well, EdgeKind::Sheer, EdgeKind::Other]).collect();
    let points: Vec<Point3<f64>> = edges.iter().map(|edge| edge.point).collect();
    let fresh = pounds_per_cubic_foot(FRESH_WATER_LB_FT3);
    // Brackets are no part of the boat's own displacement.
    let Ok(most) = maximum_displacement(&float.built.hull, &points, fresh) else {
        return Finding::unmeasured(vec![Missing::one(&tape::EDGES)]);
    };
    let mut sheet = Sheet::default();
    let first = edges.get(most.first).map_or("", |edge| edge.name.as_str());
    sheet.remark(say!(
        "level, the water first reaches the {} at a draft of {}; fresh water, cut exactly",
        first,
        Measure::tape(most.draft)
    ));
    let boat = boat_weight(float, rig.boat.fuel, &rig.afloat.tanks, &mut sheet);
    let displaced = Term::new("Wd", most.mass);
    let capacity = capacity::weight(&mut sheet, &displaced, &boat);
    capacity::persons(&mut sheet, &capacity);
    sheet.remark("persons: before motor, controls, batteries and portable fuel are taken off");
    let found = capacity.measure();
    let plate = match rig.plate.ask() {
        Ok(Plate::Capacity { total_weight: Some(total), .. }) => total.value,
        Ok(Plate::Builders { load: Some(load), .. }) => load.value,
        _ => {
            return Finding {
                missing: vec![Missing::one(&tape::PLATE_TOTAL_WEIGHT)],
                ..Finding::new(
                    Verdict::Unmeasured,
                    say!("By her shape she may carry {}; no plate is given to compare it with.", found),
                )
            }
            .found(found)
            .working(sheet);
        }
    };
    let limit = Measure::of(plate);
    let finding = if capacity.value() < plate {
        Finding::new(
            Verdict::Warn,
            say!("By her shape she may carry {}, and her plate says {}.", found, limit),
        )
        .remedy(say!(
            "Load her to {} at the most until the builder has explained the plate; check the height of the {} first.",
            found,
            first
        ))
    } else {
        Finding::new(Verdict::Pass, say!("By her shape she may carry {}; her plate says {}.", found, limit))
    };
    finding.against(found, Limit::AtLeast(limit)).working(sheet)
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
