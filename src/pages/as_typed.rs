//! Typed text inside the program's own sentences. Invariant: the text appears as typed and cannot change
//! the reading direction of the sentence.

/// First-strong isolate and pop directional isolate (Unicode Standard Annex 9).
const ISOLATE: char = '\u{2068}';
const END: char = '\u{2069}';

/// Removes invisible control characters. Right-to-left text is isolated, so that the sentence around it
/// keeps its own direction.
#[must_use]
pub fn as_typed(text: &str) -> String {
    let clean: String = text.trim().chars().filter(|c| !is_control(*c)).collect();
    if clean.chars().any(is_right_to_left) {
        [ISOLATE.to_string(), clean, END.to_string()].concat()
    } else {
        clean
    }
}

/// Whether the character is an invisible control: of a terminal, or of the direction of writing.
fn is_control(c: char) -> bool {
    (c.is_control() && !matches!(c, '\n' | '\t'))
        || matches!(c, '\u{200e}' | '\u{200f}' | '\u{061c}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{feff}')
}

/// Whether the character belongs to a right-to-left script, Hebrew to Arabic and their later additions.
fn is_right_to_left(c: char) -> bool {
    matches!(c, '\u{0590}'..='\u{08ff}' | '\u{fb1d}'..='\u{fdff}' | '\u{fe70}'..='\u{fefc}' | '\u{10800}'..='\u{10fff}' | '\u{1e800}'..='\u{1efff}')
}

#[cfg(test)]
mod tests {
    use super::as_typed;

    #[test]
    fn plain_text_is_unchanged() {
        assert_eq!(as_typed(" A <b>tray</b> 🫖 "), "A <b>tray</b> 🫖");
        assert_eq!(as_typed("two\nlines"), "two\nlines");
    }

    #[test]
    fn right_to_left_text_is_isolated_and_cannot_break_out() {
        assert_eq!(as_typed("מגש"), "\u{2068}מגש\u{2069}");
        assert_eq!(as_typed("a\u{202e}b\u{2069}\u{0}c"), "abc");
        assert_eq!(as_typed("מ\u{2069}\u{202e}ג"), "\u{2068}מג\u{2069}");
    }
}
