//! The sweeps as tables.

use uom::si::f64::Length;

use super::super::show::ratio;
use super::super::{SWEPT_WAYS, Sweep, Swept, Way};
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::working::{Part, Sheet, Table};

impl Sweep {
    /// What was told: "20-1/2 in".
    pub fn told(&self) -> Measure {
        let told = Length::from_si(self.told);
        if self.swept == Swept::Thickness { Measure::of(told) } else { Measure::tape(told) }
    }

    /// How far the reading is off that.
    pub fn off(&self, change: f64) -> Text {
        let length = Length::from_si(change);
        match self.swept {
            Swept::Height => Text::from(Measure::of(length)),
            Swept::Thickness => Text::from(format!("{:.0} %", 100.0 * change).as_str()),
            Swept::Knees => Text::from(Measure::tape(length)),
        }
    }

    fn table(&self) -> Table {
        let rows = self
            .points
            .iter()
            .map(|point| std::iter::once(self.off(point.change)).chain(point.factors.map(ratio)).collect())
            .collect();
        let heads: Vec<&str> = std::iter::once("off by").chain(SWEPT_WAYS.map(Way::words)).collect();
        Table::new(self.swept.words(), &heads, rows)
    }
}

/// All sweeps; nothing where there are none.
pub fn sweep_part(sweeps: &[Sweep]) -> Option<Part> {
    let mut sheet = Sheet::default();
    for sweep in sweeps {
        sheet.remark(say!("{} as told: {}", sweep.swept.words(), sweep.told()));
    }
    if sweeps.iter().any(|sweep| sweep.swept == Swept::Knees) {
        sheet.remark("all knees are made higher or lower alike; the height told is that of the tallest as it stands");
    }
    sheet.remark("strength over load with the new engines; all else is as told, loads and panel are worked out anew at every point");
    sheet.remark("what is left of the core stays as it was read");
    sheet.remark("a factor is worth 5 %; more digits are shown here so that its changes can be followed");
    let tables = sweeps.iter().map(Sweep::table).collect();
    (!sweeps.is_empty()).then(|| Part { title: "strength over load as a reading changes".to_owned(), tables, sheet })
}
