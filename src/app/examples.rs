//! The worked examples. The pieces are invented; their records are the same files that the tests weigh.

use leavewell_model::Draft;
use leavewell_model::terms::Form;

use super::wording::examples as text;

/// A worked example.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Example {
    /// The title.
    pub title: &'static str,
    /// A short story of the piece.
    pub story: &'static str,
    /// The record, as JSON text.
    pub text: &'static str,
}

impl Example {
    /// The form of its piece.
    #[must_use]
    pub fn form(&self) -> Form {
        let draft = Draft::parse(self.text).ok();
        draft.and_then(|draft| draft.form()).unwrap_or(Form::Other)
    }
}

/// The piece that the guide takes from start to finish.
pub const WORKED: Example = example(
    text::DENTED_TRAY,
    include_str!("../../tests/cases/dented_tray.json"),
);

/// Every worked example, in display order.
pub const EXAMPLES: [Example; 15] = [
    example(
        text::CAKE_BASKET,
        include_str!("../../tests/cases/cake_basket.json"),
    ),
    example(
        text::WORN_TRAY,
        include_str!("../../tests/cases/worn_tray.json"),
    ),
    example(
        text::DAILY_TEAPOT,
        include_str!("../../tests/cases/daily_teapot.json"),
    ),
    example(
        text::LEAKING_TEAPOT,
        include_str!("../../tests/cases/leaking_teapot.json"),
    ),
    example(
        text::RUSTED_SNUFFERS_TRAY,
        include_str!("../../tests/cases/rusted_snuffers_tray.json"),
    ),
    example(
        text::REPLATED_COFFEE_POT,
        include_str!("../../tests/cases/replated_coffee_pot.json"),
    ),
    example(
        text::COPPER_TUREEN,
        include_str!("../../tests/cases/copper_reproduction_tureen.json"),
    ),
    example(
        text::HALLMARKED_CANDLESTICKS,
        include_str!("../../tests/cases/hallmarked_candlesticks.json"),
    ),
    WORKED,
    example(
        text::PAIR_OF_CANDLESTICKS,
        include_str!("../../tests/cases/pair_of_candlesticks.json"),
    ),
    example(
        text::TEAPOT_WITHOUT_KNOB,
        include_str!("../../tests/cases/teapot_without_knob.json"),
    ),
    example(
        text::LOOSE_CANDLESTICK,
        include_str!("../../tests/cases/loose_candlestick.json"),
    ),
    example(
        text::BROKEN_LACQUER_POT,
        include_str!("../../tests/cases/broken_lacquer_pot.json"),
    ),
    example(
        text::UNTINNED_SAUCEBOAT,
        include_str!("../../tests/cases/untinned_sauceboat.json"),
    ),
    example(
        text::SIX_FAULTS_TEAPOT,
        include_str!("../../tests/cases/six_faults_teapot.json"),
    ),
];

const fn example([title, story]: [&'static str; 2], text: &'static str) -> Example {
    Example { title, story, text }
}

#[cfg(test)]
mod tests {
    use leavewell_model::Draft;

    use super::EXAMPLES;

    #[test]
    fn every_example_opens_without_a_fault() {
        for example in EXAMPLES {
            let (case, problems) = Draft::parse(example.text).unwrap().read();
            assert_eq!(problems, [], "{}", example.title);
            assert!(
                case.piece.form.is_some() && !case.findings.is_empty(),
                "{}",
                example.title
            );
        }
    }
}
