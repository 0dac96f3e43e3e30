//! The glyphs of print, as what a keyboard writes.

/// Primes, dashes, special spaces and one-glyph fractions as their plain equivalents.
pub(super) fn plain_notation(text: &str) -> String {
    let mut plain = String::with_capacity(text.len() + 8);
    for character in text.chars() {
        match character {
            '′' | '’' | '‘' => plain.push('\''),
            '″' | '”' | '“' => plain.push('"'),
            '−' | '–' => plain.push('-'),
            '⁄' => plain.push('/'),
            '\u{a0}' | '\u{2009}' | '\u{202f}' | '\t' => plain.push(' '),
            other => match glyph_fraction(other) {
                Some(fraction) => {
                    plain.push(' ');
                    plain.push_str(fraction);
                }
                None => plain.push(other),
            },
        }
    }
    plain.replace("''", "\"")
}

fn glyph_fraction(glyph: char) -> Option<&'static str> {
    Some(match glyph {
        '½' => "1/2",
        '¼' => "1/4",
        '¾' => "3/4",
        '⅓' => "1/3",
        '⅔' => "2/3",
        '⅕' => "1/5",
        '⅖' => "2/5",
        '⅗' => "3/5",
        '⅘' => "4/5",
        '⅙' => "1/6",
        '⅚' => "5/6",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        '⅒' => "1/10",
        _ => return None,
    })
}
