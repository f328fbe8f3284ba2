//! The silver of one part as the answer draws it, for pages that go into more detail: the same sample, the
//! same kinds, the same layers.

use std::borrow::Cow;
use std::rc::Rc;

use super::Solved;
use super::part_silver::{LayerDraws, worn_layers};
use super::sample::{Dim, Sample};
use crate::identity::Posterior;
use crate::ledger::{Figure, Ledger};
use crate::record::{Part, PartName};
use crate::silver::{Layer, bleed_range};

/// One part of a case over the sample.
pub struct SampledPart {
    /// Bare share in each draw.
    pub bleed: Vec<f64>,
    /// The layer in each draw; `None` where the piece is solid silver.
    pub layers: Vec<Option<Layer>>,
    /// What the piece is.
    pub posterior: Posterior,
    /// The figures, with the case's own values applied.
    pub ledger: Rc<Cow<'static, Ledger>>,
    sample: Rc<Sample>,
}

/// The uncertain input with which a figure is drawn; two figures with the same input are high and low
/// together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UncertainInput {
    /// How fast tarnish grows.
    TarnishRate,
    /// How much a cleaning takes.
    CleaningLoss,
    /// How much of the tarnish a cleaning takes with it.
    FilmShare,
}

impl SampledPart {
    /// The wear of the part with this name.
    #[must_use]
    pub fn new(solved: &Solved, name: PartName) -> Self {
        let (case, ledger) = (solved.case(), solved.ledger());
        let sample = Sample::shared(solved.log2_points, solved.seed);
        let drawn = LayerDraws::new(case, ledger, &solved.draws.kind, &sample);
        let unknown = Part::unknown(name);
        let part = case.part(name).unwrap_or(&unknown);
        let range = bleed_range(part.bleed, ledger);
        let worn = worn_layers(part, range, ledger, &drawn, &sample);
        Self {
            bleed: worn.bleed.to_vec(),
            layers: worn.layers,
            posterior: solved.posterior,
            ledger: Rc::clone(&solved.ledger),
            sample,
        }
    }

    /// Draws of a figure.
    #[must_use]
    pub fn draw(&self, figure: &Figure, input: UncertainInput) -> Vec<f64> {
        let dim = match input {
            UncertainInput::TarnishRate => Dim::Tarnish,
            UncertainInput::CleaningLoss => Dim::Loss,
            UncertainInput::FilmShare => Dim::Fees,
        };
        self.sample.draw(figure, dim).to_vec()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{Bleed, Draft};

    #[test]
    fn the_layers_equal_those_of_the_answer() {
        let text = include_str!("../../../tests/cases/worn_tray.json");
        let (case, _) = Draft::parse(text).unwrap().read();
        let worn = SampledPart::new(&crate::counsel::solve(&case), PartName::Border);
        let report = crate::weigh(&case);
        let part = report
            .silver
            .parts
            .iter()
            .find(|p| p.part == PartName::Border)
            .unwrap();
        let left: Vec<f64> = worn.layers.iter().flatten().map(Layer::left_um).collect();
        let middle = crate::maths::median(&left);
        assert!((middle - part.left_um.unwrap().p50).abs() < 1e-12);
        assert!(case.part(PartName::Border).unwrap().bleed.is_some());
        assert!(matches!(
            case.part(PartName::Body).unwrap().bleed,
            Some(Bleed::Fraction(_))
        ));
    }
}
