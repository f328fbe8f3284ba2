//! What the law may ask before a piece is sold. General words and no legal advice: the law of the place decides.

use super::Case;
use crate::ledger::signs;
use crate::terms::{Joint, Material, MaterialUsed, Repair, Replaced, Treatment, small};

/// Faults of the whole piece by which it was altered or added to.
const ALTERED: [&str; 6] = [
    "part_replaced",
    "marriage",
    "converted",
    "monogram_later",
    "inscription_later",
    "arms_erased",
];

impl Case {
    /// What to settle under the law of the place before the piece is offered or sold, a sentence or two each.
    #[must_use]
    pub fn law_of_sale(&self) -> Vec<String> {
        let of_ivory = self
            .parts
            .iter()
            .filter(|p| p.material == Some(Material::Ivory));
        let parts: Vec<String> = of_ivory.map(|p| small(p.name.label())).collect();
        let mut law = Vec::new();
        if !parts.is_empty() {
            law.push(format!(
                "Ivory is recorded on it: {}. Dealing in ivory is restricted or banned in many countries, \
                 and so is sending it across a border. Ask the local authority before you offer it; \
                 the law there decides.",
                parts.join(", ")
            ));
        }
        if self.is_hallmarked_and_altered() {
            law.push(
                "It carries hallmarks of silver, and something on it was altered or added. In many countries \
                 such a piece may not be sold until an assay office has seen it. Ask there before \
                 you offer it; the law of the place decides."
                    .to_owned(),
            );
        }
        law
    }

    fn is_hallmarked_and_altered(&self) -> bool {
        self.has_seen_any(&signs::HALLMARKS)
            && (self.parts.iter().any(|part| {
                part.replaced == Some(Replaced::Yes)
                    || part
                        .repair
                        .is_some_and(|repair| matches!(repair, Repair::Sound | Repair::Failing))
                    || part.has_any_joint(&[Joint::GreyRepair, Joint::NeatRepair])
            }) || self.flaws.iter().any(|flaw| ALTERED.contains(flaw))
                || self.done.iter().any(|done| {
                    done.treatment.is_some_and(Treatment::alters)
                        || matches!(
                            done.material,
                            Some(MaterialUsed::Silver | MaterialUsed::SilverOther)
                        )
                }))
    }
}

#[cfg(test)]
mod tests {
    use crate::record::Draft;

    fn law(set: &[(&str, &str)]) -> Vec<String> {
        let mut draft = Draft::default();
        for (path, typed) in set {
            draft.set(path, typed);
        }
        let (case, problems) = draft.read();
        assert_eq!(problems, []);
        case.law_of_sale()
    }

    #[test]
    fn ivory_is_named_with_its_part() {
        let said = law(&[("parts[part=finial].material", "ivory")]);
        assert!(said.len() == 1 && said[0].contains("finial"), "{said:?}");
        assert!(law(&[("parts[part=finial].material", "bone")]).is_empty());
    }

    #[test]
    fn hallmarked_silver_is_named_only_where_it_was_altered() {
        let hallmarked = ("findings[id=M03].answer", "seen");
        for altered in [
            ("parts[part=handle].replaced", "replaced"),
            ("parts[part=spout].joint", "grey_repair"),
            ("flaws.monogram_later", "yes"),
            ("done[0].what", "T14a"),
            ("done[0].what", "T09b"),
        ] {
            for mark in [hallmarked, ("findings[id=M28].answer", "seen")] {
                let said = law(&[mark, altered]);
                assert!(
                    said.len() == 1 && said[0].contains("assay office"),
                    "{altered:?} {said:?}"
                );
            }
            assert!(law(&[altered]).is_empty(), "{altered:?}");
        }
        assert!(law(&[hallmarked]).is_empty());
        assert!(
            law(&[
                ("findings[id=M03].answer", "absent"),
                ("flaws.converted", "yes")
            ])
            .is_empty()
        );
    }
}
