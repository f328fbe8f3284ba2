//! The plainest pieces of a screen: headings, paragraphs, lists.

use std::rc::Rc;

use yew::prelude::*;
use yew::virtual_dom::{VList, VNode};

/// Nodes one after another. Far shorter, compiled, than the same as a fragment of markup.
pub fn all(nodes: Vec<Html>) -> Html {
    VNode::VList(Rc::new(VList::with_children(nodes, None)))
}

/// A box round nodes; the class may be empty.
pub fn div(class: &'static str, nodes: Vec<Html>) -> Html {
    html! { <div class={(!class.is_empty()).then_some(class)}>{ all(nodes) }</div> }
}

/// A section under its heading. The id names the heading; the class may be empty.
pub fn section(class: &'static str, id: &'static str, title: &'static str, body: Html) -> Html {
    let class = (!class.is_empty()).then_some(class);
    html! {
        <section {class} aria-labelledby={id}>
            <h2 {id}>{ title }</h2>
            { body }
        </section>
    }
}

/// A paragraph; the class may be empty.
pub fn p(class: &'static str, words: impl Into<AttrValue>) -> Html {
    paragraph(class, words.into())
}

/// A list of texts.
pub fn bullets(items: Vec<AttrValue>) -> Html {
    html! {
        <ul>
            for item in items {
                <li>{ item }</li>
            }
        </ul>
    }
}

/// A name in bold and what is said of it.
pub fn named(name: impl Into<AttrValue>, words: impl Into<AttrValue>) -> Html {
    name_and_words(name.into(), words.into())
}

/// A thing to open: its summary, and what is in it; the class may be empty.
pub fn fold(class: &'static str, summary: impl Into<AttrValue>, body: Html) -> Html {
    opened(class, summary.into(), body)
}

/// A table under its caption, which scrolls by itself where it is too wide. The first cell of a row
/// names it.
pub fn table(
    label: String,
    caption: AttrValue,
    head: &[&'static str],
    rows: Vec<Vec<String>>,
) -> Html {
    html! {
        <div class="table-scroll" role="region" aria-label={label} tabindex="0">
            <table>
                <caption>{ caption }</caption>
                <thead>
                    <tr>
                        for cell in head {
                            <th scope="col">{ *cell }</th>
                        }
                    </tr>
                </thead>
                <tbody>
                    for row in rows {
                        <tr>
                            for (i, cell) in row.into_iter().enumerate() {
                                if i == 0 {
                                    <th scope="row">{ cell }</th>
                                } else {
                                    <td>{ cell }</td>
                                }
                            }
                        </tr>
                    }
                </tbody>
            </table>
        </div>
    }
}

/// What a button does when it is pressed.
pub fn press<T: Clone + 'static>(to: &Callback<T>, what: T) -> Callback<MouseEvent> {
    to.reform(move |_| what.clone())
}

fn paragraph(class: &'static str, words: AttrValue) -> Html {
    html! { <p class={(!class.is_empty()).then_some(class)}>{ words }</p> }
}

fn name_and_words(name: AttrValue, words: AttrValue) -> Html {
    html! { <><strong>{ name }</strong>{ words }</> }
}

fn opened(class: &'static str, summary: AttrValue, body: Html) -> Html {
    let class = (!class.is_empty()).then_some(class);
    html! { <details {class}><summary>{ summary }</summary>{ body }</details> }
}
