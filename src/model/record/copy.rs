//! A new record that begins like another one.

use super::Draft;

/// What belongs to one piece alone: its history, its sale and its predictions.
const OF_ONE_PIECE: [&str; 8] = [
    "predicted",
    "done",
    "closed",
    "earlier",
    "kept",
    "stock.number",
    "asked_on",
    "piece.photos",
];

/// What pieces entered one after the other usually have in common.
const IN_COMMON: [&str; 13] = [
    "piece.form",
    "piece.came_from",
    "piece.length_unit",
    "piece.weight_unit",
    "market.currency",
    "market.route",
    "aim.goal",
    "stock.status",
    "stock.where",
    "stock.bought_on",
    "stock.show_price",
    "stock.show_photos",
    "stock.seller",
];

impl Draft {
    /// A record of a second piece that is like this one. It has no photographs and no history, and is asked
    /// about on another day.
    #[must_use]
    pub fn duplicate(&self) -> Self {
        let mut copy = self.clone();
        for path in OF_ONE_PIECE {
            copy.put_at(path, None);
        }
        // From the last: what is left empty leaves the list.
        for place in (0..copy.count("pieces.each")).rev() {
            copy.without_pictures(&format!("pieces.each[{place}].parts"));
            copy.put_at(&format!("pieces.each[{place}].photos"), None);
        }
        copy.without_pictures("parts");
        copy
    }

    /// Takes the photographs off the parts in a list, and the places of faults on them.
    fn without_pictures(&mut self, parts: &str) {
        for place in (0..self.count(parts)).rev() {
            self.put_at(&format!("{parts}[{place}].photos"), None);
            self.put_at(&format!("{parts}[{place}].spots"), None);
        }
    }

    /// A record of the next piece: only what such pieces usually have in common.
    #[must_use]
    pub fn next_like(&self) -> Self {
        let mut next = Self::default();
        for path in IN_COMMON {
            next.put_at(path, self.value(path).cloned());
        }
        next
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::terms::{Form, StockStatus};

    fn piece() -> Draft {
        Draft::parse(
            r#"{"format":"leavewell-case","version":2,"asked_on":"2026-05-31","later":{"x":1},
            "piece":{"name":"Pot","form":"teapot","height_mm":150},
            "parts":[{"part":"foot","loss":"small","photos":"1 2"}],"done":[{"what":"T08"}],
            "stock":{"number":"A7","status":"for_sale","where":"Shelf 2","asking":40},
            "market":{"currency":"GBP","likely":60}}"#,
        )
        .unwrap()
    }

    #[test]
    fn a_duplicate_has_the_piece_and_not_its_history() {
        let copy = piece().duplicate();
        let (case, problems) = copy.read();
        assert_eq!(problems, []);
        assert_eq!(
            (case.piece.form, case.piece.height_mm),
            (Some(Form::Teapot), Some(150.0))
        );
        assert_eq!(case.stock.asking, Some(40.0));
        assert!(case.done.is_empty() && case.stock.number.is_empty() && case.asked_on.is_none());
        assert_eq!(copy.part_text("foot", "photos"), "");
        assert_eq!(copy.part_text("foot", "loss"), "small");
        assert!(
            copy.to_json().contains("later"),
            "what is not known is copied too"
        );
    }

    #[test]
    fn the_next_piece_has_what_they_have_in_common() {
        let next = piece().next_like();
        let (case, problems) = next.read();
        assert_eq!(problems, []);
        assert_eq!(case.piece.form, Some(Form::Teapot));
        assert_eq!(case.stock.status, Some(StockStatus::ForSale));
        assert_eq!(case.stock.place, "Shelf 2");
        assert_eq!((case.stock.asking, case.piece.height_mm), (None, None));
        assert!(case.piece.name.is_empty() && case.parts.is_empty());
    }
}
