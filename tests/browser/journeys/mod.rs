//! The journeys, in the order in which they run. Those that want a browser set otherwise come last, so that
//! one browser serves the rest.

mod guards;
mod offline;

use crate::{Journey, Listed};
use driving::engines::Setting;
use std::sync::Arc;

macro_rules! journeys {
    ($setting:expr; $($room:ident: $($steps:ident),+;)+) => {
        vec![$($(Listed {
            name: concat!(stringify!($room), "::", stringify!($steps)),
            setting: $setting,
            steps: |journey: Arc<Journey>| Box::pin($room::$steps(journey)),
        },)+)+]
    };
}

/// Every journey.
pub fn all() -> Vec<Listed> {
    journeys! { Setting::default();
        guards: faults_are_seen, a_killed_server_is_gone;
    }
}
