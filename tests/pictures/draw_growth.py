"""Draws how the planner's time grows: python tests/pictures/draw_growth.py

Reads what `cargo bench -p lugbook-tests --bench rotation -- growth` measured last
and writes growth.svg beside this script: median time by visits planned, for 4, 6
and 10 wheels, with distinct and with equal wear rates. The picture follows the
reader's choice of a light or dark ground. Needs tests/vectors/requirements.txt.
"""

import json
import pathlib
import re
import subprocess

import matplotlib

matplotlib.use("svg")
import matplotlib.pyplot as plt

HERE = pathlib.Path(__file__).parent
INK, PAPER = "#1a1a1a", "#ffffff"
# Each at least 3:1 on white and on the dark ground.
COLORS = {4: "#3a7ec8", 6: "#b86a00", 10: "#2f8f5b"}
DARK = f"""<style>@media (prefers-color-scheme: dark) {{
[style*="fill: {INK}"] {{ fill: #f2f2f2 !important }}
[style*="stroke: {INK}"] {{ stroke: #f2f2f2 !important }}
[style*="fill: {PAPER}"] {{ fill: #1b1b1b !important }}
}}</style>"""


def measured():
    """Median milliseconds by wheels and kind, then by visits."""
    about = subprocess.run(["cargo", "metadata", "--format-version", "1", "--no-deps"], capture_output=True,
                           check=True, cwd=HERE).stdout
    folder = pathlib.Path(json.loads(about)["target_directory"]) / "criterion" / "growth"
    for wheels in COLORS:
        for kind in ["distinct", "equal"]:
            points = {}
            for visit in (folder / f"{wheels} wheels, {kind}").iterdir():
                if visit.name.isdigit():
                    estimates = json.loads((visit / "new" / "estimates.json").read_text())
                    points[int(visit.name)] = estimates["median"]["point_estimate"] / 1e6
            yield wheels, kind, sorted(points.items())


def main():
    plt.rcParams.update({
        "svg.hashsalt": "lugbook", "svg.fonttype": "none", "font.family": "sans-serif", "font.size": 11,
        "text.color": INK, "axes.edgecolor": INK, "axes.labelcolor": INK, "xtick.color": INK, "ytick.color": INK,
    })
    figure, axes = plt.subplots(figsize=(7.2, 4.6), facecolor=PAPER)
    axes.set_facecolor(PAPER)
    for wheels, kind, points in measured():
        line = "-" if kind == "distinct" else "--"
        mark = "o" if kind == "distinct" else "s"
        axes.plot(*zip(*points), line, marker=mark, color=COLORS[wheels], label=f"{wheels} wheels, {kind} rates")
    axes.set_yscale("log")
    axes.yaxis.set_major_formatter("{x:g}")
    axes.set_xlabel("visits planned")
    axes.set_ylabel("one whole answer, ms (median)")
    axes.set_title("Rotation planner: time by wheels and visits")
    axes.spines[["top", "right"]].set_visible(False)
    axes.legend(loc="upper left", bbox_to_anchor=(1.0, 1.0), frameon=False)
    out = HERE / "growth.svg"
    figure.savefig(out, bbox_inches="tight", facecolor=PAPER, metadata={"Date": None, "Creator": None})
    # Whatever plain font the reader has.
    text = re.sub(r"font-family: [^;]*;", "font-family: sans-serif;", out.read_text())
    at = text.index(">", text.index("<svg")) + 1
    out.write_text(text[:at] + "\n" + DARK + text[at:])


main()
