//! SHA-256 digests. They name a build, and the content policy and the service worker check files against them.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};

/// The SHA-256 digest as subresource integrity and content policies write it: `sha256-` and base 64.
pub(crate) fn integrity(bytes: &[u8]) -> String {
    format!("sha256-{}", base64(&Sha256::digest(bytes)))
}

/// A short URL-safe name for these bytes: the first 16 hex digits of their SHA-256 digest.
pub(crate) fn short_name(bytes: &[u8]) -> String {
    let sum = Sha256::digest(bytes);
    let first = sum.iter().take(8);
    format!(
        "{:016x}",
        first.fold(0_u64, |so_far, byte| so_far << 8 | u64::from(*byte))
    )
}

/// The bytes in base 64, padded.
pub(crate) fn base64(bytes: &[u8]) -> String {
    STANDARD.encode(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// FIPS 180-2, appendix B.1: the digest of "abc" begins ba7816bf 8f01cfea. The base 64 text is the
    /// output of `printf abc | openssl dgst -sha256 -binary | base64`.
    #[test]
    fn digests_match_the_standard() {
        assert_eq!(short_name(b"abc"), "ba7816bf8f01cfea");
        assert_eq!(
            integrity(b"abc"),
            "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0="
        );
    }
}
