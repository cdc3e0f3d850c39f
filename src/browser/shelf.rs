//! The shelf: jobs kept as text in the browser's local storage, one key a job.
//!
//! Storage may be blocked, full or taken away between two calls: each function then says so and traps nothing.
//! Revisions and locks are the page's business.

use super::codec::given;
use gloo::storage::{LocalStorage, Storage as _};
use serde::Serialize;
use tsify::{Ts, Tsify};
use wasm_bindgen::prelude::*;
use web_sys::Storage;

const PREFIX: &str = "foamwright.job.";

/// Why something could not be put on the shelf.
#[derive(Serialize, Tsify)]
#[serde(rename_all = "snake_case")]
pub enum ShelfFault {
    /// No room is left.
    Full,
    /// The browser gives no storage here.
    Blocked,
}

/// The storage, if the browser gives any. `LocalStorage::raw` traps where it does not, so that is asked first.
fn shelf() -> Option<Storage> {
    web_sys::window()?.local_storage().ok()??;
    Some(LocalStorage::raw())
}

/// Whether there is a shelf.
#[wasm_bindgen]
pub fn shelf_available() -> bool {
    shelf().is_some_and(|shelf| shelf.length().is_ok())
}

/// The keys of all jobs on the shelf, without their prefix, in the browser's order.
#[wasm_bindgen]
pub fn shelf_keys() -> Vec<String> {
    let Some(shelf) = shelf() else { return Vec::new() };
    let count = shelf.length().unwrap_or(0);
    (0..count)
        .filter_map(|index| shelf.key(index).ok()?)
        .filter_map(|key| Some(key.strip_prefix(PREFIX)?.to_owned()))
        .collect()
}

/// The text kept under a key.
#[wasm_bindgen]
pub fn shelf_get(key: &str) -> Option<String> {
    shelf()?.get_item(&full(key)).ok()?
}

/// Keeps a text under a key; undefined when it is kept.
#[wasm_bindgen]
pub fn shelf_put(key: &str, text: &str) -> Option<Ts<ShelfFault>> {
    let fault = match shelf() {
        None => Some(ShelfFault::Blocked),
        Some(shelf) => shelf.set_item(&full(key), text).err().map(fault),
    };
    fault.map(|fault| given(&fault))
}

/// Takes a key off the shelf; false where the browser refuses.
#[wasm_bindgen]
pub fn shelf_remove(key: &str) -> bool {
    shelf().is_some_and(|shelf| shelf.remove_item(&full(key)).is_ok())
}

fn full(key: &str) -> String {
    let mut full = String::from(PREFIX);
    full.push_str(key);
    full
}

fn fault(error: JsValue) -> ShelfFault {
    let name =
        js_sys::Reflect::get(&error, &JsValue::from_str("name")).ok().and_then(|name| name.as_string());
    match name.as_deref() {
        Some("QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED") => ShelfFault::Full,
        _ => ShelfFault::Blocked,
    }
}
