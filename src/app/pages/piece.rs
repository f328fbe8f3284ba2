//! Piece: what it is, what is known about it, and what the owner wants.

use leavewell_model::Report;
use leavewell_model::ledger::treatment_text;
use leavewell_model::terms::{
    CameFrom, Doer, Form, Goal, LengthUnit, LotRule, Relation, StockStatus, WeightUnit,
};
use yew::prelude::*;

use super::{Page, of_report};
use crate::app::parts::blocks::shows_pieces;
use crate::app::parts::cautions::{cautions, display_only, named};
use crate::app::parts::choice::{choices, pick, radios, several, tick, yes_no};
use crate::app::parts::element::{button, el, group};
use crate::app::parts::field::{number_field, text_field};
use crate::app::parts::marks::{bullets, fold, press, section};
use crate::app::parts::screen::screen;
use crate::app::route::Route;
use crate::app::state::Action;
use crate::app::state::Target::Field;
use crate::app::wording::{piece as text, stock};

/// What people come to ask about.
const IN_MIND: [&str; 9] = [
    "T08", "T09", "T12", "T16", "T10a", "T14a", "T03", "T15", "T17",
];

/// The screen Piece.
pub fn piece_page(page: Page) -> Html {
    screen(
        page,
        (Route::Piece, Route::Look),
        [text::TITLE, text::PURPOSE, text::NEXT],
        begin(page),
        group()
            .put(section("", "piece-title", text::THE_PIECE, known(page)))
            .put(section("", "aim-title", text::WANTED, wanted(page)))
            .put(fold("more", stock::IN_STOCK, in_stock(page)))
            .put(cautions(&named(&IN_MIND)))
            .html(),
    )
}

fn known(page: Page) -> Html {
    group()
        .put(text_field(page, Field("piece.name"), text::NAME))
        .put(pick(page, Field("piece.form"), text::FORM, choices!(Form)))
        .put(pieces(page))
        .put(sizes(page))
        .el(shows_pieces(el("part-photos", ""), page)
            .set("case", page.open.id.clone())
            .attr("part", "piece")
            .attr("path", "piece.photos")
            .attr("name", text::WHOLE_PIECE))
        .put(made(page))
        .put(pick(
            page,
            Field("piece.came_from"),
            text::CAME_FROM,
            choices!(CameFrom),
        ))
        .put(yes_no(page, "piece.soldered_vessel", text::SOLDERED))
        .put(tick(page, "piece.rare", text::RARE))
        .put(tick(page, "piece.documented", text::DOCUMENTED))
        .html()
}

/// Length, width, height and weight, in the units that the person chose.
fn sizes(page: Page) -> Html {
    let piece = &page.open.case.piece;
    let length = match piece.length_unit {
        Some(LengthUnit::Inches) => "in",
        _ => "mm",
    };
    let weight = match piece.weight_unit {
        Some(WeightUnit::TroyOunces) => text::TROY_OUNCES,
        _ => "g",
    };
    let size = |path, [label, hint]: [&'static str; 2], unit| {
        number_field(page, Field(path), [label, hint, unit])
    };
    let fields = el("div", "side-by-side")
        .put(size("piece.height_mm", text::HEIGHT, length))
        .put(size("piece.length_mm", text::LENGTH, length))
        .put(size("piece.width_mm", text::WIDTH, length))
        .put(size("piece.weight_g", text::WEIGHT, weight));
    let units = el("div", "side-by-side")
        .put(pick(
            page,
            Field("piece.length_unit"),
            text::LENGTHS_IN,
            choices!(LengthUnit),
        ))
        .put(pick(
            page,
            Field("piece.weight_unit"),
            text::WEIGHTS_IN,
            choices!(WeightUnit),
        ));
    el("fieldset", "choice")
        .tag("legend", text::SIZE)
        .p("hint", text::SIZE_HINT)
        .el(fields)
        .put(fold("", text::UNITS, units.html()))
        .html()
}

/// What a dealer's or a workshop's book says of it.
fn in_stock(page: Page) -> Html {
    let amount = |path, [label, hint]: [&'static str; 2]| {
        number_field(
            page,
            Field(path),
            [label, hint, page.open.currency().sign()],
        )
    };
    let entered = StockStatus::ENTERED.map(|s| (s.id(), s.label())).to_vec();
    group()
        .p("hint", stock::IN_STOCK_HINT)
        .el(el("div", "side-by-side")
            .put(text_field(page, Field("stock.number"), stock::STOCK_NUMBER))
            .put(text_field(page, Field("stock.where"), stock::STOCK_PLACE))
            .put(text_field(page, Field("stock.bought_on"), stock::BOUGHT_ON)))
        .put(pick(
            page,
            Field("stock.status"),
            stock::STOCK_STATUS,
            entered,
        ))
        .el(el("div", "side-by-side")
            .put(amount("worth.paid", stock::PAID_FOR_IT))
            .put(amount("stock.asking", stock::ASKING_PRICE))
            .put(amount("stock.reserve", stock::RESERVE)))
        .put(lot(page))
        .put(tick(page, "stock.show_price", stock::SHOW_PRICE))
        .put(tick(page, "stock.show_photos", stock::SHOW_PHOTOS))
        .put(text_field(page, Field("stock.seller"), stock::SELLER))
        .html()
}

/// The lot it was bought in.
fn lot(page: Page) -> Html {
    let amount = |path, [label, hint]: [&'static str; 2]| {
        number_field(
            page,
            Field(path),
            [label, hint, page.open.currency().sign()],
        )
    };
    let fields = el("div", "side-by-side")
        .put(text_field(page, Field("lot.id"), stock::LOT_NAME))
        .put(amount("lot.price", stock::LOT_PRICE))
        .put(pick(
            page,
            Field("lot.rule"),
            stock::LOT_RULE,
            choices!(LotRule),
        ))
        .put(amount("lot.share", stock::LOT_SHARE));
    let share = el("p", "").el(button("")
        .pressed(press(page.act, Action::ShareLot))
        .text(stock::SHARE_LOT));
    let body = group().p("hint", stock::LOT_HINT).el(fields).el(share);
    fold("", stock::LOT, body.html())
}

/// How many there are, and what they are to each other.
fn pieces(page: Page) -> Html {
    let relation = page.open.draft.text("pieces.relation");
    let counted = !page.open.draft.text("pieces.count").is_empty();
    let several = matches!(relation.as_str(), "set" | "alike");
    el("div", "side-by-side")
        .put(pick(
            page,
            Field("pieces.relation"),
            text::RELATION,
            choices!(Relation),
        ))
        .el(el("div", "").hidden(!several && !counted).put(number_field(
            page,
            Field("pieces.count"),
            text::HOW_MANY,
        )))
        .html()
}

fn made(page: Page) -> Html {
    let years = el("div", "side-by-side")
        .put(number_field(
            page,
            Field("piece.from_year"),
            text::NOT_BEFORE,
        ))
        .put(number_field(page, Field("piece.to_year"), text::NOT_AFTER));
    el("fieldset", "choice")
        .tag("legend", text::MADE)
        .p("hint", text::MADE_HINT)
        .el(years)
        .html()
}

fn wanted(page: Page) -> Html {
    group()
        .put(radios(page, Field("aim.goal"), text::GOAL, choices!(Goal)))
        .put(several(
            page,
            Field("aim.asked"),
            text::IN_MIND,
            IN_MIND
                .iter()
                .filter_map(|id| treatment_text(id))
                .map(|text| (text.id, text.name))
                .collect(),
        ))
        .put(tick(page, "aim.food", text::FOOD))
        .put(tick(page, "aim.store_food", text::FOOD_STANDS))
        .put(tick(
            page,
            "aim.household_child_or_pregnant",
            text::CHILD_OR_PREGNANT,
        ))
        .put(tick(page, "aim.dishwasher", text::DISHWASHER))
        .put(tick(page, "aim.damp", text::DAMP))
        .put(tick(page, "aim.loan", text::LOAN))
        .put(tick(page, "aim.assume_lead", text::ASSUME_LEAD))
        .put(text_field(page, Field("aim.until"), text::UNTIL))
        // Said at once where food is wanted; elsewhere it waits for the counsel.
        .el(el("div", "")
            .hidden(page.open.draft.flag("aim.food") != Some(true))
            .put(of_report(page.open, display_only)))
        .put(radios(page, Field("aim.doer"), text::DOER, choices!(Doer)))
        .html()
}

/// The column beside the first questions, for a newcomer.
fn begin(page: Page) -> Html {
    let looks = |report: &Report| {
        let looks = report.identity.next_looks.iter().take(3);
        bullets(looks.map(|look| look.title.get().into()).collect())
    };
    el("div", "")
        .tag("h2", text::HOW_THIS_GOES_ON)
        .p("", text::THE_WAY)
        .p("", text::LOOKS_THAT_TELL_MOST)
        .put(of_report(page.open, looks))
        .html()
}
