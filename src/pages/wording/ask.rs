//! What is said of a number that cannot be used.

pub(crate) fn out_of_range(least: f64, most: f64, unit: &str) -> String {
    format!("Enter a number from {least} to {most}.{unit}")
}

pub(crate) fn unit(name: &str) -> String {
    format!(" The unit is {name}.")
}

pub(crate) fn no_number(least: f64, most: f64) -> String {
    format!("That is not a number. Enter one from {least} to {most}.")
}
