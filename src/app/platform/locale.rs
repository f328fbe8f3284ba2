//! The browser's locale, which `boot.js` puts on the page before the app starts.

use js_sys::{Function, Reflect, global};
use wasm_bindgen::{JsCast, JsValue};

use crate::app::parts::locale::Locale;

/// The locale of the browser, or the English one where the page has none.
#[must_use]
pub fn locale() -> Locale {
    let english = Locale::default();
    let sign = |name, otherwise| {
        let text = part(name).and_then(|value| value.as_string());
        text.and_then(|text| text.chars().next())
            .unwrap_or(otherwise)
    };
    Locale {
        day,
        group: sign("group", english.group),
        point: sign("point", english.point),
    }
}

/// A day as the locale writes it. What is no day stays as it is.
fn day(year_month_day: &str) -> String {
    let write = part("day").and_then(|day| day.dyn_into::<Function>().ok());
    let written = write.and_then(|day| day.call1(&JsValue::NULL, &year_month_day.into()).ok());
    let written = written.and_then(|text| text.as_string());
    written.unwrap_or_else(|| year_month_day.to_owned())
}

fn part(name: &str) -> Option<JsValue> {
    let locale = Reflect::get(&global(), &"leavewellLocale".into()).ok()?;
    Reflect::get(&locale, &name.into()).ok()
}
