"""The planner's times beside HiGHS, in one run: python tests/vectors/beside_highs.py

HiGHS solves the cases of plans_highs.json on one thread; then the planner plans
the same cases in a release build (the bench `rotation`, filter `beside-highs`).
Prints, for each vehicle and number of visits, both medians and their ratio, how
many are proved, and how far the planner's spread lies above HiGHS's at most. The
planner's time is that of a whole answer: every constraint, the choice, the
alternatives and the reasons; HiGHS solves the spread term alone.
Needs requirements.txt beside this script.
"""

import collections
import json
import pathlib
import statistics
import subprocess

import make_plans

HERE = pathlib.Path(__file__).parent


def main():
    theirs, ours, proved, above = (collections.defaultdict(list) for _ in range(4))
    # Built first, so that no compiler runs beside either of them.
    bench = ["cargo", "bench", "--quiet", "-p", "lugbook-tests", "--bench", "rotation"]
    subprocess.run([*bench, "--no-run"], check=True, cwd=HERE)
    for case in json.loads((HERE / "plans_highs.json").read_text())["cases"]:
        wears = [rate * case["interval_km"] / 1000 for rate in case["rates"]]
        _, took = make_plans.optimum(case["depths_mm"], wears, case["visits"])
        theirs[case["layout"], case["visits"]].append(took)
    ran = subprocess.run([*bench, "--", "beside-highs"], capture_output=True, text=True, check=True, cwd=HERE)
    for line in ran.stdout.splitlines():
        if line.startswith("time,"):
            _, layout, visits, took, shown, _, more = line.split(",")
            ours[layout, int(visits)].append(float(took))
            proved[layout, int(visits)].append(shown == "true")
            above[layout, int(visits)].append(float(more))
    if not ours:
        raise SystemExit("The bench printed no times.")
    print("vehicle visits   planner ms   HiGHS ms   ratio   proved   above by mm")
    for key, times in ours.items():
        a, b = statistics.median(times) * 1e3, statistics.median(theirs[key]) * 1e3
        shown = f"{sum(proved[key])}/{len(times)}"
        print(f"{key[0]:8} {key[1]:5} {a:12.3f} {b:10.1f} {b / a:7.0f}   {shown:6} {max(above[key]):13.4f}")


if __name__ == "__main__":
    main()
