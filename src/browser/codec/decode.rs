//! From JavaScript to our types. Every value is checked for its form; a fault names its field.
//!
//! Reading never stops half-way: a value of the wrong form is noted and read as nothing, and whoever asked for
//! the whole gets the first fault instead. So no type needs code to drop what it had read so far.

use super::name;
use core::cell::Cell;
use core::fmt;
use js_sys::{Array, Reflect};
use serde::Deserialize;
use serde::de::value::U32Deserializer;
use serde::de::{
    self, DeserializeSeed, Deserializer, EnumAccess, Expected, IntoDeserializer, Unexpected, VariantAccess,
    Visitor,
};
use wasm_bindgen::prelude::*;

/// Why a value is not what it should be, and in which field.
#[derive(Debug, Clone, Copy)]
pub struct Fault {
    what: &'static str,
    field: &'static str,
}

const WRONG: Fault = Fault { what: "wrong kind of value", field: "" };

impl fmt::Display for Fault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(self.field)?;
        out.write_str(if self.field.is_empty() { "" } else { ": " })?;
        out.write_str(self.what)
    }
}

impl core::error::Error for Fault {}

thread_local! {
    /// The first fault of the value that is being read.
    static FIRST: Cell<Option<Fault>> = const { Cell::new(None) };
}

fn note(fault: Fault) {
    FIRST.set(FIRST.get().or(Some(fault)));
}

/// A type that can be read from a JavaScript value.
pub trait Decode: Sized {
    /// Reads it; a value of the wrong form is noted and read as nothing.
    fn decode(value: &JsValue) -> Self;
}

/// Reads a whole value, or says what is wrong with it.
pub fn whole<T: Decode>(value: &JsValue) -> Result<T, Fault> {
    FIRST.set(None);
    let read = T::decode(value);
    FIRST.take().map_or(Ok(read), Err)
}

/// The object that a struct is read from. Fields that it does not ask for are not looked at.
pub struct Object<'a>(&'a JsValue);

impl<'a> Object<'a> {
    pub fn new(value: &'a JsValue) -> Self {
        if !value.is_object() || Array::is_array(value) {
            note(WRONG);
        }
        Self(value)
    }

    fn get(&self, field: &'static str) -> JsValue {
        Reflect::get(self.0, &name(field)).unwrap_or(JsValue::UNDEFINED)
    }

    /// A field that must be there.
    pub fn needed<T: Decode>(&self, field: &'static str) -> T {
        let value = self.get(field);
        if value.is_undefined() {
            note(Fault { what: "missing", field });
        }
        named(field, &value)
    }

    /// A field that may be left out, for its default.
    pub fn may<T: Decode + Default>(&self, field: &'static str) -> T {
        let value = self.get(field);
        if value.is_undefined() { T::default() } else { named(field, &value) }
    }
}

/// Reads a field; a fault in it bears its name, unless it lies deeper and has one.
fn named<T: Decode>(field: &'static str, value: &JsValue) -> T {
    let read = T::decode(value);
    if let Some(fault) = FIRST.get().filter(|fault| fault.field.is_empty()) {
        FIRST.set(Some(Fault { field, ..fault }));
    }
    read
}

/// Notes that there is no value, and gives nothing for it.
fn or_nothing<T: Default>(value: Option<T>) -> T {
    value.unwrap_or_else(|| {
        note(WRONG);
        T::default()
    })
}

/// A whole number between two bounds.
fn integer(value: &JsValue, least: f64, most: f64) -> f64 {
    let value = or_nothing(value.as_f64());
    if value >= least && value <= most && libm::trunc(value) == value {
        return value;
    }
    note(Fault { what: "no whole number in range", field: "" });
    0.0
}

impl Decode for bool {
    fn decode(value: &JsValue) -> Self {
        or_nothing(value.as_bool())
    }
}

impl Decode for f64 {
    fn decode(value: &JsValue) -> Self {
        or_nothing(value.as_f64())
    }
}

impl Decode for i32 {
    fn decode(value: &JsValue) -> Self {
        integer(value, f64::from(i32::MIN), f64::from(i32::MAX)) as Self
    }
}

impl Decode for u32 {
    fn decode(value: &JsValue) -> Self {
        integer(value, 0.0, f64::from(u32::MAX)) as Self
    }
}

impl Decode for String {
    fn decode(value: &JsValue) -> Self {
        or_nothing(value.as_string())
    }
}

impl<T: Decode> Decode for Option<T> {
    fn decode(value: &JsValue) -> Self {
        (!value.is_undefined() && !value.is_null()).then(|| T::decode(value))
    }
}

impl<T: Decode> Decode for Vec<T> {
    fn decode(value: &JsValue) -> Self {
        let mut read = Self::new();
        each(value, &mut |one| read.push(T::decode(one)));
        read
    }
}

/// Hands over the values of a list, one after the other. Once for lists of every type.
fn each(value: &JsValue, take: &mut dyn FnMut(&JsValue)) {
    if !Array::is_array(value) {
        return note(WRONG);
    }
    let list: &Array = value.unchecked_ref();
    for at in 0..list.length() {
        take(&list.get(at));
    }
}

/// One of the words of an enumeration, by the names that its derived code has for them.
pub fn word<T: for<'de> Deserialize<'de>>(value: &JsValue) -> Option<T> {
    T::deserialize(Word(value)).ok()
}

/// Notes an unknown word.
pub fn unknown() {
    note(Fault { what: "unknown word", field: "" });
}

struct Word<'a>(&'a JsValue);

/// Derived code asks for errors that carry texts; here it is enough that there is one.
#[derive(Debug, Clone, Copy)]
struct NoWord;

impl fmt::Display for NoWord {
    fn fmt(&self, _: &mut fmt::Formatter<'_>) -> fmt::Result {
        Ok(())
    }
}

impl core::error::Error for NoWord {}

impl de::Error for NoWord {
    fn custom<T: fmt::Display>(_: T) -> Self {
        Self
    }
    fn invalid_value(_: Unexpected<'_>, _: &dyn Expected) -> Self {
        Self
    }
}

impl<'de> Deserializer<'de> for Word<'_> {
    type Error = NoWord;

    fn deserialize_any<V: Visitor<'de>>(self, _: V) -> Result<V::Value, NoWord> {
        Err(NoWord)
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        words: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, NoWord> {
        visitor.visit_enum(At(position(self.0, words).ok_or(NoWord)?))
    }

    serde::forward_to_deserialize_any! {
        bool i8 i16 i32 i64 u8 u16 u32 u64 f32 f64 char str string bytes byte_buf option unit unit_struct
        newtype_struct seq tuple tuple_struct map struct identifier ignored_any
    }
}

/// Which of the words a value is.
fn position(value: &JsValue, words: &[&str]) -> Option<u32> {
    let text = value.as_string()?;
    words.iter().position(|word| *word == text).and_then(|at| u32::try_from(at).ok())
}

/// A variant without a value, by its position.
struct At(u32);

impl<'de> EnumAccess<'de> for At {
    type Error = NoWord;
    type Variant = Self;
    fn variant_seed<T: DeserializeSeed<'de>>(self, seed: T) -> Result<(T::Value, Self), NoWord> {
        let position: U32Deserializer<NoWord> = self.0.into_deserializer();
        Ok((seed.deserialize(position)?, self))
    }
}

impl<'de> VariantAccess<'de> for At {
    type Error = NoWord;
    fn unit_variant(self) -> Result<(), NoWord> {
        Ok(())
    }
    fn newtype_variant_seed<T: DeserializeSeed<'de>>(self, _: T) -> Result<T::Value, NoWord> {
        Err(NoWord)
    }
    fn tuple_variant<V: Visitor<'de>>(self, _: usize, _: V) -> Result<V::Value, NoWord> {
        Err(NoWord)
    }
    fn struct_variant<V: Visitor<'de>>(self, _: &'static [&'static str], _: V) -> Result<V::Value, NoWord> {
        Err(NoWord)
    }
}
