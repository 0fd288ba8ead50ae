//! A check in words: the report section by section, then the hem as others see it.

use sunbu_words::Words;

use crate::commands::photo::Shown;
use crate::page::Page;
use crate::report::check::Checked;
use crate::seen_by;

/// The whole page.
pub fn page(words: &Words, checked: &Checked<'_>) -> String {
    let shown = checked.shown;
    let mut page = Page::new();
    page.heading(&title(words, shown));
    let occasion = words.occasion(shown.occasion);
    let standard = words.standard(&shown.standard);
    let args = [
        ("occasion", (&occasion).into()),
        ("standard", (&standard).into()),
    ];
    page.paragraph("", &words.with("cli-under", &args));
    for one in checked.taken {
        let view = words.view(one.shot.view);
        let args = [("file", (&one.file).into()), ("view", (&view).into())];
        page.item("  ", &words.with("cli-photo", &args));
    }
    for section in words.report(checked.report, &shown.rules) {
        page.heading(&section.title);
        for line in &section.lines {
            page.item("- ", line);
        }
    }
    seen_by::say(words, &mut page, checked.sights);
    page.into_text()
}

/// Who in what, or that it is a stranger.
fn title(words: &Words, shown: &Shown) -> String {
    match &shown.names {
        Some((person, garment)) => {
            let args = [("person", person.into()), ("garment", garment.into())];
            words.with("cli-title", &args)
        }
        None => words.get("cli-stranger"),
    }
}
