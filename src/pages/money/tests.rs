//! Invariants of the whole page.

use super::super::money_text::MoneyFormat;
use super::super::{Block, Subject};
use leavewell_model::record::Draft;
use leavewell_model::terms::Treatment;

fn page(draft: &Draft) -> Vec<Block> {
    super::page(&Subject::new(draft.clone()))
}

fn draft(body: &str) -> Draft {
    Draft::parse(&format!(
        "{{\"format\":\"leavewell-case\",\"version\":1,\"asked_on\":\"2026-05-31\"{body}}}"
    ))
    .unwrap()
}

const TRAY: &str = r#","piece":{"form":"tray"},
    "findings":[{"id":"C06","answer":"seen","part":"edge"},{"id":"C08","answer":"seen","part":"edge"}],
    "parts":[{"part":"body","bleed":"some","tarnish":"black"}],"aim":{"goal":"sell"}"#;

const SALES: &str = r#","comparables":[{"price":300,"bleed":"some"},{"price":420,"what":"with_premium"},
    {"price":510},{"price":180,"bleed":0.18}]"#;

fn walk<'a>(blocks: &'a [Block], each: &mut dyn FnMut(&'a Block)) {
    for block in blocks {
        each(block);
        match block {
            Block::Section { blocks, .. } | Block::Fold { blocks, .. } | Block::Row { blocks } => {
                walk(blocks, each);
            }
            _ => {}
        }
    }
}

fn tables(blocks: &[Block]) -> Vec<(String, Vec<Vec<String>>)> {
    let mut found = Vec::new();
    walk(blocks, &mut |b| {
        let table = match b {
            Block::Table(t) => t,
            Block::Picture(p) => &p.table,
            _ => return,
        };
        assert!(table.rows.iter().all(|r| r.len() == table.columns.len()));
        found.push((table.caption.clone(), table.rows.clone()));
    });
    found
}

fn rows(blocks: &[Block], caption: &str) -> Vec<Vec<String>> {
    tables(blocks)
        .into_iter()
        .find(|(c, _)| c.starts_with(caption))
        .map_or_else(|| panic!("no table {caption}"), |(_, rows)| rows)
}

/// The first amount in a cell.
fn amount(cell: &str) -> f64 {
    let first = cell.split([' ', ';']).next().unwrap_or_default();
    let digits: String = first
        .chars()
        .filter(|c| c.is_ascii_digit() || *c == '.')
        .collect();
    let value: f64 = digits.parse().unwrap_or(0.0);
    if first.starts_with('−') {
        -value
    } else {
        value
    }
}

fn bids(terms: &str) -> Vec<f64> {
    let file = draft(&[TRAY, SALES, terms].concat());
    rows(&page(&file), "The most to pay in total")
        .iter()
        .flat_map(|r| r[1..].iter().map(|c| amount(c)))
        .collect()
}

#[test]
fn the_most_to_pay_falls_with_the_wanted_gain_and_rises_with_accepted_risk() {
    let with = |margin: u32, risk: u32| {
        bids(&format!(
            ",\"worth\":{{\"margin_pct\":{margin},\"risk_pct\":{risk}}}"
        ))
    };
    for (less, more) in [
        (with(60, 20), with(30, 20)),
        (with(30, 20), with(0, 20)),
        (with(30, 10), with(30, 40)),
    ] {
        assert!(more.len() >= 4 && more.len() == less.len());
        for (a, b) in less.iter().zip(&more) {
            assert!(a <= b, "{less:?} {more:?}");
        }
        assert!(less.iter().sum::<f64>() < more.iter().sum());
    }
}

#[test]
fn higher_fees_never_leave_the_seller_more() {
    let kept = |fees: &str| {
        let file = draft(&[TRAY, SALES, ",\"market\":{\"likely\":400", fees, "}"].concat());
        amount(&rows(&page(&file), "As it is: what each way")[0][1])
    };
    let usual = kept("");
    for fees in [
        r#","fees":{"commission_pct":30}"#,
        r#","fees":{"minimum":90}"#,
        r#","fees":{"lot":40}"#,
        r#","fees":{"transport":50}"#,
        r#","fees":{"unsold":100}"#,
        r#","fees":{"vat_pct":60}"#,
    ] {
        assert!(kept(fees) < usual, "{fees}: {} {usual}", kept(fees));
    }
    // The same terms entered on the page, which stores them under one path.
    let mut file = draft(&[TRAY, SALES, ",\"market\":{\"likely\":400}"].concat());
    file.set("market.fees.commission_pct", "30");
    let typed = amount(&rows(&page(&file), "As it is: what each way")[0][1]);
    assert!((typed - kept(r#","fees":{"commission_pct":30}"#)).abs() < 1e-9);
}

#[test]
fn every_figure_disclaims_appraisal_and_every_band_is_ordered() {
    for body in ["", TRAY, &[TRAY, SALES].concat()] {
        let blocks = page(&draft(body));
        let text = serde_json::to_string(&blocks).unwrap();
        assert!(text.contains("Indicative, not an appraisal."));
        assert!(!text.contains("NaN") && !text.contains("not known ("));
        for (caption, rows) in tables(&blocks) {
            assert!(!rows.is_empty(), "{caption}");
        }
    }
}

#[test]
fn section_ids_are_unique_and_start_with_the_page() {
    let blocks = page(&draft(&[TRAY, SALES].concat()));
    let mut ids = Vec::new();
    walk(&blocks, &mut |b| match b {
        Block::Section { id, .. } | Block::Fold { id, .. } => ids.push(id.clone()),
        Block::Picture(p) => ids.push(p.id.clone()),
        _ => {}
    });
    assert!(ids.iter().all(|id| id.starts_with("worth-")));
    let count = ids.len();
    ids.sort();
    ids.dedup();
    assert_eq!(ids.len(), count);
}

#[test]
fn the_last_row_of_sales_is_always_empty() {
    let price_fields = |d: &Draft| {
        let mut paths = Vec::new();
        let blocks = page(d);
        walk(&blocks, &mut |b| {
            if let Block::Field(f) = b
                && f.path.ends_with("].price")
            {
                paths.push((f.path.clone(), f.text.clone(), f.problem.clone()));
            }
        });
        paths
    };
    let mut d = draft("");
    assert_eq!(price_fields(&d).len(), 1);
    d.set("comparables[0].price", "-5");
    let shown = price_fields(&d);
    assert_eq!(shown.len(), 2);
    assert!(shown[0].2.contains("more than zero") && shown[0].2.contains("leave"));
    assert_eq!(shown[1].1, "");
    d.set("comparables[0].left_out", "yes");
    assert_eq!(price_fields(&d)[0].2, "");
}

#[test]
fn the_currency_is_only_a_label() {
    let said = |currency: &str| {
        let market = format!(",\"market\":{{\"likely\":400,\"currency\":\"{currency}\"}}");
        let blocks = page(&draft(&[TRAY, SALES, &market].concat()));
        let text = serde_json::to_string(&blocks).unwrap();
        text.replace(['£', '€', '$'], "")
            .replace(&format!("\"chosen\":\"{currency}\""), "\"chosen\":\"\"")
    };
    assert_eq!(said("GBP"), said("EUR"));
    assert_eq!(said("GBP"), said("USD"));
}

#[test]
fn an_outlying_sale_is_flagged_and_leaving_it_out_helps() {
    let body = |out: &str| {
        [
            TRAY,
            r#","comparables":[{"price":300},{"price":320},{"price":310},{"price":290},{"price":30000"#,
            out,
            "}]",
        ]
        .concat()
    };
    let (with, without) = (
        page(&draft(&body(""))),
        page(&draft(&body(",\"left_out\":true"))),
    );
    let fits = |blocks: &[Block]| {
        rows(blocks, "What each sale suggests")
            .iter()
            .map(|r| r[6].clone())
            .collect::<Vec<_>>()
    };
    assert_eq!(fits(&with).last().unwrap(), "No");
    assert!(fits(&without).iter().all(|f| f == "Yes") && fits(&without).len() == 4);
    let text = serde_json::to_string(&with).unwrap();
    assert!(text.contains("Sale 5 counts most") && text.contains("The band grew"));
    assert!(
        !serde_json::to_string(&without)
            .unwrap()
            .contains("does not fit")
    );
}

#[test]
fn a_buyer_for_whom_work_never_pays_shows_never() {
    let file = draft(
        &[
            TRAY,
            SALES,
            r#","quotes":[{"treatment":"T14a","likely":500}]"#,
        ]
        .concat(),
    );
    let table = rows(&page(&file), "By type of buyer");
    let replate = table.iter().find(|r| r[0].contains("replating")).unwrap();
    assert!(replate[1].ends_with("never"), "{replate:?}");
}

#[test]
fn absurd_prices_still_produce_a_page() {
    let body = r#","market":{"likely":0.000001,"fees":{"above":0,"commission_pct":100,"sold_pct":0}},
        "comparables":[{"price":1e-300,"on":"1600"},{"price":100000000,"similar":1e-9},{"price":5}],
        "worth":{"margin_pct":1000,"risk_pct":1,"shop_months":240,"rate_pct":60,"paid":100000000},
        "overrides":{"value.prior.alpha":0,"value.prior.beta":0,"value.tail":1,"fee.premium":0}"#;
    let text = serde_json::to_string(&page(&draft(&[TRAY, body].concat()))).unwrap();
    assert!(text.starts_with("[{"), "{text}");
    for broken in ["NaN", "inf", "null"] {
        assert!(!text.contains(broken), "{broken}");
    }
}

#[test]
fn pieces_sold_one_by_one_pay_charges_for_each_as_in_the_advice() {
    let stick = |sell: &str| {
        let body = format!(
            r#","piece":{{"form":"candlestick"}},"aim":{{"goal":"sell"}},
            "findings":[{{"id":"C06","answer":"seen"}},{{"id":"C08","answer":"seen"}}],
            "parts":[{{"part":"body","bleed":"none","tarnish":"bright"}}],
            "pieces":{{"relation":"pair","sell":"{sell}"}},
            "market":{{"low":220,"likely":300,"high":410,"currency":"GBP","fees":{{"minimum":30}}}}"#
        );
        draft(&body)
    };
    let mut left = Vec::new();
    for sell in ["together", "apart"] {
        let subject = Subject::new(stick(sell));
        let report = subject.report();
        assert_eq!(
            report.counsel.steps,
            [Treatment::Leave],
            "nothing is done to a whole pair"
        );
        let pieces = report.pieces.as_ref().unwrap();
        let kept = if sell == "apart" {
            pieces.apart.kept
        } else {
            pieces.together.kept
        };
        let ways = rows(
            &super::page(&subject),
            crate::wording::money::routes::CAPTION,
        );
        let at_auction = &ways[0][1];
        assert_eq!(
            *at_auction,
            MoneyFormat::of(subject.case().market.currency).band([kept.p10, kept.p50, kept.p90])
        );
        left.push(amount(at_auction));
        // What a treatment adds and the most to pay are of the same sales.
        let most = rows(&super::page(&subject), "The most to pay in total");
        let most_to_pay = report.most_to_pay().unwrap();
        assert!(
            (amount(&most[0][1]) - most_to_pay).abs() <= 0.05 * most_to_pay,
            "{most:?} {most_to_pay}"
        );
    }
    assert!(left[1] < left[0] - 30.0, "{left:?}");
}
