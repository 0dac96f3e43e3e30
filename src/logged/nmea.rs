//! A log of NMEA 0183 sentences: RMC and VTG for time, speed and course, RPM for engine speeds, XDR for engine speeds and fuel.
//! Source of the sentences' fields: NMEA 0183, values from memory; framing, sums, RMC and VTG by the `nmea` crate.

use std::collections::BTreeMap;
use std::f64::consts::TAU;

use nmea::ParseResult;
use nmea::sentences::rmc::RmcStatusOfFix;

use crate::quantity::{HOUR, MINUTE, NAUTICAL_MILE};

use super::{Damage, Log, LoggedError, Sample, gaps};

/// m/s in a knot.
const KNOT: f64 = NAUTICAL_MILE / HOUR;
/// m³/s in the litre a second of a flow transducer (XDR, type R, unit l).
const LITRE_A_SECOND: f64 = 1e-3;
const SECONDS_A_DAY: f64 = 86_400.0;
/// A clock that goes back by more than this has passed midnight, seconds.
const PAST_MIDNIGHT: f64 = 43_200.0;
/// The longest sentence that is read.
const LONGEST: usize = nmea::SENTENCE_MAX_LEN;

/// Reads a log: what instruments said between one fix and the next goes with the first of them.
///
/// # Errors
/// Where no fix is in it.
pub fn read_nmea(text: &str) -> Result<Log, LoggedError> {
    let mut reader = Reader::default();
    for line in text.lines().map(str::trim).filter(|line| !line.is_empty()) {
        reader.damage.lines += 1;
        reader.line(line);
    }
    reader.close();
    if reader.samples.is_empty() {
        return Err(LoggedError::NoFix);
    }
    let damage = Damage { gaps: gaps(&reader.samples), ..reader.damage };
    Ok(Log { samples: reader.samples, damage })
}

#[derive(Default)]
struct Reader {
    samples: Vec<Sample>,
    damage: Damage,
    now: Option<Sample>,
    first: Option<f64>,
    days: f64,
    last: f64,
    /// Engine speeds and fuel by the instrument's number or name.
    engines: BTreeMap<String, f64>,
    fuels: BTreeMap<String, f64>,
}

impl Reader {
    fn line(&mut self, line: &str) {
        // A logger may put its own clock before the sentence.
        let Some(sentence) = line.find('$').map(|at| &line[at..]) else {
            self.damage.unreadable += usize::from(!line.contains('!'));
            return;
        };
        if sentence.len() > LONGEST {
            self.damage.unreadable += 1;
            return;
        }
        match sum_agrees(sentence) {
            None => self.damage.unreadable += 1,
            Some(false) => self.damage.bad_sums += 1,
            Some(true) => {
                let body = &sentence[1..sentence.rfind('*').unwrap_or(sentence.len())];
                let fields: Vec<&str> = body.split(',').collect();
                let kind = fields.first().and_then(|head| head.get(2..)).unwrap_or_default();
                match kind {
                    "RMC" | "VTG" => self.fix(sentence, &fields),
                    "RPM" => self.engine_speed(&fields),
                    "XDR" => self.transducers(&fields),
                    _ => {}
                }
            }
        }
    }

    fn fix(&mut self, sentence: &str, fields: &[&str]) {
        match nmea::parse_str(sentence) {
            Ok(ParseResult::RMC(rmc)) => {
                if matches!(rmc.status_of_fix, RmcStatusOfFix::Invalid) {
                    self.damage.void += 1;
                    return;
                }
                let clock = fields.get(1).and_then(|time| clock(time));
                let (Some(clock), Some(speed)) = (clock, rmc.speed_over_ground) else {
                    self.damage.unreadable += 1;
                    return;
                };
                self.close();
                // Counted from the first fix: midnight is passed by the clock that goes back.
                if self.first.is_some() && clock + PAST_MIDNIGHT < self.last {
                    self.days += 1.0;
                }
                self.last = clock;
                let first = *self.first.get_or_insert(clock);
                let time = clock - first + self.days * SECONDS_A_DAY;
                let course = rmc.true_course.map(f64::from);
                self.now = Some(Sample { time, speed: f64::from(speed) * KNOT, course, ..Sample::default() });
            }
            Ok(ParseResult::VTG(vtg)) => {
                if let Some(now) = &mut self.now {
                    now.course = vtg.true_course.map(f64::from).or(now.course);
                }
            }
            _ => self.damage.unreadable += 1,
        }
    }

    /// `$--RPM,E,1,2400.0,,A`: engine or shaft, its number, turns a minute, pitch, whether valid.
    fn engine_speed(&mut self, fields: &[&str]) {
        let [_, source, number, speed, ..] = fields else {
            self.damage.unreadable += 1;
            return;
        };
        let valid = fields.get(5).is_none_or(|valid| !valid.starts_with('V'));
        match speed.parse::<f64>() {
            Ok(speed) if *source == "E" && valid && is_sound(speed) => {
                self.engines.insert((*number).to_owned(), speed * TAU / MINUTE);
            }
            Ok(_) => {}
            Err(_) => self.damage.unreadable += 1,
        }
    }

    /// `$--XDR,R,0.0221,l,FUEL#0,T,3600,R,ENGINE#0`: kind, value, unit, name, again and again. R is a flow, T a tachometer.
    fn transducers(&mut self, fields: &[&str]) {
        for quad in fields.get(1..).unwrap_or_default().chunks_exact(4) {
            let Ok(value) = quad[1].parse::<f64>() else {
                self.damage.unreadable += usize::from(!quad[1].is_empty());
                continue;
            };
            let name = quad[3].to_ascii_uppercase();
            if !is_sound(value) {
                continue;
            }
            match (quad[0], quad[2]) {
                ("R", "l" | "L" | "") if name.contains("FUEL") => {
                    self.fuels.insert(name, value * LITRE_A_SECOND);
                }
                ("T", _) if name.contains("ENGINE") => {
                    self.engines.insert(name, value * TAU / MINUTE);
                }
                _ => {}
            }
        }
    }

    /// The fix that is open, with what instruments said since.
    fn close(&mut self) {
        let (engines, fuels) = (std::mem::take(&mut self.engines), std::mem::take(&mut self.fuels));
        let Some(mut now) = self.now.take() else { return };
        if !engines.is_empty() {
            now.engine = Some(engines.values().sum::<f64>() / engines.len() as f64);
        }
        if !fuels.is_empty() {
            now.fuel = Some(fuels.values().sum());
        }
        self.samples.push(now);
    }
}

fn is_sound(value: f64) -> bool {
    value.is_finite() && value >= 0.0
}

/// Seconds since midnight of `hhmmss.ss`.
fn clock(time: &str) -> Option<f64> {
    let part = |range: std::ops::Range<usize>| time.get(range)?.parse::<u8>().ok().map(f64::from);
    let seconds = time.get(4..)?.parse::<f64>().ok().filter(|seconds| is_sound(*seconds))?;
    Some(part(0..2)? * HOUR + part(2..4)? * MINUTE + seconds)
}

/// Whether the sum behind the star is that of what stands before it; `None` where no sum stands there.
fn sum_agrees(sentence: &str) -> Option<bool> {
    let star = sentence.rfind('*')?;
    let told = u8::from_str_radix(sentence.get(star + 1..star + 3)?, 16).ok()?;
    let sum = sentence.as_bytes()[1..star].iter().fold(0, |sum, byte| sum ^ byte);
    Some(sum == told)
}
