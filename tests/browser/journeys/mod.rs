//! The journeys, in the order in which they run. Those that want a browser set otherwise come last, so that
//! one browser serves the rest.

mod axe;
mod before;
mod built;
mod calendar;
mod class_paper;
mod class_sheet;
mod depth;
mod device;
mod embed;
mod embed_closed;
mod embed_estimate;
mod embed_hostile;
mod embed_later;
mod embed_looks;
mod embedding;
mod fit;
mod guards;
mod keyboard;
mod moving;
mod offline;
mod paper;
mod people;
mod photos;
mod place;
mod practice;
mod readiness;
mod sheet;
mod sky;
mod storage;
mod takeoff;
mod tape;
mod trap;
mod update;
mod wall;
mod warm;
mod whole_job;

use crate::{Journey, Listed};
use driving::engines::Setting;
use std::sync::Arc;

macro_rules! journeys {
    ($setting:expr; $($room:ident: $($steps:ident),+;)+) => {
        [$($(Listed {
            name: concat!(stringify!($room), "::", stringify!($steps)),
            setting: $setting,
            steps: |journey: Arc<Journey>| Box::pin($room::$steps(journey)),
        },)+)+]
    };
}

/// Every journey.
pub fn all() -> Vec<Listed> {
    let mut all = Vec::new();
    all.extend(journeys! { Setting::default();
        guards: faults_are_seen, a_killed_server_is_gone, a_held_page_is_opened_again;
        takeoff: first_visit, words_when_needed, from_nothing, two_meanings, several_at_once, a_bad_text, undo_and_redo, a_range;
        tape: twelve_surfaces, keys_and_keyboard, metric_and_left, fits_and_is_named;
        wall: areas_and_drawing, dimension_and_field, openings;
        depth: dragged, by_keys_and_typing, ways_out, ways_through_the_code;
        whole_job: walkthrough_to_day_sheet;
        before: the_walk, air_sealing;
        built: layers_and_whole, cover_and_cost, a_zone_pressed, fits_and_is_named;
        place: zip_to_zone, other_ways, no_table, by_keyboard;
        readiness: hold_go_not_read, a_blank_is_no_pass;
        sky: a_forecast, the_place, tent_and_heat, moist_air, rounds;
        calendar: dates_and_a_file;
        people: back_in, air_and_van;
        warm: in_ready_out, groups_and_late;
        keyboard: a_whole_takeoff;
        fit: every_screen, long_names;
        axe: phone_paper, phone_crawl, desk_paper, desk_crawl, other_states;
        offline: opens_without_server;
        update: by_consent;
        storage: file_out_and_in, files_refused, the_same_job_twice, two_tabs, full;
        photos: of_a_surface, blocked, full;
        moving: by_link, bad_links, by_backup, tables_and_message;
        trap: in_a_call, in_every_call, core_missing;
        embed: two_on_a_page, resized, a_swing, a_life, settings_refused;
        embed_closed: sandboxed, without_the_header, without_scripts, policy_without_it, no_answer, by_address;
        embed_estimate: a_whole_estimate, sent, taken_out_of_a_sandbox, no_verdict;
        embed_looks: light, of_the_company, on_paper;
        embed_later: after_the_wait, file_and_message, set_again, words_missing;
        embed_hostile: strangers, junk, poisoned, heights;
        practice: worked, by_number_and_link, spanish_and_metric, progress, without_server, light, dark;
        class_sheet: drawn_and_handed_out, saved_and_marked, every_scene_is_right;
        paper: the_whole_sheet, the_ways_to_them, of_the_sample, from_the_dark, in_spanish, of_the_barn, of_every_shape, of_patches, of_a_long_house, inspector, inspector_of_much, emergency, spoiled;
        class_paper: printed;
    });
    all.extend(journeys! { Setting { storage_refused: true, ..Setting::default() };
        storage: refused;
        photos: refused;
        practice: refused;
        embed_closed: nothing_kept;
    });
    all.extend(journeys! { Setting { dark: true, spanish: true, ..Setting::default() };
        device: dark_and_spanish;
        embed_later: languages;
        embed_looks: dark, of_the_company;
    });
    all
}
