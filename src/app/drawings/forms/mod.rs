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

use leavewell_model::record::{Form, PartName};

use super::shape::{Joint, PaintedShape, ShapePlan};

/// What a piece of this form is drawn from; a plain covered cup when the form is not known.
pub(super) fn shapes(form: Option<Form>) -> Vec<PaintedShape> {
    plans(form).0.iter().map(ShapePlan::shape).collect()
}

/// Where on the drawing the joint of a part is; a part that the form has not is taken as its first.
pub(super) fn joint(form: Option<Form>, part: PartName) -> (f64, f64) {
    let joints = plans(form).1;
    let found = joints.iter().find(|j| j.0 == part).or(joints.first());
    found.map_or((0.0, 0.0), |Joint(_, x, y)| ((*x).into(), (*y).into()))
}

fn plans(form: Option<Form>) -> (&'static [ShapePlan], &'static [Joint]) {
    match form.unwrap_or(Form::Other) {
        Form::CoffeePot => (coffee_pot::SHAPES, coffee_pot::JOINTS),
        Form::Teapot => (teapot::SHAPES, teapot::JOINTS),
        Form::Tankard => (tankard::SHAPES, tankard::JOINTS),
        Form::Tray => (tray::SHAPES, tray::JOINTS),
        Form::Candlestick => (candlestick::SHAPES, candlestick::JOINTS),
        Form::Basket => (basket::SHAPES, basket::JOINTS),
        Form::Tureen => (tureen::SHAPES, tureen::JOINTS),
        Form::Sauceboat => (sauceboat::SHAPES, sauceboat::JOINTS),
        Form::Cooler => (cooler::SHAPES, cooler::JOINTS),
        Form::Box => (caddy::SHAPES, caddy::JOINTS),
        Form::Other => (other::SHAPES, other::JOINTS),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::drawings::outline::Silhouette;
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

    #[test]
    fn every_joint_is_on_the_piece_and_at_its_part() {
        for form in Form::ALL {
            let shapes = shapes(Some(*form));
            let areas = |part: Option<PartName>| {
                let all = shapes.iter().filter(|s| match part {
                    Some(part) => s.part == part && s.style != Style::Detail,
                    None => s.style == Style::Area,
                });
                Silhouette::of(all)
            };
            let piece = areas(None);
            let joints = plans(Some(*form)).1;
            assert_eq!(joints.len(), form.parts().len(), "{}", form.label());
            for part in form.parts() {
                let name = [form.label(), ", ", part.label()].concat();
                assert!(joints.iter().any(|j| j.0 == *part), "{name}");
                let at = joint(Some(*form), *part);
                assert!((0.0..=400.0).contains(&at.0) && (0.0..=300.0).contains(&at.1));
                assert!(piece.gap(at) < 1.0, "{name}: {at:?} off the piece");
                let own = areas(Some(*part));
                assert!(own.gap(at) < 4.0, "{name}: {} from it", own.gap(at));
            }
        }
    }
}
