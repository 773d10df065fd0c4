"""Numbers and refusals that ties, ridges and heel joints share."""

from structlib.ground.units import ft
from structlib.rules.check import Check
from structlib.rules.keyed import KeyedNumbers
from structlib.rules.us import factors
from structlib.rules.us.one_number import check_one_number, inches_text, length_text

_NUMBERS = KeyedNumbers("us_roof_tie_rules")
_row, _number, _verified = _NUMBERS.row, _NUMBERS.number, _NUMBERS.verified
_SLACK = 1e-9
_FRACTION = {"low": 0.0, "high": 0.95, "hint": "0 at the wall plate, 1/3 at a third of the height"}


def _at_least(name, least, has, key):
    return _size_check(name, least, has, least / has, "least <= size", key)


def _at_most(name, has, most, key):
    return _size_check(name, has, most, has / most, "size <= most", key)


def _size_check(name, asked, given, share, formula, key):
    row = _row(key)
    symbols = formula.split(" <= ")
    return Check(
        name=name,
        kind="size",
        sentence=row["meaning"],
        asked=float(asked),
        given=float(given),
        share=float(share),
        dimension="section length",
        position=0.0,
        where=name,
        combination="any",
        clause=row["source"],
        formula=formula,
        substitute=(
            (symbols[0], float(asked), "section length"),
            (symbols[1], float(given), "section length"),
        ),
        verified=row["verified"],
    )


def _dressed(nominal):
    return _number("dressed_one_inch") if nominal == 1 else factors.dressed_of(nominal)


def _check_piece(width, depth, spacing):
    for name, value in (("width", width), ("depth", depth)):
        check_one_number(
            name,
            value,
            low=0.0,
            high=3000.0,
            low_allowed=False,
            shown=inches_text,
            hint="for example 1.5*inch",
        )
    _check_spacing(spacing)


def _check_spacing(spacing):
    check_one_number(
        "spacing",
        spacing,
        low=0.0,
        high=20 * ft,
        low_allowed=False,
        shown=inches_text,
        hint="for example 16*inch",
    )


def _check_span(span):
    check_one_number(
        "span", span, low=0.0, high=200 * ft, low_allowed=False, shown=length_text, hint="for example 24*ft"
    )


def _check_slope(rise, run):
    check_one_number("rise", rise, low=0.0, high=60, hint="for example rise 6 in run 12")
    check_one_number("run", run, low=0.0, high=60, low_allowed=False, hint="for example rise 6 in run 12")
