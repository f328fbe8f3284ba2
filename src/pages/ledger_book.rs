//! A case with its ledger, and figures as rows of a table.

use std::collections::BTreeSet;

use super::Subject;
use super::table::Table;
use super::wording::ledger as words;
use leavewell_model::ledger::{Figure, FigureId, Ledger, meaning, source};
use leavewell_model::record::{Case, Draft, Problem, TaughtFigures};
use leavewell_model::report::Report;
use leavewell_model::terms::{Treatment, TreatmentSet};

/// A case with its ledger and the figures it read.
pub(super) struct Book<'a> {
    pub(super) draft: &'a Draft,
    pub(super) case: &'a Case,
    pub(super) ledger: &'a Ledger,
    pub(super) report: &'a Report,
    pub(super) problems: &'a [Problem],
    pub(super) used: &'a BTreeSet<&'static str>,
}

impl<'a> Book<'a> {
    pub(super) fn new(subject: &'a Subject) -> Self {
        Self {
            draft: subject.draft(),
            case: subject.case(),
            ledger: subject.solved().ledger(),
            report: subject.report(),
            problems: subject.problems(),
            used: subject.figures_used(),
        }
    }
}

/// The meaning of a figure, without its full stop.
pub(super) fn words(figure: &Figure) -> &'static str {
    meaning(figure.id)
        .unwrap_or(figure.id)
        .trim_end_matches('.')
}

/// What the words of a figure name, where its id has no treatment's id in it.
const NAMING: [(FigureId, Treatment); 12] = [
    (FigureId::ATTRIBUTE_STABILITY_KEEPING, Treatment::Keeping),
    (FigureId::COST_LARGE_WORK, Treatment::Lacquer),
    (FigureId::SILVER_LOSS_DIP_BATH_SHARE, Treatment::Dip),
    (FigureId::SILVER_LOSS_DIP_BATH_UM, Treatment::Dip),
    (FigureId::SILVER_LOSS_DIP_SWAB_SHARE, Treatment::Dip),
    (FigureId::SILVER_LOSS_DIP_SWAB_UM, Treatment::Dip),
    (FigureId::SILVER_LOSS_FOIL_BATH_SHARE, Treatment::FoilBath),
    (FigureId::SILVER_LOSS_FOIL_BATH_UM, Treatment::FoilBath),
    (FigureId::SILVER_T0_NEW_PLATE, Treatment::Replate),
    (FigureId::VALUE_AFTER_GILDING, Treatment::Regild),
    (FigureId::VALUE_OVER_OLD, Treatment::Replate),
    (FigureId::WORK_AWAY_LABORATORY, Treatment::TestLead),
];

/// The treatments that these figures are about.
pub(super) fn named_by<'a>(figures: impl IntoIterator<Item = &'a Figure>) -> TreatmentSet {
    let of = |figure: &'a Figure| {
        let id = figure.id;
        let others = [
            (id.contains("lacquer"), Treatment::Lacquer),
            (id.contains("T02_lacquer"), Treatment::LacquerOff),
            (id == FigureId::VALUE_OVER_OLD.text(), Treatment::Overplate),
        ];
        let listed = NAMING
            .iter()
            .map(move |(named, t)| (id == named.text(), *t));
        let others = listed.chain(others);
        let others = others.filter_map(|(is_named, t)| is_named.then_some(t));
        id.split('.').filter_map(Treatment::parse).chain(others)
    };
    figures.into_iter().flat_map(of).collect()
}

/// Figures as table rows: meaning, value, band, how known, source, id.
pub(super) fn figure_table(caption: &str, figures: &[&Figure], taught: &TaughtFigures) -> Table {
    Table {
        caption: caption.to_owned(),
        columns: words::FIGURE_COLUMNS.map(str::to_owned).to_vec(),
        rows: figures
            .iter()
            .map(|f| {
                vec![
                    words(f).to_owned(),
                    value(f),
                    band(f),
                    if f.own_reason.is_some() {
                        words::OWN_FIGURE.to_owned()
                    } else if taught.of(f.id).is_some() {
                        words::TAUGHT_FIGURE.to_owned()
                    } else {
                        f.tag.words().to_owned()
                    },
                    cited(f),
                    f.id.to_owned(),
                ]
            })
            .collect(),
    }
}

pub(super) fn shown_unit(figure: &Figure) -> &str {
    if figure.unit == "1" { "" } else { figure.unit }
}

pub(super) fn value(figure: &Figure) -> String {
    [&figure.value.to_string(), " ", shown_unit(figure)]
        .concat()
        .trim_end()
        .to_owned()
}

pub(super) fn band(figure: &Figure) -> String {
    if figure.low.to_bits() == figure.high.to_bits() {
        words::NO_BAND.to_owned()
    } else {
        words::band(figure.low, figure.high)
    }
}

pub(super) fn cited(figure: &Figure) -> String {
    source(figure.source).map_or_else(|| figure.source.to_owned(), |s| s.citation.to_owned())
}
