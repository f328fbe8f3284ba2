//! Worked examples. The pieces are invented; their records are the files the tests weigh.

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
pub const EXAMPLES: [Example; 8] = [
    Example {
        title: "The cake basket",
        story: "An early basket. A trace of copper shows at the foot and the edges, and \
                somebody has offered to make it look new.",
        text: include_str!("../../tests/cases/cake_basket.json"),
    },
    Example {
        title: "The worn tray",
        story: "A tray rubbed for generations until a fifth of it is copper. Would a bright look bring more?",
        text: include_str!("../../tests/cases/worn_tray.json"),
    },
    Example {
        title: "The teapot for every day",
        story: "A sturdy pot whose mark names the metal below the silver. The family wants to pour tea from it again.",
        text: include_str!("../../tests/cases/daily_teapot.json"),
    },
    Example {
        title: "The leaking teapot",
        story: "A pot of soft grey metal that leaks. Is it worth closing the leak?",
        text: include_str!("../../tests/cases/leaking_teapot.json"),
    },
    Example {
        title: "The rusted snuffers tray",
        story: "Silver over iron, with rust coming through. What stops it, and what makes it worse?",
        text: include_str!("../../tests/cases/rusted_snuffers_tray.json"),
    },
    Example {
        title: "The coffee pot with two skins",
        story: "An old pot that somebody covered with new silver long ago, with a grey repair at the spout.",
        text: include_str!("../../tests/cases/replated_coffee_pot.json"),
    },
    Example {
        title: "The copper tureen",
        story: "A large, later piece made in the old style; nearly half of it is bare copper, and it is to be sold.",
        text: include_str!("../../tests/cases/copper_reproduction_tureen.json"),
    },
    Example {
        title: "The candlesticks that do not add up",
        story: "Marks of solid silver on the base and a copper line down the stem: two \
                signs that do not fit together.",
        text: include_str!("../../tests/cases/hallmarked_candlesticks.json"),
    },
];

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
