//! The app component: it frames every screen, and it alone carries out effects.

use std::rc::Rc;

use gloo::events::EventListener;
use leavewell_model::ledger::{LEDGER_VERSION, caution};
use leavewell_model::record::{PredictedWhen, put_status};
use leavewell_model::road::RoadQuestion;
use leavewell_model::terms::StockStatus;
use leavewell_model::{Draft, Problem};
use leavewell_pages::learning::LearningQuestion;
use leavewell_pages::sheet_text::{Form, Recipient};
use leavewell_pages::stock_table::{MOST_BYTES, TableQuestion, decode};
use leavewell_worker::ask::{Ask, Question, Reply};
use yew::prelude::*;

use super::examples::{EXAMPLES, WORKED};
use super::kept_walk::{text_of, walk_in};
use super::pages::bench::{bench_page, closer_page, treatments_page};
use super::pages::condition::condition_page;
use super::pages::counsel::counsel_page;
use super::pages::figures::figures_page;
use super::pages::guide::guide_page;
use super::pages::learning::learning_page;
use super::pages::look::look_page;
use super::pages::money::money_page;
use super::pages::piece::piece_page;
use super::pages::plan::plan_page;
use super::pages::road::road_page;
use super::pages::sheet::{done_page, sheet_page};
use super::pages::shelf::{START_FORM, START_NAME, shelf_page};
use super::pages::stock::SEARCH;
use super::pages::stock::paper::{labels_page, list_page};
use super::pages::stock::quick::{FIRST, next_piece, typed_piece};
use super::pages::stock::table::table_page;
use super::pages::{Page, line};
use super::parts::choice::{option, tick_as};
use super::parts::element::{El, button, el, group};
use super::parts::field::typed;
use super::parts::locale::{Locale, by_locale};
use super::parts::marks::press;
use super::parts::places::places;
use super::parts::terms::explain;
use super::platform::{clock, file, locale, page, store, worker};
use super::reader::Reader;
use super::route::Route;
use super::state::{
    Action, AdvisedPiece, Effect, Lessons, Likeness, LoadedPage, Notice, Open, SaveState,
    ShelfLine, State, TableIn, Target, Theme, update,
};
use super::stock_book::{BookChange, Layout, StockBook};
use super::wording::{keeping, shell as text, stock};
use crate::app::parts::words::joined;

/// What several pieces are stored together for, as the store reports it.
const TABLE: &str = "table";
const CHANGE: &str = "change";
const LOT: &str = "lot";
const TAKEN_BACK: &str = "back";
const PRICED: &str = "priced";

/// The keys of the places of a piece, in their order.
const PLACE_KEYS: [&str; 5] = ["1", "2", "3", "4", "5"];

/// How many pieces of the shelf get their advice shown together.
const SHOWN_TOGETHER: usize = 20;

/// How long the answer must stay the same before a screen reader announces it, in milliseconds.
const ANNOUNCE_AFTER_MS: u32 = 1_200;

/// The longest time a change waits for its answer before it is rendered, in milliseconds. The answer usually
/// arrives sooner than two renders take, so one render shows both.
const DRAW_AFTER_MS: u32 = 10;
/// The longest time an answer waits for the pages that belong to it, in milliseconds.
const DRAW_ANSWER_AFTER_MS: u32 = 2;

/// The app as one component. Everything it shows is a function of its state, which only [`update`] changes.
pub struct App {
    state: State,
    /// How the browser writes days and numbers.
    locale: Locale,
    route: Route,
    act: Callback<Action>,
    effect: Callback<Effect>,
    /// The screen rendered last, and its piece.
    shown: String,
    /// Whether a part was chosen whose questions are not drawn yet.
    part_chosen: bool,
    /// The current live answer.
    line: String,
    /// The current file reader. Dropping it would stop it, so the app keeps it until the next one.
    reading: Option<file::Reading>,
    /// The timer that announces the answer.
    announcing: Option<clock::Wait>,
    /// The newest question on each topic, with its generation.
    asked: Vec<(Ask, u32)>,
    /// The topics without an answer yet.
    awaited: Vec<u32>,
    /// The piece on the shelf that a worker is asked about, and those it has answered since they were shown.
    advising: Option<String>,
    advised: Vec<AdvisedPiece>,
    /// The pieces on which no advice could be had.
    unadvised: Vec<String>,
    /// The pieces last changed together: key, record before, and text after.
    changed: Vec<(String, Draft, String)>,
    /// Those of them that were put up for sale and of which nothing is frozen yet, the one asked about first.
    to_price: Vec<String>,
    /// The number of the newest question about them.
    price_turn: u32,
    /// Those whose frozen figures are not stored yet: key, record before, and record with them.
    priced: Vec<(String, String, Draft)>,
    /// How many records the lot has whose price was last shared out.
    in_lot: usize,
    /// Whether several pieces are being stored together.
    storing: bool,
    /// The timer that renders a change whose answer is late.
    drawing: Option<clock::Wait>,
    _addresses: Option<EventListener>,
    _keys: Option<EventListener>,
    _answers: Option<EventListener>,
    _puts: Option<EventListener>,
    _stored: Option<EventListener>,
    _tests: Option<EventListener>,
}

/// The messages to the app.
pub enum Msg {
    /// An action changes the state.
    Act(Action),
    /// A request for an effect.
    Effect(Effect),
    /// The address names another screen.
    Go(Route),
    /// The answer has stayed the same long enough to announce it.
    ReadOut,
    /// A change has waited long enough to be rendered.
    Draw,
    /// A message from a worker.
    Worker(worker::Message),
    /// An event of the store.
    Store(store::Event),
    /// A key was pressed while no field had the focus.
    Key(String),
}

impl Component for App {
    type Message = Msg;
    type Properties = ();

    fn create(ctx: &Context<Self>) -> Self {
        let link = ctx.link();
        let going = link.callback(Msg::Go);
        let received = link.callback(Msg::Worker);
        let stored = link.callback(Msg::Store);
        let pressed = link.callback(Msg::Key);
        let put = link.callback(|(path, text)| Msg::Act(Action::Put(path, text)));
        let app = Self {
            state: stored_state(),
            locale: locale::locale(),
            route: page::route(),
            act: link.callback(Msg::Act),
            effect: link.callback(Msg::Effect),
            shown: String::new(),
            part_chosen: false,
            line: String::new(),
            reading: None,
            announcing: None,
            asked: Vec::new(),
            awaited: Vec::new(),
            advising: None,
            advised: Vec::new(),
            unadvised: Vec::new(),
            storing: false,
            changed: Vec::new(),
            to_price: Vec::new(),
            price_turn: 0,
            priced: Vec::new(),
            in_lot: 0,
            drawing: None,
            _addresses: page::on_route(move |route| going.emit(route)),
            _keys: page::on_key(move |key| pressed.emit(key)),
            _answers: worker::on_message(move |message| received.emit(message)),
            _puts: page::on_put(move |path, text| put.emit((path, text))),
            _stored: store::on_event(move |event| stored.emit(event)),
            _tests: page::stops_when_tested(),
        };
        page::set_theme(app.state.theme);
        app.note_open();
        app
    }

    fn update(&mut self, ctx: &Context<Self>, msg: Msg) -> bool {
        let action = match msg {
            Msg::Act(action) => Some(action),
            Msg::Effect(Effect::ReadFigures(chosen)) => {
                self.read(chosen, |text, act| {
                    act.emit(Action::TakeFigures(text.to_owned()));
                });
                None
            }
            Msg::Effect(Effect::ReadTable(chosen)) => {
                self.read_table(chosen);
                None
            }
            Msg::Key(key) => return self.shortcut(&key),
            Msg::Effect(Effect::SaveSheet(recipient, form)) => {
                self.ask_for(&[Ask::Sheet { recipient, form }]);
                None
            }
            Msg::Store(store::Event::PlanAsked(question)) => {
                // Plans do not depend on the open record, and only the newest question counts.
                worker::ask(&Ask::Plan.into(), 0, &question);
                None
            }
            Msg::Effect(effect) => {
                self.carry_out(effect);
                None
            }
            Msg::Go(route) => {
                let changed = route != self.route;
                self.route = route;
                return changed;
            }
            Msg::Draw => return true,
            Msg::ReadOut => Some(Action::ReadOut(self.line.clone())),
            Msg::Store(event) => {
                self.storing &= !matches!(event, store::Event::Together { .. });
                self.stored(event)
            }
            Msg::Worker(message) => self.received(message),
        };
        let Some(action) = action else { return false };
        let wait = longest_wait(&action);
        self.take(action) && self.draws_now(ctx, wait)
    }

    fn view(&self, _: &Context<Self>) -> Html {
        let Self {
            state,
            route,
            act,
            effect,
            ..
        } = self;
        let page = state.open.as_deref().map(|open| Page { state, open, act });
        let mut place = match (route, page) {
            (Route::Shelf, _) => shelf_page(state, act, effect),
            (Route::StockTable, _) => table_page(state, act, effect),
            (Route::Labels, _) => labels_page(state, effect),
            (Route::StockList, _) => list_page(state, effect),
            (Route::Plan, _) => plan_page(&state.planned),
            (Route::Learning, _) => learning_page(&state.lessons, act, effect),
            (Route::Guide, _) => guide_page(&state.guide, state.guide_piece.as_deref()),
            (_, None) => nothing_open(),
            (Route::Road(question), Some(page)) => road_page(page, *question),
            (Route::Piece, Some(page)) => piece_page(page),
            (Route::Look, Some(page)) => look_page(page),
            (Route::Condition, Some(page)) => condition_page(page),
            (Route::Money, Some(page)) => money_page(page),
            (Route::Counsel, Some(page)) => counsel_page(page),
            (Route::Treatments, Some(page)) => treatments_page(page),
            (Route::Closer, Some(page)) => closer_page(page),
            (Route::Bench, Some(page)) => bench_page(page),
            (Route::Sheet(recipient), Some(page)) => sheet_page(page, *recipient, effect),
            (Route::Done, Some(page)) => done_page(page),
            (Route::Figures, Some(page)) => figures_page(page, effect),
        };
        by_locale(&mut place, &self.locale);
        explain(&mut place);
        let skip = Callback::from(|event: MouseEvent| {
            event.prevent_default();
            page::focus_heading();
        });
        let skip = el("a", "skip")
            .attr("href", route.href())
            .pressed(skip)
            .text(text::SKIP);
        let brand = el("a", "brand")
            .attr("href", Route::Shelf.href())
            .text(text::NAME);
        let mut holder = el("div", "places-holder");
        if let Some(page) = page.filter(|_| route.is_of_a_piece() && !route.is_of_the_road()) {
            holder = holder.put(places(page.open, *route));
        }
        let on_a_piece = page.filter(|_| route.is_of_a_piece());
        let place = el("div", "place").key(&self.screen()).put(place);
        group()
            .el(skip)
            .el(el("header", "top").el(brand).el(steps(
                on_a_piece.is_some(),
                state.history.can(),
                act,
            )))
            .put(notices(state, act, effect))
            .el(el("kept-notices", ""))
            .el(el("p", "")
                .attr("data-said", "true")
                .hidden(true)
                .words(state.read_out.clone()))
            .el(holder)
            .el(el("main", "").attr("id", "main").el(place))
            .put(foot(state, on_a_piece.map(|page| page.open), act))
            .html()
    }

    fn rendered(&mut self, ctx: &Context<Self>, first: bool) {
        self.drawing = None;
        let open = self.state.open.as_deref();
        page::set_title(&title(self.route, open));
        let answer = open.map(|open| line(self.route, open)).unwrap_or_default();
        let screen = self.screen();
        if screen != self.shown {
            if matches!(self.route, Route::Learning | Route::Money) || self.is_to_learn_anew(first)
            {
                self.ask_lessons();
            }
            if self.route == Route::Guide {
                worker::ask(&Ask::Guide.into(), 0, WORKED.text);
            }
            // A screen reader reads the answer of a new screen in its place on the page.
            self.announcing = None;
            self.act.emit(Action::ReadOut(String::new()));
            let moved = !screen.starts_with(self.shown_route());
            self.shown = screen;
            // At the start the focus stays at the top of the page.
            if moved && !first {
                page::focus_heading();
            }
            page::shown();
        } else if std::mem::take(&mut self.part_chosen) {
            page::part_chosen();
        } else if answer != self.line {
            let link = ctx.link().clone();
            self.announcing = Some(clock::after(ANNOUNCE_AFTER_MS, move || {
                link.send_message(Msg::ReadOut);
            }));
        }
        self.line = answer;
        self.ask();
        self.advise_next();
    }
}

impl App {
    /// Whether what holds has to be learnt anew: at the start, and when a screen is left on which a piece
    /// may have been closed.
    fn is_to_learn_anew(&self, first: bool) -> bool {
        let on = self.state.lessons.on;
        (on.prices || on.works) && (first || self.shown_route().trim_end() == Route::Done.href())
    }

    /// Applies an action and stores its changes on this device. Returns whether anything changed.
    fn take(&mut self, action: Action) -> bool {
        let answered = matches!(action, Action::Answered(..));
        let stepped = match action {
            Action::Undo => text::UNDONE,
            Action::Redo => text::REDONE,
            _ => "",
        };
        let before = self.state.open.clone().filter(|_| !stepped.is_empty());
        let chosen = matches!(action, Action::SelectPart(_));
        let advised: Vec<String> = match &action {
            Action::Advised(pieces) => pieces.iter().map(|piece| piece.id.clone()).collect(),
            _ => Vec::new(),
        };
        if let Action::Typed(Target::Field(path), text) = &action {
            store::keep_beginning(path, text);
        }
        let event = action.event();
        if matches!(action, Action::Learn) {
            self.ask_lessons();
        }
        if matches!(action, Action::ShareLot) {
            self.ask_lot();
        }
        let next = update(&self.state, action);
        let changed = next.is_some_and(|next| {
            self.turn_into(next);
            true
        });
        for id in &advised {
            let shown = self.state.shelf.iter().find(|line| line.id == *id);
            // From the record as it is stored now; the shelf may be about to change.
            if let (Some(shown), Some(draft)) = (shown, Self::stored_draft(id)) {
                store::keep_entry(&shown.advice_for(&draft));
            }
        }
        if let (true, Some(before), Some(now)) = (changed, &before, &self.state.open) {
            store::say_undone(stepped, &before.draft.to_json(), &now.draft.to_json());
        }
        self.part_chosen |= chosen;
        if let Some(event) = event {
            self.freeze(event);
        }
        if answered {
            let question = self.state.next_question();
            page::go(question.map_or(Route::Counsel, Route::Road));
        }
        changed
    }

    /// Takes a new state over and stores what changed on this device.
    fn turn_into(&mut self, next: State) {
        let before = std::mem::replace(&mut self.state, next);
        if before.theme != self.state.theme {
            page::set_theme(self.state.theme);
            store::keep_theme(self.state.theme);
        }
        if before.book.layout != self.state.book.layout {
            store::keep_layout(self.state.book.layout);
        }
        if before.has_no_shortcuts != self.state.has_no_shortcuts {
            store::keep_shortcuts(!self.state.has_no_shortcuts);
        }
        self.ask_about_table(&before);
        if before.reader != self.state.reader {
            store::keep_reader(self.state.reader);
        }
        let mark = |state: &State| state.open.as_ref().map(|open| open.generation);
        let (known, lessons) = (&before.lessons, Rc::clone(&self.state.lessons));
        if (known.on, known.invented) != (lessons.on, lessons.invented) {
            self.ask_lessons();
        }
        if (known.on, &known.taught) != (lessons.on, &lessons.taught) {
            store::keep_teaching(lessons.on, &lessons.taught);
        }
        if known.taught != lessons.taught {
            // Every answer so far was given with other figures.
            self.asked.clear();
            self.awaited.clear();
        }
        if before.opened_at == self.state.opened_at && before.walk != self.state.walk {
            let id = self.state.open.as_ref().map_or("", |open| &open.id);
            store::keep_walk(id, &text_of(&self.state.walk));
        }
        if before.opened_at != self.state.opened_at {
            if let Some(open) = &self.state.open {
                let walk = walk_in(&store::walk(&open.id), &open.case);
                // A new piece may have its first answer on the way already.
                if !walk.is_empty() {
                    self.act.emit(Action::Walked(walk));
                }
            }
            self.note_open();
            // It may have been put up for sale together with others.
            let open = self.state.open.as_ref();
            let for_sale =
                open.is_some_and(|open| open.case.stock.status == Some(StockStatus::ForSale));
            if for_sale {
                self.freeze(PredictedWhen::Offered);
            }
        }
        // First, so that the worker computes in the meantime.
        self.ask();
        self.ask_moved(&before);
        if mark(&before) != mark(&self.state) {
            self.keep();
        } else if !Rc::ptr_eq(&before.shelf, &self.state.shelf)
            && let Some(entry) = self.open_entry()
        {
            store::keep_entry(entry);
        }
    }

    /// Whether to render a change now: if it may not wait, or if every question is answered. Otherwise it is
    /// rendered with the next answer, or after `wait` milliseconds; a shorter wait replaces a longer one.
    fn draws_now(&mut self, ctx: &Context<Self>, wait: u32) -> bool {
        if wait == 0 || self.awaited.is_empty() {
            return true;
        }
        if self.drawing.is_none() || wait < DRAW_AFTER_MS {
            let link = ctx.link().clone();
            let drawn = move || link.send_message(Msg::Draw);
            self.drawing = Some(clock::after(wait, drawn));
        }
        false
    }

    /// Requests the report and whatever else this screen shows, unless already requested.
    fn ask(&mut self) {
        let Some(open) = self.state.open.as_ref() else {
            return;
        };
        if !self.route.is_of_a_piece() {
            return;
        }
        let turn = open.generation;
        let asks = [Ask::Report]
            .into_iter()
            .chain(self.route.asks().iter().copied());
        let fresh: Vec<Ask> = asks
            .filter(|ask| !self.asked.contains(&(*ask, turn)))
            .collect();
        if fresh.is_empty() {
            return;
        }
        self.ask_for(&fresh);
    }

    /// Requests what is expected of the open piece, unless that is frozen or the piece has ended.
    fn freeze(&mut self, event: PredictedWhen) {
        let open = self.state.open.as_ref();
        let due = open.is_some_and(|open| {
            !open.draft.has_predicted(event) && open.case.closed.outcome.is_none()
        });
        if due {
            self.ask_for(&[match event {
                PredictedWhen::Agreed => Ask::ExpectedWhenAgreed,
                PredictedWhen::Offered => Ask::ExpectedWhenOffered,
            }]);
        }
    }

    /// Requests what the closed pieces on the shelf teach.
    fn ask_lessons(&self) {
        let lessons = &self.state.lessons;
        let pieces = if lessons.invented {
            Vec::new()
        } else {
            let keys = self.state.shelf.iter().map(|entry| entry.id.clone());
            keys.filter_map(|id| store::case_text(&id).map(|text| (id, text)))
                .collect()
        };
        let question = LearningQuestion {
            today: clock::today(),
            prices: lessons.on.prices,
            works: lessons.on.works,
            example: lessons.invented,
            pieces,
        };
        let text = serde_json::to_string(&question).unwrap_or_default();
        worker::ask(&Ask::Learning.into(), 0, &text);
    }

    /// Asks for the price of the open piece's lot, shared out over every record that is in it.
    fn ask_lot(&self) {
        let Some(open) = &self.state.open else { return };
        let others = self.state.shelf.iter().filter(|line| line.id != open.id);
        let stored = others.filter_map(|line| Some((line.id.clone(), store::case_text(&line.id)?)));
        let own = (open.id.clone(), open.draft.to_json());
        let pieces: Vec<(String, String)> = stored.chain([own]).collect();
        let question = serde_json::to_string(&(&open.case.lot.id, pieces));
        worker::ask(&Ask::ShareLot.into(), 0, &question.unwrap_or_default());
    }

    /// Writes what each record of a lot was bought for: into the open piece, and into the others together.
    /// Says so once the others are stored; at once if there are none.
    fn put_lot(&mut self, shares: Vec<(String, String)>) -> Option<String> {
        let own = self.state.open.as_ref().map(|open| open.id.clone());
        self.in_lot = shares.len();
        let mut others = Vec::new();
        for (id, paid) in shares {
            if Some(&id) == own.as_ref() {
                self.act
                    .emit(Action::Typed(Target::Field("worth.paid"), paid));
            } else if let Some(mut draft) = Self::stored_draft(&id) {
                draft.set("worth.paid", &paid);
                let before = self.state.shelf.iter().find(|line| line.id == id);
                others.push((id, draft, before.cloned()));
            }
        }
        self.keep_together(LOT, others);
        (!self.storing).then(|| stock::lot_shared(self.in_lot))
    }

    /// Requests the answer with an input moved, if the person has moved one.
    fn ask_moved(&mut self, before: &State) {
        let moving = |state: &State| state.open.as_ref().and_then(|open| open.moving);
        let now = moving(&self.state).filter(|_| moving(before) != moving(&self.state));
        if let Some((input, steps)) = now {
            self.ask_for(&[Ask::Moved { input, steps }]);
        }
    }

    /// Asks what the table holds, if another one was chosen or a column was matched anew.
    fn ask_about_table(&self, before: &State) {
        let question = |state: &State| state.table.as_ref().map(|table| table.question.clone());
        let Some(now) = question(&self.state) else {
            return;
        };
        let is_read = self
            .state
            .table
            .as_ref()
            .and_then(|table| table.preview.as_ref())
            .is_some_and(|preview| preview.columns == now.columns);
        if question(before).as_ref() != Some(&now) && !is_read {
            let text = serde_json::to_string(&now).unwrap_or_default();
            worker::ask(&Ask::ReadTable.into(), 0, &text);
        }
    }

    /// Reads a table that a person chose.
    fn read_table(&mut self, chosen: web_sys::File) {
        let act = self.act.clone();
        let name = chosen.name();
        let done = move |bytes: Result<Vec<u8>, Problem>| match bytes.map(|bytes| decode(&bytes)) {
            Ok(Some((text, encoding))) => act.emit(Action::TableChosen(Box::new(TableIn {
                name: name.clone(),
                question: TableQuestion {
                    text,
                    encoding,
                    columns: Vec::new(),
                    asked_on: clock::today(),
                },
                preview: None,
                failure: None,
            }))),
            Ok(None) => tell(file::trouble(stock::NO_TEXT), None, &act),
            Err(fault) => tell(fault, None, &act),
        };
        match file::read_bytes(chosen, MOST_BYTES, stock::TOO_LARGE, done) {
            Ok(reading) => self.reading = Some(reading),
            Err(fault) => tell(fault, None, &self.act),
        }
    }

    /// Does what a shortcut stands for. Returns whether anything on the page changes.
    fn shortcut(&mut self, key: &str) -> bool {
        if self.state.has_no_shortcuts {
            return false;
        }
        let on_shelf = self.route == Route::Shelf;
        match key {
            "?" => page::focus_on("shortcuts"),
            "s" => page::go(Route::Shelf),
            "/" | "n" if !on_shelf => page::go(Route::Shelf),
            "/" => page::focus_field(SEARCH),
            "n" => page::focus_field(FIRST),
            "t" if on_shelf => {
                let other = match self.state.book.layout {
                    Layout::Cards => Layout::Table,
                    Layout::Table => Layout::Cards,
                };
                return self.take(Action::Book(BookChange::Lay(other)));
            }
            _ if self.state.open.is_some() => {
                let place = PLACE_KEYS.iter().position(|place| *place == key);
                let place = place.and_then(|at| Route::PLACES.get(at));
                if let Some(route) = place.and_then(|(_, screens)| screens.first()) {
                    page::go(*route);
                }
            }
            _ => {}
        }
        false
    }

    /// Stores several changed or new pieces together.
    fn keep_together(&mut self, what: &str, pieces: Vec<(String, Draft, Option<ShelfLine>)>) {
        let all: Vec<(String, String, ShelfLine)> = pieces
            .into_iter()
            .map(|(id, draft, before)| {
                let line = before.map_or_else(
                    || ShelfLine::of_draft(&id, &draft),
                    |before| before.advice_for(&draft),
                );
                (id, draft.to_json(), line)
            })
            .collect();
        self.storing = !all.is_empty();
        if self.storing {
            store::keep_together(what, &all);
        }
    }

    /// The stored piece with this key, if it can be read.
    fn stored_draft(id: &str) -> Option<Draft> {
        Draft::parse(&store::case_text(id)?).ok()
    }

    /// Asks the workers these questions about the open piece in its current state.
    fn ask_for(&mut self, asks: &[Ask]) {
        let Some(open) = &self.state.open else { return };
        let (generation, record) = (open.generation, open.draft.to_json());
        for ask in asks {
            let question = Question::with_taught(*ask, &self.state.lessons.taught);
            worker::ask(&question, generation, &record);
            let topic = ask.topic();
            self.asked.retain(|(asked, _)| asked.topic() != topic);
            self.asked.push((*ask, generation));
            if !self.awaited.contains(&topic) {
                self.awaited.push(topic);
            }
        }
    }

    /// Asks what is expected of the next piece that was put up for sale together with others; stores what is frozen
    /// of those before it once there are enough, or none is left.
    fn price_next(&mut self) {
        if self.to_price.is_empty() || self.priced.len() >= SHOWN_TOGETHER {
            let as_asked = |(id, text, _): &(String, String, Draft)| {
                store::case_text(id).as_ref() == Some(text)
            };
            let mut pieces = Vec::new();
            // What was changed since is frozen when it is next opened.
            for (id, _, draft) in std::mem::take(&mut self.priced)
                .into_iter()
                .filter(as_asked)
            {
                for (_, _, left) in self.changed.iter_mut().filter(|(of, ..)| *of == id) {
                    *left = draft.to_json();
                }
                let line = self.state.shelf.iter().find(|line| line.id == id);
                let line = line.cloned();
                pieces.push((id, draft, line));
            }
            if !pieces.is_empty() {
                self.keep_together(PRICED, pieces);
                return;
            }
        }
        while let Some(id) = self.to_price.first() {
            if let Some(text) = store::case_text(id) {
                let taught = &self.state.lessons.taught;
                let question = Question::with_taught(Ask::ExpectedOfStock, taught);
                self.price_turn += 1;
                worker::ask(&question, self.price_turn, &text);
                return;
            }
            self.to_price.remove(0);
        }
    }

    /// Freezes what is expected of the piece that was asked about.
    fn priced_one(&mut self, answer: Result<Reply, String>) {
        if self.to_price.is_empty() {
            return;
        }
        let id = self.to_price.remove(0);
        if let Ok(Reply::Pairs(mut fields)) = answer
            && let Some(text) = store::case_text(&id)
            && let Ok(mut draft) = Draft::parse(&text)
        {
            fields.push(("on".to_owned(), clock::today()));
            draft.freeze(PredictedWhen::Offered, &fields);
            self.priced.push((id, text, draft));
        }
        self.price_next();
    }

    /// While the shelf is shown, asks for advice on the next piece that has none.
    fn advise_next(&mut self) {
        if self.advising.is_some() || self.storing || self.route != Route::Shelf {
            return;
        }
        let waits = |line: &&ShelfLine| {
            line.answer.is_empty()
                && line.unreadable.is_none()
                && !self.unadvised.contains(&line.id)
                && !self.advised.iter().any(|piece| piece.id == line.id)
        };
        let Some(line) = self.state.shelf.iter().find(waits) else {
            return;
        };
        let id = line.id.clone();
        match store::case_text(&id) {
            Some(text) => {
                worker::ask(&Ask::Line.into(), 0, &text);
                self.advising = Some(id);
            }
            None => self.unadvised.push(id),
        }
    }

    /// Takes the advice on a piece of the shelf. Several are shown and stored at once.
    fn advised_on(&mut self, news: worker::News) -> Option<Action> {
        let worker::News::Answered(answer) = news else {
            return None;
        };
        let id = self.advising.take()?;
        match answer {
            Ok(Reply::Line {
                kind,
                sentence,
                steps,
                most,
            }) => self.advised.push(AdvisedPiece {
                id,
                kind,
                sentence,
                steps,
                most,
            }),
            _ => self.unadvised.push(id),
        }
        self.advise_next();
        if self.advising.is_some() && self.advised.len() < SHOWN_TOGETHER {
            return None;
        }
        Some(Action::Advised(std::mem::take(&mut self.advised)))
    }

    /// The action for a worker's message, if any.
    #[allow(clippy::too_many_lines)] // one arm a question
    fn received(&mut self, message: worker::Message) -> Option<Action> {
        let worker::Message {
            topic,
            generation,
            news,
        } = message;
        if topic == Ask::Line.topic() {
            return self.advised_on(news);
        }
        if topic == Ask::ReadTable.topic() {
            let worker::News::Answered(answer) = news else {
                return None;
            };
            return Some(Action::TableRead(answer.and_then(|answer| match answer {
                Reply::Table(preview) => Ok(preview),
                Reply::Refused(why) => Err(why),
                _ => Err(other_answer()),
            })));
        }
        if topic == Ask::ExpectedOfStock.topic() {
            if let worker::News::Answered(answer) = news
                && generation == self.price_turn
            {
                self.priced_one(answer);
            }
            return None;
        }
        if topic == Ask::WriteTable.topic() {
            match news {
                worker::News::Working(_) => {}
                worker::News::Answered(Ok(Reply::TableText(text))) => {
                    let name = joined(&["stock-", &clock::today(), ".csv"]);
                    save(&name, text, &self.act);
                }
                worker::News::Answered(answer) => {
                    let why = answer.err().unwrap_or_else(other_answer);
                    tell(file::trouble([stock::NOT_WRITTEN, &why]), None, &self.act);
                }
            }
            return None;
        }
        if topic == Ask::ShareLot.topic() {
            let what = match news {
                worker::News::Answered(Ok(Reply::Pairs(shares))) => self.put_lot(shares)?,
                worker::News::Answered(Ok(Reply::Refused(why)) | Err(why)) => why,
                _ => return None,
            };
            return Some(Action::Tell(Notice::plain(what)));
        }
        if topic == Ask::Plan.topic() {
            return match news {
                worker::News::Answered(Ok(Reply::Page(blocks))) => Some(Action::Planned(blocks)),
                // The plan's script asks the same question and reports its errors.
                _ => None,
            };
        }
        if topic == Ask::Guide.topic() {
            return match news {
                worker::News::Answered(Ok(Reply::Guide(report, blocks))) => {
                    let draft = Draft::parse(WORKED.text).unwrap_or_default();
                    let mut piece = Open::new(String::new(), draft);
                    piece.weighed.report = Some(Rc::new(*report));
                    Some(Action::Guided(Rc::new(piece), blocks))
                }
                // The page shows that nothing has arrived.
                _ => None,
            };
        }
        if topic == Ask::Learning.topic() {
            return match news {
                worker::News::Answered(Ok(Reply::Learning(learning))) => {
                    Some(Action::Learnt(learning))
                }
                // The page shows that nothing has arrived.
                _ => None,
            };
        }
        let known = self.asked.iter().find(|(ask, _)| ask.topic() == topic);
        let &(ask, newest) = known?;
        let answer = match (news, ask) {
            (worker::News::Working(share), Ask::Page(name)) => {
                return Some(Action::Working {
                    name,
                    generation,
                    share,
                });
            }
            (worker::News::Working(_), _) => return None,
            (worker::News::Answered(Ok(Reply::Refused(why))), _) => Err(why),
            (worker::News::Answered(answer), _) => answer,
        };
        if generation == newest {
            self.awaited.retain(|awaited| *awaited != topic);
        }
        match ask {
            Ask::Report => Some(Action::Weighed {
                generation,
                report: answer.and_then(|answer| match answer {
                    Reply::Report(report) => Ok(report),
                    _ => Err(other_answer()),
                }),
            }),
            Ask::Changes => Some(Action::Changes {
                generation,
                changes: answer.and_then(|answer| match answer {
                    Reply::Changes(changes) => Ok(changes),
                    _ => Err(other_answer()),
                }),
            }),
            Ask::Moved { .. } => match answer {
                Ok(Reply::Moved(report)) => Some(Action::Moved { generation, report }),
                _ => None,
            },
            Ask::Page(name) => Some(Action::Loaded(LoadedPage {
                name,
                generation,
                blocks: answer.and_then(|answer| match answer {
                    Reply::Page(blocks) => Ok(blocks),
                    _ => Err(other_answer()),
                }),
            })),
            Ask::Sheet { recipient, form } => {
                let text = answer.and_then(|answer| match answer {
                    Reply::Sheet(text) => Ok(text),
                    _ => Err(other_answer()),
                });
                self.save_sheet(recipient, form, text);
                None
            }
            Ask::ExpectedWhenAgreed => expected(PredictedWhen::Agreed, generation, answer),
            Ask::ExpectedWhenOffered => expected(PredictedWhen::Offered, generation, answer),
            Ask::ExpectedOfStock
            | Ask::Plan
            | Ask::Guide
            | Ask::Learning
            | Ask::ReadTable
            | Ask::WriteTable
            | Ask::Line
            | Ask::ShareLot => None,
        }
    }

    /// Offers a finished sheet as a file.
    fn save_sheet(&self, recipient: Recipient, form: Form, text: Result<String, String>) {
        match (text, &self.state.open) {
            (Ok(text), Some(open)) => {
                let ending = joined(&["-", recipient.id(), ".", form.extension()]);
                let name = file::file_name(&open.name(), &ending);
                if form != Form::Html || !store::save_page(&name, &text) {
                    save(&name, text, &self.act);
                }
            }
            (Err(why), _) => tell(
                file::trouble([
                    keeping::SHEET_NOT_WRITTEN,
                    &keeping::sheet_not_written_next(&why),
                ]),
                None,
                &self.act,
            ),
            (Ok(_), None) => {}
        }
    }

    /// Leaves a stored piece out of what is learnt, or takes it in again, and learns anew.
    fn leave_out(&self, id: &str, out: bool) {
        let word = if out { "yes" } else { "" };
        let open = self.state.open.as_ref().filter(|open| open.id == id);
        if open.is_some() {
            let put = Action::Put("closed.left_out".to_owned(), word.to_owned());
            self.act.emit(put);
        } else if let Some(entry) = self.state.shelf.iter().find(|entry| entry.id == id)
            && let Some(Ok(mut draft)) = store::case_text(id).map(|text| Draft::parse(&text))
        {
            draft.set("closed.left_out", word);
            store::keep_case(id, &draft.to_json(), entry);
        }
        // A moment later, when the record is stored.
        self.act.emit(Action::Learn);
    }

    /// Stores the open piece on this device. A [`store::Event::Kept`] reports the result later.
    fn keep(&self) {
        if let (Some(open), Some(entry)) = (&self.state.open, self.open_entry()) {
            store::keep_case(&open.id, &open.draft.to_json(), entry);
        }
    }

    /// The open piece's line on the shelf.
    fn open_entry(&self) -> Option<&ShelfLine> {
        let open = self.state.open.as_ref()?;
        self.state.shelf.iter().find(|entry| entry.id == open.id)
    }

    fn note_open(&self) {
        store::note_open(self.state.open.as_ref().map_or("", |open| &open.id));
    }

    /// The action for an event of the store, if any.
    fn stored(&mut self, event: store::Event) -> Option<Action> {
        Some(match event {
            store::Event::Undo => Action::Undo,
            store::Event::Redo => Action::Redo,
            store::Event::ShelfChanged => Action::Shelved(store::shelf()),
            store::Event::Kept { id, failure } => Action::Saved { id, failure },
            store::Event::Replaced { id, text } => Action::Replaced {
                id,
                draft: Box::new(Draft::parse(&text).ok()?),
            },
            store::Event::Together { what, failure } => match (what.as_str(), failure) {
                (_, Some(why)) => {
                    let [happened, next] = stock::NOT_STORED;
                    Action::Tell(Notice {
                        what: happened.to_owned(),
                        remedy: joined(&[next, " (", &why, ")"]),
                        rescue: None,
                        takes_back: false,
                    })
                }
                (TABLE, None) => {
                    let preview = self.state.table.as_ref().and_then(|t| t.preview.as_ref());
                    let n = preview.map_or(0, |preview| preview.pieces.len());
                    self.act.emit(Action::LeaveTable);
                    page::go(Route::Shelf);
                    Action::Tell(Notice {
                        what: stock::added(n),
                        remedy: stock::ADDED_NEXT.to_owned(),
                        rescue: None,
                        takes_back: false,
                    })
                }
                (CHANGE, None) => {
                    self.price_next();
                    Action::Tell(Notice {
                        takes_back: true,
                        ..Notice::plain(stock::changed(self.changed.len()))
                    })
                }
                (PRICED, None) => {
                    self.price_next();
                    return None;
                }
                (LOT, None) => Action::Tell(Notice::plain(stock::lot_shared(self.in_lot))),
                _ => return None,
            },
            store::Event::Open(id) => {
                open_stored(id, &self.act);
                return None;
            }
            // `update` has already passed this on to the worker.
            store::Event::PlanAsked(_) => return None,
        })
    }

    /// The key of the screen. It includes the piece, so that two pieces never share a control.
    fn screen(&self) -> String {
        let id = self.state.open.as_ref().map_or("", |open| &open.id);
        joined(&[self.route.href(), " ", id])
    }

    fn shown_route(&self) -> &str {
        self.shown.split_inclusive(' ').next().unwrap_or(" ")
    }

    /// Reads a file that a person chose and passes its text on.
    fn read(&mut self, chosen: web_sys::File, take: fn(&str, &Callback<Action>)) {
        let act = self.act.clone();
        let read = file::read(chosen, move |text| match text {
            Ok(text) => take(&text, &act),
            Err(fault) => tell(fault, None, &act),
        });
        match read {
            Ok(reading) => self.reading = Some(reading),
            Err(fault) => tell(fault, None, &self.act),
        }
    }

    /// Carries out an effect and reports the result.
    #[allow(clippy::too_many_lines)] // one arm an effect
    fn carry_out(&mut self, effect: Effect) {
        let act = &self.act;
        match effect {
            Effect::New => open_new(started(act), Route::Piece, act),
            Effect::Restore => {
                act.emit(Action::ReadAs(Reader::Restorer));
                open_new(started(act), Route::Condition, act);
            }
            Effect::Deal => {
                act.emit(Action::ReadAs(Reader::Dealer));
                page::focus_on("quick-title");
                page::focus_field(FIRST);
            }
            Effect::Ask(form) => {
                let draft = started(act);
                let form = form.or_else(|| draft.form());
                open_new(draft, Route::Road(RoadQuestion::Form), act);
                if let Some(form) = form {
                    act.emit(Action::Answered(RoadQuestion::Form, form.id()));
                }
            }
            Effect::Open(id) => open_stored(id, act),
            Effect::Example(at) => {
                if let Some(example) = EXAMPLES.get(at) {
                    take_in(example.text, act);
                }
            }
            // `update` has already handled these.
            Effect::ReadFigures(_) | Effect::ReadTable(_) | Effect::SaveSheet(..) => {}
            Effect::BeginWithOwn(own) => {
                let open = self.state.open.as_ref().filter(|_| own);
                let text = open.and_then(|open| open.draft.own_figures());
                if store::keep_figures(text.as_deref()) {
                    act.emit(Action::BeginWithOwn(text.is_some()));
                } else {
                    tell(file::trouble(keeping::FIGURES_NOT_KEPT), None, act);
                }
            }
            Effect::Print => page::print(),
            Effect::SaveFigures => {
                let own = self
                    .state
                    .open
                    .as_ref()
                    .and_then(|open| open.draft.own_figures());
                if let Some(text) = own {
                    save("figures.leavewell.json", text, act);
                }
            }
            Effect::SaveAsFile(id) => {
                let entry = self.state.shelf.iter().find(|entry| entry.id == id);
                let name = entry.map_or("", |entry| entry.name.as_str());
                match store::case_text(&id) {
                    Some(text) => save(&case_file(name), with_key(&id, text), act),
                    None => tell(gone(), None, act),
                }
            }
            Effect::LeaveOut(id, out) => self.leave_out(&id, out),
            Effect::Rescue(text) => save(&case_file("piece"), text, act),
            Effect::Delete(id) => {
                store::bin_case(&id);
                act.emit(Action::Removed(id));
                page::focus_heading();
            }
            Effect::DeleteAll(ids) => {
                for id in ids {
                    store::bin_case(&id);
                    act.emit(Action::Removed(id));
                }
                act.emit(Action::Book(BookChange::ChooseNone));
                page::focus_heading();
            }
            Effect::SetStatus(ids, status) => {
                let status = StockStatus::parse(status);
                self.changed.clear();
                let changed = ids.into_iter().filter_map(|id| {
                    let before = Self::stored_draft(&id)?;
                    let mut draft = before.clone();
                    put_status(&mut draft, status);
                    let line = self.state.shelf.iter().find(|line| line.id == id).cloned();
                    self.changed.push((id.clone(), before, draft.to_json()));
                    Some((id, draft, line))
                });
                let changed: Vec<_> = changed.collect();
                self.priced.clear();
                self.to_price = if status == Some(StockStatus::ForSale) {
                    let is_due = |draft: &Draft| !draft.has_predicted(PredictedWhen::Offered);
                    let due = changed.iter().filter(|(_, draft, _)| is_due(draft));
                    due.map(|(id, ..)| id.clone()).collect()
                } else {
                    Vec::new()
                };
                self.keep_together(CHANGE, changed);
                page::put_in("book-set-status", "");
            }
            Effect::TakeBack => {
                act.emit(Action::DismissNotice);
                // What was changed since stays as it is.
                let as_left = |(id, _, left): &(String, Draft, String)| {
                    store::case_text(id).as_deref() == Some(left)
                };
                let changed = std::mem::take(&mut self.changed);
                self.to_price.clear();
                self.priced.clear();
                let back = changed
                    .into_iter()
                    .filter(as_left)
                    .map(|(id, mut before, _)| {
                        if let Some(left) = Self::stored_draft(&id) {
                            before.keep_predicted(&left);
                        }
                        let line = self.state.shelf.iter().find(|line| line.id == id).cloned();
                        (id, before, line)
                    });
                let back = back.collect();
                self.keep_together(TAKEN_BACK, back);
            }
            Effect::SaveTogether(ids) => store::save_together(&ids),
            Effect::SaveTable(ids) => {
                let pieces = ids.iter().filter_map(|id| {
                    let line = self.state.shelf.iter().find(|line| line.id == *id)?;
                    let record = store::case_text(id)?;
                    Some(serde_json::json!({ "record": record, "advised": line.answer }))
                });
                let question = pieces.collect::<serde_json::Value>().to_string();
                worker::ask(&Ask::WriteTable.into(), 0, &question);
            }
            Effect::Another(id, likeness) => match Self::stored_draft(&id) {
                Some(draft) => {
                    let another = match likeness {
                        Likeness::Copy => draft.duplicate(),
                        Likeness::Next => draft.next_like(),
                    };
                    open_new(another, Route::Piece, act);
                }
                None => tell(gone(), None, act),
            },
            Effect::AddRow => self.add_row(),
            Effect::TakeTable => {
                let table = self.state.table.as_ref();
                let Some(preview) = table.and_then(|table| table.preview.as_ref()) else {
                    return;
                };
                let key = clock::new_id();
                let pieces = preview.pieces.iter().enumerate().filter_map(|(at, piece)| {
                    let draft = Draft::parse(&piece.record).ok()?;
                    Some((joined(&[&key, "-", &at.to_string()]), draft, None))
                });
                let pieces = pieces.collect();
                self.keep_together(TABLE, pieces);
            }
        }
    }
}

impl App {
    /// Adds the piece typed into the row for quick entry, or says what of it cannot be used.
    fn add_row(&self) {
        let act = &self.act;
        match typed_piece(begun()) {
            Ok(mut draft) => {
                draft.set("asked_on", &clock::today());
                if let Some(Err(fault)) = store::figures().map(|own| draft.lay_figures(&own)) {
                    tell(fault, None, act);
                }
                let id = clock::new_id();
                let line = ShelfLine::of_draft(&id, &draft);
                store::keep_case(&id, &draft.to_json(), &line);
                let words = stock::quick_added(&line.name);
                act.emit(Action::Shelved(store::shelf()));
                act.emit(Action::Tell(Notice::plain(words)));
                next_piece();
            }
            Err([what, remedy]) => act.emit(Action::Tell(Notice {
                what,
                remedy,
                rescue: None,
                takes_back: false,
            })),
        }
    }
}

/// A new record with what was typed on the first screen to start a piece, and with the person's own figures; says so
/// where those cannot be used.
fn started(act: &Callback<Action>) -> Draft {
    let mut draft = begun();
    for (field, path) in [(START_NAME, "piece.name"), (START_FORM, "piece.form")] {
        draft.set(path, &page::typed_in(field));
        store::keep_starting(field, "");
    }
    if let Some(Err(fault)) = store::figures().map(|own| draft.lay_figures(&own)) {
        tell(fault, None, act);
    }
    draft
}

/// A new record with what the person's pieces begin with.
fn begun() -> Draft {
    let mut draft = Draft::default();
    for (path, text) in store::beginnings() {
        draft.set(path, &text);
    }
    draft
}

/// The longest time an action may wait to be rendered, in milliseconds. A control shows typed input by itself;
/// programmatic changes to controls re-render immediately.
fn longest_wait(action: &Action) -> u32 {
    match action {
        Action::Typed(..)
        | Action::Put(..)
        | Action::Move(..)
        | Action::Loaded(_)
        | Action::Working { .. }
        | Action::Changes { .. }
        | Action::Saved { .. } => DRAW_AFTER_MS,
        Action::Weighed { .. } | Action::Moved { .. } => DRAW_ANSWER_AFTER_MS,
        _ => 0,
    }
}

/// The action for what is expected, with the day.
fn expected(
    event: PredictedWhen,
    generation: u32,
    answer: Result<Reply, String>,
) -> Option<Action> {
    let Ok(Reply::Pairs(mut fields)) = answer else {
        return None;
    };
    fields.push(("on".to_owned(), clock::today()));
    Some(Action::Expected {
        event,
        generation,
        fields,
    })
}

/// The error for an answer that does not match its question.
fn other_answer() -> String {
    keeping::OTHER_ANSWER.to_owned()
}

/// The state stored on this device.
fn stored_state() -> State {
    let open = store::last_open();
    let walk = open
        .as_ref()
        .map(|open| walk_in(&store::walk(&open.id), &open.case));
    State {
        shelf: Rc::new(store::shelf()),
        walk: Rc::new(walk.unwrap_or_default()),
        open: open.map(Rc::new),
        theme: store::theme(),
        reader: store::reader(),
        begins_with_own: store::figures().is_some(),
        book: Rc::new(StockBook {
            layout: store::layout(),
            ..StockBook::default()
        }),
        has_no_shortcuts: !store::has_shortcuts(),
        lessons: Rc::new(stored_lessons()),
        ..State::default()
    }
}

fn stored_lessons() -> Lessons {
    let (on, taught) = store::teaching();
    Lessons {
        on,
        taught,
        ..Lessons::default()
    }
}

/// Opens the text of a case file as a new piece.
fn take_in(text: &str, act: &Callback<Action>) {
    match Draft::parse(text) {
        Ok(draft) => open_new(draft, Route::Counsel, act),
        Err(fault) => tell(fault.problem(), None, act),
    }
}

fn open_new(mut draft: Draft, route: Route, act: &Callback<Action>) {
    // The model has no clock. Prices and law are those of the day the question is asked.
    if draft.text("asked_on").is_empty() {
        draft.set("asked_on", &clock::today());
    }
    act.emit(Action::Opened {
        id: clock::new_id(),
        draft: Box::new(draft),
    });
    page::go(route);
}

fn open_stored(id: String, act: &Callback<Action>) {
    let Some(text) = store::case_text(&id) else {
        act.emit(Action::Unreadable {
            id,
            problem: gone(),
            text: None,
        });
        return;
    };
    match Draft::parse(&text) {
        Ok(draft) => {
            let looked = !draft.read().0.findings.is_empty();
            act.emit(Action::Opened {
                id,
                draft: Box::new(draft),
            });
            page::go(if looked { Route::Counsel } else { Route::Piece });
        }
        Err(fault) => act.emit(Action::Unreadable {
            id,
            problem: fault.problem(),
            text: Some(text),
        }),
    }
}

fn case_file(name: &str) -> String {
    file::file_name(name, ".leavewell.json")
}

/// The record's text with its key, so that the app recognises it when it is opened again. A record that cannot
/// be read stays unchanged.
fn with_key(id: &str, text: String) -> String {
    match Draft::parse(&text) {
        Ok(mut draft) => {
            draft.set("kept.id", id);
            draft.to_json()
        }
        Err(_) => text,
    }
}

fn save(name: &str, text: String, act: &Callback<Action>) {
    if !file::save(name, &text) {
        tell(file::trouble(keeping::FILE_NOT_SAVED), Some(text), act);
    }
}

fn tell(problem: Problem, rescue: Option<String>, act: &Callback<Action>) {
    act.emit(Action::Tell(Notice {
        what: problem.message,
        remedy: problem.remedy,
        rescue,
        takes_back: false,
    }));
}

fn gone() -> Problem {
    file::trouble(keeping::GONE)
}

fn title(route: Route, open: Option<&Open>) -> String {
    match (route, open) {
        (Route::Shelf, _) => text::NAME.to_owned(),
        (Route::Plan | Route::StockTable | Route::Labels | Route::StockList, _) | (_, None) => {
            text::title(route.name())
        }
        // The browser prints the title above a sheet. A buyer is not told what the owner calls it.
        (Route::Sheet(Recipient::Buyer), Some(open)) => {
            let form = open.form().map_or("", |form| form.label());
            text::title_with(route.name(), form)
        }
        (_, Some(open)) => text::title_with(route.name(), &open.name()),
    }
}

/// The choice of appearance: light, dark, or the system's.
fn theme_switch(now: Theme, act: &Callback<Action>) -> Html {
    let onchange = act
        .reform(|event: Event| Action::SetTheme(Theme::parse(&typed(&event)).unwrap_or_default()));
    let select = el("select", "")
        .attr("id", "theme")
        .changed(onchange)
        .each(Theme::ALL, |theme| {
            option(theme.id(), theme.label(), theme == now)
        });
    el("div", "theme")
        .el(el("label", "").attr("for", "theme").text(text::APPEARANCE))
        .el(select)
        .html()
}

/// Undo and redo.
fn steps(shown: bool, (back, forth): (bool, bool), act: &Callback<Action>) -> El {
    let step = |words, can, key, action| {
        button("quiet")
            .attr("aria-disabled", if can { "" } else { "true" })
            .attr("aria-keyshortcuts", key)
            .pressed(press(act, action))
            .text(words)
    };
    el("div", "steps")
        .hidden(!shown)
        .el(step(text::UNDO, back, "Control+Z", Action::Undo))
        .el(step(text::REDO, forth, "Control+Shift+Z", Action::Redo))
        // A script of the page says in it what a step changed.
        .el(el("p", "undone")
            .attr("id", "undone")
            .attr("data-said", "true"))
}

/// The list of changes to the open piece.
fn changes(open: &Open) -> El {
    el("details", "more")
        .tag("summary", text::CHANGES)
        .el(el("record-changes", "").set("case", open.id.clone()))
}

/// The keyboard shortcuts, and the box that turns them off.
fn shortcuts(on: bool, act: &Callback<Action>) -> El {
    let heard = act.reform(|event: Event| Action::UseShortcuts(!typed(&event).is_empty()));
    let list = el("dl", "shortcuts").each(stock::SHORTCUT_LIST, |(keys, does)| {
        el("div", "")
            .el(el("dt", "").el(el("kbd", "").text(keys)))
            .el(el("dd", "").text(does))
    });
    el("details", "more")
        .tag("summary", stock::SHORTCUTS)
        .el(el("p", "hint")
            .attr("id", "shortcuts")
            .text(stock::SHORTCUTS_HINT))
        .el(list)
        .put(tick_as("use-shortcuts", on, heard, stock::SHORTCUTS_ON))
}

/// The notices. Their element is always present, so that screen readers announce a new message.
fn notices(state: &State, act: &Callback<Action>, effect: &Callback<Effect>) -> Html {
    let unsaved = state.open.as_ref().and_then(|open| match &open.saved {
        SaveState::Kept => None,
        SaveState::Failed(why) => Some(Notice {
            what: keeping::change_not_kept(&open.name(), why),
            remedy: keeping::CHANGE_NOT_KEPT_NEXT.to_owned(),
            rescue: Some(open.draft.to_json()),
            takes_back: false,
        }),
    });
    let one = |shown: Option<&Notice>, more| group().each(shown, |n| notice(n, effect, more));
    el("div", "notices")
        .attr("role", "alert")
        .el(one(unsaved.as_ref(), None))
        .el(one(state.notice.as_deref(), Some(act)))
        .html()
}

/// One notice. If `dismiss` is given, the notice has a button that emits to it.
fn notice(notice: &Notice, effect: &Callback<Effect>, dismiss: Option<&Callback<Action>>) -> El {
    let words = el("p", "")
        .el(el("strong", "").words(notice.what.clone()))
        .text(" ")
        .words(notice.remedy.clone());
    let mut shown = el("div", "notice").el(words);
    if let Some(text) = &notice.rescue {
        let save = press(effect, Effect::Rescue(text.clone()));
        shown = shown.el(button("").pressed(save).text(keeping::SAVE_RECORD));
    }
    if notice.takes_back {
        let back = press(effect, Effect::TakeBack);
        shown = shown.el(button("").pressed(back).text(stock::TAKE_BACK));
    }
    shown.el(match dismiss {
        None => el("span", "").hidden(true),
        Some(act) => button("quiet")
            .pressed(press(act, Action::DismissNotice))
            .text(keeping::READ),
    })
}

fn nothing_open() -> Html {
    let shelf = el("a", "button")
        .attr("href", Route::Shelf.href())
        .text(text::GO_TO_SHELF);
    let head = el("header", "screen-head")
        .el(el("h1", "").attr("tabindex", "-1").text(text::NOTHING_OPEN))
        .p("purpose", text::NOTHING_OPEN_NEXT)
        .el(el("p", "next-step").el(shelf));
    el("div", "screen").el(head).html()
}

/// The footer. Every screen shows its deferral line; below it are the list of changes and the appearance.
fn foot(state: &State, open: Option<&Open>, act: &Callback<Action>) -> Html {
    el("footer", "foot")
        .p(
            "deferral",
            caution("caution.deferral")
                .map(|c| c.text)
                .unwrap_or_default(),
        )
        .said("", text::private(LEDGER_VERSION))
        .el(el("div", "").each(open, changes))
        .el(shortcuts(!state.has_no_shortcuts, act))
        .put(theme_switch(state.theme, act))
        .html()
}
