//! The condition and treatment record: what conservators keep before, during and after work.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing)]

use leavewell_model::Draft;
use leavewell_model::terms::Treatment;
use leavewell_pages::sheet_text::{Form, Recipient, sheet_text};
use leavewell_pages::{Block, PageName, Subject};

/// An invented tray with everything such a record can hold.
fn tray() -> Draft {
    Draft::parse(
        r#"{"format":"leavewell-case","version":2,"asked_on":"2026-05-31",
        "piece":{"name":"Invented tray","form":"tray","length_mm":460,"width_mm":310,"weight_g":1850,"photos":"p1"},
        "looked":{"by":"A. Example","for":"B. Client","on":"2026-05-30","next":"2027-05-30","watch":"The seam at the left handle"},
        "marks":[{"id":"1","text":"EPNS","part":"base"}],
        "findings":[{"id":"M01","answer":"seen","part":"base"}],
        "parts":[
            {"part":"body","bleed":"slight","photos":"k1","spots":[
                {"id":"e1","fault":"small_dent","count":3,"x":20,"y":80,"note":"along the edge"},
                {"id":"e2","fault":"scratch","photo":"body/k1","x":50,"y":50}]},
            {"part":"handle","joint":"open","spots":[{"id":"e1","fault":"open_joint","x":90,"y":40}]},
            {"part":"foot","corrosion":"green"}],
        "proposal":{"steps":[
            {"id":"1","treatment":"T08","parts":"body","likely":60,"hours":1.5,"agreed":true},
            {"id":"2","treatment":"T12","parts":"handle","likely":80,"fixed":true}]},
        "done":[{"id":"e1","what":"T12","parts":"handle","by":"C. Smith","on":"2026-06-10","hours":2,
            "materials":"none","method":"Seated again and pinned","deviations":"One pin more than proposed",
            "kept":"The old pin, in a bag","photos":"a1 a2"}],
        "aim":{"goal":"keep_show"},"market":{"likely":150,"currency":"GBP"}}"#,
    )
    .unwrap()
}

fn text(draft: &Draft) -> String {
    let subject = Subject::new(draft.clone());
    assert_eq!(subject.problems(), []);
    sheet_text(&subject, Recipient::Conservation, Form::Markdown)
}

fn section<'a>(blocks: &'a [Block], wanted: &str) -> Option<&'a [Block]> {
    blocks.iter().find_map(|block| match block {
        Block::Section { id, blocks, .. } if id == wanted => Some(&blocks[..]),
        Block::Section { blocks, .. } => section(blocks, wanted),
        _ => None,
    })
}

#[test]
fn the_record_holds_what_the_codes_ask_for_in_their_order() {
    let text = text(&tray());
    let mut last = 0;
    for said in [
        "Invented tray: Condition and treatment record",
        "Identification",
        "Length 460 mm, width 310 mm, weight with all that is fixed to it 1850 g",
        "Not measured: height.",
        "EPNS",
        "Condition, part by part",
        "1. Small dent (3), at the lower left of the drawing: along the edge",
        "2. Scratch, in the middle of the photo",
        "3. Open seam or joint, at the right of the drawing",
        "Not looked at: ",
        "The work proposed",
        "£60",
        "Consent, step by step",
        "1. Dents",
        "recorded as agreed",
        "Treatment as it was done",
        "On which parts: handle",
        "“Seated again and pinned”",
        "One pin more than proposed",
        "The old pin, in a bag",
        "The next look",
        "To be looked at again on 2027-05-30.",
        "The seam at the left handle",
        "Whether the corrosion goes on: foot.",
        "Whether joints and splits open further: handle.",
        "They decide, not this tool.",
        "Written by: A. Example",
        "For: B. Client",
    ] {
        let plain = text.replace('\\', "");
        let at = plain[last..].find(said);
        assert!(
            at.is_some(),
            "“{said}” is not there, or not in its place:\n{plain}"
        );
        last += at.unwrap();
    }
}

#[test]
fn each_step_has_a_line_to_agree_to_it_or_not() {
    let subject = Subject::new(tray());
    let blocks = PageName::SheetForConservation.blocks(&subject);
    let consent = section(&blocks, "conservation.consent").expect("a consent");
    let table = consent.iter().find_map(|block| match block {
        Block::Table(table) => Some(table),
        _ => None,
    });
    let table = table.unwrap();
    assert_eq!(table.rows.len(), 2);
    for row in &table.rows {
        assert_eq!(row.len(), 4);
        assert!(
            row[1].contains('□') && row[2] == "□" && row[3].is_empty(),
            "{row:?}"
        );
    }
    assert!(
        consent
            .iter()
            .any(|block| matches!(block, Block::Lines { .. }))
    );

    // Without a proposal the steps advised are those to agree to; where nothing is advised there is none.
    let mut advised = tray();
    advised.remove_at("proposal.steps", 0);
    advised.remove_at("proposal.steps", 0);
    let subject = Subject::new(advised);
    let blocks = PageName::SheetForConservation.blocks(&subject);
    let steps = subject.report().counsel.steps.iter();
    let steps = steps.filter(|id| **id != Treatment::Leave).count();
    let rows = section(&blocks, "conservation.consent").map_or(0, |consent| {
        consent
            .iter()
            .map(|block| match block {
                Block::Table(table) => table.rows.len(),
                _ => 0,
            })
            .sum()
    });
    assert_eq!(rows, steps);
    let empty = Subject::new(Draft::default());
    let blocks = PageName::SheetForConservation.blocks(&empty);
    assert_eq!(section(&blocks, "conservation.consent"), None);
}

#[test]
fn photos_stand_beside_what_they_show_before_beside_after() {
    let subject = Subject::new(tray());
    let blocks = PageName::SheetForConservation.blocks(&subject);
    let photos = |blocks: &[Block]| -> Vec<Vec<String>> {
        blocks
            .iter()
            .filter_map(|block| match block {
                Block::Photos(photos) => Some(photos.keys.clone()),
                _ => None,
            })
            .collect()
    };
    let whole = section(&blocks, "conservation.identification").unwrap();
    assert_eq!(photos(whole), [["piece/p1"]]);
    let body = section(&blocks, "conservation.part.0").unwrap();
    assert_eq!(photos(body), [["body/k1"]]);
    let done = section(&blocks, "conservation.treatment").unwrap();
    let done = section(done, "conservation.done.0").unwrap();
    let pair = done.iter().find_map(|block| match block {
        Block::Row { blocks } => Some(photos(blocks)),
        _ => None,
    });
    // The handle has no photo of its own, so the whole piece shows what was before.
    let expected = [vec!["piece/p1"], vec!["done-e1/a1", "done-e1/a2"]];
    assert_eq!(pair.unwrap(), expected);
    // A page that stands by itself says where they are until a browser puts them in.
    let page = sheet_text(&subject, Recipient::Conservation, Form::Html);
    assert!(
        page.contains(r#"<div class="shown" id="conservation.whole">"#),
        "{page}"
    );
    assert!(page.contains("kept only in the browser"));
    assert!(page.contains(r#"<div class="shown" id="places.drawing">"#));
    // A photo leads the client's sheet.
    let client = PageName::SheetForClient.blocks(&subject);
    let piece = section(&client, "client.piece").unwrap();
    assert!(matches!(&piece[0], Block::Photos(photos) if photos.keys == ["piece/p1"]));
}

#[test]
fn several_of_a_kind_on_a_part_add_to_the_cost_and_not_to_the_loss_of_value() {
    let report = |count: &str| {
        let mut draft = tray();
        draft.set("parts[part=body].spots[id=e1].count", count);
        for step in [1, 0] {
            draft.remove_at("proposal.steps", step);
        }
        let subject = Subject::new(draft);
        let report = subject.report().clone();
        let dents = report
            .options
            .iter()
            .find(|o| o.treatment == Treatment::Dents)
            .unwrap();
        (dents.cost.p50, report.value.as_it_is.p50)
    };
    let [(one, value_one), (four, value_four), (most, _), (beyond, _)] =
        ["1", "4", "11", "400"].map(report);
    assert!(four > 1.2 * one, "{one} {four}");
    assert!(
        most > four && (most - beyond).abs() < 1e-9,
        "{most} {beyond}"
    );
    assert!((value_one - value_four).abs() < 1e-9);
}

#[test]
fn a_record_without_anything_says_so_and_asks_for_no_consent() {
    let text = text(&Draft::default());
    for said in [
        "The condition of no part is recorded.",
        "No work is recorded yet.",
        "No day is set for the next look.",
        "none transcribed",
        "Not measured: height, length, width and weight.",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
    assert!(!text.contains("Consent, step by step"));
}

#[test]
fn a_quoted_price_stands_as_quoted_with_what_it_may_overrun_by_unless_it_is_fixed() {
    let price = |quote: &str| {
        let text = format!(
            r#"{{"format":"leavewell-case","version":2,"piece":{{"form":"tray"}},
            "findings":[{{"id":"M01","answer":"seen"}},{{"id":"S04","answer":"seen"}}],
            "parts":[{{"part":"body","tarnish":"black","dents":"moderate"}}],
            "quotes":[{{"treatment":"T08",{quote}}}],
            "aim":{{"goal":"keep_show"}},"market":{{"likely":400,"currency":"GBP"}}}}"#
        );
        let subject = Subject::parse(&text).unwrap();
        let sheet = sheet_text(&subject, Recipient::Client, Form::Markdown);
        let mut rows = sheet.lines().filter(|line| line.starts_with('|'));
        let line = rows.find(|line| line.contains("as quoted"));
        line.unwrap_or_else(|| panic!("no quoted price: {sheet}"))
            .to_owned()
    };
    let open = price(r#""likely":25"#);
    assert!(
        open.contains("£25 as quoted; it may come to £2") && open.contains(" to £"),
        "{open}"
    );
    let fixed = price(r#""likely":25,"fixed":true"#);
    assert!(
        fixed.contains("£25 as quoted, a fixed price") && !fixed.contains("may come to"),
        "{fixed}"
    );
    let range = price(r#""low":20,"likely":25,"high":40"#);
    assert!(range.contains("£20 to £40 as quoted"), "{range}");
}
