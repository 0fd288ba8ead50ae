#[path = "../tests/support/cases.rs"]
mod cases;
use cases::*;
use std::time::Instant;
use sunbu_core::body::Sex;
use sunbu_core::dressing::*;

fn main() {
    let people = People::of(Sex::Women);
    let mut right = 0; let mut rival = 0; let mut second = 0; let mut n = 0; let mut total_ms = 0.0; let mut worst: f64 = 0.0;
    let mut amounts = vec![]; let mut sizes = [0usize; 8]; let mut left = 0; let mut corr=0;
    let verbose = std::env::args().nth(1).is_some();
    for seed in 0..1000u64 {
        let random = &mut Random::of(seed);
        let (body, garment, rules) = case(&people, random);
        let fitting = Fitting::new(&body, &garment);
        let planned = plan(&fitting, &rules, &Locks::new()).dressing;
        let photo: Vec<Quantity> = Quantity::ALL.iter().copied().filter(|&q| Sight::of(q).is_photo()).collect();
        let sds: Vec<f64> = photo.iter().map(|&q| usual_sd(q)).collect();
        let seen0 = predict(&fitting, &planned);
        let base = Observed::independent(photo.iter().zip(&sds).map(|(&q, &sd)| (q, seen0.get(q), sd))).unwrap();
        let shown = diagnose(&fitting, &rules, &planned, &base).shown;
        let can: Vec<&Shown> = shown.iter().filter(|s| s.can_be_told).collect();
        if seed == 0 { for s in &shown { println!("{:20} {:.2} hands {:.2} {}", s.decision.key(), s.tolerance, rules.way(s.decision).hands, s.can_be_told); } }
        let k = 1 + (random.unit() * 3.0) as usize;
        let mut wrong: Vec<Decision> = vec![];
        while wrong.len() < k { let d = can[(random.unit() * can.len() as f64) as usize].decision; if !wrong.contains(&d) { wrong.push(d); } }
        let done = Dressing::from_fn(|d| {
            let way = rules.way(d); let p = planned.get(d); let tol = shown[d.index()].tolerance;
            if wrong.contains(&d) {
                let up = way.high - p; let down = p - way.low;
                let ups = up > tol; let downs = down > tol;
                let sign = if ups && downs { if random.unit() < 0.5 {1.0} else {-1.0} } else if ups {1.0} else {-1.0};
                let room = if sign > 0.0 {up} else {down};
                let far = room.min(tol + 2.0 * way.spread);
                p + sign * random.between(tol, far)
            } else {
                let lim = 1.96 * way.hands;
                loop { let e = way.hands * random.normal(); if e.abs() < lim { break (p + e).clamp(way.low, way.high) } }
            }
        });
        // givens
        let c = nalgebra::DMatrix::from_fn(Given::COUNT, Given::COUNT, |i, j| fitting.covariance(Given::ALL[i], Given::ALL[j]) + if i == j {1e-8} else {0.0});
        let root = c.cholesky().unwrap().l();
        let z = nalgebra::DVector::from_fn(Given::COUNT, |_, _| random.normal());
        let off = root * z;
        let mut real = fitting.clone();
        for &g in Given::ALL { real = real.with(g, fitting.value(g) + off[g.index()]); }
        let seen = predict(&real, &done);
        let obs = Observed::independent(photo.iter().zip(&sds).map(|(&q, &sd)| (q, seen.get(q) + sd * random.normal(), sd))).unwrap();
        let start = Instant::now();
        let diag = diagnose(&fitting, &rules, &planned, &obs);
        let ms = start.elapsed().as_secs_f64() * 1e3; total_ms += ms; worst = worst.max(ms);
        let mut want = wrong.clone(); want.sort();
        let mut got: Vec<Decision> = diag.causes.iter().map(|c| c.decision).collect(); got.sort();
        n += 1;
        if let Some(c) = &diag.correction { corr += 1; sizes[c.changes.len().min(7)] += 1; if !c.left.is_empty() { left += 1; } }
        let doubt_sets: Vec<Vec<Decision>> = diag.doubts.iter().map(|d| { let mut v: Vec<_> = d.causes.iter().map(|c| c.0).collect(); v.sort(); v }).collect();
        if got == want { right += 1; for c in &diag.causes { amounts.push((c.amount - (done.get(c.decision) - planned.get(c.decision))).abs()); } }
        else if doubt_sets.first() == Some(&want) { second += 1; }
        else if doubt_sets.contains(&want) { rival += 1; }
        else if verbose {
            let f = |v: &Vec<Decision>| v.iter().map(|d| d.key()).collect::<Vec<_>>().join("+");
            println!("seed {seed} want {} got {} p {:.2} doubts {:?}", f(&want), f(&got), diag.probability, doubt_sets.iter().map(f).collect::<Vec<_>>());
            for d in &want { println!("   {} amount {:.2} tol {:.2}", d.key(), done.get(*d)-planned.get(*d), shown[d.index()].tolerance); }
            for d in got.iter().filter(|d| !want.contains(d)) { println!("   spurious {} amount {:.2} tol {:.2} est {:.2}", d.key(), done.get(*d)-planned.get(*d), shown[d.index()].tolerance, diag.causes.iter().find(|c| c.decision==*d).unwrap().amount); }
        }
    }
    amounts.sort_by(f64::total_cmp);
    println!("right {right} second {second} rival {rival} none {} of {n}; amount median {:.2} p95 {:.2}", n - right - second - rival, amounts[amounts.len()/2], amounts[amounts.len()*95/100]);
    println!("ms mean {:.2} worst {:.2}; corrections {corr} sizes {sizes:?} left {left}", total_ms / n as f64, worst);
}
