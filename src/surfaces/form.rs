//! What a shape asks for: the page draws its form from it.

use crate::job::{Shape, Surface, entry};
use serde::Serialize;

/// What a shape asks for.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct ShapeForm {
    /// The shape.
    pub shape: Shape,
    /// The group that it is offered in: `flat`, `walls`, `roofs` (and floors), `round`, `ducts`, or `seals` for
    /// what only seals.
    pub group: &'static str,
    /// Its entries in the order in which they are asked, all of [`Part::Surface`](crate::job::Part).
    pub entries: &'static [Asked],
    /// Whether openings can be taken out of it.
    pub openings: bool,
    /// Whether it has framing that can be taken out of it.
    pub framing: bool,
    /// Whether an opening has a place on its drawing.
    pub places: bool,
    /// Whether it is walked along its edges ([`Part::Leg`](crate::job::Part)).
    pub legs: bool,
}

impl ShapeForm {
    /// A shape that has neither openings nor framing.
    pub(super) const fn new(shape: Shape, group: &'static str, entries: &'static [Asked]) -> Self {
        Self { shape, group, entries, openings: false, framing: false, places: false, legs: false }
    }
    /// With openings that are taken out.
    pub(super) const fn openings(mut self) -> Self {
        self.openings = true;
        self
    }
    /// With openings that have a place on its drawing.
    pub(super) const fn placed(mut self) -> Self {
        self.places = true;
        self.openings()
    }
    /// With framing that can be taken out.
    pub(super) const fn framed(mut self) -> Self {
        self.framing = true;
        self
    }
    /// Walked along its edges.
    pub(super) const fn walked(mut self) -> Self {
        self.legs = true;
        self
    }
}

/// One entry that a shape asks for.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Asked {
    /// The field.
    pub field: &'static str,
    /// Whether the area is incomplete without it.
    pub needed: bool,
    /// Whether it is about framing: asked, and needed, only while framing is taken out. A framing share that
    /// is filled in stands for all other entries about framing, which are then not needed.
    pub framing: bool,
    /// Asked only while this other field is filled in; empty: always.
    pub with: &'static str,
    /// Asked only while this other field is blank, which stands for it; empty: always.
    pub without: &'static str,
    /// Asked here, but read by another room (the depth of a bead): the area does not hang on it.
    pub elsewhere: bool,
    /// Whether the area is smaller the more it is: the lower edge of a band, the pipe through a hole.
    pub against: bool,
}

impl Asked {
    pub(crate) const fn needed(field: &'static str) -> Self {
        Self { field, needed: true, framing: false, with: "", without: "", elsewhere: false, against: false }
    }
    pub(crate) const fn may(field: &'static str) -> Self {
        Self { needed: false, ..Self::needed(field) }
    }
    pub(super) const fn framing(field: &'static str, needed: bool) -> Self {
        Self { needed, framing: true, ..Self::needed(field) }
    }
    pub(super) const fn with(mut self, other: &'static str) -> Self {
        self.with = other;
        self
    }
    pub(super) const fn without(mut self, other: &'static str) -> Self {
        self.without = other;
        self
    }
    pub(super) const fn against(mut self) -> Self {
        self.against = true;
        self
    }
    pub(crate) const fn elsewhere(mut self) -> Self {
        self.elsewhere = true;
        self
    }

    /// Whether it is asked, as far as other fields say.
    pub(super) fn stands(&self, surface: &Surface) -> bool {
        let filled = |field: &str| entry(&surface.entries, field).is_some();
        (self.with.is_empty() || filled(self.with)) && (self.without.is_empty() || !filled(self.without))
    }
}
