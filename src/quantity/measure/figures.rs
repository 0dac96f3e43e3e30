//! Numbers as figures: thousands, decimals, sixteenths of an inch.

/// Sixteenths in an inch: the marks of a common tape.
pub(super) const SIXTEENTHS: f64 = 16.0;

/// `1,250.5` with so many decimals, a true minus never in front of zero.
pub(super) fn decimals(value: f64, places: i32) -> String {
    let places = places.max(0) as usize;
    let text = format!("{:.places$}", value.abs());
    let negative = value < 0.0 && text.bytes().any(|b| (b'1'..=b'9').contains(&b));
    grouped(&text, negative)
}

/// What a reader takes a value for that is printed with so many decimals; negative where it ends in noughts.
pub(super) fn as_printed(value: f64, places: i32) -> f64 {
    let printed = usize::try_from(places).ok().and_then(|places| format!("{value:.places$}").parse().ok());
    let step = 0.1_f64.powi(places);
    printed.unwrap_or_else(|| (value / step).round() * step)
}

/// Thousands separators put into the whole part of a plain decimal number.
pub fn grouped(plain: &str, negative: bool) -> String {
    let (whole, rest) = plain.split_at(plain.find('.').unwrap_or(plain.len()));
    let mut out = String::with_capacity(plain.len() + 4);
    if negative {
        out.push('-');
    }
    for (i, digit) in whole.chars().enumerate() {
        if i > 0 && (whole.len() - i) % 3 == 0 {
            out.push(',');
        }
        out.push(digit);
    }
    out + rest
}

/// Significant digits of a constant: more than any of the trade's has, fewer than a change of units blurs.
const DIGITS: i32 = 10;
/// Decimals of a constant, where these are more.
const DECIMALS: i32 = 6;

/// `0.0000125`, `1,609.344`: a constant with its digits and no zeros behind them.
pub(super) fn exact_digits(value: f64) -> String {
    let size = value.abs();
    let leading = if size > 0.0 && size.is_finite() { size.log10().floor() as i32 } else { 0 };
    let places = DECIMALS.max(DIGITS - 1 - leading) as usize;
    let text = grouped(&format!("{size:.places$}"), value < 0.0);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// `12-7/8`, `7/8`, `12`, `-3-1/2`: inches to the nearest sixteenth.
pub(super) fn sixteenths(inches: f64) -> String {
    let marks = (inches * SIXTEENTHS).round();
    let (whole, mut part) = ((marks.abs() / SIXTEENTHS).floor(), marks.abs() % SIXTEENTHS);
    let mut over = SIXTEENTHS;
    while part > 0.0 && part % 2.0 == 0.0 {
        part /= 2.0;
        over /= 2.0;
    }
    let whole_text = grouped(&format!("{whole:.0}"), marks < 0.0);
    match (whole > 0.0, part > 0.0) {
        (_, false) => whole_text,
        (true, true) => format!("{whole_text}-{part:.0}/{over:.0}"),
        (false, true) => format!("{}{part:.0}/{over:.0}", if marks < 0.0 { "-" } else { "" }),
    }
}

/// `24 ft 3-1/2 in`.
pub(super) fn feet_and_inches(feet: f64) -> String {
    let marks = (feet.abs() * 12.0 * SIXTEENTHS).round();
    let whole = (marks / (12.0 * SIXTEENTHS)).floor();
    let inches = sixteenths(marks / SIXTEENTHS - whole * 12.0);
    let sign = if feet < 0.0 && marks > 0.0 { "-" } else { "" };
    match (whole > 0.0, inches == "0") {
        (true, true) => format!("{sign}{} ft", grouped(&format!("{whole:.0}"), false)),
        (true, false) => format!("{sign}{} ft {inches} in", grouped(&format!("{whole:.0}"), false)),
        (false, _) => format!("{sign}{inches} in"),
    }
}

/// What a ratio of strength to load is worth, as a part of it: meshes twice as fine move it by less than 2 %, and the rest is
/// for a plate's theory with its loads on stated areas. Common practice, no source, for the rest.
const FACTOR_WORTH: f64 = 0.05;
/// A ratio of strength to load so great that its size says nothing.
pub(super) const FACTOR_WITHOUT_END: f64 = 100.0;

/// Two digits of a value, nothing behind a small whole number: `8.8`, `11`, `870`, `0.42`, `9`.
pub(super) fn two_digits(value: f64) -> String {
    let step = 0.1_f64.powi(two_digit_places(value));
    decimals((value / step).round() * step, two_digit_places(value))
}

/// Decimals with which a value shows two digits, negative where it ends in noughts.
pub(super) fn two_digit_places(value: f64) -> i32 {
    let size = value.abs();
    if (size - size.round()).abs() < 1e-9 && size < 100.0 || !size.is_finite() {
        return 0;
    }
    1 - (size * (1.0 + 1e-9)).log10().floor() as i32
}

/// Less than this is nothing to a question put outright, and is told as such.
const NEXT_TO_NOTHING: f64 = 1e-4;

/// Decimals with which a value shows three digits, none where it has them before its point.
pub(super) fn three_digit_places(value: f64) -> i32 {
    let size = value.abs();
    if !(NEXT_TO_NOTHING..100.0).contains(&size) || (size - size.round()).abs() < 1e-9 {
        return 0;
    }
    2 - size.log10().floor() as i32
}

/// Decimals with which such a ratio shows two digits.
pub(super) fn factor_places(value: f64) -> i32 {
    let size = value.abs();
    if size > 0.0 && size.is_finite() { (1 - (size * (1.0 + 1e-9)).log10().floor() as i32).clamp(0, 4) } else { 1 }
}

/// `1.0 ± 0.1`, `0.25 ± 0.02`: two digits, and what they are worth.
pub(super) fn factor(value: f64) -> String {
    factor_within(value, 0.0)
}

/// The same, where its readings are worth so much besides.
pub(super) fn factor_within(value: f64, readings: f64) -> String {
    if value > FACTOR_WITHOUT_END {
        return "over 100".to_owned();
    }
    let places = factor_places(value);
    format!("{} ± {}", decimals(value, places), factor_worth(value, readings, places))
}

/// What such a ratio is worth, in its own digits, where its readings are worth so much besides.
pub(super) fn factor_worth(value: f64, readings: f64, places: i32) -> String {
    let step = 0.1_f64.powi(places);
    decimals(((FACTOR_WORTH * value).hypot(readings) / step).ceil().max(1.0) * step, places)
}
