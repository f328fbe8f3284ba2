//! The shapes of every form, back to front.

mod basket;
mod caddy;
mod candelabrum;
mod candlestick;
mod coffee_pot;
mod cooler;
mod cruet;
mod cutlery;
mod other;
mod sauceboat;
mod snuffers;
mod tankard;
mod teapot;
mod tray;
mod tureen;

use leavewell_model::terms::{Form, PartName};

use super::shape::{Joint, PaintedShape, ShapePlan};

/// The shapes of a piece of this form, or of a plain covered cup if the form is unknown.
pub(super) fn shapes(form: Option<Form>) -> Vec<PaintedShape> {
    let drawing = drawing(form);
    let own = drawing.more.iter().map(ShapePlan::shape);
    let shapes = drawing.shapes.iter().map(ShapePlan::shape);
    shapes
        .filter_map(|shape| {
            let part = drawing.part(shape.part)?;
            Some(PaintedShape { part, ..shape })
        })
        .chain(own)
        .collect()
}

/// The position of a part's joint in the drawing. A part that the form lacks has the position of its first part.
pub(super) fn joint(form: Option<Form>, part: PartName) -> (f64, f64) {
    let joints = joints(form);
    let found = joints.iter().find(|j| j.0 == part).or(joints.first());
    found.map_or((0.0, 0.0), |Joint(_, x, y)| ((*x).into(), (*y).into()))
}

fn joints(form: Option<Form>) -> Vec<Joint> {
    let drawing = drawing(form);
    let own = drawing
        .more_joints
        .iter()
        .map(|Joint(p, x, y)| Joint(*p, *x, *y));
    let joints = drawing.joints.iter();
    joints
        .filter_map(|Joint(part, x, y)| Some(Joint(drawing.part(*part)?, *x, *y)))
        .chain(own)
        .collect()
}

/// The drawing of a form: its own shapes, or those of another form with parts renamed, left out and
/// added.
struct Drawing {
    shapes: &'static [ShapePlan],
    joints: &'static [Joint],
    more: &'static [ShapePlan],
    more_joints: &'static [Joint],
    /// A part of the shapes, and what it is here; `None` where this form has no such part.
    changed: &'static [(PartName, Option<PartName>)],
}

impl Drawing {
    const fn of(shapes: &'static [ShapePlan], joints: &'static [Joint]) -> Self {
        Self {
            shapes,
            joints,
            more: &[],
            more_joints: &[],
            changed: &[],
        }
    }

    const fn changed(self, changed: &'static [(PartName, Option<PartName>)]) -> Self {
        Self { changed, ..self }
    }

    const fn with(self, more: &'static [ShapePlan], more_joints: &'static [Joint]) -> Self {
        Self {
            more,
            more_joints,
            ..self
        }
    }

    /// What a part of the shapes is in this form.
    fn part(&self, drawn: PartName) -> Option<PartName> {
        let changed = self.changed.iter().find(|(from, _)| *from == drawn);
        changed.map_or(Some(drawn), |(_, to)| *to)
    }
}

fn drawing(form: Option<Form>) -> Drawing {
    use PartName as P;
    match form.unwrap_or(Form::Other) {
        Form::CoffeePot => Drawing::of(coffee_pot::SHAPES, coffee_pot::JOINTS),
        Form::Teapot => Drawing::of(teapot::SHAPES, teapot::JOINTS),
        Form::Tankard => Drawing::of(tankard::SHAPES, tankard::JOINTS),
        Form::Tray => Drawing::of(tray::SHAPES, tray::JOINTS),
        Form::Candlestick => Drawing::of(candlestick::SHAPES, candlestick::JOINTS),
        Form::Basket => Drawing::of(basket::SHAPES, basket::JOINTS),
        Form::Tureen => Drawing::of(tureen::SHAPES, tureen::JOINTS),
        Form::Sauceboat => Drawing::of(sauceboat::SHAPES, sauceboat::JOINTS),
        Form::Cooler => Drawing::of(cooler::SHAPES, cooler::JOINTS),
        Form::Box => Drawing::of(caddy::SHAPES, caddy::JOINTS),
        Form::Other => Drawing::of(other::SHAPES, other::JOINTS),
        Form::Cutlery => Drawing::of(cutlery::SHAPES, cutlery::JOINTS),
        Form::Snuffers => Drawing::of(snuffers::SHAPES, snuffers::JOINTS),
        Form::Cruet => Drawing::of(cruet::SHAPES, cruet::JOINTS),
        Form::Inkstand => {
            Drawing::of(tray::SHAPES, tray::JOINTS).with(cruet::POTS_ON_A_TRAY, cruet::POT_JOINTS)
        }
        Form::Salts => Drawing::of(cooler::SHAPES, cooler::JOINTS).changed(&[
            (P::Handle, None),
            (P::Shield, None),
            (P::Interior, Some(P::Liner)),
        ]),
        Form::Coaster => Drawing::of(caddy::SHAPES, caddy::JOINTS)
            .changed(&[(P::Cover, None), (P::Edge, Some(P::Rim))]),
        Form::Urn => Drawing::of(coffee_pot::SHAPES, coffee_pot::JOINTS)
            .changed(&[(P::Spout, Some(P::Fitting))]),
        Form::WaterDish => {
            Drawing::of(tureen::SHAPES, tureen::JOINTS).changed(&[(P::Foot, Some(P::Fitting))])
        }
        Form::Candelabrum => Drawing::of(candlestick::SHAPES, candlestick::JOINTS)
            .changed(&[(P::Body, Some(P::Stem)), (P::Rim, Some(P::Nozzle))])
            .with(candelabrum::SHAPES, candelabrum::JOINTS),
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
    fn every_joint_lies_on_the_piece_and_on_its_part() {
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
            let joints = joints(Some(*form));
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
