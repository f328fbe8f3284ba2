//! Money: what an undamaged one fetches, what is asked for work, what the owner agrees to.

use leavewell_model::Report;
use leavewell_model::case::{Currency, Route as SaleRoute};
use leavewell_model::facts::{TreatmentText, treatment_text};
use leavewell_model::report::Band;
use leavewell_model::small::capital;
use yew::prelude::*;

use super::{Page, of_report};
use crate::app::parts::blocks::leaf;
use crate::app::parts::cautions::{cautions, named};
use crate::app::parts::choice::{choices, pick, radios, tick};
use crate::app::parts::element::{El, el, group};
use crate::app::parts::field::number_field;
use crate::app::parts::marks::{fold, section};
use crate::app::parts::screen::screen;
use crate::app::parts::words::money_band;
use crate::app::route::Route;
use crate::app::state::Target;

/// What a quote can be put in for, in the order people ask for it.
const QUOTED: [&str; 6] = ["T14a", "T09", "T09b", "T10a", "T03", "T17"];

/// Money.
pub fn money_page(page: Page) -> Html {
    screen(
        page,
        (Route::Money, Route::Counsel),
        [
            "What it might fetch, and what work would cost",
            "A rough value and one price are enough to weigh money. Leave open what you do not know.",
            "Next: the counsel",
        ],
        of_report(page.open, |report| worth(report, page.open.currency())),
        group()
            .put(section(
                "",
                "value-title",
                "What an undamaged one fetches",
                value(page),
            ))
            .put(section(
                "",
                "quotes-title",
                "Prices you were asked",
                quotes(page),
            ))
            .put(section(
                "",
                "consents-title",
                "If it were replated",
                consents(page),
            ))
            .put(fold(
                "more",
                "More: past sales, fees and routes, before and after, the most to pay",
                leaf(page, "worth"),
            ))
            .put(cautions(&named(&QUOTED)))
            .html(),
    )
}

fn value(page: Page) -> Html {
    let unit = unit(page.open.currency());
    group().p("hint", "Think of the same piece with its silver whole and nothing broken. Results of past sales are the best \
                 guide; a guess is good enough to begin with.").el(el("div", "side-by-side").put(number_field(
                    page,
                    Target::Field("market.low"),
                    ["Low", "1 in 10 would fetch less.", unit],
                )).put(number_field(
                    page,
                    Target::Field("market.likely"),
                    ["Likely", "As likely more as less.", unit],
                )).put(number_field(
                    page,
                    Target::Field("market.high"),
                    ["High", "1 in 10 would fetch more.", unit],
                ))).put(pick(
            page,
            Target::Field("market.currency"),
            [
                "Currency",
                "Only a label: nothing is converted, so keep to one.",
                "Not said",
            ],
            choices!(Currency),
        )).put(radios(
            page,
            Target::Field("market.route"),
            [
                "How would it be sold?",
                "At auction, fees come off what the buyer bids.",
                "Not said",
            ],
            choices!(SaleRoute),
        )).html()
}

fn quotes(page: Page) -> Html {
    let texts = QUOTED.iter().filter_map(|id| treatment_text(id));
    group().p("hint", "Put in only what somebody has quoted you. Without a price, a usual one is taken and the range is \
                 wide. That a price can be put in does not mean that the work is wise.").el(group().each(texts, |text| quote(page, text))).html()
}

fn quote(page: Page, text: &'static TreatmentText) -> El {
    let unit = unit(page.open.currency());
    let [likely, low, high] = ["likely", "low", "high"].map(|field| Target::Quote(text.id, field));
    // Nobody opens or shuts the box but the person, so its line says what is in it.
    let (from, to) = (low.text(page.open), high.text(page.open));
    let mut summary = "The price was a range".to_owned();
    for (word, typed) in [(" from ", from), (" to ", to)] {
        if !typed.is_empty() {
            summary = summary + word + &typed;
        }
    }
    let range = el("div", "side-by-side")
        .put(number_field(page, low, ["From", "", unit]))
        .put(number_field(page, high, ["To", "", unit]))
        .html();
    el("fieldset", "choice quote")
        .key(text.id)
        .tag("legend", text.name)
        .p("hint", text.plain)
        .put(number_field(page, likely, ["Price asked", "", unit]))
        .put(fold("", summary, range))
}

fn consents(page: Page) -> Html {
    group().p("hint", "Replating takes away what cannot be put back, so it is not even weighed for some pieces unless these \
                 hold. Tick what is so; nothing is promised by it.").put(tick(
            page,
            "consents.loss",
            ["I accept that the first silver is lost for good", ""],
        )).put(tick(
            page,
            "consents.photo",
            ["It will be photographed well before anything is done", ""],
        )).put(tick(
            page,
            "consents.disclose",
            [
                "A later buyer will be told",
                "The law may ask for it; honesty does.",
            ],
        )).put(tick(
            page,
            "consents.conservator_opinion",
            [
                "I have a conservator's opinion in writing",
                "From somebody who has seen the piece and does not sell the work.",
            ],
        )).html()
}

/// What it is worth, in three bands.
fn worth(report: &Report, currency: Currency) -> Html {
    let value = &report.value;
    let band = |band: Band| capital(&money_band(band, currency));
    let mut bands = el("dl", "bands");
    for (what, worth) in [
        ("Undamaged", value.undamaged),
        ("As it is", value.as_it_is),
        ("What a seller keeps of that", value.net_as_it_is),
    ] {
        bands = bands.tag("dt", what).el(el("dd", "").words(band(worth)));
    }
    let assumed = el("p", "hint").hidden(!value.assumed).text(
        "You have given no value, so these rest on what such pieces usually fetch. A likely value of your \
         own would narrow them.",
    );
    el("div", "")
        .tag("h2", "What it might fetch")
        .el(bands)
        .p("hint", "In 8 cases of 10 it would lie within these bounds.")
        .el(assumed)
        .p("label", value.label.get())
        .html()
}

fn unit(currency: Currency) -> &'static str {
    match currency {
        Currency::Pound => "£",
        Currency::Euro => "€",
        Currency::Dollar => "$",
        Currency::Other => "",
    }
}
