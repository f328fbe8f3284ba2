//! Basic elements of a screen: headings, paragraphs, lists, tables and buttons.

use std::rc::Rc;

use yew::prelude::*;
use yew::virtual_dom::{VList, VNode, VText};

use super::element::el;

/// A sequence of nodes. It compiles to much less code than a fragment in `html!`.
pub fn all(nodes: Vec<Html>) -> Html {
    VNode::VList(Rc::new(VList::with_children(nodes, None)))
}

/// A section with a heading. The id is that of the heading; the class may be empty.
pub fn section(class: &'static str, id: &'static str, title: &'static str, body: Html) -> Html {
    el("section", class)
        .attr("aria-labelledby", id)
        .el(el("h2", "").attr("id", id).text(title))
        .put(body)
        .html()
}

/// A section whose heading opens and closes it. The id is that of the heading; the class may be empty.
pub fn folded_section(
    class: &'static str,
    id: &'static str,
    title: &'static str,
    body: Html,
) -> Html {
    section_fold(class, id, title, body, false)
}

/// Like [`folded_section`], and open from the start if it is to be.
pub fn section_fold(
    class: &'static str,
    id: &'static str,
    title: &'static str,
    body: Html,
    is_open: bool,
) -> Html {
    let heading = el("h2", "").attr("id", id).text(title);
    let fold = el("details", "section-fold")
        .attr("open", if is_open { "open" } else { "" })
        .el(el("summary", "").el(heading))
        .put(body);
    el("section", class)
        .attr("aria-labelledby", id)
        .el(fold)
        .html()
}

/// A paragraph; the class may be empty.
pub fn p(class: &'static str, words: impl Into<AttrValue>) -> Html {
    paragraph(class, words.into())
}

/// A list of texts.
pub fn bullets(items: Vec<AttrValue>) -> Html {
    el("ul", "")
        .each(items, |item| el("li", "").put(words(item)))
        .html()
}

/// A name in bold, followed by text.
pub fn named(name: impl Into<AttrValue>, words: impl Into<AttrValue>) -> Html {
    name_and_words(name.into(), words.into())
}

/// A `details` element with a summary and its content; the class may be empty.
pub fn fold(class: &'static str, summary: impl Into<AttrValue>, body: Html) -> Html {
    opened(class, summary.into(), body)
}

/// A table with a caption. The first cell of a row is its header. Where the screen is narrow and the table has three
/// columns or more, the stylesheet makes each row a block and sets the head of the column before the cell.
pub fn table(label: String, caption: AttrValue, columns: &[&str], rows: Vec<Vec<String>>) -> Html {
    let head = el("tr", "").each(columns, |cell| {
        el("th", "").attr("scope", "col").words((*cell).to_owned())
    });
    let rows = el("tbody", "").each(rows, |row| {
        let named = row.into_iter().zip(columns).enumerate();
        el("tr", "").each(named, |(at, (cell, column))| match at {
            0 => el("th", "").attr("scope", "row").words(cell),
            _ => el("td", "")
                .set("data-head", (*column).to_owned())
                .words(cell),
        })
    });
    let table = el("table", "")
        .el(el("caption", "").put(words(caption)))
        .el(el("thead", "").el(head))
        .el(rows);
    el("div", "table-scroll")
        .attr("role", "region")
        .set("aria-label", label)
        .attr("tabindex", "0")
        .el(table)
        .html()
}

/// A click handler that emits a value.
pub fn press<T: Clone + 'static>(to: &Callback<T>, what: T) -> Callback<MouseEvent> {
    to.reform(move |_| what.clone())
}

/// A text node.
pub fn words(words: AttrValue) -> Html {
    VNode::VText(VText::new(words))
}

fn paragraph(class: &'static str, said: AttrValue) -> Html {
    el("p", class).put(words(said)).html()
}

fn name_and_words(name: AttrValue, said: AttrValue) -> Html {
    all(vec![el("strong", "").put(words(name)).html(), words(said)])
}

fn opened(class: &'static str, summary: AttrValue, body: Html) -> Html {
    el("details", class)
        .el(el("summary", "").put(words(summary)))
        .put(body)
        .html()
}
