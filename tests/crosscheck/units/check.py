"""Factor of every unit in units.json to coherent SI units, by pint, written to results.json.

    python check.py

pint's own definitions are used throughout: only the spelling of each unit is translated.
"""

import importlib.metadata
import json
import pathlib
import platform
import sys

import pint

HERE = pathlib.Path(__file__).parent

# The program's names in pint's spelling; the rest are spelt alike.
SPELLING = {
    "in": "inch",
    "ft": "foot",
    "lb": "pound",
    "oz": "ounce",
    "t": "metric_ton",
    "lbf": "pound_force",
    "hp": "horsepower",
    "metric hp": "metric_horsepower",
    "deg": "degree",
    "gal": "US_liquid_gallon",
    "L": "liter",
    "ft³": "foot**3",
    "m³": "meter**3",
    "ft²": "foot**2",
    "in²": "inch**2",
    "mm²": "millimeter**2",
    "m²": "meter**2",
    "mph": "mile/hour",
    "kn": "knot",
    "rpm": "revolution/minute",
    "ksi": "kilopound_force_per_square_inch",
    "lbf·ft": "pound_force*foot",
    "lbf·in": "pound_force*inch",
    "N·m": "newton*meter",
    "kN·m": "kilonewton*meter",
    "lb/ft³": "pound/foot**3",
    "kg/m³": "kilogram/meter**3",
    "g/cm³": "gram/centimeter**3",
    "lb/in": "pound/inch",
    "gal/h": "US_liquid_gallon/hour",
    "L/h": "liter/hour",
    "L/min": "liter/minute",
    "gal/min": "US_liquid_gallon/minute",
    "m/s²": "meter/second**2",
    "gn": "standard_gravity",
    "ft/s²": "foot/second**2",
    "mi": "mile",
    "nmi": "nautical_mile",
    "in³": "inch**3",
    "cm³": "centimeter**3",
    "Ah": "ampere*hour",
    "mΩ": "milliohm",
    "Ω": "ohm",
    "nΩ·m": "nanoohm*meter",
    "mm²/s": "millimeter**2/second",
    "h": "hour",
    "min": "minute",
    "°F": "delta_degF",
    "°C": "delta_degC",
    "%": "percent",
}
# The coherent SI unit of each kind.
SI = {
    "Length": "meter",
    "Mass": "kilogram",
    "Force": "newton",
    "Power": "watt",
    "Angle": "radian",
    "Volume": "meter**3",
    "Area": "meter**2",
    "Speed": "meter/second",
    "RotationRate": "radian/second",
    "Pressure": "pascal",
    "Moment": "newton*meter",
    "Current": "ampere",
    "Voltage": "volt",
    "Density": "kilogram/meter**3",
    "MassPerLength": "kilogram/meter",
    "FlowRate": "meter**3/second",
    "Acceleration": "meter/second**2",
    "Charge": "coulomb",
    "Resistance": "ohm",
    "Resistivity": "ohm*meter",
    "Viscosity": "meter**2/second",
    "Temperature": "delta_degC",
    "Duration": "second",
    "Ratio": "dimensionless",
}


def main():
    registry = pint.UnitRegistry()
    table = json.loads((HERE / "units.json").read_text())
    units, worst = {}, 0.0
    for name, factor in table.items():
        kind, unit = name.split("/", 1)
        spelt = SPELLING.get(unit, unit)
        units[name] = registry.Quantity(1, spelt).to(SI[kind]).magnitude
        worst = max(worst, abs(factor / units[name] - 1))
    versions = {"pint": importlib.metadata.version("pint"), "python": platform.python_version()}
    text = json.dumps({"versions": versions, "units": units}, indent=1, ensure_ascii=False)
    (HERE / "results.json").write_text(text + "\n")
    print(f"{len(units)} units; largest relative difference from the program's: {worst:.1e}")
    return int(worst > 1e-9)


if __name__ == "__main__":
    sys.exit(main())
