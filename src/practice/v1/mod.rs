//! The scenes of generator version 1. **Never edited once released**: a golden file holds what each draws.

mod across_framing;
mod allowances;
mod attic;
mod attic_kits;
mod bill;
mod board_feet;
mod code;
mod crawl;
mod crawl_day;
mod forecast;
mod framed;
mod gable;
mod hip;
mod lifts;
mod readings;
mod rim;
mod roof;
mod sheet;
mod shelf;
#[cfg(test)]
#[allow(clippy::float_cmp)]
mod site_tests;
mod tape;
mod target;
mod trade;
mod uneven;
mod wall;
mod warm_up;

use super::made::Making;
use super::{Made, Seed, Topic};
use crate::measure::Units;

/// A kind of exercise: what it trains, on which levels it comes, and how it is drawn.
#[derive(Debug, Clone, Copy)]
pub struct Scene {
    /// The key of its words.
    pub key: &'static str,
    /// The levels on which it comes.
    pub levels: &'static [u8],
    /// What it trains: the topics of its steps.
    pub topics: &'static [Topic],
    /// Draws it. The level says how much of it is asked.
    pub make: fn(&mut Making, level: u8),
}

/// Every scene. Their order is part of the generator.
pub const SCENES: &[Scene] = &[
    tape::SCENE,
    wall::SCENE,
    board_feet::SCENE,
    lifts::SCENE,
    framed::SCENE,
    gable::SCENE,
    roof::SCENE,
    target::SCENE,
    allowances::SCENE,
    shelf::SCENE,
    gable::TO_KITS,
    hip::SCENE,
    bill::SCENE,
    rim::SCENE,
    forecast::SCENE,
    crawl::SCENE,
    attic::SCENE,
    attic::HIP,
    readings::SCENE,
    warm_up::SCENE,
    uneven::SCENE,
    across_framing::SCENE,
    code::SCENE,
    code::BOARD,
];

/// The scenes of a level.
pub fn scenes(level: u8) -> Vec<&'static Scene> {
    SCENES.iter().filter(|scene| scene.levels.contains(&level)).collect()
}

/// The scene of a seed: which one is the first draw of its stream.
fn scene(seed: Seed) -> Option<&'static Scene> {
    let mut draw = Making::draws(seed);
    let scenes = scenes(seed.level);
    draw.one_of(&scenes)
}

/// What a seed's exercise trains, without drawing it.
pub fn topics(seed: Seed) -> &'static [Topic] {
    scene(seed).map_or(&[], |scene| scene.topics)
}

/// The exercise of a seed.
pub fn exercise(seed: Seed, units: Units) -> Option<Made> {
    let scene = scene(seed)?;
    let mut making = Making::new(seed, units, scene.key);
    // The draw that picked the scene.
    making.draw.next();
    (scene.make)(&mut making, seed.level);
    Some(making.done())
}
