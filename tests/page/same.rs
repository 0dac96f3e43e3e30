//! Text, JSON and HTML say the same of every finding.

use proptest::prelude::*;
use scraper::{Html, Selector};
use sternknee::job::Sitting;
use sternknee::quantity::Units;
use sternknee::report::{self, Report};

use super::drawn::{config, drawn};
use super::listed::listed;
use super::{DEMOS, demo, named, stamp, with_report};

fn words(element: scraper::ElementRef, selector: &str) -> Option<String> {
    let selector = Selector::parse(selector).expect("a selector");
    let found = element.select(&selector).next()?;
    // A page sets names off with quotation marks, plain text with strokes.
    let words: String = found.text().collect();
    Some(words.replace(['\u{201c}', '\u{201d}'], "`"))
}

/// A text without its line breaks, so that wrapped lines compare.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn every_finding_reads_the_same_in_text_json_and_html() {
    for name in DEMOS {
        with_report(&demo(name), |report| compare(name, report));
    }
}

proptest! {
    #![proptest_config(config(6))]

    #[test]
    fn every_finding_of_a_random_job_reads_the_same_in_text_json_and_html(drawn in drawn()) {
        let text = drawn.job()?;
        with_report(&text, |report| compare(&text, report));
    }
}

fn compare(name: &str, report: &Report) {
    let document = Html::parse_document(&report::page(report, &stamp(), &named(report)));
    let json = report::json(report);
    let named_alone = listed(&report::text_of_all(report), "NOT ASKED");
    let text = flat(&report::text_of_all(report));
    let articles = Selector::parse("article.finding").expect("a selector");
    let articles: Vec<_> = document.select(&articles).collect();
    let findings = json["findings"].as_array().expect("findings");
    assert_eq!(articles.len(), findings.len(), "{name}");
    assert_eq!(articles.len(), report.judged.len(), "{name}");
    for finding in findings {
        let rule = finding["rule"].as_str().expect("a rule");
        let article = articles.iter().find(|article| article.attr("data-rule") == Some(rule));
        let article = article.unwrap_or_else(|| panic!("{name}: no {rule}"));
        assert_eq!(article.attr("data-verdict"), finding["verdict"].as_str(), "{rule}");
        assert_eq!(
            words(*article, ".verdict").map(|verdict| flat(&verdict)).as_deref(),
            finding["verdict"].as_str(),
            "{rule}"
        );
        let summary = words(*article, ".summary").expect("a summary");
        assert_eq!(Some(summary.clone()), finding["summary"].as_str().map(named_plainly), "{rule}");
        // What a study did not ask is only named in its text.
        let study = report.case.rig.job.sitting == Sitting::Study;
        let full_name = sternknee::rules::find(rule).expect("a rule").full_name();
        let told = !(study && named_alone.contains(&full_name));
        if told {
            let wanted = flat(&summary);
            assert!(text.replace(['\u{201c}', '\u{201d}'], "`").contains(&wanted), "{rule}: {wanted}");
        } else {
            assert_eq!(finding["verdict"], "unmeasured", "{rule}");
        }
        for figure in ["found", "margin"] {
            assert_eq!(
                words(*article, &format!("dd.{figure}")).as_deref(),
                finding[figure]["text"].as_str(),
                "{rule} {figure}"
            );
        }
        assert_eq!(words(*article, ".remedy"), finding["remedy"].as_str().map(named_plainly), "{rule}");
        if let Some(limit) = words(*article, "dd.limit")
            && told
            && rule_is_told_at_length(finding["verdict"].as_str())
        {
            assert!(text.contains(&format!("limit {limit}")), "{rule}: {limit}");
        }
        for source in finding["sources"].as_array().expect("sources") {
            let source = source.as_str().expect("a source");
            if finding["verdict"] != "not applicable" {
                assert!(sources_of(&document, *article).contains(&source.to_lowercase()), "{rule}");
            }
        }
    }
    let study = report.case.rig.job.sitting == Sitting::Study;
    assert!(text.contains(&if study { flat(&report.headline()) } else { report.answer().to_owned() }));
    for units in [Units::Us, Units::Si, Units::Both] {
        // Every choice of units makes a page.
        let report = Report { units, ..*report };
        assert!(report::page(&report, &stamp(), &[]).contains("</html>"));
    }
}

/// The sources that the numbers of a finding lead to.
fn sources_of(document: &Html, article: scraper::ElementRef) -> String {
    let links = Selector::parse(".source a[href^='#source-']").expect("a selector");
    let told = article.select(&links).filter_map(|link| {
        let place = Selector::parse(link.attr("href")?).expect("a selector");
        Some(document.select(&place).next()?.text().collect::<String>())
    });
    told.collect::<Vec<_>>().join("\n").to_lowercase()
}

/// Words with every rule that they name called by its name, as people read them; names set off by strokes.
fn named_plainly(words: &str) -> String {
    let words = words.replace(['\u{201c}', '\u{201d}'], "`");
    sternknee::rules::ALL.iter().fold(words, |words, rule| words.replace(rule.id, &format!("`{}`", rule.name())))
}

fn rule_is_told_at_length(verdict: Option<&str>) -> bool {
    !matches!(verdict, Some("not applicable"))
}
