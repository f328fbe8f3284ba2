//! What is to be said of a proposal's steps.

pub(crate) const UNDOES_ANOTHER: &str = "It undoes or hides another step.";

pub(crate) fn step_out(name: &str, why: &str) -> String {
    format!("{name} is left out: {why}")
}

pub(crate) fn step_waits(name: &str, why: &str, lifted_by: &str) -> String {
    format!("{name} waits: {why} {lifted_by}")
}

pub(crate) const NOT_ON_THESE_PARTS: &str = "The parts you named have no fault that it would mend.";

pub(crate) fn on_the_whole(name: &str) -> String {
    format!("{name} is weighed for the whole piece, whatever parts are named.")
}

pub(crate) fn left_on(name: &str, parts: &str) -> String {
    format!("{name} is for the parts you named; the fault stays on {parts} and still counts.")
}
