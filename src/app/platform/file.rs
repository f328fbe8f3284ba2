//! Files that a person saves or opens. Nothing leaves the device.

use crate::app::parts::words::joined;
use crate::app::wording::keeping as text;
pub use gloo::file::callbacks::FileReader as Reading;
use gloo::file::callbacks::{read_as_bytes, read_as_text};
use js_sys::Array;
use leavewell_model::Problem;
use leavewell_model::record::{MAX_BYTES, OpenError};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, Url};

/// Offers a text to save as a file. Returns false if the browser refuses.
#[must_use]
pub fn save(name: &str, text: &str) -> bool {
    try_save(name, text).is_ok()
}

/// The file name for a case: the case's name in plain letters, then the extension.
#[must_use]
pub fn file_name(name: &str, ending: &str) -> String {
    let mut plain = String::new();
    for letter in name.trim().chars().take(60) {
        // Letters of other scripts stay as they are.
        let letter = letter.to_ascii_lowercase();
        if letter.is_ascii_alphanumeric() || !letter.is_ascii() {
            plain.push(letter);
        } else if !plain.is_empty() && !plain.ends_with('-') {
            plain.push('-');
        }
    }
    let plain = plain.trim_end_matches('-');
    let plain = if plain.is_empty() { "piece" } else { plain };
    joined(&[plain, ending])
}

/// Reads a file that a person chose. Keep the reader until `done` is called, because dropping it stops it.
///
/// # Errors
/// If the file is larger than any case can be.
pub fn read(
    file: web_sys::File,
    done: impl Fn(Result<String, Problem>) + 'static,
) -> Result<Reading, Problem> {
    // Sizes are whole numbers and not negative.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let bytes = file.size() as usize;
    if bytes > MAX_BYTES {
        return Err(OpenError::TooLarge { bytes }.problem());
    }
    Ok(read_as_text(&gloo::file::File::from(file), move |text| {
        done(text.map_err(|_| trouble(text::FILE_NOT_READ)));
    }))
}

/// Reads the bytes of a file that a person chose. Keep the reader until `done` is called.
///
/// # Errors
/// If the file is larger than `most` bytes; the problem is then `too_large`.
pub fn read_bytes(
    file: web_sys::File,
    most: usize,
    too_large: [&str; 2],
    done: impl Fn(Result<Vec<u8>, Problem>) + 'static,
) -> Result<Reading, Problem> {
    // Sizes are whole numbers and not negative.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let bytes = file.size() as usize;
    if bytes > most {
        return Err(trouble(too_large));
    }
    Ok(read_as_bytes(&gloo::file::File::from(file), move |bytes| {
        done(bytes.map_err(|_| trouble(text::FILE_NOT_READ)));
    }))
}

/// A problem with a file: what happened and what to do.
#[must_use]
pub fn trouble([message, remedy]: [&str; 2]) -> Problem {
    Problem {
        field: "file".to_owned(),
        message: message.to_owned(),
        remedy: remedy.to_owned(),
    }
}

fn try_save(name: &str, text: &str) -> Result<(), JsValue> {
    let document = web_sys::window()
        .and_then(|w| w.document())
        .ok_or(JsValue::NULL)?;
    let kind = BlobPropertyBag::new();
    kind.set_type(match name.rsplit_once('.') {
        Some((_, "html")) => "text/html",
        Some((_, "md")) => "text/markdown",
        Some((_, "csv")) => "text/csv;charset=utf-8",
        _ => "application/json",
    });
    let blob = Blob::new_with_str_sequence_and_options(&Array::of1(&text.into()), &kind)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let link: HtmlAnchorElement = document.create_element("a")?.dyn_into()?;
    link.set_href(&address);
    link.set_download(name);
    link.click();
    Url::revoke_object_url(&address)
}

#[cfg(test)]
mod tests {
    use super::file_name;

    #[test]
    fn file_names_are_plain() {
        assert_eq!(
            file_name("Aunt's cake basket, 1790?", ".leavewell.json"),
            "aunt-s-cake-basket-1790.leavewell.json"
        );
        assert_eq!(
            file_name("../../etc", ".leavewell.json"),
            "etc.leavewell.json"
        );
        assert_eq!(file_name("  ", ".leavewell.json"), "piece.leavewell.json");
    }
}
