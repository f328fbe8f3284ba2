//! Circumstances that only the rules ask about: the answers under `catalogue.`.

/// Answers to questions that no other screen asks. `None` means not known.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Circumstances {
    /// An old repair in pale yellow or white hard solder, which may hold cadmium.
    pub hard_repair: Option<bool>,
    /// An old pad, ring or cord that keeps heat off a handle, which may be asbestos.
    pub insulator: Option<bool>,
    /// Gilding that was probably put on with mercury.
    pub fire_gilding: Option<bool>,
    /// Wood, ivory, horn or shell on the piece.
    pub organic: Option<bool>,
    /// Black inlay, or metal darkened on purpose.
    pub dark_work: Option<bool>,
    /// An ammonia cleaner is used, or an old bottle or tin of silvering is about.
    pub ammonia: Option<bool>,
    /// A filling leaks, swells, corrodes or has come loose.
    pub failing_fill: Option<bool>,
    /// A lost part would be made new in ivory or a protected wood.
    pub protected_part: Option<bool>,
    /// A part is loaded, filled or closed, as was said when the piece was measured.
    pub closed: Option<bool>,
}

/// Path in the case and the question, in the order of the first fields of [`Circumstances`].
pub const QUESTIONS: [(&str, &str); 8] = [
    (
        "catalogue.hard_repair",
        "Is there an old repair in pale yellow or white hard solder?",
    ),
    (
        "catalogue.insulator",
        "Is there an old pad, ring or cord that keeps heat off a handle?",
    ),
    (
        "catalogue.fire_gilding",
        "Is any of it gilt, and may the gilding be older than about 1840?",
    ),
    (
        "catalogue.organic",
        "Is there wood, ivory, horn or shell on it?",
    ),
    (
        "catalogue.dark_work",
        "Is there black inlay, or metal darkened on purpose?",
    ),
    (
        "catalogue.ammonia",
        "Is an ammonia cleaner used, or an old bottle or tin of silvering about?",
    ),
    (
        "catalogue.failing_fill",
        "Does a filling leak, swell, corrode or sit loose?",
    ),
    (
        "catalogue.protected_part",
        "Would a lost part be made new in ivory or a protected wood?",
    ),
];

/// What was said of the piece when it was measured. It rules a reading out, and it is a hazard as well.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct MeasuredAs {
    pub(super) loaded: Option<bool>,
    pub(super) hollow_sealed: Option<bool>,
    pub(super) organic: Option<bool>,
    pub(super) filled_behind: Option<bool>,
}

impl Circumstances {
    /// From the answer to each of [`QUESTIONS`], and from what was said when the piece was measured.
    pub(super) fn from_answers(
        mut answer: impl FnMut(&'static str) -> Option<bool>,
        measured: MeasuredAs,
    ) -> Self {
        let [
            hard_repair,
            insulator,
            fire_gilding,
            organic,
            dark_work,
            ammonia,
            failing_fill,
            protected_part,
        ] = QUESTIONS.map(|(path, _)| answer(path));
        Self {
            hard_repair,
            insulator,
            fire_gilding,
            organic: organic.max(measured.organic),
            dark_work,
            ammonia,
            failing_fill,
            protected_part,
            closed: (measured.loaded)
                .max(measured.hollow_sealed)
                .max(measured.filled_behind),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Draft;

    #[test]
    fn each_question_fills_its_own_field() {
        let mut draft = Draft::default();
        assert_eq!(draft.read().0.circumstances, Circumstances::default());
        for (path, _) in QUESTIONS {
            draft.set(path, "no");
        }
        draft.set("catalogue.ammonia", "yes");
        draft.set("catalogue.organic", "unknown");
        let (case, problems) = draft.read();
        let c = case.circumstances;
        assert_eq!(c.ammonia, Some(true));
        assert_eq!(c.organic, None);
        assert_eq!(c.hard_repair, Some(false));
        assert_eq!(c.protected_part, Some(false));
        assert!(problems.is_empty(), "{problems:?}");
    }

    #[test]
    fn what_was_said_when_it_was_measured_counts() {
        let of = |ticked: &[&str]| {
            let mut draft = Draft::default();
            draft.set("catalogue.organic", "no");
            for path in ticked {
                draft.set_flag(path, Some(true));
            }
            draft.read().0.circumstances
        };
        assert_eq!((of(&[]).closed, of(&[]).organic), (None, Some(false)));
        for path in [
            "measures.density.loaded",
            "measures.density.hollow_sealed",
            "measures.iacs.loaded",
        ] {
            assert_eq!(of(&[path]).closed, Some(true), "{path}");
        }
        // Either answer is enough.
        assert_eq!(of(&["measures.density.organic"]).organic, Some(true));
    }

    #[test]
    fn an_unknown_word_is_reported_and_counts_as_not_known() {
        let mut draft = Draft::default();
        draft.set("catalogue.hard_repair", "perhaps");
        let (case, problems) = draft.read();
        assert_eq!(case.circumstances.hard_repair, None);
        assert_eq!(problems.len(), 1, "{problems:?}");
        assert_eq!(problems[0].field, "catalogue.hard_repair");
    }
}
