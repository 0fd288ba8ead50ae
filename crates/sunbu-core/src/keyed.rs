//! Enums whose members have one stable name each, used as key in files, forms and JSON.

/// Declares an enum with `ALL`, `COUNT`, `key`, `from_key` and `index`, and the same key in serde.
macro_rules! keyed_enum {
    ($(#[$meta:meta])* $name:ident { $($(#[$member_meta:meta])* $member:ident = $key:literal,)+ }) => {
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[derive(serde::Serialize, serde::Deserialize)]
        pub enum $name {
            $($(#[$member_meta])* #[serde(rename = $key)] $member,)+
        }

        impl $name {
            /// Every member, in the order of declaration.
            pub const ALL: &'static [Self] = &[$(Self::$member),+];
            /// How many members there are.
            pub const COUNT: usize = Self::ALL.len();

            /// The stable name in files, forms and JSON.
            pub const fn key(self) -> &'static str {
                match self { $(Self::$member => $key,)+ }
            }

            /// The member with this key, if there is one.
            pub fn from_key(key: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|m| m.key() == key)
            }

            /// The place in [`Self::ALL`].
            pub const fn index(self) -> usize {
                self as usize
            }
        }
    };
}

pub(crate) use keyed_enum;
