//! What was entered of a surface, read once: the measures that its shape asks for, its framing and its openings.

use super::cover::Top;
use super::family::{Asking, Family, Sizes, Ways};
use super::members::Layout;
use super::openings::{self, Hole};
use super::walk::{self, LegRead};
use super::{Column, Extent, Measure, Rect, ShapeForm, family, framed, outline};
use crate::findings::{Code, Finding};
use crate::job::{Part, Reader, Shape, Surface, entry, field};
use crate::measure::{Band, Inches, Kind, Member};

/// How framing is to be taken out.
#[derive(Debug, Clone, Copy)]
pub(super) enum Framing {
    Nothing,
    /// A share of the area left after openings, in percent.
    Share(Band<f64>),
    /// Piece by piece.
    Pieces {
        spacing: Band<f64>,
        member_in: f64,
        plates: Band<f64>,
    },
    /// A member's width in each spacing: where pieces have no place.
    Spaced {
        spacing: Band<f64>,
        member_in: f64,
    },
}

/// Everything that the areas and the drawing of a surface follow from.
#[derive(Debug, Clone)]
pub(super) struct Takeoff {
    pub(super) family: &'static Family,
    /// Which of the ways to one measure was taken.
    pub(super) ways: Ways,
    pub(super) measures: Vec<Measure>,
    /// How many of it there are.
    pub(super) times: Band<f64>,
    pub(super) framing: Framing,
    pub(super) holes: Vec<Hole>,
    /// The edges that were walked; none for a shape that is not.
    pub(super) legs: Vec<LegRead>,
    pub(super) cavity_in: Option<Inches>,
}

impl Takeoff {
    /// Reads a surface; `None` while something is missing, with a finding for each thing that is.
    pub(super) fn take(surface: &Surface, reader: &mut Reader) -> Option<Self> {
        let family = family(surface.shape)?;
        let form = &family.form;
        let mut measures = Vec::new();
        let mut complete = true;
        let mut times = Some(Band::exactly(1.0));
        for asked in
            form.entries.iter().filter(|asked| !asked.framing && !asked.elsewhere && asked.stands(surface))
        {
            let row = field(Part::Surface, asked.field);
            let blank = entry(&surface.entries, asked.field).is_none();
            if asked.field == "times" {
                if !blank {
                    times = measure(surface, asked.field, &mut measures, reader);
                }
            } else if row.is_some_and(|row| row.kind == Kind::Choice)
                || (blank && !asked.needed && row.is_some_and(|row| row.default.is_empty()))
            {
                // A press is read with its shape; what may stay blank does.
            } else {
                complete &= measure(surface, asked.field, &mut measures, reader).is_some();
            }
        }
        let member = form
            .framing
            .then(|| reader.member(Part::Surface, surface.id, &surface.entries, "member"))
            .flatten();
        let legs = if form.legs { walk::take(surface, reader) } else { Some(Vec::new()) };
        let ways = (family.ways)(&Asking { surface, measures: &measures, complete }, reader)?;
        let framing = match (surface.shape, ways.landing) {
            (Shape::RimRun, "") => Some(Framing::Nothing),
            _ => framing(surface, form, member, &mut measures, reader),
        };
        let holes = match form.openings {
            true => openings::take(&surface.openings, form.places && !crowded(&measures), reader),
            false => Some(Vec::new()),
        };
        let (((framing, holes), times), legs) =
            framing.zip(holes).zip(times).zip(legs).filter(|_| complete)?;
        // A joist's depth is the height of a rim, not the depth of its cavity.
        let member = member.filter(|_| surface.shape != Shape::RimRun);
        let cavity_in = member.and_then(|member| member.depth_in).map(|depth| Inches(depth.to_f64()));
        let takeoff = Self { family, ways, measures, times, framing, holes, legs, cavity_in };
        takeoff.say(surface.id, reader);
        Some(takeoff)
    }

    /// The outline in one column; the low column is the smallest.
    pub(super) fn extent(&self, column: Column) -> Extent {
        (self.family.extent)(&self.sizes(column))
    }

    /// The measures in one column.
    pub(super) fn sizes(&self, column: Column) -> Sizes<'_> {
        Sizes { takeoff: self, column }
    }

    /// Its shape.
    pub(super) fn shape(&self) -> Shape {
        self.family.form.shape
    }

    /// A measure in one column; zero where it was not entered.
    pub(super) fn value(&self, field: &str, column: Column) -> f64 {
        let measure = self.measures.iter().find(|measure| measure.field == field);
        measure.map_or(0.0, |measure| match column {
            Column::Likely => measure.value.likely,
            _ if self.pulls(field) => column.against(measure.value),
            _ => column.of(measure.value),
        })
    }

    /// What openings are taken out of.
    pub(super) fn opened(&self, column: Column) -> Extent {
        (self.family.walls)(&self.sizes(column)).unwrap_or_else(|| self.extent(column))
    }

    /// Whether a measure makes it smaller the larger it is.
    pub(super) fn pulls(&self, field: &str) -> bool {
        self.family.form.entries.iter().any(|asked| asked.against && asked.field == field)
            || field == (self.family.against)(&self.sizes(Column::Likely))
    }

    /// The slopes over it.
    pub(super) fn top(&self, column: Column) -> Option<Top> {
        (self.family.top)(&self.sizes(column))
    }

    /// What lies between the measures and the area of one.
    pub(super) fn parts(&self, column: Column) -> Vec<(&'static str, f64)> {
        let mut parts = (self.family.parts)(&self.sizes(column));
        if let Framing::Pieces { member_in, .. } = self.framing
            && self.measures.iter().any(|measure| measure.field == "plies")
        {
            parts.push(("built_length", self.built_in(member_in, column)));
        }
        parts
    }

    /// The width of what stands at each place of the layout: a member, or so many side by side.
    fn built_in(&self, member_in: f64, column: Column) -> f64 {
        let plies = self.value("plies", column);
        if plies > 1.0 { member_in * plies } else { member_in }
    }

    /// The members' layout in one column; the low column has them closest.
    pub(super) fn layout(&self, column: Column) -> Option<Layout> {
        match self.framing {
            Framing::Pieces { spacing, member_in, plates } => Some(Layout {
                lay: framed::lay(self.shape()),
                spacing_in: column.of(spacing),
                member_in,
                built_in: self.built_in(member_in, column),
                plates: column.against(plates),
            }),
            Framing::Nothing | Framing::Share(_) | Framing::Spaced { .. } => None,
        }
    }

    /// Whether every entry is one figure, so that the three columns are the same.
    pub(super) fn is_single(&self) -> bool {
        self.measures.iter().all(|measure| measure.value.is_single())
            && self.legs.iter().all(LegRead::is_single)
            && self
                .holes
                .iter()
                .all(|hole| hole.width.is_single() && hole.height.is_single() && hole.count.is_single())
    }

    /// Findings about the openings.
    fn say(&self, surface: u32, reader: &mut Reader) {
        let extent = self.opened(Column::Likely);
        let plane = Rect::between(0.0, 0.0, extent.width_in, extent.height_in);
        openings::check(surface, &self.holes, plane, self.top(Column::Likely), extent.gross_ft2, reader);
        for hole in self.holes.iter().filter(|hole| hole.place.is_none() && hole.count.likely > 0.0) {
            if matches!(self.framing, Framing::Pieces { .. }) {
                let finding = Finding::new(Code::OpeningNotPlaced, Part::Opening, hole.id, "from_left");
                reader.say(finding.with("name", &*hole.name));
            }
        }
    }
}

/// Whether the layout has more members than a drawing holds: openings then have no place among them.
fn crowded(measures: &[Measure]) -> bool {
    let value = |field| measures.iter().find(|measure| measure.field == field).map(|measure| measure.value);
    let run = value("length").zip(value("spacing"));
    run.is_some_and(|(length, spacing)| length.high > spacing.low * outline::DRAWN as f64)
}

/// Reads one needed or defaulted measure and keeps it.
fn measure(
    surface: &Surface,
    field: &'static str,
    measures: &mut Vec<Measure>,
    reader: &mut Reader,
) -> Option<Band<f64>> {
    let taken = reader.need(Part::Surface, surface.id, &surface.entries, field)?;
    measures.push(Measure { field, value: taken.value, default: taken.default });
    Some(taken.value)
}

/// How framing is to be taken out: a share that was entered wins over counting.
fn framing(
    surface: &Surface,
    form: &ShapeForm,
    member: Option<Member>,
    measures: &mut Vec<Measure>,
    reader: &mut Reader,
) -> Option<Framing> {
    if !form.framing || !surface.deduct_framing {
        return Some(Framing::Nothing);
    }
    if entry(&surface.entries, "framing_share").is_some() {
        return measure(surface, "framing_share", measures, reader).map(Framing::Share);
    }
    let spacing = measure(surface, "spacing", measures, reader);
    // A gable's upper plates lie along its slopes: none are counted.
    let plates = match form.entries.iter().any(|asked| asked.field == "plates") {
        true => measure(surface, "plates", measures, reader),
        false => Some(Band::exactly(0.0)),
    };
    if entry(&surface.entries, "member").is_none() {
        reader.say(Finding::new(Code::Needed, Part::Surface, surface.id, "member"));
    }
    let pieces = form.places || surface.shape == Shape::RimRun;
    if pieces && entry(&surface.entries, "plies").is_some() {
        measure(surface, "plies", measures, reader)?;
    }
    let member_in = member?.width_in.to_f64();
    measures.push(Measure { field: "member", value: Band::exactly(member_in), default: false });
    spacing.zip(plates).map(|(spacing, plates)| match pieces {
        true => Framing::Pieces { spacing, member_in, plates },
        false => Framing::Spaced { spacing, member_in },
    })
}
