//! Bays by count: so many along × so many rows × clear width × clear height.
//!
//! Without a count the bays follow from a run and a spacing: run ÷ spacing, a begun bay counting whole.

use super::family::{Family, Figure, Sizes, Ways};
use super::outline::{Of, edges};
use super::{Asked, Extent, ShapeForm, Side};
use crate::job::Shape;

pub(super) const FAMILY: Family = Family {
    ways: |asking, _| Some(Ways::by(if asking.has("bays") { "count" } else { "run" })),
    parts: |sizes| vec![("bays_along", along(sizes))],
    figure: |sizes| {
        let Extent { width_in, height_in, .. } = extent(sizes);
        let (bays, strips) =
            (edges(sizes.of("bay_width"), width_in), edges(sizes.of("bay_height"), height_in));
        Figure { bays, strips, ..Figure::default() }
    },
    lines: |sizes, lines| {
        let Extent { width_in, height_in, .. } = extent(sizes);
        lines.put(Of::Surface("bay_width"), Side::Bottom, 0, (0.0, sizes.of("bay_width")));
        lines.put(Of::Rest, Side::Bottom, 1, (0.0, width_in));
        lines.put(Of::Surface("bay_height"), Side::Left, 1, (0.0, sizes.of("bay_height")));
        lines.put(Of::Rest, Side::Left, 0, (0.0, height_in));
    },
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::Bays,
    "walls",
    &[
        Asked::may("bays"),
        Asked::needed("run").without("bays"),
        Asked::may("spacing").without("bays"),
        Asked::may("rows"),
        Asked::needed("bay_width"),
        Asked::needed("bay_height"),
        Asked::may("times"),
    ],
);

/// Bays along the run: typed, or worked out. What a binary fraction may lose in the division starts no bay.
fn along(sizes: &Sizes) -> f64 {
    match sizes.way() {
        "count" => sizes.of("bays"),
        _ if sizes.of("spacing") > 0.0 => libm::ceil(sizes.of("run") / sizes.of("spacing") - 1e-9).max(0.0),
        _ => 0.0,
    }
}

/// The clear bays pushed together, as nothing between them is foamed.
fn extent(sizes: &Sizes) -> Extent {
    Extent::plane(along(sizes) * sizes.of("bay_width"), sizes.of("rows") * sizes.of("bay_height"))
}
