#!/usr/bin/env python3
"""Reduces the full reference bodies (hull outlines every 10 mm) to what the tests compare.

usage: python3 reduce.py FOLDER_OF_FULL_BODIES     (needs numpy)

Writes NAME.json beside this script, in centimetres. Of every hull section: girth, breadth, front
and back extent from the body's side-to-side axis, and on the left half the arc from the centre
back to the side line, twice: to the middle of the band that lies within SIDE_BAND_CM of the
outermost point, and to the outermost vertex itself; and the arc width of that band.
"""
import json, os, sys
import numpy as np

SIDE_BAND_CM = 0.3  # what neither a hand nor an eye tells apart from the outermost


def section(raw):
    """Arcs run on the closed outline; x to the right, y forward, counter-clockwise from the front."""
    p = np.array(raw['hull']) / 10.0
    q = np.roll(p, -1, axis=0)
    length = np.hypot(*(q - p).T)
    cum = np.r_[0.0, np.cumsum(length)]
    girth = cum[-1]
    x, y = p[:, 0], p[:, 1]
    # centre back: where the outline crosses x = 0 going to the right, behind the middle
    mid = 0.5 * (y.max() + y.min())
    for i in range(len(p)):
        j = (i + 1) % len(p)
        if x[i] <= 0.0 < x[j] and y[i] < mid:
            back = cum[i] + length[i] * (0.0 - x[i]) / (x[j] - x[i])
            break
    # the left half is run through after the front and before the centre back
    edge = x.min() + SIDE_BAND_CM
    at = lambda i, j: cum[i] + length[i] * (edge - x[i]) / (x[j] - x[i])
    start = next(at(i, i + 1) for i in range(len(p) - 1) if x[i] > edge >= x[i + 1])
    end = next(at(i, i + 1) for i in range(len(p) - 1) if x[i] <= edge < x[i + 1])
    outermost = np.where(x <= x.min() + 1e-9)[0]
    return {
        'girth': girth, 'breadth': x.max() - x.min(), 'front': y.max(), 'back': -y.min(),
        'side_arc': back - 0.5 * (start + end), 'side_arc_outermost': back - cum[outermost].mean(),
        'side_band': end - start,
    }


def reduce(full):
    lv, lm = full['levels'], full['landmarks']
    ridge = np.array(full['shoulder_ridge_x_y_z'])
    z = lambda level: lv[level]['z'] / 10.0
    girth = lambda level: lv[level]['girth'] / 10.0
    measures = {
        'stature': full['stature'] / 10.0,
        'back_neck_height': lm['c7'][2] / 10.0,
        # side neck point: on the shoulder ridge 6 cm from the middle, half the neck's breadth there
        'side_neck_height': float(np.interp(60.0, ridge[:, 0], ridge[:, 2])) / 10.0,
        'shoulder_height': lm['acromion_R'][2] / 10.0,
        'bust_height': z('bust_point'), 'under_bust_height': z('underbust'), 'waist_height': z('waist_min'),
        'navel_height': z('navel'),
        # the front point of the hip bone, as far below the crest as data/population/make_tables.py has it
        'hip_bone_height': z('iliocristale_est') - 8.7,
        'hip_height': z('buttock_protrusion'),
        'crotch_height': lm['crotch'][2] / 10.0, 'knee_height': lm['knee_joint_z'] / 10.0,
        'ankle_height': lm['ankle_joint_z'] / 10.0,
        'bust_girth': girth('bust_point'), 'under_bust_girth': girth('underbust'), 'waist_girth': girth('waist_min'),
        'navel_girth': girth('navel'), 'hip_girth': girth('buttock_protrusion'), 'fullest_girth': girth('hip_max'),
        'spine_to_wrist': full['yuki_45deg']['tape_over_shoulder_point'] / 10.0,
    }
    sections = [dict(z=s['z'] / 10.0, **section(s)) for s in full['sections']]
    keys = list(sections[0])
    return {
        'name': full['name'], 'kind': full['kind']['kind'], 'unit': 'cm',
        'measures': {k: round(v, 2) for k, v in measures.items()},
        'sections': {k: [round(s[k], 2) for s in sections] for k in keys},
    }


if __name__ == '__main__':
    here = os.path.dirname(os.path.abspath(__file__))
    for file in sorted(os.listdir(sys.argv[1])):
        if file.endswith('.json'):
            body = reduce(json.load(open(os.path.join(sys.argv[1], file))))
            with open(os.path.join(here, body['name'] + '.json'), 'w') as out:
                json.dump(body, out, separators=(',', ':'))
                out.write('\n')
            print(body['name'])
