//! With the server killed.

use driving::Step;
use driving::page::Page;
use serde_json::json;

/// Whether a file that nobody can have kept comes from the server.
pub async fn reaches_server(page: &Page) -> Step<bool> {
    let script = "fetch('./never-kept?' + crypto.randomUUID(), { cache: 'no-store' }).then(() => done(true), () => done(false))";
    Ok(page.run_async(script, vec![]).await? == json!(true))
}
