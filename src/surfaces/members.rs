//! Framing piece by piece: which members stand where on a plane with openings.
//!
//! # Layout
//!
//! The first member stands against the left end, the next ones are centered on multiples of the spacing from
//! the left end (so that 4 ft sheets break on a member), and one stands against the right end. A layout member
//! that would stand in another one's place is left out: at the right end, and beside an opening.
//!
//! A doubled member (two or three pieces side by side) stands on the same centers, so many times as wide. What is
//! put around an opening, and the plates, are single pieces.
//!
//! Plates lie along the lower edge (the first) and the upper one (all others), each as high as a member is
//! wide. None are counted unless entered, since walls are usually measured between the plates.
//!
//! # An opening in a wall
//!
//! Jacks (trimmers) from the bottom plate to the head, one on each side; kings outside them from plate to
//! plate; a header on the jacks, 5½ in high (a 2x6 on edge) or less where there is less room; a flat sill
//! between the jacks. Layout studs between the jacks go on as cripples above the header and under the sill;
//! one that would touch a jack or a king is left out.
//!
//! This is the rule of common practice for openings up to about 6 ft. What it leaves out is small and adds
//! framing: wider openings have two jacks a side and higher headers, sills often have a cripple at each end,
//! corners and partitions have extra studs. Counted walls therefore come out leaner than surveyed ones (a
//! plain wall at 16 in counts about 10 %, walls with openings 15 to 20 %; published averages that hold plates,
//! corners and all are 25 % at 16 in and 22 % at 24 in, see `framing_share`). Enter a share to use such a
//! figure instead.
//!
//! # An opening in a floor, ceiling or slope
//!
//! Trimmers from end to end on each side and a header across each end, all as wide as a member; both are
//! doubled where the header spans more than 4 ft (IRC R502.10 and R802.9 in words: a header joist up to 4 ft
//! may be single). Layout members between the trimmers go on as tail joists (cripples).

use super::cover::Layer;
use super::{MemberRect, Piece, Rect};

/// Half a ten-thousandth of an inch: members closer than this touch but do not overlap.
const TOUCH_IN: f64 = 5e-5;

/// A 2x6 on edge; common practice for openings up to about 6 ft.
const HEADER_IN: f64 = 5.5;

/// The header span over which headers and trimmers of a floor or slope are doubled; IRC R502.10, R802.9.
const DOUBLED_OVER_IN: f64 = 48.0;

/// How an opening is framed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Lay {
    /// Jacks, kings, header, sill, cripples.
    Studs,
    /// Trimmers, headers, tail joists.
    Joists,
}

/// Members of one size at one spacing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Layout {
    pub(super) lay: Lay,
    pub(super) spacing_in: f64,
    /// The width of one piece: of plates, and of what is put around an opening.
    pub(super) member_in: f64,
    /// The width of what stands on the layout: one piece, or two or three side by side.
    pub(super) built_in: f64,
    pub(super) plates: f64,
}

/// The framing of one opening.
struct Trim {
    opening: Rect,
    /// From the outer edge of what stands at its left to that at its right.
    from_in: f64,
    to_in: f64,
    /// From the lower edge of what lies under it to the upper edge of what lies over it.
    low_in: f64,
    high_in: f64,
}

impl Piece {
    /// Every piece, each at its own rank.
    pub(super) const ALL: [Piece; 7] =
        [Self::Stud, Self::Plate, Self::King, Self::Jack, Self::Header, Self::Sill, Self::Cripple];
}

impl Layout {
    /// Every member on a plane with these openings (inside the plane, in inches from its lower left corner), in
    /// the order in which they are drawn, cut to the plane. Pieces may overlap; [`layers`] and
    /// [`cover`](super::cover::cover) see to it that nothing counts twice.
    pub(super) fn members(&self, width_in: f64, height_in: f64, openings: &[Rect]) -> Vec<MemberRect> {
        let mut drawn = Drawn { plane: Rect::between(0.0, 0.0, width_in, height_in), members: Vec::new() };
        let plates = self.plates.max(0.0) as u32;
        let bottom = self.member_in * f64::from(plates.min(1));
        let top = height_in - self.member_in * f64::from(plates.saturating_sub(1));
        let trims: Vec<Trim> = openings.iter().map(|opening| self.trim(*opening, bottom, top)).collect();

        for (from, to) in self.uprights(width_in) {
            let end = from <= 0.0 || to >= width_in;
            self.upright(Rect::between(from, bottom, to, top), end, &trims, &mut drawn);
        }
        let ends = [(0.0, self.built_in), (width_in - self.built_in, width_in)];
        self.around(&trims, (bottom, top), &ends, &mut drawn);
        for plate in 0..plates {
            let low = match plate {
                0 => 0.0,
                _ => height_in - self.member_in * f64::from(plate),
            };
            drawn.put(Piece::Plate, Rect::between(0.0, low, width_in, low + self.member_in));
        }
        drawn.members
    }

    /// Where full members stand when there are no openings.
    pub(super) fn uprights(&self, width_in: f64) -> Vec<(f64, f64)> {
        let half = self.built_in / 2.0;
        let last = (width_in - self.built_in).max(self.built_in);
        let between = (width_in / self.spacing_in).max(0.0) as u32;
        let centers = (1..=between).map(|count| f64::from(count) * self.spacing_in);
        core::iter::once((0.0, self.built_in))
            .chain(
                centers.map(|center| (center - half, center + half)).filter(|(_, to)| *to <= last + TOUCH_IN),
            )
            .chain((width_in > self.built_in).then_some((last, width_in)))
            .collect()
    }

    fn trim(&self, opening: Rect, bottom: f64, top: f64) -> Trim {
        let side = match self.lay {
            Lay::Studs => 2.0 * self.member_in,
            Lay::Joists => self.joist_side(opening),
        };
        let (over, under) = match self.lay {
            Lay::Studs => (HEADER_IN, self.member_in),
            Lay::Joists => (side, side),
        };
        Trim {
            opening,
            from_in: opening.x_in - side,
            to_in: opening.right_in() + side,
            low_in: if opening.y_in > bottom { opening.y_in - under } else { bottom },
            high_in: if opening.top_in() < top { opening.top_in() + over } else { top },
        }
    }

    /// The width of the trimmers at one side of an opening in a floor or slope, and of the headers at one end.
    fn joist_side(&self, opening: Rect) -> f64 {
        if opening.w_in > DOUBLED_OVER_IN + TOUCH_IN { 2.0 * self.member_in } else { self.member_in }
    }

    /// One layout member: whole, cut into cripples by the openings that it would cross, or left out.
    fn upright(&self, place: Rect, end: bool, trims: &[Trim], drawn: &mut Drawn) {
        let mut cripples = vec![(place.y_in, place.top_in())];
        let mut piece = Piece::Stud;
        for trim in trims {
            if !overlap((place.x_in, place.right_in()), (trim.from_in, trim.to_in)) {
                continue;
            }
            let inside = place.x_in >= trim.opening.x_in - TOUCH_IN
                && place.right_in() <= trim.opening.right_in() + TOUCH_IN;
            if inside {
                piece = Piece::Cripple;
                cripples = cripples
                    .iter()
                    .flat_map(|(low, high)| [(*low, high.min(trim.low_in)), (low.max(trim.high_in), *high)])
                    .filter(|(low, high)| high - low > TOUCH_IN)
                    .collect();
            } else if !end {
                return;
            }
        }
        for (low, high) in cripples {
            drawn.put(piece, Rect::between(place.x_in, low, place.right_in(), high));
        }
    }

    /// What is put around each opening.
    fn around(&self, trims: &[Trim], run: (f64, f64), ends: &[(f64, f64)], drawn: &mut Drawn) {
        let (bottom, top) = run;
        let mut standing = ends.to_vec();
        for trim in trims.iter().filter(|_| self.lay == Lay::Studs) {
            let (left, right) = (trim.opening.x_in, trim.opening.right_in());
            for (from, to) in [(left - self.member_in, left), (right, right + self.member_in)] {
                standing.push((from, to));
                drawn.put(Piece::Jack, Rect::between(from, bottom, to, trim.opening.top_in().min(top)));
            }
        }
        for trim in trims {
            let (left, right) = (trim.opening.x_in, trim.opening.right_in());
            let mut full = |from: f64| {
                let span = (from, from + self.member_in);
                if !standing.iter().any(|other| overlap(span, *other)) {
                    standing.push(span);
                    drawn.put(Piece::King, Rect::between(span.0, bottom, span.1, top));
                }
            };
            match self.lay {
                Lay::Studs => {
                    full(trim.from_in);
                    full(right + self.member_in);
                }
                Lay::Joists => {
                    let doubled = self.joist_side(trim.opening) > self.member_in;
                    full(left - self.member_in);
                    full(right);
                    if doubled {
                        full(trim.from_in);
                        full(right + self.member_in);
                    }
                }
            }
        }
        for trim in trims {
            let (left, right) = (trim.opening.x_in, trim.opening.right_in());
            let over =
                |from: f64, to: f64| Rect::between(from, trim.opening.top_in(), to, trim.high_in.min(top));
            let under = Rect::between(left, trim.low_in.max(bottom), right, trim.opening.y_in);
            match self.lay {
                Lay::Studs => {
                    drawn.put(Piece::Header, over(left - self.member_in, right + self.member_in));
                    drawn.put(Piece::Sill, under);
                }
                Lay::Joists => {
                    drawn.put(Piece::Header, over(left, right));
                    drawn.put(Piece::Header, under);
                }
            }
        }
    }
}

/// Pieces as they come, cut to the plane.
struct Drawn {
    plane: Rect,
    members: Vec<MemberRect>,
}

impl Drawn {
    fn put(&mut self, piece: Piece, rect: Rect) {
        if let Some(rect) = rect.within(self.plane) {
            self.members.push(MemberRect { piece, rect });
        }
    }
}

fn overlap(one: (f64, f64), other: (f64, f64)) -> bool {
    one.0 < other.1 - TOUCH_IN && other.0 < one.1 - TOUCH_IN
}

/// Openings first, each at its own rank, then the members by their kind: what an opening has is no framing, and
/// what two members share counts once.
pub(super) fn layers(openings: &[Rect], members: &[MemberRect]) -> Vec<Layer> {
    let holes = openings.iter().enumerate().map(|(rank, rect)| Layer { rect: *rect, rank });
    let pieces =
        members.iter().map(|one| Layer { rect: one.rect, rank: openings.len() + one.piece as usize });
    holes.chain(pieces).collect()
}
