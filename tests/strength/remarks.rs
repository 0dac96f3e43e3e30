//! How closely a panel's study tells what it found.

use sternknee::case::studies::PanelAnswer;
use sternknee::physics::strength::panel::{Accuracy, EdgeSupport, Load, Panel, PlateStiffness, Section, Solution};

/// What is said of a solution whose error is this, where so much was asked.
fn remarks(errors: &[(f64, f64)]) -> Vec<String> {
    let section = Section::stiffness(PlateStiffness::isotropic(9e9, 0.3, 0.02));
    let panel = Panel::rectangle(1.0, 0.5, [EdgeSupport::Simple; 4], section);
    let solution = panel.solve(&[Load::Pressure(1e3)], Accuracy::default()).expect("a plate");
    let remark = |&(asked, error): &(f64, f64)| {
        let solution = Solution { error, ..solution.clone() };
        let answer =
            PanelAnswer { panel: panel.clone(), solution, asked, weakest: None, moments: [(0.0, [0.0; 2]); 3] };
        answer.remark().show(Default::default())
    };
    errors.iter().map(remark).collect()
}

#[test]
fn an_error_is_told_in_two_digits_and_never_as_less_than_it_is() {
    let told = [
        (0.000_26, "0.026 %"),
        (0.000_261, "0.027 %"),
        (0.005, "0.5 %"),
        (0.02, "2 %"),
        (0.0999, "10 %"),
        (0.134, "14 %"),
        (0.0, "0.0001 %"),
        (f64::INFINITY, "not known"),
        (f64::NAN, "not known"),
    ];
    // Less than nothing is asked, so that what was reached is told last.
    let remarks = remarks(&told.map(|(error, _)| (-1.0, error)));
    for ((error, words), remark) in told.into_iter().zip(remarks) {
        assert!(remark.ends_with(&format!(", the solver reached {words}")), "{error}: {remark}");
    }
}

#[test]
fn an_accuracy_that_was_not_reached_is_told_with_what_was() {
    let [reached, missed] = &remarks(&[(0.02, 0.000_26), (0.02, 0.03)])[..] else { panic!("two remarks") };
    assert!(reached.ends_with("largest deflection to 0.026 % (2 % asked)"), "{reached}");
    assert!(missed.ends_with("2 % was asked of the largest deflection, the solver reached 3 %"), "{missed}");
}
