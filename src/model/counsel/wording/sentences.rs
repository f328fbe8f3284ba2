//! Courses as sentences, put together from clauses: "have" comes before each, and a test for lead
//! before what depends on it.

use crate::treatment::Treatment;

// Work that someone else does

/// Work that someone else does, after "have"; nothing for what is no work on the piece.
pub(crate) fn clause(treatment: Treatment) -> Option<&'static str> {
    Some(match treatment {
        Treatment::LacquerOff => "the old lacquer taken off",
        Treatment::RemoveLead => "the old lead solder taken out",
        Treatment::RemoveFill => "the old filling taken out",
        Treatment::Dents => "the dents taken out",
        Treatment::Tinning => "the inside tinned",
        Treatment::Solder => "the joint repaired with lead-free solder",
        Treatment::LowMelt => "the joint mended with a low-melting or glued repair",
        Treatment::Mechanical => "the loose part fixed in its old seat",
        Treatment::ReplacePart => "a new part made",
        Treatment::Clean => "it gently cleaned",
        Treatment::Foam => "it cleaned with a polish made for silver",
        Treatment::LocalPlate => "the bare high points plated",
        Treatment::Overplate => "it plated over the old silver",
        Treatment::Replate => "it fully replated",
        Treatment::Regild => "the gilding inside renewed",
        Treatment::Toning => "the bare metal toned with a tint that comes off",
        Treatment::Lacquer => "it lacquered",
        _ => return None,
    })
}

pub(crate) fn have(what: &str) -> String {
    format!("have {what}")
}

pub(crate) const CLEANED: &str = "it gently cleaned";
pub(crate) const CLEAN_NO_MORE: &str = "clean it gently, and do no more";
pub(crate) const KEEP_BETTER: &str = " Store and handle it with more care from then on.";

// After the test for lead

pub(crate) fn test_first(after: &str, keep: &str) -> String {
    format!("Have it tested for lead first{after}.{keep}")
}

pub(crate) const USE_IF_PASSED: &str = "; use it only if it passes";

pub(crate) fn then_anyway(what: &str) -> String {
    format!("; then {what}")
}

pub(crate) fn if_passed(what: &str) -> String {
    format!("; if it is clear, {what}, and if it is not, leave it")
}

pub(crate) fn if_lead(what: &str) -> String {
    format!("; if lead is found, {what}, and if not, leave it")
}

pub(crate) fn either_way(passed: &str, failed: &str) -> String {
    format!("; if it is clear, {passed}, and if it is not, {failed}")
}

// Nothing to do

pub(crate) const LEAVE_AND_KEEP: &str = "Leave it as it is, and store it better.";
pub(crate) const LEAVE_AND_KEEP_DRY: &str =
    "Do no work on it; keep it dry, and have a conservator treat the corrosion.";
pub(crate) const LEAVE: &str = "Leave it as it is.";
