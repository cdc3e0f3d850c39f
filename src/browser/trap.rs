//! What is left of a panic: its message, handed to the page before the instance stops for good.

use wasm_bindgen::prelude::*;

/// Keeps the message of a panic in `globalThis.foamwright_trap`; the page shows it and starts a new instance.
#[wasm_bindgen(start)]
pub fn watch() {
    std::panic::set_hook(Box::new(|panic| {
        let message = JsValue::from_str(&panic.to_string());
        let _ = js_sys::Reflect::set(&js_sys::global(), &JsValue::from_str("foamwright_trap"), &message);
    }));
}
