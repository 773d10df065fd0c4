"""Worked examples read since: one row one expected value, the tally at the end."""

import json

import pytest
from casebook import check_rows, compare, rows_of
from seen_cases import CASES

ROWS = rows_of("seen_cases")


@pytest.mark.parametrize("name", sorted(ROWS))
def test_worked_case(name):
    found = CASES[name](**json.loads(ROWS[name][0]["inputs"]))
    for row in ROWS[name]:
        compare(row, found[row["key"]], "worked cases")


def test_every_row_has_a_case_and_a_source():
    assert set(CASES) == set(ROWS)
    check_rows(ROWS)
