//! A control to choose a file.

use web_sys::{File, HtmlInputElement};
use yew::prelude::*;

use super::element::{El, el};
use super::field::hint;

/// A labelled control for a file that Leavewell saved. It emits the file when a person chooses one.
pub fn chosen_file(id: &'static str, words: [&'static str; 2], chosen: Callback<File>) -> El {
    file_of(id, words, ".json,application/json", chosen)
}

/// A labelled control for a file of these kinds. It emits the file when a person chooses one.
pub fn file_of(
    id: &'static str,
    [label, about]: [&'static str; 2],
    kinds: &'static str,
    chosen: Callback<File>,
) -> El {
    let onchange = Callback::from(move |event: Event| {
        let Some(input) = event.target_dyn_into::<HtmlInputElement>() else {
            return;
        };
        if let Some(file) = input.files().and_then(|files| files.get(0)) {
            // Clearing the value lets a person choose the same file again.
            input.set_value("");
            chosen.emit(file);
        }
    });
    let described = super::field::described(id);
    let control = el("input", "")
        .attr("id", id)
        .attr("type", "file")
        .attr("accept", kinds)
        .set("aria-describedby", described)
        .changed(onchange);
    el("div", "field")
        .el(el("label", "").attr("for", id).text(label))
        .put(hint(id, about))
        .el(control)
}
