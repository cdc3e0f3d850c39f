//! How much heat goes through what a surface is built of.

use super::materials::SOFTWOOD_R_IN;
use super::{Assembly, Build, Position};
use crate::foam::Foam;
use crate::measure::{Inches, RValue};

/// Halvings of the span between two listed thicknesses, at most 36 in: below a billionth of an inch.
const HALVINGS: u32 = 40;

/// R of the parts of both paths.
struct Paths {
    /// The members' share, 0 to 1.
    share: f64,
    /// What every path goes through: films, layers outside and inside, foam over the members.
    both: f64,
    /// Foam and fill between the members.
    between: f64,
    /// A member.
    member: f64,
    /// How deep the member counts, in inches.
    member_in: f64,
    /// Foam over the members, part of `both`.
    over: f64,
    /// The foam at this depth.
    foam: f64,
}

impl Paths {
    /// Heat that stays in its path. In words: U = (1 − share) ÷ R through the foam + share ÷ R through a member.
    fn parallel(&self) -> f64 {
        (1.0 - self.share) / (self.both + self.between) + self.share / (self.both + self.member)
    }

    /// Heat that spreads freely in each plane: the members' layer counts as one. In words: U = 1 ÷ (what every path
    /// goes through + 1 ÷ ((1 − share) ÷ R between + share ÷ R of a member)).
    fn isothermal(&self) -> f64 {
        let layer = if self.share <= 0.0 {
            self.between
        } else if self.between <= 0.0 || self.member <= 0.0 {
            0.0
        } else {
            1.0 / ((1.0 - self.share) / self.between + self.share / self.member)
        };
        1.0 / (self.both + layer)
    }
}

impl Build {
    /// The whole with foam at a depth; `None` where the foam lists no R, the framing share is not known, or the
    /// members are steel: heat spreads in their flanges and neither bound holds.
    ///
    /// In words: U = (1 − share) ÷ R through the foam + share ÷ R through a member, R being the sum of what lies in
    /// the path, both films included. Softwood counts an inch.
    ///
    /// A member counts as deep as its cavity where something closes it, and only as deep as the foam in a bay that
    /// stands open, as at a rim or under a floor: there its sides are as warm, or as cold, as the air around them. Foam that is deeper than the members
    /// covers their edges where that was said: the foam beyond them lies in both paths. Foam that runs unbroken
    /// lies in both paths as a whole. An empty space counts for nothing.
    ///
    /// Source: ASHRAE Handbook—Fundamentals, parallel-path and isothermal-planes methods.
    pub fn with(&self, foam: &Foam, depth: Inches) -> Option<Assembly> {
        let paths = self.paths(foam, depth)?;
        let framed = paths.share > 0.0;
        let u = paths.parallel();
        Some(Assembly {
            layers: self.layers.clone(),
            outside_film_r: self.outside_film,
            inside_film_r: self.inside_film,
            foam_in: depth,
            foam_r: RValue(paths.foam),
            outside_r: RValue(self.r_at(Position::Outside)),
            fill_r: RValue(self.r_at(Position::Cavity)),
            inside_r: RValue(self.r_at(Position::Inside)),
            by: if framed { "framed" } else { "plain" },
            both_r: RValue(paths.both),
            foam_path_r: RValue(paths.both + paths.between),
            member_in: framed.then_some(Inches(paths.member_in)),
            foam_over_r: RValue(paths.over),
            member_path_r: framed.then_some(RValue(paths.both + paths.member)),
            framing_pct: paths.share * 100.0,
            u,
            u_isothermal: paths.isothermal(),
            effective_r: RValue(1.0 / u),
        })
    }

    /// The least mean depth at which U by parallel paths is no more than a limit; 0 where it is met without foam,
    /// `None` where none that the foam sheet lists is enough.
    ///
    /// Between two listed thicknesses R goes up straight with the depth, so that U goes down: the least depth is
    /// found by halving, to a billionth of an inch, always on the side that meets the limit.
    pub fn depth_for_u(&self, foam: &Foam, most: f64) -> Option<Inches> {
        let meets = |depth| self.paths(foam, Inches(depth)).is_some_and(|paths| paths.parallel() <= most);
        let mut under = 0.0;
        if meets(under) {
            return Some(Inches(under));
        }
        for one in &foam.listed {
            let mut enough = one.thickness_in.0;
            if meets(enough) {
                for _ in 0..HALVINGS {
                    let middle = (under + enough) / 2.0;
                    if meets(middle) {
                        enough = middle;
                    } else {
                        under = middle;
                    }
                }
                return Some(Inches(enough));
            }
            under = enough;
        }
        None
    }

    fn r_at(&self, position: Position) -> f64 {
        self.layers.iter().filter(|layer| layer.position == position).map(|layer| layer.r.0).sum()
    }

    fn paths(&self, foam: &Foam, depth: Inches) -> Option<Paths> {
        let share = self.framing_share.filter(|_| !self.steel)?;
        let whole = foam.planning_r(depth)?.0;
        let (fill, inside) = (self.r_at(Position::Cavity), self.r_at(Position::Inside));
        let in_front = self.layers.iter().filter(|layer| layer.position == Position::Cavity);
        let fill_in: f64 =
            in_front.clone().filter_map(|layer| layer.thickness_in).map(|inches| inches.0).sum();
        // What a bay opens to: what the foam is sprayed on does not close it.
        let back = if self.from_outside { Position::Inside } else { Position::Outside };
        let closed = self.layers.iter().any(|layer| layer.position != back);
        let members = self.member_in.map(|inches| inches.0);
        // Foam over the members, and how deep a member counts.
        let (over, member_in) = match (self.across, members) {
            (true, _) => (whole, members.unwrap_or(fill_in)),
            (false, None) => (0.0, depth.0 + fill_in),
            (false, Some(deep)) => {
                let covered = self.over_edges && depth.0 > deep;
                let within = if covered { foam.planning_r(Inches(deep))?.0 } else { whole };
                ((whole - within).max(0.0), if closed || depth.0 > deep { deep } else { depth.0 })
            }
        };
        let films = self.outside_film.0 + self.inside_film.0;
        Some(Paths {
            share,
            both: films + self.r_at(Position::Outside) + inside + over,
            between: whole - over + fill,
            member: member_in * SOFTWOOD_R_IN,
            member_in,
            over,
            foam: whole,
        })
    }
}
