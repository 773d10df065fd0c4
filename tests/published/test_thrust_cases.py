"""Published cases on rafter thrust and raised ties: one row one expected value."""

import json

import pytest
from casebook import compare, rows_of
from thrust_cases import CASES

ROWS = [row for rows in rows_of("thrust_cases").values() for row in rows]


@pytest.mark.parametrize("row", ROWS, ids=[f"{row['case']}-{row['key']}" for row in ROWS])
def test_published_thrust_value(row):
    found = CASES[row["case"]](**json.loads(row["inputs"]))[row["key"]]
    compare(row, found, row["topic"])


def test_every_row_has_a_case_and_a_source():
    assert {row["case"] for row in ROWS} == set(CASES)
    for row in ROWS:
        assert row["source"].strip() and row["verified"].strip() and row["unit"].strip(), row
