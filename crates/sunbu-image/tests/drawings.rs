//! Drawings become pictures as they look, with letters and pictures in them.

mod support;

use image::{ImageFormat, RgbaImage};
use sunbu_image::{SvgError, png_of_svg};
use support::*;

fn drawn(svg: &str, width: u32) -> RgbaImage {
    let png = png_of_svg(svg, width).expect("a drawing");
    let picture = image::load_from_memory_with_format(&png, ImageFormat::Png).expect("a PNG");
    picture.into_rgba8()
}

fn svg(inside: &str) -> String {
    format!(
        "<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink' \
         viewBox='0 0 100 50'>{inside}</svg>"
    )
}

fn is_dark(picture: &RgbaImage, x: u32, y: u32) -> bool {
    picture.get_pixel(x, y).0[0] < 128
}

#[test]
fn shapes_stand_where_the_drawing_puts_them_on_white_paper() {
    let picture = drawn(
        &svg("<rect x='50' width='25' height='25' fill='#dc1e28'/>"),
        400,
    );
    assert_eq!(picture.dimensions(), (400, 200));
    for (x, y, wanted) in [
        (202, 2, [220, 30, 40, 255]),
        (297, 97, [220, 30, 40, 255]),
        (197, 2, [255; 4]),
        (302, 2, [255; 4]),
        (250, 103, [255; 4]),
    ] {
        assert_eq!(picture.get_pixel(x, y).0, wanted, "{x}, {y}");
    }
}

/// Which pixels of one letter are dark.
fn letter(text: &str) -> Vec<bool> {
    let drawing = format!("<text x='30' y='40' font-size='40' font-family='serif'>{text}</text>");
    let picture = drawn(&svg(&drawing), 200);
    let dark: Vec<bool> = picture.pixels().map(|pixel| pixel.0[0] < 128).collect();
    assert!(dark.contains(&true), "{text} shows nothing");
    dark
}

#[test]
fn japanese_letters_show_as_themselves() {
    // A font without a letter draws the same box for each that it lacks. Needs a Japanese font, as
    // the checks of the pages do.
    let shown = ["帯", "衿", "裾", "お"].map(letter);
    for (index, one) in shown.iter().enumerate() {
        for other in &shown[..index] {
            assert_ne!(one, other, "two letters look the same: boxes?");
        }
    }
}

#[test]
fn a_photo_inside_a_drawing_is_shown() {
    let photo = jpeg(&quarters(80, 80), &[]);
    let whole = image::DynamicImage::ImageRgb8(quarters(80, 80));
    let png = encoded(&whole, ImageFormat::Png);
    for (kind, bytes) in [("jpeg", photo), ("png", png)] {
        for name in ["href", "xlink:href"] {
            let data = base64(&bytes);
            let inside = format!(
                "<image x='10' y='5' width='40' height='40' {name}='data:image/{kind};base64,{data}'/>"
            );
            let picture = drawn(&svg(&inside), 200);
            for (x, y, wanted) in [
                (30, 20, RED),
                (90, 20, GREEN),
                (30, 80, BLUE),
                (15, 20, [255; 3]),
            ] {
                let [red, green, blue, _] = picture.get_pixel(x, y).0;
                assert!(
                    alike([red, green, blue], wanted),
                    "{kind} {name} at {x}, {y}"
                );
            }
        }
    }
}

#[test]
fn no_file_of_the_machine_is_opened_for_a_drawing() {
    let folder = std::env::temp_dir().join(format!("sunbu-drawing-{}", std::process::id()));
    let path = folder.with_extension("png");
    let dark = image::DynamicImage::ImageRgb8(image::RgbImage::new(40, 40));
    std::fs::write(&path, encoded(&dark, ImageFormat::Png)).unwrap();
    let inside = format!("<image width='50' height='50' href='{}'/>", path.display());
    let picture = drawn(&svg(&inside), 100);
    std::fs::remove_file(&path).unwrap();
    assert!(!is_dark(&picture, 20, 20), "the file was shown");
}

#[test]
fn what_is_no_drawing_and_what_has_no_size_is_refused() {
    for text in ["", "no drawing", "<svg", "<html/>"] {
        let refused = png_of_svg(text, 100);
        assert!(
            matches!(refused, Err(SvgError::Unreadable { .. })),
            "{text:?}: {refused:?}"
        );
    }
    let long = "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 1 1000'/>";
    for (text, width) in [(svg(""), 0), (svg(""), 7_017), (long.to_owned(), 100)] {
        let refused = png_of_svg(&text, width).expect_err("no such size");
        assert!(matches!(refused, SvgError::Size { .. }), "{refused:?}");
        assert!(refused.to_string().contains("1 to 7016"), "{refused}");
    }
}

/// RFC 4648 section 4.
fn base64(bytes: &[u8]) -> String {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut text = String::new();
    for three in bytes.chunks(3) {
        let byte = |index: usize| u32::from(three.get(index).copied().unwrap_or_default());
        let bits = byte(0) << 16 | byte(1) << 8 | byte(2);
        for letter in 0..4 {
            text.push(if letter <= three.len() {
                LETTERS[(bits >> (18 - 6 * letter) & 63) as usize] as char
            } else {
                '='
            });
        }
    }
    text
}
