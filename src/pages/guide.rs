//! The guide: what the program does, one piece taken from start to finish, and what it cannot know.
//!
//! Invariant: every word and sum about the piece is computed from its record, so the guide never says anything
//! that the program would not.

use super::block::{Block, Table};
use super::cross_section::cross_section;
use super::money_text::MoneyFormat;
use super::sheet_cautions::with_cautions;
use super::wording::guide as words;
use super::{Subject, why};
use leavewell_model::counsel::SampledPart;
use leavewell_model::ledger::{FigureId, Ledger};
use leavewell_model::record::Case;
use leavewell_model::report::{Band, ChangeReport, CourseReport, Report};
use leavewell_model::silver::bleed_range;
use leavewell_model::terms::{PartName, Seen, TreatmentSet, capital, percent};

/// Choices compared in the guide.
const CHOICES: usize = 4;

/// The guide, with the piece of `subject` as its example.
#[must_use]
pub fn guide(subject: &Subject) -> Vec<Block> {
    let (case, report) = (subject.case(), subject.report());
    let named = (subject.changes().iter())
        .filter(|change| change.flips_at.is_some())
        .map(ChangeReport::named)
        .chain(
            compared(report).map(|course| course.steps.iter().copied().collect::<TreatmentSet>()),
        )
        .fold(
            report
                .counsel
                .named()
                .or(subject.solved().named_in_reasons()),
            TreatmentSet::or,
        );
    let worked = with_cautions(
        case,
        named,
        vec![
            Block::para(words::invented(&case.piece.name)),
            Block::section(
                "guide.recorded",
                words::RECORDED,
                recorded(case, subject.solved().ledger()),
            ),
            Block::section("guide.identity", words::IS, identity(subject)),
            Block::section("guide.silver", words::SILVER, silver(subject)),
            Block::section("guide.worth", words::WORTH, vec![worth(case, report)]),
            Block::section("guide.choices", words::CHOICES, vec![choices(case, report)]),
            Block::section("guide.advice", words::ADVICE, advice(subject)),
        ],
    );
    vec![
        Block::section(
            "guide.what",
            words::WHAT,
            vec![list(&words::DOES), Block::para(words::STAYS_HERE)],
        ),
        Block::section("guide.worked", words::WORKED, worked),
        Block::section("guide.cannot", words::CANNOT, vec![list(&words::LIMITS)]),
        Block::section(
            "guide.begin",
            words::BEGIN,
            vec![Block::Facts {
                rows: words::ROADS
                    .map(|(who, how)| (who.to_owned(), how.to_owned()))
                    .to_vec(),
            }],
        ),
    ]
}

fn list(items: &[&str]) -> Block {
    Block::List {
        items: items.iter().map(|item| (*item).to_owned()).collect(),
    }
}

/// The looks that were answered, and the bare metal by part.
fn recorded(case: &Case, ledger: &Ledger) -> Vec<Block> {
    let answered = |before: &str, seen: Seen| {
        let titles: Vec<&str> = case
            .findings
            .iter()
            .filter(|answer| answer.seen == seen)
            .map(|answer| answer.id.fact().title)
            .collect();
        (!titles.is_empty()).then(|| [before, &titles.join("; "), "."].concat())
    };
    let bare = case.parts.iter().filter_map(|part| {
        let share = bleed_range(Some(part.bleed?), ledger).likely;
        (share > 0.0).then(|| words::bare(&capital(part.name.label()), &percent(share)))
    });
    let items = answered(words::SEEN, Seen::Yes)
        .into_iter()
        .chain(answered(words::NOT_THERE, Seen::No))
        .chain(bare)
        .collect();
    vec![Block::List { items }]
}

fn identity(subject: &Subject) -> Vec<Block> {
    let mut blocks = vec![
        Block::para(subject.report().identity.sentence.clone()),
        Block::para(words::EACH_ANSWER),
    ];
    blocks.extend(why::picture(subject).map(Block::Picture));
    blocks
}

fn silver(subject: &Subject) -> Vec<Block> {
    let worn = SampledPart::new(subject.solved(), PartName::Body);
    // What one gentle cleaning takes of sound silver.
    let taken = worn.ledger.value(FigureId::SILVER_LOSS_CHALK_UM);
    let mut blocks: Vec<Block> = subject
        .report()
        .silver
        .parts
        .iter()
        .filter(|part| part.part == PartName::Body)
        .map(|part| Block::para(part.words.clone()))
        .collect();
    blocks.extend(cross_section(&worn, PartName::Body, taken).map(Block::Picture));
    blocks
}

fn band(format: MoneyFormat, band: &Band) -> String {
    format.band([band.p10, band.p50, band.p90])
}

fn worth(case: &Case, report: &Report) -> Block {
    let format = MoneyFormat::of(case.market.currency);
    let value = &report.value;
    Block::Facts {
        rows: [
            (words::UNDAMAGED, &value.undamaged),
            (words::AS_IT_IS, &value.as_it_is),
            (words::KEPT, &value.net_as_it_is),
        ]
        .map(|(name, range)| (name.to_owned(), band(format, range)))
        .to_vec(),
    }
}

/// The choices compared: the advised one first, then those that no rule bars.
fn compared(report: &Report) -> impl Iterator<Item = &CourseReport> {
    let open = report
        .courses
        .iter()
        .filter(|course| course.barred.is_empty());
    open.take(CHOICES)
}

fn choices(case: &Case, report: &Report) -> Block {
    let format = MoneyFormat::of(case.market.currency);
    let row = |course: &CourseReport| {
        let gain = &course.net_gain;
        vec![
            course.name.clone(),
            if course.cost.p90 > 0.0 {
                band(format, &course.cost)
            } else {
                words::NOTHING.to_owned()
            },
            format.band([gain.p10, gain.p50, gain.p90]),
        ]
    };
    Block::Table(Table {
        caption: words::CHOICES_CAPTION.to_owned(),
        columns: words::CHOICES_COLUMNS.map(str::to_owned).to_vec(),
        rows: compared(report).map(row).collect(),
    })
}

fn advice(subject: &Subject) -> Vec<Block> {
    let counsel = &subject.report().counsel;
    let mut blocks = vec![
        Block::para(counsel.sentence.clone()),
        Block::para(counsel.firmness_words.clone()),
        Block::List {
            items: counsel
                .reasons
                .iter()
                .map(|reason| reason.text.clone())
                .collect(),
        },
    ];
    let changes: Vec<String> = subject
        .changes()
        .iter()
        .filter(|change| change.flips_at.is_some())
        .map(|change| change.text.clone())
        .collect();
    let changes = if changes.is_empty() {
        Block::para(words::NOTHING_CHANGES_IT)
    } else {
        Block::List { items: changes }
    };
    blocks.push(Block::section(
        "guide.changes",
        words::CHANGES,
        vec![changes],
    ));
    blocks
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheet_cautions::words_of;
    use leavewell_model::terms::Treatment;

    const TRAY: &str = include_str!("../../tests/cases/dented_tray.json");

    #[test]
    fn the_guide_says_of_its_piece_what_the_advice_says() {
        let subject = Subject::parse(TRAY).unwrap();
        let report = subject.report();
        let blocks = guide(&subject);
        let text = words_of(&blocks);
        for said in [
            &report.identity.sentence,
            &report.counsel.sentence,
            &report.counsel.firmness_words,
            &report.counsel.reasons[0].text,
            &report.courses[1].name,
        ] {
            assert!(text.contains(said.as_str()), "{said}");
        }
        assert!(text.contains("If the work cost more than "));
        let worn = include_str!("../../tests/cases/worn_tray.json");
        let worn = words_of(&guide(&Subject::parse(worn).unwrap()));
        assert!(worn.contains("20 % of the silver is gone"));
        assert!(worn.contains(words::NOTHING_CHANGES_IT));
        // A picture of the odds and one of the silver.
        assert_eq!(format!("{blocks:?}").matches("Picture(").count(), 2);
    }

    #[test]
    fn treatments_named_in_the_guide_show_their_cautions() {
        let subject = Subject::parse(TRAY).unwrap();
        let blocks = guide(&subject);
        let text = words_of(&blocks);
        let named =
            Treatment::ALL.map(|t| (t, text.to_lowercase().contains(&t.name().to_lowercase())));
        assert!(named.iter().any(|(_, is_named)| *is_named));
        for (treatment, _) in named.into_iter().filter(|(_, is_named)| *is_named) {
            let id = format!("caution.{}", treatment.id());
            if let Some(caution) = leavewell_model::ledger::caution(&id) {
                assert!(text.contains(caution.text), "{id}");
            }
        }
    }

    #[test]
    fn a_record_with_little_in_it_still_makes_a_guide() {
        let subject = Subject::parse("{\"format\":\"leavewell-case\",\"version\":1}").unwrap();
        assert_eq!(guide(&subject).len(), 4);
    }
}
