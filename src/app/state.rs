//! The state of the app, and the pure function that changes it.
//!
//! Screens emit an [`Action`], which describes a change, or an [`Effect`], which asks for something outside the
//! state, such as opening a stored record. Invariant: [`update`] depends on its arguments alone. It identifies
//! the piece at once when the draft changes. The worker weighs the piece, and its answer arrives as an
//! [`Action`].

use std::rc::Rc;

use leavewell_model::counsel::Input;
use leavewell_model::identity::identify;
use leavewell_model::learn::TurnedOn;
use leavewell_model::ledger::{FindingId, findings};
use leavewell_model::record::{PredictedWhen, is_enough_to_advise, ledger_of, put_size, size_text};
use leavewell_model::report::{ChangeReport, IdentityReport, MovedReport};
use leavewell_model::road::{self, RoadQuestion, RoadWalk};
use leavewell_model::terms::{Currency, Form, PartName, Seen, StockStatus, Word, capital};
use leavewell_model::{Case, Draft, Problem, Report};
use leavewell_pages::learning::Learning;
use leavewell_pages::sheet_text::{Form as SheetForm, Recipient};
use leavewell_pages::stock_table::{TablePreview, TableQuestion};
use leavewell_pages::{Block, PageName};

use super::history::{History, Moment};
use super::parts::share;
use super::reader::Reader;
pub use super::shelf_line::{ShelfLine, StockLine};
use super::shelf_line::{form_words, name_of};
use super::stock_book::{BookChange, StockBook};
use super::wording::{keeping, owner, shell};
use crate::app::parts::words::joined;

/// How many unanswered questions the Look screen puts first.
const FEW: usize = 5;

/// The state of the app.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct State {
    /// The pieces stored on this device, newest first.
    pub shelf: Rc<Vec<ShelfLine>>,
    /// How the pieces on the shelf are shown, searched and chosen.
    pub book: Rc<StockBook>,
    /// The table from a spreadsheet that is looked at, before any of it is added.
    pub table: Option<Rc<TableIn>>,
    /// Whether single keys are left to the browser rather than used as shortcuts.
    pub has_no_shortcuts: bool,
    /// The open piece.
    pub open: Option<Rc<Open>>,
    /// The appearance.
    pub theme: Theme,
    /// Who is reading the counsel.
    pub reader: Reader,
    /// Whether new pieces on this device start with the person's figures.
    pub begins_with_own: bool,
    /// A message for the person.
    pub notice: Option<Rc<Notice>>,
    /// Whether the live answer is open on a narrow screen.
    pub live_open: bool,
    /// The live answer that screen readers announced last.
    pub read_out: String,
    /// The part selected on the Condition screen.
    pub selected_part: Option<PartName>,
    /// The generation at which the open piece was opened.
    pub opened_at: u32,
    /// The groups of questions opened so far. The others are not rendered.
    pub groups: Rc<Vec<&'static str>>,
    /// Pages of the open piece that the worker has made.
    pub loaded: Rc<Vec<LoadedPage>>,
    /// The page that a worker is making, and its progress from 0 to 1.
    pub working: Option<(PageName, f64)>,
    /// The newest plan for the whole shelf.
    pub planned: Rc<Vec<Block>>,
    /// The guide, once it was asked for.
    pub guide: Rc<Vec<Block>>,
    /// The piece of the guide with its report.
    pub guide_piece: Option<Rc<Open>>,
    /// What closed pieces teach, and whether they do.
    pub lessons: Rc<Lessons>,
    /// Undo and redo for the open piece.
    pub history: Rc<History>,
    /// The questions of the owner's road put so far about the open piece.
    pub walk: Rc<RoadWalk>,
}

/// What a worker says of a piece that was never opened here.
#[derive(Clone, Debug, PartialEq)]
pub struct AdvisedPiece {
    /// The key of its stored record.
    pub id: String,
    /// What it is most likely made of; may be empty.
    pub kind: String,
    /// The advice.
    pub sentence: String,
    /// Ids of the treatments advised.
    pub steps: Vec<String>,
    /// The most to pay for it; `None` unless it is to be sold.
    pub most: Option<f64>,
}

/// A table that a person chose.
#[derive(Clone, Debug, PartialEq)]
pub struct TableIn {
    /// The name of the file.
    pub name: String,
    /// What the worker is asked about it.
    pub question: TableQuestion,
    /// What it holds; `None` until the worker has read it.
    pub preview: Option<TablePreview>,
    /// Why it could not be read, if so.
    pub failure: Option<String>,
}

/// What closed pieces teach, and what learning is turned on for.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Lessons {
    /// What learning is turned on for.
    pub on: TurnedOn,
    /// The taught figures that hold, as text; empty while none do.
    pub taught: String,
    /// Whether the invented pieces are shown instead of the person's own.
    pub invented: bool,
    /// The newest answer of the worker.
    pub learning: Option<Rc<Learning>>,
}

/// A page of the open piece, made by the worker.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadedPage {
    /// Its name.
    pub name: PageName,
    /// The generation of the draft it was made for.
    pub generation: u32,
    /// Its blocks, or why it failed.
    pub blocks: Result<Vec<Block>, String>,
}

/// The open piece: its record as typed, and the model's answers about it.
#[derive(Clone, Debug, PartialEq)]
pub struct Open {
    /// The key of its stored record.
    pub id: String,
    /// The record as typed.
    pub draft: Draft,
    /// Which of several pieces the Condition screen speaks of, from 1 up; 0 for all of them.
    pub piece: u16,
    /// The valid part of the record.
    pub case: Rc<Case>,
    /// The problems with the rest of it.
    pub problems: Rc<Vec<Problem>>,
    /// What the piece is. It is worked out at once, except for what to look at next.
    pub identity: Rc<IdentityReport>,
    /// The worker's report, which arrives a moment after a change.
    pub weighed: LatestReport,
    /// Whether the last change is stored on this device.
    pub saved: SaveState,
    /// The generation of the draft, which grows with every change.
    pub generation: u32,
    /// What would change the answer, or why that failed. It arrives after the answer.
    pub changes: Option<Rc<Result<Vec<ChangeReport>, String>>>,
    /// The input that the person moved to try it, and by how many steps.
    pub moving: Option<(Input, i8)>,
    /// The result of that move. It stays until the next result arrives.
    pub moved: Option<Rc<MovedReport>>,
    /// The questions shown first: those answered, then those that tell most. A question keeps its position once
    /// shown, so that nothing moves under the person's hand.
    pub first_looks: Vec<FindingId>,
}

/// The worker's newest report.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LatestReport {
    /// The newest report. Until the next one arrives, it may belong to an earlier draft.
    pub report: Option<Rc<Report>>,
    /// The generation of the draft it belongs to.
    pub generation: u32,
    /// Why the report failed, if it did.
    pub failure: Option<String>,
}

/// The part of the record that a control changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Target {
    /// A field such as `market.likely`; empty text removes it.
    Field(&'static str),
    /// A yes-or-no field: `yes`, `no`, or empty to take the answer back.
    Flag(&'static str),
    /// The answer to a finding: `seen`, `absent`, `unsure`, or empty for "not looked".
    Answer(FindingId),
    /// The answer to a finding that typed words suggested, and where the words stand: the place of the
    /// mark, or nothing for the description.
    Suggested(FindingId, Option<usize>),
    /// The part on which a finding was seen; empty for the whole piece.
    SeenOn(FindingId),
    /// A field of a part, such as `bleed`.
    Part(PartName, &'static str),
    /// The share of a part where base metal shows, as a percentage.
    Share(PartName),
    /// A field of the quote for one treatment, such as `likely`.
    Quote(&'static str, &'static str),
    /// A field of the entry at this place of a list, such as `proposal.steps`.
    Entry(&'static str, usize, &'static str),
}

/// Whether the last change is stored on this device.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum SaveState {
    /// It is stored.
    #[default]
    Kept,
    /// It could not be stored, for this reason.
    Failed(String),
}

/// The appearance of the app.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Theme {
    /// The system's setting.
    #[default]
    System,
    /// Light.
    Light,
    /// Dark.
    Dark,
}

/// A message for the person: what happened and what to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Notice {
    /// What happened.
    pub what: String,
    /// What to do.
    pub remedy: String,
    /// The text of a record that could not be stored or read, offered as a file.
    pub rescue: Option<String>,
    /// Whether one press takes back what happened to several pieces.
    pub takes_back: bool,
}

impl Notice {
    /// A message that asks for nothing.
    #[must_use]
    pub const fn plain(what: String) -> Self {
        Self {
            what,
            remedy: String::new(),
            rescue: None,
            takes_back: false,
        }
    }
}

/// A change to the state.
#[derive(Clone, Debug, PartialEq)]
pub enum Action {
    /// The person typed, chose or ticked something.
    Typed(Target, String),
    /// The person typed or chose something in a field of a worker's page: the path in the record, and the text.
    Put(String, String),
    /// The person answered a question of the owner's road.
    Answered(RoadQuestion, &'static str),
    /// The questions put about the open piece before this page was loaded.
    Walked(RoadWalk),
    /// One of several was ticked or unticked: the field that lists their ids, and the id.
    Ticked(Target, &'static str),
    /// An entry is added to a list such as `proposal.steps`.
    Add(&'static str),
    /// The entry at this place of a list is removed.
    Remove(&'static str, usize),
    /// Undo the last change.
    Undo,
    /// Redo the change undone last.
    Redo,
    /// Another tab changed the record of the open piece, or two versions of it were merged.
    Replaced {
        /// Its key.
        id: String,
        /// The record now.
        draft: Box<Draft>,
    },
    /// The person searched, sorted, filtered or chose on the shelf.
    Book(BookChange),
    /// The worker advised on pieces that were never opened here.
    Advised(Vec<AdvisedPiece>),
    /// The person chose a table.
    TableChosen(Box<TableIn>),
    /// The worker read the table, or failed to.
    TableRead(Result<Box<TablePreview>, String>),
    /// The person said what a column of the table is: its place and a path, empty to leave it out.
    MatchColumn(usize, String),
    /// The table is left as it is.
    LeaveTable,
    /// Whether single keys are shortcuts from now on.
    UseShortcuts(bool),
    /// The shelf changed elsewhere; these are its lines now.
    Shelved(Vec<ShelfLine>),
    /// The plan for the whole shelf is ready.
    Planned(Vec<Block>),
    /// The guide has arrived.
    Guided(Rc<Open>, Vec<Block>),
    /// What closed pieces teach is asked for again.
    Learn,
    /// The worker found what closed pieces teach.
    Learnt(Box<Learning>),
    /// The person turned learning on or off.
    Teach(TurnedOn),
    /// The person asked for the invented pieces, or for their own again.
    ShowInvented(bool),
    /// What is expected was worked out, to be frozen.
    Expected {
        /// Why.
        event: PredictedWhen,
        /// The generation of the draft it was made for.
        generation: u32,
        /// The fields, each with its text.
        fields: Vec<(String, String)>,
    },
    /// A sold piece is used as the price of a like piece: the fields of its entry.
    UseSale(Vec<(String, String)>),
    /// Keep a copy of the present condition record.
    KeepRecord,
    /// Whether new pieces start with the person's figures from now on.
    BeginWithOwn(bool),
    /// Add the figures of a file to those of the open piece.
    TakeFigures(String),
    /// A page is ready.
    Loaded(LoadedPage),
    /// Progress of a page.
    Working {
        /// Its name.
        name: PageName,
        /// The generation of the draft it is made for.
        generation: u32,
        /// The progress, from 0 to 1.
        share: f64,
    },
    /// A record was opened or created; it becomes the open piece.
    Opened {
        /// The key of its stored record.
        id: String,
        /// The record.
        draft: Box<Draft>,
    },
    /// A record could not be read.
    Unreadable {
        /// The key of its stored record.
        id: String,
        /// Why.
        problem: Problem,
        /// The text of the record, so that it can be saved as a file.
        text: Option<String>,
    },
    /// The worker weighed the open piece, or failed to.
    Weighed {
        /// The generation of the draft it weighed.
        generation: u32,
        /// The report, or what went wrong.
        report: Result<Box<Report>, String>,
    },
    /// The worker found what would change the answer, or failed to.
    Changes {
        /// The generation of the draft it is about.
        generation: u32,
        /// What would change the answer, or what went wrong.
        changes: Result<Vec<ChangeReport>, String>,
    },
    /// The person moved an input by this many steps, to try it.
    Move(Input, i8),
    /// The result of moving an input.
    Moved {
        /// The generation of the draft it is about.
        generation: u32,
        /// The answer with the input moved.
        report: MovedReport,
    },
    /// The open piece was closed.
    CloseCase,
    /// A piece was removed from the shelf.
    Removed(String),
    /// The open piece was stored, or storing it failed.
    Saved {
        /// Its key.
        id: String,
        /// Why storing failed, if it did.
        failure: Option<String>,
    },
    /// The person chose an appearance.
    SetTheme(Theme),
    /// The person chose a reader.
    ReadAs(Reader),
    /// Show a notice.
    Tell(Notice),
    /// The person dismissed the notice.
    DismissNotice,
    /// The person opened or closed the live answer.
    ToggleLive,
    /// Announce this live answer to screen readers; empty to announce nothing.
    ReadOut(String),
    /// The person selected a part.
    SelectPart(PartName),
    /// The person selected one of several pieces, or 0 for all.
    SelectPiece(u16),
    /// The price of the open piece's lot is to be shared out.
    ShareLot,
    /// The person opened a group of questions.
    Group(&'static str),
}

/// A request for something outside the state: storage, a file, the clock, the printer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Effect {
    /// Start a piece with what was typed on the first screen.
    New,
    /// Start a piece on the owner's road, with its form if the person tapped one.
    Ask(Option<Form>),
    /// Start a piece on the restorer's road.
    Restore,
    /// Go to the stock, as a dealer.
    Deal,
    /// Open a stored piece.
    Open(String),
    /// Open a copy of a worked example.
    Example(usize),
    /// Save a stored piece as a file.
    SaveAsFile(String),
    /// Save this text as a file of this name.
    Rescue(String),
    /// Save a sheet of the open piece as a file.
    SaveSheet(Recipient, SheetForm),
    /// Print the screen.
    Print,
    /// Save the person's figures as a file.
    SaveFigures,
    /// Start new pieces with the open piece's figures, or with the shipped ones.
    BeginWithOwn(bool),
    /// Read a file of figures and add them to those of the open piece.
    ReadFigures(web_sys::File),
    /// Move a stored piece to the bin.
    Delete(String),
    /// Change the status of these pieces; an empty id takes it off.
    SetStatus(Vec<String>, &'static str),
    /// Take back the last change of several pieces.
    TakeBack,
    /// Save these pieces with their photos as one file.
    SaveTogether(Vec<String>),
    /// Move these pieces to the bin.
    DeleteAll(Vec<String>),
    /// Save these pieces as a table for a spreadsheet.
    SaveTable(Vec<String>),
    /// Start a piece that is like a stored one, as a copy or with what two such pieces have in common.
    Another(String, Likeness),
    /// Add the piece typed into the row for quick entry.
    AddRow,
    /// Read a table that a person chose.
    ReadTable(web_sys::File),
    /// Add the pieces of the table that is shown.
    TakeTable,
    /// Leave a stored piece out of what is learnt, or take it in again.
    LeaveOut(String, bool),
}

/// How much of a piece another one begins with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Likeness {
    /// Everything but its history and its photos.
    Copy,
    /// What pieces entered one after the other have in common.
    Next,
}

impl Open {
    /// Opens a record, which is not weighed yet.
    #[must_use]
    pub fn new(id: String, draft: Draft) -> Self {
        let first_looks = findings()
            .iter()
            .map(|fact| fact.id)
            .filter(|id| !draft.answer(*id).0.is_empty())
            .collect();
        let (case, problems) = draft.read();
        Self {
            id,
            draft,
            piece: 0,
            problems: Rc::new(problems),
            identity: Rc::new(identify(&case, &ledger_of(&case))),
            case: Rc::new(case),
            weighed: LatestReport::default(),
            changes: None,
            moving: None,
            moved: None,
            saved: SaveState::Kept,
            generation: 0,
            first_looks,
        }
    }

    /// The newest report, if one has arrived.
    #[must_use]
    pub fn report(&self) -> Option<&Report> {
        self.weighed.report.as_deref()
    }

    /// What would change the answer, if known.
    #[must_use]
    pub fn known_changes(&self) -> &[ChangeReport] {
        match self.changes.as_deref() {
            Some(Ok(changes)) => changes,
            _ => &[],
        }
    }

    /// Stores a report. Questions already shown first stay there; new ones follow.
    fn take_report(&mut self, report: Report) {
        let mut waiting = self
            .first_looks
            .iter()
            .filter(|id| self.draft.answer(**id).0.is_empty())
            .count();
        for look in &report.identity.next_looks {
            let finding = look.finding;
            if waiting < FEW && !self.first_looks.contains(&finding) {
                self.first_looks.push(finding);
                waiting += 1;
            }
        }
        self.weighed.report = Some(Rc::new(report));
    }

    /// The name of the piece on screen.
    #[must_use]
    pub fn name(&self) -> String {
        name_of(&self.draft)
    }

    /// Its form, if known.
    #[must_use]
    pub fn form(&self) -> Option<Form> {
        self.draft.form()
    }

    /// The currency of the amounts on screen.
    #[must_use]
    pub fn currency(&self) -> Currency {
        self.case.market.currency.unwrap_or(Currency::Other)
    }

    /// The problem with a field such as `market.likely`.
    #[must_use]
    pub fn problem(&self, path: &str) -> Option<Problem> {
        self.problems.iter().find(|p| p.field == path).cloned()
    }

    /// The problem with an entry. The model names entries by their position in the list, screens by their subject.
    fn entry_problem(&self, list: &str, key: &str, id: &str, field: &str) -> Option<Problem> {
        let at = self.draft.place_of(list, key, id)?;
        self.problem(&format!("{list}[{at}].{field}"))
    }

    /// The problem with a field of a part. What is said of one piece is told by its field alone.
    fn part_problem(&self, part: PartName, field: &str) -> Option<Problem> {
        if self.piece == 0 {
            return self.entry_problem("parts", "part", part.id(), field);
        }
        let end = joined(&["].", field]);
        let mut problems = self.problems.iter();
        let of_piece =
            |p: &&Problem| p.field.starts_with("pieces.each[") && p.field.ends_with(&end);
        problems
            .find(of_piece)
            .filter(|_| !self.part_text(part, field).is_empty())
            .cloned()
    }

    /// Its line on the shelf. Until it is weighed, the line keeps the previous answer.
    #[must_use]
    pub fn entry(&self, before: Option<&ShelfLine>) -> ShelfLine {
        let (answer, steps) = match (self.report(), before) {
            _ if !is_enough_to_advise(&self.case) => (owner::TOO_LITTLE.to_owned(), Vec::new()),
            (Some(report), _) => {
                let steps = report.counsel.steps.iter().map(|step| step.id().to_owned());
                (first_sentence(&report.counsel.sentence), steps.collect())
            }
            (None, Some(before)) => (before.answer.clone(), before.steps.clone()),
            (None, None) => Default::default(),
        };
        ShelfLine {
            id: self.id.clone(),
            name: self.name(),
            form: form_words(&self.case),
            answer,
            steps,
            unreadable: None,
            stock: StockLine {
                kind: self.kind(),
                most: match (self.report(), before) {
                    _ if !is_enough_to_advise(&self.case) => None,
                    (Some(report), _) => report.most_to_pay(),
                    (None, before) => before.and_then(|before| before.stock.most),
                },
                ..StockLine::of_case(&self.case)
            },
        }
    }

    /// What it is most likely made of and how; empty while too little is recorded to say.
    fn kind(&self) -> String {
        let likeliest = self.identity.family_bars.first();
        likeliest
            .filter(|_| is_enough_to_advise(&self.case) && !self.identity.nothing_found)
            .map(|family| capital(&family.name))
            .unwrap_or_default()
    }

    fn with_draft(&self, draft: Draft) -> Self {
        Self {
            saved: self.saved.clone(),
            generation: self.generation.wrapping_add(1),
            weighed: self.weighed.clone(),
            first_looks: self.first_looks.clone(),
            piece: self.piece,
            ..Self::new(self.id.clone(), draft)
        }
    }

    /// A field of a part as typed, of the piece that the Condition screen speaks of.
    #[must_use]
    pub fn part_text(&self, part: PartName, field: &str) -> String {
        self.draft.text(&part_path(self.piece, part, field))
    }

    /// The word in a field of a part; `None` where there is none of this list.
    #[must_use]
    pub fn part_word<W: Word>(&self, part: PartName, field: &str) -> Option<W> {
        self.draft.word(&part_path(self.piece, part, field))
    }
}

impl Target {
    /// The id of its control, unless a screen shows it twice.
    #[must_use]
    pub fn id(self) -> String {
        let (first, second) = match self {
            Self::Field(path) | Self::Flag(path) => return path.to_owned(),
            Self::Answer(finding) => ("answer", finding.text()),
            Self::Suggested(finding, _) => ("suggested", finding.text()),
            Self::SeenOn(finding) => ("part", finding.text()),
            Self::Part(part, field) => (part.id(), field),
            Self::Share(part) => (part.id(), "bleed-share"),
            Self::Quote(treatment, field) => (treatment, field),
            Self::Entry(list, place, field) => {
                return joined(&[list, "-", &place.to_string(), "-", field]);
            }
        };
        joined(&[first, "-", second])
    }

    /// The text in it, as typed.
    #[must_use]
    pub fn text(self, open: &Open) -> String {
        let draft = &open.draft;
        match self {
            Self::Field(path) => size_text(draft, path).unwrap_or_else(|| draft.text(path)),
            Self::Flag(path) => match draft.flag(path) {
                Some(true) => "yes",
                Some(false) => "no",
                None => "",
            }
            .to_owned(),
            Self::Answer(finding) | Self::Suggested(finding, _) => draft.answer(finding).0,
            Self::SeenOn(finding) => draft.answer(finding).1,
            Self::Part(part, "bleed") => share::word(open.part_text(part, "bleed")),
            Self::Part(part, field) => open.part_text(part, field),
            Self::Share(part) => share::typed(&open.part_text(part, "bleed")),
            Self::Quote(treatment, field) => draft.quote_text(treatment, field),
            Self::Entry(list, place, field) => draft.text(&entry_path(list, place, field)),
        }
    }

    /// Whether an id stands in a field that lists several.
    #[must_use]
    pub fn lists(self, open: &Open, id: &str) -> bool {
        ids(&self.text(open)).any(|one| one == id)
    }

    /// The problem with it, if any.
    #[must_use]
    pub fn problem(self, open: &Open) -> Option<Problem> {
        match self {
            Self::Field(path) => open.problem(path),
            // The share's field shows the problem with the bleed.
            Self::Part(_, "bleed")
            | Self::Flag(_)
            | Self::Answer(_)
            | Self::Suggested(..)
            | Self::SeenOn(_) => None,
            Self::Part(part, field) => open.part_problem(part, field),
            Self::Share(part) => open.part_problem(part, "bleed"),
            Self::Quote(treatment, field) => {
                open.entry_problem("quotes", "treatment", treatment, field)
            }
            Self::Entry(list, place, field) => open.problem(&entry_path(list, place, field)),
        }
    }

    /// `piece` is that of [`Open::piece`].
    fn put(self, draft: &mut Draft, piece: u16, typed: &str) {
        match self {
            Self::Field(path) => {
                if !put_size(draft, path, typed) {
                    draft.set(path, typed);
                }
            }
            Self::Flag(path) => draft.set_flag(
                path,
                match typed {
                    "yes" => Some(true),
                    "no" => Some(false),
                    _ => None,
                },
            ),
            Self::Answer(finding) => {
                let part = draft.answer(finding).1;
                // A finding that was not seen has no part.
                let part = if typed == Seen::Yes.id() { &part } else { "" };
                draft.set_answer(finding, typed, part);
            }
            Self::Suggested(finding, mark) => {
                let of_mark =
                    |field: &str| mark.map(|place| draft.text(&entry_path("marks", place, field)));
                let from = of_mark("id").unwrap_or_else(|| "description".to_owned());
                let part = of_mark("part").filter(|_| typed == Seen::Yes.id());
                draft.set_answer(finding, typed, &part.unwrap_or_default());
                draft.set(&joined(&["findings[id=", finding.text(), "].from"]), &from);
            }
            Self::SeenOn(finding) => {
                let answer = draft.answer(finding).0;
                draft.set_answer(finding, &answer, typed);
            }
            Self::Part(part, field) => draft.set(&part_path(piece, part, field), typed),
            Self::Share(part) => {
                draft.set(&part_path(piece, part, "bleed"), &share::stored(typed));
            }
            Self::Quote(treatment, field) => draft.set_quote(treatment, field, typed),
            Self::Entry(list, place, field) => draft.set(&entry_path(list, place, field), typed),
        }
    }
}

/// The path of a field of a part: of all pieces, or of the one with this number.
fn part_path(piece: u16, part: PartName, field: &str) -> String {
    let of_all = joined(&["parts[part=", part.id(), "].", field]);
    match piece {
        0 => of_all,
        no => joined(&["pieces.each[no=", &no.to_string(), "].", &of_all]),
    }
}

/// The path of a field in the entry at a place of a list.
fn entry_path(list: &str, place: usize, field: &str) -> String {
    joined(&[list, "[", &place.to_string(), "].", field])
}

/// Ids with spaces or commas between.
fn ids(text: &str) -> impl Iterator<Item = &str> {
    text.split(|c: char| c.is_whitespace() || c == ',')
        .filter(|id| !id.is_empty())
}

/// The ids with this one added at the end, or taken away where it stands.
fn with_ticked(text: &str, id: &str) -> String {
    let mut listed: Vec<&str> = ids(text).collect();
    match listed.iter().position(|one| *one == id) {
        Some(place) => {
            listed.remove(place);
        }
        None => listed.push(id),
    }
    listed.join(" ")
}

impl Theme {
    /// Every choice.
    pub const ALL: [Self; 3] = [Self::System, Self::Light, Self::Dark];

    /// The id it is stored under.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::System => "system",
            Self::Light => "light",
            Self::Dark => "dark",
        }
    }

    /// Its label.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::System => shell::AS_THE_SYSTEM,
            Self::Light => shell::LIGHT,
            Self::Dark => shell::DARK,
        }
    }

    /// The choice with this id.
    #[must_use]
    pub fn parse(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|theme| theme.id() == id)
    }
}

impl State {
    /// The newest generation so far.
    fn turn(&self) -> u32 {
        self.open.as_ref().map_or(self.opened_at, |o| o.generation)
    }

    /// The open record as it stands, with the questions put about it; `None` if no piece is open.
    fn moment(&self) -> Option<Moment> {
        let open = self.open.as_ref()?;
        Some((Rc::new(open.draft.clone()), Rc::clone(&self.walk)))
    }

    /// The question of the owner's road that comes next for the open piece; `None` at its end.
    #[must_use]
    pub fn next_question(&self) -> Option<RoadQuestion> {
        let open = self.open.as_ref()?;
        road::next(&self.walk, &open.case)
    }
}

impl Action {
    /// What the program has to freeze because of it: the piece is offered, or work on it is agreed or
    /// entered.
    #[must_use]
    pub fn event(&self) -> Option<PredictedWhen> {
        let (path, text) = match self {
            Self::Put(path, text) => (path.as_str(), text.as_str()),
            Self::Typed(Target::Field(path), text) => (*path, text.as_str()),
            Self::Typed(Target::Entry("proposal.steps", _, "agreed"), text) if text == "yes" => {
                return Some(PredictedWhen::Agreed);
            }
            _ => return None,
        };
        if path == "stock.status" && text == StockStatus::ForSale.id() {
            return Some(PredictedWhen::Offered);
        }
        let done = path.starts_with("done[") && path.ends_with("].what");
        (done && !text.is_empty()).then_some(PredictedWhen::Agreed)
    }
}

/// The state after an action; `None` if nothing changed.
#[allow(clippy::too_many_lines)] // one arm an action
#[must_use]
pub fn update(state: &State, action: Action) -> Option<State> {
    match action {
        Action::Typed(target, typed) => {
            let field = target.id();
            let piece = state.open.as_ref()?.piece;
            changed(state, (field, &typed), |draft| {
                target.put(draft, piece, &typed);
            })
        }
        Action::Put(path, typed) => changed(state, (path.clone(), &typed), |draft| {
            draft.set(&path, &typed);
        }),
        Action::Answered(question, answer) => {
            let walk = Rc::new(state.walk.with(question, answer));
            let write = |draft: &mut Draft| road::write(draft, &state.walk, question, answer);
            let now = changed(state, no_field(), write);
            if now.is_none() && walk == state.walk {
                return None;
            }
            Some(State {
                walk,
                ..now.unwrap_or_else(|| state.clone())
            })
        }
        Action::Walked(walk) => (walk != *state.walk).then(|| State {
            walk: Rc::new(walk),
            ..state.clone()
        }),
        Action::Ticked(target, id) => {
            let open = state.open.as_ref()?;
            let text = with_ticked(&target.text(open), id);
            changed(state, no_field(), |draft| {
                target.put(draft, open.piece, &text);
            })
        }
        Action::Add(list) => changed(state, no_field(), |draft| draft.add_entry(list)),
        Action::Remove(list, place) => changed(state, no_field(), |draft| match list {
            "marks" => draft.remove_mark(place),
            _ => draft.remove_at(list, place),
        }),
        Action::KeepRecord => changed(state, no_field(), |draft| draft.keep_as_earlier("")),
        Action::BeginWithOwn(own) => (own != state.begins_with_own).then(|| State {
            begins_with_own: own,
            ..state.clone()
        }),
        Action::TakeFigures(text) => with_figures(state, &text),
        Action::Undo => stepped(state, History::back),
        Action::Redo => stepped(state, History::forth),
        Action::Replaced { id, draft } => {
            let same = state.open.as_ref().is_some_and(|open| open.id == id);
            let replace = |now: &mut Draft| {
                let before = std::mem::replace(now, *draft);
                now.keep_predicted(&before);
            };
            same.then(|| changed(state, no_field(), replace)).flatten()
        }
        Action::Book(change) => {
            let book = state.book.with(change, &state.shelf);
            (book != *state.book).then(|| State {
                book: Rc::new(book),
                ..state.clone()
            })
        }
        Action::Advised(pieces) => {
            let mut shelf = state.shelf.to_vec();
            for piece in pieces {
                if let Some(line) = shelf.iter_mut().find(|line| line.id == piece.id) {
                    line.answer = first_sentence(&piece.sentence);
                    line.steps = piece.steps;
                    line.stock.kind = capital(&piece.kind);
                    line.stock.most = piece.most;
                }
            }
            (shelf != *state.shelf).then(|| State {
                shelf: Rc::new(shelf),
                ..state.clone()
            })
        }
        Action::TableChosen(table) => Some(State {
            table: Some(Rc::new(*table)),
            ..state.clone()
        }),
        Action::TableRead(read) => with_table(state, |table| match read {
            Ok(preview) => {
                table.question.columns.clone_from(&preview.columns);
                table.preview = Some(*preview);
                table.failure = None;
            }
            Err(why) => table.failure = Some(why),
        }),
        Action::MatchColumn(at, path) => with_table(state, |table| {
            if let Some(column) = table.question.columns.get_mut(at) {
                *column = path;
            }
        }),
        Action::LeaveTable => state.table.is_some().then(|| State {
            table: None,
            ..state.clone()
        }),
        Action::UseShortcuts(on) => (on == state.has_no_shortcuts).then(|| State {
            has_no_shortcuts: !on,
            ..state.clone()
        }),
        Action::Shelved(shelf) => (shelf != *state.shelf).then(|| State {
            shelf: Rc::new(shelf),
            ..state.clone()
        }),
        Action::Guided(piece, blocks) => (*state.guide != blocks).then(|| State {
            guide: Rc::new(blocks),
            guide_piece: Some(piece),
            ..state.clone()
        }),
        Action::Planned(plan) => (*state.planned != plan).then(|| State {
            planned: Rc::new(plan),
            ..state.clone()
        }),
        // The shell asks.
        Action::Learn | Action::ShareLot => None,
        Action::Learnt(learning) => with_lessons(state, |lessons| {
            if !lessons.invented {
                lessons.taught.clone_from(&learning.layer);
            }
            lessons.learning = Some(Rc::new(*learning));
        }),
        Action::Teach(on) => with_lessons(state, |lessons| {
            lessons.on = on;
            lessons.invented = false;
        }),
        Action::ShowInvented(invented) => with_lessons(state, |lessons| {
            lessons.invented = invented;
        }),
        Action::Expected {
            event,
            generation,
            fields,
        } => frozen(state, event, generation, &fields),
        Action::UseSale(fields) => changed(state, no_field(), |draft| {
            let place = draft.count("comparables");
            for (field, text) in &fields {
                draft.set(&entry_path("comparables", place, field), text);
            }
        }),
        Action::Loaded(page) => with_page(state, page),
        Action::Working {
            name,
            generation,
            share,
        } => (state.turn() == generation).then(|| State {
            working: Some((name, share)),
            ..state.clone()
        }),
        Action::Opened { id, draft } => {
            let open = Open {
                generation: state.turn().wrapping_add(1),
                ..Open::new(id, *draft)
            };
            Some(State {
                selected_part: None,
                loaded: Rc::default(),
                working: None,
                history: Rc::default(),
                walk: Rc::default(),
                opened_at: open.generation,
                ..with_open(state, open)
            })
        }
        Action::Weighed { generation, report } => with_report(state, generation, report),
        Action::Changes {
            generation,
            changes,
        } => with_changes(state, generation, changes),
        Action::Move(input, step) => with_open_changed(state, |open| {
            open.moving = Some((input, step));
        }),
        Action::Moved { generation, report } => with_open_changed(state, |open| {
            if open.generation == generation {
                open.moved = Some(Rc::new(report));
            }
        }),
        Action::Unreadable { id, problem, text } => Some(unreadable(state, &id, problem, text)),
        Action::CloseCase => state.open.is_some().then(|| State {
            open: None,
            ..state.clone()
        }),
        Action::Removed(id) => Some(removed(state, &id)),
        Action::Saved { id, failure } => saved(state, &id, failure),
        Action::SetTheme(theme) => (theme != state.theme).then(|| State {
            theme,
            ..state.clone()
        }),
        Action::ReadAs(reader) => (reader != state.reader).then(|| State {
            reader,
            ..state.clone()
        }),
        Action::Tell(notice) => {
            let notice = Some(Rc::new(notice));
            (notice != state.notice).then(|| State {
                notice,
                ..state.clone()
            })
        }
        Action::DismissNotice => state.notice.is_some().then(|| State {
            notice: None,
            ..state.clone()
        }),
        Action::ToggleLive => Some(State {
            live_open: !state.live_open,
            ..state.clone()
        }),
        Action::ReadOut(text) => (text != state.read_out).then(|| State {
            read_out: text,
            ..state.clone()
        }),
        Action::Group(name) => (!state.groups.contains(&name)).then(|| State {
            groups: Rc::new(state.groups.iter().copied().chain([name]).collect()),
            ..state.clone()
        }),
        Action::SelectPiece(piece) => {
            let open = state.open.as_deref()?;
            Some(with_open(
                state,
                Open {
                    piece,
                    ..open.clone()
                },
            ))
        }
        Action::SelectPart(part) => Some(State {
            selected_part: Some(part),
            ..state.clone()
        }),
    }
}

/// The state with the table changed; `None` if there is none or nothing changed.
fn with_table(state: &State, change: impl FnOnce(&mut TableIn)) -> Option<State> {
    let before = state.table.as_ref()?;
    let mut table = (**before).clone();
    change(&mut table);
    (table != **before).then(|| State {
        table: Some(Rc::new(table)),
        ..state.clone()
    })
}

/// The state with a changed draft; `None` if nothing changed. The field and its text decide whether the change
/// continues the last undo step.
fn changed(
    state: &State,
    (field, text): (String, &str),
    change: impl FnOnce(&mut Draft),
) -> Option<State> {
    let open = state.open.as_ref()?;
    let mut draft = open.draft.clone();
    change(&mut draft);
    let before = state.moment()?;
    (draft != open.draft).then(|| State {
        history: Rc::new(state.history.noted(before, field, text.to_owned())),
        ..with_open(state, open.with_draft(draft))
    })
}

/// No particular field: the change is a separate undo step.
fn no_field() -> (String, &'static str) {
    (String::new(), "")
}

/// The state after an undo or a redo; `None` if there is none.
fn stepped(
    state: &State,
    step: impl Fn(&History, Moment) -> Option<(Moment, History)>,
) -> Option<State> {
    let open = state.open.as_ref()?;
    let ((draft, walk), history) = step(&state.history, state.moment()?)?;
    let mut draft = (*draft).clone();
    draft.keep_predicted(&open.draft);
    Some(State {
        history: Rc::new(history),
        walk,
        ..with_open(state, open.with_draft(draft))
    })
}

/// The state with other lessons; `None` if nothing changed.
fn with_lessons(state: &State, change: impl FnOnce(&mut Lessons)) -> Option<State> {
    let mut lessons = (*state.lessons).clone();
    change(&mut lessons);
    (lessons != *state.lessons).then(|| State {
        lessons: Rc::new(lessons),
        ..state.clone()
    })
}

/// The state with what was expected frozen in the open record, unless that is about another piece or one
/// that has ended. It is no step of its own to undo.
fn frozen(
    state: &State,
    event: PredictedWhen,
    generation: u32,
    fields: &[(String, String)],
) -> Option<State> {
    let open = state.open.as_ref()?;
    let of_this_piece = (state.opened_at..=open.generation).contains(&generation);
    if !of_this_piece || open.draft.has_predicted(event) || open.case.closed.outcome.is_some() {
        return None;
    }
    let mut draft = open.draft.clone();
    draft.freeze(event, fields);
    Some(with_open(state, open.with_draft(draft)))
}

/// The state with the figures of a file added to the open piece, and a notice of how many there were.
fn with_figures(state: &State, text: &str) -> Option<State> {
    let mut draft = state.open.as_ref()?.draft.clone();
    let notice = match draft.lay_figures(text) {
        Ok(count) => Notice {
            what: keeping::figures_added(count),
            remedy: keeping::FIGURES_ADDED_NEXT.to_owned(),
            rescue: None,
            takes_back: false,
        },
        Err(problem) => Notice {
            what: problem.message,
            remedy: problem.remedy,
            rescue: None,
            takes_back: false,
        },
    };
    let changed =
        changed(state, no_field(), |now: &mut Draft| *now = draft).unwrap_or_else(|| state.clone());
    Some(State {
        notice: Some(Rc::new(notice)),
        ..changed
    })
}

/// The state with a report, unless a newer one is already there.
fn with_report(
    state: &State,
    generation: u32,
    report: Result<Box<Report>, String>,
) -> Option<State> {
    let open = state.open.as_ref()?;
    let oldest = state.opened_at.max(open.weighed.generation);
    if !(oldest..=open.generation).contains(&generation) {
        return None;
    }
    let mut open = (**open).clone();
    open.weighed.generation = generation;
    open.weighed.failure = report.as_ref().err().cloned();
    if let Ok(report) = report {
        open.take_report(*report);
    }
    Some(with_open(state, open))
}

/// The state with what would change the answer, unless that is for an older generation.
fn with_changes(
    state: &State,
    generation: u32,
    changes: Result<Vec<ChangeReport>, String>,
) -> Option<State> {
    with_open_changed(state, |open| {
        if open.generation == generation {
            open.changes = Some(Rc::new(changes));
        }
    })
}

/// The state with something other than the draft of the open piece changed; `None` if nothing changed.
fn with_open_changed(state: &State, change: impl FnOnce(&mut Open)) -> Option<State> {
    let before = state.open.as_ref()?;
    let mut open = (**before).clone();
    change(&mut open);
    (open != **before).then(|| State {
        open: Some(Rc::new(open)),
        ..state.clone()
    })
}

/// The state with a page, unless a newer one is already there. Generations also grow from piece to piece, so a
/// page of a closed piece is older than any page of this one.
fn with_page(state: &State, page: LoadedPage) -> Option<State> {
    let open = state.open.as_ref()?;
    let known = state.loaded.iter().find(|known| known.name == page.name);
    let oldest = known.map_or(state.opened_at, |known| known.generation);
    if !(oldest..=open.generation).contains(&page.generation) {
        return None;
    }
    let mut loaded = state.loaded.to_vec();
    loaded.retain(|known| known.name != page.name);
    let working = state.working.filter(|(name, _)| *name != page.name);
    loaded.push(page);
    Some(State {
        loaded: Rc::new(loaded),
        working,
        ..state.clone()
    })
}

/// Makes a piece the open one and updates its line on the shelf.
fn with_open(state: &State, open: Open) -> State {
    let at = state.shelf.iter().position(|e| e.id == open.id);
    let entry = open.entry(at.map(|at| &state.shelf[at]));
    let shelf = match at {
        Some(at) if state.shelf[at] == entry => Rc::clone(&state.shelf),
        Some(at) => {
            let mut shelf = state.shelf.to_vec();
            shelf[at] = entry;
            Rc::new(shelf)
        }
        None => Rc::new(
            std::iter::once(entry)
                .chain(state.shelf.iter().cloned())
                .collect(),
        ),
    };
    State {
        shelf,
        open: Some(Rc::new(open)),
        ..state.clone()
    }
}

/// The first sentence of a text.
#[must_use]
pub fn first_sentence(text: &str) -> String {
    match text.split_once(". ") {
        Some((first, _)) => format!("{first}."),
        None => text.to_owned(),
    }
}

fn unreadable(state: &State, id: &str, problem: Problem, text: Option<String>) -> State {
    let mut shelf = state.shelf.to_vec();
    for entry in shelf.iter_mut().filter(|e| e.id == id) {
        entry.unreadable = Some(problem.message.clone());
    }
    let notice = Notice {
        what: problem.message,
        remedy: problem.remedy,
        rescue: text,
        takes_back: false,
    };
    State {
        shelf: Rc::new(shelf),
        notice: Some(Rc::new(notice)),
        ..state.clone()
    }
}

fn removed(state: &State, id: &str) -> State {
    State {
        shelf: Rc::new(state.shelf.iter().filter(|e| e.id != id).cloned().collect()),
        open: state.open.clone().filter(|open| open.id != id),
        opened_at: state.turn(),
        ..state.clone()
    }
}

fn saved(state: &State, id: &str, failure: Option<String>) -> Option<State> {
    let open = state.open.as_ref().filter(|open| open.id == id)?;
    let outcome = failure.map_or(SaveState::Kept, SaveState::Failed);
    if open.saved == outcome {
        return None;
    }
    let open = Rc::new(Open {
        saved: outcome,
        ..(**open).clone()
    });
    Some(State {
        open: Some(open),
        ..state.clone()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn with_piece() -> State {
        let mut draft = Draft::default();
        draft.set("piece.name", "Invented pot");
        update(
            &State::default(),
            Action::Opened {
                id: "a".to_owned(),
                draft: Box::new(draft),
            },
        )
        .unwrap()
    }

    /// The state after the worker's answer.
    fn weighed(state: &State) -> State {
        let open = open(state);
        let report = leavewell_model::counsel::weigh_at_once(&open.case, open.problems.to_vec());
        let action = Action::Weighed {
            generation: open.generation,
            report: Ok(Box::new(report)),
        };
        update(state, action).unwrap()
    }

    fn typed(target: Target, typed: &str) -> Action {
        Action::Typed(target, typed.to_owned())
    }

    fn set(path: &'static str, text: &str) -> Action {
        typed(Target::Field(path), text)
    }

    fn open(state: &State) -> &Open {
        state.open.as_deref().unwrap()
    }

    #[test]
    fn a_change_updates_the_case_and_the_shelf_at_once() {
        let before = with_piece();
        let after = update(&before, set("piece.form", "teapot")).unwrap();
        assert!(!Rc::ptr_eq(&open(&before).identity, &open(&after).identity));
        assert_eq!(after.shelf[0].form, "Teapot");
        assert_eq!(after.shelf[0].name, "Invented pot");
        assert_eq!(after.shelf.len(), 1);
    }

    #[test]
    fn what_was_expected_is_frozen_once_and_survives_an_undo() {
        let offered = Action::Put("stock.status".to_owned(), "for_sale".to_owned());
        assert_eq!(offered.event(), Some(PredictedWhen::Offered));
        let work = Action::Put("done[0].what".to_owned(), "T09".to_owned());
        assert_eq!(work.event(), Some(PredictedWhen::Agreed));
        let agreed = typed(Target::Entry("proposal.steps", 0, "agreed"), "yes");
        assert_eq!(agreed.event(), Some(PredictedWhen::Agreed));
        assert_eq!(set("piece.form", "teapot").event(), None);
        let state = update(&with_piece(), offered).unwrap();
        let expected = |price: &str| Action::Expected {
            event: PredictedWhen::Offered,
            generation: open(&state).generation,
            fields: vec![("shipped.price".to_owned(), price.to_owned())],
        };
        let state = update(&state, expected("1/2/3")).unwrap();
        assert_eq!(update(&state, expected("4/5/6")), None, "it is frozen");
        let back = update(&state, Action::Undo).unwrap();
        assert_eq!(open(&back).draft.text("stock.status"), "");
        assert!(open(&back).draft.has_predicted(PredictedWhen::Offered));
        let late = update(&with_piece(), set("closed.outcome", "sold")).unwrap();
        let action = Action::Expected {
            event: PredictedWhen::Offered,
            generation: open(&late).generation,
            fields: vec![("shipped.price".to_owned(), "1/2/3".to_owned())],
        };
        assert_eq!(
            update(&late, action),
            None,
            "nobody is wise after the event"
        );
    }

    #[test]
    fn lessons_hold_until_turned_off_and_invented_pieces_teach_nothing() {
        let on = TurnedOn {
            prices: true,
            works: false,
        };
        let learnt = |layer: &str| {
            Action::Learnt(Box::new(Learning {
                layer: layer.to_owned(),
                ..Learning::default()
            }))
        };
        let state = update(&State::default(), Action::Teach(on)).unwrap();
        let state = update(&state, learnt("3\nfee.lot=1/2/3")).unwrap();
        assert!(!state.lessons.taught.is_empty());
        let shown = update(&state, Action::ShowInvented(true)).unwrap();
        let shown = update(&shown, learnt("")).unwrap();
        assert_eq!(shown.lessons.taught, state.lessons.taught);
        let off = update(&shown, Action::Teach(TurnedOn::default())).unwrap();
        let off = update(&off, learnt("")).unwrap();
        assert!(off.lessons.taught.is_empty() && !off.lessons.invented);
    }

    #[test]
    fn actions_without_effect_leave_the_state_alone() {
        let state = update(&with_piece(), set("piece.form", "teapot")).unwrap();
        assert_eq!(update(&state, set("piece.form", "teapot")), None);
        assert_eq!(update(&state, typed(Target::Flag("piece.rare"), "")), None);
        assert_eq!(update(&state, Action::SetTheme(Theme::System)), None);
        assert_eq!(update(&state, Action::DismissNotice), None);
        assert_eq!(
            update(&State::default(), set("piece.form", "teapot")),
            None,
            "no piece is open"
        );
    }

    #[test]
    fn a_report_stays_until_a_newer_one_arrives() {
        let looked = update(&with_piece(), typed(Target::Answer(FindingId::S03), "seen")).unwrap();
        assert_eq!(looked.shelf[0].answer, owner::TOO_LITTLE);
        let first = weighed(&looked);
        assert_ne!(first.shelf[0].answer, owner::TOO_LITTLE);
        let edited = update(&first, typed(Target::Answer(FindingId::C01), "seen")).unwrap();
        assert_eq!(open(&edited).report(), open(&first).report());
        assert_eq!(edited.shelf[0].answer, first.shelf[0].answer);
        let failure = |generation| Action::Weighed {
            generation,
            report: Err("gone".to_owned()),
        };
        let now = open(&edited).generation;
        let failed = update(&edited, failure(now)).unwrap();
        assert_eq!(open(&failed).weighed.failure.as_deref(), Some("gone"));
        assert_eq!(open(&failed).report(), open(&first).report());
        let again = weighed(&failed);
        assert_eq!(open(&again).weighed.failure, None);
        assert_ne!(open(&again).report(), open(&first).report());
        assert_eq!(update(&again, failure(now - 1)), None, "it is older");
        assert_eq!(update(&again, failure(now + 1)), None, "nobody asked");
    }

    #[test]
    fn a_notice_does_not_read_the_record_again() {
        let state = with_piece();
        let notice = Notice {
            what: "It rains.".to_owned(),
            remedy: "Stay in.".to_owned(),
            rescue: None,
            takes_back: false,
        };
        let noticed = update(&state, Action::Tell(notice.clone())).unwrap();
        assert!(Rc::ptr_eq(&open(&state).identity, &open(&noticed).identity));
        assert_eq!(update(&noticed, Action::Tell(notice)), None);
        assert_eq!(
            update(&noticed, Action::DismissNotice).unwrap().notice,
            None
        );
    }

    #[test]
    fn invalid_text_stays_as_typed_and_has_a_problem() {
        let mut state = with_piece();
        for typed in ["1", "12", "12o"] {
            state = update(&state, set("market.likely", typed)).unwrap();
            assert_eq!(open(&state).draft.text("market.likely"), typed);
        }
        assert!(open(&state).problem("market.likely").is_some());
        let (first, second) = (
            Target::Quote("T09", "likely"),
            Target::Quote("T14a", "likely"),
        );
        state = update(&state, typed(first, "80")).unwrap();
        state = update(&state, typed(second, "lots")).unwrap();
        assert!(second.problem(open(&state)).is_some());
        assert_eq!(first.problem(open(&state)), None);
        let share = Target::Share(PartName::Foot);
        state = update(&state, typed(share, "140")).unwrap();
        assert_eq!(share.text(open(&state)), "140");
        assert!(share.problem(open(&state)).is_some());
        state = update(&state, typed(share, "14")).unwrap();
        assert_eq!(share.problem(open(&state)), None);
    }

    #[test]
    fn entries_of_a_list_are_added_ticked_and_removed() {
        let list = "proposal.steps";
        let parts = Target::Entry(list, 0, "parts");
        let mut state = update(&with_piece(), Action::Add(list)).unwrap();
        for part in ["spout", "foot", "spout"] {
            state = update(&state, Action::Ticked(parts, part)).unwrap();
        }
        assert_eq!(parts.text(open(&state)), "foot");
        assert!(parts.lists(open(&state), "foot") && !parts.lists(open(&state), "spout"));
        let price = Target::Entry(list, 0, "likely");
        state = update(&state, typed(price, "lots")).unwrap();
        assert!(
            price.problem(open(&state)).is_none(),
            "a step without a treatment is named first"
        );
        state = update(&state, typed(Target::Entry(list, 0, "treatment"), "T08")).unwrap();
        assert!(price.problem(open(&state)).is_some());
        state = update(&state, Action::Remove(list, 0)).unwrap();
        assert_eq!(open(&state).draft.count(list), 0);
        assert_eq!(update(&state, Action::Remove(list, 0)), None);
    }

    #[test]
    fn undo_and_redo_cover_every_kind_of_change() {
        let start = with_piece();
        assert_eq!(
            update(&start, Action::Undo),
            None,
            "nothing was changed yet"
        );
        let mut state = update(&start, set("piece.form", "teapot")).unwrap();
        state = update(&state, Action::Put("bench.a.b".to_owned(), "7".to_owned())).unwrap();
        state = update(&state, Action::KeepRecord).unwrap();
        let last = open(&state).draft.clone();
        for _ in 0..3 {
            state = update(&state, Action::Undo).unwrap();
        }
        assert_eq!(open(&state).draft, open(&start).draft);
        assert_eq!(update(&state, Action::Undo), None);
        for _ in 0..3 {
            state = update(&state, Action::Redo).unwrap();
        }
        assert_eq!(open(&state).draft, last);
        assert_eq!(update(&state, Action::Redo), None);
        assert!(
            open(&state).generation > open(&start).generation,
            "it is weighed again"
        );
    }

    #[test]
    fn a_record_changed_elsewhere_replaces_the_draft_and_can_be_undone() {
        let state = with_piece();
        let replaced = |id: &str, name: &str| {
            let mut draft = Draft::default();
            draft.set("piece.name", name);
            Action::Replaced {
                id: id.to_owned(),
                draft: Box::new(draft),
            }
        };
        assert_eq!(update(&state, replaced("other", "x")), None);
        assert_eq!(update(&state, replaced("a", "Invented pot")), None);
        let taken = update(&state, replaced("a", "From elsewhere")).unwrap();
        assert_eq!(taken.shelf[0].name, "From elsewhere");
        let back = update(&taken, Action::Undo).unwrap();
        assert_eq!(open(&back).name(), "Invented pot");
    }

    #[test]
    fn a_shelf_line_names_only_the_plan() {
        assert_eq!(
            first_sentence("Leave it. Other work would cost more."),
            "Leave it."
        );
        assert_eq!(first_sentence("Leave it."), "Leave it.");
    }

    #[test]
    fn an_answer_can_be_taken_back() {
        let (answer, on) = (
            Target::Answer(FindingId::S03),
            Target::SeenOn(FindingId::S03),
        );
        let mut state = update(&with_piece(), typed(answer, "seen")).unwrap();
        state = update(&state, typed(on, "foot")).unwrap();
        assert_eq!(answer.text(open(&state)), "seen");
        assert_eq!(on.text(open(&state)), "foot");
        state = update(&state, typed(answer, "unsure")).unwrap();
        assert_eq!(on.text(open(&state)), "", "where goes with what");
        state = update(&state, typed(answer, "")).unwrap();
        assert_eq!(answer.text(open(&state)), "");
    }

    #[test]
    fn questions_keep_their_positions() {
        let state = weighed(&with_piece());
        let first = open(&state).first_looks.clone();
        assert_eq!(first.len(), FEW);
        let answered = update(&state, typed(Target::Answer(first[1]), "absent")).unwrap();
        let answered = weighed(&answered);
        let looks = &open(&answered).first_looks;
        assert_eq!(looks[..FEW], first);
        assert_eq!(looks.len(), FEW + 1);
    }

    #[test]
    fn changes_arrive_later_and_only_for_the_current_draft() {
        let state = with_piece();
        let found = |generation| Action::Changes {
            generation,
            changes: Ok(Vec::new()),
        };
        let now = open(&state).generation;
        let after = update(&state, found(now)).unwrap();
        assert!(open(&state).changes.is_none() && open(&after).changes.is_some());
        assert_eq!(after.shelf, state.shelf);
        let edited = update(&after, set("piece.form", "tray")).unwrap();
        assert_eq!(open(&edited).changes, None);
        assert_eq!(update(&edited, found(now)), None);
    }

    #[test]
    fn a_page_of_an_older_generation_is_dropped() {
        let loaded = |generation, words: &str| {
            Action::Loaded(LoadedPage {
                name: PageName::Bench,
                generation,
                blocks: Ok(vec![Block::para(words)]),
            })
        };
        let state = with_piece();
        let now = open(&state).generation;
        let edited = update(&state, Action::Put("bench.a.b".to_owned(), "7".to_owned())).unwrap();
        assert_eq!(open(&edited).draft.text("bench.a.b"), "7");
        let shown = update(&edited, loaded(now, "old")).unwrap();
        assert_eq!(shown.loaded.len(), 1, "something is better than nothing");
        let shown = update(&shown, loaded(now + 1, "new")).unwrap();
        assert_eq!(update(&shown, loaded(now, "old")), None);
        assert_eq!(shown.loaded.len(), 1);
        let draft = Box::new(Draft::default());
        let other = update(
            &shown,
            Action::Opened {
                id: "b".to_owned(),
                draft,
            },
        )
        .unwrap();
        assert!(other.loaded.is_empty());
        assert_eq!(update(&other, loaded(now + 1, "of the piece before")), None);
    }

    #[test]
    fn progress_is_shown_until_the_page_arrives() {
        let state = with_piece();
        let now = open(&state).generation;
        let working = |generation| Action::Working {
            name: PageName::Closer,
            generation,
            share: 0.5,
        };
        assert_eq!(update(&state, working(now + 1)), None, "nobody asked");
        let state = update(&state, working(now)).unwrap();
        assert_eq!(state.working, Some((PageName::Closer, 0.5)));
        let page = LoadedPage {
            name: PageName::Closer,
            generation: now,
            blocks: Ok(Vec::new()),
        };
        assert_eq!(update(&state, Action::Loaded(page)).unwrap().working, None);
    }

    #[test]
    fn the_persons_figures_survive_every_edit() {
        let text = r#"{"format":"leavewell-case","version":1,"overrides":{"any":{"value":1}},"later":[1]}"#;
        let draft = Box::new(Draft::parse(text).unwrap());
        let mut state = update(
            &State::default(),
            Action::Opened {
                id: "b".to_owned(),
                draft,
            },
        )
        .unwrap();
        for path in ["piece.name", "aim.goal", "market.high"] {
            state = update(&state, set(path, "x")).unwrap();
        }
        let json = open(&state).draft.to_json();
        assert!(
            json.contains("\"overrides\"") && json.contains("\"later\""),
            "{json}"
        );
    }

    #[test]
    fn a_failed_save_is_shown_until_a_save_succeeds() {
        let state = with_piece();
        let saved = |failure: Option<&str>| Action::Saved {
            id: "a".to_owned(),
            failure: failure.map(str::to_owned),
        };
        assert_eq!(update(&state, saved(None)), None);
        let failed = update(&state, saved(Some("full"))).unwrap();
        assert_eq!(open(&failed).saved, SaveState::Failed("full".to_owned()));
        let edited = update(&failed, set("piece.form", "tray")).unwrap();
        assert_eq!(open(&edited).saved, SaveState::Failed("full".to_owned()));
        assert_eq!(
            open(&update(&edited, saved(None)).unwrap()).saved,
            SaveState::Kept
        );
        assert_eq!(
            update(
                &state,
                Action::Saved {
                    id: "other".to_owned(),
                    failure: Some(String::new())
                }
            ),
            None
        );
    }

    #[test]
    fn removing_a_piece_closes_it_and_keeps_the_rest() {
        let draft = Box::new(Draft::default());
        let two = update(
            &with_piece(),
            Action::Opened {
                id: "b".to_owned(),
                draft,
            },
        )
        .unwrap();
        assert_eq!(
            two.shelf.iter().map(|e| e.id.as_str()).collect::<Vec<_>>(),
            ["b", "a"]
        );
        let one = update(&two, Action::Removed("b".to_owned())).unwrap();
        assert_eq!(one.open, None);
        assert_eq!(one.shelf[0].id, "a");
        let still = update(&two, Action::Removed("a".to_owned())).unwrap();
        assert!(still.open.is_some());
    }

    #[test]
    fn an_unreadable_record_stays_on_the_shelf_with_its_reason() {
        let state = with_piece();
        let problem = Problem {
            field: "file".to_owned(),
            message: "It breaks off.".to_owned(),
            remedy: "Copy it again.".to_owned(),
        };
        let text = Some("{\"form".to_owned());
        let noticed = update(
            &state,
            Action::Unreadable {
                id: "a".to_owned(),
                problem,
                text: text.clone(),
            },
        )
        .unwrap();
        assert_eq!(
            noticed.shelf[0].unreadable.as_deref(),
            Some("It breaks off.")
        );
        assert_eq!(noticed.notice.as_ref().unwrap().rescue, text);
    }
}
