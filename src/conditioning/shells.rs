//! The liquid of a cylinder in shells from its axis to the steel, and the steel.
//!
//! What flows between neighbors, into the steel and through the bottom is worked out by finite volumes, and the new
//! temperatures of a step from each other (backward Euler), so that no step is ever too long to be stable. The system
//! is symmetric: [`Shells::back`] runs it backward in time and gives the weight that each hour's air has in a
//! temperature at the end.

use super::cylinder::{Body, LIQUID_KG_M3};
use core::f64::consts::PI;

/// Shells of liquid; the exact series for a cylinder is met to 0.0012 of the whole difference with 20.
const LIQUID: usize = 20;
/// Shells and steel.
pub const NODES: usize = LIQUID + 1;
/// Heat capacities in J/kgK: liquid between A (1 800) and B (2 000), steel.
const LIQUID_J: f64 = 1_900.0;
const STEEL_J: f64 = 490.0;
/// Conductivity of the liquid at rest, in W/mK: A 0.126 (a public data sheet), B 0.16 (from memory).
const CONDUCTS: f64 = 0.14;

/// Temperatures from the axis to the steel.
pub type State = [f64; NODES];

#[derive(Debug, Clone, Copy, Default)]
struct Node {
    /// Heat capacity over the length of a step, in W/K.
    keeps: f64,
    /// Conductance to the air, in W/K.
    leaks: f64,
    /// Share in the liquid.
    share: f64,
    /// The factored matrix: what the inner neighbor carries over, and 1 ÷ pivot.
    carries: f64,
    solves: f64,
}

/// The system of one cylinder with one length of step, factored.
#[derive(Debug, Clone, Copy)]
pub struct Shells {
    nodes: [Node; NODES],
    /// Length of a step in minutes.
    pub step_min: f64,
}

impl Shells {
    /// One cylinder with its conductances (W/K), the multiplier on its liquid's conductivity, and a step in minutes.
    pub fn new(body: &Body, (side, bottom): (f64, f64), m: f64, step_min: f64) -> Self {
        let conducts = m * CONDUCTS;
        let level = body.level();
        let through = 1.0 / (1.0 / bottom + level / (3.0 * conducts * body.section));
        let seconds = step_min * 60.0;
        let n = LIQUID as f64;
        let mut nodes = [Node::default(); NODES];
        // From the inner neighbor: nothing at the axis.
        let (mut inner, mut carried) = (0.0, 0.0);
        for (at, node) in nodes.iter_mut().enumerate() {
            let i = at as f64;
            let steel = at == LIQUID;
            // From center to center, from the last center to the wall, and nothing beyond the steel.
            let next = if at + 1 < LIQUID { i + 1.5 } else { n };
            let outer = match steel {
                true => 0.0,
                false => 2.0 * PI * level * conducts / libm::log(next / (i + 0.5)),
            };
            let share = if steel { 0.0 } else { (2.0 * i + 1.0) / (n * n) };
            node.share = share;
            node.keeps = if steel { body.steel * STEEL_J } else { body.liquid * LIQUID_J * share } / seconds;
            node.leaks = if steel { side } else { through * share };
            node.carries = carried;
            let pivot = node.keeps + node.leaks + inner + outer - carried * inner;
            node.solves = 1.0 / pivot;
            (inner, carried) = (outer, outer / pivot);
        }
        debug_assert!((body.section * level * LIQUID_KG_M3 - body.liquid).abs() < 1e-6);
        Self { nodes, step_min }
    }

    fn solve(&self, state: &mut State) {
        let mut before = 0.0;
        for (one, node) in state.iter_mut().zip(&self.nodes) {
            before = *one + node.carries * before;
            *one = before;
        }
        let (mut after, mut carries) = (0.0, 0.0);
        for (one, node) in state.iter_mut().zip(&self.nodes).rev() {
            after = *one * node.solves + carries * after;
            *one = after;
            carries = node.carries;
        }
    }

    /// One step on, in air of this temperature at its end.
    pub fn step(&self, state: &mut State, air: f64) {
        for (one, node) in state.iter_mut().zip(&self.nodes) {
            *one = *one * node.keeps + node.leaks * air;
        }
        self.solve(state);
    }

    /// One step back: `weights` of what stood at the end of a step become those of what stood at its beginning. Gives
    /// the weight of the air at its end. All weights together stay what they were.
    pub fn back(&self, weights: &mut State) -> f64 {
        self.solve(weights);
        let mut of_air = 0.0;
        for (one, node) in weights.iter_mut().zip(&self.nodes) {
            of_air += *one * node.leaks;
            *one *= node.keeps;
        }
        of_air
    }

    /// The mean of the liquid.
    pub fn mean(&self, state: &State) -> f64 {
        state.iter().zip(&self.nodes).map(|(one, node)| one * node.share).sum()
    }
}

/// The time that liquid and steel would take together if nothing held the heat up inside, in minutes.
pub fn lumped_min(body: &Body, (side, bottom): (f64, f64)) -> f64 {
    (body.liquid * LIQUID_J + body.steel * STEEL_J) / (side + bottom) / 60.0
}

/// The liquid at the axis: the last to follow.
pub fn core([core, ..]: &State) -> f64 {
    *core
}

/// The steel, and the liquid that touches it.
pub fn skin([.., skin]: &State) -> f64 {
    *skin
}
