//! Worked examples. The pieces are invented; their records are the files the tests weigh.

use super::wording::examples as say;

/// A worked example.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Example {
    /// What it is called.
    pub title: &'static str,
    /// Its story in one line.
    pub story: &'static str,
    /// Its record.
    pub text: &'static str,
}

/// Every worked example, in the order shown.
pub const EXAMPLES: [Example; 14] = [
    example(
        say::CAKE_BASKET,
        include_str!("../../tests/cases/cake_basket.json"),
    ),
    example(
        say::WORN_TRAY,
        include_str!("../../tests/cases/worn_tray.json"),
    ),
    example(
        say::DAILY_TEAPOT,
        include_str!("../../tests/cases/daily_teapot.json"),
    ),
    example(
        say::LEAKING_TEAPOT,
        include_str!("../../tests/cases/leaking_teapot.json"),
    ),
    example(
        say::RUSTED_SNUFFERS_TRAY,
        include_str!("../../tests/cases/rusted_snuffers_tray.json"),
    ),
    example(
        say::REPLATED_COFFEE_POT,
        include_str!("../../tests/cases/replated_coffee_pot.json"),
    ),
    example(
        say::COPPER_TUREEN,
        include_str!("../../tests/cases/copper_reproduction_tureen.json"),
    ),
    example(
        say::HALLMARKED_CANDLESTICKS,
        include_str!("../../tests/cases/hallmarked_candlesticks.json"),
    ),
    example(
        say::DENTED_TRAY,
        include_str!("../../tests/cases/dented_tray.json"),
    ),
    example(
        say::TEAPOT_WITHOUT_KNOB,
        include_str!("../../tests/cases/teapot_without_knob.json"),
    ),
    example(
        say::LOOSE_CANDLESTICK,
        include_str!("../../tests/cases/loose_candlestick.json"),
    ),
    example(
        say::BROKEN_LACQUER_POT,
        include_str!("../../tests/cases/broken_lacquer_pot.json"),
    ),
    example(
        say::UNTINNED_SAUCEBOAT,
        include_str!("../../tests/cases/untinned_sauceboat.json"),
    ),
    example(
        say::SIX_FAULTS_TEAPOT,
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
