//! A ranking in words: one line of verdict and one of reason for each.

use sunbu_words::Words;

use crate::page::Page;
use crate::report::rank::{Ranked, Side};

/// The whole page.
pub fn page(words: &Words, ranked: &Ranked<'_>) -> String {
    let mut page = Page::new();
    let id = match ranked.rows_are {
        Side::Garments => "cli-garments-for",
        Side::People => "cli-people-for",
    };
    page.heading(&words.with(id, &[("name", ranked.ranked_for.into())]));
    let occasion = words.occasion(ranked.occasion);
    let standard = words.standard(ranked.standard);
    let args = [
        ("occasion", (&occasion).into()),
        ("standard", (&standard).into()),
    ];
    page.paragraph("", &words.with("cli-under", &args));
    page.gap();
    for (at, (name, worth)) in ranked.rows.iter().enumerate() {
        let verdict = words.verdict(worth.verdict);
        let args = [("name", name.into()), ("verdict", (&verdict).into())];
        page.item(&format!("{:>3}. ", at + 1), &words.with("cli-row", &args));
        page.paragraph("     ", &words.reason(worth));
    }
    if !ranked.left_out.is_empty() {
        let names = ranked.left_out.join(" / ");
        page.gap();
        page.paragraph(
            "",
            &words.with("cli-left-out", &[("names", (&names).into())]),
        );
    }
    page.into_text()
}
