//! The stock as a table for a spreadsheet: RFC 4180 text, written and read.
//!
//! Invariants: nothing in a file is ever run, and a cell that a spreadsheet would run is written so that it
//! does not; what cannot be used is said before anything is added, and kept in the record as written.

use csv::{ReaderBuilder, Terminator, WriterBuilder};
use leavewell_model::record::{Draft, hundredths, put_status};
use leavewell_model::terms::{
    Currency, DateOrder, Form, LotRule, Relation, StockStatus, WrittenDate,
};
use leavewell_model::{ledger, record::schema};
use serde::{Deserialize, Serialize};

use super::wording::stock_table as words;

/// Most pieces that are taken in at once.
pub const MOST_ROWS: usize = 5_000;
/// Largest table that is read, in bytes.
pub const MOST_BYTES: usize = 64 * 1024 * 1024;
/// Rows shown of a table, and uneven rows that are named one by one.
const SHOWN: usize = 5;
/// What may stand at the beginning of a file in UTF-8.
const UTF_8_MARK: [u8; 3] = [0xef, 0xbb, 0xbf];
/// How a cell begins that a spreadsheet may run.
const RUN: [char; 6] = ['=', '+', '-', '@', '\t', '\r'];

/// A column that a table may hold: its heading and its field in the record.
struct TableColumn {
    heading: &'static str,
    path: &'static str,
}

const fn column(heading: &'static str, path: &'static str) -> TableColumn {
    TableColumn { heading, path }
}

const COLUMNS: [TableColumn; 24] = [
    column(words::NUMBER, "stock.number"),
    column(words::NAME, "piece.name"),
    column(words::FORM, "piece.form"),
    column(words::COUNT, "pieces.count"),
    column(words::RELATION, "pieces.relation"),
    column(words::STATUS, "stock.status"),
    column(words::PLACE, "stock.where"),
    column(words::BOUGHT_ON, "stock.bought_on"),
    column(words::PAID, "worth.paid"),
    column(words::LOT, "lot.id"),
    column(words::LOT_PRICE, "lot.price"),
    column(words::LOT_RULE, "lot.rule"),
    column(words::LOT_SHARE, "lot.share"),
    column(words::ASKING, "stock.asking"),
    column(words::RESERVE, "stock.reserve"),
    column(words::CURRENCY, "market.currency"),
    column(words::NOT_BEFORE, "piece.from_year"),
    column(words::NOT_AFTER, "piece.to_year"),
    column(words::HEIGHT, "piece.height_mm"),
    column(words::LENGTH, "piece.length_mm"),
    column(words::WIDTH, "piece.width_mm"),
    column(words::WEIGHT, "piece.weight_g"),
    column(words::LIKELY, "market.likely"),
    column(words::DESCRIPTION, "looked.described"),
];

/// The field with dates, and what is put behind it where the person says how they are written.
const DATES: &str = "stock.bought_on";
const DAY_FIRST: &str = "stock.bought_on:day";
const MONTH_FIRST: &str = "stock.bought_on:month";

/// The field a column fills, without how its dates are written.
fn field_of(column: &str) -> &str {
    column.split_once(':').map_or(column, |(field, _)| field)
}

/// The words that a field may hold, id and label; `None` for one that holds any text.
fn vocabulary(path: &str) -> Option<Vec<(&'static str, &'static str)>> {
    Some(match path {
        "piece.form" => labels(Form::ALL, |form| (form.id(), form.label())),
        "pieces.relation" => labels(Relation::ALL, |relation| (relation.id(), relation.label())),
        "lot.rule" => labels(LotRule::ALL, |rule| (rule.id(), rule.label())),
        "stock.status" => labels(StockStatus::ALL, |status| (status.id(), status.label())),
        "market.currency" => labels(Currency::ALL, |currency| (currency.id(), currency.label())),
        _ => return None,
    })
}

/// A piece to be written.
#[derive(Debug, Deserialize)]
struct Written {
    record: String,
    #[serde(default)]
    advised: String,
}

/// A table to be read: its text, and the field of each column as the person matched them, if they did.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct TableQuestion {
    /// The text of the file.
    pub text: String,
    /// How its bytes were read.
    pub encoding: Encoding,
    /// The field of each column, empty for one that is left out; none at all if nobody has matched them yet.
    pub columns: Vec<String>,
    /// The day on which it is read: year-month-day.
    pub asked_on: String,
}

/// How the bytes of a file were read as text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Encoding {
    /// UTF-8, with or without a mark at its beginning.
    Utf8,
    /// UTF-16, by the mark at its beginning.
    Utf16,
    /// Windows-1252: the bytes are no UTF-8.
    Windows1252,
}

/// What a table holds, before anything of it is added.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct TablePreview {
    /// Why it cannot be read and what to do; empty if it can.
    pub refused: Vec<String>,
    /// The headings.
    pub headings: Vec<String>,
    /// The field of each column; empty for one that is left out.
    pub columns: Vec<String>,
    /// The first rows.
    pub first_rows: Vec<Vec<String>>,
    /// What is to be said of the whole table.
    pub notes: Vec<String>,
    /// Its pieces, in the order of the rows.
    pub pieces: Vec<TablePiece>,
}

/// A piece in a table.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct TablePiece {
    /// Its name, or its form; empty if it has neither.
    pub name: String,
    /// Its stock number; may be empty.
    pub number: String,
    /// Its record.
    pub record: String,
    /// What cannot be used of it.
    pub notes: Vec<String>,
}

/// The fields that a column may fill: path and heading.
pub fn fields() -> impl Iterator<Item = (&'static str, &'static str)> {
    let columns = COLUMNS.iter().map(|column| (column.path, column.heading));
    columns.chain([
        (DAY_FIRST, words::BOUGHT_DAY_FIRST),
        (MONTH_FIRST, words::BOUGHT_MONTH_FIRST),
    ])
}

/// The bytes of a file as text, and how they were read. `None` if they are no text.
#[must_use]
pub fn decode(bytes: &[u8]) -> Option<(String, Encoding)> {
    let utf_16 = |bytes: &[u8], unit: fn([u8; 2]) -> u16| {
        let units = bytes.chunks_exact(2).map(|pair| unit([pair[0], pair[1]]));
        let text: Result<String, _> = char::decode_utf16(units).collect();
        text.ok().map(|text| (text, Encoding::Utf16))
    };
    match bytes {
        [0xff, 0xfe, rest @ ..] => return utf_16(rest, u16::from_le_bytes),
        [0xfe, 0xff, rest @ ..] => return utf_16(rest, u16::from_be_bytes),
        _ => {}
    }
    let bytes = bytes.strip_prefix(&UTF_8_MARK).unwrap_or(bytes);
    match std::str::from_utf8(bytes) {
        Ok(text) => Some((text.to_owned(), Encoding::Utf8)),
        // A nought stands in no text of this encoding.
        Err(_) if bytes.contains(&0) => None,
        Err(_) => {
            let text = bytes.iter().map(|byte| windows_1252(*byte)).collect();
            Some((text, Encoding::Windows1252))
        }
    }
}

/// A letter of Windows-1252. The five bytes without a letter become the mark for one that is not known.
fn windows_1252(byte: u8) -> char {
    const HIGH: [char; 32] = [
        '€', '\u{fffd}', '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', '\u{fffd}', 'Ž',
        '\u{fffd}', '\u{fffd}', '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ',
        '\u{fffd}', 'ž', 'Ÿ',
    ];
    match byte {
        0x80..=0x9f => HIGH[usize::from(byte - 0x80)],
        _ => char::from(byte),
    }
}

/// The table of these pieces, from JSON text: a list of `{"record": text, "advised": sentence}`.
#[must_use]
pub fn write(question: &str) -> String {
    let pieces: Vec<Written> = serde_json::from_str(question).unwrap_or_default();
    let mut writer = WriterBuilder::new()
        .terminator(Terminator::CRLF)
        .from_writer(Vec::new());
    let head = COLUMNS.iter().map(|column| column.heading);
    // Writing into memory does not fail, nor does a row of the same length.
    let _ = writer.write_record(head.chain([words::SPENT, words::ADVISED]));
    for piece in &pieces {
        let Ok(draft) = Draft::parse(&piece.record) else {
            continue;
        };
        let _ = writer.write_record(row(&draft, &piece.advised));
    }
    let bytes = writer.into_inner().unwrap_or_default();
    // The mark tells spreadsheets that this is UTF-8.
    ["\u{feff}", &String::from_utf8_lossy(&bytes)].concat()
}

fn row(draft: &Draft, advised: &str) -> Vec<String> {
    let (case, _) = draft.read();
    let mut cells: Vec<String> = COLUMNS
        .iter()
        .map(|column| {
            let typed = draft.text(column.path);
            let text = match column.path {
                "stock.status" => case
                    .stock_status()
                    .map_or(typed, |status| status.id().to_owned()),
                // A pair is two, and one left of a pair is that, whether or not it was typed here.
                "pieces.count" if typed.is_empty() && case.pieces.are_several() => {
                    case.pieces.count.to_string()
                }
                "pieces.relation" if typed.is_empty() => match case.pieces.relation {
                    Relation::Single => typed,
                    relation => relation.id().to_owned(),
                },
                _ => typed,
            };
            let label = vocabulary(column.path).and_then(|words| {
                let known = words.into_iter().find(|(id, _)| *id == text);
                known.map(|(_, label)| label.to_owned())
            });
            harmless(label.unwrap_or(text))
        })
        .collect();
    let spent: f64 = case.done.iter().filter_map(|done| done.bill).sum();
    cells.push(if spent > 0.0 {
        hundredths(spent)
    } else {
        String::new()
    });
    cells.push(harmless(advised.to_owned()));
    cells
}

/// The cell so that no spreadsheet runs it: an apostrophe stands before what would be a formula.
fn harmless(cell: String) -> String {
    let mut rest = cell.chars().skip(1).peekable();
    let is_number = rest.peek().is_some()
        && cell.starts_with(['-', '+'])
        && rest.all(|c| c.is_ascii_digit() || matches!(c, '.' | ','));
    if cell.starts_with(RUN) && !is_number {
        ["'", &cell].concat()
    } else {
        cell
    }
}

/// The text of a cell, without the apostrophe that keeps it from being run.
fn plain(cell: &str) -> &str {
    let cell = cell.trim();
    match cell.strip_prefix('\'') {
        Some(rest) if rest.starts_with(RUN) => rest,
        _ => cell,
    }
}

/// Reads a table, as far as it can be read.
#[must_use]
pub fn read(question: &TableQuestion) -> TablePreview {
    if question.text.starts_with("PK\u{3}") {
        return refused(words::SPREADSHEET.map(str::to_owned));
    }
    if question.text.contains('\0') {
        return refused(words::NOT_TEXT.map(str::to_owned));
    }
    let mut reader = ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(delimiter(&question.text))
        .from_reader(question.text.as_bytes());
    let mut headings: Vec<String> = Vec::new();
    let mut rows: Vec<(usize, Vec<String>)> = Vec::new();
    let mut count = 0;
    for (place, record) in reader.records().enumerate() {
        let Ok(record) = record else { continue };
        if record.iter().all(|cell| cell.trim().is_empty()) {
            continue;
        }
        if headings.is_empty() {
            headings = record.iter().map(|cell| cell.trim().to_owned()).collect();
            continue;
        }
        count += 1;
        if count <= MOST_ROWS {
            rows.push((place + 1, record.iter().map(str::to_owned).collect()));
        }
    }
    if count > MOST_ROWS {
        return refused(words::too_many(count, MOST_ROWS));
    }
    if rows.is_empty() {
        return refused(words::EMPTY.map(str::to_owned));
    }
    preview(question, headings, &rows)
}

fn refused(why: [String; 2]) -> TablePreview {
    TablePreview {
        refused: why.into(),
        ..TablePreview::default()
    }
}

/// The delimiter: the most frequent of comma, semicolon and tab in the first line.
fn delimiter(text: &str) -> u8 {
    let first = text.lines().next().unwrap_or_default();
    let mut is_quoted = false;
    let mut counts = [(b',', 0), (b';', 0), (b'\t', 0)];
    for byte in first.bytes() {
        is_quoted ^= byte == b'"';
        for (part, count) in &mut counts {
            *count += usize::from(!is_quoted && byte == *part);
        }
    }
    // The first of those that are equal.
    counts
        .into_iter()
        .rev()
        .max_by_key(|(_, count)| *count)
        .map_or(b',', |(part, _)| part)
}

fn preview(
    question: &TableQuestion,
    headings: Vec<String>,
    rows: &[(usize, Vec<String>)],
) -> TablePreview {
    let mut notes = Vec::new();
    match question.encoding {
        Encoding::Utf8 => {}
        Encoding::Utf16 => notes.push(words::READ_AS_UTF_16.to_owned()),
        Encoding::Windows1252 => notes.push(words::READ_AS_WINDOWS.to_owned()),
    }
    let mut columns = if question.columns.is_empty() {
        headings.iter().map(|heading| guessed(heading)).collect()
    } else {
        question.columns.clone()
    };
    columns.resize(headings.len(), String::new());
    for at in 1..columns.len() {
        if let Some(first) = (0..at).find(|one| {
            !columns[at].is_empty() && field_of(&columns[*one]) == field_of(&columns[at])
        }) {
            notes.push(words::twice(heading_of(&columns[at]), &headings[first]));
            columns[at].clear();
        }
    }
    if columns.iter().all(String::is_empty) {
        notes.extend(words::NO_NAMED_COLUMN.map(str::to_owned));
    }
    notes.extend(uneven(rows, headings.len()));
    let dates = columns.iter().position(|column| field_of(column) == DATES);
    let order = dates.and_then(|at| {
        let order = order_of(&columns[at], rows, at);
        let mut cells = rows.iter().filter_map(|(_, row)| row.get(at));
        let open = cells.find(|cell| {
            let date = WrittenDate::parse(plain(cell));
            order.is_none() && date.is_some_and(WrittenDate::is_open)
        });
        notes.extend(open.map(|cell| words::which_is_the_day(plain(cell))));
        order
    });
    TablePreview {
        refused: Vec::new(),
        first_rows: rows
            .iter()
            .take(SHOWN)
            .map(|(_, row)| row.clone())
            .collect(),
        pieces: if columns.iter().all(String::is_empty) {
            Vec::new()
        } else {
            rows.iter()
                .map(|(number, row)| piece(question, (&columns, order), *number, row))
                .collect()
        },
        headings,
        columns,
        notes,
    }
}

/// What is to be said of rows that are longer or shorter than the headings.
fn uneven(rows: &[(usize, Vec<String>)], columns: usize) -> Vec<String> {
    let uneven = rows.iter().filter(|(_, row)| {
        let beyond = row.iter().skip(columns).any(|cell| !cell.trim().is_empty());
        row.len() < columns || beyond
    });
    let mut notes: Vec<String> = Vec::new();
    let mut more = 0;
    for (number, row) in uneven {
        if notes.len() == SHOWN {
            more += 1;
            continue;
        }
        let what = if row.len() < columns {
            words::SHORT_ROW.to_owned()
        } else {
            words::long_row(&row[columns..].join(", "))
        };
        notes.push([&words::ragged(*number, row.len(), columns), " ", &what].concat());
    }
    if more > 0 {
        notes.push(words::more_rows(more));
    }
    notes
}

/// The field whose heading this is; empty if none is.
fn guessed(heading: &str) -> String {
    let heading = heading.trim().to_lowercase();
    let known = COLUMNS.iter().find(|column| {
        let other = words::OTHER_HEADINGS
            .iter()
            .find(|(name, _)| *name == column.heading);
        let label = schema::field(column.path).map_or("", |field| field.label);
        column.heading.to_lowercase() == heading
            || label.to_lowercase() == heading
            || other.is_some_and(|(_, names)| names.contains(&heading.as_str()))
    });
    known.map_or_else(String::new, |column| column.path.to_owned())
}

fn heading_of(path: &str) -> &'static str {
    let known = COLUMNS.iter().find(|column| column.path == field_of(path));
    known.map_or("", |column| column.heading)
}

/// How the dates of a column are written: as the person says, otherwise inferred from an unambiguous date;
/// `None` if there is none or if two conflict.
fn order_of(column: &str, rows: &[(usize, Vec<String>)], at: usize) -> Option<DateOrder> {
    match column {
        DAY_FIRST => return Some(DateOrder::DayFirst),
        MONTH_FIRST => return Some(DateOrder::MonthFirst),
        _ => {}
    }
    let cells = rows
        .iter()
        .filter_map(|(_, row)| WrittenDate::parse(plain(row.get(at)?)));
    let mut told = None;
    for order in cells.filter_map(WrittenDate::order) {
        if told.is_some_and(|told| told != order) {
            return None;
        }
        told = Some(order);
    }
    told
}

fn piece(
    question: &TableQuestion,
    (columns, order): (&[String], Option<DateOrder>),
    number: usize,
    row: &[String],
) -> TablePiece {
    let mut draft = Draft::default();
    let mut notes = Vec::new();
    let mut unknown = Vec::new();
    for (path, cell) in columns.iter().zip(row) {
        let path = field_of(path);
        let Some(column) = COLUMNS.iter().find(|column| column.path == path) else {
            continue;
        };
        let date = WrittenDate::parse(plain(cell)).filter(|_| path == DATES);
        let date = date.and_then(|date| date.iso(order));
        let text = date.as_deref().unwrap_or_else(|| plain(cell));
        if text.is_empty() {
            continue;
        }
        if cell.trim_start().starts_with('=') {
            notes.push(words::formula(column.heading));
        }
        match vocabulary(path).map(|words| word(&words, text)) {
            Some(Ok(id)) if path == "stock.status" => {
                put_status(&mut draft, StockStatus::parse(id));
            }
            Some(Ok(id)) => draft.set(path, id),
            Some(Err(nearest)) => {
                notes.push(words::unknown_word(text, column.heading, nearest));
                unknown.push(path);
                draft.set(path, text);
            }
            None => draft.set(path, text),
        }
    }
    draft.set("asked_on", &question.asked_on);
    let (case, problems) = draft.read();
    for problem in problems.iter().filter(|p| !unknown.contains(&&*p.field)) {
        let heading = heading_of(&problem.field);
        notes.push(words::cannot_be_used(
            heading,
            &problem.message,
            &problem.remedy,
        ));
    }
    TablePiece {
        name: if case.piece.name.trim().is_empty() {
            case.piece.form.map_or("", Form::label).to_owned()
        } else {
            case.piece.name
        },
        number: case.stock.number,
        record: draft.to_json(),
        notes: notes
            .iter()
            .map(|note| words::in_row(number, note))
            .collect(),
    }
}

/// The id of a word written as its id, its label or the beginning of its label; else the nearest label.
fn word(
    known: &[(&'static str, &'static str)],
    text: &str,
) -> Result<&'static str, Option<&'static str>> {
    let text = text.to_lowercase();
    let is =
        |(id, label): &&(&str, &str)| id.to_lowercase() == text || label.to_lowercase() == text;
    let begins = |(_, label): &&(&str, &str)| label.to_lowercase().starts_with(&text);
    let found = known.iter().find(is).or_else(|| known.iter().find(begins));
    found.map(|(id, _)| *id).ok_or_else(|| {
        let labels = known.iter().map(|(_, label)| *label);
        let ids = known.iter().map(|(id, _)| *id);
        let near = ledger::nearest(&text, labels.chain(ids))?;
        let of_id = known.iter().find(|(id, _)| *id == near);
        Some(of_id.map_or(near, |(_, label)| *label))
    })
}

fn labels<W: Copy>(
    all: &[W],
    pair: fn(W) -> (&'static str, &'static str),
) -> Vec<(&'static str, &'static str)> {
    all.iter().map(|word| pair(*word)).collect()
}

#[cfg(test)]
mod tests {
    use serde_json::Value;

    use super::*;

    fn question(text: &str) -> TableQuestion {
        TableQuestion {
            text: text.to_owned(),
            encoding: Encoding::Utf8,
            columns: Vec::new(),
            asked_on: "2026-05-31".to_owned(),
        }
    }

    fn read_text(text: &str) -> TablePreview {
        read(&question(text))
    }

    fn written(records: &[&str]) -> String {
        let list: Vec<Value> = records
            .iter()
            .map(|record| serde_json::json!({"record": record, "advised": "Leave it."}))
            .collect();
        write(&Value::Array(list).to_string())
    }

    const POT: &str = r#"{"format":"leavewell-case","version":2,
        "piece":{"name":"Pot, \"knob\" lost","form":"coffee_pot","height_mm":290},
        "stock":{"number":"007","status":"for_sale","where":"Shelf 2\nleft","asking":"£1,150"},
        "worth":{"paid":70},"market":{"currency":"GBP"},
        "done":[{"what":"T08","bill":20},{"what":"T12","bill":15.5}]}"#;

    #[test]
    fn what_is_written_reads_back_the_same() {
        let text = written(&[POT]);
        assert!(
            text.starts_with("\u{feff}Stock number,Name,Form,"),
            "{text}"
        );
        assert!(
            text.contains("\"Pot, \"\"knob\"\" lost\"") && text.contains("35.5,Leave it.\r\n"),
            "{text}"
        );
        let (text, encoding) = decode(text.as_bytes()).unwrap();
        assert_eq!(encoding, Encoding::Utf8);
        let found = read_text(&text);
        assert_eq!(found.notes, Vec::<String>::new());
        assert_eq!(found.pieces[0].notes, Vec::<String>::new());
        let (case, problems) = Draft::parse(&found.pieces[0].record).unwrap().read();
        assert_eq!(problems, []);
        assert_eq!(case.piece.name, "Pot, \"knob\" lost");
        assert_eq!(case.piece.form, Some(Form::CoffeePot));
        assert_eq!(case.stock.number, "007");
        assert_eq!(case.stock.place, "Shelf 2\nleft");
        assert_eq!(case.stock.asking, Some(1150.0));
        assert_eq!(case.stock.paid, Some(70.0));
    }

    #[test]
    fn pieces_and_lots_read_back_the_same() {
        let lot = r#","lot":{"id":"House sale, May","price":"£300","rule":"own","share":60}"#;
        for body in [
            r#""pieces":{"count":6,"relation":"set"}"#,
            r#""pieces":{"relation":"pair"}"#,
            r#""pieces":{"count":3}"#,
            r#""pieces":{"relation":"one_of_pair"}"#,
            r#""flaws":{"single_of_pair":true}"#,
            r#""piece":{}"#,
        ] {
            let record = format!(r#"{{"format":"leavewell-case","version":2,{body}{lot}}}"#);
            let (was, problems) = Draft::parse(&record).unwrap().read();
            assert_eq!(problems, [], "{body}");
            let found = read_text(&written(&[&record])[3..]);
            assert_eq!(found.notes, Vec::<String>::new());
            assert_eq!(found.pieces[0].notes, Vec::<String>::new(), "{body}");
            let (case, _) = Draft::parse(&found.pieces[0].record).unwrap().read();
            assert_eq!((case.pieces, case.lot), (was.pieces, was.lot), "{body}");
        }
        let pair =
            written(&[r#"{"format":"leavewell-case","version":2,"pieces":{"relation":"pair"}}"#]);
        assert!(pair.contains(",2,A pair,"), "{pair}");
        let headings = pair.lines().next().unwrap();
        assert!(
            headings.contains(",Paid,Lot,Price of the lot,"),
            "{headings}"
        );
    }

    #[test]
    fn pieces_and_lots_that_cannot_be_are_said() {
        let found = read_text(
            "Name,Qty,Pair or set,Lot,Price of the lot,Lot shared out,Own share\n\
             Sticks,2,pair,A1,300,equal,\n\
             Salts,many,A sett,A1,lots,by size,-5\n\
             Forks,3,A pair,,,,\n\
             Spoon,,a set,,,,\n",
        );
        let [sticks, salts, forks, spoon] = &found.pieces[..] else {
            panic!("{:?}", found.pieces);
        };
        assert_eq!(sticks.notes, Vec::<String>::new());
        let (case, _) = Draft::parse(&sticks.record).unwrap().read();
        assert_eq!(case.pieces.relation, Relation::Pair);
        assert_eq!(
            (case.lot.id.as_str(), case.lot.price, case.lot.rule),
            ("A1", Some(300.0), Some(LotRule::Equal))
        );
        assert_eq!(salts.notes.len(), 5, "{:?}", salts.notes);
        assert!(salts.notes[0].contains("“A set”"), "{:?}", salts.notes);
        for (piece, kept) in [(salts, "A sett"), (salts, "by size"), (salts, "many")] {
            assert!(piece.record.contains(kept), "{kept}");
        }
        for (piece, about) in [(forks, "two pieces"), (spoon, "no set")] {
            assert_eq!(piece.notes.len(), 1, "{:?}", piece.notes);
            assert!(piece.notes[0].contains("Pair or set") && piece.notes[0].contains(about));
        }
    }

    #[test]
    fn a_sold_piece_comes_back_as_closed() {
        let sold = r#"{"format":"leavewell-case","version":2,"piece":{"name":"Box"},"closed":{"outcome":"sold"}}"#;
        let text = written(&[sold]);
        let found = read_text(&text[3..]);
        let (case, problems) = Draft::parse(&found.pieces[0].record).unwrap().read();
        assert_eq!(
            (case.stock_status(), problems.len()),
            (Some(StockStatus::Sold), 0)
        );
    }

    #[test]
    fn no_cell_is_written_that_a_spreadsheet_would_run() {
        for evil in [
            "=1+1",
            "+SUM(A1)",
            "-cmd|' /C calc'!A0",
            "@x",
            "\tx",
            "\r=1",
        ] {
            let mut draft = Draft::default();
            draft.set("piece.name", evil);
            let text = written(&[&draft.to_json()]);
            let cell = text.lines().skip(1).collect::<Vec<_>>().join("\n");
            assert!(cell.contains('\''), "{evil:?} in {cell:?}");
            let found = read_text(&text[3..]);
            assert_eq!(found.pieces[0].name.trim(), evil.trim(), "{evil:?}");
        }
        assert_eq!(harmless("-5".to_owned()), "-5");
        assert_eq!(harmless("@5".to_owned()), "'@5");
    }

    #[test]
    fn a_formula_in_a_file_is_text_and_is_said() {
        let found = read_text("Name,Paid\n=HYPERLINK(\"x\"),=2+2\n");
        assert!(found.pieces[0].record.contains("=HYPERLINK"));
        assert!(found.pieces[0].notes[0].contains("formula"));
        assert_eq!(found.pieces[0].notes.len(), 3, "and the price is no number");
    }

    #[test]
    fn headings_are_matched_by_their_names_and_by_the_person() {
        let text = "Title;Colour;Price\nPot;blue;12,50\n";
        let found = read_text(text);
        assert_eq!(found.columns, ["piece.name", "", "stock.asking"]);
        let matched = TableQuestion {
            columns: vec![
                String::new(),
                "stock.where".to_owned(),
                "worth.paid".to_owned(),
            ],
            ..question(text)
        };
        let (case, _) = Draft::parse(&read(&matched).pieces[0].record)
            .unwrap()
            .read();
        assert_eq!(
            (case.stock.place.as_str(), case.stock.paid),
            ("blue", Some(12.5))
        );
        let none = read_text("a,b\n1,2\n");
        assert!(none.pieces.is_empty());
        assert!(none.notes[0].contains("No heading"), "{:?}", none.notes);
        let twice = read_text("Name,Title\nPot,Jug\n");
        assert_eq!(twice.pieces[0].name, "Pot");
        assert!(twice.notes[0].contains("Two columns"));
    }

    #[test]
    fn uneven_rows_are_taken_in_and_named() {
        let found = read_text("Name,Paid\nPot\n\n,,\nJug,5,more,and more\nBox,6,\n");
        assert_eq!(found.pieces.len(), 3);
        assert_eq!(found.notes.len(), 2, "{:?}", found.notes);
        assert!(
            found.notes[0].contains("Row 2 has 1 cell;"),
            "{:?}",
            found.notes
        );
        assert!(
            found.notes[1].contains("more, and more"),
            "{:?}",
            found.notes
        );
    }

    #[test]
    fn a_word_we_do_not_know_is_said_and_kept() {
        let found = read_text("Name,Form,Status\nPot,Teepot,for sale\n");
        let [note] = &found.pieces[0].notes[..] else {
            panic!("{:?}", found.pieces[0].notes);
        };
        assert!(
            note.contains("Row 2: “Teepot”") && note.contains("“Teapot”"),
            "{note}"
        );
        assert!(found.pieces[0].record.contains("Teepot"));
        let (case, _) = Draft::parse(&found.pieces[0].record).unwrap().read();
        assert_eq!(case.stock.status, Some(StockStatus::ForSale));
    }

    #[test]
    fn other_encodings_are_read_knowingly() {
        let (text, encoding) = decode(b"Name,Asking\nCaf\xe9 pot,\xa3 25 \x80\n").unwrap();
        assert_eq!(encoding, Encoding::Windows1252);
        assert!(text.contains("Café pot") && text.contains("£ 25 €"));
        let said = read(&TableQuestion {
            encoding,
            ..question(&text)
        });
        assert!(said.notes[0].contains("Windows-1252"));
        let utf_16: Vec<u8> = [0xfeff_u16]
            .into_iter()
            .chain("Name\nPot\n".encode_utf16())
            .flat_map(u16::to_le_bytes)
            .collect();
        assert_eq!(
            decode(&utf_16),
            Some(("Name\nPot\n".to_owned(), Encoding::Utf16))
        );
        assert_eq!(decode(b"\xff\x00\xe9\x00"), None);
    }

    #[test]
    fn what_is_no_table_is_refused_with_what_to_do() {
        for text in ["", "Name\n", "PK\u{3}\u{4}xl", "a\0b", "\n\n\n"] {
            let found = read_text(text);
            assert_eq!(found.refused.len(), 2, "{text:?}");
            assert!(found.pieces.is_empty());
        }
        // A quote that is never closed takes in the rest, and nothing is lost.
        let open = read_text("Name,Paid\n\"Pot,5\nJug,6\n");
        assert!(open.pieces[0].record.contains("Jug"));
    }

    #[test]
    fn a_million_rows_are_counted_and_refused() {
        let mut text = String::from("Name,Paid\n");
        for _ in 0..1_000_000 {
            text.push_str("Spoon,1\n");
        }
        let found = read_text(&text);
        assert!(found.refused[0].contains("1000000"), "{:?}", found.refused);
        assert!(found.pieces.is_empty() && found.first_rows.is_empty());
    }

    #[test]
    fn every_column_is_a_field_of_the_record() {
        for column in &COLUMNS {
            let known = schema::field(column.path);
            assert!(
                known.is_some() || column.path == "looked.described",
                "{}",
                column.path
            );
        }
        for (heading, _) in words::OTHER_HEADINGS {
            assert!(
                COLUMNS.iter().any(|column| column.heading == heading),
                "{heading}"
            );
        }
    }

    fn bought(preview: &TablePreview) -> Vec<String> {
        let pieces = preview.pieces.iter();
        pieces
            .map(|piece| Draft::parse(&piece.record).unwrap().text(DATES))
            .collect()
    }

    #[test]
    fn dates_with_the_year_last_are_read_where_one_of_them_tells_which_number_is_the_day() {
        let day_first =
            read_text("name,bought on\nA,31/5/2026\nB,04.03.2026\nC,2026-01-02\nD,7-7-2026\n");
        assert_eq!(
            bought(&day_first),
            ["2026-05-31", "2026-03-04", "2026-01-02", "2026-07-07"]
        );
        assert!(day_first.notes.is_empty(), "{:?}", day_first.notes);
        let month_first = read_text("name,bought on\nA,5/31/2026\nB,04/03/2026\n");
        assert_eq!(bought(&month_first), ["2026-05-31", "2026-04-03"]);
    }

    #[test]
    fn a_date_that_could_be_read_two_ways_is_asked_about_and_never_guessed() {
        let text = "name,bought on\nA,04/03/2026\nB,05/06/2026\n";
        let open = read_text(text);
        assert_eq!(bought(&open), ["04/03/2026", "05/06/2026"]);
        let asked = open
            .notes
            .iter()
            .filter(|note| note.contains("the day or the month?"));
        assert_eq!(asked.count(), 1, "{:?}", open.notes);
        for (column, dates) in [
            (DAY_FIRST, ["2026-03-04", "2026-06-05"]),
            (MONTH_FIRST, ["2026-04-03", "2026-05-06"]),
        ] {
            assert!(fields().any(|(id, _)| id == column));
            let told = read(&TableQuestion {
                columns: vec!["piece.name".to_owned(), column.to_owned()],
                ..question(text)
            });
            assert_eq!(bought(&told), dates);
            assert!(told.notes.is_empty(), "{:?}", told.notes);
        }
        // Two dates that tell otherwise leave the rest open; each of them is read as it can only be.
        let both = read_text("name,bought on\nA,31/5/2026\nB,5/30/2026\nC,1/2/2026\n");
        assert_eq!(bought(&both), ["2026-05-31", "2026-05-30", "1/2/2026"]);
        assert!(both.notes[0].contains("1/2/2026"), "{:?}", both.notes);
        // What is no date stays as typed and is named.
        let wrong = read_text("name,bought on\nA,31/31/2026\nB,last May\n");
        assert_eq!(bought(&wrong), ["31/31/2026", "last May"]);
        assert!(wrong.pieces.iter().all(|piece| piece.notes.len() == 1));
    }
}
