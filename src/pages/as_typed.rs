//! What a person typed, inside our own sentences: shown as typed, and unable to turn the words round
//! it about.

/// First-strong isolate and pop directional isolate (Unicode Standard Annex 9).
const ISOLATE: char = '\u{2068}';
const END: char = '\u{2069}';

/// The text without invisible controls; where it runs from right to left it is set apart, so that
/// the sentence round it keeps its own direction.
#[must_use]
pub fn as_typed(text: &str) -> String {
    let clean: String = text.trim().chars().filter(|c| !is_control(*c)).collect();
    if clean.chars().any(is_right_to_left) {
        [ISOLATE.to_string(), clean, END.to_string()].concat()
    } else {
        clean
    }
}

/// Controls that show nothing: of a terminal, and of the direction of writing.
fn is_control(c: char) -> bool {
    (c.is_control() && !matches!(c, '\n' | '\t'))
        || matches!(c, '\u{200e}' | '\u{200f}' | '\u{061c}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{feff}')
}

/// Blocks of the scripts written from right to left, Hebrew to Arabic and their later additions.
fn is_right_to_left(c: char) -> bool {
    matches!(c, '\u{0590}'..='\u{08ff}' | '\u{fb1d}'..='\u{fdff}' | '\u{fe70}'..='\u{fefc}' | '\u{10800}'..='\u{10fff}' | '\u{1e800}'..='\u{1efff}')
}

#[cfg(test)]
mod tests {
    use super::as_typed;

    #[test]
    fn plain_text_is_left_alone() {
        assert_eq!(as_typed(" A <b>tray</b> 🫖 "), "A <b>tray</b> 🫖");
        assert_eq!(as_typed("two\nlines"), "two\nlines");
    }

    #[test]
    fn right_to_left_text_is_set_apart_and_cannot_break_out() {
        assert_eq!(as_typed("מגש"), "\u{2068}מגש\u{2069}");
        assert_eq!(as_typed("a\u{202e}b\u{2069}\u{0}c"), "abc");
        assert_eq!(as_typed("מ\u{2069}\u{202e}ג"), "\u{2068}מג\u{2069}");
    }
}
