"""Published cases on snow: one row one expected value, the tally at the end."""

import csv
import json
from collections import defaultdict
from pathlib import Path

import pytest
from roof_cases import CASES

from tests_tally import record_published

ROWS = defaultdict(list)
with (Path(__file__).parent / "roof_cases.csv").open(newline="", encoding="utf-8") as file:
    for row in csv.DictReader(file):
        ROWS[row["case"]].append(row)


@pytest.mark.parametrize("name", sorted(ROWS))
def test_worked_case(name):
    found = CASES[name](**json.loads(ROWS[name][0]["inputs"]))
    for row in ROWS[name]:
        expected, tolerance = float(row["expected"]), float(row["tolerance"])
        allowed = tolerance * abs(expected) if row["tolerance_kind"] == "rel" else tolerance
        off = abs(found[row["key"]] - expected)
        assert off <= allowed + 1e-12 * abs(expected), (
            f"{name} {row['key']}: got {found[row['key']]!r}, {row['source']} has {expected!r}"
        )
        record_published("worked cases", row["verified"], off / allowed, f"{name} {row['key']}")


def test_every_row_has_a_case_and_a_source():
    assert set(CASES) == set(ROWS)
    for rows in ROWS.values():
        for row in rows:
            assert row["source"].strip() and row["verified"].strip() and row["inputs"] == rows[0]["inputs"], (
                row
            )
