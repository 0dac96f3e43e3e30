//! An hour of a trial as a log of NMEA 0183 sentences: six runs both ways, turns between them, noise, dropouts, bad sums.

/// Engine speed and speed through the water, knots.
pub const RUNS: [(f64, f64); 6] =
    [(2000.0, 7.4), (3000.0, 17.2), (3500.0, 22.1), (4200.0, 27.6), (5000.0, 32.8), (5600.0, 36.4)];
/// Current, knots.
pub const CURRENT: f64 = 0.6;

/// The log, and what was done to it.
pub struct Made {
    pub text: String,
    pub bad_sums: usize,
    pub cut_short: usize,
    pub gaps: usize,
}

/// A small generator of numbers: the same log every time.
struct Noise(u64);

impl Noise {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    /// Between −1 and 1.
    fn about(&mut self) -> f64 {
        2.0 * self.next() - 1.0
    }
}

/// An hour, a fix a second, four sentences a fix.
pub fn hour(seed: u64) -> Made {
    let mut noise = Noise(seed);
    let mut made = Made { text: String::new(), bad_sums: 0, cut_short: 0, gaps: 0 };
    let leg = 3600 / (2 * RUNS.len());
    for second in 0..3600 {
        let (number, within) = (second / leg, second % leg);
        let ((rpm, knots), back) = (RUNS[number / 2], number % 2 == 1);
        // The first minute of a leg she turns and gathers way.
        let turning = within < 60;
        let course = if turning {
            (within * 3) as f64 + if back { 90.0 } else { 270.0 }
        } else if back {
            270.0
        } else {
            90.0
        };
        let along = if back { -CURRENT } else { CURRENT };
        let part = if turning { 0.5 + within as f64 / 120.0 } else { 1.0 };
        let speed = part * knots + along + 0.08 * noise.about();
        let engine = part * rpm + 12.0 * noise.about();
        let fuel = 1e-6 * engine * engine / 900.0;
        // Twice the receiver is gone for ten seconds.
        if [700, 2500].contains(&second) {
            made.gaps += 1;
        }
        if (700..710).contains(&second) || (2500..2510).contains(&second) {
            continue;
        }
        let time = format!("{:02}{:02}{:02}.00", 10 + second / 3600, second / 60 % 60, second % 60);
        let course = (course + 2.0 * noise.about()).rem_euclid(360.0);
        for body in [
            format!("GPRMC,{time},A,4130.000,N,07042.000,W,{speed:.2},{course:.1},140626,,,A"),
            format!("GPVTG,{course:.1},T,,M,{speed:.2},N,{:.2},K,A", speed * 1.852),
            format!("IIRPM,E,1,{engine:.1},,A"),
            format!("IIXDR,R,{fuel:.5},l,FUEL#0"),
        ] {
            let sum = body.bytes().fold(0u8, |sum, byte| sum ^ byte);
            // Fixes stay whole here, so that what is missing is counted where it was made.
            let is_fix = body.starts_with("GPRMC");
            let damage = noise.next();
            if !is_fix && damage < 0.01 {
                made.bad_sums += 1;
                made.text += &format!("${body}*{:02X}\r\n", sum ^ 0x15);
            } else if !is_fix && damage < 0.015 {
                made.cut_short += 1;
                made.text += &format!("${}\r\n", &body[..body.len() / 2]);
            } else {
                made.text += &format!("${body}*{sum:02X}\r\n");
            }
        }
    }
    made
}
