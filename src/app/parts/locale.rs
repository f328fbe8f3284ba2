//! Days and amounts as the browser's locale writes them.
//!
//! Every text reaches the screen in one form, whatever the locale: a day as year-month-day, a number with a comma
//! between thousands and a decimal point. This changes them on the finished screen and nowhere else, so that
//! nothing stored, sent to a worker or printed depends on the locale. A number within a sentence keeps its English
//! form, as the sentence does; a cell of a table that holds an amount alone has the signs of the locale. What is to
//! be typed, and a sheet that is handed on, keep the one form.

use std::rc::Rc;

use yew::prelude::*;
use yew::virtual_dom::VNode;

/// How a locale writes days and numbers.
#[derive(Clone, Copy)]
pub struct Locale {
    /// Writes a day, given as year-month-day. What is no day stays as it is.
    pub day: fn(&str) -> String,
    /// The sign between thousands.
    pub group: char,
    /// The decimal sign.
    pub point: char,
}

impl Default for Locale {
    fn default() -> Self {
        Self {
            day: ToOwned::to_owned,
            group: ',',
            point: '.',
        }
    }
}

/// Elements that keep the one form: hints and messages about what is typed, and sheets.
const KEPT: [&str; 3] = ["hint", "problem", "paper"];
/// Elements whose numbers stand alone.
const AMOUNTS: [&str; 3] = ["is-amount", "leaf", "bands"];

/// Rewrites the days and amounts of a screen.
pub fn by_locale(node: &mut Html, locale: &Locale) {
    rewrite(node, locale, false, false);
}

fn rewrite(node: &mut VNode, locale: &Locale, amounts: bool, cell: bool) {
    match node {
        // A new list or element has one owner. If it is shared after all, it stays as it is.
        VNode::VList(list) => {
            if let Some(list) = Rc::get_mut(list) {
                for inner in list.iter_mut() {
                    rewrite(inner, locale, amounts, cell);
                }
            }
        }
        VNode::VTag(tag) => {
            let class = tag.attributes.iter().find(|(name, _)| *name == "class");
            let class = class.map_or("", |(_, value)| value);
            let is_one_of = |names: &[&str]| class.split(' ').any(|one| names.contains(&one));
            if is_one_of(&KEPT) {
                return;
            }
            let amounts = amounts || is_one_of(&AMOUNTS);
            let cell = cell || matches!(tag.tag(), "td" | "dd");
            if let Some(inner) = Rc::get_mut(tag).and_then(|tag| tag.children_mut()) {
                rewrite(inner, locale, amounts, cell);
            }
        }
        VNode::VText(text) => {
            let written = if amounts && cell && is_amount(&text.text) {
                Some(with_signs(&text.text, locale))
            } else {
                with_days(&text.text, locale)
            };
            if let Some(written) = written {
                text.text = written.into();
            }
        }
        _ => {}
    }
}

/// Whether a text is an amount and nothing else: digits with signs, no words.
fn is_amount(text: &str) -> bool {
    text.contains(|c: char| c.is_ascii_digit())
        && !text.contains(char::is_alphabetic)
        && day_at(text, 0).is_none()
}

/// The text with the locale's signs in its numbers.
fn with_signs(text: &str, locale: &Locale) -> String {
    let digit = |c: Option<char>| c.is_some_and(|c| c.is_ascii_digit());
    let mut before = None;
    let mut rest = text.chars().peekable();
    let mut written = String::new();
    while let Some(c) = rest.next() {
        let inside = digit(before) && digit(rest.peek().copied());
        written.push(match c {
            ',' if inside => locale.group,
            '.' if inside => locale.point,
            other => other,
        });
        before = Some(c);
    }
    written
}

/// The text with its days as the locale writes them, or `None` if it names none.
fn with_days(text: &str, locale: &Locale) -> Option<String> {
    let mut written: Option<String> = None;
    let mut from = 0;
    while let Some(at) = day_at(text, from) {
        let part = |start: usize, end: usize| text.get(start..end).unwrap_or_default();
        let all = written.get_or_insert_default();
        all.push_str(part(from, at));
        all.push_str(&(locale.day)(part(at, at + DAY.len())));
        from = at + DAY.len();
    }
    let mut written = written?;
    written.push_str(text.get(from..).unwrap_or_default());
    Some(written)
}

const DAY: &[u8; 10] = b"0000-00-00";

/// Where the next day, written as year-month-day, begins.
fn day_at(text: &str, from: usize) -> Option<usize> {
    let bytes = text.as_bytes();
    let fits = |(form, byte): (&u8, &u8)| match form {
        b'0' => byte.is_ascii_digit(),
        _ => byte == form,
    };
    let joins = |at: Option<usize>| {
        at.and_then(|at| bytes.get(at))
            .is_some_and(|byte| byte.is_ascii_alphanumeric() || *byte == b'-')
    };
    (from..bytes.len().saturating_sub(DAY.len() - 1)).find(|at| {
        let found = bytes.get(*at..*at + DAY.len()).unwrap_or_default();
        DAY.iter().zip(found).all(fits) && !joins(at.checked_sub(1)) && !joins(Some(at + DAY.len()))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::parts::element::{El, el};

    fn read(node: &VNode, text: &mut String) {
        match node {
            VNode::VList(list) => list.iter().for_each(|inner| read(inner, text)),
            VNode::VText(words) => text.push_str(&words.text),
            VNode::VTag(tag) => {
                if let Some(inner) = tag.children() {
                    read(inner, text);
                }
            }
            _ => {}
        }
    }

    fn shown(screen: El) -> String {
        let german = Locale {
            day: |day| day.split('-').rev().collect::<Vec<_>>().join("."),
            group: '.',
            point: ',',
        };
        let mut screen = screen.html();
        by_locale(&mut screen, &german);
        let mut text = String::new();
        read(&screen, &mut text);
        text
    }

    #[test]
    fn a_day_is_written_as_the_locale_does() {
        let said = el("p", "").text("Noted on 2026-11-30, sold 2026-12-01.");
        assert_eq!(shown(said), "Noted on 30.11.2026, sold 01.12.2026.");
        for same in ["12026-11-30", "2026-11-301", "a2026-11-30", "2026-11", "x"] {
            assert_eq!(shown(el("p", "").text(same)), same);
        }
    }

    #[test]
    fn what_is_typed_and_what_is_handed_on_keep_the_one_form() {
        for class in ["hint", "problem", "paper is-file"] {
            let kept = el("div", class).el(el("p", "").text("Such as 2026-11-30"));
            assert_eq!(shown(kept), "Such as 2026-11-30", "{class}");
        }
    }

    #[test]
    fn an_amount_alone_has_the_signs_of_the_locale_and_a_sentence_keeps_its_own() {
        let cell = |class, words| shown(el("tr", "").el(el("td", class).text(words)));
        assert_eq!(cell("is-amount", "£1,150.5"), "£1.150,5");
        assert_eq!(cell("is-amount", "−€1,234,567"), "−€1.234.567");
        // The stock number as typed.
        assert_eq!(cell("", "1,150"), "1,150");
        assert_eq!(cell("is-amount", "most £1,150"), "most £1,150");
        let leaf = el("div", "leaf")
            .p("", "It costs £1,150.")
            .el(el("td", "").text("1,150"));
        assert_eq!(shown(leaf), "It costs £1,150.1.150");
    }
}
