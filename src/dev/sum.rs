//! Sums of bytes: what tells one build from another, and what a policy or a worker checks a file against.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};

/// The SHA-256 of bytes as pages and policies write it.
pub(crate) fn integrity(bytes: &[u8]) -> String {
    format!("sha256-{}", base64(&Sha256::digest(bytes)))
}

/// A short name for exactly these bytes, fit for addresses.
pub(crate) fn short_name(bytes: &[u8]) -> String {
    let sum = Sha256::digest(bytes);
    let first = sum.iter().take(8);
    format!(
        "{:016x}",
        first.fold(0_u64, |so_far, byte| so_far << 8 | u64::from(*byte))
    )
}

/// Bytes as text in base 64, padded.
pub(crate) fn base64(bytes: &[u8]) -> String {
    STANDARD.encode(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// FIPS 180-2, appendix B.1: the sum of "abc" begins ba7816bf 8f01cfea; the whole in base 64 as
    /// `printf abc | openssl dgst -sha256 -binary | base64` gives it.
    #[test]
    fn sums_are_the_standards() {
        assert_eq!(short_name(b"abc"), "ba7816bf8f01cfea");
        assert_eq!(
            integrity(b"abc"),
            "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0="
        );
    }
}
