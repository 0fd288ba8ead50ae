//! The names of the studio nearest to one that it does not hold.

/// How many are suggested.
const SUGGESTED: usize = 3;

/// The names nearest to what was typed, nearest first, each with its number: “Chiyo (4)”.
///
/// Part of a name counts as near: a family name alone names nobody but means somebody. For the
/// rest nearness is the similarity of Jaro and Winkler, from 0 to 1, of the whole name or of one
/// word in it; of equals the lower number comes first. What was typed as a number is held against
/// the numbers.
pub fn nearest<'a>(typed: &str, known: impl Iterator<Item = (i64, &'a str)>) -> Vec<String> {
    let number: Option<i64> = typed.trim().parse().ok();
    let near = |id: i64, name: &str| match number {
        Some(number) => -(id.abs_diff(number) as f64),
        None => likeness(typed, name),
    };
    let mut known: Vec<(f64, i64, &str)> =
        known.map(|(id, name)| (near(id, name), id, name)).collect();
    known.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
    let told = |&(_, id, name): &(f64, i64, &str)| format!("{name} ({id})");
    known.iter().take(SUGGESTED).map(told).collect()
}

fn likeness(typed: &str, name: &str) -> f64 {
    let (typed, name) = (typed.trim().to_lowercase(), name.to_lowercase());
    if !typed.is_empty() && name.contains(&typed) {
        return 1.0;
    }
    std::iter::once(name.as_str())
        .chain(name.split_whitespace())
        .map(|part| strsim::jaro_winkler(&typed, part))
        .fold(0.0, f64::max)
}

#[cfg(test)]
mod tests {
    use super::*;

    const KNOWN: [(i64, &str); 5] = [
        (1, "Tanabe Chiyo"),
        (2, "Mori Sayo"),
        (3, "森 さよ"),
        (7, "Tanaka Hanae"),
        (9, "Mori Sayo"),
    ];

    fn near(typed: &str) -> Vec<String> {
        nearest(typed, KNOWN.into_iter())
    }

    #[test]
    fn a_slip_a_part_of_a_name_and_another_case_find_who_is_meant() {
        assert_eq!(near("Tanabe Chyio")[0], "Tanabe Chiyo (1)");
        assert_eq!(near("hanae")[0], "Tanaka Hanae (7)");
        assert_eq!(near("さよ")[0], "森 さよ (3)");
        assert_eq!(near("Mori Saya")[..2], ["Mori Sayo (2)", "Mori Sayo (9)"]);
    }

    #[test]
    fn a_number_that_nobody_has_is_held_against_the_numbers() {
        assert_eq!(near("8")[..2], ["Tanaka Hanae (7)", "Mori Sayo (9)"]);
        assert_eq!(near("999")[0], "Mori Sayo (9)");
    }

    #[test]
    fn an_empty_studio_suggests_nobody() {
        assert!(nearest("Chiyo", std::iter::empty()).is_empty());
    }
}
