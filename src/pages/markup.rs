//! Renders blocks as one self-contained HTML page: no script, nothing fetched, and one style for paper and
//! screen.
//!
//! All text goes through one escape function, into elements that detect their own direction of writing.
//! What a person typed is shown and never run.

use super::block::{Block, Choice, EntryField, Table, Tone};
use super::picture::{Anchor, Ink, Mark, Picture};
use super::wording::markup as words;

/// Renders a whole page. `running` appears at the top of each printed page.
#[must_use]
pub fn markup(title: &str, running: &str, blocks: &[Block]) -> String {
    let mut page = HtmlPage {
        out: String::new(),
        pictures: 0,
    };
    page.raw(HEAD);
    page.element("title", &one_line(title));
    page.raw("<style>\n");
    page.raw(STYLE);
    page.raw("@page { @top-left { content: \"");
    // The page margin has room for one line.
    let running: String = one_line(running).chars().take(RUNNING).collect();
    page.raw(&css_text(&running));
    page.raw("\"; } }\n</style>\n</head>\n<body>\n<main>\n");
    page.element("h1", title);
    page.each(blocks, 2);
    page.raw("</main>\n</body>\n</html>\n");
    page.out
}

/// Maximum length of the line at the top of a printed page, in characters.
const RUNNING: usize = 70;

const HEAD: &str = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data:\">\n";

const STYLE: &str = include_str!("sheet.css");

struct HtmlPage {
    out: String,
    pictures: usize,
}

impl HtmlPage {
    fn raw(&mut self, text: &str) {
        self.out.push_str(text);
    }

    /// Writes an element with text in it, on its own line.
    fn element(&mut self, name: &str, words: &str) {
        let open = if name == "title" {
            "<title".to_owned()
        } else {
            ["<", name, " dir=\"auto\""].concat()
        };
        self.raw(&[&open, ">", &escaped(words), "</", name, ">\n"].concat());
    }

    fn each(&mut self, blocks: &[Block], level: usize) {
        for block in blocks {
            self.one(block, level);
        }
    }

    fn one(&mut self, block: &Block, level: usize) {
        match block {
            Block::Section { id, title, blocks } => {
                let id = escaped(id);
                let class = id.replace('.', "-");
                self.raw(&["<section id=\"", &id, "\" class=\"", &class, "\">\n"].concat());
                self.element(heading(level), title);
                self.each(blocks, level + 1);
                self.raw("</section>\n");
            }
            Block::Fold {
                summary, blocks, ..
            } => {
                // Open from the start, because paper cannot be unfolded.
                self.raw("<details open>\n");
                self.element("summary", summary);
                self.each(blocks, level + 1);
                self.raw("</details>\n");
            }
            Block::Para { text, tone } => self.para(text, *tone),
            Block::List { items } => {
                self.raw("<ul>\n");
                for item in items {
                    self.element("li", item);
                }
                self.raw("</ul>\n");
            }
            Block::Facts { rows } => self.facts(rows),
            Block::Table(shown) => self.table(shown),
            Block::Picture(picture) => self.picture(picture),
            Block::HeatOnPiece(heat) => self.table(&heat.table),
            Block::Lines { label, count } => {
                self.raw("<div class=\"write\">\n");
                self.element("p", label);
                for _ in 0..(*count).clamp(1, 20) {
                    self.raw("<div class=\"rule\"></div>\n");
                }
                self.raw("</div>\n");
            }
            Block::Field(field) => self.facts(&[(field.label.clone(), of_field(field))]),
            Block::Choice(choice) => self.facts(&[(choice.label.clone(), of_choice(choice))]),
            Block::Ticks(choice) => self.facts(&[(choice.label.clone(), choice.ticked())]),
            Block::Row { blocks } => {
                self.raw("<div class=\"row\">\n");
                self.each(blocks, level);
                self.raw("</div>\n");
            }
            Block::Photos(photos) => self.shown(&photos.id, &photos.missing),
            Block::PlacesOnPiece(drawing) => self.shown(&drawing.id, ""),
            Block::TakePhotos(_) | Block::PlaceFaults { .. } => {}
        }
    }

    /// A picture that only a browser can show. `www/pictures.js` saves the page with what the screen shows
    /// under the same id.
    fn shown(&mut self, id: &str, instead: &str) {
        self.raw(&["<div class=\"shown\" id=\"", &escaped(id), "\">\n"].concat());
        if !instead.is_empty() {
            self.element("p", instead);
        }
        self.raw("</div>\n");
    }

    fn para(&mut self, text: &str, tone: Tone) {
        let (class, name) = match tone {
            Tone::Plain => ("", ""),
            Tone::Quiet => ("quiet", ""),
            Tone::Answer => ("answer", ""),
            Tone::Note => ("said note", words::NOTE),
            Tone::Care => ("said care", words::CARE),
            Tone::Stop => ("said stop", words::STOP),
        };
        self.raw("<p dir=\"auto\"");
        if !class.is_empty() {
            self.raw(&[" class=\"", class, "\""].concat());
        }
        self.raw(">");
        if !name.is_empty() {
            self.raw(&["<strong>", name, "</strong>"].concat());
        }
        self.raw(&[&escaped(text), "</p>\n"].concat());
    }

    fn facts(&mut self, rows: &[(String, String)]) {
        self.raw("<dl>\n");
        for (name, words) in rows {
            self.raw("<div>\n");
            self.element("dt", name);
            self.element("dd", words);
            self.raw("</div>\n");
        }
        self.raw("</dl>\n");
    }

    fn table(&mut self, table: &Table) {
        self.raw("<table>\n");
        self.element("caption", &table.caption);
        self.raw("<thead>\n<tr>");
        for name in &table.columns {
            self.raw(&["<th scope=\"col\" dir=\"auto\">", &escaped(name), "</th>"].concat());
        }
        self.raw("</tr>\n</thead>\n<tbody>\n");
        for row in &table.rows {
            self.raw("<tr>");
            for (at, cell) in row.iter().enumerate() {
                let (open, close) = match at {
                    0 => ("<th scope=\"row\" dir=\"auto\">", "</th>"),
                    _ => ("<td dir=\"auto\">", "</td>"),
                };
                self.raw(&[open, &escaped(cell), close].concat());
            }
            self.raw("</tr>\n");
        }
        self.raw("</tbody>\n</table>\n");
    }

    fn picture(&mut self, picture: &Picture) {
        self.pictures += 1;
        let id = format!("picture-{}", self.pictures);
        self.raw("<figure>\n");
        self.element("figcaption", &picture.title);
        self.raw(&format!(
            "<svg role=\"img\" viewBox=\"0 0 {} {}\" aria-labelledby=\"{id}-title {id}-desc\">\n\
             <title id=\"{id}-title\">{}</title>\n<desc id=\"{id}-desc\">{}</desc>\n",
            picture.width,
            picture.height,
            escaped(&picture.title),
            escaped(&picture.description)
        ));
        for mark in &picture.marks {
            match mark {
                Mark::Path { d, ink } => self.raw(&format!(
                    "<path class=\"{}\" d=\"{}\"/>\n",
                    class(*ink),
                    escaped(d)
                )),
                Mark::Text {
                    x,
                    y,
                    anchor,
                    text,
                    ink,
                } => self.raw(&format!(
                    "<text class=\"{}\" x=\"{x}\" y=\"{y}\" text-anchor=\"{}\">{}</text>\n",
                    class(*ink),
                    match anchor {
                        Anchor::Start => "start",
                        Anchor::Middle => "middle",
                        Anchor::End => "end",
                    },
                    escaped(text)
                )),
            }
        }
        self.raw("</svg>\n");
        self.table(&picture.table);
        self.raw("</figure>\n");
    }
}

fn heading(level: usize) -> &'static str {
    match level {
        ..=2 => "h2",
        3 => "h3",
        4 => "h4",
        5 => "h5",
        _ => "h6",
    }
}

fn of_field(field: &EntryField) -> String {
    let text = if field.text.is_empty() {
        &field.stand_in
    } else {
        &field.text
    };
    [text, " ", &field.unit].concat()
}

fn of_choice(choice: &Choice) -> String {
    let chosen = choice.options.iter().find(|(id, _)| *id == choice.chosen);
    chosen.map_or_else(String::new, |(_, label)| label.clone())
}

fn class(ink: Ink) -> &'static str {
    match ink {
        Ink::Bare => "bare",
        Ink::Outline => "outline",
        Ink::Detail => "detail",
        Ink::Quiet => "quiet",
        Ink::Axis => "axis",
        Ink::Rule => "rule",
        Ink::Silver => "silver",
        Ink::Copper => "copper",
        Ink::CopperLine => "copper-line",
        Ink::Band => "band",
        Ink::OtherBand => "other-band",
        Ink::Middle => "middle",
        Ink::OtherMiddle => "other-middle",
    }
}

/// Escapes text for an element or an attribute. Drops what HTML cannot carry: control characters and
/// Unicode noncharacters.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.trim().chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            '\n' | '\t' => out.push(c),
            '\u{fdd0}'..='\u{fdef}' => {}
            c if c.is_control() || (c as u32) & 0xfffe == 0xfffe => {}
            c => out.push(c),
        }
    }
    out
}

fn one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Escapes text for a quoted string in a style sheet: everything except plain letters, digits and spaces
/// becomes a code point.
fn css_text(text: &str) -> String {
    text.chars()
        .filter(|c| !c.is_control())
        .map(|c| {
            if c.is_ascii_alphanumeric() || c == ' ' {
                c.to_string()
            } else {
                format!("\\{:x} ", c as u32)
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const HOSTILE: &str =
        "</title></style><script>alert('x')</script><img src=x onerror=\"y\">&lt;\u{0}\u{ffff}";

    #[test]
    fn hostile_text_never_becomes_markup() {
        let text = HOSTILE.to_owned();
        let blocks = vec![
            Block::section(HOSTILE, HOSTILE, vec![Block::para(HOSTILE)]),
            Block::fold(HOSTILE, HOSTILE, vec![Block::said(Tone::Stop, HOSTILE)]),
            Block::List {
                items: vec![text.clone()],
            },
            Block::Facts {
                rows: vec![(text.clone(), text.clone())],
            },
            Block::Table(Table {
                caption: text.clone(),
                columns: vec![text.clone()],
                rows: vec![vec![text.clone()]],
            }),
            Block::Lines {
                label: text.clone(),
                count: 255,
            },
            Block::Picture(Picture {
                id: text.clone(),
                title: text.clone(),
                description: text.clone(),
                width: 320.0,
                height: 40.0,
                marks: vec![
                    Mark::path(Ink::Band, HOSTILE),
                    Mark::text(Ink::Quiet, Anchor::End, (1.0, 2.0), HOSTILE),
                ],
                table: Table {
                    caption: text.clone(),
                    columns: vec![text.clone()],
                    rows: vec![vec![text.clone()]],
                },
            }),
        ];
        let page = markup(HOSTILE, HOSTILE, &blocks);
        for bad in ["<script", "<img", "onerror=\"", "\u{0}", "\u{ffff}"] {
            assert!(!page.contains(bad), "{bad}");
        }
        // One style element, one page title and one picture title: no text closed or opened an element.
        assert_eq!(page.matches("</style>").count(), 1);
        assert_eq!(page.matches("<title").count(), 2);
        assert_eq!(page.matches("</title>").count(), 2);
        assert_eq!(page.matches("class=\"rule\"").count(), 20);
        // Every opened element is closed.
        for name in [
            "section", "details", "figure", "table", "ul", "dl", "div", "p", "h2",
        ] {
            let opened = page.matches(&format!("<{name} ")).count()
                + page.matches(&format!("<{name}>")).count();
            assert_eq!(
                opened,
                page.matches(&format!("</{name}>")).count(),
                "{name}"
            );
        }
    }

    #[test]
    fn the_page_fetches_and_runs_nothing() {
        let page = markup("A tray", "A tray", &[Block::para("One.")]);
        assert!(page.contains("default-src 'none'"));
        for bad in [
            "<script", "<link", "href=", "src=", "url(", "@import", "http:", "https:",
        ] {
            assert!(!page.contains(bad), "{bad}");
        }
        assert!(page.contains("<p dir=\"auto\">One.</p>"));
    }

    #[test]
    fn the_running_head_cannot_escape_its_quotation_marks() {
        assert_eq!(css_text("A \"b\\"), "A \\22 b\\5c ");
        assert_eq!(css_text("</style>\n"), "\\3c \\2f style\\3e ");
    }
}
