//! Where a fault is: a place on a part, on its drawing or on a photograph.
//!
//! Invariant: a placed fault counts as if it were ticked on its part. It never makes what is ticked milder.

use super::{Bleed, Part};
use crate::terms::{
    BleedWord, Corrosion, Dents, FillState, Gilding, Joint, Lacquer, Loss, Mount, Split, SpotFault,
};

/// One fault at one place of a part.
#[derive(Clone, Debug, PartialEq)]
pub struct FaultSpot {
    /// Its id in the file; empty where it has none.
    pub id: String,
    /// What is wrong there.
    pub fault: SpotFault,
    /// How many of them are there; at least 1.
    pub count: u32,
    /// The photograph that the place is on, as `<part id>/<number>` or `piece/<number>`; `None` for the
    /// drawing.
    pub photo: Option<String>,
    /// Per cent of the width from the left and of the height from the top, each 0 to 100; `None` where the
    /// place is described in words alone.
    pub at: Option<(f64, f64)>,
    /// Where it is and how it looks, as written.
    pub note: String,
}

impl Part {
    /// Whether this is a state of its joints, ticked or placed.
    #[must_use]
    pub fn has_joint(&self, joint: Joint) -> bool {
        self.joint == Some(joint) || self.other_joint == Some(joint)
    }

    /// Whether any of these is a state of its joints.
    #[must_use]
    pub fn has_any_joint(&self, joints: &[Joint]) -> bool {
        joints.iter().any(|joint| self.has_joint(*joint))
    }

    /// Turns joints in one of these states into a neat repair.
    pub fn mend_joints(&mut self, states: &[Joint]) {
        for joint in [&mut self.joint, &mut self.other_joint] {
            if joint.is_some_and(|j| states.contains(&j)) {
                *joint = Some(Joint::NeatRepair);
            }
        }
    }

    /// How many places a fault has on it: 0 where none is placed.
    #[must_use]
    pub fn places_of(&self, is_it: impl Fn(SpotFault) -> bool) -> u32 {
        let spots = self.spots.iter().filter(|spot| is_it(spot.fault));
        spots.map(|spot| spot.count).fold(0, u32::saturating_add)
    }

    /// Counts each placed fault as if it were ticked: the worse of the two stands.
    pub(super) fn count_spots(&mut self) {
        let placed: Vec<SpotFault> = self.spots.iter().map(|spot| spot.fault).collect();
        for fault in placed {
            match fault {
                SpotFault::SmallDent => at_least(&mut self.dents, Dents::Minor),
                SpotFault::DeepDent => at_least(&mut self.dents, Dents::Moderate),
                SpotFault::Crease => at_least(&mut self.split, Split::Crease),
                SpotFault::Split => at_least(&mut self.split, Split::Through),
                SpotFault::SmallLoss => at_least(&mut self.loss, Loss::Small),
                SpotFault::LargeLoss => at_least(&mut self.loss, Loss::Large),
                SpotFault::WornMount => at_least(&mut self.mount, Mount::GreyWear),
                SpotFault::FillShowing => at_least(&mut self.mount, Mount::FillShowing),
                SpotFault::LooseFilling => at_least(&mut self.fill_state, FillState::Failing),
                SpotFault::BrokenLacquer => at_least(&mut self.lacquer, Lacquer::Broken),
                SpotFault::WornGilding => at_least(&mut self.gilding, Gilding::Worn),
                SpotFault::Green => at_least(&mut self.corrosion, Corrosion::Green),
                SpotFault::WhitePowder => at_least(&mut self.corrosion, Corrosion::WhitePowder),
                SpotFault::Rust => at_least(&mut self.corrosion, Corrosion::Rust),
                SpotFault::BareMetal => {
                    if matches!(self.bleed, None | Some(Bleed::Word(BleedWord::None))) {
                        self.bleed = Some(Bleed::Word(BleedWord::Slight));
                    }
                }
                SpotFault::OpenJoint => self.add_joint(Joint::Open),
                SpotFault::Leak => self.add_joint(Joint::Leaking),
                SpotFault::GreyRepair => self.add_joint(Joint::GreyRepair),
                SpotFault::NeatRepair => self.add_joint(Joint::NeatRepair),
                SpotFault::Scratch | SpotFault::Other => {}
            }
        }
    }

    /// Adds a state of its joints. An open or leaking joint and a grey repair are kept beside each other,
    /// since each has rules of its own; a sound one gives way to any.
    fn add_joint(&mut self, joint: Joint) {
        let is_open = |j: Joint| matches!(j, Joint::Open | Joint::Leaking);
        match self.joint {
            None | Some(Joint::Sound | Joint::NeatRepair) => self.joint = Some(joint),
            Some(_) if matches!(joint, Joint::Sound | Joint::NeatRepair) => {}
            Some(now) if is_open(now) == is_open(joint) => self.joint = Some(now.max(joint)),
            Some(_) => at_least(&mut self.other_joint, joint),
        }
    }
}

fn at_least<T: Copy + Ord>(field: &mut Option<T>, least: T) {
    *field = (*field).max(Some(least));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{Case, Draft, Problem};
    use crate::terms::PartName;

    fn read(parts: &str) -> (Case, Vec<Problem>) {
        let text = format!(
            r#"{{"format":"leavewell-case","version":2,"piece":{{"form":"tray","photos":"p1"}},"parts":[{parts}]}}"#
        );
        Draft::parse(&text).unwrap().read()
    }

    #[test]
    fn a_placed_fault_counts_as_if_it_were_ticked_and_never_makes_it_milder() {
        let (placed, problems) = read(
            r#"{"part":"body","spots":[{"id":"e1","fault":"deep_dent","x":20,"y":"30.5"},
                {"id":"e2","fault":"bare"},{"id":"e3","fault":"rust"}]}"#,
        );
        assert!(problems.is_empty(), "{problems:?}");
        let (ticked, _) =
            read(r#"{"part":"body","dents":"moderate","bleed":"slight","corrosion":"rust"}"#);
        let [mut placed, ticked] = [placed, ticked].map(|case| case.parts[0].clone());
        assert_eq!(placed.spots[0].at, Some((20.0, 30.5)));
        placed.spots.clear();
        assert_eq!(placed, ticked);

        let (worse, _) = read(
            r#"{"part":"body","dents":"split","bleed":"much","split":"through","spots":[
                {"fault":"small_dent"},{"fault":"bare"},{"fault":"crease"}]}"#,
        );
        let body = worse.part(PartName::Body).unwrap();
        assert_eq!(
            (body.dents, body.split, body.bleed),
            (
                Some(Dents::Split),
                Some(Split::Through),
                Some(Bleed::Word(BleedWord::Much))
            )
        );
    }

    #[test]
    fn a_grey_repair_and_an_open_joint_stand_beside_each_other_whichever_is_ticked() {
        for (ticked, placed) in [("open", "grey_repair"), ("grey_repair", "open_joint")] {
            let (case, problems) = read(&format!(
                r#"{{"part":"handle","joint":"{ticked}","spots":[{{"fault":"{placed}"}},{{"fault":"neat_repair"}}]}}"#
            ));
            assert!(problems.is_empty(), "{problems:?}");
            let mut handle = case.parts[0].clone();
            assert!(handle.has_joint(Joint::GreyRepair) && handle.has_joint(Joint::Open));
            handle.mend_joints(&[Joint::Open, Joint::Leaking]);
            assert!(handle.has_joint(Joint::GreyRepair) && !handle.has_joint(Joint::Open));
        }
        let (case, _) = read(
            r#"{"part":"foot","joint":"sound","spots":[{"fault":"open_joint"},{"fault":"leak"}]}"#,
        );
        let foot = &case.parts[0];
        assert_eq!((foot.joint, foot.other_joint), (Some(Joint::Leaking), None));
    }

    #[test]
    fn a_place_that_cannot_be_used_is_named_and_the_fault_still_counts() {
        for (spot, field) in [
            (r#""x":120,"y":10"#, "parts[0].spots[0].x"),
            (r#""x":"left","y":10"#, "parts[0].spots[0].x"),
            (r#""x":50,"y":-1"#, "parts[0].spots[0].y"),
            (r#""x":50"#, "parts[0].spots[0].y"),
            (r#""count":0"#, "parts[0].spots[0].count"),
            (r#""count":1000000"#, "parts[0].spots[0].count"),
            (r#""count":2.5"#, "parts[0].spots[0].count"),
            (r#""photo":"foot/1","x":5,"y":5"#, "parts[0].spots[0].photo"),
            (r#""photo":"body/2","x":5,"y":5"#, "parts[0].spots[0].photo"),
        ] {
            let (case, problems) = read(&format!(
                r#"{{"part":"body","photos":"1","spots":[{{"fault":"split",{spot}}}]}}"#
            ));
            assert_eq!(problems.len(), 1, "{spot}: {problems:?}");
            assert_eq!(problems[0].field, field);
            assert!(problems[0].remedy.len() > 10, "{problems:?}");
            let body = &case.parts[0];
            assert_eq!((body.split, body.spots.len()), (Some(Split::Through), 1));
            assert_eq!(body.spots[0].count, 1, "{spot}");
            let keeps_its_place = field.ends_with("count");
            assert_eq!(
                body.spots[0].at.is_some(),
                keeps_its_place && spot.contains("\"x\"")
            );
        }
    }

    #[test]
    fn a_place_may_be_on_a_photo_of_the_part_or_of_the_piece() {
        let (case, problems) = read(
            r#"{"part":"body","photos":"1 2","spots":[{"fault":"scratch","photo":"body/2","x":1,"y":2,"count":4},
                {"fault":"other","photo":"piece/p1","x":3,"y":4,"note":" ink "}]}"#,
        );
        assert!(problems.is_empty(), "{problems:?}");
        let body = &case.parts[0];
        assert_eq!(body.spots[0].photo.as_deref(), Some("body/2"));
        assert_eq!(body.spots[1].note, "ink");
        assert_eq!(body.places_of(|fault| fault == SpotFault::Scratch), 4);
        // What the model does not know stays out of it.
        let plain = Part::unknown(PartName::Body);
        assert_eq!((body.dents, body.bleed), (plain.dents, plain.bleed));
    }

    #[test]
    fn a_spot_without_a_fault_or_on_a_part_that_is_none_is_named_and_kept() {
        let text = r#"{"format":"leavewell-case","version":2,"parts":[
            {"part":"body","spots":[{"id":"e1","x":4,"y":5},{"fault":"dint"},7]},
            {"part":"lid","spots":[{"fault":"split"}]}]}"#;
        let draft = Draft::parse(text).unwrap();
        let (case, problems) = draft.read();
        let fields: Vec<&str> = problems.iter().map(|p| &*p.field).collect();
        assert_eq!(
            fields,
            [
                "parts[0].spots[2]",
                "parts[0].spots[0].fault",
                "parts[0].spots[1].fault",
                "parts[1].part"
            ]
        );
        assert!(problems[2].remedy.contains("dent"), "{problems:?}");
        assert!(case.parts[0].spots.is_empty());
        assert!(draft.to_json().contains("dint") && draft.to_json().contains("lid"));
    }
}
