"""Makes the reference figures beside this file. Run: python3 make_measures.py (needs pint and CoolProp).

unit_values.csv   conversions by pint, a general-purpose unit library
gas_law.csv       a rigid volume of air between two temperatures: the ideal gas
                  law through pint, and real air (constant density) by CoolProp
torque_targets.csv  the best setting for each row of ../standards/wheel_torque.csv,
                  found by trying every step of the scale with exact fractions
"""

import csv
import sys
from fractions import Fraction
from pathlib import Path

import CoolProp.CoolProp as cp
import pint

HERE = Path(__file__).parent
U = pint.UnitRegistry()
Q = U.Quantity

# code in the data -> (pint's unit, base code, pint's base unit)
UNITS = {
    "1/32in": ("inch/32", "mm", "mm"),
    "ft.lb": ("foot*force_pound", "N.m", "newton*meter"),
    "kgf.m": ("force_kilogram*meter", "N.m", "newton*meter"),
    "psi": ("psi", "kPa", "kilopascal"),
    "bar": ("bar", "kPa", "kilopascal"),
    "mi": ("mile", "km", "kilometer"),
    "degF": ("degF", "degC", "degC"),
    "lb": ("pound", "kg", "kilogram"),
    "t": ("metric_ton", "kg", "kilogram"),
    "mph": ("mile/hour", "km/h", "kilometer/hour"),
    "in": ("inch", "mm", "mm"),
}
HIGHEST = {"1/32in": 60, "kgf.m": 50, "t": 50, "bar": 12}


def convert(value, unit, base):
    if unit == "inch/32":
        return Q(value / 32, "inch").to(base).magnitude
    return Q(value, unit).to(base).magnitude


def units():
    for code, (unit, base_code, base) in UNITS.items():
        for value in (1, 2.5, 7, 35, 100):
            # What lies beyond any wheel is no reading.
            if value > HIGHEST.get(code, 100):
                continue
            yield code, value, base_code, repr(convert(value, unit, base))


def gas():
    atmosphere = Q(1, "atm").to("kPa").magnitude
    for gauge in (180, 240, 300, 550, 830):
        for start in (0, 20, 35):
            for end in (-30, -10, 5, 20, 45):
                kelvin = [Q(t, "degC").to("kelvin").magnitude for t in (start, end)]
                ideal = (gauge + atmosphere) * kelvin[1] / kelvin[0] - atmosphere
                density = cp.PropsSI("D", "P", (gauge + atmosphere) * 1000, "T", kelvin[0], "Air")
                real = cp.PropsSI("P", "D", density, "T", kelvin[1], "Air") / 1000 - atmosphere
                yield gauge, start, end, repr(ideal), f"{real:.4f}"


FOOT_POUND = Fraction("4.4482216152605") * Fraction("0.3048")
ACCURACY = Fraction(4, 100)


def best(low, high, step):
    """The step with the largest margin, the lower of two; a single value takes the nearest step."""
    found = None
    for count in range(1, int(high / step) + 2):
        torque = count * step
        if low == high:
            worth = -abs(torque - low)
        elif low <= torque <= high:
            worth = min(torque * (1 - ACCURACY) - low, high - torque * (1 + ACCURACY))
        else:
            continue
        if found is None or worth > found[1]:
            found = (torque, worth)
    if found is None:
        return "none", ""
    torque, worth = found
    return float(torque), "" if low == high else repr(float(worth))


def printed(row):
    return "{min_Nm}..{max_Nm} N.m, {min_ftlb}..{max_ftlb} ft.lb".format(**row)


def targets():
    with open(HERE.parent / "standards" / "wheel_torque.csv", newline="") as file:
        for number, row in enumerate(csv.DictReader(file), 2):
            newton = [Fraction(row["min_Nm"]), Fraction(row["max_Nm"])]
            foot = [Fraction(row["min_ftlb"]), Fraction(row["max_ftlb"])]
            # Printed units that disagree leave what lies in both.
            if row["note"].startswith("printed units disagree"):
                in_newton = [max(newton[0], foot[0] * FOOT_POUND), min(newton[1], foot[1] * FOOT_POUND)]
                in_foot = [value / FOOT_POUND for value in in_newton]
            else:
                in_newton, in_foot = newton, foot
            for (low, high), unit, step in (
                (in_newton, "N.m", 1), (in_newton, "N.m", 5), (in_foot, "ft.lb", 1), (in_foot, "ft.lb", 5),
            ):
                yield (number, row["thread"], printed(row), unit, step, *best(low, high, Fraction(step)))


def write(name, header, rows):
    with open(HERE / name, "w", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(header)
        writer.writerows(rows)


if __name__ == "__main__":
    write("unit_values.csv", ["unit", "value", "base", "in_base"], units())
    write("gas_law.csv", ["gauge_kPa", "from_C", "to_C", "ideal_kPa", "real_air_kPa"], gas())
    write("torque_targets.csv", ["line", "thread", "printed", "unit", "step", "target", "margin"], targets())
    print(f"pint {pint.__version__}, CoolProp {cp.get_global_param_string('version')}", file=sys.stderr)
