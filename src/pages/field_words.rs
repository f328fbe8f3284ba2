//! The name of any field of a record, and what stands in it, in words rather than ids.

use serde_json::Value;

use super::as_typed::as_typed;
use super::sentence::and;
use super::sheet::plain;
use leavewell_model::ledger::{FindingId, treatment_text};
use leavewell_model::record::schema::{self, FieldKind};
use leavewell_model::terms::{
    BleedWord, BuyerSort, CameFrom, Corrosion, Covers, Currency, Dents, Doer, Ending, Engraving,
    Fill, FillState, Form, Gilding, Goal, Instrument, Interior, Joint, Kind, Lacquer, Lead,
    LengthUnit, Liner, Loss, Material, MaterialUsed, Mount, PartName, PredictedWhen, PriceBasis,
    Repair, Replaced, Route, Seen, SoldAs, Split, SpotFault, StockStatus, Tarnish, TestKind,
    Tester, UnsoldAt, WeightUnit,
};

/// The label of a field such as `aim.goal` or `quotes[2].likely`; `None` for one the schema lacks.
pub(super) fn label(path: &str) -> Option<&'static str> {
    schema::field(path)
        .map(|field| field.label)
        .or_else(|| schema::section_label(path))
}

/// What stands in a field. A word is given by its label, several ids by theirs, a yes or no in words; anything
/// else as typed.
pub(super) fn value_words(path: &str, value: &Value) -> String {
    let text = plain(value);
    match schema::field(path).map(|field| field.kind) {
        Some(FieldKind::Several) => {
            let ids = text.split(|c: char| c.is_whitespace() || c == ',');
            let labels: Vec<String> = ids
                .filter(|id| !id.is_empty())
                .map(|id| word(path, id).unwrap_or_else(|| as_typed(id)))
                .collect();
            and(&labels)
        }
        _ => word(path, &text).unwrap_or(text),
    }
}

/// The label of a word in this field.
fn word(path: &str, id: &str) -> Option<String> {
    let pattern = schema::field(path)?.path.replace("[]", "");
    macro_rules! label {
        ($word:ident) => {
            $word::parse(id).map($word::label)
        };
    }
    let known = match pattern.as_str() {
        "piece.form" => label!(Form),
        "piece.came_from" => label!(CameFrom),
        "piece.length_unit" => label!(LengthUnit),
        "piece.weight_unit" => label!(WeightUnit),
        "stock.status" => label!(StockStatus),
        "looked.instruments" => label!(Instrument),
        "findings.answer" => label!(Seen),
        "findings.id" => FindingId::parse(id).map(|id| id.fact().title),
        "findings.part"
        | "marks.part"
        | "parts.part"
        | "tests.part"
        | "measures.iacs.where"
        | "proposal.steps.parts"
        | "done.parts"
        | "bench.heat.on_part"
        | "care.part" => {
            label!(PartName)
        }
        "parts.bleed" | "comparables.bleed" => label!(BleedWord),
        "parts.tarnish" | "comparables.tarnish" => label!(Tarnish),
        "parts.joint" | "comparables.joint" => label!(Joint),
        "parts.lead" => label!(Lead),
        "parts.dents" | "comparables.dents" => label!(Dents),
        "parts.interior" => label!(Interior),
        "parts.corrosion" => label!(Corrosion),
        "parts.fill" => label!(Fill),
        "parts.split" => label!(Split),
        "parts.spots.fault" => label!(SpotFault),
        "parts.loss" => label!(Loss),
        "parts.mount" => label!(Mount),
        "parts.lacquer" => label!(Lacquer),
        "parts.replaced" => label!(Replaced),
        "parts.engraving" => label!(Engraving),
        "parts.repair" => label!(Repair),
        "parts.fill_state" => label!(FillState),
        "parts.liner" => label!(Liner),
        "parts.material" => label!(Material),
        "parts.gilding" => label!(Gilding),
        "aim.goal" => label!(Goal),
        "aim.doer" | "proposal.steps.who" => label!(Doer),
        "market.currency" | "comparables.currency" | "closed.sale.currency" => label!(Currency),
        "market.route" => label!(Route),
        "comparables.what" | "closed.sale.what" => label!(SoldAs),
        "quotes.covers" => label!(Covers),
        "tests.kind" => label!(TestKind),
        "tests.by" => label!(Tester),
        "done.materials" => label!(MaterialUsed),
        "closed.outcome" => label!(Ending),
        "closed.sale.buyer" => label!(BuyerSort),
        "closed.unsold.what" => label!(UnsoldAt),
        "predicted.event" => label!(PredictedWhen),
        "predicted.basis" => label!(PriceBasis),
        "quotes.treatment"
        | "quotes.treatments"
        | "done.what"
        | "aim.asked"
        | "proposal.steps.treatment" => treatment_text(id).map(|text| text.name),
        "predicted.kind" | "comparables.kind" => Kind::parse(id).map(Kind::name),
        _ => None,
    };
    known.map(str::to_owned)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_word_is_given_by_its_label_wherever_it_stands() {
        for (path, id, words) in [
            ("parts[3].mount", "fill_showing", "Filling shows"),
            ("aim.goal", "keep_show", "show"),
            ("aim.asked", "T08 T12", " and "),
            ("done[0].what", "T14a", "eplating"),
            ("piece.form", "teepot", "teepot"),
            ("stock.number", "A 7", "A 7"),
        ] {
            let said = value_words(path, &Value::from(id));
            assert!(said.contains(words), "{path}: {said}");
            assert!(!said.contains('_'), "{path}: {said}");
        }
        assert_eq!(label("aim.goal"), Some("What is wanted"));
        assert_eq!(label("nothing.such"), None);
    }
}
