"""Compares every JSON file of a topic's folder with the one in a copy in which its scripts ran again.

    python same_results.py KEPT COPY

Numbers may differ by the rounding of another machine's libraries: 1e-6, relative or absolute. Versions are
recorded, not compared.
"""

import json
import pathlib
import sys

TOLERANCE = 1e-6


def differences(kept, new, path=""):
    if isinstance(kept, dict) and isinstance(new, dict):
        for key in sorted(kept.keys() | new.keys()):
            if key == "versions":
                continue
            if key not in kept or key not in new:
                yield f"{path}/{key} is in one only"
            else:
                yield from differences(kept[key], new[key], f"{path}/{key}")
    elif isinstance(kept, list) and isinstance(new, list):
        if len(kept) != len(new):
            yield f"{path}: {len(kept)} entries kept, {len(new)} now"
        for i, (a, b) in enumerate(zip(kept, new)):
            yield from differences(a, b, f"{path}/{i}")
    elif isinstance(kept, bool) or not isinstance(kept, (int, float)):
        if kept != new:
            yield f"{path}: {kept!r} kept, {new!r} now"
    elif not abs(kept - new) <= TOLERANCE * max(1.0, abs(kept)):
        yield f"{path}: {kept} kept, {new} now"


def main():
    kept, copy = map(pathlib.Path, sys.argv[1:])
    found = []
    for file in sorted(kept.glob("*.json")):
        pair = [json.loads(folder.read_text()) for folder in (file, copy / file.name)]
        found += [f"{file}{difference}" for difference in differences(*pair)]
    print("\n".join(found[:20]) or f"{kept}: the same as kept")
    return int(bool(found))


if __name__ == "__main__":
    sys.exit(main())
