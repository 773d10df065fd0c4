"""Published cases on rafter thrust and raised ties: one row one expected value."""

import csv
import json
from pathlib import Path

import pytest
from thrust_cases import CASES

from tests_tally import record_published

with (Path(__file__).parent / "thrust_cases.csv").open(newline="", encoding="utf-8") as file:
    ROWS = list(csv.DictReader(file))


@pytest.mark.parametrize("row", ROWS, ids=[f"{row['case']}-{row['key']}" for row in ROWS])
def test_published_thrust_value(row):
    found = CASES[row["case"]](**json.loads(row["inputs"]))[row["key"]]
    expected, tolerance = float(row["expected"]), float(row["tolerance"])
    allowed = tolerance * abs(expected) if row["tolerance_kind"] == "rel" else tolerance
    off = abs(found - expected)
    assert off <= allowed + 1e-12 * abs(expected), (
        f"{row['case']} {row['key']}: got {found!r}, not {expected!r}"
    )
    record_published(row["topic"], row["verified"], off / allowed, f"{row['case']} {row['key']}")


def test_every_row_has_a_case_and_a_source():
    assert {row["case"] for row in ROWS} == set(CASES)
    for row in ROWS:
        assert row["source"].strip() and row["verified"].strip() and row["unit"].strip(), row
