"""The drilling template on letter paper: true size in the file, and one chain of pages."""

import re
import shutil
import subprocess

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch
from structlib.pages.topics.shared_plies import flitch
from structlib.pictures.paper import template_pdf
from structlib.pictures.template_pages import OVERLAP, drilling_pages

SIZES = dict(diameter=0.5 * inch, title="a plate", shares=[("bolts", 0.64)], gates=())


def _pages(holes=((50.0, 60.0),), **changes):
    return drilling_pages(holes, **(SIZES | dict(depth=9.25 * inch, start=0.0, end=24 * inch) | changes))


@settings(max_examples=60, deadline=None)
@given(
    depth=st.floats(4.0, 24.0),
    start=st.floats(0.0, 120.0),
    length=st.floats(4.1, 95.9),
    where=st.floats(0.0, 1.0),
    high=st.floats(0.05, 0.95),
)
def test_windows_fill_the_stretch_and_keep_to_the_paper(depth, start, length, where, high):
    hole = ((start + where * length) * inch, high * depth * inch)
    pages = _pages([hole], depth=depth * inch, start=start * inch, end=(start + length) * inch)
    for page in pages:
        low, far, down, up = page.window
        assert {round(page.width / inch, 6), round(page.height / inch, 6)} == {8.5, 11.0}
        assert far - low <= 10 * inch + 1e-6
        for stroke in page.strokes:
            assert all(0 <= x <= page.width and 0 <= y <= page.height for x, y in stroke.points)
    along = sorted({page.window[:2] for page in pages})
    assert along[0][0] == pytest.approx(start * inch)
    assert along[-1][1] == pytest.approx((start + length) * inch)
    for one, two in zip(along, along[1:]):
        assert one[1] - two[0] == pytest.approx(OVERLAP)
    upward = sorted({page.window[2:] for page in pages})
    assert upward[0][0] == 0 and upward[-1][1] == pytest.approx(depth * inch)
    # the centre of the hole is on one page at least, at its own distance from the window's corner
    centres = [
        (x, y, page)
        for page in pages
        for x, y, _ in page.holes
        if page.window[0] <= hole[0] <= page.window[1] and page.window[2] <= hole[1] <= page.window[3]
    ]
    assert centres
    for x, _y, page in centres:
        margin = (page.width - page.window[1] + page.window[0]) / 2
        assert x - margin == pytest.approx(hole[0] - page.window[0])


def test_pages_and_holes_are_numbered_and_each_page_has_its_ruler():
    pages = flitch.template_pages(end=24 * inch, plate_bears=True)
    for number, page in enumerate(pages, 1):
        told = " ".join(words.text for words in page.words)
        assert f"Page {number} of {len(pages)}" in told and "lay x on x" in told and "4 in (101.6 mm)" in told
    later = flitch.template_pages(start=5 * ft, end=6 * ft, plate_bears=True)
    further = " ".join(words.text for page in later for words in page.words)
    # the sixth row of the list of holes, not the first of this stretch
    sixth = flitch.holes_table(plate_bears=True).rows[5]
    assert f"6: {sixth[1]}, {sixth[2]} up" in further


def test_neighbours_draw_the_same_cross():
    one, two = _pages(end=14 * inch)

    def crosses(page):
        corner = (page.width - page.window[1] + page.window[0]) / 2 - page.window[0]
        middles = set()
        for (x, y), (to_x, to_y) in (stroke.points for stroke in page.strokes):
            if x != to_x and y != to_y:  # a slanted line is half a cross
                middles.add((round((x + to_x) / 2 - corner, 3), round((y + to_y) / 2, 3)))
        return sorted(middles)

    assert crosses(one) == crosses(two) and len(crosses(one)) == 2


def _dark_rows(path, page, folder, dpi=100):
    """Pixels of one page, drawn by a program that knows nothing of ours: rows of True where ink is."""
    subprocess.run(
        ["pdftoppm", "-r", str(dpi), "-gray", "-f", str(page), "-l", str(page), str(path), str(folder / "p")],
        check=True,
        timeout=60,
    )
    data = next(folder.glob("p*.pgm")).read_bytes()
    head = re.match(rb"P5\s+(\d+)\s+(\d+)\s+255\s", data)
    width, height = int(head[1]), int(head[2])
    body = data[head.end() :]
    return [[value < 128 for value in body[row * width : (row + 1) * width]] for row in range(height)]


def _longest(row):
    """Length and first pixel of the longest run of ink."""
    best, begin = (0, 0), None
    for place, dark in enumerate([*row, False]):
        if dark and begin is None:
            begin = place
        elif not dark and begin is not None:
            best, begin = max(best, (place - begin, begin)), None
    return best


@pytest.mark.skipif(shutil.which("pdftoppm") is None, reason="pdftoppm is not installed")
def test_the_pdf_is_in_true_size(tmp_path):
    path = template_pdf(flitch.template_pages(end=24 * inch, plate_bears=True), tmp_path / "left end.pdf")
    boxes = re.findall(rb"/MediaBox\s*\[\s*([\d. ]+)\]", path.read_bytes())
    assert len(boxes) == 4 and all(tuple(map(float, box.split())) == (0, 0, 612, 792) for box in boxes)
    rows = _dark_rows(path, 1, tmp_path)
    assert (len(rows[0]), len(rows)) == (850, 1100)
    lines = [(number, *_longest(row)) for number, row in enumerate(rows)]
    # the ruler, 4 in at 100 dots an inch, stands in the foot of the page; a pixel of line end on either side
    foot = [line for line in lines if line[0] > 1000 and line[1] > 300]
    assert foot and all(400 <= length <= 403 for _, length, _ in foot)
    # the edges of the beam: 7 1/2 in of it on this page, 9 1/4 in apart
    edges = [line for line in lines if line[0] <= 1000 and line[1] > 700]
    assert all(749 <= length <= 754 for _, length, _ in edges)
    assert edges[-1][0] - edges[0][0] == pytest.approx(925, abs=3)
    # hole 1: its centre 2 in from the left end and 2 5/16 in above the lower edge; cross and circle
    # together are 1/2 in wide, and a line of 0.3 mm
    left, lower = edges[0][2], edges[-1][0]
    at = round(lower - 231)
    near = [_longest(row[left + 150 : left + 250]) for row in rows[at - 3 : at + 4]]
    cross = [(length, begin) for length, begin in near if length > 40]
    assert cross
    for length, begin in cross:
        assert length == pytest.approx(50 + 0.3 / 25.4 * 100, abs=2)
        assert begin + length / 2 + 150 == pytest.approx(200, abs=3)


def test_a_pdf_is_written_whole_and_never_over_another(tmp_path, monkeypatch):
    pages, path = flitch.template_pages(plate_bears=True), tmp_path / "a.pdf"
    first = template_pdf(pages, path).read_bytes()
    assert first.startswith(b"%PDF")
    with pytest.raises(BadInput, match="exists already"):
        template_pdf(pages, path)
    assert template_pdf(pages, path, overwrite=True).read_bytes() == first

    from matplotlib.backends.backend_pdf import PdfPages

    def broken(*_, **__):
        raise OSError("the disk is full")

    monkeypatch.setattr(PdfPages, "savefig", broken)
    with pytest.raises(OSError, match="full"):
        template_pdf(pages, path, overwrite=True)
    assert path.read_bytes() == first and [one.name for one in tmp_path.iterdir()] == ["a.pdf"]


@pytest.mark.parametrize(
    "ask",
    [
        lambda folder: template_pdf((), folder / "a.pdf"),
        lambda folder: template_pdf("pages", folder / "a.pdf"),
        lambda folder: template_pdf(_pages(), folder / "a.png"),
        lambda folder: template_pdf(_pages(), folder / "nowhere" / "a.pdf"),
        lambda folder: _pages(end=1 * inch),
        lambda folder: _pages(end=9 * ft),
        lambda folder: _pages(depth=float("nan")),
        lambda folder: _pages(holes=[(900.0, 50.0)]),
    ],
)
def test_bad_pages_are_refused(ask, tmp_path):
    with pytest.raises(BadInput):
        ask(tmp_path)
    assert list(tmp_path.iterdir()) == []
