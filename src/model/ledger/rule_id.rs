//! Ids of the hard rules as constants, so that code with an unknown id does not compile.

use super::row_id::row_ids;

row_ids!(
    /// The id of a hard rule.
    RuleId,
    "/rule_ids.rs"
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_rule_is_found_by_its_id_and_has_the_text_of_that_id() {
        for id in RuleId::all() {
            assert_eq!(RuleId::parse(id.text()), Some(id));
            assert_eq!(id.fact().id, id);
        }
        assert_eq!(RuleId::H07A.text(), "H07a");
        assert_eq!(RuleId::parse("H99"), None);
    }
}
