//! Ribs and frames that the foam covers on all sides.

/// One spacing with the two flanks of its rib, in inches: spacing + 2 × rib depth. The face of a rib stands for the
/// ground behind it. Common practice, no source.
pub(super) fn over_ribs_in(spacing: f64, depth: f64) -> f64 {
    spacing + 2.0 * depth
}
