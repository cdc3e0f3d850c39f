//! The draws of an exercise: one stream of numbers for a seed, the same on every device and for ever.

/// PCG-XSH-RR with 64 bits of state and 32 of output (M. E. O'Neill, *PCG: A Family of Simple Fast
/// Space-Efficient Statistically Good Algorithms for Random Number Generation*, 2014). Written out here, so that no
/// newer version of a library can change an exercise that somebody has printed.
///
/// ```
/// use foamwright::practice::Draw;
/// // The first outputs of the reference program that comes with the paper: seed 42, stream 54.
/// let mut draw = Draw::new(42, 54);
/// assert_eq!([draw.next(), draw.next(), draw.next()], [0xa15c_02b7, 0x7b47_f409, 0xba1d_3330]);
/// ```
#[derive(Debug, Clone)]
pub struct Draw {
    state: u64,
    step: u64,
}

impl Draw {
    /// The stream `stream` from `seed`.
    pub fn new(seed: u64, stream: u64) -> Self {
        let mut draw = Self { state: 0, step: stream << 1 | 1 };
        draw.next();
        draw.state = draw.state.wrapping_add(seed);
        draw.next();
        draw
    }

    /// The next 32 bits.
    #[allow(clippy::should_implement_trait, reason = "a stream without an end is no iterator here")]
    pub fn next(&mut self) -> u32 {
        let old = self.state;
        self.state = old.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(self.step);
        #[allow(clippy::cast_possible_truncation, reason = "the algorithm keeps the low half")]
        let mixed = (((old >> 18) ^ old) >> 27) as u32;
        mixed.rotate_right((old >> 59) as u32)
    }

    /// One of `0..most`, each alike; 0 where there is none. The few lowest outputs, which would favor the smaller
    /// numbers, are drawn again.
    pub fn below(&mut self, most: u32) -> u32 {
        if most == 0 {
            return 0;
        }
        let least = most.wrapping_neg() % most;
        loop {
            let drawn = self.next();
            if drawn >= least {
                return drawn % most;
            }
        }
    }

    /// A whole number from `least` to `most`, both included.
    pub fn whole(&mut self, least: i32, most: i32) -> i32 {
        least + self.below((most - least + 1).unsigned_abs()).cast_signed()
    }

    /// One of these.
    pub fn one_of<T: Copy>(&mut self, these: &[T]) -> Option<T> {
        #[allow(clippy::cast_possible_truncation, reason = "lists of a few")]
        let at = self.below(these.len() as u32) as usize;
        these.get(at).copied()
    }

    /// Whether a coin falls heads.
    pub fn heads(&mut self) -> bool {
        self.below(2) == 1
    }
}

#[cfg(test)]
mod tests {
    use super::Draw;

    #[test]
    fn the_reference_programs_first_round() {
        // pcg32-demo of the reference implementation: seed 42, stream 54, round 1.
        let mut draw = Draw::new(42, 54);
        let wanted = [0xa15c_02b7, 0x7b47_f409, 0xba1d_3330, 0x83d2_f293, 0xbfa4_784b, 0xcbed_606e];
        assert_eq!(wanted.map(|_| draw.next()), wanted);
    }

    #[test]
    fn every_number_of_a_range_comes_about_as_often() {
        let mut draw = Draw::new(7, 1);
        let mut seen = [0u32; 7];
        for _ in 0..70_000 {
            seen[draw.below(7) as usize] += 1;
        }
        // 10,000 each; the spread of a fair count is 93.
        assert!(seen.iter().all(|count| count.abs_diff(10_000) < 400), "{seen:?}");
    }

    #[test]
    fn ends_of_a_range_come_and_nothing_outside() {
        let mut draw = Draw::new(3, 9);
        let drawn: Vec<i32> = (0..200).map(|_| draw.whole(-2, 2)).collect();
        assert_eq!((drawn.iter().min(), drawn.iter().max()), (Some(&-2), Some(&2)));
        assert_eq!((draw.below(0), draw.below(1)), (0, 0));
    }
}
