//! Mounts the app.

fn main() {
    leavewell::start();
}
