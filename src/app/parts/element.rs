//! Elements put together step by step. Compiled, a step is one short call, where the same in markup
//! takes hundreds of bytes for each element.

use std::rc::Rc;

use yew::html::{onchange, onclick, oninput, onsubmit, ontoggle};
use yew::prelude::*;
use yew::virtual_dom::{Key, VTag, VText};

/// An element being put together; [`El::html`] makes a node of it.
#[must_use = "an element is shown only where it is added"]
// In a box, so that a step hands on one word.
pub struct El(Box<VTag>);

/// An element of this tag; the class may be empty.
#[inline(never)]
pub fn el(tag: &'static str, class: &'static str) -> El {
    El(Box::new(VTag::new(tag))).attr("class", class)
}

/// Nodes one after another, without an element round them.
pub fn group() -> El {
    el("", "")
}

/// A button; the class may be empty.
pub fn button(class: &'static str) -> El {
    el("button", class).attr("type", "button")
}

impl El {
    /// An attribute; left out when it is empty.
    #[inline(never)]
    pub fn attr(mut self, name: &'static str, value: &'static str) -> Self {
        if !value.is_empty() {
            self.0.add_attribute(name, value);
        }
        self
    }

    /// An attribute that is worked out.
    #[inline(never)]
    pub fn set(mut self, name: &'static str, value: String) -> Self {
        self.0.add_attribute(name, value);
        self
    }

    /// Hidden or not.
    pub fn hidden(self, hidden: bool) -> Self {
        self.attr("hidden", if hidden { "hidden" } else { "" })
    }

    /// What it is known by among its neighbours.
    #[inline(never)]
    pub fn key(mut self, key: &str) -> Self {
        self.0.key = Some(Key::from(key));
        self
    }

    /// What is done when it is pressed.
    #[inline(never)]
    pub fn pressed(mut self, done: Callback<MouseEvent>) -> Self {
        self.0.add_listener(Rc::new(onclick::Wrapper::new(done)));
        self
    }

    /// What is done when a control in it is changed.
    #[inline(never)]
    pub fn changed(mut self, done: Callback<Event>) -> Self {
        self.0.add_listener(Rc::new(onchange::Wrapper::new(done)));
        self
    }

    /// What is done when something is typed in it.
    #[inline(never)]
    pub fn typed(mut self, done: Callback<InputEvent>) -> Self {
        self.0.add_listener(Rc::new(oninput::Wrapper::new(done)));
        self
    }

    /// What is done when it is opened or closed, for a thing to open.
    #[inline(never)]
    pub fn toggled(mut self, done: Callback<Event>) -> Self {
        self.0.add_listener(Rc::new(ontoggle::Wrapper::new(done)));
        self
    }

    /// What is done when it is sent off.
    #[inline(never)]
    pub fn sent(mut self, done: Callback<SubmitEvent>) -> Self {
        self.0.add_listener(Rc::new(onsubmit::Wrapper::new(done)));
        self
    }

    /// Whether it is ticked: for boxes and buttons to choose with.
    #[inline(never)]
    pub fn ticked(mut self, ticked: bool) -> Self {
        self.0.set_checked(ticked);
        self
    }

    /// What stands in it, for a control.
    #[inline(never)]
    pub fn value(mut self, value: String) -> Self {
        self.0.set_value(value);
        self
    }

    /// A node in it, after those there are.
    #[inline(never)]
    pub fn put(mut self, node: Html) -> Self {
        self.0.add_child(node);
        self
    }

    /// An element in it.
    #[inline(never)]
    pub fn el(self, inner: Self) -> Self {
        self.put(inner.html())
    }

    /// Words in it.
    #[inline(never)]
    pub fn text(self, words: &'static str) -> Self {
        self.put(Html::VText(VText::new(words)))
    }

    /// Words in it that are worked out.
    #[inline(never)]
    pub fn words(self, words: String) -> Self {
        self.put(Html::VText(VText::new(words)))
    }

    /// An element of this tag with nothing but words in it.
    #[inline(never)]
    pub fn tag(self, tag: &'static str, words: &'static str) -> Self {
        self.el(el(tag, "").text(words))
    }

    /// A paragraph; the class may be empty.
    #[inline(never)]
    pub fn p(self, class: &'static str, words: &'static str) -> Self {
        self.el(el("p", class).text(words))
    }

    /// A paragraph that is worked out.
    #[inline(never)]
    pub fn said(self, class: &'static str, words: String) -> Self {
        self.el(el("p", class).words(words))
    }

    /// An element for each of these.
    pub fn each<T>(
        self,
        items: impl IntoIterator<Item = T>,
        mut made: impl FnMut(T) -> Self,
    ) -> Self {
        items.into_iter().fold(self, |all, item| all.el(made(item)))
    }

    /// The node.
    #[inline(never)]
    pub fn html(self) -> Html {
        if self.0.tag().is_empty() {
            self.0.into_children().unwrap_or_default()
        } else {
            (*self.0).into()
        }
    }
}
