//! Ids of findings as constants, so that code with an unknown id does not compile.

use super::row_id::row_ids;

row_ids!(
    /// The id of a finding.
    FindingId,
    "/finding_ids.rs"
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_id_is_found_by_its_text_and_has_the_fact_of_that_name() {
        for id in FindingId::all() {
            assert_eq!(FindingId::parse(id.text()), Some(id));
            assert_eq!(id.fact().id, id);
        }
        assert_eq!(FindingId::M01B.text(), "M01b");
        assert_eq!(FindingId::parse("m01"), None);
    }

    #[test]
    fn an_id_stands_in_json_as_its_text_and_an_unknown_one_is_refused() {
        let ids = [FindingId::C01, FindingId::M01B];
        let text = serde_json::to_string(&ids).unwrap();
        assert_eq!(text, r#"["C01","M01b"]"#);
        assert_eq!(serde_json::from_str::<[FindingId; 2]>(&text).unwrap(), ids);
        assert!(serde_json::from_str::<FindingId>(r#""C99""#).is_err());
    }
}
