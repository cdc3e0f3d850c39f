//! Values in and out of JavaScript, for exactly the forms that our types have.
//!
//! Own code rather than a general converter: no text is formatted and no error path carries anything to drop,
//! which is worth a fifth of the whole module. Derived code writes; what is read is listed type by type in
//! [`forms`], where a field that was forgotten does not compile. What is not among our forms (maps, bytes,
//! variants that carry values) is refused where it is read.

mod decode;
mod encode;
mod forms;

pub use decode::{Decode, Fault};

use serde::Serialize;
use std::cell::RefCell;
use tsify::{Ts, Tsify};
use wasm_bindgen::JsValue;

/// Reads a JavaScript value as one of our types.
pub fn decode<T: Decode>(value: &JsValue) -> Result<T, Fault> {
    decode::whole(value)
}

/// Reads an argument of an export.
pub fn taken<T: Tsify + Decode>(argument: Ts<T>) -> Result<T, Fault> {
    decode(&argument.into())
}

/// Makes a JavaScript value of one of our types.
pub fn encode<T: Serialize + ?Sized>(value: &T) -> JsValue {
    match value.serialize(encode::Encoder) {
        Ok(value) => value,
        Err(never) => match never {},
    }
}

/// Makes the answer of an export.
pub fn given<T: Tsify + Serialize>(value: &T) -> Ts<T> {
    Ts::new_unchecked(encode(value))
}

const SLOTS: usize = 4096;

thread_local! {
    /// Names of fields and variants that JavaScript already holds, by the address of their text.
    static NAMES: RefCell<Vec<(usize, usize, JsValue)>> = const { RefCell::new(Vec::new()) };
}

/// Lends a name as a JavaScript string; made once and kept.
fn with_name<T>(text: &'static str, lend: impl FnOnce(&JsValue) -> T) -> T {
    let (address, length) = (text.as_ptr() as usize, text.len());
    let slot = (address ^ (address >> 10) ^ (length << 5)) % SLOTS;
    NAMES.with_borrow_mut(|names| {
        if names.is_empty() {
            names.resize(SLOTS, (0, 0, JsValue::UNDEFINED));
        }
        match names.get_mut(slot) {
            Some(kept) => {
                if kept.0 != address || kept.1 != length {
                    *kept = (address, length, JsValue::from_str(text));
                }
                lend(&kept.2)
            }
            None => lend(&JsValue::from_str(text)),
        }
    })
}

/// A name as a JavaScript string.
fn name(text: &'static str) -> JsValue {
    with_name(text, JsValue::clone)
}
