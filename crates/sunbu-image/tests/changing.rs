//! Parts of a picture are cut out, made soft, or hidden for good.

mod support;

use image::RgbImage;
use sunbu_image::{Area, Picture};
use support::*;

fn picture(drawn: &RgbImage) -> Picture {
    Picture::from_rgb([drawn.width(), drawn.height()], drawn.as_raw().clone()).expect("a picture")
}

/// Fine noise, in which anything that was left would be seen.
fn noise() -> Picture {
    picture(&RgbImage::from_fn(128, 96, |x, y| {
        let mixed = (x * 7_919 + y * 104_729).wrapping_mul(2_654_435_761);
        let [a, b, c, _] = mixed.to_be_bytes();
        image::Rgb([a, b, c])
    }))
}

fn at(picture: &Picture, x: u32, y: u32) -> [u8; 3] {
    let index = 3 * (y * picture.size()[0] + x) as usize;
    let rgb = &picture.rgb()[index..];
    [rgb[0], rgb[1], rgb[2]]
}

const PART: Area = Area {
    left: 30,
    top: 20,
    width: 41,
    height: 33,
};

fn is_in_part(x: u32, y: u32) -> bool {
    (30..71).contains(&x) && (20..53).contains(&y)
}

#[test]
fn what_is_hidden_does_not_depend_on_what_was_there() {
    let mut one = noise();
    let mut other = picture(&RgbImage::from_fn(128, 96, |x, y| {
        if is_in_part(x, y) {
            image::Rgb(RED)
        } else {
            image::Rgb(at(&noise(), x, y))
        }
    }));
    assert_ne!(one, other);
    one.hide(PART, [30; 3]);
    other.hide(PART, [30; 3]);
    assert_eq!(one, other);
    assert_eq!(one.to_jpeg(), other.to_jpeg(), "nor what is written");
    for y in 0..96 {
        for x in 0..128 {
            let wanted = if is_in_part(x, y) {
                [30; 3]
            } else {
                at(&noise(), x, y)
            };
            assert_eq!(at(&one, x, y), wanted, "{x}, {y}");
        }
    }
}

#[test]
fn a_soft_part_keeps_its_mean_and_loses_its_detail_and_the_rest_stays() {
    let before = noise();
    let mut after = before.clone();
    after.blur(PART);
    // Sum, and sum of the steps from pixel to pixel, of the red in the part.
    let told = |picture: &Picture| {
        let (mut sum, mut steps) = (0.0, 0.0);
        for y in 20..53 {
            for x in 30..70 {
                let [here, next] = [x, x + 1].map(|x| f64::from(at(picture, x, y)[0]));
                sum += here;
                steps += (next - here).abs();
            }
        }
        (sum / (40.0 * 33.0), steps / (40.0 * 33.0))
    };
    let ((mean, steps), (soft_mean, soft_steps)) = (told(&before), told(&after));
    assert!((mean - soft_mean).abs() < 4.0, "{soft_mean} against {mean}");
    assert!(soft_steps < 0.1 * steps, "{soft_steps} against {steps}");
    for y in 0..96 {
        for x in (0..128).filter(|&x| !is_in_part(x, y)) {
            assert_eq!(at(&after, x, y), at(&before, x, y), "{x}, {y}");
        }
    }
}

#[test]
fn a_part_has_its_own_size_and_no_focal_length() {
    let exif = Exif {
        exif: vec![(FOCAL_ON_FILM, Value::Short(26))],
        ..Exif::default()
    };
    let whole = Picture::read(&jpeg_with_exif(&quarters(128, 96), &exif)).unwrap();
    assert!(whole.focal().is_some());
    let part = whole.crop(PART).unwrap();
    assert_eq!((part.size(), part.focal()), ([41, 33], None));
    assert_eq!(at(&part, 3, 4), at(&whole, 33, 24));
}

#[test]
fn an_area_counts_as_far_as_it_lies_in_the_picture() {
    let beyond = Area {
        left: 100,
        top: 90,
        width: u32::MAX,
        height: u32::MAX,
    };
    let outside = Area {
        left: 128,
        ..beyond
    };
    let nothing = Area { width: 0, ..PART };
    let before = noise();
    assert_eq!(before.crop(beyond).unwrap().size(), [28, 6]);
    let mut after = before.clone();
    for area in [outside, nothing] {
        assert_eq!(before.crop(area), None);
        after.hide(area, RED);
        after.blur(area);
        assert_eq!(after, before);
    }
    after.hide(beyond, RED);
    assert_eq!(
        (at(&after, 127, 95), at(&after, 99, 95)),
        (RED, at(&before, 99, 95))
    );
    after.blur(Area { width: 1, ..PART });
}
