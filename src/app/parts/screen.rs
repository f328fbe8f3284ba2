//! The frame of every screen of a piece: what it is, what it is for, the next step, the answer.

use std::rc::Rc;

use yew::prelude::*;

use super::live::Live;
use crate::app::route::Route;
use crate::app::state::Open;

/// What the frame needs.
#[derive(Clone, Debug, Properties)]
pub struct ScreenProps {
    /// The piece.
    pub open: Rc<Open>,
    /// The screen's one heading of the first level, such as "Look at the piece".
    pub title: AttrValue,
    /// What the screen is for, in one line.
    pub purpose: AttrValue,
    /// The one next step: where, and in which words.
    pub next: (Route, AttrValue),
    /// The live answer in one line.
    pub line: AttrValue,
    /// The live answer in full.
    pub answer: Html,
    /// The work.
    pub children: Html,
}

impl PartialEq for ScreenProps {
    /// A new piece means new words and new contents; nothing else on a screen changes without it.
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.open, &other.open)
            && self.answer == other.answer
            && self.children == other.children
    }
}

/// A screen of a piece: head, live answer, work, next step.
#[component]
pub fn Screen(props: &ScreenProps) -> Html {
    let (route, words) = &props.next;
    html! {
        <div class="screen">
            <header class="screen-head">
                <p class="case-name">{ props.open.name() }</p>
                <h1 tabindex="-1">{ props.title.clone() }</h1>
                <p class="purpose">{ props.purpose.clone() }</p>
            </header>
            <Live line={props.line.clone()}>{ props.answer.clone() }</Live>
            <div class="work">
                { props.children.clone() }
                <p class="next-step"><a class="button" href={route.href()}>{ words.clone() }</a></p>
            </div>
        </div>
    }
}
