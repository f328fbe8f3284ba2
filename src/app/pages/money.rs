//! Money: what an undamaged piece fetches, the prices asked for work, and what the owner agrees to.

use leavewell_model::Report;
use leavewell_model::ledger::{TreatmentText, treatment_text};
use leavewell_model::report::Band;
use leavewell_model::terms::capital;
use leavewell_model::terms::{Currency, Route as SaleRoute};
use leavewell_pages::PageName;
use yew::prelude::*;

use super::{Page, of_report};
use crate::app::parts::blocks::loaded_page;
use crate::app::parts::cautions::{cautions, named};
use crate::app::parts::choice::{choices, pick, radios, tick};
use crate::app::parts::element::{El, el, group};
use crate::app::parts::field::number_field;
use crate::app::parts::marks::{fold, section};
use crate::app::parts::screen::screen;
use crate::app::parts::words::money_band;
use crate::app::route::Route;
use crate::app::state::Target;
use crate::app::wording::money as text;

/// The treatments that can have a quote, most often asked for first.
const QUOTED: [&str; 6] = ["T14a", "T09", "T09b", "T10a", "T03", "T17"];

/// The screen Money.
pub fn money_page(page: Page) -> Html {
    screen(
        page,
        (Route::Money, Route::Counsel),
        [text::TITLE, text::PURPOSE, text::NEXT],
        of_report(page.open, |report| worth(report, page.open.currency())),
        group()
            .put(section("", "value-title", text::VALUE, value(page)))
            .put(section("", "quotes-title", text::QUOTES, quotes(page)))
            .put(section(
                "",
                "consents-title",
                text::CONSENTS,
                consents(page),
            ))
            .put(fold("more", text::MORE, loaded_page(page, PageName::Worth)))
            .put(cautions(&named(&QUOTED)))
            .html(),
    )
}

fn value(page: Page) -> Html {
    group()
        .p("hint", text::VALUE_HINT)
        .el(el("div", "side-by-side")
            .put(amount(page, Target::Field("market.low"), text::LOW))
            .put(amount(page, Target::Field("market.likely"), text::LIKELY))
            .put(amount(page, Target::Field("market.high"), text::HIGH)))
        .put(pick(
            page,
            Target::Field("market.currency"),
            text::CURRENCY,
            choices!(Currency),
        ))
        .put(radios(
            page,
            Target::Field("market.route"),
            text::ROUTE,
            choices!(SaleRoute),
        ))
        .html()
}

fn quotes(page: Page) -> Html {
    let texts = QUOTED.iter().filter_map(|id| treatment_text(id));
    group()
        .p("hint", text::QUOTES_HINT)
        .el(group().each(texts, |text| quote(page, text)))
        .html()
}

fn quote(page: Page, text: &'static TreatmentText) -> El {
    let [likely, low, high] = ["likely", "low", "high"].map(|field| Target::Quote(text.id, field));
    // Only the person opens or closes the fold, so its summary says what is in it.
    let summary = text::price_range(&low.text(page.open), &high.text(page.open));
    let range = el("div", "side-by-side")
        .put(amount(page, low, text::FROM))
        .put(amount(page, high, text::TO))
        .html();
    el("fieldset", "choice quote")
        .key(text.id)
        .tag("legend", text.name)
        .p("hint", text.plain)
        .put(amount(page, likely, text::PRICE_ASKED))
        .put(fold("", summary, range))
}

/// A field for an amount in the currency of the piece.
fn amount(page: Page, target: Target, [label, hint]: [&str; 2]) -> Html {
    number_field(page, target, [label, hint, page.open.currency().sign()])
}

fn consents(page: Page) -> Html {
    group()
        .p("hint", text::CONSENTS_HINT)
        .put(tick(page, "consents.loss", text::LOSS))
        .put(tick(page, "consents.photo", text::PHOTO))
        .put(tick(page, "consents.disclose", text::DISCLOSE))
        .put(tick(
            page,
            "consents.conservator_opinion",
            text::CONSERVATOR,
        ))
        .html()
}

/// The value of the piece, in three bands.
fn worth(report: &Report, currency: Currency) -> Html {
    let value = &report.value;
    let band = |band: Band| capital(&money_band(band, currency));
    let mut bands = el("dl", "bands");
    for (what, worth) in [
        (text::UNDAMAGED, value.undamaged),
        (text::AS_IT_IS, value.as_it_is),
        (text::SELLER_KEEPS, value.net_as_it_is),
    ] {
        bands = bands.tag("dt", what).el(el("dd", "").words(band(worth)));
    }
    let assumed = el("p", "hint").hidden(!value.assumed).text(text::ASSUMED);
    el("div", "")
        .tag("h2", text::MIGHT_FETCH)
        .el(bands)
        .p("hint", text::BANDS)
        .el(assumed)
        .p("label", value.label.get())
        .html()
}
