//! From the core's records to what crosses the boundary: the same shape, with
//! numbers of a fixed size.

/// What a value is on the other side.
pub(crate) trait Cross<T> {
    /// The value, crossed.
    fn cross(self) -> T;
}

macro_rules! same {
    ($($kind:ty)*) => {$(
        impl Cross<$kind> for $kind {
            fn cross(self) -> $kind {
                self
            }
        }
    )*};
}

same! { String bool f64 u8 u32 u64 }

impl Cross<u32> for usize {
    fn cross(self) -> u32 {
        u32::try_from(self).unwrap_or(u32::MAX)
    }
}

impl Cross<String> for &'static str {
    fn cross(self) -> String {
        self.to_owned()
    }
}

impl<A: Cross<B>, B> Cross<Option<B>> for Option<A> {
    fn cross(self) -> Option<B> {
        self.map(Cross::cross)
    }
}

impl<A: Cross<B>, B> Cross<Vec<B>> for Vec<A> {
    fn cross(self) -> Vec<B> {
        self.into_iter().map(Cross::cross).collect()
    }
}

/// A record with the fields of one of the core's, each crossed by its name.
macro_rules! record {
    ($(#[$doc:meta])* $name:ident of $core:path { $($(#[$field_doc:meta])* $field:ident: $kind:ty,)* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, serde::Serialize, uniffi::Record)]
        pub struct $name {
            $($(#[$field_doc])* pub $field: $kind,)*
        }

        impl crate::cross::Cross<$name> for $core {
            fn cross(self) -> $name {
                $name { $($field: crate::cross::Cross::cross(self.$field),)* }
            }
        }
    };
}

/// An enum with the variants of one of the core's, crossed either way.
macro_rules! variants {
    ($(#[$doc:meta])* $name:ident of $core:path { $($(#[$variant_doc:meta])* $variant:ident,)* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, serde::Serialize, uniffi::Enum)]
        #[serde(rename_all = "kebab-case")]
        pub enum $name {
            $($(#[$variant_doc])* $variant,)*
        }

        impl crate::cross::Cross<$name> for $core {
            fn cross(self) -> $name {
                match self {
                    $(<$core>::$variant => $name::$variant,)*
                }
            }
        }

        impl crate::cross::Cross<$core> for $name {
            fn cross(self) -> $core {
                match self {
                    $($name::$variant => <$core>::$variant,)*
                }
            }
        }
    };
}

pub(crate) use record;
pub(crate) use variants;
