//! Values that stand as their stable id in a file or an answer.

use super::{
    Currency, Family, Fault, Firmness, Input, Kind, Outcome, PartName, Relation, Reversibility,
    Route, SellAs, Treatment,
};

/// Writes a value as its id and reads it back. An unknown id is an error.
macro_rules! as_ids {
    ($($name:ident by $id:ident),+) => {$(
        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(self.$id())
            }
        }

        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
                let id = String::deserialize(reader)?;
                Self::parse(&id).ok_or_else(|| serde::de::Error::custom(id))
            }
        }
    )+};
}

pub(crate) use as_ids;

as_ids!(
    Currency by id,
    Family by id,
    Fault by id,
    Firmness by id,
    Input by id,
    Kind by code,
    Outcome by id,
    PartName by id,
    Relation by id,
    Reversibility by code,
    Route by id,
    SellAs by id,
    Treatment by id
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_is_written_as_its_id_and_an_unknown_id_is_refused() {
        let steps = [Treatment::TestLead, Treatment::Solder];
        let text = serde_json::to_string(&steps).unwrap();
        assert_eq!(text, r#"["T17","T09"]"#);
        assert_eq!(
            serde_json::from_str::<[Treatment; 2]>(&text).unwrap(),
            steps
        );
        assert!(serde_json::from_str::<Treatment>(r#""T99""#).is_err());
    }

    #[test]
    fn every_outcome_and_input_has_an_id_of_its_own() {
        for outcome in Outcome::ALL {
            assert_eq!(Outcome::parse(outcome.id()), Some(outcome));
        }
        for input in Input::ALL {
            assert_eq!(Input::parse(input.id()), Some(input));
        }
    }
}
