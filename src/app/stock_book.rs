//! The stock book: which pieces on the shelf are shown, in which order, and which of them are chosen.

use leavewell_model::terms::ShortSort;
use std::cmp::Ordering;

use leavewell_model::terms::{StockStatus, Treatment};

use super::shelf_line::ShelfLine;

/// Pieces on one page of the book.
pub const PAGE: usize = 50;
/// The pieces from which on it is worth searching them.
pub const WORTH_SEARCHING: usize = 4;

/// How the shelf is laid out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Layout {
    /// A card for each piece.
    #[default]
    Cards,
    /// A row for each piece.
    Table,
}

/// A column of the book.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum BookColumn {
    /// The order of the shelf: newest first. It is no column of the table.
    #[default]
    Newest,
    /// The stock number.
    Number,
    /// The lot it was bought in.
    Lot,
    /// The name.
    Name,
    /// What it is and is made of.
    Kind,
    /// Where it is.
    Place,
    /// What was paid.
    Paid,
    /// What was spent on work.
    Spent,
    /// The price asked.
    Asking,
    /// The most to pay, while it is not bought.
    Most,
    /// What we advise.
    Advised,
    /// Where it stands.
    Status,
}

/// What a person does in the book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BookChange {
    /// Search for this text.
    Search(String),
    /// Sort by this column; the other way round when it is sorted by it already.
    Sort(BookColumn),
    /// Show only pieces with this status: its id, `none`, or empty for all.
    Filter(String),
    /// Choose a piece, or take it back.
    Choose(String),
    /// Choose every piece found.
    ChooseFound,
    /// Choose none.
    ChooseNone,
    /// Go to this page, counted from 0.
    Turn(usize),
    /// Show cards or a table.
    Lay(Layout),
}

/// The shelf as it is shown.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct StockBook {
    /// Cards or a table.
    pub layout: Layout,
    /// What is searched for, as typed.
    pub search: String,
    /// The column it is sorted by.
    pub column: BookColumn,
    /// Whether the order is the other way round.
    pub is_reversed: bool,
    /// The status shown: its id, `none`, or empty for all.
    pub status: String,
    /// The ids of the pieces chosen.
    pub chosen: Vec<String>,
    /// The page shown, counted from 0.
    pub page: usize,
}

impl Layout {
    /// The id it is stored under.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Cards => "cards",
            Self::Table => "table",
        }
    }
}

impl BookColumn {
    /// The columns of the table, in their order.
    pub const SHOWN: [Self; 11] = [
        Self::Number,
        Self::Name,
        Self::Kind,
        Self::Place,
        Self::Lot,
        Self::Paid,
        Self::Spent,
        Self::Asking,
        Self::Most,
        Self::Advised,
        Self::Status,
    ];

    /// Whether it holds amounts.
    #[must_use]
    pub fn is_amount(self) -> bool {
        matches!(self, Self::Paid | Self::Spent | Self::Asking | Self::Most)
    }
}

impl StockBook {
    /// The book after a change.
    #[must_use]
    pub fn with(&self, change: BookChange, shelf: &[ShelfLine]) -> Self {
        let mut book = self.clone();
        match change {
            BookChange::Search(search) => {
                book.search = search;
                book.page = 0;
            }
            BookChange::Sort(column) => {
                book.is_reversed = book.column == column && !book.is_reversed;
                book.column = column;
                book.page = 0;
            }
            BookChange::Filter(status) => {
                book.status = status;
                book.page = 0;
            }
            BookChange::Choose(id) => match book.chosen.iter().position(|known| *known == id) {
                Some(at) => {
                    book.chosen.remove(at);
                }
                None => book.chosen.push(id),
            },
            BookChange::ChooseFound => {
                let found = self.found(shelf);
                book.chosen = found.iter().map(|line| line.id.clone()).collect();
            }
            BookChange::ChooseNone => book.chosen.clear(),
            BookChange::Turn(page) => book.page = page,
            BookChange::Lay(layout) => book.layout = layout,
        }
        book
    }

    /// The pieces found, in order.
    #[must_use]
    pub fn found<'a>(&self, shelf: &'a [ShelfLine]) -> Vec<&'a ShelfLine> {
        let wanted: Vec<String> = self
            .search
            .split_whitespace()
            .map(str::to_lowercase)
            .collect();
        let mut found: Vec<&ShelfLine> = shelf
            .iter()
            .filter(|line| self.has_status(line) && has_words(line, &wanted))
            .collect();
        match self.column {
            BookColumn::Newest => {}
            column => found.order_by(|a, b| self.ordered(column, a, b)),
        }
        if self.is_reversed && self.column == BookColumn::Newest {
            found.reverse();
        }
        if self.is_grouped() {
            found.order_by(|a, b| group(a).cmp(&group(b)));
        }
        found
    }

    /// The chosen pieces that are still on the shelf; if none is chosen, every piece found.
    #[must_use]
    pub fn chosen_or_found<'a>(&self, shelf: &'a [ShelfLine]) -> Vec<&'a ShelfLine> {
        let found = self.found(shelf);
        let chosen = |line: &&ShelfLine| self.chosen.contains(&line.id);
        if shelf.iter().any(|line| chosen(&line)) {
            shelf.iter().filter(chosen).collect()
        } else {
            found
        }
    }

    fn has_status(&self, line: &ShelfLine) -> bool {
        match (self.status.as_str(), line.stock.status) {
            ("", _) | ("none", None) => true,
            (wanted, Some(status)) => status.id() == wanted,
            (_, None) => false,
        }
    }

    /// Whether the table stands in groups by what to do: where it is in no order of another column.
    #[must_use]
    pub fn is_grouped(&self) -> bool {
        self.layout == Layout::Table
            && matches!(self.column, BookColumn::Newest | BookColumn::Advised)
    }

    /// The order of two pieces. What a column does not know comes last, whichever way round.
    fn ordered(&self, column: BookColumn, a: &ShelfLine, b: &ShelfLine) -> Ordering {
        let way = |order: Ordering| {
            if self.is_reversed {
                order.reverse()
            } else {
                order
            }
        };
        if column.is_amount() {
            let amount = |line: &ShelfLine| match column {
                BookColumn::Paid => line.stock.paid,
                BookColumn::Spent => line.stock.spent,
                BookColumn::Most => line.stock.most_while_looking(),
                _ => line.stock.asking,
            };
            return match (amount(a), amount(b)) {
                (Some(a), Some(b)) => way(a.total_cmp(&b)),
                (a, b) => b.is_some().cmp(&a.is_some()),
            };
        }
        let status = |line: &ShelfLine| {
            let place = |status| StockStatus::ALL.iter().position(|one| *one == status);
            line.stock.status.and_then(place)
        };
        if column == BookColumn::Status {
            return match (status(a), status(b)) {
                (Some(a), Some(b)) => way(a.cmp(&b)),
                (a, b) => b.is_some().cmp(&a.is_some()),
            };
        }
        let text = |line: &'_ ShelfLine| -> String {
            match column {
                BookColumn::Number => line.stock.number.to_lowercase(),
                BookColumn::Lot => line.stock.lot.to_lowercase(),
                BookColumn::Kind => [&line.form, " ", &line.stock.kind].concat().to_lowercase(),
                BookColumn::Place => line.stock.place.to_lowercase(),
                BookColumn::Advised => line.answer.to_lowercase(),
                _ => line.name.to_lowercase(),
            }
        };
        let (a, b) = (text(a), text(b));
        match (a.trim().is_empty(), b.trim().is_empty()) {
            (false, false) => way(by_numbers(&a, &b)),
            (a, b) => a.cmp(&b),
        }
    }
}

/// What to do with a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ToDo {
    /// Work is advised.
    Work,
    /// It is looked at and not bought yet.
    Offered,
    /// It is left as it is, and kept well.
    Leave,
    /// Nothing is advised yet.
    Look,
    /// It is sold or returned.
    Gone,
}

/// The group of a piece.
#[must_use]
pub fn group(line: &ShelfLine) -> ToDo {
    let is_left = |id: &String| {
        [Treatment::Leave, Treatment::Keeping]
            .iter()
            .any(|treatment| treatment.id() == id)
    };
    match line.stock.status {
        Some(StockStatus::Sold | StockStatus::Returned) => ToDo::Gone,
        Some(StockStatus::Looking) => ToDo::Offered,
        _ if line.steps.is_empty() => ToDo::Look,
        _ if line.steps.iter().all(is_left) => ToDo::Leave,
        _ => ToDo::Work,
    }
}

/// Whether every word stands somewhere in the line.
fn has_words(line: &ShelfLine, wanted: &[String]) -> bool {
    if wanted.is_empty() {
        return true;
    }
    let stock = &line.stock;
    let status = stock.status.map_or("", StockStatus::label);
    let all = [
        stock.number.as_str(),
        line.name.as_str(),
        line.form.as_str(),
        stock.kind.as_str(),
        stock.place.as_str(),
        stock.lot.as_str(),
        line.answer.as_str(),
        status,
    ];
    let all = all.join("\n").to_lowercase();
    wanted.iter().all(|word| all.contains(word.as_str()))
}

/// Texts in order, with the numbers in them by their size: "a2" comes before "a10".
fn by_numbers(a: &str, b: &str) -> Ordering {
    let (mut a, mut b) = (a, b);
    loop {
        let (one, other) = (digits(a), digits(b));
        if !one.is_empty() && !other.is_empty() {
            let (x, y) = (one.trim_start_matches('0'), other.trim_start_matches('0'));
            let order = x.len().cmp(&y.len()).then_with(|| x.cmp(y));
            if order != Ordering::Equal {
                return order;
            }
            (a, b) = (&a[one.len()..], &b[other.len()..]);
            continue;
        }
        let (mut left, mut right) = (a.chars(), b.chars());
        match (left.next(), right.next()) {
            (Some(x), Some(y)) if x == y => (a, b) = (left.as_str(), right.as_str()),
            (x, y) => return x.cmp(&y),
        }
    }
}

/// The digits a text begins with.
fn digits(text: &str) -> &str {
    let end = text.find(|c: char| !c.is_ascii_digit());
    &text[..end.unwrap_or(text.len())]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::shelf_line::StockLine;

    fn line(id: &str, number: &str, name: &str, paid: Option<f64>) -> ShelfLine {
        ShelfLine {
            id: id.to_owned(),
            name: name.to_owned(),
            stock: StockLine {
                number: number.to_owned(),
                lot: if id == "c" {
                    String::new()
                } else {
                    "L7".to_owned()
                },
                paid,
                status: paid.map(|_| StockStatus::Bought),
                ..StockLine::default()
            },
            ..ShelfLine::default()
        }
    }

    fn shelf() -> Vec<ShelfLine> {
        vec![
            line("a", "A10", "Teapot, knob lost", Some(70.0)),
            line("b", "A2", "Oval tray", None),
            line("c", "", "Coffee pot", Some(9.0)),
        ]
    }

    fn ids(book: &StockBook) -> String {
        let shelf = shelf();
        let found = book.found(&shelf);
        found.iter().map(|line| line.id.as_str()).collect()
    }

    fn after(changes: impl IntoIterator<Item = BookChange>) -> StockBook {
        let shelf = shelf();
        let book = StockBook::default();
        changes
            .into_iter()
            .fold(book, |book, change| book.with(change, &shelf))
    }

    #[test]
    fn every_word_of_a_search_must_stand_somewhere() {
        for (search, found) in [
            ("", "abc"),
            ("pot", "ac"),
            ("POT knob", "a"),
            ("a2", "b"),
            ("bought", "ac"),
            ("l7", "ab"),
            ("x", ""),
        ] {
            assert_eq!(
                ids(&after([BookChange::Search(search.to_owned())])),
                found,
                "{search}"
            );
        }
    }

    #[test]
    fn what_a_column_does_not_know_comes_last_either_way() {
        use BookColumn::{Lot, Name, Newest, Number, Paid, Status};
        for (column, once, twice) in [
            (Number, "bac", "abc"),
            (Paid, "cab", "acb"),
            (Name, "cba", "abc"),
            (Status, "acb", "acb"),
            (Lot, "abc", "abc"),
        ] {
            assert_eq!(ids(&after([BookChange::Sort(column)])), once, "{column:?}");
            let reversed = after([BookChange::Sort(column), BookChange::Sort(column)]);
            assert_eq!(ids(&reversed), twice, "{column:?}");
        }
        assert_eq!(
            ids(&after([BookChange::Sort(Newest)])),
            "cba",
            "it is sorted by it already"
        );
    }

    #[test]
    fn a_filter_shows_one_status_or_the_pieces_without_one() {
        for (status, found) in [("", "abc"), ("bought", "ac"), ("none", "b"), ("sold", "")] {
            assert_eq!(ids(&after([BookChange::Filter(status.to_owned())])), found);
        }
    }

    #[test]
    fn what_is_chosen_stays_chosen_while_one_searches() {
        let choose = |id: &str| BookChange::Choose(id.to_owned());
        let book = after([
            choose("a"),
            choose("b"),
            choose("a"),
            BookChange::Search("pot".to_owned()),
        ]);
        assert_eq!(book.chosen, ["b"]);
        let shelf = shelf();
        assert_eq!(book.chosen_or_found(&shelf)[0].id, "b");
        let none = book.with(BookChange::ChooseNone, &shelf);
        assert_eq!(none.chosen_or_found(&shelf).len(), 2);
        assert_eq!(
            none.with(BookChange::ChooseFound, &shelf).chosen,
            ["a", "c"]
        );
        let mut gone = none;
        gone.chosen.push("gone".to_owned());
        assert_eq!(gone.chosen_or_found(&shelf).len(), 2);
    }

    #[test]
    fn a_new_search_begins_at_its_first_page() {
        let book = after([BookChange::Turn(3), BookChange::Search("p".to_owned())]);
        assert_eq!(book.page, 0);
    }

    #[test]
    fn numbers_sort_by_their_size() {
        for (a, b) in [
            ("a2", "a10"),
            ("a", "a1"),
            ("7", "007b"),
            ("x9y", "x10"),
            ("", "a"),
        ] {
            assert_eq!(by_numbers(a, b), Ordering::Less, "{a} {b}");
        }
        assert_eq!(by_numbers("a1", "a1"), Ordering::Equal);
    }
}
