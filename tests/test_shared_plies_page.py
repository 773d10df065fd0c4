"""The page of shared plies: its picture in every frame, its rows against direct calls, its gates, its
template."""

import itertools
import re
import xml.etree.ElementTree as ElementTree

import pytest
from label_boxes import label_overlaps

from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch, plf, psi
from structlib.mechanics import formulas
from structlib.mechanics.composite import loose_stiffness
from structlib.pages.kit.show import start_values
from structlib.pages.topics.shared_plies import flitch, tables
from structlib.pages.topics.shared_plies.page import ARRANGEMENTS, UnlikePliesPage
from structlib.pictures.labels import Label
from structlib.pictures.scene import Polygon, flat, outside
from structlib.pictures.template import CAUTION, MARGIN, drilling_template, save_template
from structlib.pictures.template_pages import drilling_pages

KINDS = [kind for _, kind in ARRANGEMENTS]
FRAMES = ("page", "wide", "tall")


def _shown(page=None, before=None, frame="page", **changes):
    page = page or UnlikePliesPage()
    return page.compute(start_values(page, **changes), before=before, frame=frame)


@pytest.mark.parametrize("frame", FRAMES)
@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("system", ["us", "metric"])
def test_no_label_overlaps_or_leaves_the_picture(system, kind, frame):
    page = UnlikePliesPage(system=system)
    slips = (0.0, 0.5, 1.0) if kind == "stack" else (1.0,)
    sizes = ((5.5, 1, 5.5), (9.25, 2, 9.25), (11.25, 4, 11.25))
    for span, (depth, plies, new), load, slip in itertools.product(
        (4 * ft, 20 * ft), sizes, (1 * plf, 1000 * plf), slips
    ):
        scene = _shown(
            page,
            frame=frame,
            arrangement=kind,
            span=span,
            depth=depth * inch,
            plies=plies,
            new_depth=new * inch,
            load=load,
            slip=slip,
            lands="side" if plies == 2 else "top",
        ).scene
        assert label_overlaps(scene) == [] and outside(scene) == []


def _fixed_labels(scene):
    """Where the labels stand; what they say may change."""
    return [(item.x, item.y, item.anchor) for item in flat(scene.items) if type(item) is Label]


@pytest.mark.parametrize("kind", KINDS)
def test_labels_keep_their_places_while_a_slider_moves(kind):
    page = UnlikePliesPage()
    places = set()
    for span in (8 * ft, 9 * ft, 12 * ft):
        # the caption may need a line more or less, so it is left out
        scene = _shown(page, arrangement=kind, span=span, slip=0.5).scene
        places.add(tuple(place for place in _fixed_labels(scene) if 70 < place[1] < 640))
    assert len(places) == 1


@pytest.mark.parametrize("kind", ["sister", "partial", "flitch"])
def test_the_section_keeps_its_scale_while_its_sizes_change(kind):
    def ply_width(**changes):
        scene = _shown(arrangement=kind, **changes).scene
        first = next(item for item in flat(scene.items) if type(item) is Polygon and item.role == "wood_cut")
        xs = [x for x, _ in first.points]
        return max(xs) - min(xs)

    assert ply_width(depth=5.5 * inch) == pytest.approx(ply_width(depth=11.25 * inch, plies=4))


def test_the_ghost_changes_no_row_and_is_drawn_dashed():
    page = UnlikePliesPage()
    values, before = start_values(page), start_values(page, new_depth=7.25 * inch)
    plain, ghost = page.compute(values), page.compute(values, before)
    assert plain.rows == ghost.rows and plain.notes == ghost.notes
    assert sum(getattr(item, "role", "") == "ghost" for item in flat(ghost.scene.items)) == 2
    assert "Dashed" in ghost.scene.caption


@pytest.mark.parametrize("kind", KINDS)
def test_the_alternative_text_says_what_the_picture_says(kind):
    scene = _shown(arrangement=kind).scene
    shares = re.findall(r"(\d+) %", scene.alt.split("shares of the bending:")[1].split(".")[0])
    assert 99 <= sum(map(int, shares)) <= 101
    assert scene.title in scene.alt and "sags" in scene.alt


def test_gates_withdraw_the_verdicts_and_leave_what_is_asked():
    for changes in (
        {"arrangement": "stack", "slip": 0.4},
        {"arrangement": "flitch", "lands": "side"},
        {"arrangement": "flitch", "plies": 3},
    ):
        open_rows = _shown(**{**changes, "slip": 1.0, "lands": "top", "plies": 2}).rows
        shown = _shown(**changes)
        assert len(shown.gates) == 1 and shown.gates[0].endswith("only what is asked is shown.")
        for row in shown.rows:
            assert row[2] == row[3] == "", row
            if row[0].startswith(("bending", "sag", "load")):
                assert row[1]
        assert any("%" in row[3] for row in open_rows)
    assert _shown().gates == ()


def test_rows_are_what_direct_calls_give():
    page = UnlikePliesPage()
    values = start_values(page, span=10 * ft, load=400 * plf)
    case, rows = page.case(tuple(values.items())), page.compute(values).rows
    moment = 400 * plf * (10 * ft) ** 2 / 8
    # two old 2x10 of 1.6 million psi beside 1 3/4 in of LVL of 2.0 million, all 9 1/4 in deep
    whole = (1.6e6 * 3.0 + 2.0e6 * 1.75) * psi * inch * (9.25 * inch) ** 3 / 12
    assert loose_stiffness(case.parts) == pytest.approx(whole)
    old = 1.6e6 * psi * 9.25 * inch / 2 * moment / whole
    assert rows[0][1] == f"{old / psi:,.0f} psi"
    sag = formulas.simple_uniform_deflection(line_load=400 * plf, span=10 * ft, bending_stiffness=whole)
    # the LVL sags by shear under its share: 6/5 M / (G A) with G of E/16
    sag += 3.5 / 8.3 * 1.2 * moment / (2.0e6 / 16 * psi * 1.75 * inch * 9.25 * inch)
    assert next(row for row in rows if row[0] == "sag")[1] == f"{sag / inch:.2f} in"


def test_a_partial_sister_sags_between_none_and_full_and_more_when_shorter():
    page = UnlikePliesPage()

    def sag(**changes):
        return max(page.case(tuple(start_values(page, **changes).items())).sag)

    full, lengths = sag(), [sag(arrangement="partial", length=part) for part in (0.9, 0.7, 0.5, 0.3)]
    assert full < lengths[0] < lengths[1] < lengths[2] < lengths[3] < 1.75 * full


def test_a_short_sister_names_the_arm_that_was_used():
    # 0.3 of 4 ft is 14.4 in: the groups meet in the middle, 7.2 in apart
    rows = _shown(arrangement="partial", length=0.3, span=4 * ft).rows
    told = next(row[4] for row in rows if row[0].startswith("outer"))
    assert "7 3/16 in apart" in told
    force = 300 / 12 * 48**2 / 8 * (2.0 * 1.75) / (2.0 * 1.75 + 1.6 * 3.0) / 7.2
    assert next(row[1] for row in rows if row[0].startswith("outer")) == f"{force:.0f} lb"


def test_the_sister_is_sheared_by_the_outer_groups_force():
    # 12 ft under 25 lb/in; the sister runs over 0.6 of it, so its inner group is 28.8 + 16 = 44.8 in in
    rows = {row[0]: row for row in _shown(arrangement="partial").rows}
    row = rows["shear in the sister between the end groups"]
    share = 2.0 * 1.75 / (2.0 * 1.75 + 1.6 * 3.0)
    force = share * 25 * 44.8 * (144 - 44.8) / 2 / 16
    stress = 1.5 * force / (1.75 * 9.25)
    assert row[1] == f"{stress:.0f} psi"
    given = float(row[2].split()[0])
    assert int(row[3].split()[0]) == pytest.approx(100 * stress / given, abs=0.6)


def test_a_plate_counts_its_holes_the_years_and_the_wood_past_the_end_bolts():
    rows = {row[0]: row for row in _shown(arrangement="flitch", new_depth=9 * inch).rows}
    wood_ei, steel_ei = 1.6e6 * 3 * 9.25**3 / 12, 29e6 * 0.5 * 9**3 / 12
    moment = 300 * 12**2 / 8 * 12
    whole, crept = wood_ei + steel_ei, wood_ei / 1.5 + steel_ei
    asked = {
        # a 9/16 in hole 2 5/16 in from the edge takes 8.4 % off the plate and 7.9 % off the wood
        "bending, old plies, at a bolt hole": 1.6e6 * 4.625 * moment / whole / 0.921,
        "bending, plate, at a bolt hole": 29e6 * 4.5 * moment / whole / 0.916,
        "the plate, if all the load stays for years": 29e6 * 4.5 * moment / crept / 0.916,
    }
    for name, stress in asked.items():
        assert float(rows[name][1].split()[0].replace(",", "")) == pytest.approx(stress, rel=2e-3), name
    row = rows["shear at the end bolts, no steel seat"]
    assert row[1] == "1,800 lb"
    assert row[2] == f"{180 * 2 / 3 * 3 * 6.9375 * 0.75**2:,.0f} lb" and row[3] == "128 % governs"


def test_a_sister_of_another_depth_is_said_to_miss_its_seat():
    def missed(**changes):
        return any("reaches the seat" in note for note in _shown(**changes).notes)

    assert missed(new_depth=7.25 * inch) and missed(new_depth=11.25 * inch) and not missed()


def test_the_last_note_is_the_caution_and_words_pass_no_verdict():
    from structlib.pages.kit.verdict import CAUTION

    for kind in KINDS:
        shown = _shown(arrangement=kind)
        assert shown.notes[-1] == CAUTION
        text = " ".join([*shown.notes, *shown.gates, shown.scene.alt, *(cell for row in shown.rows for cell in row)])
        assert not re.search(r"\b(safe|approved|OK)\b", text)


# ---- the tables -------------------------------------------------------------------------------------------


def test_stacks_run_from_twice_to_eight_times():
    shares = [float(row[2].split()[0]) for row in tables.stack_table().rows]
    assert shares[0] == 2.0 and shares[-1] == 8.0 and shares == sorted(shares)


def test_the_four_ways_are_four_and_the_shallow_pocket_takes_its_toll():
    wide = {row[0]: row for row in tables.four_ways_table().rows}
    tight = {row[0]: row for row in tables.four_ways_table(left=9.25 * inch, right=7.25 * inch).rows}
    assert list(wide) == list(tight) == ["sawn", "LVL", "flitch", "steel"]
    assert not any("over" in row[3] for row in wide.values())
    assert "over" in tight["sawn"][3] and "over" not in tight["steel"][3]


# ---- the template, in true size
# -----------------------------------------------------------------------------

SVG = "{http://www.w3.org/2000/svg}"


def _millimetres(text):
    return float(text.removesuffix("mm"))


def test_the_template_is_in_true_size():
    beam, bolts, _ = flitch._example_bolts(plate_bears=True)
    sheet = flitch.template_sheet(start=0.0, end=40 * inch, plate_bears=True)
    root = ElementTree.fromstring(sheet.text)
    x, y, width, height = map(float, root.get("viewBox").split())
    # one unit of the drawing is one millimetre of the print
    assert (x, y) == (0, 0)
    assert _millimetres(root.get("width")) == pytest.approx(width, abs=0.06)
    assert _millimetres(root.get("height")) == pytest.approx(height, abs=0.06)
    frame = next(one for one in root.iter(f"{SVG}rect") if one.get("class") == "beam")
    assert float(frame.get("width")) == pytest.approx(40 * 25.4, abs=1e-3)
    assert float(frame.get("height")) == pytest.approx(9.25 * 25.4, abs=1e-3)
    ruler = next(one for one in root.iter(f"{SVG}path") if one.get("class") == "ruler")
    assert float(re.search(r"h([\d.]+)", ruler.get("d"))[1]) == pytest.approx(101.6, abs=1e-3)
    holes = [one for one in root.iter(f"{SVG}circle")]
    expected = [hole for hole in bolts.holes if hole.along <= 40 * inch]
    assert len(holes) == len(expected) >= 4
    lower = float(frame.get("y")) + float(frame.get("height"))
    for circle, hole in zip(holes, expected):
        assert float(circle.get("cx")) - MARGIN == pytest.approx(hole.along, abs=1e-3)
        assert lower - float(circle.get("cy")) == pytest.approx(hole.up, abs=1e-3)
        assert 2 * float(circle.get("r")) == pytest.approx(12.7, abs=1e-3)


def test_a_stretch_further_along_counts_from_the_same_end():
    start = 60 * inch
    root = ElementTree.fromstring(flitch.template_sheet(start=start, end=start + 40 * inch, plate_bears=True).text)
    _, bolts, _ = flitch._example_bolts(plate_bears=True)
    inside = [hole.along for hole in bolts.holes if start <= hole.along <= start + 40 * inch]
    found = [float(one.get("cx")) - MARGIN + start for one in root.iter(f"{SVG}circle")]
    assert found == pytest.approx(inside, abs=1e-3) and found


def test_a_template_is_written_whole_and_never_over_another(tmp_path, monkeypatch):
    text, path = flitch.template_sheet(plate_bears=True).text, tmp_path / "left end.svg"
    assert save_template(text, path).read_text(encoding="utf-8") == text
    with pytest.raises(BadInput, match="exists already"):
        save_template(text, path)
    assert save_template(text + "<!-- -->", path, overwrite=True).read_text(encoding="utf-8").endswith("<!-- -->")
    assert [one.name for one in tmp_path.iterdir()] == ["left end.svg"]

    def broken(*_):
        raise OSError("the disk is full")

    import os

    monkeypatch.setattr(os, "replace", broken)
    before = path.read_text(encoding="utf-8")
    with pytest.raises(OSError, match="full"):
        save_template(text, path, overwrite=True)
    assert path.read_text(encoding="utf-8") == before and len(list(tmp_path.iterdir())) == 1


@pytest.mark.parametrize(
    "ask",
    [
        lambda folder: save_template("no template", folder / "a.svg"),
        lambda folder: save_template(flitch.template_sheet(plate_bears=True).text, folder / "a.png"),
        lambda folder: save_template(flitch.template_sheet(plate_bears=True).text, folder / "nowhere" / "a.svg"),
        lambda folder: flitch.template_sheet(start=0.0, end=1 * inch, plate_bears=True),
        lambda folder: flitch.template_sheet(start=0.0, end=9 * ft, plate_bears=True),
        lambda folder: flitch.template_sheet(start=8 * inch, end=14 * inch, plate_bears=True),
        lambda folder: drilling_template(
            [(50.0, 50.0)], diameter=0.0, depth=200.0, start=0.0, end=300.0, title="", shares=[("bolts", 0.5)], gates=()
        ),
    ],
)
def test_bad_templates_are_refused(ask, tmp_path):
    with pytest.raises(BadInput):
        ask(tmp_path)
    assert list(tmp_path.iterdir()) == []


STRETCH = dict(diameter=12.7, depth=235.0, start=0.0, end=300.0, title="a plate")


@pytest.mark.parametrize("draw", [drilling_template, drilling_pages])
def test_no_template_is_drawn_while_a_share_is_over_or_a_gate_stands(draw):
    """Refused where it is drawn, so that no page can print one."""
    hole, fine = [(50.0, 60.0)], [("bolts", 0.64), ("bending", 1.0)]
    assert draw(hole, shares=fine, gates=(), **STRETCH)
    for share in (1.001, 2.49, float("inf"), float("nan")):
        with pytest.raises(OutsideRule, match="end bolts"):
            draw(hole, shares=[*fine, ("shear at the end bolts", share)], gates=(), **STRETCH)
    with pytest.raises(OutsideRule, match="loaded from one side"):
        draw(hole, shares=fine, gates=("a beam loaded from one side",), **STRETCH)
    with pytest.raises(BadInput, match="at least one"):
        draw(hole, shares=(), gates=(), **STRETCH)
    with pytest.raises(BadInput, match="S-201"):
        draw(hole, shares=fine, gates=(), drawing=" ", **STRETCH)


def test_the_notebooks_flitch_gets_no_template_without_a_steel_seat():
    """Its end bolts use 249 %: 4,510 lb of push on 2/3 (6.94/9.25)^2 180 psi of 6.94 in of two plies."""
    for ask in (flitch.template_sheet, flitch.template_pages):
        with pytest.raises(OutsideRule, match="shear at the end bolts uses 249 %"):
            ask()
        with pytest.raises(OutsideRule, match="loaded from one side"):
            ask(plate_bears=True, job=tables.example_job(loaded_on="side"))
        with pytest.raises(OutsideRule, match="above 100 %"):
            ask(plate_bears=True, job=tables.example_job(live=600 * plf))


@pytest.mark.parametrize("drawing", ["", "S-201"])
def test_every_sheet_carries_caution_shares_and_the_line_for_the_drawing(drawing):
    """By hand, M = 1/8 (569 plf) (12.25 ft)^2 and 8 % off for a hole: 87 % of the wood's 990 psi."""
    text = flitch.template_sheet(plate_bears=True, drawing=drawing).text
    pages = [
        " ".join(one.text for one in page.words)
        for page in flitch.template_pages(end=28 * inch, plate_bears=True, drawing=drawing)
    ]
    sheet = " ".join(ElementTree.fromstring(text).itertext())
    assert len(pages) == 4
    for told in (sheet, *pages):
        told = " ".join(told.split())
        assert CAUTION in told and "bending, wood at a bolt hole 87 %" in told
        assert ("NOT FOR DRILLING" in told) == ("Not for drilling" in told) == (drawing == "")
        assert ("Engineer's drawing no. S-201" in told) == (drawing != "")


def test_a_plate_cut_at_mid_span_leaves_the_wood_to_carry_all():
    rows = flitch.plate_pieces_table().rows
    # w L^2 / 8 over 12.25 ft, on two 2x10 of 21.39 in3 each, with the bending value that the check shows
    load = 550 + (2 * 1.5 * 9.25 / 144) * 34 + 0.5 * 9 / 144 * 490
    stress = load * 12.25**2 / 8 * 12 / (2 * 21.390625)
    assert rows[0][3] == "-"
    assert int(rows[1][3].split()[0]) == pytest.approx(100 * stress / 990, abs=1.5)
    assert int(rows[2][3].split()[0]) < int(rows[1][3].split()[0])


def _nails_row(page, **changes):
    rows = _shown(page, **changes).rows
    return next(row for row in rows if row[0] == "load to pass between the pieces")[-1]


@pytest.mark.parametrize("system, widest", [("us", 24.0), ("metric", 600.0)])
def test_nails_never_stand_farther_apart_than_practice_sets_them(system, widest):
    """Like pieces share like loads: nothing passes, or only rounding. It came out once every 8e15 ft."""
    page, found = UnlikePliesPage(system=system), set()
    for depth, new, plies, load, lands in itertools.product(
        (5.5, 9.25, 11.25), (5.5, 7.25, 9.25, 11.25), (1, 2, 3), (1 * plf, 30 * plf, 600 * plf), ("top", "side")
    ):
        said = _nails_row(
            page,
            arrangement="sister",
            partner="fir",
            depth=depth * inch,
            new_depth=new * inch,
            plies=plies,
            load=load,
            lands=lands,
        )
        alike = depth == new and lands == "top"
        assert ("nothing has to pass" in said) == alike, said
        apart = re.match(r"one 16d common nail every (?:(\d+) ft ?)?(?:([\d.]+) (in|mm))?", said)
        if apart:
            feet, rest, _ = apart.groups()
            assert 12 * float(feet or 0) + float(rest or 0) <= widest, said
            found.add(said.split(":")[0])
        if apart or alike:
            assert "the usual pattern: 16d common in 2 lines" in said and "pairs of 16d, seen" in said
    assert len(found) > 3


def test_no_load_on_the_side_is_said_and_names_the_usual_pattern():
    from structlib.pages.topics.seat import tables as seat_tables

    for row in seat_tables.nailing_from_the_side(0.0).rows:
        assert "nothing has to pass" in row and "16d common in 2 lines, every 12 in" in row[-1]


@pytest.mark.parametrize("right", [11.25 * inch, 7.25 * inch])
def test_the_line_above_the_four_ways_names_every_way_that_is_left(right):
    """The notebook said that only steel is left where a flitch stood at 98 %: the table says it now."""
    table = tables.four_ways_table(middle=11.25 * inch, right=right)
    told = re.match(r"left at 100 % or below in [^:]*: ([^;]*);", table.caption).group(1).split(", ")
    within = [row[0] for row in table.rows if re.fullmatch(r"(\d\d?|100) %", row[3])]
    assert told == within and "flitch" in told and "steel" in told
    assert ("sawn" in told) == (right > 8 * inch)
