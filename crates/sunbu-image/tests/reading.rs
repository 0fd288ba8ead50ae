//! Pictures of every form come in upright and as they look.

#![allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // places within small pictures

mod support;

use image::{DynamicImage, ImageFormat, RgbImage};
use jpeg_encoder::{ColorType, Encoder};
use sunbu_image::{LONGEST_SIDE, Picture};
use support::*;

fn pixel(picture: &Picture, x: f64, y: f64) -> [u8; 3] {
    let [width, height] = picture.size();
    let (x, y) = (x * f64::from(width), y * f64::from(height));
    let at = 3 * (y as usize * width as usize + x as usize);
    let rgb = picture.rgb();
    [rgb[at], rgb[at + 1], rgb[at + 2]]
}

/// The colours in the middle of the four quarters, upper ones first.
fn corners(picture: &Picture) -> [[u8; 3]; 4] {
    [(0.25, 0.25), (0.75, 0.25), (0.25, 0.75), (0.75, 0.75)].map(|(x, y)| pixel(picture, x, y))
}

fn assert_alike(found: [[u8; 3]; 4], wanted: [[u8; 3]; 4], what: &str) {
    let all = found.iter().zip(wanted).all(|(a, b)| alike(*a, b));
    assert!(all, "{what}: {found:?} against {wanted:?}");
}

#[test]
fn jpeg_png_and_webp_are_read_alike() {
    let drawn = quarters(128, 96);
    let whole = DynamicImage::ImageRgb8(drawn.clone());
    for bytes in [
        jpeg(&drawn, &[]),
        encoded(&whole, ImageFormat::Png),
        encoded(&whole, ImageFormat::WebP),
    ] {
        let picture = Picture::read(&bytes).unwrap();
        assert_eq!(picture.size(), [128, 96]);
        assert_alike(corners(&picture), [RED, GREEN, BLUE, WHITE], "read");
        assert_eq!(picture.focal(), None);
    }
}

#[test]
fn all_eight_orientations_come_out_upright() {
    let drawn = quarters(128, 96);
    // CIPA DC-008, tag 274: what the 0th row and the 0th column of the file are in the scene, as the
    // quarters of the file in the places of the upright picture.
    let (r, g, b, w) = (RED, GREEN, BLUE, WHITE);
    for (orientation, wanted) in [
        (1, [r, g, b, w]), // top, left
        (2, [g, r, w, b]), // top, right
        (3, [w, b, g, r]), // bottom, right
        (4, [b, w, r, g]), // bottom, left
        (5, [r, b, g, w]), // left, top
        (6, [b, r, w, g]), // right, top
        (7, [w, g, b, r]), // right, bottom
        (8, [g, w, r, b]), // left, bottom
    ] {
        let bytes = jpeg_with_exif(&drawn, &Exif::with_orientation(orientation));
        let picture = Picture::read(&bytes).unwrap();
        let size = if orientation < 5 {
            [128, 96]
        } else {
            [96, 128]
        };
        assert_eq!(picture.size(), size, "orientation {orientation}");
        assert_eq!(picture.file_size(), size, "orientation {orientation}");
        let what = format!("orientation {orientation}");
        assert_alike(corners(&picture), wanted, &what);
        // What is written again is upright by itself.
        let again = Picture::read(&picture.to_jpeg()).unwrap();
        assert_eq!(again.size(), size, "{what} written");
        assert_alike(corners(&again), wanted, &what);
    }
    for nonsense in [0, 9, 65_535] {
        let bytes = jpeg_with_exif(&drawn, &Exif::with_orientation(nonsense));
        assert_eq!(Picture::read(&bytes).unwrap().size(), [128, 96]);
    }
}

#[test]
fn sixteen_bits_gray_and_alpha_come_in_as_they_look() {
    let drawn = quarters(80, 80);
    let whole = DynamicImage::ImageRgb8(drawn.clone());
    let deep = DynamicImage::ImageRgb16(whole.to_rgb16());
    let picture = Picture::read(&encoded(&deep, ImageFormat::Png)).unwrap();
    assert_alike(corners(&picture), [RED, GREEN, BLUE, WHITE], "16 bits");

    let gray = DynamicImage::ImageLuma8(image::GrayImage::from_pixel(80, 80, image::Luma([90])));
    for format in [ImageFormat::Png, ImageFormat::Jpeg] {
        let picture = Picture::read(&encoded(&gray, format)).unwrap();
        assert_alike(corners(&picture), [[90; 3]; 4], "gray");
    }

    // Half seen through, and wholly: red over white, white.
    for (alpha, wanted) in [(128, [237, 142, 147]), (0, [255; 3]), (255, RED)] {
        let [red, green, blue] = RED;
        let colour = image::Rgba([red, green, blue, alpha]);
        let glass = DynamicImage::ImageRgba8(image::RgbaImage::from_pixel(80, 80, colour));
        for format in [ImageFormat::Png, ImageFormat::WebP] {
            let picture = Picture::read(&encoded(&glass, format)).unwrap();
            assert_alike(corners(&picture), [wanted; 4], "alpha");
        }
    }
}

#[test]
fn a_jpeg_in_the_four_inks_of_print_has_its_colours() {
    // The encoder takes ink and stores it the way of such files, as what is left of the light.
    // Cyan, magenta, yellow, black in 0 to 255 of ink against the colour (1 - ink)(1 - black).
    for (ink, wanted) in [
        ([0, 0, 0, 0], [255, 255, 255]),
        ([255, 0, 0, 0], [0, 255, 255]),
        ([0, 200, 100, 0], [255, 55, 155]),
        ([0, 0, 0, 155], [100, 100, 100]),
        ([100, 0, 0, 128], [77, 127, 127]),
    ] {
        for kind in [ColorType::Cmyk, ColorType::CmykAsYcck] {
            let pixels: Vec<u8> = std::iter::repeat_n(ink, 64 * 64).flatten().collect();
            let mut bytes = Vec::new();
            let encoder = Encoder::new(&mut bytes, 95);
            encoder.encode(&pixels, 64, 64, kind).unwrap();
            let picture = Picture::read(&bytes).unwrap();
            assert_alike(corners(&picture), [wanted; 4], &format!("{kind:?} {ink:?}"));
        }
    }
}

#[test]
fn a_long_picture_is_scaled_to_the_longest_side_and_all_of_it_stays() {
    let drawn = quarters(5_000, 1_250);
    let picture = Picture::read(&jpeg(&drawn, &[])).unwrap();
    assert_eq!(picture.size(), [LONGEST_SIDE, 1_024]);
    assert_alike(corners(&picture), [RED, GREEN, BLUE, WHITE], "scaled");
    assert_eq!(picture.file_size(), [5_000, 1_250], "as the file has it");
    // The border between the quarters stays at the middle to a pixel.
    assert!(alike(pixel(&picture, 0.4995, 0.1), RED));
    assert!(alike(pixel(&picture, 0.5005, 0.1), GREEN));

    let small = picture.scaled(256);
    assert_eq!(small.size(), [256, 64]);
    assert_alike(corners(&small), [RED, GREEN, BLUE, WHITE], "scaled again");
    assert_eq!(small.scaled(300).size(), [256, 64], "never enlarged");
    assert_eq!(small.scaled(0).size(), [1, 1]);
}

#[test]
fn fine_stripes_turn_into_their_mean_and_not_into_broad_ones_when_scaled() {
    // Weave of one pixel: to a third of its size it can only be even gray. 200 and 40 mean 120.
    let weave = RgbImage::from_fn(900, 300, |x, _| {
        image::Rgb(if x % 2 == 0 { [200; 3] } else { [40; 3] })
    });
    let picture = Picture::read(&encoded(&weave.into(), ImageFormat::Png)).unwrap();
    let small = picture.scaled(300);
    let inner = small.rgb()[30..870].iter().map(|&v| i32::from(v));
    let worst = inner.map(|value| (value - 120).abs()).max().unwrap();
    assert!(worst <= 3, "off by {worst} of 160");
}

#[test]
fn brightness_follows_the_published_weights() {
    // ITU-R BT.601: 0.299 red + 0.587 green + 0.114 blue.
    let pixels = [[255, 0, 0], [0, 255, 0], [0, 0, 255], [255; 3], [0; 3]].concat();
    let picture = Picture::from_rgb([5, 1], pixels).unwrap();
    assert_eq!(picture.gray().row(0), [76, 150, 29, 255, 0]);
}

#[test]
fn a_drawn_picture_needs_as_many_pixels_as_its_sides_say() {
    assert!(Picture::from_rgb([2, 2], vec![0; 12]).is_some());
    assert!(Picture::from_rgb([2, 2], vec![0; 11]).is_none());
    assert!(Picture::from_rgb([0, 2], vec![]).is_none());
    assert!(Picture::from_rgb([LONGEST_SIDE + 1, 1], vec![0; 3 * 4097]).is_none());
    assert!(Picture::from_rgb([u32::MAX, u32::MAX], vec![0; 3]).is_none());
}

#[test]
fn what_is_written_has_its_edges_where_the_picture_has_them() {
    use sunbu_core::photo::edge::snap;
    // A slanted edge with noise, as sharp as a lens makes it.
    let edge = |y: f64| 60.3 + 0.21 * y;
    let mut state = 77_u32;
    let drawn = RgbImage::from_fn(128, 96, |x, y| {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        let noise = f64::from(state >> 24) / 32.0 - 4.0;
        let across = f64::from(x) + 0.5 - edge(f64::from(y) + 0.5);
        let light = 90.0 + 50.0 * across.tanh() + noise;
        image::Rgb([light, 0.8 * light, 0.6 * light].map(|value| value as u8))
    });
    let [width, height] = [drawn.width(), drawn.height()];
    let before = Picture::from_rgb([width, height], drawn.into_raw()).unwrap();
    let once = Picture::read(&before.to_jpeg()).unwrap();
    let thrice = Picture::read(&Picture::read(&once.to_jpeg()).unwrap().to_jpeg()).unwrap();
    for y in [20.0, 37.5, 61.0, 80.0] {
        let place = |picture: &Picture| {
            let found = snap(&picture.gray(), [edge(y) + 4.0, y], Some([1.0, 0.0]), 9.0);
            found.expect("an edge").at[0]
        };
        let wanted = place(&before);
        for (what, picture) in [("once", &once), ("three times", &thrice)] {
            // A tenth of a pixel is a hundredth of a centimetre on a wearer of 1,500 pixels.
            let moved = place(picture) - wanted;
            assert!(
                moved.abs() < 0.1,
                "written {what}, at {y}: moved by {moved} px"
            );
        }
    }
}
