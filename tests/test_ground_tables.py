"""The data files: every row honest and readable, and a malformed row refused by file and line."""

import csv
import re

import pytest

from structlib.ground import tables
from structlib.ground.refusals import BadInput
from structlib.ground.units import inch, psi

NAMES = sorted(path.stem for path in tables.data_folder().glob("*.csv"))

GOOD = "# a table\n# key: name\n# numbers: depth_in\nname,depth_in,source,verified\nA,1.5,book,seen\n"

MALFORMED = [
    ("B,1.5,,seen", "line 6: the source is missing"),
    ("B,1.5,book,", "line 6: verified is ''"),
    ("B,1.5,book,checked", "line 6: verified is 'checked'; accepted are seen"),
    ("B,wide,book,seen", "line 6: depth_in is 'wide', which is not a number"),
    ("B,nan,book,seen", "line 6: depth_in is 'nan', which is not a number"),
    ("B,inf,book,seen", "line 6: depth_in is 'inf', which is not a number"),
    ("A,2,book,seen", "line 6: A is already on line 5"),
    ("B,1.5,book", "line 6: 3 cells where 4 are named"),
    ("B,1.5,book,seen,more", "line 6: 5 cells where 4 are named"),
    ("# only a remark\nB,1.5,,seen", "line 7: the source is missing"),
]


def written(folder, text):
    path = folder / "some_table.csv"
    path.write_text(text, encoding="utf-8")
    return path


def test_good_table_is_read(tmp_path):
    rows = tables.read_table(written(tmp_path, GOOD + "\nB,,book,computed\n"))
    assert [dict(row) for row in rows] == [
        dict(name="A", depth_in=1.5, source="book", verified="seen"),
        dict(name="B", depth_in=None, source="book", verified="computed"),
    ]
    assert tables.in_library_units(rows[0], "depth_in") == 1.5 * inch
    assert tables.in_library_units(rows[1], "depth_in") is None
    with pytest.raises(TypeError):
        rows[0]["depth_in"] = 2.0


@pytest.mark.parametrize("row, words", MALFORMED)
def test_malformed_row_is_refused_by_file_and_line(tmp_path, row, words):
    with pytest.raises(BadInput, match=re.escape("some_table.csv " + words)):
        tables.read_table(written(tmp_path, GOOD + row + "\n"))


@pytest.mark.parametrize(
    "text, words",
    [
        ("", "no comment line '# key"),
        ("# key: name\nname,source,verified\n", "no comment line '# numbers"),
        ("# key: name\n# numbers:\n", "no header row"),
        ("# key: nome\n# numbers:\nname,source,verified\n", "line 3: the column 'nome' is missing"),
        ("# key: name\n# numbers:\nname,source\n", "line 3: the column 'verified' is missing"),
        ("# key: name\n# numbers:\nname,name,source,verified\n", "line 3: a column is named twice"),
        (
            "# key: k\n# numbers: Fb_spi\nk,Fb_spi,source,verified\na,900,book,seen\n",
            "line 3: the column 'Fb_spi' ends in 'spi', which is no unit known here",
        ),
        ("# key: k\n# numbers: Fb psi\nk,Fb psi,source,verified\na,900,book,seen\n", "which is no unit known"),
        ("# key: k\n# numbers: value\nk,value,unit,source,verified\na,1,yd,book,seen\n", "the unit 'yd' is not known"),
        ("# key: k\n# numbers:\nk,source,verified,verified_E\na,book,seen,maybe\n", "verified_E is 'maybe'"),
    ],
)
def test_malformed_file_is_refused(tmp_path, text, words):
    with pytest.raises(BadInput, match=re.escape(words)):
        tables.read_table(written(tmp_path, text))


def test_unreadable_file_is_refused(tmp_path):
    with pytest.raises(BadInput, match="none.csv cannot be read"):
        tables.read_table(tmp_path / "none.csv")
    (tmp_path / "bytes.csv").write_bytes(b"\xff\xfe\x00name")
    with pytest.raises(BadInput, match="bytes.csv cannot be read"):
        tables.read_table(tmp_path / "bytes.csv")


@pytest.mark.parametrize("name", NAMES)
def test_every_data_file_is_read_whole(name):
    rows = tables.table_rows(name)
    lines = [
        line
        for line in (tables.data_folder() / f"{name}.csv").read_text(encoding="utf-8").splitlines()
        if line.strip() and not line.startswith("#")
    ]
    assert len(rows) == len(lines) - 1 > 0
    assert all(row["source"] and row["verified"] in tables.VERIFIED_WORDS for row in rows)


@pytest.mark.parametrize("name", NAMES)
def test_sources_name_publications_not_addresses(name):
    text = (tables.data_folder() / f"{name}.csv").read_text(encoding="utf-8")
    assert not re.search(r"https?:|www\.|\w\.(com|org|net|site|edu|gov)\b", text)


def test_every_data_file_is_described():
    described = (tables.data_folder() / "README.md").read_text(encoding="utf-8")
    assert [name for name in NAMES if f"`{name}.csv`" not in described] == []


def test_no_more_than_a_quarter_of_all_rows_stays_recalled():
    known = [row["verified"] for name in NAMES for row in tables.table_rows(name)]
    assert known.count("recalled") <= len(known) / 4


def test_a_seen_row_owes_nothing_to_memory():
    for name in NAMES:
        for row in tables.table_rows(name):
            if row["verified"] == "seen":
                assert not re.search("memory|recalled", row["source"]), row
                assert "from memory" not in row["note"], row


def test_a_rule_that_was_read_names_its_edition_or_says_that_it_is_not_noted():
    named = r"(18|19|20)\d\d|\bed\.|edition|\bera\b|v1\d\.|undated|(ASCE 7|360)-\d"
    for name in NAMES:
        for row in tables.table_rows(name):
            if name.startswith(("us_", "ca_", "lumber", "sizes")) and row["verified"] in ("seen", "transcribed"):
                said = f"{row['source']} {row['note']} {row.get('edition', '')}"
                assert re.search(named, said), (name, row)


def test_value_is_converted_to_library_units_by_its_row():
    with open(tables.data_folder() / "us_factors.csv", encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(line for line in file if not line.startswith("#")))
    by_unit = {"psi": psi, "in": inch, "pcf": 4.4482216152605 / 304.8**3, "-": 1.0, "percent": 1.0}
    for row in rows:
        expected = float(row["value"]) * by_unit[row["unit"]]
        assert tables.table_value("us_factors", row["key"]) == pytest.approx(expected, rel=1e-12), row["key"]


@pytest.mark.parametrize(
    "call, words",
    [
        (lambda: tables.table_rows("lumber_dimensions"), "did you mean 'lumber_dimension'"),
        (lambda: tables.table_rows("../data/us_factors"), "is not known"),
        (lambda: tables.table_rows(None), "is not known"),
        (lambda: tables.table_rows(["us_factors"]), "is not known"),
        (lambda: tables.table_value("us_factors", "creep_dri"), "did you mean 'creep_dry'"),
        (lambda: tables.table_row("us_factors", kee="creep_dry"), "did you mean 'key'"),
        (lambda: tables.table_row("lumber_dimension", species="Hem-Fir"), "8|9 rows of lumber_dimension"),
        (lambda: tables.in_library_units(tables.table_rows("us_factors")[0], "valve"), "did you mean 'value'"),
        (lambda: tables.in_library_units(tables.table_rows("us_factors")[0], "key"), "holds words"),
    ],
)
def test_unknown_table_or_row_is_refused(call, words):
    with pytest.raises(BadInput, match=words):
        call()


def ranges_overlap(one, other, low, high):
    top = lambda row: float("inf") if row[high] is None else row[high]  # noqa: E731
    return one[low] <= top(other) and other[low] <= top(one)


def test_size_factor_rows_do_not_overlap():
    rows = tables.table_rows("us_size_factor")
    for number, one in enumerate(rows):
        for other in rows[number + 1 :]:
            if all(one[c] == other[c] for c in ("factor", "size_factor_group", "property")):
                assert not (
                    ranges_overlap(one, other, "width_min", "width_max")
                    and ranges_overlap(one, other, "thickness_min", "thickness_max")
                ), (one, other)


def test_every_size_factor_group_of_the_lumber_is_in_the_factor_table():
    known = {row["size_factor_group"] for row in tables.table_rows("us_size_factor")} | {"timber"}
    sawn = ("lumber_dimension", "lumber_southern_pine", "lumber_timbers")
    used = {row["size_factor_group"] for name in sawn for row in tables.table_rows(name)}
    assert used <= known


@pytest.mark.parametrize(
    "name, column, low, high",
    [
        ("us_effective_length", "load", "slenderness_min", "slenderness_max"),
    ],
)
def test_ranges_follow_one_another_without_gap(name, column, low, high):
    rows = tables.table_rows(name)
    for group in dict.fromkeys(row[column] for row in rows):
        steps = [row for row in rows if row[column] == group]
        assert steps[0][low] == 0 and steps[-1][high] is None
        assert [row[high] for row in steps[:-1]] == [row[low] for row in steps[1:]]
