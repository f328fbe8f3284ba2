//! Readings with a number, for those who have the instruments: density, conductivity, X-ray.

use super::block::{Block, Choice, Field, Tone};
use crate::case::{Draft, Problem};
use crate::facts::ledger_of;
use crate::identity::identify;
use crate::report::MeasureReport;

/// The page: one section for each instrument, with what the reading says.
#[must_use]
pub(super) fn page(draft: &Draft) -> Vec<Block> {
    let (case, problems) = draft.read();
    let identity = identify(&case, &ledger_of(&case));
    let screen = Screen {
        draft,
        problems: &problems,
        readings: &identity.measures,
    };
    vec![
        Block::para(
            "None of this is needed. Where a reading exists it is held against what each kind would give, with its \
             own uncertainty, and counts as one observation. Nothing here asks for a scratch, a file or a drop of \
             anything.",
        ),
        Block::section(
            "measures.density",
            "Density, by weighing in water",
            screen.density(),
        ),
        Block::section(
            "measures.conductivity",
            "Conductivity, by an eddy-current meter",
            screen.conductivity(),
        ),
        Block::section("measures.xray", "X-ray fluorescence", screen.xray()),
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
            Block::para(
                "Weigh the part dry, then hanging in plain water by a thread, touching nothing and without bubbles. \
                 Dry it at once and wholly.",
            ),
            Block::said(
                Tone::Care,
                "Only for a part of bare metal that is open all round. Never put a loaded foot, a hollow handle, \
                 wood, ivory or felt into water: it gets in and stays.",
            ),
            Block::Row {
                blocks: vec![
                    self.number("density.in_air_g", "Weight in air", "g", ""),
                    self.number("density.in_water_g", "Weight in water", "g", ""),
                    self.number("density.water_c", "Water", "°C", "20 if left empty."),
                    self.number(
                        "density.readable_g",
                        "Smallest step of the balance",
                        "g",
                        "0.1 if left empty.",
                    ),
                ],
            },
            Block::Row {
                blocks: vec![
                    self.yes("density.loaded", "Is it loaded or filled?"),
                    self.yes("density.hollow_sealed", "Is any of it hollow and closed?"),
                    self.yes(
                        "density.organic",
                        "Is there wood, ivory, felt or card on it?",
                    ),
                ],
            },
        ];
        blocks.extend(self.said("density"));
        blocks
    }

    fn conductivity(&self) -> Vec<Block> {
        let mut blocks = vec![
            Block::para(
                "In per cent of annealed copper (% IACS), on a flat spot larger than the probe, at room temperature.",
            ),
            Block::Row {
                blocks: vec![self.number("iacs.percent", "Reading", "% IACS", "")],
            },
            Block::Row {
                blocks: vec![
                    self.yes(
                        "iacs.curved",
                        "Is the spot curved, or smaller than the probe?",
                    ),
                    self.yes("iacs.thin", "Is the sheet very thin?"),
                    self.yes("iacs.loaded", "Is there a filling close behind?"),
                ],
            },
        ];
        blocks.extend(self.said("conductivity"));
        blocks
    }

    fn xray(&self) -> Vec<Block> {
        let share = |field: &str, label: &str| self.number(field, label, "%", "");
        let mut blocks = vec![
            Block::para(
                "Shares by weight as the analyser gives them. Such a reading sees little more than the silver: over \
                 sound silver it may look like sterling whatever lies below, so a spot where the silver is worn \
                 through tells far more.",
            ),
            self.choice(
                "xrf.spot",
                "Where was it taken?",
                &[
                    ("", "Not said"),
                    ("worn", "Where the silver is worn through"),
                    ("sound", "Where the silver is sound"),
                ],
            ),
            Block::Row {
                blocks: vec![
                    share("xrf.silver_pct", "Silver"),
                    share("xrf.copper_pct", "Copper"),
                    share("xrf.nickel_pct", "Nickel"),
                    share("xrf.zinc_pct", "Zinc"),
                    share("xrf.tin_pct", "Tin"),
                    share("xrf.antimony_pct", "Antimony"),
                    share("xrf.iron_pct", "Iron"),
                ],
            },
        ];
        blocks.extend(self.said("xray"));
        blocks
    }

    /// What a reading says and whether it counts; nothing while there is none.
    fn said(&self, id: &str) -> Vec<Block> {
        let Some(reading) = self.readings.iter().find(|reading| reading.id == id) else {
            return Vec::new();
        };
        let mut blocks = vec![Block::said(Tone::Answer, &reading.text)];
        if !reading.counts {
            blocks.push(Block::said(Tone::Quiet, "It moves nothing."));
        }
        blocks
    }

    fn number(&self, field: &str, label: &str, unit: &str, hint: &str) -> Block {
        let path = format!("measures.{field}");
        Block::Field(Field {
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

    /// What is wrong with a field, where it stands.
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
            &[("", "Not said"), ("no", "No"), ("yes", "Yes")],
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
