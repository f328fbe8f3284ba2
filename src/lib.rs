//! Leavewell: whether to restore a piece of old silver plate, and how far.
//!
//! This crate shows what `leavewell-model` works out. It identifies the piece itself, at once; all else comes from
//! the worker (`src/worker`), a moment later and without holding up typing.
//!
//! The doors of the crate:
//! - [`start`] draws the app into the page;
//! - [`app::state::State`] is everything a screen shows, and [`app::state::Action`] everything that changes it;
//! - [`app::route::Route`] names the screens.
//!
//! A screen is a function of the state. Its address is a route:
//!
//! ```
//! use leavewell::app::route::Route;
//!
//! assert_eq!(Route::parse(Route::Shelf.href()), Route::Shelf);
//! ```

pub mod app;

/// Draws the app into the element with the id `app`.
pub fn start() {
    yew::set_custom_panic_hook(Box::new(|info| {
        app::platform::page::show_stopped(&info.to_string());
    }));
    let place = web_sys::window()
        .and_then(|w| w.document())
        .and_then(|d| d.get_element_by_id("app"));
    if let Some(place) = place {
        yew::Renderer::<app::App>::with_root(place).render();
    }
}
