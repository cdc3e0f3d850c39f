//! How much of a plane rectangles cover, without counting anything twice.

use super::Rect;

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
/// same, and each stretch of the line belongs to the lowest rank that covers it.
pub(super) fn cover(layers: &[Layer], ranks: usize) -> Vec<f64> {
    let mut areas = vec![0.0; ranks];
    let mut crossed: Vec<Layer> = Vec::new();
    let mut from = 0.0;
    let spans = layers.iter().enumerate().map(|(who, layer)| (layer.rect.x_in, layer.rect.right_in(), who));
    for edge in edges(spans) {
        if edge.at > from && !crossed.is_empty() {
            stretches(&crossed, edge.at - from, &mut areas);
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

/// Adds what each rank has of one stretch of the sweep, `width_in` wide.
fn stretches(crossed: &[Layer], width_in: f64, areas: &mut [f64]) {
    let mut live: Vec<usize> = Vec::new();
    let mut from = 0.0;
    for edge in edges(crossed.iter().map(|layer| (layer.rect.y_in, layer.rect.top_in(), layer.rank))) {
        if let Some(area) = live.first().and_then(|lowest| areas.get_mut(*lowest)) {
            *area += width_in * (edge.at - from);
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
        assert_eq!(cover(&cross, 2), vec![3.0, 2.0]);
        assert_eq!(cover(&[], 1), vec![0.0]);
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
            prop_assert_eq!(cover(&layers, 4), counted);
        }
    }
}
