//! Reading photos whose truth is known: how far off, and how honest about it.

use sunbu_core::dressing::Quantity;
use sunbu_render::{Figures, Miss, Told, misses};

const PHOTOS: u64 = 500;

fn print(told: Told, misses: &[Miss]) {
    println!("{told:?}");
    for &q in Quantity::ALL {
        let f = Figures::of(misses.iter().filter(|m| m.quantity == q));
        if f.count > 0 {
            println!(
                "  {:20} {:4}: median {:.2}, 95 % {:.2}, bias {:+.2}, inside {:.2}",
                q.key(),
                f.count,
                f.median,
                f.p95,
                f.bias,
                f.inside
            );
        }
    }
}

#[test]
fn five_hundred_photos_read_to_half_a_centimetre_and_say_how_surely() {
    let focal = Told {
        focal: true,
        sheet: true,
    };
    let blind = Told {
        focal: false,
        sheet: true,
    };
    let low = |misses: &[Miss]| Figures::of(misses.iter().filter(|m| m.is_low_length()));
    let mut figures = Vec::new();
    for told in [focal, blind] {
        let (misses, refused) = misses(PHOTOS, told);
        print(told, &misses);
        let all = Figures::of(&misses);
        println!(
            "  low lengths {:.2?}\n  all {all:.2?}\n  refused {refused}",
            low(&misses)
        );
        // Feet off the picture: no photo to read.
        assert!(refused <= 5, "{refused} of {PHOTOS} refused");
        assert!(
            (0.87..=0.93).contains(&all.inside),
            "90 % intervals hold {:.3}",
            all.inside
        );
        assert!(all.bias.abs() < 0.1, "bias {:.2} cm", all.bias);
        figures.push(low(&misses));
    }
    let [told, blind] = [figures[0], figures[1]];
    assert!(told.median < 0.6, "median {:.2} cm", told.median);
    assert!(told.p95 < 1.5, "95th percentile {:.2} cm", told.p95);
    assert!(blind.median < 2.0 * told.median, "{:.2} cm", blind.median);
    assert!(blind.p95 < 2.0 * told.p95, "{:.2} cm", blind.p95);
}
