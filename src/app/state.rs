//! What the app knows, and the one pure function that changes it.
//!
//! Pages emit an [`Action`] (what happened to the case) or a [`Wish`] (something only the outside
//! can do, such as opening a stored record). Invariant: [`update`] touches nothing but its
//! argument, and weighs a case again exactly when its draft has changed.

use std::rc::Rc;

use leavewell_model::case::{Currency, Form};
use leavewell_model::{Draft, Problem, Report, weigh_draft};
use serde::{Deserialize, Serialize};
use yew::Reducible;

/// Everything the app knows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct State {
    /// The pieces kept on this device, the newest first.
    pub shelf: Rc<Vec<Entry>>,
    /// The piece being worked on.
    pub open: Option<Rc<Open>>,
    /// Light, dark, or as the system says.
    pub theme: Theme,
    /// What the person has to be told.
    pub notice: Option<Rc<Notice>>,
}

/// The open piece: its record as typed, and what the model makes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Open {
    /// Key under which it is kept.
    pub id: String,
    /// The record as typed.
    pub draft: Draft,
    /// What the model says of it.
    pub report: Rc<Report>,
    /// Whether it is safe on this device.
    pub saved: SaveState,
}

/// One line of the shelf.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Entry {
    /// Key under which the piece is kept.
    pub id: String,
    /// What the owner calls it.
    pub name: String,
    /// Its form in words; empty when not said.
    pub form: String,
    /// The last answer: its first sentence, which names the course and nothing else.
    pub answer: String,
    /// The treatments that answer names, so that their cautions stand beside it.
    #[serde(default)]
    pub steps: Vec<String>,
    /// Why the record cannot be read, when it cannot.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub unreadable: Option<String>,
}

/// Whether the last change is safe on this device.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum SaveState {
    /// It is.
    #[default]
    Kept,
    /// It is not, for this reason.
    Failed(String),
}

/// Light, dark, or as the system says.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Theme {
    /// As the system says.
    #[default]
    System,
    /// Light.
    Light,
    /// Dark.
    Dark,
}

/// Something a person has to be told, and what to do about it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Notice {
    /// What happened.
    pub what: String,
    /// What to do.
    pub remedy: String,
    /// The text of a record that could not be kept or read, offered as a file.
    pub rescue: Option<String>,
}

/// Something that happened.
#[derive(Clone, Debug, PartialEq)]
pub enum Action {
    /// A field such as `market.likely` was typed in; empty text removes it.
    Set {
        /// The field.
        path: String,
        /// What stands in it now.
        typed: String,
    },
    /// A yes-or-no field was answered; `None` takes the answer back.
    SetFlag {
        /// The field.
        path: String,
        /// The answer.
        yes: Option<bool>,
    },
    /// A finding was answered; an empty answer means "not looked".
    Answer {
        /// Finding id.
        finding: String,
        /// `seen`, `absent`, `unsure` or empty.
        answer: String,
        /// Part id, or empty for the whole piece.
        part: String,
    },
    /// A field of a part was typed in or chosen.
    SetPart {
        /// Part id.
        part: String,
        /// The field, such as `bleed`.
        field: String,
        /// What stands in it now.
        typed: String,
    },
    /// A field of a quote was typed in.
    SetQuote {
        /// Treatment id.
        treatment: String,
        /// `low`, `likely` or `high`.
        field: String,
        /// What stands in it now.
        typed: String,
    },
    /// A record was opened or made; it becomes the open piece.
    Opened {
        /// Key under which it is kept.
        id: String,
        /// The record.
        draft: Box<Draft>,
    },
    /// A record could not be read.
    Unreadable {
        /// Key under which it is kept.
        id: String,
        /// Why.
        problem: Problem,
        /// The record as it stands, so that it can be saved as a file.
        text: Option<String>,
    },
    /// The open piece was put aside.
    CloseCase,
    /// A piece was taken off this device.
    Removed(String),
    /// The open piece was kept, or could not be.
    Saved {
        /// Its key.
        id: String,
        /// Why not, when it could not be kept.
        failure: Option<String>,
    },
    /// Another appearance was chosen.
    SetTheme(Theme),
    /// There is something to tell.
    Tell(Notice),
    /// What was told has been read.
    DismissNotice,
}

/// Something asked for on the shelf that needs the outside: storage, a file, the clock.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Wish {
    /// Start a piece with this name and form id; either may be empty.
    New {
        /// Name.
        name: String,
        /// Form id.
        form: String,
    },
    /// Go on with a stored piece.
    Open(String),
    /// Open a copy of a worked example.
    Example(usize),
    /// Take in the text of a case file.
    Import(String),
    /// Save a stored piece as a file.
    SaveAsFile(String),
    /// Save this text as a file of this name.
    Rescue(String),
    /// Take a stored piece off this device.
    Delete(String),
}

impl Open {
    /// Weighs a record and wraps it.
    #[must_use]
    pub fn new(id: String, draft: Draft) -> Self {
        let report = Rc::new(weigh_draft(&draft));
        Self {
            id,
            draft,
            report,
            saved: SaveState::Kept,
        }
    }

    /// What the piece is called on screen.
    #[must_use]
    pub fn name(&self) -> String {
        let name = self.draft.text("piece.name");
        if !name.trim().is_empty() {
            return name;
        }
        self.form().map_or_else(
            || "Unnamed piece".to_owned(),
            |form| form.label().to_owned(),
        )
    }

    /// Its form, when it was said.
    #[must_use]
    pub fn form(&self) -> Option<Form> {
        Form::parse(&self.draft.text("piece.form"))
    }

    /// The currency amounts are shown in.
    #[must_use]
    pub fn currency(&self) -> Currency {
        Currency::parse(self.report.value.currency).unwrap_or(Currency::Other)
    }

    /// What is wrong with a field such as `market.likely`.
    #[must_use]
    pub fn problem(&self, path: &str) -> Option<Problem> {
        self.report
            .problems
            .iter()
            .find(|p| p.field == path)
            .cloned()
    }

    /// What is wrong with a field of a part.
    #[must_use]
    pub fn part_problem(&self, part: &str, field: &str) -> Option<Problem> {
        self.entry_problem("parts", "part", part, field)
    }

    /// What is wrong with a field of a quote.
    #[must_use]
    pub fn quote_problem(&self, treatment: &str, field: &str) -> Option<Problem> {
        self.entry_problem("quotes", "treatment", treatment, field)
    }

    /// The model names entries by their place in the list, screens by what they are about.
    fn entry_problem(&self, list: &str, key: &str, id: &str, field: &str) -> Option<Problem> {
        if !self
            .report
            .problems
            .iter()
            .any(|p| p.field.starts_with(list))
        {
            return None;
        }
        let entries: Vec<serde_json::Value> = serde_json::from_str(&self.draft.text(list)).ok()?;
        let at = entries
            .iter()
            .position(|e| e.get(key).and_then(serde_json::Value::as_str) == Some(id))?;
        self.problem(&format!("{list}[{at}].{field}"))
    }

    /// Its line on the shelf.
    #[must_use]
    pub fn entry(&self) -> Entry {
        Entry {
            id: self.id.clone(),
            name: self.name(),
            form: self
                .form()
                .map(|form| form.label().to_owned())
                .unwrap_or_default(),
            answer: first_sentence(&self.report.counsel.sentence),
            steps: self
                .report
                .counsel
                .steps
                .iter()
                .map(|&id| id.to_owned())
                .collect(),
            unreadable: None,
        }
    }

    fn with_draft(&self, draft: Draft) -> Self {
        Self {
            saved: self.saved.clone(),
            ..Self::new(self.id.clone(), draft)
        }
    }
}

impl Theme {
    /// Every choice.
    pub const ALL: [Self; 3] = [Self::System, Self::Light, Self::Dark];

    /// The id it is kept under.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::System => "system",
            Self::Light => "light",
            Self::Dark => "dark",
        }
    }

    /// In words.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::System => "As the system",
            Self::Light => "Light",
            Self::Dark => "Dark",
        }
    }

    /// The choice with this id.
    #[must_use]
    pub fn parse(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|theme| theme.id() == id)
    }
}

impl Reducible for State {
    type Action = Action;

    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        // The same Rc tells yew that there is nothing to draw.
        match update(&self, action) {
            Some(next) => Rc::new(next),
            None => self,
        }
    }
}

/// The state after an action; `None` when nothing has changed.
#[must_use]
pub fn update(state: &State, action: Action) -> Option<State> {
    match action {
        Action::Set { path, typed } => edit(state, |draft| draft.set(&path, &typed)),
        Action::SetFlag { path, yes } => edit(state, |draft| draft.set_flag(&path, yes)),
        Action::Answer {
            finding,
            answer,
            part,
        } => edit(state, |draft| draft.set_answer(&finding, &answer, &part)),
        Action::SetPart { part, field, typed } => {
            edit(state, |draft| draft.set_part(&part, &field, &typed))
        }
        Action::SetQuote {
            treatment,
            field,
            typed,
        } => edit(state, |draft| draft.set_quote(&treatment, &field, &typed)),
        Action::Opened { id, draft } => Some(with_open(state, Open::new(id, *draft))),
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
    }
}

fn edit(state: &State, change: impl FnOnce(&mut Draft)) -> Option<State> {
    let open = state.open.as_ref()?;
    let mut draft = open.draft.clone();
    change(&mut draft);
    (draft != open.draft).then(|| with_open(state, open.with_draft(draft)))
}

/// Makes a piece the open one and brings its line on the shelf up to date.
fn with_open(state: &State, open: Open) -> State {
    let entry = open.entry();
    let shelf = match state.shelf.iter().position(|e| e.id == entry.id) {
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

fn first_sentence(text: &str) -> String {
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

    fn set(path: &str, typed: &str) -> Action {
        Action::Set {
            path: path.to_owned(),
            typed: typed.to_owned(),
        }
    }

    fn open(state: &State) -> &Open {
        state.open.as_deref().unwrap()
    }

    #[test]
    fn a_change_is_weighed_and_shelved_at_once() {
        let before = with_piece();
        let after = update(&before, set("piece.form", "teapot")).unwrap();
        assert!(!Rc::ptr_eq(&open(&before).report, &open(&after).report));
        assert_eq!(after.shelf[0].form, "Teapot");
        assert_eq!(after.shelf[0].name, "Invented pot");
        assert_eq!(after.shelf.len(), 1);
    }

    #[test]
    fn what_changes_nothing_is_no_change() {
        let state = update(&with_piece(), set("piece.form", "teapot")).unwrap();
        assert_eq!(update(&state, set("piece.form", "teapot")), None);
        assert_eq!(
            update(
                &state,
                Action::SetFlag {
                    path: "piece.rare".to_owned(),
                    yes: None
                }
            ),
            None
        );
        assert_eq!(update(&state, Action::SetTheme(Theme::System)), None);
        assert_eq!(update(&state, Action::DismissNotice), None);
        assert_eq!(
            update(&State::default(), set("piece.form", "teapot")),
            None,
            "no piece is open"
        );
    }

    #[test]
    fn telling_something_does_not_weigh_again() {
        let state = with_piece();
        let notice = Notice {
            what: "It rains.".to_owned(),
            remedy: "Stay in.".to_owned(),
            rescue: None,
        };
        let told = update(&state, Action::Tell(notice.clone())).unwrap();
        assert!(Rc::ptr_eq(&open(&state).report, &open(&told).report));
        assert_eq!(update(&told, Action::Tell(notice)), None);
        assert_eq!(update(&told, Action::DismissNotice).unwrap().notice, None);
    }

    #[test]
    fn text_stays_as_typed_and_its_problem_is_found() {
        let mut state = with_piece();
        for typed in ["1", "12", "12o"] {
            state = update(&state, set("market.likely", typed)).unwrap();
            assert_eq!(open(&state).draft.text("market.likely"), typed);
        }
        assert!(open(&state).problem("market.likely").is_some());
        let quote = |treatment: &str, typed: &str| Action::SetQuote {
            treatment: treatment.to_owned(),
            field: "likely".to_owned(),
            typed: typed.to_owned(),
        };
        state = update(&state, quote("T09", "80")).unwrap();
        state = update(&state, quote("T14a", "lots")).unwrap();
        assert!(open(&state).quote_problem("T14a", "likely").is_some());
        assert_eq!(open(&state).quote_problem("T09", "likely"), None);
        let part = |typed: &str| Action::SetPart {
            part: "foot".to_owned(),
            field: "bleed".to_owned(),
            typed: typed.to_owned(),
        };
        state = update(&state, part("140 %")).unwrap();
        assert!(open(&state).part_problem("foot", "bleed").is_some());
        state = update(&state, part("14 %")).unwrap();
        assert_eq!(open(&state).part_problem("foot", "bleed"), None);
    }

    #[test]
    fn the_shelf_names_the_course_only() {
        assert_eq!(
            first_sentence("Leave it. Other work would cost more."),
            "Leave it."
        );
        assert_eq!(first_sentence("Leave it."), "Leave it.");
    }

    #[test]
    fn an_answer_can_be_taken_back() {
        let answer = |answer: &str| Action::Answer {
            finding: "S03".to_owned(),
            answer: answer.to_owned(),
            part: String::new(),
        };
        let seen = update(&with_piece(), answer("seen")).unwrap();
        assert_eq!(open(&seen).draft.answer("S03").0, "seen");
        let again = update(&seen, answer("")).unwrap();
        assert_eq!(open(&again).draft.answer("S03").0, "");
    }

    #[test]
    fn what_the_person_overrode_survives_every_edit() {
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
    fn a_failure_to_keep_is_shown_until_it_is_over() {
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
    fn a_record_that_cannot_be_read_stays_on_the_shelf_with_its_reason() {
        let state = with_piece();
        let problem = Problem {
            field: "file".to_owned(),
            message: "It breaks off.".to_owned(),
            remedy: "Copy it again.".to_owned(),
        };
        let text = Some("{\"form".to_owned());
        let told = update(
            &state,
            Action::Unreadable {
                id: "a".to_owned(),
                problem,
                text: text.clone(),
            },
        )
        .unwrap();
        assert_eq!(told.shelf[0].unreadable.as_deref(), Some("It breaks off."));
        assert_eq!(told.notice.as_ref().unwrap().rescue, text);
    }
}
