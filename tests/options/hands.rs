//! One core or many: the same answer.

use std::sync::atomic::{AtomicUsize, Ordering};

use sternknee::options::{By, Found, Offer, Work, Yard, nearly, search};

use super::{demo, opened};
use crate::common::CATALOG;

const HANDS: usize = 3;

/// As many hands, each taking the next number that nobody has.
fn many(count: usize, task: &(dyn Fn(usize) + Sync)) {
    let next = AtomicUsize::new(0);
    std::thread::scope(|scope| {
        for _ in 0..HANDS {
            scope.spawn(|| {
                loop {
                    let i = next.fetch_add(1, Ordering::Relaxed);
                    if i >= count {
                        break;
                    }
                    task(i);
                }
            });
        }
    });
}

fn told(found: &Found) -> String {
    let ranked = found.ranked(&By::USUAL);
    let hangs: Vec<_> = ranked.iter().map(|one| &one.hang).collect();
    format!("{hangs:?}\n{:?}", found.tried)
}

fn near(yard: &Yard, found: &Found, work: &Work) -> Vec<String> {
    nearly(yard, found, work).iter().map(|near| format!("{:?} {:?}", near.tried, near.change)).collect()
}

#[test]
fn one_core_and_many_give_the_same_answer() {
    let text = demo("oyster_skiff");
    let job = opened(&text);
    let offer = Offer { only: Some("four-stroke 2"), ..Offer::default() };
    let (one_yard, many_yard) = (job.yard(&CATALOG), job.yard(&CATALOG));
    let hangs = offer.hangs(&one_yard);
    let hangs: Vec<_> = hangs.into_iter().filter(|hang| hang.count == 1).collect();
    let several = Work { hands: many, ..Work::PLAIN };
    let (one, more) = (search(&one_yard, &hangs, &Work::PLAIN), search(&many_yard, &hangs, &several));
    assert_eq!(told(&one), told(&more));
    assert_eq!(near(&one_yard, &one, &Work::PLAIN), near(&many_yard, &more, &several));
}

#[test]
fn what_is_stopped_tells_what_is_done_so_far() {
    let text = demo("oyster_skiff");
    let job = opened(&text);
    let yard = job.yard(&CATALOG);
    let hangs = Offer { only: Some("450 hp"), ..Offer::default() }.hangs(&yard);
    let done = AtomicUsize::new(0);
    let work = Work {
        done: &|| {
            done.fetch_add(1, Ordering::Relaxed);
        },
        goes_on: &|| done.load(Ordering::Relaxed) < 5,
        ..Work::PLAIN
    };
    let found = search(&yard, &hangs, &work);
    assert_eq!(found.tried.len(), 5);
    assert!(!found.is_whole());
}
