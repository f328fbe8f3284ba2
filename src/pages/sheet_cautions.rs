//! Cautions on pages and sheets. Invariant: no page names a treatment without its caution and the deferral
//! line.

use super::block::{Block, HeatOnPiece, Tone};
use super::wording::sheet_cautions as words;
use leavewell_model::counsel::caution_list::{for_children, of_treatment};
use leavewell_model::ledger::{Level, caution};
use leavewell_model::record::Case;
use leavewell_model::report::{CautionReport, Report};
use leavewell_model::terms::{ShortSort, Treatment, TreatmentSet};

/// Adds the cautions for the treatments that the page names, and the deferral line.
pub(super) fn with_cautions(
    case: &Case,
    named: TreatmentSet,
    mut blocks: Vec<Block>,
) -> Vec<Block> {
    blocks.push(cautions_for(named, case.aim.household_child_or_pregnant));
    blocks
}

/// The section of cautions for these treatments.
pub(super) fn cautions_for(named: TreatmentSet, child: bool) -> Block {
    section(Vec::new(), named, child)
}

/// The cautions of a sheet: the wanted ones of the report, then those for other treatments that the sheet
/// names, most serious first.
pub(super) fn cautions_of(
    report: &Report,
    wanted: impl Fn(&CautionReport) -> bool,
    named: TreatmentSet,
    child: bool,
) -> Block {
    let wanted_cautions = report.cautions.iter().filter(|c| wanted(c)).cloned();
    section(wanted_cautions.collect(), named, child)
}

fn section(mut list: Vec<CautionReport>, named: TreatmentSet, child: bool) -> Block {
    let named: Vec<Treatment> = named.iter().collect();
    let mut add = |caution: CautionReport| {
        if !list.iter().any(|known| known.id == caution.id) {
            list.push(caution);
        }
    };
    named
        .iter()
        .filter_map(|t| of_treatment(*t))
        .for_each(&mut add);
    for_children(&named, child).into_iter().for_each(&mut add);
    list.order_by_key(|c| c.level);
    let mut blocks: Vec<Block> = list
        .into_iter()
        .map(|c| Block::said(tone(c.level), format!("{}: {}", c.about, c.text)))
        .collect();
    blocks.push(deferral());
    Block::section("sheet.cautions", words::CAUTIONS, blocks)
}

/// The line that defers to codes and to people, word for word.
pub(super) fn deferral() -> Block {
    Block::para(caution("caution.deferral").map_or("", |c| c.text))
}

fn tone(level: Level) -> Tone {
    match level {
        Level::Stop => Tone::Stop,
        Level::Care => Tone::Care,
        Level::Note => Tone::Note,
    }
}

/// All text of these blocks, one line each.
pub(super) fn words_of(blocks: &[Block]) -> String {
    let mut out = String::new();
    for block in blocks {
        add_words(block, &mut |text| {
            out.push_str(text);
            out.push('\n');
        });
    }
    out
}

fn add_words(block: &Block, visit: &mut dyn FnMut(&str)) {
    match block {
        Block::Section { title, blocks, .. } => {
            visit(title);
            for inner in blocks {
                add_words(inner, visit);
            }
        }
        Block::Fold {
            summary, blocks, ..
        } => {
            visit(summary);
            for inner in blocks {
                add_words(inner, visit);
            }
        }
        Block::Row { blocks } => {
            for inner in blocks {
                add_words(inner, visit);
            }
        }
        Block::Para { text, .. } => visit(text),
        Block::List { items } => {
            for item in items {
                visit(item);
            }
        }
        Block::Facts { rows } => {
            for (name, words) in rows {
                visit(name);
                visit(words);
            }
        }
        Block::Table(table) | Block::HeatOnPiece(HeatOnPiece { table, .. }) => {
            visit(&table.caption);
            for cell in table.columns.iter().chain(table.rows.iter().flatten()) {
                visit(cell);
            }
        }
        Block::Picture(picture) => {
            visit(&picture.title);
            visit(&picture.description);
            for cell in picture.table.rows.iter().flatten() {
                visit(cell);
            }
        }
        Block::Lines { label, .. } => visit(label),
        Block::Photos(photos) => visit(&photos.caption),
        Block::PlacesOnPiece(drawing) => visit(&drawing.title),
        Block::Ticks(_) | Block::TakePhotos(_) | Block::PlaceFaults { .. } => {}
        Block::Field(field) => {
            visit(&field.label);
            visit(&field.hint);
            visit(&field.text);
        }
        Block::Choice(choice) => {
            visit(&choice.label);
            for (id, label) in &choice.options {
                if *id == choice.chosen {
                    visit(label);
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use leavewell_model::terms::Treatment;

    #[test]
    fn a_named_treatment_adds_its_caution_and_the_deferral_line() {
        let hard = TreatmentSet::of(&[Treatment::HardSolder]);
        // However the page words it.
        let reworded = vec![Block::para("A joint made at red heat.")];
        let blocks = with_cautions(&Case::default(), hard, reworded);
        let words = words_of(&blocks);
        for id in ["caution.T11", "caution.child", "caution.deferral"] {
            assert!(words.contains(caution(id).unwrap().text), "{id}");
        }
        let quiet = words_of(&with_cautions(
            &Case::default(),
            TreatmentSet::default(),
            vec![Block::para("Nothing.")],
        ));
        assert!(!quiet.contains(caution("caution.child").unwrap().text));
        assert!(quiet.contains(caution("caution.deferral").unwrap().text));
    }
}
