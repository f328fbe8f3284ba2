//! The samples of the closer look.

/// Size of the sample shown draw by draw, as a power of 2. It is the sample of the answer.
const SHOWN_LOG2: u32 = 12;

/// Size of each of the other scrambled samples as a power of 2, and their number: together 2^14 points.
const SCRAMBLE_LOG2: u32 = 11;

pub(super) const SCRAMBLES: u32 = 8;

/// The samples in scramble order: size as a power of 2, and whether the attributes of each course are kept.
pub(super) const SAMPLES: [(u32, bool); 1 + SCRAMBLES as usize] = {
    let mut samples = [(SCRAMBLE_LOG2, false); 1 + SCRAMBLES as usize];
    samples[0] = (SHOWN_LOG2, true);
    samples
};
