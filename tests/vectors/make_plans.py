"""Frozen optima of the spread of final depths: python make_plans.py plans_highs.json

Ten positions (a tractor: two steered wheels, two driven axles with duals) and
smaller vehicles over several visits, solved to optimality by HiGHS. The model
knows only counts of visits by tire and position; every row and column sums to
the number of visits. Needs highspy; the version is written out.
"""

import json
import random
import sys
import time

import highspy

LAYOUTS = {
    "car": ["FL", "FR", "RL", "RR"],
    "truck": ["1L", "1R", "2LO", "2LI", "2RI", "2RO"],
    "tractor": ["1L", "1R", "2LO", "2LI", "2RI", "2RO", "3LO", "3LI", "3RI", "3RO"],
}


def optimum(depths, wears, visits, limit_s=120.0):
    """The least spread, or None when HiGHS could not prove it in time; and the seconds it took."""
    n = len(depths)
    h = highspy.Highs()
    h.setOptionValue("output_flag", False)
    h.setOptionValue("mip_rel_gap", 0.0)
    h.setOptionValue("mip_abs_gap", 1e-7)
    h.setOptionValue("threads", 1)
    h.setOptionValue("time_limit", limit_s)
    x = [[h.addIntegral(0, visits) for _ in range(n)] for _ in range(n)]
    top, bottom = h.addVariable(-100, 100), h.addVariable(-100, 100)
    for i in range(n):
        h.addConstr(sum(x[i]) == visits)
        h.addConstr(sum(x[j][i] for j in range(n)) == visits)
        end = depths[i] - sum(wears[p] * x[i][p] for p in range(n))
        h.addConstr(top >= end)
        h.addConstr(bottom <= end)
    began = time.perf_counter()
    h.minimize(top - bottom)
    took = time.perf_counter() - began
    proved = h.getModelStatus() == highspy.HighsModelStatus.kOptimal
    return (h.getObjectiveValue() if proved else None), took


def cases():
    draw = random.Random(20261124)
    plan = [("car", 4, 12), ("truck", 4, 12), ("tractor", 2, 8), ("tractor", 3, 6), ("tractor", 4, 16)]
    for layout, visits, count in plan:
        for number in range(count):
            places = LAYOUTS[layout]
            depths = [round(draw.uniform(7.0, 14.0), 1) for _ in places]
            rates = [round(draw.uniform(0.03, 0.18), 3) for _ in places]
            if number % 4 == 3:
                # Left and right, and the wheels of an axle, wear alike.
                rates = [{"1": 0.12, "F": 0.12, "2": 0.08, "R": 0.08, "3": 0.07}[p[0]] for p in places]
            yield {"layout": layout, "places": places, "visits": visits, "interval_km": 10000,
                   "depths_mm": depths, "rates": rates}


def main():
    out = []
    for case in cases():
        wears = [rate * case["interval_km"] / 1000 for rate in case["rates"]]
        spread, took = optimum(case["depths_mm"], wears, case["visits"])
        print(case["layout"], case["visits"], spread, round(took, 3), file=sys.stderr)
        if spread is not None:
            out.append({**case, "spread_mm": round(spread, 9)})
    version = highspy.Highs().version()
    with open(sys.argv[1], "w") as file:
        json.dump({"made_by": f"HiGHS {version}", "cases": out}, file, separators=(",", ":"))


if __name__ == "__main__":
    main()
