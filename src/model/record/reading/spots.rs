//! Reads the places of faults on a part, and which photographs the record has.

use serde_json::{Map, Value};

use super::wording as words;
use super::wording::spots as said;
use super::{MOST_ENTRIES, Reader, Section, shorten};
use crate::record::FaultSpot;
use crate::terms::{PartName, SpotFault, Word};

impl Reader {
    /// The numbers of photographs in a field, with spaces between.
    pub(super) fn photos(&mut self, s: &Section) -> Vec<String> {
        let text = self.text(s, "photos").unwrap_or_default();
        let numbers = text.split_whitespace().take(MOST_ENTRIES);
        numbers.map(str::to_owned).collect()
    }

    /// The placed faults of a part. A place that cannot be used is named, and its fault counts all the
    /// same.
    pub(super) fn spots(
        &mut self,
        part: (&Section, PartName),
        photos: &[String],
        of_piece: &[String],
    ) -> Vec<FaultSpot> {
        let mut spots = Vec::new();
        let (s, name) = part;
        let nothing = Map::new();
        let fields: &Map<String, Value> = s.fields.unwrap_or(&nothing);
        for s in self.list(fields, &s.at("spots"), MOST_ENTRIES) {
            let id = self.written(&s, "id");
            let count = self.spot_count(&s);
            let at = self.place(&s);
            let photo = self.text(&s, "photo");
            let note = self.written(&s, "note");
            let Some(fault) = self.word::<SpotFault>(&s, "fault") else {
                if s.get("fault").is_none() {
                    let choices = SpotFault::ids().join(", ");
                    self.problem(
                        s.at("fault"),
                        said::NO_FAULT.to_owned(),
                        &said::no_fault_remedy(&choices),
                    );
                }
                continue;
            };
            let known = photo.as_deref().is_none_or(|key| {
                key.split_once('/').is_some_and(|(of, number)| {
                    let listed = |numbers: &[String]| numbers.iter().any(|known| known == number);
                    (of == name.id() && listed(photos)) || (of == "piece" && listed(of_piece))
                })
            });
            if !known {
                self.problem(
                    s.at("photo"),
                    said::no_photo(&shorten(photo.as_deref().unwrap_or_default())),
                    said::NO_PHOTO_REMEDY,
                );
            }
            spots.push(FaultSpot {
                id,
                fault,
                count,
                photo: photo.filter(|_| known),
                at: at.filter(|_| known),
                note,
            });
        }
        spots
    }

    /// How many: 1 when not said.
    fn spot_count(&mut self, s: &Section) -> u32 {
        let Some(count) = self.number(s, "count") else {
            return 1;
        };
        if count.fract() != 0.0 {
            self.problem(
                s.at("count"),
                words::cannot_be_used(&shorten(&count.to_string())),
                said::WHOLE_COUNT,
            );
            return 1;
        }
        // Checked to be whole and within the range of the field.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let whole = count as u32;
        whole.max(1)
    }

    /// Both coordinates, or neither.
    fn place(&mut self, s: &Section) -> Option<(f64, f64)> {
        let [x, y] = ["x", "y"].map(|field| self.number(s, field));
        let missing = match [s.get("x"), s.get("y")] {
            [Some(_), None] => "y",
            [None, Some(_)] => "x",
            _ => return Some((x?, y?)),
        };
        self.problem(
            s.at(missing),
            said::HALF_A_PLACE.to_owned(),
            said::HALF_A_PLACE_REMEDY,
        );
        None
    }
}
