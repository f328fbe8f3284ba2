//! Ids that the build script makes from the first column of a data file.

/// A type of ids: each value names a row of the file, so looking one up cannot fail. `$file` holds the constants
/// and `IDS`, the texts in alphabetical order; both are written by the build script.
macro_rules! row_ids {
    ($(#[$doc:meta])* $name:ident, $file:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(u8);

        include!(concat!(env!("OUT_DIR"), $file));

        impl $name {
            /// How many there are.
            pub const COUNT: usize = IDS.len();

            /// The id as text, as used in files and on screens.
            #[must_use]
            pub fn text(self) -> &'static str {
                IDS[self.place()]
            }

            /// The id with this text, for text that comes from a file or a person.
            #[must_use]
            pub fn parse(text: &str) -> Option<Self> {
                let place = IDS.binary_search(&text).ok()?;
                u8::try_from(place).ok().map(Self)
            }

            /// Every id, in alphabetical order.
            pub fn all() -> impl Iterator<Item = Self> {
                (0..).map(Self).take(Self::COUNT)
            }

            /// Index in alphabetical order, from 0.
            #[must_use]
            pub const fn place(self) -> usize {
                self.0 as usize
            }
        }

        impl std::fmt::Debug for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str(self.text())
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str(self.text())
            }
        }

        crate::terms::as_ids!($name by text);
    };
}

pub(super) use row_ids;
