//! Writes photos from each side into `target/photos`, with every visible mark ringed on a second
//! copy, to be looked at: `cargo run -p sunbu-render --example photos -- FIRST_SEED COUNT`.

use std::path::Path;
use std::time::Instant;

use sunbu_core::photo::View;
use sunbu_render::Scene;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut numbers = std::env::args()
        .skip(1)
        .map_while(|a| a.parse::<u64>().ok());
    let (first, count) = (numbers.next().unwrap_or(1), numbers.next().unwrap_or(1));
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../target/photos");
    std::fs::create_dir_all(&folder)?;
    for seed in first..first + count {
        for &view in View::ALL {
            let scene = Scene::random_from(seed, view);
            let start = Instant::now();
            let truth = scene.truth();
            let found = start.elapsed();
            let start = Instant::now();
            let picture = scene.render(seed);
            let painted = start.elapsed();
            let name = format!("{}-{seed}", view.key());
            picture.image.save(folder.join(format!("{name}.png")))?;
            let mut marked = picture.image.clone();
            for seen in truth.values() {
                let colour = if seen.visible {
                    [255, 40, 40]
                } else {
                    [60, 60, 255]
                };
                ring(&mut marked, seen.pixel, colour);
            }
            for at in scene.sheet().into_iter().flatten() {
                ring(&mut marked, at, [40, 160, 40]);
            }
            marked.save(folder.join(format!("{name}-marked.png")))?;
            println!(
                "{name}: {:?}, marks in {found:?}, painted in {painted:?}",
                scene.lens.size
            );
        }
    }
    Ok(())
}

/// Draws a ring of 9 to 12 pixels about a place, as far as it lies on the picture.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "held within the picture"
)]
fn ring(image: &mut image::RgbImage, at: [f64; 2], colour: [u8; 3]) {
    for i in 0..720 {
        let (sin, cos) = (f64::from(i) * std::f64::consts::TAU / 720.0).sin_cos();
        for radius in [9.0, 10.0, 11.0, 12.0] {
            let (x, y) = (at[0] + radius * cos, at[1] + radius * sin);
            if x >= 0.0 && y >= 0.0 && x < f64::from(image.width()) && y < f64::from(image.height())
            {
                image.put_pixel(x as u32, y as u32, image::Rgb(colour));
            }
        }
    }
}
