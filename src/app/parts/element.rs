//! A builder for elements. Each step compiles to one short call, while the same element in `html!` takes
//! hundreds of bytes.

use std::rc::Rc;

use yew::html::{onchange, onclick, oninput, onsubmit, ontoggle};
use yew::prelude::*;
use yew::virtual_dom::{Key, VTag, VText};

/// An element under construction; [`El::html`] turns it into a node.
#[must_use = "an element is shown only where it is added"]
// Boxed, so that each step passes one pointer.
pub struct El(Box<VTag>);

/// An element with this tag; the class may be empty.
#[inline(never)]
pub fn el(tag: &'static str, class: &'static str) -> El {
    El(Box::new(VTag::new(tag))).attr("class", class)
}

/// A sequence of nodes without an element around them.
pub fn group() -> El {
    el("", "")
}

/// A button; the class may be empty.
pub fn button(class: &'static str) -> El {
    el("button", class).attr("type", "button")
}

impl El {
    /// Sets a fixed attribute, unless it is empty.
    #[inline(never)]
    pub fn attr(mut self, name: &'static str, value: &'static str) -> Self {
        if !value.is_empty() {
            self.0.add_attribute(name, value);
        }
        self
    }

    /// Sets a computed attribute.
    #[inline(never)]
    pub fn set(mut self, name: &'static str, value: String) -> Self {
        self.0.add_attribute(name, value);
        self
    }

    /// Hides the element or shows it.
    pub fn hidden(self, hidden: bool) -> Self {
        self.attr("hidden", if hidden { "hidden" } else { "" })
    }

    /// Sets the key that identifies it among its siblings.
    #[inline(never)]
    pub fn key(mut self, key: &str) -> Self {
        self.0.key = Some(Key::from(key));
        self
    }

    /// Handles a click.
    #[inline(never)]
    pub fn pressed(mut self, done: Callback<MouseEvent>) -> Self {
        self.0.add_listener(Rc::new(onclick::Wrapper::new(done)));
        self
    }

    /// Handles a change event of a control in it.
    #[inline(never)]
    pub fn changed(mut self, done: Callback<Event>) -> Self {
        self.0.add_listener(Rc::new(onchange::Wrapper::new(done)));
        self
    }

    /// Handles an input event.
    #[inline(never)]
    pub fn typed(mut self, done: Callback<InputEvent>) -> Self {
        self.0.add_listener(Rc::new(oninput::Wrapper::new(done)));
        self
    }

    /// Handles the opening and closing of a `details` element.
    #[inline(never)]
    pub fn toggled(mut self, done: Callback<Event>) -> Self {
        self.0.add_listener(Rc::new(ontoggle::Wrapper::new(done)));
        self
    }

    /// Handles the submission of a form.
    #[inline(never)]
    pub fn sent(mut self, done: Callback<SubmitEvent>) -> Self {
        self.0.add_listener(Rc::new(onsubmit::Wrapper::new(done)));
        self
    }

    /// Sets whether a checkbox or a radio button is checked.
    #[inline(never)]
    pub fn ticked(mut self, ticked: bool) -> Self {
        self.0.set_checked(ticked);
        self
    }

    /// Sets the value of a control.
    #[inline(never)]
    pub fn value(mut self, value: String) -> Self {
        self.0.set_value(value);
        self
    }

    /// Appends a node.
    #[inline(never)]
    pub fn put(mut self, node: Html) -> Self {
        self.0.add_child(node);
        self
    }

    /// Appends an element.
    #[inline(never)]
    pub fn el(self, inner: Self) -> Self {
        self.put(inner.html())
    }

    /// Appends fixed text.
    #[inline(never)]
    pub fn text(self, words: &'static str) -> Self {
        self.put(Html::VText(VText::new(words)))
    }

    /// Appends computed text.
    #[inline(never)]
    pub fn words(self, words: String) -> Self {
        self.put(Html::VText(VText::new(words)))
    }

    /// Appends an element with this tag that contains only text.
    #[inline(never)]
    pub fn tag(self, tag: &'static str, words: &'static str) -> Self {
        self.el(el(tag, "").text(words))
    }

    /// Appends a paragraph with fixed text; the class may be empty.
    #[inline(never)]
    pub fn p(self, class: &'static str, words: &'static str) -> Self {
        self.el(el("p", class).text(words))
    }

    /// Appends a paragraph with computed text.
    #[inline(never)]
    pub fn said(self, class: &'static str, words: String) -> Self {
        self.el(el("p", class).words(words))
    }

    /// Appends an element for each item.
    pub fn each<T>(
        self,
        items: impl IntoIterator<Item = T>,
        mut made: impl FnMut(T) -> Self,
    ) -> Self {
        items.into_iter().fold(self, |all, item| all.el(made(item)))
    }

    /// The finished node.
    #[inline(never)]
    pub fn html(self) -> Html {
        if self.0.tag().is_empty() {
            self.0.into_children().unwrap_or_default()
        } else {
            (*self.0).into()
        }
    }
}
