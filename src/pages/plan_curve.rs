//! The curve of what money brings: the gain of the best plan for each sum.

use super::block::{Block, Table};
use super::money_text::MoneyFormat;
use super::picture::{Anchor, Ink, Mark, Picture};
use super::wording::plan_curve as words;

const LEFT: f64 = 52.0;
const RIGHT: f64 = 306.0;
const TOP: f64 = 16.0;
const BOTTOM: f64 = 176.0;

/// Draws the curve from 0 to `most` > 0. `changes` lists each sum at which the gain changes, with the gain
/// from there on; both rise from 0 and the last is above 0. The user's limit is marked if set.
pub(super) fn curve(
    changes: &[(f64, f64)],
    most: f64,
    yours: Option<(f64, f64)>,
    format: MoneyFormat,
) -> Block {
    let gain = changes.last().map_or(1.0, |(_, brings)| *brings);
    let x = |money: f64| LEFT + (RIGHT - LEFT) * money / most.max(f64::MIN_POSITIVE);
    let y = |brings: f64| BOTTOM - (BOTTOM - TOP) * brings / gain.max(f64::MIN_POSITIVE);
    let mut marks = Vec::new();
    for share in [0.0, 0.5, 1.0] {
        let at = y(share * gain);
        marks.push(Mark::path(Ink::Rule, format!("M{LEFT} {at:.1}H{RIGHT}")));
        let said = format.amount(share * gain);
        marks.push(Mark::text(
            Ink::Axis,
            Anchor::End,
            (LEFT - 5.0, at + 4.0),
            said,
        ));
    }
    let stairs: Vec<String> = changes
        .iter()
        .map(|(money, brings)| format!("H{:.1}V{:.1}", x(*money), y(*brings)))
        .collect();
    let line = format!("M{LEFT} {BOTTOM}{}H{RIGHT}", stairs.concat());
    marks.push(Mark::path(Ink::Middle, line));
    marks.push(Mark::path(Ink::Axis, format!("M{LEFT} {BOTTOM}H{RIGHT}")));
    for (money, anchor) in [(0.0, Anchor::Start), (most, Anchor::End)] {
        let said = format.amount(money);
        marks.push(Mark::text(
            Ink::Axis,
            anchor,
            (x(money), BOTTOM + 15.0),
            said,
        ));
    }
    let foot = (f64::midpoint(LEFT, RIGHT), BOTTOM + 15.0);
    marks.push(Mark::text(Ink::Axis, Anchor::Middle, foot, words::SPENT));
    if let Some((money, brings)) = yours {
        let (x, y) = (x(money), y(brings));
        marks.push(Mark::path(Ink::Detail, format!("M{x:.1} {BOTTOM}V{y:.1}")));
        marks.push(Mark::path(
            Ink::Outline,
            format!("M{:.1} {y:.1}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0Z", x - 4.0),
        ));
        // The label stands beside the line, on the side with room.
        let (anchor, at) = if x > f64::midpoint(LEFT, RIGHT) {
            (Anchor::End, x - 6.0)
        } else {
            (Anchor::Start, x + 6.0)
        };
        marks.push(Mark::text(
            Ink::Outline,
            anchor,
            (at, BOTTOM - 6.0),
            words::YOURS,
        ));
    }
    // Rounded as in the table, so that the curve stops rising where the table does.
    let said = format.amount(gain);
    let flat_from = changes
        .iter()
        .find(|(_, brings)| format.amount(*brings) == said);
    let title = match flat_from {
        Some((money, _)) if *money < 0.95 * most => {
            words::rises_until(&format.amount(gain), &format.amount(*money))
        }
        _ => words::rises(&format.amount(gain)),
    };
    let mut rows: Vec<Vec<String>> = Vec::new();
    for (money, brings) in changes {
        let brings = format.amount(*brings);
        // A gain that reads the same in the table is no change to a reader.
        if rows.last().is_none_or(|row| row.last() != Some(&brings)) {
            rows.push(vec![format.amount(*money), brings]);
        }
    }
    let picture = Picture {
        id: "plan.curve".to_owned(),
        title,
        description: words::description(&format.amount(most), &format.amount(gain)),
        width: 320.0,
        height: BOTTOM + 24.0,
        marks,
        table: Table {
            caption: words::CAPTION.to_owned(),
            columns: vec![words::MONEY.to_owned(), words::BRINGS.to_owned()],
            rows,
        },
    };
    Block::section("plan.money", words::HEADING, vec![Block::Picture(picture)])
}
