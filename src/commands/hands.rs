//! As many pairs of hands as the machine has cores.

use std::num::NonZeroUsize;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread::{available_parallelism, scope};

/// Does the tasks side by side: whoever is free takes the next. A thread waits for no other but at the end, so that tasks
/// may ask for the same thing, of which the first makes it.
pub(super) fn side_by_side(count: usize, task: &(dyn Fn(usize) + Sync)) {
    let next = AtomicUsize::new(0);
    let work = || {
        loop {
            let i = next.fetch_add(1, Ordering::Relaxed);
            if i >= count {
                break;
            }
            task(i);
        }
    };
    let cores = available_parallelism().map_or(1, NonZeroUsize::get);
    scope(|scope| {
        (1..cores.min(count)).for_each(|_| drop(scope.spawn(work)));
        work();
    });
}
