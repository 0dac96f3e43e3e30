//! Who does several things that do not wait for each other: one after the other, or side by side where a program has threads.

use std::array;
use std::sync::{Mutex, PoisonError};

/// Calls a task with every number below the first argument, in any order or side by side, and comes back when all are done.
pub type Hands = fn(usize, &(dyn Fn(usize) + Sync));

/// One after the other: where there are no threads, or others use them.
pub fn one_pair(count: usize, task: &(dyn Fn(usize) + Sync)) {
    (0..count).for_each(task);
}

/// What each of so many tasks gives, in their order.
pub(crate) fn each<T: Send>(hands: Hands, count: usize, of: impl Fn(usize) -> T + Sync) -> Vec<T> {
    let made: Vec<Made<T>> = (0..count).map(|_| Made::default()).collect();
    hands(count, &|i| made[i].put(of(i)));
    made.into_iter().enumerate().map(|(i, made)| made.take().unwrap_or_else(|| of(i))).collect()
}

/// What each of two unlike tasks gives.
#[cfg(feature = "terminal")]
pub(crate) fn two<A: Send, B: Send>(hands: Hands, one: impl Fn() -> A + Sync, other: impl Fn() -> B + Sync) -> (A, B) {
    let (a, b) = (Made::default(), Made::default());
    hands(2, &|i| if i == 0 { a.put(one()) } else { b.put(other()) });
    (a.take().unwrap_or_else(one), b.take().unwrap_or_else(other))
}

/// What both of two tasks give.
pub(crate) fn both<T: Send>(hands: Hands, of: impl Fn(usize) -> T + Sync) -> [T; 2] {
    let mut made = each(hands, 2, &of).into_iter();
    array::from_fn(|i| made.next().unwrap_or_else(|| of(i)))
}

/// What a task makes.
struct Made<T>(Mutex<Option<T>>);

impl<T> Default for Made<T> {
    fn default() -> Self {
        Made(Mutex::new(None))
    }
}

impl<T> Made<T> {
    fn put(&self, made: T) {
        *self.0.lock().unwrap_or_else(PoisonError::into_inner) = Some(made);
    }

    fn take(self) -> Option<T> {
        self.0.into_inner().unwrap_or_else(PoisonError::into_inner)
    }
}
