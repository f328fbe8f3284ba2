//! Instrument readings: density, conductivity and X-ray fluorescence.

use super::Subject;
use super::block::{Block, Choice, EntryField, Tone};
use super::wording::measures as words;
use leavewell_model::identity::identify;
use leavewell_model::ledger::ReadingOf;
use leavewell_model::record::ledger_of;
use leavewell_model::record::{Draft, Problem};
use leavewell_model::report::MeasureReport;

/// Builds the page: one section per instrument, with the meaning of its reading.
#[must_use]
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let case = subject.case();
    let identity = identify(case, &ledger_of(case));
    let screen = Screen {
        draft: subject.draft(),
        problems: subject.problems(),
        readings: &identity.measures,
    };
    vec![
        Block::para(words::NONE_IS_NEEDED),
        Block::section("measures.density", words::DENSITY, screen.density()),
        Block::section(
            "measures.conductivity",
            words::CONDUCTIVITY,
            screen.conductivity(),
        ),
        Block::section("measures.xray", words::XRAY, screen.xray()),
    ]
}

struct Screen<'a> {
    draft: &'a Draft,
    problems: &'a [Problem],
    readings: &'a [MeasureReport],
}

impl Screen<'_> {
    fn density(&self) -> Vec<Block> {
        let mut blocks = vec![
            Block::para(words::HOW_TO_WEIGH),
            Block::said(Tone::Care, words::KEEP_OUT_OF_WATER),
            Block::Row {
                blocks: vec![
                    self.number("density.in_air_g", words::IN_AIR, "g", ""),
                    self.number("density.in_water_g", words::IN_WATER, "g", ""),
                    self.number("density.water_c", words::WATER, "°C", words::WATER_HINT),
                    self.number("density.readable_g", words::STEP, "g", words::STEP_HINT),
                ],
            },
            Block::Row {
                blocks: vec![
                    self.yes("density.loaded", words::LOADED),
                    self.yes("density.hollow_sealed", words::HOLLOW),
                    self.yes("density.organic", words::ORGANIC),
                ],
            },
        ];
        blocks.extend(self.said(ReadingOf::Density));
        blocks
    }

    fn conductivity(&self) -> Vec<Block> {
        let mut blocks = vec![
            Block::para(words::HOW_TO_READ),
            Block::Row {
                blocks: vec![self.number("iacs.percent", words::READING, "% IACS", "")],
            },
            Block::Row {
                blocks: vec![
                    self.yes("iacs.curved", words::CURVED),
                    self.yes("iacs.thin", words::THIN),
                    self.yes("iacs.loaded", words::FILLED),
                ],
            },
        ];
        blocks.extend(self.said(ReadingOf::Conductivity));
        blocks
    }

    fn xray(&self) -> Vec<Block> {
        let share = |field: &str, label: &str| self.number(field, label, "%", "");
        let mut blocks = vec![
            Block::para(words::SHARES),
            self.choice("xrf.spot", words::SPOT, &words::SPOTS),
            Block::Row {
                blocks: vec![
                    share("xrf.silver_pct", words::SILVER),
                    share("xrf.copper_pct", words::COPPER),
                    share("xrf.nickel_pct", words::NICKEL),
                    share("xrf.zinc_pct", words::ZINC),
                    share("xrf.tin_pct", words::TIN),
                    share("xrf.antimony_pct", words::ANTIMONY),
                    share("xrf.iron_pct", words::IRON),
                ],
            },
        ];
        blocks.extend(self.said(ReadingOf::Xray));
        blocks
    }

    /// What a reading means and whether it counts; empty without a reading.
    fn said(&self, of: ReadingOf) -> Vec<Block> {
        let Some(reading) = self.readings.iter().find(|reading| reading.id == of) else {
            return Vec::new();
        };
        let mut blocks = vec![Block::said(Tone::Answer, &reading.text)];
        if !reading.counts {
            blocks.push(Block::said(Tone::Quiet, words::MOVES_NOTHING));
        }
        blocks
    }

    fn number(&self, field: &str, label: &str, unit: &str, hint: &str) -> Block {
        let path = format!("measures.{field}");
        Block::Field(EntryField {
            label: label.to_owned(),
            unit: unit.to_owned(),
            hint: hint.to_owned(),
            text: self.draft.text(&path),
            stand_in: String::new(),
            problem: self.problem(&path),
            number: true,
            path,
        })
    }

    /// What is wrong with the field at this path; empty if nothing is.
    fn problem(&self, path: &str) -> String {
        self.problems
            .iter()
            .filter(|problem| problem.field == path)
            .map(|problem| format!("{} {}", problem.message, problem.remedy))
            .collect::<Vec<_>>()
            .join(" ")
    }

    fn yes(&self, field: &str, label: &str) -> Block {
        self.choice(
            field,
            label,
            &[
                ("", words::NOT_SAID),
                ("no", words::NO),
                ("yes", words::YES),
            ],
        )
    }

    fn choice(&self, field: &str, label: &str, options: &[(&str, &str)]) -> Block {
        let path = format!("measures.{field}");
        let owned = |&(id, label): &(&str, &str)| (id.to_owned(), label.to_owned());
        Block::Choice(Choice {
            label: label.to_owned(),
            hint: self.problem(&path),
            options: options.iter().map(owned).collect(),
            chosen: self.draft.text(&path),
            path,
        })
    }
}
