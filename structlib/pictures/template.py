"""A drilling template in true size: an SVG file whose units are millimetres, with a ruler to check the print.

A printer that scales a page moves every hole. The ruler shows it: four inches long, or the print is wrong.
A sheet is drawn only where no check is over its limit and no gate stands, and says so itself; without the
number of an engineer's drawing it says that it is not for drilling.
"""

import html
import os
import tempfile
import textwrap
from math import isfinite, isnan
from pathlib import Path

from structlib.ground.refusals import BadInput, OutsideRule, check_number
from structlib.ground.showing import show
from structlib.ground.units import ft, inch

MARGIN = 12.0  # around the drawing
RULER = 4 * inch
_HEAD = 16.0  # room for the title
_FOOT = 34.0  # room for the ruler and its words
_TEXT = 4.2
_SMALL = 0.8 * _TEXT
_LINE = 5.0  # from line to line of the small words

CAUTION = "This sheet teaches and prepares. A licensed engineer, the local code and the permit decide what is drilled."
NOT_FOR_DRILLING = "NOT FOR DRILLING"
_BLANK = "Not for drilling: no number of an engineer's drawing. Drawing no. ____________"


def drilling_template(
    holes, *, diameter, depth, start, end, title, shares, gates, drawing="", plate_depth=None, system="us"
):
    """Draw a stretch of a drilling template in true size, as the text of an SVG file.

    ``holes``, ``diameter``, ``depth``, ``start``, ``end``, ``plate_depth`` [mm].

    Examples
    --------
    >>> sizes = dict(diameter=12.7, depth=235.0, start=0.0, end=200.0, shares=[("bolts", 0.64)], gates=())
    >>> text = drilling_template([(50.0, 60.0)], title="left end", **sizes)
    >>> 'width="224.0mm"' in text
    True
    """
    check_stretch(diameter, depth, start, end)
    told = sheet_words(shares, gates, drawing)
    numbered = enumerate(holes, 1)
    here = [(number, x, up) for number, (x, up) in numbered if start - 1e-6 <= x <= end + 1e-6]
    if not here:
        raise BadInput(
            f"no hole lies between {show(start, 'length', system)} and {show(end, 'length', system)}; "
            "take another stretch of the plate"
        )
    width = end - start + 2 * MARGIN
    below = [line for text in told for line in textwrap.wrap(text, int((width - 2 * MARGIN) / (0.52 * _SMALL)))]
    height = depth + _HEAD + _FOOT + _LINE * len(below) + 2 * MARGIN
    left, top = MARGIN, MARGIN + _HEAD
    bottom = top + depth
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.1f}mm" height="{height:.1f}mm" '
        f'viewBox="0 0 {width:.3f} {height:.3f}" role="img">',
        f"<title>{html.escape(title)}: {len(here)} holes, true size</title>",
        '<rect width="100%" height="100%" fill="#fff"/>',
        '<g fill="none" stroke="#000" stroke-width="0.3">',
        f'<rect class="beam" x="{left:.3f}" y="{top:.3f}" width="{end - start:.3f}" height="{depth:.3f}"/>',
    ]
    if plate_depth is not None and plate_depth < depth:
        inset = (depth - plate_depth) / 2
        lines += [
            f'<path stroke-dasharray="3 2" d="M{left:.3f} {y:.3f}h{end - start:.3f}"/>'
            for y in (top + inset, bottom - inset)
        ]
    if not drawing:
        size = min((end - start) / (0.72 * len(NOT_FOR_DRILLING)), 0.4 * depth)
        lines.insert(
            3,
            f'<text x="{left + (end - start) / 2:.3f}" y="{top + (depth + 0.7 * size) / 2:.3f}" '
            f'font-family="sans-serif" font-size="{size:.2f}" text-anchor="middle" fill="#ccc">'
            f"{NOT_FOR_DRILLING}</text>",
        )
    texts = [(left, MARGIN + _TEXT, title, 1.2)]
    for number, along, up in here:
        x, y = left + along - start, bottom - up
        lines.append(f'<circle class="hole" cx="{x:.3f}" cy="{y:.3f}" r="{diameter / 2:.3f}"/>')
        lines.append(f'<path d="M{x - 6:.3f} {y:.3f}h12M{x:.3f} {y - 6:.3f}v12"/>')
        words = f"{number}: {from_end(along, system)}, {show(up, 'section length', system)} up"
        # a text must not leave the sheet on the right
        texts.append((min(x + 7.5, max(left, width - MARGIN - 1.9 * len(words))), y - 2.0, words, 0.8))
    ruler = bottom + 12.0
    lines.append(f'<path class="ruler" stroke-width="0.5" d="M{left:.3f} {ruler:.3f}h{RULER:.3f}"/>')
    lines += [f'<path d="M{left + k * inch / 2:.3f} {ruler:.3f}v{-4 if k % 2 == 0 else -2.5}"/>' for k in range(9)]
    lines.append("</g>")
    texts.append((left, ruler + 6, "This ruler is 4 in (101.6 mm) long. If it is not, the print is", 0.8))
    texts.append((left, ruler + 11, "scaled: print again at 100 %, without fitting to the page.", 0.8))
    texts += [(left, ruler + 11 + _LINE * row, line, 0.8) for row, line in enumerate(below, 1)]
    lines.append('<g font-family="sans-serif" fill="#000">')
    lines += [
        f'<text x="{x:.3f}" y="{y:.3f}" font-size="{_TEXT * size:.2f}">{html.escape(text)}</text>'
        for x, y, text, size in texts
    ]
    return "\n".join([*lines, "</g>", "</svg>"]) + "\n"


def sheet_words(shares, gates, drawing):
    """Say what every sheet carries: its drawing, the shares and the caution; or refuse the sheet.

    Examples
    --------
    >>> sheet_words([("bolts", 0.64), ("bending", 0.87)], (), "S-201")[:2]
    ("Engineer's drawing no. S-201", 'Shares used: bending 87 %; bolts 64 %.')
    """
    shares, gates = tuple(shares), tuple(gates)
    if gates:
        raise OutsideRule(f"no template is drawn while a gate stands: {gates[0]}")
    if not shares:
        raise BadInput("a template carries the shares of its checks; give at least one, such as ('bolts', 0.64)")
    name, most = max(shares, key=lambda one: float("inf") if isnan(one[1]) else one[1])
    if not most <= 1 + 1e-9:
        raise OutsideRule(
            f"no template is drawn while a share is above 100 %: {name} uses {show(most, 'ratio') if isfinite(most) else most}; an engineer "
            "decides what is drilled, and whether"
        )
    if not isinstance(drawing, str) or len(drawing) > 40 or bool(drawing) != bool(drawing.strip()):
        raise BadInput("the number of a drawing is a text of 1 to 40 letters, for example 'S-201'")
    ordered = sorted(shares, key=lambda one: -one[1])
    listed = "; ".join(f"{name} {show(share, 'ratio')}" for name, share in ordered)
    return f"Engineer's drawing no. {drawing}" if drawing else _BLANK, f"Shares used: {listed}.", CAUTION


def save_template(text, path, *, overwrite=False):
    """Write a template to a file, whole or not at all.

    Examples
    --------
    >>> folder = tempfile.TemporaryDirectory()
    >>> sizes = dict(diameter=12.7, depth=235.0, start=0.0, end=200.0, shares=[("bolts", 0.64)], gates=())
    >>> text = drilling_template([(50.0, 60.0)], title="end", **sizes)
    >>> save_template(text, folder.name + "/end.svg").name
    'end.svg'
    >>> folder.cleanup()
    """
    if not isinstance(text, str) or not text.startswith("<svg"):
        raise BadInput("a template is what drilling_template returns; nothing was written")
    path = Path(path)
    if path.suffix.lower() != ".svg":
        raise BadInput(f"a template ends in .svg, got {path.name!r}; for example left_end.svg")
    if not path.parent.is_dir():
        raise BadInput(f"the folder {str(path.parent)!r} does not exist; make it first or choose another")
    if path.exists() and not overwrite:
        raise BadInput(f"{path.name!r} exists already; choose another name or give overwrite=True")
    handle, draft = tempfile.mkstemp(dir=path.parent, prefix=f".{path.stem}-", suffix=".svg")
    try:
        with os.fdopen(handle, "w", encoding="utf-8") as file:
            file.write(text)
        mask = os.umask(0)
        os.umask(mask)
        os.chmod(draft, 0o666 & ~mask)
        if overwrite:
            os.replace(draft, path)
        else:
            _link(draft, path)
    finally:
        if os.path.exists(draft):
            os.unlink(draft)
    return path


def _link(draft, path):
    try:
        os.link(draft, path)
    except FileExistsError:
        raise BadInput(f"{path.name!r} exists already; choose another name or give overwrite=True") from None
    except OSError:
        os.replace(draft, path)  # a disk without hard links: the check before has to do


def from_end(along, system):
    """Write a distance from the end of a beam as a carpenter reads it: inches up to 4 ft, then feet and inches.

    ``along`` [mm].

    Examples
    --------
    >>> from_end(40 * inch, "us"), from_end(52 * inch, "us")
    ('40 in', '4 ft 4 in')
    """
    return show(along, "section length" if along < 4 * ft or system == "metric" else "length", system)


def check_stretch(diameter, depth, start, end):
    """Refuse sizes of which no template can be drawn.

    ``diameter``, ``depth``, ``start``, ``end`` [mm].

    Examples
    --------
    >>> check_stretch(12.7, 235.0, 0.0, 250.0)
    """
    limits = {"low": 0.0, "low_allowed": False, "shown": lambda size: f"{size:g} mm"}
    check_number("diameter", diameter, high=2 * inch, hint="for example 0.5*inch", **limits)
    check_number("depth", depth, high=24 * inch, hint="for example 9.25*inch", **limits)
    check_number("start", start, low=0.0, high=40 * ft, hint="mm from the left end")
    check_number(
        "end",
        end,
        low=start + RULER,
        high=start + 8 * ft,
        shown=lambda size: f"{size:g} mm",
        hint="at least as long as the ruler of 4 in, and at most 8 ft",
    )
