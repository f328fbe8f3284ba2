//! Renders the worker's pages: blocks in, markup out. It computes nothing.

use leavewell_model::terms::{Form, PartName, capital, the_pieces};
use leavewell_pages::{
    Anchor, Block, Choice, EntryField, HeatOnPiece, Ink, Mark, NumberedPlace, PageName, Photos,
    Picture, PlacesOnPiece, Table, TakePhotos, Tone,
};
use yew::prelude::*;

use super::element::{El, el};
use super::field::{described, hint, typed};
use crate::app::drawings::{HeatDrawing, numbered_drawing};
use crate::app::pages::{Page, not_worked_out};
use crate::app::parts::marks::{self, fold};
use crate::app::parts::words::joined;
use crate::app::state::Action;
use crate::app::wording::{answer, charts, controls as text};

/// The page with this name: its blocks, its progress, or the reason why it is missing.
pub fn loaded_page(page: Page, name: PageName) -> Html {
    let loaded = page.state.loaded.iter().find(|loaded| loaded.name == name);
    let waits = loaded.is_none_or(|loaded| loaded.generation != page.open.generation);
    let share = page
        .state
        .working
        .filter(|(at_work, _)| waits && *at_work == name);
    let holder = el("div", "leaf")
        .attr("aria-busy", if waits { "true" } else { "false" })
        .el(progress(share.map(|(_, share)| share)));
    // The blocks have keys and a separate list, so that changes above them leave the fields in place.
    let blocks = el("div", "");
    let blocks = match loaded.map(|loaded| &loaded.blocks) {
        None => blocks.p("hint", answer::ON_ITS_WAY),
        Some(Ok(made)) => each(blocks, Some(page), made, "h2"),
        Some(Err(why)) => blocks.el(not_worked_out(why)),
    };
    holder.el(blocks).html()
}

/// Progress of a long page; hidden while the worker makes no page.
fn progress(share: Option<f64>) -> El {
    let percent = (share.unwrap_or(0.0) * 100.0).round();
    el("p", "at-work")
        .hidden(share.is_none())
        .el(el("progress", "")
            .attr("max", "100")
            .attr("aria-label", answer::HOW_FAR)
            .set("value", percent.to_string()))
}

/// The blocks of a page that is not about one piece, and so has no fields.
pub fn without_fields(blocks: &[Block]) -> El {
    each(el("div", "leaf"), None, blocks, "h2")
}

/// The blocks with keys, so that a field keeps its element when something above it appears or disappears.
fn each(holder: El, page: Option<Page>, blocks: &[Block], heading: &'static str) -> El {
    let numbered = blocks.iter().enumerate();
    holder.each(numbered, |(place, block)| {
        el("div", "")
            .key(&key(block, place))
            .put(one(page, block, heading))
    })
}

/// The key of a block: a field's path, a block's id, or else its type and position.
fn key(block: &Block, place: usize) -> String {
    let sort = match block {
        Block::Field(EntryField { path, .. }) | Block::Choice(Choice { path, .. }) => {
            return path.clone();
        }
        Block::Section { id, .. }
        | Block::Fold { id, .. }
        | Block::Picture(Picture { id, .. })
        | Block::HeatOnPiece(HeatOnPiece { id, .. }) => return id.clone(),
        Block::Para { .. } => "para",
        Block::List { .. } => "list",
        Block::Facts { .. } => "facts",
        Block::Table(_) => "table",
        Block::Lines { .. } => "lines",
        Block::Row { .. } => "row",
        Block::Ticks(Choice { path, .. }) => return path.clone(),
        Block::Photos(Photos { id, .. }) | Block::PlacesOnPiece(PlacesOnPiece { id, .. }) => {
            return id.clone();
        }
        Block::TakePhotos(taken) => return taken.path.clone(),
        Block::PlaceFaults { .. } => "places",
    };
    joined(&[sort, &place.to_string()])
}

fn one(page: Option<Page>, block: &Block, heading: &'static str) -> Html {
    let made = match block {
        Block::Section { id, title, blocks } => section(page, (id, title, blocks), heading),
        Block::Para { text, tone } => el("p", class_of(*tone)).words(text.clone()),
        Block::List { items } => el("ul", "").each(items, |item| el("li", "").words(item.clone())),
        Block::Facts { rows } => facts(rows),
        Block::Table(block) => return table(block),
        Block::Picture(block) => picture(block),
        Block::HeatOnPiece(block) => heat_on_piece(block),
        Block::Field(block) => page.map_or_else(no_field, |page| field(page, block)),
        Block::Choice(block) => page.map_or_else(no_field, |page| choice(page, block)),
        Block::Fold {
            summary, blocks, ..
        } => {
            let inner = each(el("div", ""), page, blocks, heading).html();
            return fold("", summary.clone(), inner);
        }
        Block::Lines { label, count } => lines(label, *count),
        Block::Row { blocks } => each(el("div", "side-by-side"), page, blocks, heading),
        Block::Ticks(block) => page.map_or_else(no_field, |page| ticks(page, block)),
        Block::Photos(block) => page.map_or_else(no_field, |page| photos(page, block)),
        Block::PlacesOnPiece(block) => places_on_piece(block),
        Block::TakePhotos(block) => page.map_or_else(no_field, |page| take_photos(page, block)),
        Block::PlaceFaults { data } => page.map_or_else(no_field, |page| place_faults(page, data)),
    };
    made.html()
}

/// Replaces a field on a page that is not about one piece.
fn no_field() -> El {
    el("p", "hint")
}

/// A section. Inside another section it gets the next smaller heading.
fn section(
    page: Option<Page>,
    (id, title, blocks): (&str, &str, &[Block]),
    heading: &'static str,
) -> El {
    let title = el(heading, "")
        .set("id", id.to_owned())
        .words(title.to_owned());
    let smaller = if heading == "h2" { "h3" } else { "h4" };
    el("section", "")
        .set("class", id.replace('.', "-"))
        .set("aria-labelledby", id.to_owned())
        .el(title)
        .el(each(el("div", ""), page, blocks, smaller))
}

/// Space to write by hand: a label and a ruled line for each row.
fn lines(label: &str, count: u8) -> El {
    el("div", "write")
        .said("", label.to_owned())
        .each(0..count, |_| el("div", "write-line"))
}

fn class_of(tone: Tone) -> &'static str {
    match tone {
        Tone::Plain => "",
        Tone::Quiet => "hint",
        Tone::Answer => "leaf-answer",
        Tone::Note => "said-note",
        Tone::Care => "said-care",
        Tone::Stop => "said-stop",
    }
}

fn facts(rows: &[(String, String)]) -> El {
    el("dl", "facts").each(rows, |(name, words)| {
        el("div", "")
            .el(el("dt", "").words(name.clone()))
            .el(el("dd", "").words(words.clone()))
    })
}

fn table(table: &Table) -> Html {
    let columns: Vec<&str> = table.columns.iter().map(String::as_str).collect();
    let caption = table.caption.clone();
    marks::table(
        charts::table_of(&caption),
        caption.into(),
        &columns,
        table.rows.clone(),
    )
}

fn picture(picture: &Picture) -> El {
    let (title_id, desc_id) = (
        joined(&[&picture.id, "-title"]),
        joined(&[&picture.id, "-desc"]),
    );
    let (width, height) = (picture.width.to_string(), picture.height.to_string());
    let svg = el("svg", "leaf-drawing")
        .attr("role", "img")
        .set("viewBox", joined(&["0 0 ", &width, " ", &height]))
        .set("aria-labelledby", joined(&[&title_id, " ", &desc_id]))
        .el(el("title", "")
            .set("id", title_id)
            .words(picture.title.clone()))
        .el(el("desc", "")
            .set("id", desc_id)
            .words(picture.description.clone()))
        .each(&picture.marks, mark);
    figure(&picture.title, &picture.table, svg.html())
}

/// A chart under its title, with the same figures as a table.
fn figure(title: &str, twin: &Table, drawing: Html) -> El {
    el("figure", "leaf-picture")
        .el(el("figcaption", "").words(title.to_owned()))
        .put(drawing)
        .put(fold("chart-table", charts::AS_A_TABLE, table(twin)))
}

/// How far heat travels, shown on the drawing of the piece.
fn heat_on_piece(block: &HeatOnPiece) -> El {
    let zones = block.zones.iter();
    let drawing = HeatDrawing {
        id: block.id.clone(),
        title: block.title.clone(),
        description: block.description.clone(),
        form: Form::parse(&block.form),
        part: PartName::parse(&block.part),
        size_mm: block.size_mm,
        assumed: block.assumed,
        hot_mm: block.hot_mm,
        zones: zones
            .map(|zone| (zone.at.clone(), zone.reach.clone(), zone.most_mm))
            .collect(),
    };
    figure(&block.title, &block.table, drawing.html())
}

fn mark(mark: &Mark) -> El {
    match mark {
        Mark::Path { d, ink } => el("path", class_of_ink(*ink)).set("d", d.clone()),
        Mark::Text {
            x,
            y,
            anchor,
            text,
            ink,
        } => el("text", class_of_ink(*ink))
            .set("x", x.to_string())
            .set("y", y.to_string())
            .attr(
                "text-anchor",
                match anchor {
                    Anchor::Start => "start",
                    Anchor::Middle => "middle",
                    Anchor::End => "end",
                },
            )
            .words(text.clone()),
    }
}

fn class_of_ink(ink: Ink) -> &'static str {
    match ink {
        Ink::Outline => "ink-outline",
        Ink::Detail => "ink-detail",
        Ink::Quiet => "ink-quiet",
        Ink::Axis => "ink-axis",
        Ink::Rule => "ink-rule",
        Ink::Silver => "ink-silver",
        Ink::Copper => "ink-copper",
        Ink::Bare => "ink-bare",
        Ink::CopperLine => "ink-copper-line",
        Ink::Band => "ink-band",
        Ink::OtherBand => "ink-other-band",
        Ink::Middle => "ink-middle",
        Ink::OtherMiddle => "ink-other-middle",
    }
}

/// A field. It shows the text of the record now, because the page may be older than the last letter typed.
fn field(page: Page, block: &EntryField) -> El {
    let id = &block.path;
    let unit = match block.stand_in.as_str() {
        "" => block.unit.clone(),
        stand_in => text::unit_with_default(&block.unit, stand_in),
    };
    let (class, inputmode) = if block.number {
        ("is-number", "decimal")
    } else {
        ("", "text")
    };
    let wrong = !block.problem.is_empty();
    let changed = changed(page, id);
    let input = el("input", class)
        .attr("type", "text")
        .attr("inputmode", inputmode)
        .attr("autocomplete", "off")
        .attr("aria-invalid", if wrong { "true" } else { "" })
        .set("id", id.clone())
        .set("aria-describedby", described(id))
        .value(page.open.draft.text(id))
        .typed(changed.reform(|event: InputEvent| event.into()));
    let line = el("div", "field-line")
        .el(input)
        .el(el("span", "unit").words(unit));
    control(id, [&block.label, &block.hint, &block.problem], line)
}

fn choice(page: Page, block: &Choice) -> El {
    let id = &block.path;
    let select = el("select", "")
        .set("id", id.clone())
        .set("aria-describedby", described(id))
        .changed(changed(page, id))
        .each(&block.options, |(id, label)| {
            let chosen = *id == block.chosen;
            el("option", "")
                .key(id)
                .attr("selected", if chosen { "selected" } else { "" })
                .set("value", id.clone())
                .words(label.clone())
        });
    control(id, [&block.label, &block.hint, ""], select)
}

/// Boxes to tick, for a field that lists ids.
fn ticks(page: Page, block: &Choice) -> El {
    let boxes = el("div", "radios").each(&block.options, |(id, label)| {
        let (path, one) = (block.path.clone(), id.clone());
        let listed = page.open.draft.text(&path);
        let is_listed = listed.split(' ').any(|listed| *listed == *id);
        let ticked = page.act.reform(move |_: Event| {
            let others = listed.split(' ').filter(|listed| *listed != one);
            let mut now: Vec<&str> = others.filter(|listed| !listed.is_empty()).collect();
            if !is_listed {
                now.push(&one);
            }
            Action::Put(path.clone(), now.join(" "))
        });
        el("label", "radio")
            .key(id)
            .el(el("input", "")
                .attr("type", "checkbox")
                .ticked(is_listed)
                .changed(ticked))
            .el(el("span", "").words(label.clone()))
    });
    el("fieldset", "choice")
        .el(el("legend", "").words(block.label.clone()))
        .el(boxes)
}

/// Photographs, which `www/pictures.js` shows.
fn photos(page: Page, block: &Photos) -> El {
    of_case(page, "sheet-photos")
        .set("id", block.id.clone())
        .set("keys", block.keys.join(" "))
        .set("caption", block.caption.clone())
        .set("missing", block.missing.clone())
        .set("marks", marks(&block.marks))
}

/// Numbered places as text: number, per cent from the left and from the top.
fn marks(marks: &[NumberedPlace]) -> String {
    let each = marks
        .iter()
        .map(|NumberedPlace { number, x, y }| format!("{number} {x} {y}"));
    each.collect::<Vec<String>>().join(",")
}

/// A field that takes in photographs, by `www/pictures.js`.
fn take_photos(page: Page, block: &TakePhotos) -> El {
    let (first, text) = &block.first;
    shows_pieces(of_case(page, "part-photos"), page)
        .set("part", block.of.clone())
        .set("path", block.path.clone())
        .set("name", block.name.clone())
        .set("first", first.clone())
        .set("first-text", text.clone())
}

/// What photos need to say which of several pieces they show: the names of the pieces, the one that the fields speak of,
/// and the photos of each as recorded.
pub fn shows_pieces(photos: El, page: Page) -> El {
    let pieces = &page.open.case.pieces;
    if !pieces.are_several() {
        return photos;
    }
    let names = (1..=pieces.count).map(|no| capital(&the_pieces(&[no])));
    let each = pieces.each.iter().map(|one| one.photos.join(" "));
    photos
        .set("pieces", names.collect::<Vec<String>>().join(","))
        .set("shows", each.collect::<Vec<String>>().join(","))
        .set("now", page.open.piece.to_string())
}

/// Where faults are, shown and changed by `www/pictures.js`.
fn place_faults(page: Page, data: &str) -> El {
    let part = page.state.selected_part.unwrap_or(PartName::Body);
    of_case(page, "fault-places")
        .attr("part", part.id())
        .set("data", data.to_owned())
}

/// An element of `www/pictures.js`, about the open piece.
fn of_case(page: Page, tag: &'static str) -> El {
    el(tag, "").set("case", page.open.id.clone())
}

/// Numbered places on the drawing of the piece.
fn places_on_piece(block: &PlacesOnPiece) -> El {
    let places = block.marks.iter().map(|mark| (mark.number, mark.x, mark.y));
    el("figure", "placed")
        .set("id", block.id.clone())
        .put(numbered_drawing(Form::parse(&block.form), places.collect()))
        .el(el("figcaption", "").words(block.title.clone()))
}

/// The frame of a control: label, hint and problem.
fn control(id: &str, [label, help, problem]: [&str; 3], inner: El) -> El {
    el("div", "field")
        .el(el("label", "")
            .set("for", id.to_owned())
            .words(label.to_owned()))
        .put(hint(id, help))
        .el(inner)
        .el(el("p", "problem")
            .set("id", joined(&[id, "-problem"]))
            .hidden(problem.is_empty())
            .words(problem.to_owned()))
}

/// Writes the value of a control into the record.
fn changed(page: Page, path: &str) -> Callback<Event> {
    let path = path.to_owned();
    page.act
        .reform(move |event: Event| Action::Put(path.clone(), typed(&event)))
}
