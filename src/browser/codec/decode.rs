//! From JavaScript to our types. Every value is checked for its form; a fault names its field.

use super::name;
use core::fmt;
use js_sys::{Array, Reflect};
use serde::de::Error as _;
use serde::de::value::U32Deserializer;
use serde::de::{
    self, DeserializeSeed, Deserializer, EnumAccess, Expected, IntoDeserializer, SeqAccess, Unexpected,
    VariantAccess, Visitor,
};
use wasm_bindgen::prelude::*;

/// Why a value is not what it should be, and in which field.
#[derive(Debug, Clone, Copy)]
pub struct Fault {
    what: &'static str,
    field: &'static str,
    /// The position of a field that was not there, until its struct names it.
    lacking: Option<usize>,
}

impl Fault {
    const fn new(what: &'static str) -> Self {
        Self { what, field: "", lacking: None }
    }

    /// The same fault in a field, unless it lies deeper and knows its own.
    fn within(self, field: &'static str) -> Self {
        Self { field: if self.field.is_empty() { field } else { self.field }, ..self }
    }
}

const WRONG: Fault = Fault::new("wrong kind of value");

impl fmt::Display for Fault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(self.field)?;
        out.write_str(if self.field.is_empty() { "" } else { ": " })?;
        out.write_str(self.what)
    }
}

impl core::error::Error for Fault {}

impl de::Error for Fault {
    fn custom<T: fmt::Display>(_: T) -> Self {
        WRONG
    }
    fn invalid_type(_: Unexpected<'_>, _: &dyn Expected) -> Self {
        WRONG
    }
    fn invalid_value(_: Unexpected<'_>, _: &dyn Expected) -> Self {
        Self::new("value out of range")
    }
    fn invalid_length(position: usize, _: &dyn Expected) -> Self {
        Self { lacking: Some(position), ..WRONG }
    }
    fn unknown_variant(_: &str, _: &'static [&'static str]) -> Self {
        Self::new("unknown word")
    }
    fn unknown_field(_: &str, _: &'static [&'static str]) -> Self {
        Self::new("unknown field")
    }
    fn missing_field(field: &'static str) -> Self {
        Self::new("missing").within(field)
    }
    fn duplicate_field(field: &'static str) -> Self {
        Self::new("twice").within(field)
    }
}

/// A JavaScript value to be read.
pub struct Decoder(pub JsValue);

impl Decoder {
    /// A whole number between two bounds.
    fn whole(&self, least: f64, most: f64) -> Result<f64, Fault> {
        let value = self.0.as_f64().ok_or(WRONG)?;
        let good = value >= least && value <= most && libm::trunc(value) == value;
        if good { Ok(value) } else { Err(Fault::new("no whole number in range")) }
    }

    fn text(&self) -> Result<String, Fault> {
        self.0.as_string().ok_or(WRONG)
    }
}

/// Largest whole number that JavaScript and we count exactly to.
const EXACT: f64 = 9_007_199_254_740_991.0;

impl<'de> Deserializer<'de> for Decoder {
    type Error = Fault;

    /// No type of ours asks for whatever there is.
    fn deserialize_any<V: Visitor<'de>>(self, _: V) -> Result<V::Value, Fault> {
        Err(WRONG)
    }
    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_bool(self.0.as_bool().ok_or(WRONG)?)
    }
    fn deserialize_i32<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_i32(self.whole(f64::from(i32::MIN), f64::from(i32::MAX))? as i32)
    }
    fn deserialize_i64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_i64(self.whole(-EXACT, EXACT)? as i64)
    }
    fn deserialize_u32<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_u32(self.whole(0.0, f64::from(u32::MAX))? as u32)
    }
    fn deserialize_u64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_u64(self.whole(0.0, EXACT)? as u64)
    }
    fn deserialize_f64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_f64(self.0.as_f64().ok_or(WRONG)?)
    }
    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_string(self.text()?)
    }
    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_string(self.text()?)
    }
    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        if self.0.is_undefined() || self.0.is_null() {
            visitor.visit_none()
        } else {
            visitor.visit_some(self)
        }
    }
    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        visitor: V,
    ) -> Result<V::Value, Fault> {
        visitor.visit_newtype_struct(self)
    }
    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        let list: Array = self.0.dyn_into().map_err(|_| WRONG)?;
        visitor.visit_seq(Items { next: 0, list })
    }
    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        if !self.0.is_object() || Array::is_array(&self.0) {
            return Err(WRONG);
        }
        visitor.visit_seq(Fields { object: self.0, fields, next: 0 }).map_err(|fault| match fault.lacking {
            Some(position) => Fault::missing_field(fields.get(position).copied().unwrap_or_default()),
            None => fault,
        })
    }
    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        visitor.visit_enum(Word(position(&self.0, variants)?))
    }

    serde::forward_to_deserialize_any! {
        i8 i16 u8 u16 f32 char bytes byte_buf unit unit_struct tuple tuple_struct map identifier ignored_any
    }
}

/// Which of the words a value is.
fn position(value: &JsValue, words: &[&str]) -> Result<u32, Fault> {
    let text = value.as_string().ok_or(WRONG)?;
    let at = words.iter().position(|word| *word == text).and_then(|at| u32::try_from(at).ok());
    at.ok_or(Fault::new("unknown word"))
}

struct Items {
    list: Array,
    next: u32,
}

impl<'de> SeqAccess<'de> for Items {
    type Error = Fault;
    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, Fault> {
        if self.next >= self.list.length() {
            return Ok(None);
        }
        let value = self.list.get(self.next);
        self.next += 1;
        seed.deserialize(Decoder(value)).map(Some)
    }
}

/// The fields of an object, in the order in which our type has them; one that is not there gives nothing, which
/// derived code takes for the default or, where there is none, for a fault. Other fields are not looked at.
struct Fields {
    object: JsValue,
    fields: &'static [&'static str],
    next: usize,
}

impl Fields {
    fn advance(&mut self) -> Result<(&'static str, JsValue), Fault> {
        let field = self.fields.get(self.next).copied().unwrap_or_default();
        self.next += 1;
        let value = Reflect::get(&self.object, &name(field)).map_err(|_| WRONG.within(field))?;
        Ok((field, value))
    }
}

impl<'de> SeqAccess<'de> for Fields {
    type Error = Fault;
    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, Fault> {
        let (field, value) = self.advance()?;
        if value.is_undefined() {
            return Ok(None);
        }
        seed.deserialize(Decoder(value)).map(Some).map_err(|fault| fault.within(field))
    }
}

/// A variant without a value, by its position.
struct Word(u32);

impl<'de> EnumAccess<'de> for Word {
    type Error = Fault;
    type Variant = Self;
    fn variant_seed<T: DeserializeSeed<'de>>(self, seed: T) -> Result<(T::Value, Self), Fault> {
        let position: U32Deserializer<Fault> = self.0.into_deserializer();
        Ok((seed.deserialize(position)?, self))
    }
}

impl<'de> VariantAccess<'de> for Word {
    type Error = Fault;
    fn unit_variant(self) -> Result<(), Fault> {
        Ok(())
    }
    fn newtype_variant_seed<T: DeserializeSeed<'de>>(self, _: T) -> Result<T::Value, Fault> {
        Err(WRONG)
    }
    fn tuple_variant<V: Visitor<'de>>(self, _: usize, _: V) -> Result<V::Value, Fault> {
        Err(WRONG)
    }
    fn struct_variant<V: Visitor<'de>>(self, _: &'static [&'static str], _: V) -> Result<V::Value, Fault> {
        Err(WRONG)
    }
}
