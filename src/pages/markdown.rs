//! Renders blocks as Markdown (`CommonMark` with the common table extension).
//!
//! All text goes through one escape function, so nothing in a record can become markup, a link or a
//! character reference.

use super::block::{Block, Table, Tone};
use super::picture::Picture;
use super::wording::markdown as words;

/// Renders the blocks under a first-level heading.
#[must_use]
pub fn markdown(title: &str, blocks: &[Block]) -> String {
    let mut out = format!("# {}\n", inline(title));
    each(&mut out, blocks, 2);
    out
}

fn each(out: &mut String, blocks: &[Block], level: usize) {
    for block in blocks {
        one(out, block, level);
    }
}

fn one(out: &mut String, block: &Block, level: usize) {
    match block {
        Block::Section { title, blocks, .. } => {
            heading(out, title, level);
            each(out, blocks, level + 1);
        }
        Block::Fold {
            summary, blocks, ..
        } => {
            heading(out, summary, level);
            each(out, blocks, level + 1);
        }
        Block::Para { text, tone } => para(out, text, *tone),
        Block::List { items } => {
            out.push('\n');
            for item in items {
                line(out, &["- ", &one_line(item)]);
            }
        }
        Block::Facts { rows } => {
            out.push('\n');
            for (name, words) in rows {
                line(out, &["- ", &one_line(name), ": ", &inline(words)]);
            }
        }
        Block::Table(shown) => table(out, shown),
        Block::Picture(picture) => described(out, picture),
        Block::HeatOnPiece(heat) => table(out, &heat.table),
        Block::Lines { label, count } => {
            for _ in 0..(*count).clamp(1, 20) {
                let rule = "\\_".repeat(24);
                line(out, &["\n", &one_line(label), ": ", &rule]);
            }
        }
        Block::Field(field) => {
            let shown = if field.text.is_empty() {
                &field.stand_in
            } else {
                &field.text
            };
            fact(out, &field.label, &[shown, " ", &field.unit].concat());
        }
        Block::Choice(choice) => {
            let chosen = choice.options.iter().find(|(id, _)| *id == choice.chosen);
            fact(out, &choice.label, chosen.map_or("", |(_, label)| label));
        }
        Block::Ticks(choice) => fact(out, &choice.label, &choice.ticked()),
        Block::Row { blocks } => each(out, blocks, level),
        Block::Photos(photos) => line(out, &["\n", &one_line(&photos.missing)]),
        // The places are described in words beside it.
        Block::PlacesOnPiece(_) | Block::TakePhotos(_) | Block::PlaceFaults { .. } => {}
    }
}

fn line(out: &mut String, pieces: &[&str]) {
    for piece in pieces {
        out.push_str(piece);
    }
    out.push('\n');
}

fn heading(out: &mut String, title: &str, level: usize) {
    line(out, &["\n", &"#".repeat(level.min(6)), " ", &inline(title)]);
}

fn fact(out: &mut String, label: &str, words: &str) {
    line(out, &["\n- ", &one_line(label), ": ", &inline(words)]);
}

fn para(out: &mut String, text: &str, tone: Tone) {
    let name = match tone {
        Tone::Stop => words::STOP,
        Tone::Care => words::CARE,
        Tone::Note => words::NOTE,
        Tone::Plain | Tone::Quiet | Tone::Answer => "",
    };
    let lines: Vec<String> = text.lines().map(escaped).collect();
    // A line break inside a paragraph is a backslash at the end of the line.
    line(out, &["\n", name, &lines.join("\\\n")]);
}

fn table(out: &mut String, table: &Table) {
    line(out, &["\n", &one_line(&table.caption), ":\n"]);
    let mut row = |cells: Vec<String>| line(out, &["| ", &cells.join(" | "), " |"]);
    row(table.columns.iter().map(|c| inline(c)).collect());
    row(vec!["---".to_owned(); table.columns.len()]);
    for cells in &table.rows {
        row(cells.iter().map(|c| inline(c)).collect());
    }
}

/// A picture becomes its description and its table.
fn described(out: &mut String, picture: &Picture) {
    para(out, &picture.title, Tone::Plain);
    para(out, &picture.description, Tone::Plain);
    table(out, &picture.table);
}

/// Text for the start of a place that allows only one line.
fn one_line(text: &str) -> String {
    escaped(&flat(text))
}

/// Text for the middle of a line.
fn inline(text: &str) -> String {
    escaped_at(&flat(text), false)
}

fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Escapes one line of text so that Markdown shows it literally. Escaped anywhere: whatever starts markup,
/// links and character references. At the start of a line: whatever makes headings, lists, rules and
/// fences. Before slashes: the colon of an address, which some readers turn into a link.
fn escaped(text: &str) -> String {
    escaped_at(text, true)
}

fn escaped_at(text: &str, line_start: bool) -> String {
    let text = text.trim();
    let chars: Vec<char> = text.chars().collect();
    let digits = chars.iter().take_while(|c| c.is_ascii_digit()).count();
    let mut out = String::with_capacity(text.len());
    for (at, &c) in chars.iter().enumerate() {
        let next = chars.get(at + 1).copied();
        let before = |n: usize| at.checked_sub(n).and_then(|i| chars.get(i)).copied();
        let always = matches!(
            c,
            '\\' | '`'
                | '*'
                | '_'
                | '['
                | ']'
                | '<'
                | '>'
                | '|'
                | '~'
                | '&'
                | '$'
                | '@'
                | '{'
                | '}'
        );
        let at_start = line_start && at == 0 && matches!(c, '#' | '+' | '-' | '=' | ':');
        let numbered = line_start && digits > 0 && at == digits && matches!(c, '.' | ')');
        let address = (c == ':' && next == Some('/'))
            || (c == '.'
                && [1, 2, 3]
                    .map(before)
                    .iter()
                    .all(|b| matches!(b, Some('w' | 'W'))));
        if always || at_start || numbered || address {
            out.push('\\');
        }
        out.push(if c.is_control() { ' ' } else { c });
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn special_characters_appear_literally() {
        for (typed, shown) in [
            (
                "<script>alert(1)</script>",
                r"\<script\>alert(1)\</script\>",
            ),
            ("[x](javascript:alert(1))", r"\[x\](javascript:alert(1))"),
            ("![x](y)", r"!\[x\](y)"),
            ("# Head", r"\# Head"),
            ("- item", r"\- item"),
            ("1. item", r"1\. item"),
            ("12) item", r"12\) item"),
            ("3.5 mm", r"3\.5 mm"),
            ("about 3.5 mm", "about 3.5 mm"),
            ("&lt;", r"\&lt;"),
            ("a*b_c`d`", r"a\*b\_c\`d\`"),
            ("see https://127.0.0.1", r"see https\://127.0.0.1"),
            ("www.a.b", r"www\.a.b"),
            ("a@b.c", r"a\@b.c"),
            ("| cell |", r"\| cell \|"),
            ("===", r"\==="),
            ("back\\slash", r"back\\slash"),
            ("    code", "code"),
            ("\u{7}bell", " bell"),
        ] {
            assert_eq!(escaped(typed), shown);
        }
    }

    #[test]
    fn every_kind_of_block_is_rendered() {
        let blocks = vec![
            Block::section(
                "s",
                "A *part*",
                vec![
                    Block::said(Tone::Stop, "Line one\n# two"),
                    Block::List {
                        items: vec!["a\nb".to_owned()],
                    },
                    Block::Facts {
                        rows: vec![("Name".to_owned(), "x|y".to_owned())],
                    },
                ],
            ),
            Block::Table(Table {
                caption: "Numbers".to_owned(),
                columns: vec!["A".to_owned(), "B".to_owned()],
                rows: vec![vec!["1\n2".to_owned(), "|".to_owned()]],
            }),
            Block::Lines {
                label: "Signed".to_owned(),
                count: 2,
            },
        ];
        let text = markdown("T\nitle", &blocks);
        assert_eq!(
            text.lines().collect::<Vec<_>>(),
            [
                "# T itle",
                "",
                r"## A \*part\*",
                "",
                r"**Stop.** Line one\",
                r"\# two",
                "",
                "- a b",
                "",
                r"- Name: x\|y",
                "",
                "Numbers:",
                "",
                "| A | B |",
                "| --- | --- |",
                r"| 1 2 | \| |",
                "",
                &format!("Signed: {}", r"\_".repeat(24)),
                "",
                &format!("Signed: {}", r"\_".repeat(24)),
            ]
        );
    }
}
