"""Published cases on composite and steel beams: one row one expected value, the tally at the end."""

import json

import pytest
from casebook import check_rows, compare, rows_of
from composite_cases import CASES

ROWS = rows_of("composite_cases")


@pytest.mark.parametrize("name", sorted(ROWS))
def test_worked_case(name):
    rows = ROWS[name]
    found = CASES[name](**json.loads(rows[0]["inputs"]))
    for row in rows:
        compare(row, found[row["key"]], "worked cases")


def test_every_row_has_a_case_and_a_source():
    assert set(CASES) == set(ROWS)
    check_rows(ROWS)
