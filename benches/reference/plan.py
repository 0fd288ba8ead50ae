"""The planner's least-squares problem, solved by a general solver.

The benchmarks run this beside the planner:

    python3 benches/reference/plan.py QUESTIONS.json ANSWERS.json

It knows the dressing model from docs/model.md and has no code in common with the planner. Of the
body it is told a fine table: girth of the hull and arc of its side line against height. For every
case it says

- what is seen of some given dressings, and the objective there: an independent check of the model;
- the optimum that scipy.optimize.least_squares finds from the same start within the same limits,
  and how long that took.

Lengths are centimetres, times milliseconds. Needs numpy and scipy.
"""

import json
import math
import multiprocessing
import os
import platform
import statistics
import sys
import time

# One thread for linear algebra: for matrices of this size more of them only get in each other's way.
for _variable in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_variable, "1")

import numpy as np
import scipy
from scipy.optimize import least_squares

# docs/model.md, "Plan": weight of an inexact aim, and of the pull toward the usual way.
CENTRE = 0.02
PULL = 0.02

# docs/model.md, "What is left of a raise".
RAISE_KEPT = {"soft": 12 / 25, "cotton": 12 / 16, "stiff": 1.0}

# docs/model.md, "Lengths": seam allowance at the neck, 3 bu kujira; 1 bu kujira is 25/66 cm.
NECK_SEAM = 3 * 25 / 66

# In this order the decisions are taken apart below.
DECISIONS = (
    "hem_height",
    "uwamae_raise",
    "shitamae_raise",
    "shitamae_fold_back",
    "back_seam_hip",
    "back_seam_top",
    "koshihimo_back",
    "koshihimo_front",
    "take_up_front",
    "take_up_right",
    "take_up_back",
    "nape_drop",
    "juban_overlap",
    "kimono_overlap",
    "obi_lower_edge",
    "drum_height",
    "tare_length",
    "obiage_show",
    "waist_padding",
    "hip_padding",
)


class Hull:
    """Girth and side arc of the bare hull against height, straight between close rows."""

    def __init__(self, table):
        rows = len(table["girth"])
        self.height = table["lowest"] + table["step"] * np.arange(rows)
        self.girth = np.array(table["girth"])
        self.side_arc = np.array(table["side_arc"])

    def at(self, height, growth, thickness):
        """Girth and side arc at a height, grown by a factor, under layers of a thickness."""
        girth = np.interp(height, self.height, self.girth)
        side_arc = np.interp(height, self.height, self.side_arc)
        # A convex curve's parallel is longer by 2 pi t; a quarter of that turns before the side.
        return (
            growth * girth + 2 * math.pi * thickness,
            growth * side_arc + 0.5 * math.pi * thickness,
        )


def collar(half_neck, half_overlap, fall):
    """Drop of the crossing, height of the triangle below it, sine of the collar's lean."""
    across = half_neck + half_overlap
    drop = half_neck * fall / across
    return drop, fall - drop, across / (across**2 + fall**2) ** 0.5


class Case:
    """One person in one garment, with what is wanted."""

    def __init__(self, case, hulls):
        self.given = case["given"]
        self.hull = hulls[case["hull"]]
        self.kept = RAISE_KEPT[case["cloth"]]
        self.from_shoulder = case["mitake_from"] == "shoulder"
        hip_girth, _ = self.hull.at(self.given["hip_height"], 1.0, 0.0)
        self.growth = self.given["hip_girth"] / hip_girth

        ways = [case["ways"][key] for key in DECISIONS]
        self.usual = np.array([way["usual"] for way in ways])
        self.starts = [in_order(start) for start in case["starts"]]
        self.low = np.array([way["low"] for way in ways])
        self.high = np.array([way["high"] for way in ways])
        self.pull = math.sqrt(PULL) / np.array([way["spread"] for way in ways])

        targets = case["targets"]
        self.wanted = [target["quantity"] for target in targets]
        bound = lambda target, end, none: none if target[end] is None else target[end]
        self.least = np.array([bound(t, "low", -math.inf) for t in targets])
        self.most = np.array([bound(t, "high", math.inf) for t in targets])
        weight = np.array([target["weight"] for target in targets])
        self.miss_weight = np.sqrt(weight)
        half_width = 0.5 * (self.most - self.least)
        self.ranged = np.flatnonzero(np.isfinite(half_width) & (half_width > 0))
        self.middle = 0.5 * (self.least + self.most)[self.ranged]
        self.aim_weight = np.sqrt(CENTRE * weight[self.ranged]) / half_width[self.ranged]

    def appearance(self, dressing):
        """What is seen, by name. Each decision is a number, or an array of many."""
        given = self.given
        (
            hem,
            outer_raise,
            inner_raise,
            folded_back,
            seam,
            seam_top,
            tie_back,
            tie_front,
            up_front,
            up_right,
            up_back,
            nape_drop,
            juban_overlap,
            kimono_overlap,
            obi_front,
            drum,
            tare,
            obiage,
            waist_padding,
            hip_padding,
        ) = dressing
        outer = self.kept * outer_raise
        inner = self.kept * inner_raise

        # Widths.
        b, f = given["ushirohaba"], given["maehaba"]
        o, o_end, t = given["okumihaba"], given["aizumahaba"], given["erishita"]
        thickness = given["layers"] + hip_padding
        collar_end = t + outer + hem
        end_girth, end_side = self.hull.at(collar_end, self.growth, thickness)
        hip_girth, _ = self.hull.at(given["hip_height"], self.growth, thickness)
        end_girth = end_girth + given["hull_girth_error"]
        end_side = end_side + given["side_arc_error"]
        width = b + f + o_end
        hip_above_hem = given["hip_height"] - hem
        okumi = o + (o_end - o) * np.minimum(hip_above_hem / t, 1.0)
        hem_loop = hip_girth / (1.0 + 2.0 * outer * hip_above_hem / (b + f + o) ** 2)

        # Lengths: the three balances.
        k = given["kurikoshi"]
        over_neck = k + NECK_SEAM
        shoulder = given["mitake"] + (0.0 if self.from_shoulder else over_neck)
        setback = nape_drop + given["ridge_to_nape"] - k
        cloth_back = (
            (shoulder - over_neck)
            + hem
            - (given["back_neck_height"] - nape_drop)
            - given["back_rounding"]
        )
        # The front edge's raise falls on the centre front by its share of the way from the side seam.
        share = (0.5 * hip_girth - (seam + b)) / (f + o_end)
        cloth_front = (
            shoulder
            - setback
            + (hem + outer * share)
            - (given["side_neck_height"] + given["bust_rounding"])
        )
        half_neck = given["neck_base_girth"] / (2 * math.pi)
        fall = given["side_neck_height"] - collar_end
        reach = seam + width - 0.5 * hip_girth + half_neck
        slant = f + o_end - b + given["erikata_aki"]
        cloth_right = (
            ((shoulder - t) ** 2 + slant**2) ** 0.5
            - setback
            - (fall**2 + reach**2) ** 0.5
            - given["bust_rounding"]
        )

        # The fold.
        obi_right = obi_front + 0.5 * given["obi_rise"]
        obi_back = obi_front + given["obi_rise"]
        tie_right = 0.5 * (tie_back + tie_front)
        fold_front = obi_front - tie_front + 0.5 * (cloth_front - up_front)
        fold_right = obi_right - tie_right + 0.5 * (cloth_right - up_right)
        fold_back = obi_back - tie_back + 0.5 * (cloth_back - up_back)

        # Collars.
        chest_tie = given["under_bust_height"] - given["chest_tie_drop"]
        to_tie = given["side_neck_height"] - chest_tie
        juban_drop, juban_hold, juban_lean = collar(half_neck, juban_overlap, to_tie)
        kimono_drop, kimono_hold, kimono_lean = collar(half_neck, kimono_overlap, to_tie)

        waist = given["waist_girth"] + 2 * math.pi * (given["layers"] + waist_padding)
        return {
            "hem_back": hem,
            "uwamae_corner": hem + outer,
            "shitamae_above_uwamae": inner - outer,
            "hem_taper": hip_girth - hem_loop,
            "hem_loop": hem_loop,
            "front_cover": (end_girth - end_side) - (seam + width),
            "inner_cover": (b + f + okumi) - folded_back - seam - 0.5 * hip_girth,
            "wrap_ease": 2 * b + f + o_end - hip_girth,
            "back_seam_hip": seam,
            "back_seam_top": seam_top,
            "back_seam_bend": seam - seam_top,
            "koshihimo_over_hip_bone": tie_back - given["hip_bone_height"],
            "koshihimo_slope": tie_back - tie_front,
            "collar_end_clearance": tie_right - collar_end,
            "collar_end_visible": obi_right - fold_right - collar_end,
            "fold_front": fold_front,
            "fold_right": fold_right,
            "fold_back": fold_back,
            "fold_slant": fold_right - fold_front,
            "cloth_front": cloth_front,
            "cloth_right": cloth_right,
            "cloth_back": cloth_back,
            "bulk_front": up_front,
            "bulk_right": up_right,
            "bulk_back": up_back,
            "nape_drop": nape_drop,
            "ridge_setback": setback,
            "juban_crossing": juban_drop - given["throat_drop"],
            "juban_show": (kimono_drop - juban_drop) * kimono_lean,
            "juban_hold": juban_hold,
            "kimono_hold": kimono_hold,
            "obi_over_hip_bone": obi_front - given["hip_bone_height"],
            "trunk_step": hip_girth - waist,
            "sleeve_short": given["spine_to_wrist"] - given["yuki"],
            "drum_height": drum,
            "tare_length": tare,
            "obiage_show": obiage,
        }

    def residuals(self, dressing):
        """What is squared and summed: misses, inexact aims, and the pull to the usual way."""
        seen = self.appearance(dressing.tolist())
        wanted = np.array([seen[quantity] for quantity in self.wanted])
        miss = wanted - np.minimum(np.maximum(wanted, self.least), self.most)
        return np.concatenate(
            (
                self.miss_weight * miss,
                self.aim_weight * (wanted[self.ranged] - self.middle),
                self.pull * (dressing - self.usual),
            )
        )

    def jacobian(self, dressing):
        """Forward differences of the residuals, all columns in one call of the model."""
        step = 1e-7
        moved = dressing[:, None] + step * np.eye(len(dressing))
        columns = np.column_stack((dressing, moved))
        seen = self.appearance(columns)
        count = columns.shape[1]
        wanted = np.array([np.broadcast_to(seen[q], (count,)) for q in self.wanted])
        miss = wanted - np.clip(wanted, self.least[:, None], self.most[:, None])
        squared = np.vstack(
            (
                self.miss_weight[:, None] * miss,
                self.aim_weight[:, None] * (wanted[self.ranged] - self.middle[:, None]),
                self.pull[:, None] * (columns - self.usual[:, None]),
            )
        )
        return (squared[:, 1:] - squared[:, :1]) / step

    def objective(self, dressing):
        """Sum of the squared residuals."""
        residuals = self.residuals(np.asarray(dressing))
        return float(residuals @ residuals)

    def solve(self, method, one_call):
        """The best of the optima from the starts, within the limits, and all evaluations."""
        found = [
            least_squares(
                self.residuals,
                start,
                jac=self.jacobian if one_call else "2-point",
                bounds=(self.low, self.high),
                method=method,
            )
            for start in self.starts
        ]
        best = min(found, key=lambda one: one.cost)
        return best, sum(one.nfev for one in found)


def in_order(dressing):
    """A dressing of the questions, by name, as an array in the order used here."""
    return np.array([dressing[key] for key in DECISIONS])


# What a general user writes first; then the same with all differences of the Jacobian taken in one
# call of the model on arrays; then that with the library's quickest method, which often ends early.
SOLVERS = (
    {"name": "trf", "method": "trf", "one_call": False},
    {"name": "trf, differences in one call", "method": "trf", "one_call": True},
    {"name": "dogbox, differences in one call", "method": "dogbox", "one_call": True},
)


def timed(work):
    """What it gave, and the milliseconds it took."""
    start = time.perf_counter()
    given = work()
    return given, 1e3 * (time.perf_counter() - start)


def answer(case, question, solver, repeat):
    """One case solved by one solver, several times."""
    runs = [timed(lambda: case.solve(solver["method"], solver["one_call"])) for _ in range(repeat)]
    (found, evaluations), _ = runs[0]
    times = [ms for _, ms in runs]
    return {
        "case": question["name"],
        "solver": solver["name"],
        "dressing": dict(zip(DECISIONS, found.x.tolist())),
        "evaluations": int(evaluations),
        "median_ms": statistics.median(times),
        "least_ms": min(times),
    }


RACK = []


def prepare(questions, hulls):
    """Fills a worker's rack."""
    tables = {key: Hull(table) for key, table in hulls.items()}
    RACK.extend(Case(question, tables) for question in questions)


def solve_one(index):
    """Objective at the optimum of one garment of the rack."""
    best, _ = RACK[index].solve("trf", False)
    return 2 * float(best.cost)


def rank(questions, hulls, processes):
    """All garments of the rack, side by side in so many processes that are already running."""
    arguments = (questions, hulls)
    with multiprocessing.Pool(processes, prepare, arguments) as pool:
        pool.map(solve_one, range(min(len(questions), 4 * processes)))
        work = lambda: pool.map(solve_one, range(len(questions)))
        objectives, ms = timed(work)
    return {"processes": processes, "ms": ms, "objectives": objectives}


def main(questions_path, answers_path):
    """Reads the questions and writes the answers."""
    with open(questions_path, encoding="utf-8") as file:
        asked = json.load(file)
    hulls = {key: Hull(table) for key, table in asked["hulls"].items()}
    cases = [Case(question, hulls) for question in asked["cases"]]

    seen = []
    for case, question in zip(cases, asked["cases"]):
        for dressing in question["dressings"]:
            decided = in_order(dressing)
            values = case.appearance(decided.tolist())
            seen.append(
                {
                    "objective": case.objective(decided),
                    "appearance": {key: float(value) for key, value in values.items()},
                }
            )

    solved = [
        answer(case, question, solver, asked["repeat"])
        for solver in SOLVERS
        for case, question in zip(cases, asked["cases"])
    ]
    answers = {
        "versions": {
            "python": platform.python_version(),
            "numpy": np.__version__,
            "scipy": scipy.__version__,
        },
        "seen": seen,
        "solved": solved,
        "rack": rank(asked["rack"], asked["hulls"], asked["processes"]),
    }
    with open(answers_path, "w", encoding="utf-8") as file:
        json.dump(answers, file)


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    main(sys.argv[1], sys.argv[2])
