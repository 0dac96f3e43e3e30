//! `network/voltage`

use super::told;
use crate::case::Case;
use crate::case::rigging::asked;
use crate::job::rigging;
use crate::physics::rigging::network::{self, LEAST_V, Load, SUPPLY_V};
use crate::physics::rigging::wire;
use crate::quantity::{Dimensioned, Measure, Text, celsius, nth, say};
use crate::reading::{All, reading};
use crate::rig::Missing;
use crate::rules::mend;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Table};
use uom::si::f64::{ElectricPotential, Length};

rule! {
    /// Voltage at the device that is worst off, by where power enters and what each draws.
    ///
    /// **Why.** A device at the far end that gets too little restarts whenever the engines crank.
    ///
    /// **Limit.** 9 V at each device, from 12 V where power enters; 50 mA a load equivalent. A device whose place is not told is
    /// taken at the far end.
    ///
    /// **Source.** NMEA 2000 and IEC 61162-3 (load equivalents, least voltage, wires of the cables, from memory); resistance of copper
    /// by IEC 60028.
    ///
    /// **When it warns.** It warns under it: let power enter in the middle, or use heavier cable.
    VOLTAGE = Network "network/voltage", judge;
}

/// The cables' copper, °C. Common practice, no source.
const COPPER_C: f64 = 30.0;

fn judge(case: &Case) -> Judgement {
    let network = told(case)?;
    let (cable, length) =
        (asked(network.cable.as_ref(), reading!(rigging::Rigging.network)).ask(), network.length().ask()).all()?;
    let devices = reading!(rigging::Network.devices);
    if network.devices.is_empty() {
        return Ok(Finding::unmeasured(vec![Missing::one(devices)]));
    }
    let power_at = network.power_at.as_ref().map_or(0.0, |at| at.value.si());
    let end = length.value.si();
    let far = if power_at > end / 2.0 { 0.0 } else { end };
    let mut loads = Vec::new();
    let mut names = Vec::new();
    for (i, device) in network.devices.iter().enumerate() {
        let name = device.name.clone().unwrap_or_else(|| nth("device", i));
        let Some(equivalents) = device.equivalents else {
            return Ok(Finding::unmeasured(vec![Missing { measurement: devices, of: Some(name) }]));
        };
        loads.push(Load {
            at: device.at.as_ref().map_or(far, |at| at.value.si()),
            current: network::current(equivalents).si(),
            drop: device.drop.as_ref().map_or(0.0, |drop| drop.value.si()),
        });
        names.push(name);
    }
    let mut sheet = Sheet::default();
    let per_metre = |gauge, sheet: &mut Sheet| {
        let area = wire::area(sheet, gauge);
        let rho = wire::resistivity(sheet, celsius(COPPER_C));
        // There and back of half a metre: one wire of a metre.
        wire::resistance(sheet, &rho, Length::from_si(0.5), &area).value().si()
    };
    let backbone = per_metre(network::gauge(*cable), &mut sheet);
    let drop = per_metre(network::gauge(rigging::Backbone::Light), &mut sheet);
    let lost = network::losses(power_at, &loads, backbone, drop);
    let rows = names
        .iter()
        .zip(&lost)
        .map(|(name, lost)| {
            vec![Text::from(name.as_str()), Measure::of(ElectricPotential::from_si(SUPPLY_V - lost)).into()]
        })
        .collect();
    let worst =
        lost.iter().enumerate().fold((0, 0.0_f64), |worst, (i, lost)| if *lost > worst.1 { (i, *lost) } else { worst });
    sheet.remark("Lost in each stretch of the backbone: its resistance there and back times all that flows beyond it; in a drop, what the device draws.");
    let left =
        network::at_device(&mut sheet, ElectricPotential::from_si(SUPPLY_V), ElectricPotential::from_si(worst.1));
    let least = ElectricPotential::from_si(LEAST_V);
    // More lost than there is leaves nothing.
    let none = ElectricPotential::from_si(0.0);
    let found = if none.exceeds(left.value()) { Measure::of(none) } else { left.measure() };
    let limit = Limit::AtLeast(Measure::of(least));
    let equivalents: u32 = network.devices.iter().filter_map(|device| device.equivalents).map(u32::from).sum();
    let summary = say!("With {} load equivalents {} is left at the {}.", equivalents, found, names[worst.0].as_str());
    let finding = if least.exceeds(left.value()) {
        Finding::new(Verdict::Warn, summary)
            .remedy(mend::yard("Let power enter in the middle of the backbone, or use heavier cable."))
            .buys("power tee, or heavier backbone cable", Text::from("one"))
    } else {
        Finding::new(Verdict::Pass, summary)
    };
    Ok(finding.against(found, limit).working(sheet).table(Table::new(
        "voltage at each device",
        &["device", "voltage"],
        rows,
    )))
}
