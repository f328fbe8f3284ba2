//! The silver on rolled sheet, from the proportions of the ingot.

/// Silver on one face of fused sheet, in micrometres. The sheet is `sheet_mm` mm thick in all; on each of
/// `faces` faces (1 or 2) the silver is `ratio` times as thick as the copper. Rolling preserves the
/// proportions, so the result is t r / (1 + faces r). Negative input counts as 0.
#[must_use]
pub fn rolled_face_um(sheet_mm: f64, ratio: f64, faces: f64) -> f64 {
    let (t, r) = (1000.0 * sheet_mm.max(0.0), ratio.max(0.0));
    t * r / (1.0 + faces.max(0.0) * r)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn silver_and_copper_add_up_to_the_sheet() {
        let face = rolled_face_um(0.8, 0.025, 2.0);
        let copper = face / 0.025;
        assert!((2.0 * face + copper - 800.0).abs() < 1e-9);
        assert!(rolled_face_um(-1.0, 0.025, 2.0).abs() < 1e-12);
    }
}
