//! Mounts the app.

// The library's own allocator takes 2 KB more, compressed, and saves no time that can be measured.
#[cfg(target_arch = "wasm32")]
#[global_allocator]
static HEAP: rlsf::SmallGlobalTlsf = rlsf::SmallGlobalTlsf::new();

fn main() {
    leavewell::start();
}
