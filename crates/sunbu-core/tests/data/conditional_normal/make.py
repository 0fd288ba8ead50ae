#!/usr/bin/env python3
"""Computes completions by another road than the program, for the tests.

usage: python3 make.py     (needs numpy, scipy; reads data/population/*.toml)

The program conditions by a gain matrix. Here the joint normal distribution of all measures x and
of the readings y = x_t + e is written down and its whole precision matrix inverted: the
covariance of x given y is the inverse of the x block of the precision, and its mean follows from the
cross block. The covariance of the errors is then got from the error of the estimate as a linear
map of (x, e), without any formula of the program.
"""
import json, os, tomllib
import numpy as np
from scipy import linalg

HERE = os.path.dirname(os.path.abspath(__file__))
TABLES = os.path.join(HERE, '../../../../../data/population')

CASES = [
    ('women', {'stature': (158.0, 0.5), 'hip_girth': (91.0, 0.5)}),
    ('women', {'stature': (149.5, 0.5), 'hip_girth': (103.0, 1.5), 'waist_girth': (84.0, 0.5), 'hip_bone_height': (88.0, 2.0)}),
    ('women', {'stature': (171.0, 0.0), 'fullest_girth': (96.0, 0.5), 'bust_girth': (88.0, 0.5), 'back_neck_height': (147.0, 0.5),
               'spine_to_wrist': (76.0, 1.0), 'hand_breadth': (7.4, 0.2)}),
    # a slip of the tape: the waist 9 cm too low
    ('women', {'stature': (158.0, 0.5), 'hip_girth': (91.0, 0.5), 'back_neck_height': (135.0, 0.5), 'waist_height': (89.0, 0.5)}),
    ('men', {'stature': (170.0, 0.5), 'hip_girth': (95.0, 0.5), 'bust_girth': (96.0, 0.5), 'navel_girth': (86.0, 0.5)}),
]


def read(sex):
    with open(os.path.join(TABLES, f'{sex}.toml'), 'rb') as f:
        table = tomllib.load(f)
    keys = [m['key'] for m in table['measure']]
    mean = np.array([m['mean_cm'] + (m.get('shift_cm', 0.0) if table['apply_shift'] else 0.0) for m in table['measure']])
    sd = np.array([m['sd_cm'] for m in table['measure']])
    corr = np.eye(len(keys))
    for i, m in enumerate(table['measure']):
        corr[i, :i] = corr[:i, i] = m['correlation']
    return keys, mean, corr * np.outer(sd, sd)


def complete(sex, taped):
    keys, mean, cov = read(sex)
    at = [keys.index(k) for k in taped]
    y = np.array([taped[k][0] for k in taped])
    noise = np.array([taped[k][1] for k in taped]) ** 2
    n, t = len(keys), len(at)
    pick = np.eye(n)[at]
    # a reading without error would make the joint distribution flat; 1e-12 cm^2 stands for it
    joint = np.block([[cov, cov @ pick.T], [pick @ cov, pick @ cov @ pick.T + np.diag(np.maximum(noise, 1e-12))]])
    precision = linalg.inv(joint)
    x_block, cross = precision[:n, :n], precision[:n, n:]
    pull = -linalg.solve(x_block, cross)  # change of the conditional mean of x per change of y
    estimate = pull.copy()
    estimate[at, :] = np.eye(t)  # a taped measure stands as read
    value = mean + pull @ (y - mean[at])
    value[at] = y
    # error of the estimate as a map of (x - mean, e): estimate (x_t + e) - x
    error = np.hstack([estimate @ pick - np.eye(n), estimate])
    spread = linalg.block_diag(cov, np.diag(noise))
    covariance = error @ spread @ error.T
    return keys, value, covariance


def unlikely(sex, taped):
    """Deviations of each taped value from what the others say."""
    out = {}
    for k in taped:
        rest = {j: v for j, v in taped.items() if j != k}
        keys, value, cov = complete(sex, rest)
        i = keys.index(k)
        out[k] = float((taped[k][0] - value[i]) / np.sqrt(cov[i, i] + taped[k][1] ** 2))
    return out


if __name__ == '__main__':
    cases = []
    for sex, taped in CASES:
        keys, value, cov = complete(sex, taped)
        cases.append({
            'sex': sex, 'taped': {k: list(v) for k, v in taped.items()},
            'value': {k: round(float(v), 9) for k, v in zip(keys, value)},
            'covariance': {f'{a} {b}': round(float(cov[i, j]), 9) for i, a in enumerate(keys) for j, b in enumerate(keys) if j <= i},
            'deviations': {k: round(v, 9) for k, v in unlikely(sex, taped).items()},
        })
    with open(os.path.join(HERE, 'vectors.json'), 'w') as out:
        json.dump(cases, out, indent=0)
        out.write('\n')
    print(len(cases), 'cases')
