//! Pages of the second program: blocks in, markup out. Nothing is worked out here.

use serde_json::Value;
use yew::prelude::*;
use yew::virtual_dom::{AttributeOrProperty, Attributes, Key, Listeners, VTag};

use super::field::{described, hint, typed};
use crate::app::pages::Page;
use crate::app::parts::marks::{all, fold, p};
use crate::app::parts::words::joined;
use crate::app::state::Action;

/// A page of this name: its blocks, that it is being worked out, or why it is not there.
pub fn leaf(page: Page, name: &'static str) -> Html {
    let leaf = page.state.leaves.iter().find(|leaf| leaf.name == name);
    let shown = match leaf.map(|leaf| &leaf.blocks) {
        None => p("hint", "Working it out…"),
        Some(Ok(blocks)) => each(page, blocks),
        Some(Err(why)) => p(
            "problem",
            joined(&[
                "This part could not be worked out. Reload the page to try again; the record is safe. For a report: ",
                why,
            ]),
        ),
    };
    let waits = leaf.is_none_or(|leaf| leaf.generation != page.open.generation);
    html! { <div class="leaf" aria-busy={if waits { "true" } else { "false" }}>{ shown }</div> }
}

/// Every block has a key, so that no field is drawn anew when something above it comes or goes.
fn each(page: Page, blocks: &Value) -> Html {
    all(items(blocks)
        .iter()
        .enumerate()
        .map(|(place, block)| {
            let key = match (text(block, "path"), text(block, "id")) {
                ("", "") => joined(&[text(block, "block"), &place.to_string()]),
                ("", id) => id.to_owned(),
                (path, _) => path.to_owned(),
            };
            tag(
                "div",
                &[],
                Vec::new(),
                Some(Key::from(key)),
                vec![one(page, block)],
            )
        })
        .collect())
}

fn one(page: Page, block: &Value) -> Html {
    match text(block, "block") {
        "section" => section(page, block),
        "para" => para(block),
        "list" => element("ul", "", words(&block["items"], "li")),
        "facts" => facts(&block["rows"]),
        "table" => table(block),
        "picture" => picture(block),
        "field" => field(page, block),
        "choice" => choice(page, block),
        "fold" => fold("", owned(block, "summary"), each(page, &block["blocks"])),
        "lines" => lines(block),
        "row" => element("div", "side-by-side", vec![each(page, &block["blocks"])]),
        // A block of a newer program: better nothing than something wrong.
        _ => p("hint", ""),
    }
}

fn section(page: Page, block: &Value) -> Html {
    let id = owned(block, "id");
    let title = vec![owned(block, "title").into()];
    let heading = tag("h2", &["id"], set([id.clone()]), None, title);
    let inner = vec![heading, each(page, &block["blocks"])];
    tag("section", &["aria-labelledby"], set([id]), None, inner)
}

/// Room to write by hand: what goes there, and a rule for each line.
fn lines(block: &Value) -> Html {
    let label = element("p", "", vec![owned(block, "label").into()]);
    let count = block["count"].as_u64().unwrap_or(1).min(20);
    let rules = (0..count).map(|_| element("div", "write-line", Vec::new()));
    element(
        "div",
        "write",
        std::iter::once(label).chain(rules).collect(),
    )
}

fn para(block: &Value) -> Html {
    let tone = match text(block, "tone") {
        "quiet" => "hint",
        "answer" => "leaf-answer",
        "note" => "said-note",
        "care" => "said-care",
        "stop" => "said-stop",
        _ => "",
    };
    p(tone, owned(block, "text"))
}

fn facts(rows: &Value) -> Html {
    let line = |row: &Value| {
        let cell = |at: usize, name| element(name, "", vec![string(&row[at]).to_owned().into()]);
        element("div", "", vec![cell(0, "dt"), cell(1, "dd")])
    };
    element("dl", "facts", items(rows).iter().map(line).collect())
}

fn table(block: &Value) -> Html {
    let caption = owned(block, "caption");
    let row = |row: &Value| {
        let cell = |(at, cell): (usize, &Value)| {
            let (name, scope) = if at == 0 { ("th", "row") } else { ("td", "") };
            with_scope(name, scope, cell)
        };
        element("tr", "", items(row).iter().enumerate().map(cell).collect())
    };
    let head = items(&block["columns"])
        .iter()
        .map(|cell| with_scope("th", "col", cell))
        .collect();
    let whole = vec![
        element("caption", "", vec![caption.clone().into()]),
        element("thead", "", vec![element("tr", "", head)]),
        element("tbody", "", items(&block["rows"]).iter().map(row).collect()),
    ];
    tag(
        "div",
        &["class", "role", "tabindex", "aria-label"],
        vec![
            Some("table-scroll".into()),
            Some("region".into()),
            Some("0".into()),
            Some(joined(&["Table: ", &caption]).into()),
        ],
        None,
        vec![element("table", "", whole)],
    )
}

fn with_scope(name: &'static str, scope: &'static str, cell: &Value) -> Html {
    let scope = (!scope.is_empty()).then(|| scope.into());
    let words = vec![string(cell).to_owned().into()];
    tag(name, &["scope"], vec![scope], None, words)
}

fn picture(block: &Value) -> Html {
    let id = text(block, "id");
    let (title_id, desc_id) = (joined(&[id, "-title"]), joined(&[id, "-desc"]));
    let named = |name, id: &String, words| {
        tag(
            name,
            &["id"],
            set([id.clone()]),
            None,
            vec![owned(block, words).into()],
        )
    };
    let mut drawn = vec![
        named("title", &title_id, "title"),
        named("desc", &desc_id, "description"),
    ];
    drawn.extend(items(&block["marks"]).iter().map(mark));
    let size = |name: &str| block[name].to_string();
    let svg = tag(
        "svg",
        &["class", "role", "viewBox", "aria-labelledby"],
        set([
            "leaf-drawing".to_owned(),
            "img".to_owned(),
            joined(&["0 0 ", &size("width"), " ", &size("height")]),
            joined(&[&title_id, " ", &desc_id]),
        ]),
        None,
        drawn,
    );
    element(
        "figure",
        "leaf-picture",
        vec![
            element("figcaption", "", vec![owned(block, "title").into()]),
            svg,
            fold("chart-table", "The same as a table", table(&block["table"])),
        ],
    )
}

fn mark(mark: &Value) -> Html {
    let ink = joined(&["ink-", text(mark, "ink")]);
    if text(mark, "mark") == "path" {
        let drawn = set([ink, owned(mark, "d")]);
        return tag("path", &["class", "d"], drawn, None, Vec::new());
    }
    let placed = set([
        ink,
        mark["x"].to_string(),
        mark["y"].to_string(),
        owned(mark, "anchor"),
    ]);
    let words = vec![owned(mark, "text").into()];
    tag(
        "text",
        &["class", "x", "y", "text-anchor"],
        placed,
        None,
        words,
    )
}

/// The text shown is the text of the record now: the page may be older than the last letter typed.
fn field(page: Page, block: &Value) -> Html {
    let id = text(block, "path");
    let problem = text(block, "problem");
    let number = block["number"] == true;
    let unit = match text(block, "stand_in") {
        "" => owned(block, "unit"),
        stand_in => joined(&[text(block, "unit"), " (", stand_in, " if left empty)"]),
    };
    let heard = heard(page, id);
    control(
        id,
        block,
        problem,
        html! {
            <div class="field-line">
                <input
                    id={id.to_owned()}
                    class={if number { "is-number" } else { "" }}
                    type="text"
                    inputmode={if number { "decimal" } else { "text" }}
                    autocomplete="off"
                    value={page.open.draft.text(id)}
                    aria-describedby={described(id)}
                    aria-invalid={(!problem.is_empty()).then_some("true")}
                    oninput={heard.reform(|event: InputEvent| event.into())}
                />
                <span class="unit">{ unit }</span>
            </div>
        },
    )
}

fn choice(page: Page, block: &Value) -> Html {
    let id = text(block, "path");
    let chosen = text(block, "chosen");
    let options = items(&block["options"])
        .iter()
        .map(|option| {
            let id = string(&option[0]);
            html! { <option key={id} value={id.to_owned()} selected={id == chosen}>{ string(&option[1]).to_owned() }</option> }
        })
        .collect();
    control(
        id,
        block,
        "",
        html! {
            <select id={id.to_owned()} aria-describedby={described(id)} onchange={heard(page, id)}>{ all(options) }</select>
        },
    )
}

/// What stands round every control: label, hint, and what is wrong.
fn control(id: &str, block: &Value, problem: &str, inner: Html) -> Html {
    let label = tag(
        "label",
        &["for"],
        set([id.to_owned()]),
        None,
        vec![owned(block, "label").into()],
    );
    let hidden = problem.is_empty().then(|| "".into());
    let trouble = tag(
        "p",
        &["class", "id", "hidden"],
        vec![
            Some("problem".into()),
            Some(joined(&[id, "-problem"]).into()),
            hidden,
        ],
        None,
        vec![problem.to_owned().into()],
    );
    let hint = hint(id, text(block, "hint"));
    element("div", "field", vec![label, hint, inner, trouble])
}

fn heard(page: Page, path: &str) -> Callback<Event> {
    let path = path.to_owned();
    page.act
        .reform(move |event: Event| Action::Put(path.clone(), typed(&event)))
}

fn words(list: &Value, name: &'static str) -> Vec<Html> {
    items(list)
        .iter()
        .map(|item| element(name, "", vec![string(item).to_owned().into()]))
        .collect()
}

fn element(name: &'static str, class: &'static str, inner: Vec<Html>) -> Html {
    let class = (!class.is_empty()).then(|| class.into());
    tag(name, &["class"], vec![class], None, inner)
}

/// An element with its attributes. Markup made by the macro says the same at several times the size.
fn tag(
    name: &'static str,
    keys: &'static [&'static str],
    values: Vec<Option<AttrValue>>,
    key: Option<Key>,
    inner: Vec<Html>,
) -> Html {
    let values = values
        .into_iter()
        .map(|value| value.map(AttributeOrProperty::Attribute))
        .collect();
    VTag::__new_other(
        name.into(),
        NodeRef::default(),
        key,
        Attributes::Dynamic { keys, values },
        Listeners::None,
        all(inner),
    )
    .into()
}

/// Attributes that are all there.
fn set<const N: usize>(values: [String; N]) -> Vec<Option<AttrValue>> {
    values.into_iter().map(|value| Some(value.into())).collect()
}

fn items(list: &Value) -> &[Value] {
    list.as_array().map_or(&[], Vec::as_slice)
}

fn owned(block: &Value, field: &str) -> String {
    text(block, field).to_owned()
}

fn text<'a>(block: &'a Value, field: &str) -> &'a str {
    string(&block[field])
}

fn string(value: &Value) -> &str {
    value.as_str().unwrap_or_default()
}
