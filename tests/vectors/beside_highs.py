"""The planner's times beside HiGHS, in one run: python beside_highs.py

HiGHS solves the cases of plans_highs.json on one thread; then the planner plans
the same cases in a release build. Prints, for each vehicle and number of visits,
both medians and their ratio. The planner's time is that of a whole answer: every
constraint, the choice, the alternatives and the reasons; HiGHS solves the spread
term alone. Needs highspy.
"""

import collections
import json
import pathlib
import statistics
import subprocess

import make_plans

HERE = pathlib.Path(__file__).parent


def main():
    theirs, ours, proved = (collections.defaultdict(list) for _ in range(3))
    for case in json.loads((HERE / "plans_highs.json").read_text())["cases"]:
        wears = [rate * case["interval_km"] / 1000 for rate in case["rates"]]
        _, took = make_plans.optimum(case["depths_mm"], wears, case["visits"])
        theirs[case["layout"], case["visits"]].append(took)
    test = ["cargo", "test", "--release", "-p", "lugbook-tests", "--test", "all", "times_beside_highs", "--",
            "--ignored", "--nocapture"]
    for line in subprocess.run(test, capture_output=True, text=True, check=True, cwd=HERE).stdout.splitlines():
        if line.startswith("time,"):
            _, layout, visits, took, shown, _ = line.split(",")
            ours[layout, int(visits)].append(float(took))
            proved[layout, int(visits)].append(shown == "true")
    print("vehicle visits   planner ms   HiGHS ms   ratio   proved")
    for key, times in ours.items():
        a, b = statistics.median(times) * 1e3, statistics.median(theirs[key]) * 1e3
        print(f"{key[0]:8} {key[1]:5} {a:12.3f} {b:10.1f} {b / a:7.0f}   {sum(proved[key])}/{len(times)}")


main()
