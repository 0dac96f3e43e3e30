//! What was worked out once is kept for the next that asks.

use sternknee::case::strength::Kept;

#[test]
fn what_was_made_is_made_once_and_the_longest_unused_goes_first() {
    let kept: Kept<i32, i32> = Kept::new(2);
    let made = std::cell::RefCell::new(Vec::new());
    let get = |of: i32| {
        *kept.get(of, |_| {
            made.borrow_mut().push(of);
            10 * of
        })
    };
    assert_eq!([get(1), get(2), get(1), get(3), get(1), get(2)], [10, 20, 10, 30, 10, 20]);
    assert_eq!(*made.borrow(), [1, 2, 3, 2]);
}
