//! A bridge chart from now to after the work: one step for each cause with an amount, and the total.

use leavewell_model::report::ReasonReport;
use leavewell_model::terms::Currency;
use leavewell_pages::wrapped;
use yew::prelude::*;

use super::figure::{Frame, LINE, bar, figure, stroke, word, words};
use super::scale::{Scale, anchor, count};
use crate::app::parts::element::{el, group};
use crate::app::parts::words::{joined, money};
use crate::app::wording::charts as text;

struct BridgeStep {
    text: Vec<String>,
    from: f64,
    to: f64,
    amount: f64,
    top: f64,
    sum: bool,
}

/// The causes as steps, one below the other. Reasons that do not add to the total are left out.
pub fn bridge(reasons: &[ReasonReport], currency: Currency) -> Html {
    let (steps, height) = steps(reasons);
    let mut held: Vec<f64> = steps.iter().flat_map(|s| [s.from, s.to]).collect();
    held.push(0.0);
    let scale = Scale::holding(&held);
    let sum = steps.last().map_or(0.0, |s| s.amount);
    let title = if sum == 0.0 {
        text::BRIDGE_EVEN.to_owned()
    } else {
        text::together(&money(sum.abs(), currency), sum > 0.0)
    };
    let rows = steps
        .iter()
        .map(|s| {
            vec![
                s.text.join(" "),
                money(s.amount, currency),
                money(s.to, currency),
            ]
        })
        .collect();
    let frame = Frame {
        id: "bridge",
        title,
        desc: text::BRIDGE_READ,
        height: height + 18.0,
        head: &text::BRIDGE_HEAD,
        rows,
    };
    let zero = scale.place(0.0);
    let drawing = group()
        .put(stroke("chart-zero", (zero, 0.0), (zero, height)))
        .put(
            group()
                .each(steps.iter().enumerate(), |(i, step)| {
                    el("g", "")
                        .key(&i.to_string())
                        .put(row(step, scale, currency))
                })
                .html(),
        )
        .put(word(
            text::AS_IT_IS,
            zero,
            height + 14.0,
            "chart-quiet",
            anchor(zero),
        ))
        .html();
    figure(frame, drawing)
}

fn row(step: &BridgeStep, scale: Scale, currency: Currency) -> Html {
    let (left, right) = (step.from.min(step.to), step.from.max(step.to));
    let y = step.top + LINE * count(step.text.len()) + 4.0;
    let sign = if step.amount > 0.0 { "+" } else { "" };
    let class = match (step.sum, step.amount < 0.0) {
        (true, _) => "chart-sum",
        (false, true) => "chart-loss",
        (false, false) => "chart-silver",
    };
    let amount = joined(&[sign, &money(step.amount, currency)]);
    group()
        .put(words(
            &step.text,
            2.0,
            step.top + 13.0,
            "chart-name chart-over",
            "start",
        ))
        .put(word(
            &amount,
            98.0,
            y - 8.0,
            "chart-quiet chart-over",
            "end",
        ))
        .put(bar(
            class,
            (scale.place(left), y),
            scale.stretch(left, right),
            14.0,
        ))
        .html()
}

/// The causes that add up to the total, with short names. The amounts of other reasons do not.
const CAUSES: [(&str, &str); 3] = [
    ("value", text::CAUSE_VALUE),
    ("fees", text::CAUSE_FEES),
    ("cost", text::CAUSE_COST),
];

/// Whether there is a bridge to draw. Leaving a piece alone moves no money.
#[must_use]
pub fn has_bridge(reasons: &[ReasonReport]) -> bool {
    reasons
        .iter()
        .any(|r| r.code == "value" && r.amount.is_some())
}

/// The causes end to end, their total, and the height of the drawing.
fn steps(reasons: &[ReasonReport]) -> (Vec<BridgeStep>, f64) {
    let mut steps = Vec::new();
    let (mut so_far, mut top) = (0.0, 4.0);
    let mut push = |text: &str, from: f64, to: f64, sum: bool| {
        let text = wrapped(text, 32);
        let height = LINE * count(text.len()) + 28.0;
        steps.push(BridgeStep {
            text,
            from,
            to,
            amount: to - from,
            top,
            sum,
        });
        top += height;
    };
    for (code, name) in CAUSES {
        let amount = reasons
            .iter()
            .find(|r| r.code == code)
            .and_then(|r| r.amount);
        if let Some(amount) = amount.filter(|a| a.is_finite()) {
            push(name, so_far, so_far + amount, false);
            so_far += amount;
        }
    }
    push(text::TOGETHER, 0.0, so_far, true);
    (steps, top)
}
