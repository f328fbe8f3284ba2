//! The screens of a piece, and the shelf they start from.
//!
//! Every screen of a piece takes [`PageProps`] and is drawn inside `parts::screen::Screen`, which
//! gives it its head, its live answer and its one heading of the first level.

pub mod condition;
pub mod counsel;
pub mod look;
pub mod money;
pub mod piece;
pub mod shelf;

use std::rc::Rc;

use yew::{Callback, Properties};

use super::state::{Action, Open};

/// What every screen of a piece is given.
#[derive(Clone, Debug, Properties)]
pub struct PageProps {
    /// The piece.
    pub open: Rc<Open>,
    /// Where to say what happened.
    pub act: Callback<Action>,
}

impl PartialEq for PageProps {
    /// By identity: every change makes a new `Open`, and comparing whole reports would cost more
    /// than drawing.
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.open, &other.open) && self.act == other.act
    }
}
