//! As many pairs of hands as the machine has cores.

use std::num::NonZeroUsize;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread::{available_parallelism, scope};

/// Threads that are at work beside those that wait for them.
static HELPERS: AtomicUsize = AtomicUsize::new(0);

/// Does the tasks side by side: whoever is free takes the next. A thread waits for no other but at the end, so that tasks
/// may ask for the same thing, of which the first makes it. A task that has tasks of its own finds helpers for them only where
/// a core is free: more threads than cores would each want memory of their own.
pub(super) fn side_by_side(count: usize, task: &(dyn Fn(usize) + Sync)) {
    let next = AtomicUsize::new(0);
    let take = || Some(next.fetch_add(1, Ordering::Relaxed)).filter(|i| *i < count);
    let cores = available_parallelism().map_or(1, NonZeroUsize::get);
    let free = |helpers: usize| (helpers + 1 < cores).then_some(helpers + 1);
    let help = || {
        std::iter::from_fn(take).for_each(task);
        HELPERS.fetch_sub(1, Ordering::Relaxed);
    };
    scope(|scope| {
        // Asked anew before each task: a core may have come free.
        for i in std::iter::from_fn(take) {
            if i + 1 < count && HELPERS.fetch_update(Ordering::Relaxed, Ordering::Relaxed, free).is_ok() {
                scope.spawn(help);
            }
            task(i);
        }
    });
}
