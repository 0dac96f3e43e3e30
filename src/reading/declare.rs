//! The three ways in which a job's parts are declared: a thing with fields, a word of several, a choice of several with
//! more behind it. From one declaration come the type, its reading from a file, its form and its walk.

/// The declaration of one field, as a constant.
macro_rules! declared {
    ($thing:ident $field:ident ($type:ty) [$($doc:literal)*]) => {
        $crate::reading::declared!($thing $field ($type) [$($doc)*] $crate::reading::field())
    };
    ($thing:ident $field:ident ($type:ty) [$($doc:literal)*] $declared:expr) => {
        $declared.standing(
            stringify!($thing),
            stringify!($field),
            &[$($doc),*],
            <$type as $crate::reading::Part>::KIND,
        )
    };
}
pub(crate) use declared;

/// Whether a field has a default of its own.
macro_rules! has_default {
    () => {
        false
    };
    ($default:ident) => {
        true
    };
}
pub(crate) use has_default;

/// Things with fields. Each field is written as it stands in the type, behind it `=` and what is said of it.
/// `pub struct Name {…}` may be left out field by field; of `pub struct Name [whole] {…}` every field must be there that
/// is no `Option` and is not marked `[default]`.
macro_rules! things {
    ($(
        $(#[doc = $doc:literal])+
        pub struct $name:ident $([$whole:ident])? {
            $($(#[doc = $about:literal])* $([$default:ident])? $field:ident: $type:ty $(= $declared:expr)?,)+
        }
    )+) => {$(
        $crate::reading::things! { @type
            $(#[doc = $doc])+
            $name $([$whole])? { $($(#[doc = $about])* $(#[serde($default)])? $field: $type,)+ }
        }

        /// Each field as a rule asks for it: what there is, or how it is taken.
        impl $name {
            $(
                $(#[doc = $about])*
                pub fn $field(&self) -> $crate::reading::Asked<'_, <$type as $crate::reading::Part>::Held> {
                    let declared = $crate::reading::reading!($name.$field);
                    $crate::reading::Asked::new($crate::reading::Part::held(&self.$field), declared)
                }
            )+
        }

        impl $crate::reading::Thing for $name {
            const FIELDS: &'static [$crate::reading::Declared] =
                &[$($crate::reading::declared!($name $field ($type) [$($about)*] $($declared)?)),+];
        }

        impl $crate::reading::Part for $name {
            type Held = Self;

            fn held(&self) -> Option<&Self> {
                Some(self)
            }

            fn form() -> $crate::reading::Form {
                let left_out = $crate::reading::things!(@left_out $($whole)?);
                $crate::reading::Form::Fields(vec![$($crate::reading::Field {
                    declared: $crate::reading::reading!($name.$field),
                    form: <$type as $crate::reading::Part>::form(),
                    has_default: left_out || $crate::reading::has_default!($($default)?),
                }),+])
            }

            fn visit<'v>(&'v self, at: &$crate::reading::Place<'_>, see: &mut $crate::reading::See<'_, 'v>) {
                $($crate::reading::Part::visit(&self.$field, &at.field($crate::reading::reading!($name.$field)), see);)+
            }

            fn change(&mut self, change: &mut $crate::reading::Change<'_>) {
                $($crate::reading::Part::change(&mut self.$field, change);)+
            }
        }
    )+};
    (@type $(#[doc = $doc:literal])+ $name:ident { $($fields:tt)+ }) => {
        $crate::reading::things! { @fields
            #[derive(Default)]
            #[serde(default, deny_unknown_fields)]
            $(#[doc = $doc])+
            $name { $($fields)+ }
        }
    };
    (@type $(#[doc = $doc:literal])+ $name:ident [whole] { $($fields:tt)+ }) => {
        $crate::reading::things! { @fields
            #[serde(deny_unknown_fields)]
            $(#[doc = $doc])+
            $name { $($fields)+ }
        }
    };
    (@fields $(#[$meta:meta])+ $name:ident { $($(#[$about:meta])* $field:ident: $type:ty,)+ }) => {
        #[derive(Clone, Debug, PartialEq, serde::Deserialize)]
        $(#[$meta])+
        pub struct $name {
            $($(#[$about])* pub $field: $type,)+
        }
    };
    (@left_out) => {
        true
    };
    (@left_out whole) => {
        false
    };
}
pub(crate) use things;

/// Words of which one is written: each with how it is written and, where a report says it otherwise, how it says it.
macro_rules! words {
    ($(
        $(#[doc = $doc:literal])+
        pub enum $name:ident $([$($derive:ident),+])? {
            $($(#[doc = $about:literal])* $([$default:ident])? $variant:ident = $word:literal $(, $words:literal)?;)+
        }
    )+) => {$(
        $(#[doc = $doc])+
        #[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Deserialize)]
        $(#[derive($($derive),+)])?
        pub enum $name {
            $(
                $(#[doc = $about])*
                #[doc = concat!(" Written as `", $word, "`.")]
                $(#[$default])?
                #[serde(rename = $word)]
                $variant,
            )+
        }

        impl $name {
            /// All of them, in the order in which they are declared.
            pub const ALL: &[Self] = &[$(Self::$variant),+];

            /// As a report says it.
            pub fn words(self) -> &'static str {
                match self {
                    $(Self::$variant => $crate::reading::words!(@said $word $(, $words)?),)+
                }
            }
        }

        impl $crate::reading::Part for $name {
            type Held = Self;

            fn held(&self) -> Option<&Self> {
                Some(self)
            }

            fn form() -> $crate::reading::Form {
                $crate::reading::Form::Choice(vec![$($crate::reading::Choice {
                    word: $word,
                    words: $name::$variant.words(),
                    doc: &[$($about),*],
                    with: None,
                    is_default: $crate::reading::has_default!($($default)?),
                }),+])
            }

            fn visit<'v>(&'v self, at: &$crate::reading::Place<'_>, see: &mut $crate::reading::See<'_, 'v>) {
                see(at, $crate::reading::Value::Word(self.words()));
            }
        }
    )+};
    (@said $word:literal) => {
        $word
    };
    (@said $word:literal, $words:literal) => {
        $words
    };
}
pub(crate) use words;

/// Choices with more behind some of them: fields, or one part. A choice of a part may have words that are said behind its
/// number: `14 in to port`.
macro_rules! choices {
    ($(
        $(#[doc = $doc:literal])+
        pub enum $name:ident {
            $(
                $(#[doc = $about:literal])*
                $variant:ident = $word:literal
                $(, $beside:literal)?
                $(($inner:ty))?
                $({$(
                    $(#[doc = $field_about:literal])* $([$default:ident])? $field:ident: $type:ty $(= $declared:expr)?,
                )+})?;
            )+
        }
    )+) => {$(
        $(#[doc = $doc])+
        #[derive(Clone, Debug, PartialEq, serde::Deserialize)]
        #[serde(deny_unknown_fields)]
        #[allow(clippy::large_enum_variant, reason = "a job has one of them; a box would only hide its fields")]
        pub enum $name {
            $(
                $(#[doc = $about])*
                #[doc = concat!(" Written as `", $word, "`.")]
                #[serde(rename = $word)]
                $variant
                $(($inner))?
                $({$($(#[doc = $field_about])* $(#[serde($default)])? $field: $type,)+})?,
            )+
        }

        impl $crate::reading::Thing for $name {
            const FIELDS: &'static [$crate::reading::Declared] = &[$($($(
                $crate::reading::declared!($name $field ($type) [$($field_about)*] $($declared)?),
            )+)?)+];
        }

        impl $crate::reading::Part for $name {
            const KIND: Option<$crate::quantity::Kind> =
                $crate::reading::kind_of(&[$($(<$inner as $crate::reading::Part>::KIND,)?)+]);

            type Held = Self;

            fn held(&self) -> Option<&Self> {
                Some(self)
            }

            fn form() -> $crate::reading::Form {
                $crate::reading::Form::Choice(vec![$($crate::reading::Choice {
                    word: $word,
                    words: $crate::reading::words!(@said $word $(, $beside)?),
                    doc: &[$($about),*],
                    with: $crate::reading::choices!(@with $(($inner))? $({
                        $($field: $type, $crate::reading::has_default!($($default)?),
                            const { &$crate::reading::declared!($name $field ($type) [$($field_about)*] $($declared)?) };)+
                    })?),
                    is_default: false,
                }),+])
            }

            fn visit<'v>(&'v self, at: &$crate::reading::Place<'_>, see: &mut $crate::reading::See<'_, 'v>) {
                match self {
                    $(
                        Self::$variant
                        $(($crate::reading::choices!(@bind inner $inner)))?
                        $({$($field,)+})? => {
                            $crate::reading::choices!(@show see at $word $(, $beside)? $(($inner))?);
                            $($crate::reading::Part::visit($crate::reading::choices!(@bind inner $inner), at, see);)?
                            $($($crate::reading::Part::visit(
                                $field,
                                &at.field(const {
                                    &$crate::reading::declared!($name $field ($type) [$($field_about)*] $($declared)?)
                                }),
                                see,
                            );)+)?
                        }
                    )+
                }
            }

            fn change(&mut self, _change: &mut $crate::reading::Change<'_>) {
                match self {
                    $(
                        Self::$variant
                        $(($crate::reading::choices!(@bind inner $inner)))?
                        $({$($field,)+})? => {
                            $($crate::reading::Part::change($crate::reading::choices!(@bind inner $inner), _change);)?
                            $($($crate::reading::Part::change($field, _change);)+)?
                        }
                    )+
                }
            }
        }
    )+};
    (@show $see:ident $at:ident $word:literal) => {
        $see($at, $crate::reading::Value::Word($word));
    };
    (@show $see:ident $at:ident $word:literal, $beside:literal ($inner:ty)) => {
        $see($at, $crate::reading::Value::Beside($beside));
    };
    (@show $see:ident $at:ident $word:literal ($inner:ty)) => {};
    (@bind $name:ident $inner:ty) => {
        $name
    };
    (@with) => {
        None
    };
    (@with ($inner:ty)) => {
        Some(<$inner as $crate::reading::Part>::form())
    };
    (@with {$($field:ident: $type:ty, $default:expr, $declared:expr;)+}) => {
        Some($crate::reading::Form::Fields(vec![$($crate::reading::Field {
            declared: $declared,
            form: <$type as $crate::reading::Part>::form(),
            has_default: $default,
        }),+]))
    };
}
pub(crate) use choices;
