//! Functions that run before any script of a page: what a journey changes about the world around the page.

/// A clock that can be moved: `moveClock(minutes)` moves it from where it is now.
pub const CLOCK: &str = r#"() => {
  const Real = Date;
  let ahead = Number(sessionStorageOrNull()?.getItem('planned clock') ?? 0);
  function sessionStorageOrNull() { try { return sessionStorage; } catch { return null; } }
  class Moved extends Real {
    constructor(...given) { if (given.length) super(...given); else super(Real.now() + ahead); }
    static now() { return Real.now() + ahead; }
  }
  globalThis.Date = Moved;
  globalThis.moveClock = minutes => {
    ahead += minutes * 60000;
    sessionStorageOrNull()?.setItem('planned clock', String(ahead));
  };
}"#;

/// A core that traps: while `plannedTraps` is above zero, the next calls of `estimate` end in a true
/// `unreachable` of a wasm instance.
pub const TRAPS: &str = r#"() => {
  const bytes = new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 3, 2, 1, 0, 7, 5, 1, 1, 102, 0, 0, 10, 5, 1, 3, 0, 0, 11]);
  globalThis.plannedTraps = 0;
  globalThis.coresMade = 0;
  globalThis.estimatesMade = 0;
  const trap = () => new WebAssembly.Instance(new WebAssembly.Module(bytes)).exports.f();
  const wrapped = instance => {
    globalThis.coresMade += 1;
    const exports = {};
    for (const [name, value] of Object.entries(instance.exports)) {
      exports[name] = name !== 'estimate' ? value : (...given) => {
        globalThis.estimatesMade += 1;
        if (globalThis.plannedTraps > 0) {
          globalThis.plannedTraps -= 1;
          trap();
        }
        return value(...given);
      };
    }
    return { exports };
  };
  for (const name of ['instantiate', 'instantiateStreaming']) {
    const real = WebAssembly[name];
    WebAssembly[name] = async (...given) => {
      const made = await real.apply(WebAssembly, given);
      return made instanceof WebAssembly.Instance ? made : { module: made.module, instance: wrapped(made.instance) };
    };
  }
}"#;

/// A browser that refuses its data base, as one does in some private windows.
pub const NO_BASE: &str = r#"() => {
  Object.defineProperty(globalThis, 'indexedDB', { get() { throw new DOMException('planned', 'SecurityError'); } });
}"#;

/// A data base without room.
pub const FULL_BASE: &str = r#"() => {
  IDBObjectStore.prototype.put = () => { throw new DOMException('planned', 'QuotaExceededError'); };
}"#;

/// Counts how often a page of this tab was loaded: `pageLoads()`.
pub const LOADS: &str = r#"() => {
  try {
    const loads = Number(sessionStorage.getItem('planned loads') ?? 0) + 1;
    sessionStorage.setItem('planned loads', String(loads));
  } catch { /* an opaque origin, such as a blank page */ }
  globalThis.pageLoads = () => Number(sessionStorage.getItem('planned loads'));
}"#;

/// A tab that hears nothing of what other tabs keep, once its `sessionStorage` says so.
pub const DEAF: &str = r#"() => addEventListener('storage', event => {
  if (sessionStorage.getItem('planned deaf')) event.stopImmediatePropagation();
})"#;
