"""Published fastener values: one row one expected value, compared within the rounding of its print."""

import csv
import json
from pathlib import Path

import pytest
from dowel_cases import CASES

from tests_tally import record_published

with (Path(__file__).parent / "dowel_cases.csv").open(newline="", encoding="utf-8") as file:
    ROWS = list(csv.DictReader(file))

GROUPS = {"Z": "fastener values", "Fe": "dowel bearing strengths", "Fyb": "nail yield strengths"}


@pytest.mark.parametrize("row", ROWS, ids=[f"{row['case']}-{row['key']}" for row in ROWS])
def test_published_fastener_value(row):
    found = CASES[row["case"]](**json.loads(row["inputs"]))
    got, mode = found if row["case"] in GROUPS else (found[row["key"]], "")
    expected, tolerance = float(row["expected"]), float(row["tolerance"])
    allowed = tolerance * abs(expected) if row["tolerance_kind"] == "rel" else tolerance
    off = abs(got - expected)
    assert off <= allowed + 1e-9 * abs(
        expected
    ), f"{row['key']} {row['statement']}: got {got!r}, print {expected!r}"
    assert (
        not row["mode"] or mode == row["mode"]
    ), f"{row['key']}: mode {mode}, worked separately {row['mode']}"
    group = GROUPS.get(row["case"], "fastener worked cases")
    record_published(group, row["verified"], off / allowed, f"{row['case']} {row['key']}")


def test_every_row_has_a_case_and_a_source():
    assert {row["case"] for row in ROWS} == set(CASES)
    for row in ROWS:
        assert row["source"].strip() and row["verified"].strip(), row
