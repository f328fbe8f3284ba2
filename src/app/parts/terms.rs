//! Marks the first use of each trade word on a screen, so that a person can point at it or focus it.
//!
//! It works on the finished screen, because only then is it known which use comes first. Visible text comes
//! before folded text, so that a visible word is always marked in preference to a hidden one. `www/terms.js`
//! shows the meaning.

use std::rc::Rc;

use leavewell_model::ledger::{WORDS, next_word};
use yew::prelude::*;
use yew::virtual_dom::VNode;

use super::element::{El, el};

/// Marks the first use of each word in the running text of a screen.
pub fn explain(screen: &mut Html) {
    let mut walk = Walk {
        done: 0,
        in_folds: false,
    };
    walk.node(screen, false, false);
    walk.in_folds = true;
    walk.node(screen, false, false);
}

struct Walk {
    /// One bit for each word marked so far.
    done: u64,
    /// Whether this walk goes through the folded text.
    in_folds: bool,
}

impl Walk {
    fn node(&mut self, node: &mut VNode, running: bool, folded: bool) {
        // The first walk skips folded text.
        if folded && !self.in_folds {
            return;
        }
        match node {
            // A new list has one owner. If it is shared after all, it stays unmarked.
            VNode::VList(list) => {
                if let Some(list) = Rc::get_mut(list) {
                    for inner in list.iter_mut() {
                        self.node(inner, running, folded);
                    }
                }
            }
            VNode::VTag(tag) => {
                let (running, folded) = match tag.tag() {
                    // Headings, controls and pictures.
                    "a" | "button" | "caption" | "figcaption" | "h1" | "h2" | "h3" | "h4"
                    | "label" | "legend" | "option" | "select" | "summary" | "svg" | "th" => return,
                    "details" => (running, true),
                    "p" | "li" | "dt" | "dd" => (true, folded),
                    _ => (running, folded),
                };
                let unseen = |(name, value): (&str, &str)| {
                    matches!(
                        (name, value),
                        ("hidden" | "data-said", _) | ("aria-hidden", "true") | ("role", "alert")
                    )
                };
                if tag.attributes.iter().any(unseen) {
                    return;
                }
                if let Some(inner) = Rc::get_mut(tag).and_then(|tag| tag.children_mut()) {
                    self.node(inner, running, folded);
                }
            }
            VNode::VText(text) if running && folded == self.in_folds => {
                if let Some(marked) = self.marked(&text.text) {
                    *node = marked.html();
                }
            }
            _ => {}
        }
    }

    /// The text with its words marked, or `None` if it has none. One element contains all of it, so that its
    /// siblings keep their positions.
    fn marked(&mut self, text: &str) -> Option<El> {
        let mut marked = None;
        let mut from = 0;
        while let Some(word) = next_word(text, from, self.done) {
            self.done |= 1 << word.at;
            let part = |start, end| text.get(start..end).unwrap_or_default().to_owned();
            let meaning = WORDS.get(word.at).map_or("", |known| known.meaning);
            let term = el("span", "term")
                .attr("tabindex", "0")
                .attr("aria-description", meaning)
                .words(part(word.start, word.end));
            let before = marked.unwrap_or_else(|| el("span", ""));
            marked = Some(before.words(part(from, word.start)).el(term));
            from = word.end;
        }
        let rest = text.get(from..).unwrap_or_default().to_owned();
        marked.map(|marked| marked.words(rest))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::parts::element::group;
    use crate::app::parts::marks::fold;

    /// The marked words in order, and the whole text, to check that none is lost.
    fn read(node: &VNode, terms: &mut Vec<String>, text: &mut String) {
        match node {
            VNode::VList(list) => list.iter().for_each(|inner| read(inner, terms, text)),
            VNode::VText(words) => text.push_str(&words.text),
            VNode::VTag(tag) => {
                let attributes: Vec<_> = tag.attributes.iter().collect();
                let begins = text.len();
                if let Some(inner) = tag.children() {
                    read(inner, terms, text);
                }
                if attributes.contains(&("class", "term")) {
                    assert!(attributes.contains(&("tabindex", "0")));
                    let meaning = attributes
                        .iter()
                        .find(|(name, _)| *name == "aria-description");
                    assert!(meaning.unwrap().1.ends_with('.'));
                    terms.push(text[begins..].to_owned());
                }
            }
            _ => {}
        }
    }

    fn explained(screen: El) -> (Vec<String>, String) {
        let mut screen = screen.html();
        let (mut none, mut before) = (Vec::new(), String::new());
        read(&screen, &mut none, &mut before);
        assert!(none.is_empty());
        explain(&mut screen);
        let (mut terms, mut after) = (Vec::new(), String::new());
        read(&screen, &mut terms, &mut after);
        assert_eq!(before, after, "no word is lost or moved");
        (terms, after)
    }

    #[test]
    fn only_the_first_use_in_running_text_is_marked() {
        let screen = el("div", "")
            .tag("h2", "Bleed")
            .p("", "Where there is bleed, the tarnish is less.")
            .el(el("ul", "").el(el("li", "").text("More bleed, and a loupe.")))
            .el(el("dl", "")
                .tag("dt", "Reserve")
                .tag("dd", "Tarnish and seams"));
        assert_eq!(
            explained(screen).0,
            ["bleed", "tarnish", "loupe", "Reserve", "seams"]
        );
    }

    #[test]
    fn headings_and_controls_are_never_marked() {
        let screen = el("div", "")
            .el(el("p", "")
                .el(el("a", "").text("Reserve"))
                .tag("button", "Tarnish"))
            .el(el("label", "").p("", "Bleed"))
            .el(el("svg", "").tag("p", "Seams"))
            .el(el("table", "")
                .tag("caption", "Mounts")
                .el(el("th", "").p("", "Loupe")))
            .tag("div", "Hammer price")
            .el(el("p", "").hidden(true).text("Lacquer"))
            .el(el("p", "").attr("data-said", "true").text("Patina"))
            .el(el("div", "").attr("aria-hidden", "true").p("", "Engraving"));
        assert_eq!(explained(screen).0, Vec::<String>::new());
    }

    #[test]
    fn a_visible_use_is_marked_before_a_folded_one() {
        let folded = el("p", "").text("Folded bleed and a seam.").html();
        let screen = group()
            .put(fold("", "A mount", folded))
            .p("", "Bleed in sight.");
        assert_eq!(explained(screen).0, ["seam", "Bleed"]);
    }

    #[test]
    fn words_inside_and_beside_bold_text_are_found() {
        let line = el("p", "").tag("strong", "Bleed").text(": base metal.");
        let (terms, text) = explained(el("div", "").el(line));
        assert_eq!(terms, ["Bleed", "base metal"]);
        assert_eq!(text, "Bleed: base metal.");
    }
}
