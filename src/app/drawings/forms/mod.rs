//! The shapes of every form, back to front.

mod basket;
mod caddy;
mod candlestick;
mod coffee_pot;
mod cooler;
mod other;
mod sauceboat;
mod tankard;
mod teapot;
mod tray;
mod tureen;

use leavewell_model::case::Form;

use super::shape::{Plan, Shape};

/// What a piece of this form is drawn from; a plain covered cup when the form is not known.
pub(super) fn shapes(form: Option<Form>) -> Vec<Shape> {
    let plans = match form.unwrap_or(Form::Other) {
        Form::CoffeePot => coffee_pot::SHAPES,
        Form::Teapot => teapot::SHAPES,
        Form::Tankard => tankard::SHAPES,
        Form::Tray => tray::SHAPES,
        Form::Candlestick => candlestick::SHAPES,
        Form::Basket => basket::SHAPES,
        Form::Tureen => tureen::SHAPES,
        Form::Sauceboat => sauceboat::SHAPES,
        Form::Cooler => cooler::SHAPES,
        Form::Box => caddy::SHAPES,
        Form::Other => other::SHAPES,
    };
    plans.iter().map(Plan::shape).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::drawings::shape::Style;

    #[test]
    fn every_part_of_every_form_is_drawn() {
        for form in Form::ALL {
            let shapes = shapes(Some(*form));
            for part in form.parts() {
                let drawn = shapes
                    .iter()
                    .any(|s| s.part == *part && s.style != Style::Detail);
                assert!(drawn, "{} has no {}", form.label(), part.label());
            }
            for shape in &shapes {
                assert!(
                    form.parts().contains(&shape.part),
                    "{} has no {}",
                    form.label(),
                    shape.part.label()
                );
            }
        }
    }
}
