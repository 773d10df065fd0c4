"""Published fastener values: one row one expected value, compared within the rounding of its print."""

import json

import pytest
from casebook import compare, rows_of
from dowel_cases import CASES

ROWS = [row for rows in rows_of("dowel_cases").values() for row in rows]

GROUPS = {"Z": "fastener values", "Fe": "dowel bearing strengths", "Fyb": "nail yield strengths"}


@pytest.mark.parametrize("row", ROWS, ids=[f"{row['case']}-{row['key']}" for row in ROWS])
def test_published_fastener_value(row):
    found = CASES[row["case"]](**json.loads(row["inputs"]))
    got, mode = found if row["case"] in GROUPS else (found[row["key"]], "")
    assert not row["mode"] or mode == row["mode"], f"{row['key']}: mode {mode}, worked separately {row['mode']}"
    group = GROUPS.get(row["case"], "fastener worked cases")
    compare(row, got, group, slack=1e-9)


def test_every_row_has_a_case_and_a_source():
    assert {row["case"] for row in ROWS} == set(CASES)
    for row in ROWS:
        assert row["source"].strip() and row["verified"].strip(), row
