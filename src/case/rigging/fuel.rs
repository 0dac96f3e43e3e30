//! Each fuel line with what flows in it and how hard it is drawn.

use uom::si::f64::{Pressure, Ratio, VolumeRate};

use crate::case::Case;
use crate::job::rigging::{self, Chosen, FuelLine, FuelRig};
use crate::job::{Cycle, Role};
use crate::physics::rigging::fuel::{self, Line};
use crate::quantity::{Basis, Dimensioned, Temperature, celsius, inches_hg, say};
use crate::reading::reading;
use crate::rig::{Engine, Missing};
use crate::working::{Sheet, Term};

use super::{asked_of, slot};

/// The fuel is taken to be this warm where nobody says. Common practice, no source.
const SUMMER_C: f64 = 38.0;

/// A fuel line as it works.
pub struct Fed<'a> {
    /// What the job says of it.
    pub line: &'a FuelLine,
    /// What it is called.
    pub name: String,
    /// What flows at full throttle.
    pub flow: Term<VolumeRate>,
    /// Suction at the engine.
    pub suction: Term<Pressure>,
    /// The line as it is worked out.
    pub hydraulic: Line,
    /// How both came about.
    pub sheet: Sheet,
}

/// What a line is called.
pub fn line_name(line: &FuelLine, index: usize) -> String {
    line.name.clone().unwrap_or_else(|| format!("fuel line {}", index + 1))
}

/// The main engines that burn fuel.
pub fn burning<'a>(case: &'a Case) -> Vec<&'a Engine> {
    burning_for(case, Role::Main)
}

/// The engines for this that burn fuel.
fn burning_for<'a>(case: &'a Case, role: Role) -> Vec<&'a Engine> {
    let engines = case.rig.after.engines().map(|(_, engine)| engine).filter(|engine| engine.role == role);
    engines.filter(|engine| engine.spec.cycle != Some(Cycle::Electric)).collect()
}

/// Whether engines are told and none of them burns anything.
pub fn none_burns(case: &Case) -> bool {
    !case.rig.after.mains().is_empty() && burning(case).is_empty()
}

/// What one main engine burns at full throttle: its sheet's rate, else by its power; the thirstiest of several.
///
/// # Errors
/// No engine is told, or neither its power nor its rate.
pub fn rate(sheet: &mut Sheet, case: &Case) -> Result<Term<VolumeRate>, Missing> {
    rate_for(sheet, case, Role::Main)
}

/// The same of the engines that are for this.
fn rate_for(sheet: &mut Sheet, case: &Case, role: Role) -> Result<Term<VolumeRate>, Missing> {
    let mut most: Option<Term<VolumeRate>> = None;
    for engine in burning_for(case, role) {
        let rate = match &engine.spec.fuel_rate {
            Some(rate) => Term::new(format!("Q, {}", engine.label), rate.value),
            None => {
                let power = slot(&engine.power).ask()?;
                sheet.told("P", Some(power));
                fuel::rate_by_power(sheet, power.value)
            }
        };
        most = match most {
            Some(other) if other.value().si() >= rate.value().si() => Some(other),
            _ => Some(rate),
        };
    }
    most.ok_or_else(|| case.rig.after.missing())
}

/// The fuel's temperature on the hottest day.
pub fn temperature(rig: &FuelRig) -> Temperature {
    rig.temperature.as_ref().map_or(celsius(SUMMER_C), |reading| reading.value)
}

/// A line of the job as it works.
///
/// # Errors
/// What is missing of it, or of the engines.
pub fn fed<'a>(case: &Case, line: &'a FuelLine, index: usize) -> Result<Fed<'a>, Vec<Missing>> {
    let name = line_name(line, index);
    let mut sheet = Sheet::default();
    let flow = match &line.flow {
        Some(flow) => {
            sheet.told("Q", Some(flow));
            Ok(Term::new("Q", flow.value))
        }
        None => rate_for(&mut sheet, case, line.to.unwrap_or_default()),
    };
    let hose = line.hose.spec().and_then(|hose| hose.bore.as_ref());
    let bore = asked_of(hose, reading!(rigging::FuelLine.hose), &name).ask();
    let length = asked_of(line.length.as_ref(), reading!(rigging::FuelLine.length), &name).ask();
    let lift = asked_of(line.lift.as_ref(), reading!(rigging::FuelLine.lift), &name).ask();
    let (flow, bore, length, lift) = match (flow, bore, length, lift) {
        (Ok(flow), Ok(bore), Ok(length), Ok(lift)) => (flow, bore, length, lift),
        (flow, bore, length, lift) => {
            let missing = [flow.err(), bore.err(), length.err(), lift.err()];
            return Err(missing.into_iter().flatten().collect());
        }
    };
    sheet.told("D", Some(bore));
    sheet.told("L", Some(length));
    sheet.told("h", Some(lift));
    sheet.origin::<Ratio>("N", if line.engines.is_some() { Basis::Measured } else { Basis::Assumed }.origin());
    let engines = Term::new("N", Ratio::from_si(f64::from(line.engines.unwrap_or(1))));
    let flow = sheet.set("Q", "what flows in the line at full throttle", engines * flow);
    let devices = devices(&mut sheet, line, flow.value());
    let hydraulic = Line {
        bore: bore.value,
        length: length.value,
        elbows: line.elbows,
        barbs: line.barbs,
        valves: line.valves,
        lift: lift.value,
        devices,
        // Cold fuel is thicker and draws harder than hot: the suction is judged at a mild day's.
        temperature: celsius(MILD_C),
    };
    let suction = fuel::suction(&mut sheet, &hydraulic, flow.value());
    Ok(Fed { line, name, flow, suction, hydraulic, sheet })
}

/// A mild day's fuel, °C. Common practice, no source.
const MILD_C: f64 = 15.0;

/// What filter, anti-siphon valve and bulb take off.
fn devices(sheet: &mut Sheet, line: &FuelLine, flow: VolumeRate) -> Pressure {
    let mut sum = Pressure::from_si(0.0);
    if let Some(filter) = &line.filter {
        let usual = inches_hg(fuel::FILTER_IN_HG);
        let drop = filter.drop.as_ref().map_or(usual, |drop| drop.value);
        let rated = filter.flow.as_ref().map_or(flow, |rated| rated.value);
        if rated.si() > 0.0 {
            sheet.told("Δpr", filter.drop.as_ref());
            sheet.told("Qr", filter.flow.as_ref());
            sum += fuel::device_drop(sheet, "Δpf", drop, flow, rated).value();
        }
    } else if line.separator == Some(true) {
        sum += inches_hg(fuel::FILTER_IN_HG);
    }
    if line.anti_siphon == Some(true) {
        sum += inches_hg(fuel::ANTI_SIPHON_IN_HG);
    }
    if line.bulb == Some(true) {
        sum += inches_hg(fuel::BULB_IN_HG);
    }
    if sum.si() > 0.0 {
        sheet.remark(say!("Filter, anti-siphon valve and bulb: by their papers, else as is usual."));
    }
    sum
}
