//! From our types to JavaScript: structs become objects, lists arrays, names strings, nothing `undefined`.

use super::{encode, name, with_name};
use core::fmt;
use js_sys::Array;
use serde::Serialize;
use serde::ser::{self, Impossible, SerializeSeq, SerializeStruct, SerializeTuple};
use wasm_bindgen::prelude::*;

#[wasm_bindgen]
extern "C" {
    /// An object being filled.
    #[wasm_bindgen(js_name = Object)]
    pub type Fields;

    #[wasm_bindgen(constructor, js_class = "Object")]
    fn new() -> Fields;

    #[wasm_bindgen(method, indexing_setter)]
    fn set(this: &Fields, key: &JsValue, value: &JsValue);
}

/// Makes JavaScript values. It cannot fail.
pub struct Encoder;

/// There is no such error: every form that our types have can be made.
#[derive(Debug)]
pub enum Never {}

impl fmt::Display for Never {
    fn fmt(&self, _: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {}
    }
}

impl core::error::Error for Never {}

impl ser::Error for Never {
    /// Called by hand-written `Serialize` code that finds a fault; ours is derived and has none.
    fn custom<T: fmt::Display>(_: T) -> Self {
        foreign()
    }
}

/// A form that none of our types has.
fn foreign() -> ! {
    std::process::abort()
}

/// A list being filled.
pub struct List(Array);

impl SerializeSeq for List {
    type Ok = JsValue;
    type Error = Never;
    fn serialize_element<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Never> {
        self.0.push(&encode(value));
        Ok(())
    }
    fn end(self) -> Result<JsValue, Never> {
        Ok(self.0.into())
    }
}

impl SerializeTuple for List {
    type Ok = JsValue;
    type Error = Never;
    fn serialize_element<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Never> {
        SerializeSeq::serialize_element(self, value)
    }
    fn end(self) -> Result<JsValue, Never> {
        SerializeSeq::end(self)
    }
}

impl SerializeStruct for Fields {
    type Ok = JsValue;
    type Error = Never;
    fn serialize_field<T: Serialize + ?Sized>(&mut self, key: &'static str, value: &T) -> Result<(), Never> {
        put(self, key, encode(value));
        Ok(())
    }
    fn end(self) -> Result<JsValue, Never> {
        Ok(self.into())
    }
}

#[inline(never)]
fn put(object: &Fields, key: &'static str, value: JsValue) {
    with_name(key, |key| object.set(key, &value));
}

#[inline(never)]
fn number(value: f64) -> JsValue {
    JsValue::from_f64(value)
}

impl ser::Serializer for Encoder {
    type Ok = JsValue;
    type Error = Never;
    type SerializeSeq = List;
    type SerializeTuple = List;
    type SerializeTupleStruct = Impossible<JsValue, Never>;
    type SerializeTupleVariant = Impossible<JsValue, Never>;
    type SerializeMap = Impossible<JsValue, Never>;
    type SerializeStruct = Fields;
    type SerializeStructVariant = Impossible<JsValue, Never>;

    fn serialize_bool(self, value: bool) -> Result<JsValue, Never> {
        Ok(JsValue::from_bool(value))
    }
    fn serialize_i8(self, value: i8) -> Result<JsValue, Never> {
        Ok(number(f64::from(value)))
    }
    fn serialize_i16(self, value: i16) -> Result<JsValue, Never> {
        Ok(number(f64::from(value)))
    }
    fn serialize_i32(self, value: i32) -> Result<JsValue, Never> {
        Ok(number(f64::from(value)))
    }
    /// Cents: exact up to 9 × 10¹⁵, far above every limit.
    fn serialize_i64(self, value: i64) -> Result<JsValue, Never> {
        Ok(number(value as f64))
    }
    fn serialize_u8(self, value: u8) -> Result<JsValue, Never> {
        Ok(number(f64::from(value)))
    }
    fn serialize_u16(self, value: u16) -> Result<JsValue, Never> {
        Ok(number(f64::from(value)))
    }
    fn serialize_u32(self, value: u32) -> Result<JsValue, Never> {
        Ok(number(f64::from(value)))
    }
    fn serialize_u64(self, value: u64) -> Result<JsValue, Never> {
        Ok(number(value as f64))
    }
    fn serialize_f32(self, value: f32) -> Result<JsValue, Never> {
        Ok(number(f64::from(value)))
    }
    fn serialize_f64(self, value: f64) -> Result<JsValue, Never> {
        Ok(number(value))
    }
    fn serialize_char(self, value: char) -> Result<JsValue, Never> {
        self.serialize_str(value.encode_utf8(&mut [0; 4]))
    }
    fn serialize_str(self, value: &str) -> Result<JsValue, Never> {
        Ok(JsValue::from_str(value))
    }
    fn serialize_none(self) -> Result<JsValue, Never> {
        Ok(JsValue::UNDEFINED)
    }
    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Result<JsValue, Never> {
        value.serialize(self)
    }
    fn serialize_unit(self) -> Result<JsValue, Never> {
        Ok(JsValue::UNDEFINED)
    }
    fn serialize_unit_struct(self, _: &'static str) -> Result<JsValue, Never> {
        Ok(JsValue::UNDEFINED)
    }
    fn serialize_unit_variant(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
    ) -> Result<JsValue, Never> {
        Ok(name(variant))
    }
    fn serialize_newtype_struct<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        value: &T,
    ) -> Result<JsValue, Never> {
        value.serialize(self)
    }
    fn serialize_seq(self, _: Option<usize>) -> Result<List, Never> {
        Ok(List(Array::new()))
    }
    fn serialize_tuple(self, _: usize) -> Result<List, Never> {
        Ok(List(Array::new()))
    }
    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Fields, Never> {
        Ok(Fields::new())
    }

    fn serialize_bytes(self, _: &[u8]) -> Result<JsValue, Never> {
        foreign()
    }
    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: &T,
    ) -> Result<JsValue, Never> {
        foreign()
    }
    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<Self::SerializeTupleStruct, Never> {
        foreign()
    }
    fn serialize_tuple_variant(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: usize,
    ) -> Result<Self::SerializeTupleVariant, Never> {
        foreign()
    }
    fn serialize_map(self, _: Option<usize>) -> Result<Self::SerializeMap, Never> {
        foreign()
    }
    fn serialize_struct_variant(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: usize,
    ) -> Result<Self::SerializeStructVariant, Never> {
        foreign()
    }
}
