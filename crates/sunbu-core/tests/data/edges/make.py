#!/usr/bin/env python3
"""Computes slopes of brightness by another road than the program, for the tests.

usage: python3 make.py     (needs numpy, scipy)

`slopes`: rows of values and their correlation with the derivative of a Gaussian, by
scipy.ndimage.gaussian_filter1d (order 1, mode nearest, cut at four deviations).

`edges`: the place of a blurred step in a row of pixels, each the mean of the step over its width.
The step is the error function of scipy.special, so the picture has its true place and no other.
"""
import json, os
import numpy as np
from scipy import ndimage, special

HERE = os.path.dirname(os.path.abspath(__file__))
rng = np.random.default_rng(20261125)


def slopes():
    rows = [
        np.r_[np.zeros(12), np.ones(12)],
        np.round(rng.uniform(0, 255, 40), 3),
        np.round(60 + 30 * np.sin(np.arange(50) / 4.0), 6),
        np.array([7.0]),
        np.array([3.0, 9.0]),
    ]
    return [
        {'values': row.tolist(), 'deviation': deviation,
         'slopes': ndimage.gaussian_filter1d(row, deviation, order=1, mode='nearest').tolist()}
        for row in rows for deviation in (0.7, 1.2, 2.4, 5.0)
    ]


def integral(x, blur):
    """Of a step of height one at 0, blurred."""
    z = x / (blur * np.sqrt(2))
    return 0.5 * (x + x * special.erf(z) + blur * np.sqrt(2 / np.pi) * np.exp(-z * z))


def edges():
    borders = np.arange(0, 49)
    found = []
    for place in (24.0, 24.13, 23.7, 25.5, 22.41):
        for blur in (0.4, 1.0, 2.0):
            for low, high in ((40, 200), (200, 40), (90, 110)):
                share = np.diff(integral(borders - place, blur))
                row = np.clip(np.round(low + (high - low) * share), 0, 255).astype(int)
                found.append({'place': place, 'blur': blur, 'step': abs(high - low), 'pixels': row.tolist()})
    return found


with open(os.path.join(HERE, 'vectors.json'), 'w') as out:
    json.dump({'slopes': slopes(), 'edges': edges()}, out, separators=(',', ':'))
    out.write('\n')
