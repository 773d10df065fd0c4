"""One scene, two renderers: the same outlines and texts at the same places, every time the same."""

import re
import xml.etree.ElementTree as ElementTree

import numpy as np
import pytest
from matplotlib.image import imread
from matplotlib.patches import PathPatch
from matplotlib.path import Path
from matplotlib.text import Text
from pictures_samples import PATH, curves_view

from structlib.ground.refusals import BadInput
from structlib.pictures.drawings import (
    Board,
    BoardsView,
    HouseLevel,
    HouseSectionView,
    LoadBand,
    Mark,
    OpeningView,
    PreviousBeam,
    draw_beam_curves,
    draw_boards,
    draw_house_section,
    draw_load_path,
    draw_opening,
)
from structlib.pictures.labels import Label
from structlib.pictures.paper import figure_of, still
from structlib.pictures.scene import (
    Arrow,
    Curve,
    Dimension,
    Grain,
    Group,
    Line,
    Polygon,
    Scene,
    flat,
    runs,
    thin,
)
from structlib.pictures.svg import CODES, svg_of

SVG = "{http://www.w3.org/2000/svg}"


def opening():
    length = 2514.6
    x = np.linspace(0, length, 61)
    sag = 6.6 * np.sin(np.pi * x / length)
    marks = (
        Mark("bending", length / 2, 0.83, "The bottom fibres at mid-span are pulled hardest.", True),
        Mark("shear", 235, 0.46, "The wood slides along its grain near the end."),
        Mark("bearing", 0, 0.71, "The wood over the jacks is pressed across its grain."),
        Mark("sag", length / 2, 0.64, "The beam hangs lowest at mid-span."),
    )
    return draw_opening(
        OpeningView(
            title="Two 2x10s carry this floor: bending comes nearest its limit, at 83 %",
            clear_width=2438.4,
            left_seat=76.2,
            right_seat=76.2,
            beam_depth=234.95,
            opening_height=2057.4,
            plies=2,
            ply_width=38.1,
            material_kind="sawn",
            section_name="2-2x10",
            width_text="3 in",
            depth_text="9 1/4 in",
            clear_width_text="8'-0\" clear",
            left_jacks=2,
            right_jacks=2,
            joist_depth=184.15,
            loads=(
                LoadBand("snow 310 lb/ft", 4.5),
                LoadBand("live 240 lb/ft", 3.5),
                LoadBand("dead 135 lb/ft", 2.0),
            ),
            load_full=12.0,
            load_full_text="full arrow 820 lb/ft",
            sag_x=tuple(x),
            sag_y=tuple(sag),
            sag_text="true sag 0.26 in = L/382",
            sag_limit=length / 360,
            sag_limit_text="limit L/360",
            previous=PreviousBeam(184.15, tuple(x), tuple(1.5 * sag)),
            marks=marks,
            shear_x=tuple(x),
            shear_y=tuple(12573 * (1 - 2 * x / length)),
            shear_text="2,827 lb",
            moment_x=tuple(x),
            moment_y=tuple(10 * x * (length - x) / 2),
            moment_text="5,830 lb-ft",
        )
    )


def boards():
    x = np.linspace(0, 3657.6, 41)
    bow = np.sin(np.pi * x / 3657.6)
    return draw_boards(
        BoardsView(
            "Same wood, 4.3 times as stiff",
            Board("2-2x6", 2, 38.1, 139.7, "3 in", "5 1/2 in"),
            Board("2x12", 1, 38.1, 285.75, "1 1/2 in", "11 1/4 in"),
            "wood 1.02 ×",
            "strength 2.09 ×",
            "stiffness 4.28 ×",
            3657.6,
            "12'-0\"",
            tuple(x),
            tuple(16 * bow),
            tuple(3.74 * bow),
            "0.63 in",
            "0.15 in",
            previous=Board("2x10", 1, 38.1, 234.95, "", ""),
            previous_sag=tuple(6.7 * bow),
        )
    )


def house():
    return draw_house_section(
        HouseSectionView(
            "The middle wall carries 1,250 lb on every foot",
            (
                HouseLevel("roof", "roof", 5500, 4267, 3962, False),
                HouseLevel(
                    "attic floor",
                    "attic",
                    5300,
                    4267,
                    3962,
                    False,
                    2133,
                    1981,
                    "7 ft × 30 psf",
                    "6.5 ft × 30 psf",
                    "405 lb/ft",
                ),
                HouseLevel(
                    "upper floor",
                    "floor",
                    2700,
                    4267,
                    3962,
                    True,
                    2667,
                    2476,
                    "8.8 ft × 50 psf",
                    "8.1 ft × 50 psf",
                    "1,250 lb/ft",
                ),
            ),
            4267,
            3962,
            2400,
            wall_name="the middle wall",
        )
    )


def path():
    return draw_load_path(PATH)


def curves():
    return draw_beam_curves(curves_view(1500.0, before=1700.0))


DRAWINGS = {"opening": opening, "boards": boards, "house": house, "path": path, "curves": curves}
drawings = pytest.mark.parametrize("name", DRAWINGS)


def read_path(text):
    """Outlines of an SVG path made of m, l, h, v and z with steps."""
    outlines, x, y, way = [], 0.0, 0.0, ""
    tokens = re.findall(r"[a-z]|-?\d*\.?\d+", text)
    k = 0
    while k < len(tokens):
        if tokens[k].isalpha():
            way = tokens[k]
            k += 1
            if way == "z":
                outlines[-1][1] = True
                x, y = outlines[-1][0][0]
                continue
        dx = float(tokens[k]) if way != "v" else 0.0
        dy = float(tokens[k + (way in "ml")]) if way != "h" else 0.0
        k += 2 if way in "ml" else 1
        x, y = x + dx, y + dy
        if way == "m":
            outlines.append([[(x, y)], False])
            way = "l"
        else:
            outlines[-1][0].append((x, y))
    return outlines


def from_svg(text):
    root = ElementTree.fromstring(text)
    roles = {code: role for role, code in CODES.items()}
    outlines = [
        (roles[node.get("class").split()[0]], points, closed)
        for node in root.iter(f"{SVG}path")
        for points, closed in read_path(node.get("d"))
    ]
    texts = [(node.text, float(node.get("x")), float(node.get("y"))) for node in root.iter(f"{SVG}text")]
    return outlines, texts


def from_figure(figure):
    artists = sorted(figure.axes[0].get_children(), key=lambda artist: artist.get_zorder())
    outlines, texts = [], []
    for artist in artists:
        if isinstance(artist, PathPatch):
            path = artist.get_path()
            for (x, y), code in zip(path.vertices, path.codes):
                if code == Path.MOVETO:
                    outlines.append((artist.get_gid(), [(x, y)], False))
                elif code == Path.LINETO:
                    outlines[-1][1].append((x, y))
                else:
                    outlines[-1] = (*outlines[-1][:2], True)
        elif isinstance(artist, Text) and artist.get_text() and artist.get_gid() is None and artist.axes is not None:
            texts.append((artist.get_text(), *artist.get_position()))
    return outlines, texts


@drawings
def test_both_renderers_draw_the_same_outlines_and_texts_at_the_same_places(name):
    scene = DRAWINGS[name]()
    svg_outlines, svg_texts = from_svg(svg_of(scene))
    outlines, texts = from_figure(figure_of(scene))
    assert len(svg_outlines) == len(outlines) > 20
    for (role, points, closed), (other_role, other_points, other_closed) in zip(svg_outlines, outlines):
        assert (role, closed) == (other_role, other_closed)
        # a rounded step may hide a tenth, never more
        assert np.array(points) == pytest.approx(np.array(other_points), abs=0.051)
    assert [text for text, *_ in svg_texts] == [text for text, *_ in texts]
    assert np.array([place for _, *place in svg_texts]) == pytest.approx(np.array([p for _, *p in texts]), abs=0.051)


@drawings
def test_figure_maps_scene_units_to_pixels_evenly_and_in_the_middle(name):
    scene = DRAWINGS[name]()
    figure = figure_of(scene, (1920, 1080))
    scale = min(1920 / scene.width, 1080 / scene.height)
    to_pixels = figure.axes[0].transData.transform
    assert to_pixels((0, 0)) == pytest.approx((960 - scale * scene.width / 2, 540 + scale * scene.height / 2))
    assert to_pixels((scene.width, scene.height)) == pytest.approx(
        (960 + scale * scene.width / 2, 540 - scale * scene.height / 2)
    )


@drawings
def test_the_same_scene_gives_the_same_text_twice(name):
    assert svg_of(DRAWINGS[name]()) == svg_of(DRAWINGS[name]())


def test_a_live_opening_with_24_arrows_stays_small():
    scene = opening()
    arrows = [item for item in flat(scene.items) if type(item) is Arrow and item.role == "force"]
    assert len(arrows) == 24
    assert len(svg_of(scene).encode()) < 8000
    # all arrows of one role travel as one path
    assert sum(run.kind == "arrow" for run in runs(scene) if not isinstance(run, Label)) == 1


def test_signs_in_texts_are_escaped_and_come_back_as_written():
    odd = 'joists < 16" & "notched" > d/6'
    scene = Scene(720, 90, (Label(odd, 20, 40),), odd, "", odd)
    root = ElementTree.fromstring(svg_of(scene))
    assert root.get("aria-label") == odd
    assert next(root.iter(f"{SVG}text")).text == odd
    costs = Scene(720, 90, (Label("$12 and $15", 20, 40),), "costs", "", "costs")
    _, texts = from_figure(figure_of(costs))
    assert texts[0][0] == "$12 and $15"
    assert not figure_of(costs).axes[0].texts[-1].get_parse_math()


@drawings
def test_picture_is_an_image_with_its_message_for_a_screen_reader(name):
    scene = DRAWINGS[name]()
    root = ElementTree.fromstring(svg_of(scene))
    assert root.get("role") == "img" and root.get("aria-label") == scene.alt
    assert scene.alt.startswith(scene.title)
    assert root.get("viewBox") == f"0 0 {scene.width:g} {scene.height:g}" and root.get("width") == "100%"


# --- stills ---------------------------------------------------------------------------------


@pytest.mark.parametrize("size", [(1920, 1080), (1080, 1920), (640, 360)])
def test_still_has_the_size_asked_for(tmp_path, size):
    path = still(house(), tmp_path / "house.png", size)
    assert imread(path).shape[:2] == size[::-1]


@pytest.mark.parametrize("size", [(1920, 1080), (1080, 1920)])
@pytest.mark.parametrize("transparent", [True, False])
def test_svg_still_has_the_size_asked_for_in_pixels_and_its_words(tmp_path, size, transparent):
    scene = house()
    root = ElementTree.fromstring(
        still(scene, tmp_path / "house.svg", size, "dark", transparent=transparent).read_text()
    )
    assert (root.get("width"), root.get("height")) == tuple(map(str, size))
    box = [float(number) for number in root.get("viewBox").split()]
    assert box[2] / box[3] == pytest.approx(size[0] / size[1])
    words = " ".join(root.itertext())
    assert scene.title in words and scene.alt in words


@pytest.mark.parametrize("ending", [".png", ".svg"])
def test_still_is_the_same_bytes_twice_and_leaves_no_draft(tmp_path, ending):
    one = still(opening(), tmp_path / f"one{ending}", (640, 640))
    other = still(opening(), tmp_path / f"other{ending}", (640, 640))
    assert one.read_bytes() == other.read_bytes()
    assert sorted(path.name for path in tmp_path.iterdir()) == sorted([one.name, other.name])


def test_still_refuses_to_overwrite_unless_told(tmp_path):
    path = tmp_path / "house.png"
    path.write_text("mine")
    with pytest.raises(BadInput, match="exists already"):
        still(house(), path, (320, 320))
    assert path.read_text() == "mine"
    still(house(), path, (320, 320), overwrite=True)
    assert path.read_bytes().startswith(b"\x89PNG")


def test_a_still_that_fails_half_way_leaves_the_old_file_and_no_draft(tmp_path, monkeypatch):
    path = tmp_path / "house.png"
    path.write_text("mine")

    def breaks(figure, file, ending, scene):
        file.write(b"half a picture")
        raise RuntimeError("the disk is full")

    monkeypatch.setattr("structlib.pictures.paper._write", breaks)
    with pytest.raises(RuntimeError, match="disk is full"):
        still(house(), path, (320, 320), overwrite=True)
    assert path.read_text() == "mine" and list(tmp_path.iterdir()) == [path]


def test_a_file_that_appears_while_drawing_is_not_overwritten(tmp_path, monkeypatch):
    path = tmp_path / "house.png"
    from structlib.pictures import paper

    write = paper._write

    def slow(*args):
        write(*args)
        path.write_text("somebody else's")

    monkeypatch.setattr(paper, "_write", slow)
    with pytest.raises(BadInput, match="exists already"):
        still(house(), path, (320, 320))
    assert path.read_text() == "somebody else's" and list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize("theme", ["light", "dark"])
def test_paper_is_opaque_in_its_theme_or_left_clear(tmp_path, theme):
    opaque = imread(still(house(), tmp_path / "a.png", (400, 300), theme))
    clear = imread(still(house(), tmp_path / "b.png", (400, 300), theme, transparent=True))
    assert (opaque[..., 3] == 1).all()
    assert clear[2, 2, 3] == 0 and clear[..., 3].max() == 1
    assert (opaque[2, 2, :3].mean() > 0.5) == (theme == "light")


@pytest.mark.parametrize(
    "name, kwargs, words",
    [
        ("a.jpg", {}, "ending of the file"),
        ("a", {}, "ending of the file"),
        ("nowhere/a.png", {}, "does not exist"),
        ("a.png", {"size": (1920,)}, "width and a height"),
        ("a.png", {"size": "big"}, "width and a height"),
        ("a.png", {"size": 1080}, "width and a height"),
        ("a.png", {"size": (0, 1080)}, "between 64 pixels"),
        ("a.png", {"size": (1920.5, 1080)}, "whole number"),
        ("a.png", {"size": (float("nan"), 1080)}, "between 64 pixels"),
        ("a.png", {"theme": "sepia"}, "theme"),
    ],
)
def test_stills_that_cannot_be_are_refused_in_one_sentence(tmp_path, name, kwargs, words):
    with pytest.raises(BadInput, match=words) as caught:
        still(house(), tmp_path / name, **kwargs)
    assert "\n" not in str(caught.value)
    assert list(tmp_path.iterdir()) == []


# --- primitives -----------------------------------------------------------------------------


def test_arrow_head_lies_at_the_tip_and_is_never_longer_than_the_arrow():
    shaft, head = Arrow((10, 10), (10, 14), head=9).outlines()
    assert head[0] == (10, 14) and shaft == ((10, 10), (10, 10))
    assert max(y for _, y in head) == 14 and min(y for _, y in head) == 10


@pytest.mark.parametrize("kind", ["along", "layers", "rings"])
@pytest.mark.parametrize("box", [(0, 0, 500, 30), (10, 20, 40, 250), (0, 0, 20, 20)])
def test_grain_stays_inside_its_board(kind, box):
    lines = Grain(box, kind, 5).lines()
    assert lines
    for x, y in (point for line in lines for point in line.points):
        assert box[0] <= x <= box[2] and box[1] <= y <= box[3]


def test_thinned_curve_keeps_ends_peaks_and_jumps():
    xs = [0, 1, 2, 2, 3, 4]
    ys = [5, 5, 5, -5, -5, -5]
    assert thin(xs, ys, 0.1) == ((0, 5), (2, 5), (2, -5), (4, -5))
    x = np.linspace(0, 500, 201)
    y = 40 * np.sin(np.pi * x / 500)
    kept = thin(x, y, 0.2)
    assert len(kept) < 40
    assert np.interp(x, *zip(*kept)) == pytest.approx(y, abs=0.2)


def test_dimension_measures_from_its_points_and_says_its_text():
    parts = Dimension((100, 50), (400, 50), 30, "12 ft").parts()
    assert parts[0].points == ((100, 80), (400, 80))
    assert parts[-1].text == "12 ft" and parts[-1].x == 250


def test_a_curve_with_a_baseline_is_a_closed_area():
    (area,) = Curve((0, 10, 20), (5, 0, 5), "moment", 10).parts()
    assert isinstance(area, Polygon)
    assert area.points == ((0, 10), (0, 5), (10, 0), (20, 5), (20, 10))


@pytest.mark.parametrize(
    "xs, ys",
    [((), ()), ((1,), (1,)), ((0, 1), (0,)), ((0, 1), (0, float("nan"))), ((0, float("inf")), (0, 1))],
)
def test_curves_that_are_none_are_refused(xs, ys):
    with pytest.raises(BadInput):
        Curve(xs, ys, "moved").parts()


def test_a_scene_of_strange_things_is_refused():
    with pytest.raises(BadInput, match="shapes and groups, got str"):
        svg_of(Scene(9, 9, (Group("odd", ("text",)),), "odd", "", "odd"))
    assert svg_of(Scene(9, 9, (Line(((0, 0), (1, 1)), "ink"),), "line", "", "line"))
