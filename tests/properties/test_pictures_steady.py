"""While a slider moves, no text of a live picture jumps: each stands in its own place."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from label_boxes import label_overlaps, labels_of
from pictures_samples import PATH, curves_view
from test_pictures_drawings import BOARDS, MARKS, OPENING

from structlib.pictures.drawings import (
    BeamSupport,
    Board,
    CurvePoint,
    CurveSpread,
    PreviousBeam,
    Station,
    draw_beam_curves,
    draw_boards,
    draw_load_path,
    draw_opening,
)
from structlib.pictures.drawings.load_path import PLACES
from structlib.pictures.drawings.parts import FRAMES, TITLE_ROOM, title_labels
from structlib.pictures.scene import Line, flat, outside

frames = st.sampled_from(sorted(FRAMES))
every_frame = pytest.mark.parametrize("frame", sorted(FRAMES))


def swept(clear_width):
    """The opening at a clear width: the sag of an even load grows with the fourth power of the span."""
    length = clear_width + 76.2
    x = np.linspace(0, length, 49)
    sag = 6.0 * (length / 2514.6) ** 4 * np.sin(np.pi * x / length)
    marks = tuple(replace(mark, x={"shear": 235.0, "bearing": 0.0}.get(mark.kind, length / 2)) for mark in MARKS)
    return replace(
        OPENING,
        clear_width=clear_width,
        sag_x=tuple(x),
        sag_y=tuple(sag),
        sag_limit=length / 240,
        marks=marks,
        point_loads=(),
        shear_x=tuple(x),
        shear_y=tuple(length - 2 * x),
        moment_x=tuple(x),
        moment_y=tuple(x * (length - x)),
        exaggeration=40.0,
        camera_width=4876.8,
        camera_depth=457.2,
    )


def column_and_strip(scene):
    return {label.text.split("×")[0]: (label.x, label.y) for label in labels_of(scene)}


@every_frame
def test_no_text_of_the_opening_moves_while_the_span_is_dragged(frame):
    widths = np.arange(3, 20.1, 0.25) * 304.8
    places = [column_and_strip(draw_opening(swept(float(width)), frame)) for width in widths]
    names = set(places[0]) & set(places[-1])
    assert {"bending", "shear", "bearing", "sag", "governs", "46 %", "limit L/360", "sag "} <= names
    for name in names:
        assert len({place[name] for place in places if name in place}) == 1, name


@every_frame
def test_the_governing_check_is_marked_where_it_stands(frame):
    def places(governing):
        marks = tuple(replace(mark, governs=mark.kind == governing) for mark in MARKS)
        scene = draw_opening(replace(OPENING, marks=marks), frame)
        names = {mark.kind for mark in MARKS}
        below = [label for label in labels_of(scene) if label.text in names and label.anchor == "middle"]
        return {label.text: (label.x, label.y) for label in below}

    assert len({tuple(sorted(places(mark.kind).items())) for mark in MARKS}) == 1


@every_frame
def test_going_back_gives_the_same_picture_but_for_the_ghost(frame):
    view = swept(2438.4)
    far = PreviousBeam(400.0, view.sag_x, tuple(30 * y for y in view.sag_y))
    one, other = draw_opening(view, frame), draw_opening(replace(view, previous=far), frame)
    assert column_and_strip(one)["sag "] == column_and_strip(other)["sag "]
    curve = [
        [item.points for item in flat(scene.items) if type(item) is Line and item.role == "moved"]
        for scene in (one, other)
    ]
    assert curve[0] == curve[1]
    assert outside(other) == []


def test_sag_is_drawn_at_one_factor_until_it_is_past_its_limit():
    factors = []
    for width in np.arange(3, 16, 0.25) * 304.8:
        view = swept(float(width))
        drawn = [label.text for label in labels_of(draw_opening(view)) if label.text.startswith("sag ×")]
        factors.append((max(view.sag_y) / view.sag_limit, float(drawn[0].split("×")[1])))
    assert {factor for share, factor in factors if share <= 1} == {40.0}
    # past it, the factor falls by round steps and is printed
    assert {factor for _, factor in factors} <= {40.0, 20.0, 10.0, 5.0, 2.0, 1.0}


def test_every_frame_prints_the_same_factor_and_numbers():
    for width in (1200.0, 3000.0, 5500.0):
        captions = {draw_opening(swept(width), frame).caption.replace(" Posts cut short.", "") for frame in FRAMES}
        assert len(captions) == 1
    for depth in (25.0, 100.0, 285.75):
        board = Board("yours", 1, 38.1, depth, "1 1/2 in", "some in")
        sag = tuple(s * (285.75 / depth) ** 3 for s in BOARDS.current_sag)
        view = replace(BOARDS, current=board, current_sag=sag)
        assert len({draw_boards(view, frame).caption for frame in FRAMES}) == 1


@every_frame
def test_texts_of_the_boards_stay_while_depth_is_dragged(frame):
    fixed = ("wood", "strength", "stiffness", "2-2x6", "yours")
    seen = set()
    for depth in np.arange(1, 16.1, 0.5) * 25.4:
        board = Board("yours", 1, 11 * 645.16 / depth, float(depth), "1 1/2 in", "11 1/4 in")
        scene = draw_boards(replace(BOARDS, current=board, camera_depth=406.4), frame)
        seen.add(tuple((l.text, l.x, l.y) for l in labels_of(scene) if l.text in fixed or " sags " in l.text))
    assert len(seen) == 1


@every_frame
def test_title_in_one_line_to_three_keeps_its_band(frame):
    short, long = "It holds", "Two 2x10s carry this floor: bending comes nearest its limit, at 83 %"
    longest = f"{long}; what else comes down here: not looked yet"
    assert len(title_labels(longest, frame)) <= 3
    for title in (short, long, longest, "Crushing at the seat asks 1.71 times what this beam can give"):
        boxes = [label.box() for label in title_labels(title, frame)]
        assert all(0 <= box[1] and box[3] <= TITLE_ROOM[frame] for box in boxes)
    assert len(title_labels(short, frame)) == 1 and len(title_labels(long, frame)) == 2
    one, two = (draw_opening(replace(OPENING, title=title), frame) for title in (short, long))
    rest = [[(l.text, l.x, l.y) for l in labels_of(s) if not (l.bold and l.y < TITLE_ROOM[frame])] for s in (one, two)]
    assert rest[0] == rest[1]


@every_frame
def test_type_can_be_read_on_a_thumbnail_360_pixels_wide(frame):
    for scene in (
        draw_opening(OPENING, frame),
        draw_boards(BOARDS, frame),
        draw_load_path(PATH, frame),
        draw_beam_curves(curves_view(), frame),
    ):
        assert min(label.size for label in labels_of(scene)) * 360 / scene.width >= 9
        assert scene.width / scene.height == pytest.approx({"page": 1, "wide": 16 / 9, "tall": 9 / 16}[frame])


@settings(max_examples=50, deadline=None)
@given(st.lists(st.sampled_from(list(PLACES)), min_size=1, max_size=9, unique=True), frames, st.data())
def test_load_path_keeps_texts_apart_and_inside(places, frame, data):
    order = sorted(places, key=list(PLACES).index)
    texts = st.sampled_from(("30 psf", "+ 1,405 lb/ft", "11,840 lb", "1,480 psf"))
    view = replace(
        PATH,
        stations=tuple(Station(place, f"the {place}", data.draw(texts)) for place in order),
        beam_span=data.draw(st.floats(600, 9000)),
        beam_depth=data.draw(st.floats(89, 610)),
        beam_plies=data.draw(st.integers(1, 5)),
        beam_ply_width=data.draw(st.floats(19, 140)),
        material_kind=data.draw(st.sampled_from(("sawn", "lvl", "timber", "steel"))),
    )
    scene = draw_load_path(view, frame)
    assert label_overlaps(scene) == [] and outside(scene) == []


@settings(max_examples=50, deadline=None)
@given(
    st.floats(0, 4000),
    st.lists(st.floats(0, 4000), max_size=3),
    st.lists(st.tuples(st.floats(0, 1900), st.floats(2000, 4000), st.floats(0, 9), st.floats(0, 9)), max_size=2),
    st.lists(
        st.tuples(st.floats(0, 4000), st.sampled_from(("pinned", "roller", "fixed", "free"))),
        min_size=1,
        max_size=3,
    ),
    st.sampled_from((None, 1200.0)),
    frames,
)
def test_curves_keep_texts_apart_and_inside(place, points, spreads, supports, before, frame):
    view = curves_view(
        min(max(place, 1.0), 3999.0),
        before,
        point_loads=tuple(CurvePoint(x, "900 lb") for x in points),
        spread_loads=tuple(CurveSpread(a, b, v, w, "1,137 lb/ft") for a, b, v, w in spreads),
        supports=tuple(BeamSupport(x, kind, "1,560 lb") for x, kind in supports),
    )
    scene = draw_beam_curves(view, frame)
    assert label_overlaps(scene) == [] and outside(scene) == []
