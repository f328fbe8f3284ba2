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

use super::shape::Shape;

/// What a piece of this form is drawn from; a plain covered cup when the form is not known.
pub(super) fn shapes(form: Option<Form>) -> Vec<Shape> {
    match form.unwrap_or(Form::Other) {
        Form::CoffeePot => coffee_pot::shapes(),
        Form::Teapot => teapot::shapes(),
        Form::Tankard => tankard::shapes(),
        Form::Tray => tray::shapes(),
        Form::Candlestick => candlestick::shapes(),
        Form::Basket => basket::shapes(),
        Form::Tureen => tureen::shapes(),
        Form::Sauceboat => sauceboat::shapes(),
        Form::Cooler => cooler::shapes(),
        Form::Box => caddy::shapes(),
        Form::Other => other::shapes(),
    }
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
