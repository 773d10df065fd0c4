"""Published cases on posts and footings: one row one expected value, one runner, the tally at the end."""

import json

import pytest
from casebook import check_rows, compare, rows_of
from columns_cases import CASES, TABLES

ROWS = rows_of("columns_cases")


@pytest.mark.parametrize("name", sorted(ROWS))
def test_worked_case(name):
    rows = ROWS[name]
    topic = rows[0]["topic"]
    ask = CASES[name] if name in CASES else TABLES[topic]
    found = ask(**json.loads(rows[0]["inputs"]))
    for row in rows:
        group = topic if topic in TABLES else "worked cases"
        compare(row, found[row["key"]], group)


def test_every_row_has_a_case_and_a_source():
    assert set(CASES) <= set(ROWS)
    for name, rows in ROWS.items():
        assert name in CASES or rows[0]["topic"] in TABLES
    check_rows(ROWS)
    assert set(TABLES) <= {rows[0]["topic"] for rows in ROWS.values()}
