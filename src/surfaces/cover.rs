//! How much of a plane rectangles cover, without counting anything twice.

use super::Rect;
use crate::measure::held_between;

/// Two slopes that meet over the middle: what lies above them is not there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Top {
    /// Height at both ends.
    pub(super) eave: f64,
    /// From there up to the ridge.
    pub(super) rise: f64,
    /// From end to end.
    pub(super) width: f64,
}

impl Top {
    /// How high it is here.
    pub(super) fn at(self, x: f64) -> f64 {
        let half = self.width / 2.0;
        let part = if half > 0.0 { 1.0 - ((x - half) / half).abs() } else { 0.0 };
        self.eave + self.rise * part
    }

    /// What lies over a level and under the slope, between two places on the same side of the ridge.
    fn over(self, level: f64, from: f64, to: f64) -> f64 {
        let (left, right) = (self.at(from) - level, self.at(to) - level);
        let (least, most) = (left.min(right), left.max(right));
        if most <= 0.0 {
            0.0
        } else if least >= 0.0 {
            (to - from) * (left + right) / 2.0
        } else {
            // A triangle: the slope starts over the level somewhere between.
            (to - from) * most * most / (2.0 * (most - least))
        }
    }
}

/// A rectangle and its rank: where several cover the same spot, the one of the lowest rank has it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layer {
    pub(super) rect: Rect,
    pub(super) rank: usize,
}

/// One end of a rectangle's span along a line.
struct Edge {
    at: f64,
    who: usize,
    opens: bool,
}

/// The area in square inches that each rank has, from 0 up to `ranks`.
///
/// A line is swept over the plane from left to right; between two edges the spans that it crosses stay the
/// same, and each stretch of the line belongs to the lowest rank that covers it. Under a `top` only what lies
/// below it counts.
pub(super) fn cover(layers: &[Layer], ranks: usize, top: Option<Top>) -> Vec<f64> {
    let mut areas = vec![0.0; ranks];
    let mut crossed: Vec<Layer> = Vec::new();
    let mut from = 0.0;
    let spans = layers.iter().enumerate().map(|(who, layer)| (layer.rect.x_in, layer.rect.right_in(), who));
    for edge in edges(spans) {
        if edge.at > from && !crossed.is_empty() {
            let ridge = top.map_or(edge.at, |top| held_between(top.width / 2.0, from, edge.at));
            for (left, right) in [(from, ridge), (ridge, edge.at)] {
                if right > left {
                    stretches(&crossed, (left, right), top, &mut areas);
                }
            }
        }
        from = edge.at;
        let Some(layer) = layers.get(edge.who) else { continue };
        if edge.opens {
            crossed.push(*layer);
        } else if let Some(place) =
            crossed.iter().position(|one| one.rect == layer.rect && one.rank == layer.rank)
        {
            crossed.swap_remove(place);
        }
    }
    areas
}

/// Adds what each rank has of one stretch of the sweep.
fn stretches(crossed: &[Layer], (left, right): (f64, f64), top: Option<Top>, areas: &mut [f64]) {
    let mut live: Vec<usize> = Vec::new();
    let mut from = 0.0;
    for edge in edges(crossed.iter().map(|layer| (layer.rect.y_in, layer.rect.top_in(), layer.rank))) {
        if let Some(area) = live.first().and_then(|lowest| areas.get_mut(*lowest)) {
            *area += match top {
                None => (right - left) * (edge.at - from),
                Some(top) => top.over(from, left, right) - top.over(edge.at, left, right),
            };
        }
        from = edge.at;
        match (live.binary_search(&edge.who), edge.opens) {
            (Ok(place) | Err(place), true) => live.insert(place, edge.who),
            (Ok(place), false) => {
                live.remove(place);
            }
            (Err(_), false) => {}
        }
    }
}

/// Both ends of every span, in order. Placed one by one: the general sort would be a dozen times the code.
fn edges(spans: impl Iterator<Item = (f64, f64, usize)>) -> Vec<Edge> {
    let mut edges: Vec<Edge> = Vec::new();
    for (from, to, who) in spans {
        place(&mut edges, Edge { at: from, who, opens: true });
        place(&mut edges, Edge { at: to, who, opens: false });
    }
    edges
}

fn place(edges: &mut Vec<Edge>, edge: Edge) {
    let place = edges.partition_point(|one| one.at.total_cmp(&edge.at).is_le());
    edges.insert(place, edge);
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn layer(x: f64, y: f64, w: f64, h: f64, rank: usize) -> Layer {
        Layer { rect: Rect { x_in: x, y_in: y, w_in: w, h_in: h }, rank }
    }

    #[test]
    fn a_spot_belongs_to_the_lowest_rank_that_covers_it() {
        let cross =
            [layer(0.0, 1.0, 3.0, 1.0, 1), layer(1.0, 0.0, 1.0, 3.0, 0), layer(1.0, 0.0, 1.0, 3.0, 1)];
        assert_eq!(cover(&cross, 2, None), vec![3.0, 2.0]);
        assert_eq!(cover(&[], 1, None), vec![0.0]);
    }

    proptest! {
        /// Against counting unit squares one by one.
        #[test]
        fn agrees_with_counting_squares(
            list in proptest::collection::vec((0..12_u32, 0..12_u32, 0..6_u32, 0..6_u32, 0..4_usize), 0..12),
        ) {
            let layers: Vec<Layer> = list.iter()
                .map(|(x, y, w, h, rank)| layer((*x).into(), (*y).into(), (*w).into(), (*h).into(), *rank))
                .collect();
            let mut counted = vec![0.0; 4];
            for (x, y) in (0..20_u32).flat_map(|x| (0..20_u32).map(move |y| (x, y))) {
                let lowest = list.iter()
                    .filter(|(x0, y0, w, h, _)| (*x0..x0 + w).contains(&x) && (*y0..y0 + h).contains(&y))
                    .map(|one| one.4)
                    .min();
                if let Some(lowest) = lowest {
                    counted[lowest] += 1.0;
                }
            }
            prop_assert_eq!(cover(&layers, 4, None), counted);
        }
    }
}
