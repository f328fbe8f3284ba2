//! Where on the drawn piece soldering heat reaches: which part the joint is on, how large the piece is,
//! and how far each temperature gets.

use super::ask::{Question, choice, number};
use super::bench::Bench;
use super::block::{Block, HeatOnPiece, HeatZone, Table, Tone};
use super::heat::{ReachRow, first};
use super::heat_picture::BANDED;
use super::say::{mm, range};
use crate::bench::{Reach, Spread};
use crate::case::{Form, Joint, PartName};

/// Parts that are mostly soldered on, the likeliest first.
const SOLDERED_ON: [PartName; 3] = [PartName::Spout, PartName::Handle, PartName::Foot];

/// The fields, and the drawing while the other fields can be used.
pub(super) fn blocks(
    bench: &Bench<'_>,
    found: Option<(&Spread, &[ReachRow], Table)>,
) -> Vec<Block> {
    let form = bench.case.piece.form;
    let parts = form.unwrap_or(Form::Other).parts();
    let usual = usual_part(bench, parts);
    let options = parts.iter().map(|p| (p.id(), p.label())).collect();
    let (part_field, part) = choice(
        bench.draft,
        "bench.heat.on_part",
        "Which part is the joint on?",
        "The one that stands in has a faulty or mended joint on record, or mostly is soldered on.",
        &first(options, usual.id()),
    );
    let part = PartName::parse(part).unwrap_or(usual);
    let (size_field, size) = size(bench, form);
    let mut blocks = vec![Block::Row {
        blocks: vec![part_field, size_field],
    }];
    let Some((spread, rows, table)) = found else {
        return blocks;
    };
    let zones: Vec<HeatZone> = rows.iter().map(zone).collect();
    blocks.push(Block::HeatOnPiece(HeatOnPiece {
        id: "bench.heat.piece".to_owned(),
        title: title(part, rows),
        description: description(part, &zones),
        form: form.map_or("", Form::id).to_owned(),
        part: part.id().to_owned(),
        size_mm: size.mm,
        assumed: size.assumed,
        hot_mm: match *spread {
            Spread::Disk { patch_mm, .. } => patch_mm,
            Spread::Strip { .. } => 0.0,
        },
        zones,
        table,
    }));
    if size.assumed {
        let (long, length) = if form == Some(Form::Tray) {
            ("long", "length")
        } else {
            ("high", "height")
        };
        blocks.push(Block::said(
            Tone::Note,
            format!(
                "Drawn as if the piece were {} {long}, which is only assumed. Put in the {length} to draw it to scale.",
                mm(size.mm)
            ),
        ));
    }
    blocks.push(Block::said(
        Tone::Quiet,
        "Distances run along the metal; on the drawing they are laid flat. Where one is a range, the drawing shows the \
         farthest.",
    ));
    blocks
}

/// The first part whose joint is recorded as faulty or mended, else one that mostly is soldered on.
fn usual_part(bench: &Bench<'_>, parts: &[PartName]) -> PartName {
    let recorded = bench.case.parts.iter();
    recorded
        .filter(|p| p.joint.is_some_and(|j| j != Joint::Sound))
        .map(|p| p.name)
        .chain(SOLDERED_ON)
        .find(|p| parts.contains(p))
        .unwrap_or(PartName::Body)
}

/// How large the piece is drawn.
struct Size {
    mm: f64,
    assumed: bool,
}

/// The height in the record, or for a tray, which is seen from above, its length; else one that is
/// assumed.
fn size(bench: &Bench<'_>, form: Option<Form>) -> (Block, Size) {
    let tray = form == Some(Form::Tray);
    let bounds = (1.0, 3000.0);
    let (path, label, figure) = if tray {
        (
            "bench.heat.long_mm",
            "Length with its handles",
            "heat.drawn.length",
        )
    } else {
        (
            "piece.height_mm",
            "Height of the piece",
            "heat.drawn.height",
        )
    };
    let assumed = bench.ledger.value(figure);
    let (field, typed) = number(
        bench.draft,
        Question {
            path,
            label,
            unit: "mm",
            hint: "It gives the drawing its scale.",
            range: bounds,
            stand_in: Some(assumed),
        },
    );
    let given = typed.filter(|_| !bench.draft.text(path).trim().is_empty());
    (
        field,
        Size {
            mm: given.unwrap_or(assumed).clamp(bounds.0, bounds.1),
            assumed: given.is_none(),
        },
    )
}

fn zone(row: &ReachRow) -> HeatZone {
    // Whole tenths: more would be more than anybody knows.
    let distance = |reach: Reach| match reach {
        Reach::Never => Some(0.0),
        Reach::To(x) => Some((10.0 * x).round() / 10.0),
        Reach::Whole => None,
    };
    HeatZone {
        what: row.what.to_owned(),
        at: format!("{} °C", row.at_c),
        reach: reach(row),
        least_mm: distance(row.near),
        most_mm: distance(row.far),
    }
}

/// Both ends of a reach in a few words.
fn reach(row: &ReachRow) -> String {
    match (row.near, row.far) {
        (_, Reach::Never) => "never reached".to_owned(),
        (Reach::Whole, _) => "all of it".to_owned(),
        (Reach::Never, Reach::Whole) => "perhaps all of it".to_owned(),
        (Reach::To(near), Reach::Whole) => format!("{} to all of it", mm(near)),
        (Reach::To(near), Reach::To(far)) if near >= 1.0 => {
            let near = format!("{near:.0}");
            range(&near, &format!("{far:.0}")) + " mm"
        }
        (_, Reach::To(far)) if far < 1.0 => mm(far),
        (_, Reach::To(far)) => format!("up to {}", mm(far)),
    }
}

/// What becomes of old soft solder, the commonest thing there.
fn title(part: PartName, rows: &[ReachRow]) -> String {
    let part = part.label().to_ascii_lowercase();
    let from = format!("With a joint on the {part}, old soft solder");
    match rows.get(BANDED).map_or(Reach::Never, |r| r.far) {
        Reach::Never => format!("{from} does not open."),
        Reach::To(x) => format!("{from} can open as far as {} away.", mm(x)),
        Reach::Whole => format!("{from} can open all over."),
    }
}

fn description(part: PartName, zones: &[HeatZone]) -> String {
    let reached: Vec<String> = zones
        .iter()
        .filter(|z| z.most_mm != Some(0.0))
        .map(|z| [z.at.as_str(), ", ", &z.reach].concat())
        .collect();
    let part = part.label().to_ascii_lowercase();
    if reached.is_empty() {
        format!("The piece with a mark for the joint on the {part} and no band round it.")
    } else {
        format!(
            "The piece with bands round the joint on the {part}: {}.",
            reached.join("; ")
        )
    }
}
