//! The condition and treatment record: what conservators write down before, during and after work.
//!
//! It follows EN 16095 for the condition (identification, condition by part, images, date, examiner) and the
//! professional codes for the rest: a proposal in steps, consent to each of them, the treatment as it was
//! done with what was done otherwise, photographs from before and after, and the next look. It holds no
//! recipe: how a work was done stands in the words of whoever did it.

use super::Subject;
use super::as_typed::as_typed;
use super::block::{Block, Table};
use super::part_words::named;
use super::sentence::and;
use super::sheet::listed;
use super::sheet::{Paper, head, missing, part_labels, part_name};
use super::sheet_buyer::{is_of_the_piece, quoted_mark};
use super::sheet_cautions::cautions_of;
use super::sheet_client::steps;
use super::sheet_file::part_rows;
use super::sheet_photos::{of_part, of_piece};
use super::sheet_places::{lines_of, pictures, placed};
use super::sheet_proposal::proposed;
use super::wording::sheet::part_of;
use super::wording::sheet_conservation as words;
use leavewell_model::record::Part;
use leavewell_model::terms::{
    Corrosion, FillState, Joint, PartName, Split, Treatment, small, the_pieces,
};

/// Builds the page.
#[must_use]
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let paper = Paper::new(subject);
    let mut blocks = head(&paper, &paper.name(), words::TITLE);
    blocks.push(identification(&paper));
    blocks.push(Block::section(
        "conservation.condition",
        words::CONDITION,
        condition(&paper),
    ));
    let proposal = proposed(&paper, "conservation.proposal");
    match proposal {
        Some(proposal) => blocks.push(proposal),
        None if paper.too_little() => {}
        None => blocks.extend(steps(&paper, "conservation.steps")),
    }
    blocks.extend(consent(&paper));
    blocks.push(Block::section(
        "conservation.treatment",
        words::TREATMENT,
        treatment(&paper),
    ));
    blocks.push(Block::section(
        "conservation.next",
        words::NEXT_LOOK,
        next_look(&paper),
    ));
    blocks.extend(missing(&paper, "conservation.missing"));
    let child = paper.case.aim.household_child_or_pregnant;
    let steps = if paper.case.proposal.steps.is_empty() && !paper.too_little() {
        advised(&paper).collect()
    } else {
        paper.named_proposed()
    };
    let named = paper.named_done().or(steps);
    blocks.push(cautions_of(&paper.report, is_of_the_piece, named, child));
    blocks.push(written_by(&paper));
    blocks
}

fn identification(paper: &Paper) -> Block {
    let piece = &paper.case.piece;
    let or_not = |text: String, not: &str| {
        if text.is_empty() {
            not.to_owned()
        } else {
            text
        }
    };
    let marks: Vec<String> = paper.case.marks.iter().map(quoted_mark).collect();
    let mut size = paper.size();
    let unmeasured = [
        (piece.height_mm.is_none(), words::HEIGHT),
        (piece.length_mm.is_none(), words::LENGTH),
        (piece.width_mm.is_none(), words::WIDTH),
        (piece.weight_g.is_none(), words::WEIGHT),
    ];
    let unmeasured: Vec<String> = unmeasured
        .iter()
        .filter(|(is_absent, _)| *is_absent)
        .map(|(_, name)| (*name).to_owned())
        .collect();
    if !unmeasured.is_empty() {
        size = words::not_measured(&size, &and(&unmeasured));
    }
    let what = if paper.too_little() {
        words::NOT_RECORDED.to_owned()
    } else {
        paper.report.identity.sentence.clone()
    };
    let row = |name: &str, text: String| (name.to_owned(), text);
    let typed = |path: &str| or_not(paper.typed(path), words::NOT_RECORDED);
    let rows = vec![
        row(words::FORM, paper.public_name()),
        row(words::NUMBER, typed("looked.number")),
        row(words::WHAT_IT_IS, what),
        row(words::SIZE, size),
        row(words::MARKS, or_not(and(&marks), words::NO_MARKS)),
        row(words::DESCRIPTION, typed("looked.described")),
        row(words::KEPT_AT, typed("looked.where")),
        row(words::LOOKED_ON, typed("looked.on")),
        row(words::REASON, typed("looked.why")),
        row(words::HOW, and(&how_looked_at(paper))),
    ];
    let rows = rows.into_iter().filter(|(_, text)| !text.is_empty());
    let mut blocks = of_piece(paper, "conservation.whole", 0..usize::MAX);
    blocks.push(Block::Facts {
        rows: rows.collect(),
    });
    Block::section("conservation.identification", words::IDENTIFICATION, blocks)
}

fn how_looked_at(paper: &Paper) -> Vec<String> {
    ["looked.light", "looked.aids"]
        .map(|path| paper.typed(path))
        .into_iter()
        .filter(|text| !text.is_empty())
        .collect()
}

/// Each part with every fault, the numbered ones on the drawing and on photographs first.
fn condition(paper: &Paper) -> Vec<Block> {
    let faults = placed(paper.case);
    let mut blocks = pictures(paper, &faults);
    if faults.iter().any(|fault| fault.spot.count > 1) {
        blocks.push(Block::para(words::SEVERAL));
    }
    let mut pictured = Vec::new();
    for (place, (no, part)) in paper.raw_parts().into_iter().enumerate() {
        let known = part
            .get("part")
            .and_then(|id| PartName::parse(id.as_str()?));
        let on: Vec<u16> = no.into_iter().collect();
        let mut of_it = Vec::new();
        let rows = part_rows(part);
        if !rows.is_empty() {
            of_it.push(Block::Facts { rows });
        }
        let shown = lines_of(&faults, known);
        of_it.extend(listed(words::PLACED, &shown));
        // Those of one piece of several stand with the first entry of the part, under that piece.
        if let Some(name) = known.filter(|name| !pictured.contains(name)) {
            pictured.push(name);
            of_it.extend(of_part(paper, "conservation.photos", name));
        }
        if !of_it.is_empty() {
            blocks.push(Block::section(
                &format!("conservation.part.{place}"),
                &part_of(&part_name(part), &the_pieces(&on)),
                of_it,
            ));
        }
    }
    if blocks.is_empty() {
        blocks.push(Block::para(words::NO_PART));
    }
    let unseen: Vec<String> = paper.parts_not_looked_at().into_iter().map(small).collect();
    if !unseen.is_empty() {
        blocks.push(Block::para(words::not_looked_at(&and(&unseen))));
    }
    blocks
}

/// The steps advised; none where it is to be left alone.
fn advised(paper: &Paper) -> impl Iterator<Item = Treatment> {
    let steps = paper.report.counsel.steps.iter().copied();
    steps.filter(|step| *step != Treatment::Leave)
}

/// One line for each step, to agree to or not; `None` where no step is proposed or advised.
fn consent(paper: &Paper) -> Option<Block> {
    let proposal = &paper.case.proposal.steps;
    let name = |treatment: Treatment, parts: &[PartName], note: &str| {
        let parts: Vec<String> = parts.iter().map(|part| named(*part)).collect();
        words::step(treatment.name(), &and(&parts), note)
    };
    let steps: Vec<(String, bool)> = if !proposal.is_empty() {
        proposal
            .iter()
            .map(|step| {
                (
                    name(step.treatment, &step.parts, &as_typed(&step.note)),
                    step.agreed,
                )
            })
            .collect()
    } else if paper.too_little() {
        Vec::new()
    } else {
        advised(paper)
            .map(|step| (step.name().to_owned(), false))
            .collect()
    };
    if steps.is_empty() {
        return None;
    }
    let rows = steps.into_iter().enumerate().map(|(at, (step, agreed))| {
        let on_record = if agreed { words::ON_RECORD } else { words::BOX };
        vec![
            words::numbered(at + 1, &step),
            on_record.to_owned(),
            words::BOX.to_owned(),
            String::new(),
        ]
    });
    let table = Table {
        caption: words::EACH_STEP.to_owned(),
        columns: words::CONSENT_COLUMNS.map(str::to_owned).to_vec(),
        rows: rows.collect(),
    };
    let line = |label: &str| Block::Lines {
        label: label.to_owned(),
        count: 1,
    };
    Some(Block::section(
        "conservation.consent",
        words::CONSENT,
        vec![
            Block::para(words::CONSENT_MEANS),
            Block::Table(table),
            line(words::OWNER),
            line(words::WHO_TREATS),
        ],
    ))
}

/// Each work as it was done, with photographs from before and after side by side.
fn treatment(paper: &Paper) -> Vec<Block> {
    if paper.done.is_empty() {
        return vec![Block::para(words::NOTHING_DONE)];
    }
    paper.work_sections("conservation.done")
}

/// When to look again, and at what.
fn next_look(paper: &Paper) -> Vec<Block> {
    let on = paper.case.next_look.map_or_else(
        || words::NO_NEXT_LOOK.to_owned(),
        |day| words::next_on(&format!("{}-{:02}-{:02}", day.year, day.month, day.day)),
    );
    let mut watch = Vec::new();
    let own = paper.typed("looked.watch");
    if !own.is_empty() {
        watch.push(own);
    }
    let parts_where = |holds: &dyn Fn(&Part) -> bool| part_labels(paper.case, holds);
    let mut add = |parts: Vec<String>, what: fn(&str) -> String| {
        if !parts.is_empty() {
            watch.push(what(&and(&parts)));
        }
    };
    add(
        parts_where(&|p| p.corrosion.is_some_and(|c| c != Corrosion::None)),
        words::corrosion,
    );
    add(
        parts_where(&|p| {
            p.has_any_joint(&[Joint::Open, Joint::Leaking])
                || matches!(p.split, Some(Split::Crease | Split::Through))
        }),
        words::opens,
    );
    add(
        parts_where(&|p| p.fill_state == Some(FillState::Failing)),
        words::filling,
    );
    add(
        paper.parts_not_looked_at().into_iter().map(small).collect(),
        words::unseen,
    );
    if !paper.too_little() {
        let looks = paper.report.identity.next_looks.iter();
        watch.extend(looks.take(3).map(|look| words::to_be_surer(&look.title)));
    }
    let mut blocks = vec![Block::para(on)];
    blocks.extend(listed(words::LOOK_AT, &watch));
    blocks
}

/// Who wrote it, for whom and when, with room to sign.
fn written_by(paper: &Paper) -> Block {
    let typed = |path: &str| match paper.typed(path) {
        text if text.is_empty() => words::NOT_RECORDED.to_owned(),
        text => text,
    };
    let mut rows = vec![
        (words::WRITTEN_BY.to_owned(), typed("looked.by")),
        (words::WRITTEN_FOR.to_owned(), typed("looked.for")),
    ];
    rows.extend(paper.made_from());
    Block::section(
        "conservation.written",
        words::WRITTEN,
        vec![
            Block::Facts { rows },
            Block::Lines {
                label: words::SIGNED.to_owned(),
                count: 1,
            },
        ],
    )
}
