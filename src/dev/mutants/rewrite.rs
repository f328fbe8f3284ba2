//! Writes changes into the text of a file, each behind its switch.

use std::fmt::Write;
use std::ops::Range;

use super::site::{Edit, Mutation};

/// The text of a file with these changes in it. Each is numbered, and takes effect only while that number is
/// set. Line breaks stay where they are.
pub(super) fn rewritten(text: &str, changes: &[(usize, &Mutation)]) -> String {
    let mut edits: Vec<(usize, &Edit)> = changes
        .iter()
        .map(|(number, change)| (*number, &change.edit))
        .collect();
    // The outer of two edits that start together comes first.
    edits.sort_by_key(|(_, edit)| (edit.range().start, std::cmp::Reverse(edit.range().end)));
    Writer { text, edits }.written(0..text.len(), &|_| true)
}

struct Writer<'a> {
    text: &'a str,
    edits: Vec<(usize, &'a Edit)>,
}

impl Writer<'_> {
    /// The text of a range, with those edits in it that `inside` admits.
    fn written(&self, range: Range<usize>, inside: &dyn Fn(&Edit) -> bool) -> String {
        let mut out = String::new();
        let mut at = range.start;
        let mut place = 0;
        while let Some((_, edit)) = self.edits.get(place) {
            let of = edit.range();
            if of.start < at || !inside(edit) {
                place += 1;
                continue;
            }
            out.push_str(&self.text[at..of.start]);
            // Several changes of the same place stand together.
            let same: Vec<(usize, &Edit)> = self.edits[place..]
                .iter()
                .copied()
                .take_while(|(_, other)| other.range() == of)
                .collect();
            out.push_str(&self.switched(&same));
            place += same.len();
            at = of.end;
        }
        out.push_str(&self.text[at..range.end]);
        out
    }

    /// The text of part of an edited expression, in which that expression's own edits do not count.
    fn part(&self, range: &Range<usize>, of: &Range<usize>) -> String {
        let range = range.clone();
        self.written(range.clone(), &|edit| {
            let own = edit.range();
            own.start >= range.start && own.end <= range.end && own != *of
        })
    }

    fn switched(&self, same: &[(usize, &Edit)]) -> String {
        let Some((_, first)) = same.first() else {
            return String::new();
        };
        let whole = first.range();
        if let Edit::Returns { .. } = first {
            let returns = same.iter().map(|(number, edit)| match edit {
                Edit::Returns { value, .. } => {
                    format!(" if {} {{ return {value}; }}", switch(*number))
                }
                _ => String::new(),
            });
            return returns.collect();
        }
        let breaks = self.text[whole.clone()].matches('\n').count();
        let flat = |text: String| text.replace('\n', " ");
        let as_it_is = flat(self.part(&whole, &whole));
        // A guard may be an expression that can be changed itself.
        let is_guard = |edit: &Edit| matches!(edit, Edit::Guard { .. });
        let (guards, same): (Vec<(usize, &Edit)>, Vec<_>) =
            same.iter().partition(|(_, edit)| is_guard(edit));
        let mut out = String::from("(");
        for (number, edit) in &same {
            let changed = match *edit {
                Edit::Operator {
                    left, right, to, ..
                } => {
                    let [left, right] = [left, right].map(|side| flat(self.part(side, &whole)));
                    format!("{left} {to} {right}")
                }
                Edit::Dropped { inner, .. } => flat(self.part(inner, &whole)),
                _ => continue,
            };
            let _ = write!(out, "if {} {{ {changed} }} else ", switch(*number));
        }
        out = if same.is_empty() {
            format!("({as_it_is})")
        } else {
            out + "{ " + &as_it_is + " })"
        };
        for (number, guard) in guards {
            let switch = switch(number);
            out = match guard {
                Edit::Guard { to: true, .. } => format!("({switch} || {out})"),
                _ => format!("(!{switch} && {out})"),
            };
        }
        out + &"\n".repeat(breaks)
    }
}

/// The condition under which a change takes effect.
pub(super) fn switch(number: usize) -> String {
    format!("crate::mutant::is({number})")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mutants::site::changes_in;

    fn all(text: &str) -> String {
        let changes = changes_in("f.rs", text).unwrap();
        let numbered: Vec<(usize, &Mutation)> = changes.iter().enumerate().collect();
        rewritten(text, &numbered).replace("crate::mutant::", "")
    }

    #[test]
    fn a_change_stands_beside_what_it_replaces() {
        assert_eq!(
            all("fn f() -> i128 { a / b }"),
            "fn f() -> i128 { (if is(0) { a * b } else { a / b }) }"
        );
        assert_eq!(
            all("fn f() -> bool { !a }"),
            "fn f() -> bool { if is(0) { return true; } if is(1) { return false; } \
             (if is(2) { a } else { !a }) }"
        );
    }

    #[test]
    fn changes_within_changes_work_in_every_branch_and_keep_the_lines() {
        assert_eq!(
            all("fn f() -> i128 { a %\n(b / c) }"),
            "fn f() -> i128 { (if is(0) { a / ((if is(1) { b * c } else { b / c })) } else \
             { a % ((if is(1) { b * c } else { b / c })) })\n }"
        );
    }

    #[test]
    fn a_guard_keeps_its_names_and_its_own_changes() {
        assert_eq!(
            all("fn f() -> i128 { match a { x if g(x) => 1, _ => 2 } }"),
            "fn f() -> i128 { match a { x if (!is(1) && (is(0) || (g(x)))) => 1, _ => 2 } }"
        );
        assert_eq!(
            all("fn f() -> i128 { match a { x if x == b => 1, _ => 2 } }"),
            "fn f() -> i128 { match a { x if (!is(1) && (is(0) || \
             (if is(2) { x != b } else { x == b }))) => 1, _ => 2 } }"
        );
    }
}
