//! Plywood as its plies make it: stiffness and nominal strength in bending, along its face grain and across it.
//!
//! Plies of one thickness, the face plies along, each turned by a quarter against its neighbours; several sheets may be
//! glued up, all laid alike. A ply across the direction of bending counts with [`ACROSS_OF_ALONG`] of its stiffness.

/// Modulus of a veneer across its grain over that along it. Source: Wood Handbook, value from memory: 0.05 for softwoods.
pub const ACROSS_OF_ALONG: f64 = 0.05;

/// A board of plywood.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plywood {
    /// Plies of one sheet, an odd number from 3.
    plies: f64,
    /// Sheets laid alike. Between whole numbers the formulas run on, so that a board a little thicker is a little
    /// different.
    sheets: f64,
}

/// What a board has in bending, over what the veneers' wood has along its grain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OfWood {
    /// Modulus over the wood's.
    pub modulus: f64,
    /// Nominal strength, moment over that of a solid section, over the wood's.
    pub strength: f64,
}

impl Plywood {
    /// A board of so many sheets of so many plies each; less than one sheet counts as one. `None` where no such sheet is
    /// made: an even number of plies, fewer than three, or sheets that are no number.
    pub fn new(plies: u8, sheets: f64) -> Option<Self> {
        (plies >= 3 && plies % 2 == 1 && sheets.is_finite())
            .then(|| Plywood { plies: f64::from(plies), sheets: sheets.max(1.0) })
    }

    /// Along the face grain: the outermost ply is bent hardest. `E/Ew = 1 − (1 − r) κ`, and the same of the strength, `κ` being
    /// the share that the cross plies have of the board's second moment.
    pub fn along(self) -> OfWood {
        let modulus = 1.0 - (1.0 - ACROSS_OF_ALONG) * self.cross_share();
        OfWood { modulus, strength: modulus }
    }

    /// Across it: `E/Ew = r + (1 − r) κ`. The outermost plies that carry lie one ply in, nearer to the middle, so that the
    /// board bears `h / (h − 2 t)` of what its modulus says.
    pub fn across(self) -> OfWood {
        let modulus = ACROSS_OF_ALONG + (1.0 - ACROSS_OF_ALONG) * self.cross_share();
        let all = self.plies * self.sheets;
        OfWood { modulus, strength: modulus * all / (all - 2.0) }
    }

    /// Share of the cross plies in the second moment. In a sheet of n plies they are m = (n − 1)/2, two plies apart about
    /// its middle: `κ1 = (m + 4 m (m² − 1)) / n³`. Of k sheets, each with its plies about its own middle,
    /// `κ = (κ1 + (m/n)(k² − 1)) / k²` (parallel axes).
    fn cross_share(self) -> f64 {
        let cross = 0.5 * (self.plies - 1.0);
        let one = (cross + 4.0 * cross * (cross * cross - 1.0)) / self.plies.powi(3);
        let square = self.sheets * self.sheets;
        (one + cross / self.plies * (square - 1.0)) / square
    }
}
