"""Frozen vectors for the wear fit: python make_wear.py > wear_fit.json

Clean histories are fitted with statsmodels' weighted least squares (no prior),
so that the core's fit can be held to a general statistics library. Histories
with one slipped reading in ten carry the true rates and the least-squares rates.

Needs numpy and statsmodels (any recent version; the versions are written out).
"""

import json
import math
import sys

import numpy as np
import statsmodels
import statsmodels.api as sm

PLACES = ["FL", "FR", "RL", "RR"]
STEP_32 = 0.79375


def gauge_error(step):
    """One standard deviation of a reading: the step's uniform one beside the hand's 0.1 mm."""
    return math.hypot(step / math.sqrt(12), 0.1)


def history(rng, visits, rotate, step, slips):
    """Four tires read at each visit before they move; a list of readings and the true rates."""
    rates = rng.uniform(0.03, 0.16, 4)
    starts = rng.uniform(6.5, 9.5, 4)
    at = list(range(4))
    depth = starts.copy()
    km, readings = 0, []
    for visit in range(visits):
        if visit:
            drive = int(rng.integers(4, 12)) * 1000
            km += drive
            for tire in range(4):
                depth[tire] -= rates[at[tire]] * drive / 1000
        for tire in range(4):
            noise = float(np.clip(rng.normal(0, 0.08), -0.16, 0.16))
            unit = STEP_32 if step == STEP_32 else 1.0
            grain = 1.0 if step == STEP_32 else 0.1
            value = round((depth[tire] + noise) / unit / grain) * grain
            readings.append({"tire": f"t{tire}", "km": km, "at": PLACES[at[tire]], "value": round(value, 4)})
        if rotate:
            at = [at[i] for i in rng.permutation(4)]
    if slips:
        count = max(1, round(len(readings) * 0.1))
        for index in rng.choice(len(readings), count, replace=False):
            unit = STEP_32 if step == STEP_32 else 1.0
            off = rng.uniform(1.5, 4.0) * rng.choice([-1, 1])
            readings[index]["value"] = round(max(0.0, readings[index]["value"] + round(off / unit, 1)), 4)
    return readings, rates


def matrix(readings, unit):
    """Design and depths: a start for each tire, minus distance at each place since its first reading."""
    tires = sorted({r["tire"] for r in readings})
    ran = {t: dict.fromkeys(PLACES, 0.0) for t in tires}
    last, rows, depths = {}, [], []
    for r in readings:
        tire = r["tire"]
        if tire in last:
            ran[tire][r["at"]] += (r["km"] - last[tire]) / 1000
        last[tire] = r["km"]
        rows.append([1.0 if t == tire else 0.0 for t in tires] + [-ran[tire][p] for p in PLACES])
        depths.append(r["value"] * unit)
    return np.array(rows), np.array(depths), tires


def fit(readings, step):
    unit = STEP_32 if step == STEP_32 else 1.0
    design, depths, tires = matrix(readings, unit)
    error = gauge_error(step)
    result = sm.WLS(depths, design, weights=np.full(len(depths), error**-2)).fit()
    return design, depths, tires, result, error


def main():
    rng = np.random.default_rng(20261124)
    clean, slipped = [], []
    while len(clean) < 40:
        step = STEP_32 if len(clean) % 4 == 3 else 0.1
        readings, _ = history(rng, int(rng.integers(3, 9)), bool(rng.integers(0, 2)), step, False)
        if min(r["value"] for r in readings) < 1.0:
            continue
        design, depths, tires, result, error = fit(readings, step)
        if np.linalg.matrix_rank(design) < design.shape[1]:
            continue
        # The last row of each tire predicts its depth now.
        last = [max(i for i, r in enumerate(readings) if r["tire"] == t) for t in tires]
        clean.append({
            "unit": "1/32in" if step == STEP_32 else "mm",
            "readings": readings,
            "rates": dict(zip(PLACES, result.params[4:].tolist())),
            "depths_now": dict(zip(tires, (design[last] @ result.params).tolist())),
            "rate_deviations": dict(zip(PLACES, np.sqrt(np.diag(result.normalized_cov_params))[4:].tolist())),
            "chi_squared_per_freedom": float(result.ssr / result.df_resid) if result.df_resid else 0.0,
        })
    while len(slipped) < 150:
        readings, rates = history(rng, int(rng.integers(5, 9)), bool(rng.integers(0, 2)), 0.1, True)
        if min(r["value"] for r in readings) < 1.0:
            continue
        design, depths, tires, result, error = fit(readings, 0.1)
        if np.linalg.matrix_rank(design) < design.shape[1]:
            continue
        slipped.append({
            "readings": readings,
            "true_rates": dict(zip(PLACES, rates.tolist())),
            "least_squares": dict(zip(PLACES, result.params[4:].tolist())),
        })
    made_by = f"statsmodels {statsmodels.__version__}, numpy {np.__version__}, python {sys.version.split()[0]}"
    json.dump({"made_by": made_by, "clean": clean, "slipped": slipped}, sys.stdout, indent=None, separators=(",", ":"))


main()
