//! What is said when a page is asked for that is not there.

pub(crate) const REMEDY: &str = "Go back to the piece and choose a screen from there.";

pub(crate) fn message(name: &str) -> String {
    format!("There is no page called {name}.")
}
