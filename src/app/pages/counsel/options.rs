//! Every treatment a person may ask about, side by side, with the reasons for the barred ones.

use leavewell_model::Report;
use leavewell_model::report::{CourseReport, OptionOutcome, OptionReport};
use leavewell_model::terms::{Currency, Outcome, ShortSort, Treatment, any_of, capital};
use leavewell_pages::standing::Standing;
use yew::prelude::*;

use crate::app::charts::unbeaten;
use crate::app::parts::element::{El, el, group};
use crate::app::parts::marks::{all, fold, folded_section, p};
use crate::app::parts::words::{gain_band, joined, money_band};
use crate::app::wording::counsel as text;
use leavewell_model::terms::percent;

/// The table of options. On a narrow screen each row becomes a block, so every cell contains its column head,
/// which shows only there.
pub(super) fn options(report: &Report, currency: Currency) -> Html {
    let mut options: Vec<&OptionReport> = report.options.iter().collect();
    options.order_by_key(|option| option.outcome);
    let of = |outcome: OptionOutcome| -> Vec<&OptionReport> {
        options
            .iter()
            .filter(|o| o.outcome == outcome)
            .copied()
            .collect()
    };
    let (idle, never) = (of(OptionOutcome::NotNeeded), of(OptionOutcome::Never));
    options.retain(|o| !matches!(o.outcome, OptionOutcome::NotNeeded | OptionOutcome::Never));
    let shown = vec![
        more_often(report).html(),
        table(text::OPTIONS_CAPTION, &options, report, currency),
        folded(text::IDLE, &idle, report, currency),
        folded(text::NEVER, &never, report, currency),
    ];
    folded_section("options", "options-title", text::OPTIONS, all(shown))
}

/// Why the plan advised stands below another in how often it is as good as any; hidden where it does not.
pub(super) fn more_often(report: &Report) -> El {
    el("p", "hint")
        .hidden(!report.has_oftener_unbeaten_plan())
        .text(text::MORE_OFTEN)
}

/// A fold with the options a person need not read to decide.
fn folded(why: &str, options: &[&OptionReport], report: &Report, currency: Currency) -> Html {
    let names: Vec<&str> = options.iter().map(|o| o.name.get()).collect();
    let summary = joined(&[why, ": ", &names.join(", ").to_ascii_lowercase()]);
    let table = table(text::BY_ITSELF, options, report, currency);
    el("div", "")
        .hidden(options.is_empty())
        .put(fold("", summary, table))
        .html()
}

fn table(
    caption: &'static str,
    options: &[&OptionReport],
    report: &Report,
    currency: Currency,
) -> Html {
    let part = |tag, role| el(tag, "").attr("role", role);
    let heads = part("tr", "row").each(text::OPTIONS_HEAD, |head| {
        part("th", "columnheader").attr("scope", "col").text(head)
    });
    let rows = part("tbody", "rowgroup").each(options, |option| row(option, report, currency));
    el("table", "options-table")
        .attr("role", "table")
        .tag("caption", caption)
        .el(part("thead", "rowgroup").el(heads))
        .el(rows)
        .html()
}

fn row(option: &OptionReport, report: &Report, currency: Currency) -> El {
    let closed = matches!(option.outcome, OptionOutcome::Barred | OptionOutcome::Never);
    let course = report
        .courses
        .iter()
        .find(|c| is_by_itself(c, option.treatment));
    let advised = report.counsel.steps.contains(&option.treatment);
    let head = el("th", "")
        .attr("scope", "row")
        .attr("role", "rowheader")
        .el(el("span", "option-name").text(option.name.get()))
        .el(el("span", "option-plain").text(option.plain.get()));
    let class = match (closed, advised) {
        (true, _) => "is-closed",
        (_, true) => "is-advised",
        _ => "",
    };
    let cells = if closed {
        let more = p("quiet", closed_line(option, course, currency));
        vec![cell(
            "4",
            1,
            group().put(said(option, report)).put(more).html(),
        )]
    } else {
        let kept = course.map(kept_words).unwrap_or_default();
        let undone = capital(&option.reversibility_words);
        let cost = cost_words(option, currency);
        vec![
            cell("1", 1, said(option, report)),
            cell("1", 2, money(course, currency)),
            cell("1", 3, two("", kept, undone)),
            cell("1", 4, two("figures", cost, who(&option.who))),
        ]
    };
    el("tr", class)
        .key(option.treatment.id())
        .attr("role", "row")
        .el(head)
        .put(all(cells))
}

fn cell(colspan: &'static str, column: usize, body: Html) -> Html {
    let head = el("span", "cell-head")
        .attr("aria-hidden", "true")
        .text(text::OPTIONS_HEAD.get(column).copied().unwrap_or_default());
    el("td", "")
        .attr("role", "cell")
        .attr("colspan", colspan)
        .el(head)
        .put(body)
        .html()
}

fn two(class: &'static str, first: String, second: String) -> Html {
    group().said(class, first).said("", second).html()
}

/// Whether the plan is this treatment alone. A lead test, a wash, the removal of old lacquer and better care may
/// be part of it.
pub(super) fn is_by_itself(course: &CourseReport, treatment: Treatment) -> bool {
    const BESIDE: [Treatment; 4] = [
        Treatment::Keeping,
        Treatment::Wash,
        Treatment::LacquerOff,
        Treatment::TestLead,
    ];
    let beside = |step: &&Treatment| **step == treatment || !BESIDE.contains(step);
    let mut own = course.steps.iter().filter(beside);
    own.next().is_some_and(|step| *step == treatment) && own.next().is_none()
}

/// What the guards say, in words.
fn said(option: &OptionReport, report: &Report) -> Html {
    let standing = Standing::of(option, report);
    let lead = el("p", "")
        .el(el("strong", "").words(joined(&[standing.word(), "."])))
        .text(" ")
        .words(option.not_needed.clone().unwrap_or_default());
    let verdicts = el("ul", "")
        .hidden(option.verdicts.is_empty() || option.outcome == OptionOutcome::NotNeeded)
        .each(&option.verdicts, |verdict| {
            let lifts = if verdict.outcome == Outcome::Barred {
                text::LIFTS
            } else {
                ""
            };
            // What would lift a guard's verdict.
            let lifted = el("span", "lifted")
                .hidden(verdict.lifted_by.is_empty())
                .words(joined(&[lifts, &verdict.lifted_by]));
            el("li", "").words(verdict.reason.clone()).el(lifted)
        });
    el("div", "said").el(lead).el(verdicts).html()
}

fn money(course: Option<&CourseReport>, currency: Currency) -> Html {
    let Some(course) = course else {
        return p("quiet", text::NO_MONEY);
    };
    let gain = course.net_gain;
    let words = if gain.p10 == 0.0 && gain.p90 == 0.0 {
        text::NO_CHANGE.to_owned()
    } else {
        capital(&unbroken(&gain_band(gain, currency)))
    };
    two("figures", words, capital(&unbeaten(course.p_best)))
}

/// The text with no line break between a number and its minus or per cent sign.
pub(super) fn unbroken(words: &str) -> String {
    words
        .replace('\u{2212}', "\u{2212}\u{2060}")
        .replace(" %", "\u{a0}%")
}

fn kept_words(course: &CourseReport) -> String {
    match course.originality {
        all if all >= 1.0 => text::KEEPS_ALL.to_owned(),
        none if none <= 0.0 => text::KEEPS_NOTHING.to_owned(),
        some => unbroken(&text::keeps(&percent(some))),
    }
}

fn cost_words(option: &OptionReport, currency: Currency) -> String {
    if option.cost.p90 <= 0.0 {
        return text::COSTS_NOTHING.to_owned();
    }
    let basis = if option.quoted {
        text::QUOTED
    } else {
        text::ESTIMATED
    };
    capital(&money_band(option.cost, currency)) + basis
}

/// What is still worth knowing about an option that is ruled out.
fn closed_line(option: &OptionReport, course: Option<&CourseReport>, currency: Currency) -> String {
    let mut said = vec![capital(&option.reversibility_words)];
    said.extend(course.map(kept_words));
    if option.cost.p90 > 0.0 {
        said.push(cost_words(option, currency));
    }
    said.join(". ") + "."
}

/// Who may do it, from the catalogue's letters.
fn who(letters: &str) -> String {
    let words: Vec<&str> = letters
        .split('/')
        .map(|letter| text::person(letter.trim()))
        .collect();
    capital(&any_of(&words))
}

#[cfg(test)]
mod tests {
    use super::who;

    #[test]
    fn letters_become_people() {
        assert_eq!(who("O"), "You");
        assert_eq!(who("O/C"), "You or a conservator");
        assert_eq!(who("-"), "Nobody");
    }
}
