//! A shape as a row of one table: what it asks for, and the formulas of its file.

use super::cover::Top;
use super::members::Layout;
use super::outline::Lines;
use super::takeoff::Takeoff;
use super::walk::LegRead;
use super::{Column, Extent, Face, Measure, MemberRect, ShapeForm, View};
use crate::job::{Part, Reader, Surface, entry};
use crate::measure::Band;

/// Everything that the room knows of one shape. A file of a shape holds its own, made with [`Family::new`] and
/// whatever it does differently.
#[derive(Debug)]
pub(super) struct Family {
    /// What it asks for.
    pub(super) form: ShapeForm,
    /// Which of several ways to a measure is taken, and what is wrong between entries; `None` while nothing can
    /// be worked out, with a finding that says why.
    pub(super) ways: fn(&Asking, &mut Reader) -> Option<Ways>,
    /// Its extent: the size of its drawing and the whole area of one of it.
    pub(super) extent: fn(&Sizes) -> Extent,
    /// What lies between the measures and the area of one: lengths in inches (`…_length`), areas in square feet
    /// (`…_ft2`), counts.
    pub(super) parts: fn(&Sizes) -> Vec<(&'static str, f64)>,
    /// What its mean area to foam grows by with each inch of depth, in square feet: foam around a pipe.
    pub(super) wrap_ft2_in: fn(&Sizes) -> f64,
    /// The measure that makes it smaller the larger it is; empty for none.
    pub(super) against: fn(&Sizes) -> &'static str,
    /// The slopes over it.
    pub(super) top: fn(&Sizes) -> Option<Top>,
    /// The members, where they do not run over the whole plane.
    pub(super) members: Option<fn(&Sizes, &Layout) -> Vec<MemberRect>>,
    /// The walls that its openings are taken out of, where they are not the whole outline: the longest and the
    /// highest of them, and the area of all.
    pub(super) walls: fn(&Sizes) -> Option<Extent>,
    /// What its drawing has besides openings and members.
    pub(super) figure: fn(&Sizes) -> Figure,
    /// Its dimension lines; those of its openings and its spacing are drawn for it.
    pub(super) lines: fn(&Sizes, &mut Lines),
}

impl Family {
    /// A plane, measured as length × height, with nothing of its own.
    pub(super) const fn new(form: ShapeForm, extent: fn(&Sizes) -> Extent) -> Self {
        Self {
            form,
            ways: |_, _| Some(Ways::default()),
            extent,
            parts: |_| Vec::new(),
            wrap_ft2_in: |_| 0.0,
            against: |_| "",
            top: |_| None,
            members: None,
            walls: |_| None,
            figure: |_| Figure::default(),
            lines: |_, lines| lines.plane("length", "height"),
        }
    }
}

/// The ways that were taken; empty where there is only one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Ways {
    /// Which of the ways to one measure.
    pub(super) way: &'static str,
    /// The sides of a rim on which joists land.
    pub(super) landing: &'static str,
    /// The faces that are switched off, in the shape's own order: six of a room, four of a box duct, two ends.
    pub(super) off: [bool; 6],
    /// `inside` or `outside` for a cylinder.
    pub(super) side: &'static str,
}

impl Ways {
    pub(super) fn by(way: &'static str) -> Self {
        Self { way, ..Self::default() }
    }
}

/// What a drawing has besides openings and members.
#[derive(Debug, Clone, Default)]
pub(super) struct Figure {
    /// How it is to be read.
    pub(super) view: View,
    /// The corners of the outline where it is one plane but no rectangle.
    pub(super) polygon: Vec<(f64, f64)>,
    /// The faces, where there are several or where they are no rectangle; together they are the gross area.
    pub(super) faces: Vec<Face>,
    /// Heights at which one strip ends and the next begins.
    pub(super) strips: Vec<f64>,
    /// Distances from the left end at which one bay ends and the next begins.
    pub(super) bays: Vec<f64>,
    /// Whether a part of the area is not on the drawing.
    pub(super) apart: bool,
}

impl Figure {
    /// One plane that is no rectangle.
    pub(super) fn plane(corners: Vec<(f64, f64)>) -> Self {
        Self { faces: vec![Face { name: "plane", corners, foamed: true }], ..Self::default() }
    }
}

/// The entries of a surface while its shape is asked which way it is measured.
pub(super) struct Asking<'a> {
    pub(super) surface: &'a Surface,
    pub(super) measures: &'a [Measure],
    /// Whether every needed measure is there.
    pub(super) complete: bool,
}

impl Asking<'_> {
    /// The likely value of a measure; zero where it was not entered.
    pub(super) fn of(&self, field: &str) -> f64 {
        self.band(field).likely
    }

    /// A measure; zero where it was not entered.
    pub(super) fn band(&self, field: &str) -> Band<f64> {
        self.measures.iter().find(|one| one.field == field).map_or(Band::exactly(0.0), |one| one.value)
    }

    /// The word pressed in a field.
    pub(super) fn pressed(&self, field: &str, reader: &mut Reader) -> Option<&'static str> {
        reader.choice(Part::Surface, self.surface.id, &self.surface.entries, field)
    }

    /// Whether something was entered.
    pub(super) fn has(&self, field: &str) -> bool {
        entry(&self.surface.entries, field).is_some()
    }
}

/// The measures of a surface in one column.
pub(super) struct Sizes<'a> {
    pub(super) takeoff: &'a Takeoff,
    pub(super) column: Column,
}

impl Sizes<'_> {
    /// A measure in its column; zero where it was not entered.
    pub(super) fn of(&self, field: &str) -> f64 {
        self.takeoff.value(field, self.column)
    }

    /// Whether a measure was entered or has a default.
    pub(super) fn has(&self, field: &str) -> bool {
        self.takeoff.measures.iter().any(|one| one.field == field)
    }

    /// The edges that were walked, in order.
    pub(super) fn legs(&self) -> &[LegRead] {
        &self.takeoff.legs
    }

    /// The way taken to a measure that can be reached in several.
    pub(super) fn way(&self) -> &'static str {
        self.takeoff.ways.way
    }

    /// For each of its faces, in the shape's own order, 1 where it is foamed and 0 where it is switched off.
    pub(super) fn foamed(&self) -> [f64; 6] {
        self.takeoff.ways.off.map(|off| f64::from(u8::from(!off)))
    }

    /// The sides of a rim on which joists land.
    pub(super) fn landing(&self) -> &'static str {
        self.takeoff.ways.landing
    }
}
