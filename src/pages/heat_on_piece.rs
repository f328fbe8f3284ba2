//! Where soldering heat reaches on the drawn piece: the part with the joint, the size of the piece, and the
//! reach of each temperature.

use super::ask::{NumberField, choice, first, number};
use super::bench_inputs::Bench;
use super::block::{Block, HeatOnPiece, HeatZone, Table, Tone};
use super::heat_picture::BANDED;
use super::heat_reach::ReachRow;
use super::number_text::{mm, range};
use super::wording::heat_on_piece as words;
use leavewell_model::bench::{Reach, Spread};
use leavewell_model::ledger::FigureId;
use leavewell_model::record::schema::within;
use leavewell_model::terms::{Form, Joint, PartName};

/// Parts that are usually soldered on, most likely first.
const SOLDERED_ON: [PartName; 3] = [PartName::Spout, PartName::Handle, PartName::Foot];

/// The fields, and the drawing if the other fields can be used.
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
        words::ON_PART,
        words::ON_PART_HINT,
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
        let told = if form == Some(Form::Tray) {
            words::TRAY_SIZE
        } else {
            words::PIECE_SIZE
        };
        blocks.push(Block::said(Tone::Note, words::assumed(&mm(size.mm), told)));
    }
    blocks.push(Block::said(Tone::Quiet, words::LAID_FLAT));
    blocks
}

const FAULTY_OR_MENDED: [Joint; 4] = [
    Joint::Open,
    Joint::Leaking,
    Joint::GreyRepair,
    Joint::NeatRepair,
];

/// The first part whose joint is recorded as faulty or mended, or else one that is usually soldered on.
fn usual_part(bench: &Bench<'_>, parts: &[PartName]) -> PartName {
    let recorded = bench.case.parts.iter();
    recorded
        .filter(|p| p.has_any_joint(&FAULTY_OR_MENDED))
        .map(|p| p.name)
        .chain(SOLDERED_ON)
        .find(|p| parts.contains(p))
        .unwrap_or(PartName::Body)
}

/// Height of the piece in mm, or the length of a tray, if entered.
pub(super) fn told_size_mm(bench: &Bench<'_>) -> Option<f64> {
    let (_, size) = size(bench, bench.case.piece.form);
    (!size.assumed).then_some(size.mm)
}

/// The size at which the piece is drawn.
struct DrawnSize {
    mm: f64,
    assumed: bool,
}

/// The recorded height, or for a tray, which is seen from above, its length. A typical size is assumed if
/// none is recorded.
fn size(bench: &Bench<'_>, form: Option<Form>) -> (Block, DrawnSize) {
    let tray = form == Some(Form::Tray);
    let (path, label, figure) = if tray {
        // Records of version 1 have the length of a tray among the fields of this page.
        let old = "bench.heat.long_mm";
        let in_old_place = !bench.draft.text(old).trim().is_empty();
        let path = if in_old_place { old } else { "piece.length_mm" };
        (path, words::LENGTH, FigureId::HEAT_DRAWN_LENGTH)
    } else {
        (
            "piece.height_mm",
            words::HEIGHT,
            FigureId::HEAT_DRAWN_HEIGHT,
        )
    };
    let assumed = bench.ledger.value(figure);
    let (field, typed) = number(
        bench.draft,
        NumberField {
            path,
            label,
            unit: "mm",
            hint: words::SIZE_HINT,
            stand_in: Some(assumed),
        },
    );
    let given = typed.filter(|_| !bench.draft.text(path).trim().is_empty());
    (
        field,
        DrawnSize {
            mm: within(path, given.unwrap_or(assumed)),
            assumed: given.is_none(),
        },
    )
}

fn zone(row: &ReachRow) -> HeatZone {
    // Whole tenths of a millimetre: more would claim false precision.
    let distance = |reach: Reach| match reach {
        Reach::Never => Some(0.0),
        Reach::To(x) => Some((10.0 * x).round() / 10.0),
        Reach::Whole => None,
    };
    HeatZone {
        at: format!("{} °C", row.at_c),
        reach: reach(row),
        most_mm: distance(row.far),
    }
}

/// Both ends of a reach in a few words.
fn reach(row: &ReachRow) -> String {
    match (row.near, row.far) {
        (_, Reach::Never) => words::NEVER_REACHED.to_owned(),
        (Reach::Whole, _) => words::ALL_OF_IT.to_owned(),
        (Reach::Never, Reach::Whole) => words::PERHAPS_ALL.to_owned(),
        (Reach::To(near), Reach::Whole) => words::to_all(&mm(near)),
        (Reach::To(near), Reach::To(far)) if near >= 1.0 => {
            let near = format!("{near:.0}");
            range(&near, &format!("{far:.0}")) + " mm"
        }
        (_, Reach::To(far)) if far < 1.0 => mm(far),
        (_, Reach::To(far)) => words::up_to(&mm(far)),
    }
}

/// The title states the effect on old soft solder, the most common thing to give way.
fn title(part: PartName, rows: &[ReachRow]) -> String {
    let part = part.label().to_ascii_lowercase();
    match rows.get(BANDED).map_or(Reach::Never, |r| r.far) {
        Reach::Never => words::does_not_open(&part),
        Reach::To(x) => words::opens_as_far_as(&part, &mm(x)),
        Reach::Whole => words::opens_all_over(&part),
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
        words::no_band(&part)
    } else {
        words::bands(&part, &reached.join("; "))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::markdown::markdown;
    use crate::{PageName, Subject};
    use leavewell_model::record::Draft;

    fn draft(fields: &[(&str, &str)]) -> Draft {
        let mut draft = Draft::default();
        for (path, text) in fields {
            draft.set(path, text);
        }
        draft
    }

    /// The blocks of the heat section.
    fn section(draft: &Draft) -> Vec<Block> {
        let blocks = PageName::Bench.blocks(&Subject::new(draft.clone()));
        let inner = blocks.into_iter().find_map(|b| match b {
            Block::Section { id, blocks, .. } if id == "bench.heat" => Some(blocks),
            _ => None,
        });
        inner.unwrap()
    }

    fn heat(draft: &Draft) -> HeatOnPiece {
        let found = section(draft).into_iter().find_map(|b| match b {
            Block::HeatOnPiece(heat) => Some(heat),
            _ => None,
        });
        found.unwrap()
    }

    /// Whether the section states that the size is assumed.
    fn says_assumed(draft: &Draft, words: &str) -> bool {
        section(draft).iter().any(|b| match b {
            Block::Para { text, tone } => *tone == Tone::Note && text.contains(words),
            _ => false,
        })
    }

    #[test]
    fn the_part_defaults_to_one_with_a_faulty_joint() {
        let mut pot = draft(&[("piece.form", "teapot")]);
        assert_eq!(heat(&pot).part, "spout");
        pot.set_part("handle", "joint", "sound");
        assert_eq!(heat(&pot).part, "spout");
        // A part that a teapot does not have is skipped.
        pot.set_part("rim", "joint", "open");
        assert_eq!(heat(&pot).part, "spout");
        for joint in ["open", "leaking", "grey_repair", "neat_repair"] {
            pot.set_part("foot", "joint", joint);
            assert_eq!(heat(&pot).part, "foot", "{joint}");
        }
        pot.set("bench.heat.on_part", "cover");
        assert_eq!(heat(&pot).part, "cover");
        pot.set("bench.heat.on_part", "rim");
        assert_eq!(heat(&pot).part, "foot");
    }

    #[test]
    fn without_a_record_the_part_defaults_to_one_usually_soldered_on() {
        for (form, part) in [
            ("", "spout"),
            ("tray", "handle"),
            ("candlestick", "foot"),
            ("box", "body"),
        ] {
            let heat = heat(&draft(&[("piece.form", form)]));
            assert_eq!((heat.form.as_str(), heat.part.as_str()), (form, part));
        }
    }

    #[test]
    fn the_extent_defaults_to_the_size_of_the_piece() {
        let stands_in = |fields: &[(&str, &str)]| {
            let blocks = section(&draft(fields));
            let shown = serde_json::to_string(&blocks).unwrap();
            let field = shown.split("bench.heat.extent_mm").nth(1).unwrap();
            let told = field.split("\"stand_in\":\"").nth(1).unwrap();
            told.split('"').next().unwrap().to_owned()
        };
        let tray = ("piece.form", "tray");
        assert_eq!(stands_in(&[tray]), "100");
        // For a tray the length counts, not the height.
        assert_eq!(stands_in(&[tray, ("piece.height_mm", "40")]), "100");
        assert_eq!(stands_in(&[tray, ("piece.length_mm", "450")]), "450");
        assert_eq!(stands_in(&[tray, ("bench.heat.long_mm", "450")]), "450");
        let pot = ("piece.form", "teapot");
        assert_eq!(stands_in(&[pot, ("piece.height_mm", "150")]), "150");
        assert_eq!(stands_in(&[pot, ("piece.height_mm", "2500")]), "2500");
    }

    #[test]
    fn the_height_sets_the_scale_and_a_missing_one_is_stated() {
        let pot = draft(&[("piece.form", "teapot"), ("piece.height_mm", "150")]);
        let drawn = heat(&pot);
        assert!((drawn.size_mm - 150.0).abs() < 1e-9 && !drawn.assumed);
        assert!(!says_assumed(&pot, "as if"));
        for bad in ["", "0", "0.9", "3001", "1e9", "tall", "-5", "NaN"] {
            let pot = draft(&[("piece.form", "teapot"), ("piece.height_mm", bad)]);
            let drawn = heat(&pot);
            assert!(
                (drawn.size_mm - 180.0).abs() < 1e-9 && drawn.assumed,
                "{bad}"
            );
            assert!(says_assumed(&pot, "180 mm high"), "{bad}");
        }
        for good in ["1", "3000"] {
            let pot = draft(&[("piece.form", "teapot"), ("piece.height_mm", good)]);
            assert!(!heat(&pot).assumed, "{good}");
        }
    }

    #[test]
    fn the_length_sets_the_scale_of_a_tray() {
        let tray = draft(&[("piece.form", "tray"), ("piece.height_mm", "30")]);
        assert!((heat(&tray).size_mm - 500.0).abs() < 1e-9);
        assert!(says_assumed(&tray, "500 mm long"));
        let tray = draft(&[("piece.form", "tray"), ("bench.heat.long_mm", "620")]);
        let drawn = heat(&tray);
        assert!((drawn.size_mm - 620.0).abs() < 1e-9 && !drawn.assumed);
        assert!(!says_assumed(&tray, "as if"));
    }

    #[test]
    fn every_threshold_is_listed_with_both_ends_of_its_reach() {
        let heat = heat(&draft(&[
            ("piece.form", "tray"),
            ("bench.heat.joint_c", "230"),
            ("bench.heat.extent_mm", "2000"),
        ]));
        let at: Vec<&str> = heat.zones.iter().map(|z| z.at.as_str()).collect();
        assert_eq!(
            at,
            [
                "96 °C",
                "138 °C",
                "183 °C",
                "232 °C",
                "260 °C",
                "303.7 °C",
                "327.46 °C",
                "779.1 °C"
            ]
        );
        assert_eq!(heat.table.rows.len(), heat.zones.len());
        for (i, zone) in heat.zones.iter().enumerate() {
            let reached = i < 3;
            assert_eq!(zone.most_mm.unwrap() > 0.0, reached, "{zone:?}");
            assert_eq!(zone.reach == "not reached in this calculation", !reached);
            assert_eq!(heat.description.contains(&zone.at), reached);
        }
        // Higher temperatures reach less far.
        assert!(heat.zones[0].most_mm > heat.zones[1].most_mm);
        assert!(heat.title.contains("joint on the handle") && heat.title.contains("mm away"));
    }

    #[test]
    fn both_ends_of_a_reach_can_be_never_or_everywhere() {
        let at = |joint: &str| {
            heat(&draft(&[
                ("piece.form", "candlestick"),
                ("bench.heat.form", "strip"),
                ("bench.heat.metal", "copper"),
                ("bench.heat.extent_mm", "10"),
                ("bench.heat.joint_c", joint),
            ]))
        };
        for cold in ["-10", "20", "95", "96"] {
            let heat = at(cold);
            assert!(heat.zones.iter().all(|z| z.most_mm == Some(0.0)), "{cold}");
            assert!(
                heat.title.ends_with("a flame may reach it."),
                "{}",
                heat.title
            );
            assert!(heat.description.contains("no band"));
        }
        // A piece this small loses hardly any heat, so what is reached anywhere is reached everywhere.
        let heat = at("190");
        let told: Vec<&str> = heat.zones.iter().map(|z| z.reach.as_str()).collect();
        assert_eq!(
            told[..4],
            [
                "all of it",
                "all of it",
                "all of it",
                "not reached in this calculation"
            ]
        );
        assert!(heat.zones[..3].iter().all(|z| z.most_mm.is_none()));
        assert!(heat.title.ends_with("all over."), "{}", heat.title);
        assert!((heat.hot_mm).abs() < 1e-12, "a strip has no patch");
    }

    #[test]
    fn a_reach_takes_few_words() {
        use Reach::{Never, To, Whole};
        let told = |near, far| {
            reach(&ReachRow {
                what: "",
                at_c: 0.0,
                near,
                far,
            })
        };
        for (near, far, words) in [
            (Never, Never, "not reached in this calculation"),
            (Never, To(0.4), "less than 1 mm"),
            (To(0.2), To(0.99), "less than 1 mm"),
            (To(0.2), To(1.0), "up to 1 mm"),
            (Never, To(7.0), "up to 7 mm"),
            (To(0.99), To(7.0), "up to 7 mm"),
            (To(1.0), To(7.2), "1 to 7 mm"),
            (To(7.0), To(7.2), "7 mm"),
            (Never, Whole, "perhaps all of it"),
            (To(7.0), Whole, "7 mm to all of it"),
            (Whole, Whole, "all of it"),
        ] {
            assert_eq!(told(near, far), words);
        }
    }

    #[test]
    fn an_unusable_field_leaves_the_fields_but_no_drawing() {
        let bad = draft(&[("bench.heat.thickness_mm", "0")]);
        let blocks = section(&bad);
        assert!(!blocks.iter().any(|b| matches!(b, Block::HeatOnPiece(_))));
        let row = blocks.iter().find_map(|b| match b {
            Block::Row { blocks } => Some(blocks),
            _ => None,
        });
        let Some([Block::Choice(choice), Block::Field(field)]) = row.map(Vec::as_slice) else {
            panic!("a choice and a field")
        };
        assert_eq!(choice.path, "bench.heat.on_part");
        assert_eq!(choice.options.len(), Form::Other.parts().len());
        assert_eq!(field.path, "piece.height_mm");
    }

    #[test]
    fn as_text_it_is_a_table_after_the_answer() {
        let blocks = section(&draft(&[]));
        let place = blocks
            .iter()
            .position(|b| matches!(b, Block::HeatOnPiece(_)))
            .unwrap();
        assert!(place <= 3, "{place}");
        let text = markdown("Heat", &blocks[place..=place]);
        assert!(
            text.contains("| Old soft solder opens | 183 °C |"),
            "{text}"
        );
    }
}
