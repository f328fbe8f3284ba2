//! Money: what an undamaged piece fetches, the prices asked for work, and what the owner agrees to.

use leavewell_model::Report;
use leavewell_model::ledger::{TreatmentText, treatment_text, treatment_texts};
use leavewell_model::report::Band;
use leavewell_model::terms::{Covers, Currency, Route as SaleRoute, SellAs, all_of, capital};
use leavewell_pages::PageName;
use leavewell_pages::learning::SoldPiece;
use yew::prelude::*;

use super::{Page, of_report};
use crate::app::parts::blocks::loaded_page;
use crate::app::parts::cautions::{cautions, named};
use crate::app::parts::choice::{choices, pick, radios, several, tick, tick_at};
use crate::app::parts::element::{El, button, el, group};
use crate::app::parts::field::{number_field, trouble};
use crate::app::parts::marks::{fold, press, section};
use crate::app::parts::screen::screen;
use crate::app::parts::words::{joined, money_band};
use crate::app::platform::page::focus_on;
use crate::app::route::Route;
use crate::app::state::{Action, Target};
use crate::app::wording::{learning as learning_text, money as text};

/// What quotes are asked for most, in the order people ask.
const OFTEN: [&str; 8] = ["T08", "T12", "T09", "T16", "T14a", "T10a", "T03", "T17"];

/// Where quotes stand in the record.
const LIST: &str = "quotes";

/// The screen Money.
pub fn money_page(page: Page) -> Html {
    screen(
        page,
        (Route::Money, Route::Counsel),
        [text::TITLE, text::PURPOSE, text::NEXT],
        of_report(page.open, |report| worth(report, page.open.currency())),
        group()
            .put(section("", "value-title", text::VALUE, value(page)))
            .el(own_sales(page))
            .put(section("", "quotes-title", text::QUOTES, quotes(page)))
            .put(section(
                "",
                "consents-title",
                text::CONSENTS,
                consents(page),
            ))
            .put(law_of_sale(page))
            .put(fold("more", text::MORE, loaded_page(page, PageName::Worth)))
            .put(cautions(&named(&named_here(page))))
            .html(),
    )
}

fn value(page: Page) -> Html {
    let several = page.open.case.pieces.are_several();
    let apart = el("div", "").hidden(!several).put(radios(
        page,
        Target::Field("pieces.sell"),
        text::SELL_AS,
        choices!(SellAs),
    ));
    group()
        .p("hint", text::VALUE_HINT)
        .el(el("p", "hint").hidden(!several).text(text::OF_ALL))
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
        .el(apart)
        .html()
}

/// Most own sales that are offered.
const MOST_SALES: usize = 8;

/// Sold pieces of the same form, to be used as prices of like pieces.
fn own_sales(page: Page) -> El {
    let learning = page.state.lessons.learning.as_deref();
    let form = page.open.draft.text("piece.form");
    let draft = &page.open.draft;
    let used: Vec<String> = (0..draft.count("comparables"))
        .map(|place| Target::Entry("comparables", place, "of").text(page.open))
        .collect();
    let invented = page.state.lessons.invented;
    let sales: Vec<&SoldPiece> = learning
        .filter(|_| !invented && !form.is_empty())
        .map_or(&[][..], |learning| &learning.sales)
        .iter()
        .filter(|sale| sale.form == form && sale.id != page.open.id && !used.contains(&sale.id))
        .take(MOST_SALES)
        .collect();
    let list = el("ul", "pulling").each(&sales, |sale| {
        let use_it = button("quiet")
            .set("aria-label", learning_text::use_sale_of(&sale.name))
            .pressed(press(page.act, Action::UseSale(sale.fields.clone())))
            .text(learning_text::USE_SALE);
        el("li", "")
            .key(&sale.id)
            .el(el("strong", "").words(sale.name.clone()))
            .said("", sale.price.clone())
            .el(use_it)
    });
    el("section", "")
        .hidden(sales.is_empty())
        .tag("h2", learning_text::OWN_SALES)
        .p("hint", learning_text::OWN_SALES_HINT)
        .el(list)
}

fn quotes(page: Page) -> Html {
    let texts = OFTEN.iter().filter_map(|id| treatment_text(id));
    let draft = &page.open.draft;
    let others = (0..draft.count(LIST)).filter(|place| {
        let treatment = Target::Entry(LIST, *place, "treatment").text(page.open);
        !OFTEN.contains(&treatment.as_str())
    });
    let listed = group().each(texts, |text| quote(page, text));
    group()
        .p("hint", text::QUOTES_HINT)
        .el(group().each(others, |place| other_quote(page, place)))
        .el(el("p", "").el(button("")
            .pressed(press(page.act, Action::Add(LIST)))
            .text(text::ADD_QUOTE)))
        .p("hint", text::ADD_QUOTE_HINT)
        .el(listed)
        .html()
}

/// The quote for one treatment.
fn quote(page: Page, text: &'static TreatmentText) -> El {
    el("fieldset", "choice quote")
        .key(text.id)
        .tag("legend", text.name)
        .p("hint", text.plain)
        .put(priced(page, |field| Target::Quote(text.id, field)))
}

/// A quote for other work, or for several treatments at once.
fn other_quote(page: Page, place: usize) -> El {
    let at = |field: &'static str| Target::Entry(LIST, place, field);
    let one = at("treatment").text(page.open);
    let several_at_once = one.is_empty();
    let ticked: Vec<&str> = treatment_texts()
        .iter()
        .filter(|text| text.id == one || at("treatments").lists(page.open, text.id))
        .map(|text| text.name)
        .collect();
    let legend = match ticked[..] {
        [] => text::NEW_QUOTE.to_owned(),
        _ => all_of(&ticked),
    };
    let choices = treatment_texts()
        .iter()
        .filter(|text| text.id != "T00")
        .map(|text| (text.id, text.name))
        .collect();
    let act = page.act.clone();
    let remove = Callback::from(move |_: MouseEvent| {
        act.emit(Action::Remove(LIST, place));
        focus_on("quotes-title");
    });
    let what = el("div", "")
        .hidden(!several_at_once)
        .put(fold(
            "",
            text::what_for(ticked.len()),
            several(page, at("treatments"), text::WHAT_FOR, choices),
        ))
        .put(trouble(
            &at("treatment").id(),
            at("treatment").problem(page.open),
        ));
    el("fieldset", "choice quote")
        .key(&joined(&["quote-", &place.to_string()]))
        .el(el("legend", "").words(legend))
        .el(what)
        .put(priced(page, at))
        .el(button("").pressed(remove).text(text::REMOVE_QUOTE))
}

/// The fields of a quote: the price, and in a box to open its range and its terms.
fn priced(page: Page, at: impl Fn(&'static str) -> Target) -> Html {
    let [low, high] = [at("low"), at("high")];
    // Nobody opens or shuts the box but the person, so its line says what is in it.
    let summary = text::price_range(
        &low.text(page.open),
        &high.text(page.open),
        &at("hours").text(page.open),
    );
    let terms = group()
        .el(el("div", "side-by-side")
            .put(amount(page, low, text::FROM))
            .put(amount(page, high, text::TO))
            .put(number_field(page, at("hours"), text::HOURS))
            .put(amount(page, at("post"), text::POST)))
        .put(tick_at(page, at("post_included"), text::POST_INCLUDED))
        .put(tick_at(page, at("fixed"), text::FIXED))
        .put(pick(page, at("covers"), text::COVERS, choices!(Covers)))
        .html();
    group()
        .put(amount(page, at("likely"), text::PRICE_ASKED))
        .put(fold("", summary, terms))
        .html()
}

/// The treatments this screen names: those it asks prices for, and those in the record.
fn named_here(page: Page) -> Vec<&'static str> {
    let recorded = page.open.case.quotes.iter().flat_map(|q| &q.treatments);
    let mut all = OFTEN.to_vec();
    for treatment in recorded {
        if !all.contains(&treatment.id()) {
            all.push(treatment.id());
        }
    }
    all
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

/// What the law may ask before the piece is sold.
fn law_of_sale(page: Page) -> Html {
    let law = page.open.case.law_of_sale();
    let body = group()
        .each(&law, |words| el("p", "said-care").words(words.clone()))
        .html();
    el("div", "")
        .hidden(law.is_empty())
        .put(section("", "law-title", text::LAW, body))
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
