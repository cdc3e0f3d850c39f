//! Reading packed numbers: seven bits a byte, lowest first.

/// What is left to read. A number that the bytes do not hold is none; a count that they cannot hold ends early.
pub(super) struct Packed<'a>(pub(super) &'a [u8]);

impl<'a> Packed<'a> {
    pub(super) fn byte(&mut self) -> Option<u8> {
        let (first, rest) = self.0.split_first()?;
        self.0 = rest;
        Some(*first)
    }

    /// The next number; one of more than four bytes is none.
    pub(super) fn number(&mut self) -> Option<u32> {
        let mut number = 0;
        for shift in [0, 7, 14, 21] {
            let byte = self.byte()?;
            number |= u32::from(byte & 127) << shift;
            if byte < 128 {
                return Some(number);
            }
        }
        None
    }

    /// A number that counts what follows.
    pub(super) fn count(&mut self) -> usize {
        self.number().and_then(|count| usize::try_from(count).ok()).unwrap_or(0)
    }

    /// So many numbers, fewer where the bytes end.
    pub(super) fn numbers(&mut self, count: usize) -> Vec<u32> {
        let mut numbers = Vec::new();
        while numbers.len() < count {
            let Some(number) = self.number() else { break };
            numbers.push(number);
        }
        numbers
    }

    /// So many bytes, fewer where they end.
    pub(super) fn take(&mut self, count: usize) -> &'a [u8] {
        let (taken, rest) = self.0.split_at(count.min(self.0.len()));
        self.0 = rest;
        taken
    }
}
