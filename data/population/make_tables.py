#!/usr/bin/env python3
"""Makes women.toml and men.toml from source/ and from the reference bodies.

usage: python3 data/population/make_tables.py     (needs numpy)

The survey's own measures are taken over with their means and covariance. Measures it has not
are written as a linear rule of those it has plus a residual that is independent of everything
else: d = a + B x + e. Mean and covariance of the larger set then follow exactly:
mean_d = a + B mean_x, cov(d, x) = B cov_x, cov(d, d) = B cov_x B' + diag(sd_e^2).
"""
import glob, json, os
import numpy as np

HERE = os.path.dirname(os.path.abspath(__file__))
BODIES = os.path.join(HERE, '../../crates/sunbu-core/tests/data/bodies/*.json')
SURVEY = 'survey'

# key -> (rule as {survey or earlier key: factor}, constant, residual sd in cm, source)
# A rule of one survey measure with factor 1 and no residual is the measure itself.
def own(name, said):
    return ({name: 1.0}, 0.0, 0.0, said)


def rules(sex, fit):
    ub_a, ub_bust, ub_navel = fit['under_bust_girth']
    w_a, w_navel, w_ub = fit['waist_girth']
    f_a, f_hip = fit['fullest']
    men = sex == 'men'
    under_bust = ({'bust_girth': 0.95}, 0.0, 2.5, 'under the chest about 95 % of the chest: from memory, no source') if men else \
        ({'bust_girth': ub_bust, 'navel_girth': ub_navel}, ub_a, 2.5,
         'regression on the 17 reference bodies (leave-one-out error 1.8); 2.5 chosen, since those bodies share one shape of breast')
    return {
        'stature': own('stature', 'ANSUR II stature'),
        'back_neck_height': own('cervicaleheight', 'ANSUR II cervicale height'),
        'side_neck_height': ({'back_neck_height': 1.0}, fit['side_neck'], 0.5,
            'back neck plus the mean gap of the 17 reference bodies, 6 cm from the middle on the shoulder ridge (spread 0.2); 0.5 chosen, as the point is found by feel'),
        'shoulder_height': own('acromialheight', 'ANSUR II acromial height'),
        'bust_height': own('chestheight', 'ANSUR II chest height (at the bust point)'),
        'under_bust_height': ({'bust_height': 1.0}, -fit['under_bust_gap'], 1.0,
            'bust height less the mean gap of the 17 reference bodies (spread 0.7); 1.0 chosen'),
        'waist_height': ({'tenthribheight': 0.5, 'iliocristaleheight': 0.5}, 0.0, 1.0,
            'midway between lowest rib and hip bone, as ISO 8559-1 defines the waist (from memory): ANSUR II tenth rib and iliocristale heights; residual 1.0 chosen'),
        'navel_height': own('waistheightomphalion', 'ANSUR II waist height at the navel (omphalion)'),
        'hip_bone_height': ({'iliocristaleheight': 1.0}, -8.7, 1.5,
            'ANSUR II iliocristale height less 8.7: the hip bone that a dresser feels is its point in front, not the crest at the side; her 88 at stature 160 with the navel at 95.5 (worked example, docs/model.md) gives the gap; residual chosen'),
        'hip_height': own('buttockheight', 'ANSUR II buttock height (greatest prominence)'),
        'crotch_height': own('crotchheight', 'ANSUR II crotch height'),
        'knee_height': own('kneeheightmidpatella', 'ANSUR II knee height, mid-patella'),
        'ankle_height': own('lateralmalleolusheight', 'ANSUR II lateral malleolus height'),
        'neck_base_girth': own('neckcircumferencebase', 'ANSUR II neck circumference, base'),
        'bust_girth': own('chestcircumference', 'ANSUR II chest circumference (over the bust points)'),
        'navel_girth': own('waistcircumference', 'ANSUR II waist circumference at the navel'),
        'under_bust_girth': under_bust,
        'waist_girth': ({'navel_girth': w_navel, 'under_bust_girth': w_ub}, w_a, 3.0 if men else 2.0,
            'regression on the 17 reference bodies, all women (leave-one-out error 1.5); residual chosen wider'),
        'hip_girth': own('buttockcircumference', 'ANSUR II buttock circumference'),
        'fullest_girth': ({'hip_girth': 1.0 + f_hip}, f_a, 0.5,
            'regression on the 17 reference bodies, all women (leave-one-out error 0.22); 0.5 chosen, since bellies differ more than theirs'),
        'shoulder_breadth': own('biacromialbreadth', 'ANSUR II biacromial breadth'),
        'spine_to_wrist': ({'biacromialbreadth': 0.5, 'acromionradialelength': 1.0, 'radialestylionlength': 1.0}, fit['wrist'], 1.0,
            'half the shoulder breadth plus upper and fore arm (ANSUR II), less a constant that meets the 17 reference bodies with the arm lowered 45 degrees; residual 1.0 chosen'),
        'hand_length': own('handlength', 'ANSUR II hand length'),
        'hand_breadth': own('handbreadth', 'ANSUR II hand breadth'),
        'index_finger_length': ({'handlength': 1.0, 'palmlength': -1.0}, -0.68, 0.3,
            'ANSUR II hand less palm length is the middle finger; the index finger is 0.68 shorter by regressions on AIST 1991-92 data at stature 158; residual chosen'),
        'finger_breadth': ({'hand_breadth': 0.227}, 0.0, 0.08,
            'four fingers at the middle joint 6.75 for a hand 7.44 broad (mean of 203 women, AIST 2012; the four fingers from memory), a quarter of it'),
    }


# At equal stature, weight and girths, women of the survey who called themselves Asian differ from
# the regression by these; only the first four and the crotch are measured, the rest follow from them.
SHIFT = {
    'navel_height': (-1.2, 'measured on 71 women of the survey'),
    'hip_bone_height': (-1.5, 'measured on 71 women of the survey'),
    'waist_height': (-1.2, 'chosen: the waist rides on navel and hip bone'),
    'crotch_height': (-2.0, 'measured on 71 women of the survey'),
    'spine_to_wrist': (-1.3, 'measured on 71 women of the survey, on the bent arm'),
}

ORDER = """stature back_neck_height side_neck_height shoulder_height bust_height under_bust_height waist_height navel_height
hip_bone_height hip_height crotch_height knee_height ankle_height neck_base_girth bust_girth under_bust_girth waist_girth
navel_girth hip_girth fullest_girth shoulder_breadth spine_to_wrist hand_length hand_breadth index_finger_length
finger_breadth""".split()


def reference_fits():
    bodies = [json.load(open(p))['measures'] for p in sorted(glob.glob(BODIES))]
    m = {k: np.array([b[k] for b in bodies]) for k in bodies[0]}
    ols = lambda y, *xs: np.linalg.lstsq(np.c_[np.ones(len(y)), *xs], y, rcond=None)[0]
    women = json.load(open(os.path.join(HERE, 'source/ansur_women.json')))
    mean = dict(zip(women['names'], np.array(women['mean']) / 10.0))
    # arm and shoulder of the survey scale with stature closely enough to place the constant
    arm = (0.5 * mean['biacromialbreadth'] + mean['acromionradialelength'] + mean['radialestylionlength']) / mean['stature']
    return {
        'side_neck': float(np.mean(m['side_neck_height'] - m['back_neck_height'])),
        'under_bust_gap': float(np.mean(m['bust_height'] - m['under_bust_height'])),
        'under_bust_girth': ols(m['under_bust_girth'], m['bust_girth'], m['navel_girth']),
        'waist_girth': ols(m['waist_girth'], m['navel_girth'], m['under_bust_girth']),
        'fullest': ols(m['fullest_girth'] - m['hip_girth'], m['hip_girth']),
        'wrist': float(np.mean(m['spine_to_wrist'] - arm * m['stature'])) - SHIFT['spine_to_wrist'][0],
    }


def table(sex, fit):
    s = json.load(open(os.path.join(HERE, f'source/ansur_{sex}.json')))
    mean, cov = np.array(s['mean']) / 10.0, np.array(s['cov']) / 100.0
    names = list(s['names'])
    spec, out = rules(sex, fit), []
    for key, (rule, constant, sd, said) in spec.items():
        if len(rule) == 1 and sd == 0.0:
            row = np.eye(len(names))[names.index(next(iter(rule)))]
        else:
            row = np.zeros(len(names))
            for k, factor in rule.items():
                row[names.index(k)] += factor
        mean = np.append(mean, constant + row @ mean)
        cross = cov @ row
        cov = np.block([[cov, cross[:, None]], [cross[None, :], np.array([[row @ cross + sd * sd]])]])
        # a measure just added can be named by a later rule; a survey name never equals a key except stature's
        names.append(key if key not in names else key + '*')
        out.append(said)
    at = [names.index(k + '*') if k + '*' in names else names.index(k) for k in ORDER]
    sds = np.sqrt(np.diag(cov))[at]
    corr = cov[np.ix_(at, at)] / np.outer(sds, sds)
    said = {k: spec[k][3] for k in ORDER}
    return s, mean[at], sds, corr, said


def write(sex, fit):
    s, mean, sds, corr, said = table(sex, fit)
    lines = [
        '# Means, deviations and correlations of body measures. Made by make_tables.py; edit that, not this.',
        '',
        f'name = "{"Women" if sex == "women" else "Men"} of the 2012 US Army survey, proportions shifted"',
        f'sex = "{sex}"',
        'source = "ANSUR II, public release of the 2012 anthropometric survey of US Army personnel, technical report NATICK/TR-15/007"',
        f'people = {s["n"]}',
        'note = "Soldiers, younger and fitter than most clients; girths above all are to be taped, not completed."',
        '# Whether shift_cm is added to the means. Yes, because most who are dressed in kimono are Japanese and the shifts',
        '# bring navel, hip bone and crotch to where the bodies of the Japanese size table have them.',
        'apply_shift = true',
    ]
    for i, key in enumerate(ORDER):
        lines += ['', '[[measure]]', f'key = "{key}"', f'mean_cm = {mean[i]:.4f}', f'sd_cm = {sds[i]:.4f}']
        if key in SHIFT:
            lines += [f'shift_cm = {SHIFT[key][0]}', f'shift_source = "{SHIFT[key][1]}"']
        lines += [f'source = "{said[key]}"', '# with the measures above, in their order',
                  f'correlation = [{", ".join(f"{v:.6f}" for v in corr[i, :i])}]']
    with open(os.path.join(HERE, f'{sex}.toml'), 'w') as out:
        out.write('\n'.join(lines) + '\n')


if __name__ == '__main__':
    fit = reference_fits()
    for sex in ('women', 'men'):
        write(sex, fit)
