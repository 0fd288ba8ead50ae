#!/usr/bin/env python3
"""Keeps, of the full moments of the survey, the measures the tables are made from.

usage: python3 reduce.py women_moments.json men_moments.json     (needs numpy)
"""
import json, os, sys
import numpy as np

KEEP = """stature cervicaleheight acromialheight chestheight tenthribheight waistheightomphalion iliocristaleheight
buttockheight crotchheight kneeheightmidpatella lateralmalleolusheight neckcircumferencebase chestcircumference
waistcircumference buttockcircumference biacromialbreadth acromionradialelength radialestylionlength handlength
handbreadth palmlength""".split()

here = os.path.dirname(os.path.abspath(__file__))
for path in sys.argv[1:]:
    full = json.load(open(path))
    at = [full['names'].index(k) for k in KEEP]
    cov = np.array(full['cov'])[np.ix_(at, at)]
    small = {'source': full['source'], 'sex': full['sex'], 'n': full['n'], 'unit': 'mm', 'names': KEEP,
             'mean': [full['mean'][i] for i in at], 'cov': cov.tolist()}
    with open(os.path.join(here, f"ansur_{full['sex']}.json"), 'w') as out:
        json.dump(small, out, separators=(',', ':'))
        out.write('\n')
