//! Every treatment a person may ask about, side by side, the barred ones with their reasons.

use std::rc::Rc;

use leavewell_model::Report;
use leavewell_model::case::Currency;
use leavewell_model::report::{Band, CourseReport, OptionReport, VerdictReport};
use yew::prelude::*;

use crate::app::charts::unbeaten;
use crate::app::parts::words::{capital, list, money_band, percent};

/// What tables of the report need.
#[derive(Clone, Debug, Properties)]
pub(super) struct MoneyReportProps {
    /// What the model says.
    pub report: Rc<Report>,
    /// What amounts are in.
    pub currency: Currency,
}

impl PartialEq for MoneyReportProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.report, &other.report) && self.currency == other.currency
    }
}

/// The options. One table: on a narrow screen each row becomes a block, so every cell carries the
/// head of its column, shown there only.
#[component]
pub(super) fn Options(props: &MoneyReportProps) -> Html {
    let mut options: Vec<&OptionReport> = props.report.options.iter().collect();
    options.sort_by_key(|o| order(o.outcome));
    html! {
        <section class="options" aria-labelledby="options-title">
            <h2 id="options-title">{ "What could be done, side by side" }</h2>
            <table class="options-table" role="table">
                <caption>
                    { "Each step by itself. Money is against leaving the piece as it is; 8 outcomes in 10 fall inside a range. " }
                    { "Unbeaten: of 100 ways things may be, so many in which nothing else does noticeably better." }
                </caption>
                <thead role="rowgroup">
                    <tr role="row">
                        for head in HEADS {
                            <th scope="col" role="columnheader">{ head }</th>
                        }
                    </tr>
                </thead>
                <tbody role="rowgroup">
                    for option in options {
                        { row(option, &props.report, props.currency) }
                    }
                </tbody>
            </table>
        </section>
    }
}

const HEADS: [&str; 5] = [
    "Option",
    "What we say",
    "Money",
    "Kept and undone",
    "Cost, and who",
];

fn row(option: &OptionReport, report: &Report, currency: Currency) -> Html {
    let closed = matches!(option.outcome, "barred" | "never");
    let course = report
        .courses
        .iter()
        .find(|c| is_by_itself(c, option.treatment));
    let advised = report.counsel.steps.contains(&option.treatment);
    html! {
        <tr
            key={option.treatment}
            role="row"
            class={classes!(closed.then_some("is-closed"), advised.then_some("is-advised"))}
        >
            <th scope="row" role="rowheader">
                <span class="option-name">{ option.name }</span>
                <span class="option-advised" hidden={!advised}>{ "Advised" }</span>
                <span class="option-plain">{ option.plain }</span>
            </th>
            if closed {
                <td role="cell" colspan="4">
                    { head(1) }
                    { said(option) }
                    <p class="quiet">{ closed_line(option, course, currency) }</p>
                </td>
            } else {
                <td role="cell">{ head(1) }{ said(option) }</td>
                <td role="cell">{ head(2) }{ money(course, currency) }</td>
                <td role="cell">{ head(3) }{ kept(option, course) }</td>
                <td role="cell">{ head(4) }{ cost(option, currency) }</td>
            }
        </tr>
    }
}

/// A plan of this treatment alone; washing before cleaning is part of cleaning.
fn is_by_itself(course: &CourseReport, treatment: &str) -> bool {
    course.steps == [treatment] || (treatment == "T03" && course.steps == ["T02", treatment])
}

fn head(column: usize) -> Html {
    html! { <span class="cell-head" aria-hidden="true">{ HEADS.get(column).copied().unwrap_or_default() }</span> }
}

/// What the guards say, in words.
fn said(option: &OptionReport) -> Html {
    let lead = match option.outcome {
        "conditional" => "It can be done, if:",
        "needs_check" => "Not before a check:",
        "needs_opinion" => "Not before a conservator has given a written opinion:",
        "barred" => "Not this:",
        "never" => "Not this, for pieces of this sort:",
        "not_needed" => "Not needed.",
        _ => "It can be done.",
    };
    html! {
        <div class="said">
            <p><strong>{ lead }</strong>{ " " }{ option.not_needed.clone().unwrap_or_default() }</p>
            <ul hidden={option.verdicts.is_empty() || option.outcome == "not_needed"}>
                for verdict in option.verdicts.iter() {
                    <li>{ verdict_words(verdict) }</li>
                }
            </ul>
        </div>
    }
}

/// A guard's reason, and what would lift it.
fn verdict_words(verdict: &VerdictReport) -> Html {
    let lead = if verdict.outcome == "barred" {
        "What would lift this: "
    } else {
        ""
    };
    html! {
        <>
            { verdict.reason.clone() }
            <span class="lifted" hidden={verdict.lifted_by.is_empty()}>
                { format!("{lead}{}", verdict.lifted_by) }
            </span>
        </>
    }
}

fn money(course: Option<&CourseReport>, currency: Currency) -> Html {
    let Some(course) = course else {
        return html! { <p class="quiet">{ "not weighed by itself" }</p> };
    };
    let gain = course.net_gain;
    let unchanged = gain.p10 == 0.0 && gain.p90 == 0.0;
    let band = Band {
        p10: gain.p10,
        p50: gain.p50,
        p90: gain.p90,
    };
    html! {
        <>
            <p class="figures">{ if unchanged { "No change".to_owned() } else { capital(&unbroken(&money_band(band, currency))) } }</p>
            <p>{ capital(&unbeaten(course.p_best)) }</p>
        </>
    }
}

/// The same words with every minus and every per cent held to its number.
pub(super) fn unbroken(words: &str) -> String {
    words
        .replace('\u{2212}', "\u{2212}\u{2060}")
        .replace(" %", "\u{a0}%")
}

fn kept(option: &OptionReport, course: Option<&CourseReport>) -> Html {
    html! {
        <>
            <p>{ course.map(kept_words).unwrap_or_default() }</p>
            <p>{ capital(option.reversibility_words) }</p>
        </>
    }
}

fn kept_words(course: &CourseReport) -> String {
    match course.originality {
        all if all >= 1.0 => "Keeps all that is original".to_owned(),
        none if none <= 0.0 => "Keeps nothing original".to_owned(),
        some => unbroken(&format!("Keeps {} of what is original", percent(some))),
    }
}

fn cost(option: &OptionReport, currency: Currency) -> Html {
    html! {
        <>
            <p class="figures">{ cost_words(option, currency) }</p>
            <p>{ who(option.who) }</p>
        </>
    }
}

fn cost_words(option: &OptionReport, currency: Currency) -> String {
    if option.cost.p90 <= 0.0 {
        return "Costs nothing".to_owned();
    }
    let basis = if option.quoted {
        " (your quote)"
    } else {
        " (our estimate)"
    };
    capital(&money_band(option.cost, currency)) + basis
}

/// What is still worth knowing of an option that is out.
fn closed_line(option: &OptionReport, course: Option<&CourseReport>, currency: Currency) -> String {
    let mut said = vec![capital(option.reversibility_words)];
    said.extend(course.map(kept_words));
    if option.cost.p90 > 0.0 {
        said.push(cost_words(option, currency));
    }
    said.join(". ") + "."
}

/// Who may do it, from the letters of the catalogue.
fn who(letters: &str) -> String {
    let words: Vec<&str> = letters
        .split('/')
        .map(|letter| match letter.trim() {
            "O" => "you yourself",
            "S" => "a silversmith",
            "C" => "a conservator",
            "P" => "a plating works with a permit",
            "L" => "a laboratory",
            "-" => "nobody",
            other => other,
        })
        .collect();
    let (last, others) = words.split_last().map_or(("", &[][..]), |(l, o)| (*l, o));
    let said = if others.is_empty() {
        last.to_owned()
    } else {
        format!("{} or {last}", list_commas(others))
    };
    capital(&said)
}

fn list_commas(words: &[&str]) -> String {
    if words.len() == 1 {
        list(words)
    } else {
        words.join(", ")
    }
}

/// What can be done first, what is out last.
fn order(outcome: &str) -> u8 {
    match outcome {
        "allowed" => 0,
        "conditional" => 1,
        "needs_check" => 2,
        "needs_opinion" => 3,
        "not_needed" => 4,
        "barred" => 5,
        _ => 6,
    }
}

#[cfg(test)]
mod tests {
    use super::who;

    #[test]
    fn letters_become_people() {
        assert_eq!(who("O"), "You yourself");
        assert_eq!(who("O/C"), "You yourself or a conservator");
        assert_eq!(who("-"), "Nobody");
    }
}
