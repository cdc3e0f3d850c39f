//! A gable: a triangle with its ridge over the middle, with or without the wall under it.

use super::cover::Top;
use super::family::{Family, Figure, Sizes, Ways};
use super::outline::Of;
use super::{Asked, Extent, MemberRect, Rect, ShapeForm, Side};
use crate::job::Shape;
use crate::measure::held_between;

pub(super) const FAMILY: Family = Family {
    ways: |asking, _| Some(Ways::by(if asking.has("rise") { "rise" } else { "pitch" })),
    parts: |sizes| vec![("rise_length", rise(sizes))],
    top: |sizes| Some(top(sizes)),
    figure: |sizes| {
        let (Top { eave, .. }, Extent { width_in, height_in, .. }) = (top(sizes), extent(sizes));
        let ridge = (width_in / 2.0, height_in);
        let polygon = vec![(0.0, 0.0), (width_in, 0.0), (width_in, eave), ridge, (0.0, eave)];
        Figure { polygon, ..Figure::default() }
    },
    lines: |sizes, lines| {
        lines.plane("length", "");
        let (wall, height) = (sizes.of("wall_height"), extent(sizes).height_in);
        let rise = if sizes.way() == "rise" { Of::Surface("rise") } else { Of::Rest };
        let row = lines.rows_left();
        lines.put(Of::Surface("wall_height"), Side::Left, row, (0.0, wall));
        lines.put(rise, Side::Left, row, (wall, height));
    },
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::Gable,
    "walls",
    &[
        Asked::needed("length"),
        Asked::may("rise"),
        Asked::needed("pitch").without("rise"),
        Asked::may("wall_height"),
        Asked::framing("spacing", false),
        Asked::framing("member", true),
        Asked::framing("plies", false).against(),
        Asked::framing("framing_share", false),
        Asked::may("times"),
    ],
)
.placed()
.framed();

/// From the eaves to the ridge, in inches: typed, or half the base × pitch.
fn rise(sizes: &Sizes) -> f64 {
    if sizes.way() == "rise" { sizes.of("rise") } else { sizes.of("length") / 2.0 * sizes.of("pitch") }
}

/// The slopes over the wall.
fn top(sizes: &Sizes) -> Top {
    Top { eave: sizes.of("wall_height"), rise: rise(sizes), width: sizes.of("length") }
}

/// Base × wall height + base × rise ÷ 2.
fn extent(sizes: &Sizes) -> Extent {
    let (base, eave, rise) = (sizes.of("length"), sizes.of("wall_height"), rise(sizes));
    Extent { width_in: base, height_in: eave + rise, gross_ft2: base * (eave + rise / 2.0) / 144.0 }
}

/// The members cut off at the highest point that the slopes have over each; what lies wholly above is left out.
/// The drawing and the areas cut the rest of them along the slope.
pub(super) fn cut(members: Vec<MemberRect>, top: Top) -> Vec<MemberRect> {
    let under = members.into_iter().filter_map(|one| {
        let rect = one.rect;
        let (left, right) = (rect.x_in, rect.right_in());
        let middle = held_between(top.width / 2.0, left, right);
        let high = rect.top_in().min(top.at(middle));
        let rect = Rect::between(left, rect.y_in, right, high);
        (rect.h_in > 0.0).then_some(MemberRect { rect, ..one })
    });
    under.collect()
}
