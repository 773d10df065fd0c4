"""What every book of published cases shares: cases by name, rows by case, one comparison."""

import csv
from collections import defaultdict
from pathlib import Path

from tests_tally import record_published


def register(cases):
    """Give a decorator that keeps a function under the name of its case."""

    def case(name):
        def keep(function):
            cases[name] = function
            return function

        return keep

    return case


def rows_of(book):
    """Rows of one file of cases, by case, in the order of the file."""
    rows = defaultdict(list)
    with (Path(__file__).parent / f"{book}.csv").open(newline="", encoding="utf-8") as file:
        for row in csv.DictReader(file):
            rows[row["case"]].append(row)
    return rows


def compare(row, got, group, slack=1e-12):
    """One value against its source, within the tolerance of its row; it then goes into the tally."""
    expected, tolerance = float(row["expected"]), float(row["tolerance"])
    allowed = tolerance * abs(expected) if row["tolerance_kind"] == "rel" else tolerance
    off, name = abs(got - expected), f"{row['case']} {row['key']}"
    assert off <= allowed + slack * abs(expected), f"{name}: got {got!r}, {row['source']} has {expected!r}"
    record_published(group, row["verified"], off / allowed if allowed else 0.0, name)


def check_rows(rows):
    """Every row says where its value is from and how it is known; the rows of a case share their inputs."""
    for listed in rows.values():
        for row in listed:
            assert row["source"].strip() and row["verified"].strip(), row
            assert row["inputs"] == listed[0]["inputs"], row
