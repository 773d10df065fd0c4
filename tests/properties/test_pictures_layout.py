"""Whatever is drawn, no text lies on another text and nothing leaves the picture."""

import re

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st
from label_boxes import boxes_meet, label_overlaps, labels_of

from structlib.pictures.drawings import (
    Board,
    BoardsView,
    HouseLevel,
    HouseSectionView,
    LoadBand,
    Mark,
    OpeningView,
    PointLoad,
    PreviousBeam,
    draw_boards,
    draw_house_section,
    draw_opening,
)
from structlib.pictures.drawings.parts import FRAMES
from structlib.pictures.labels import Label, spread, text_width, wrap
from structlib.pictures.scene import Scene, outside, runs
from structlib.pictures.style import LEAST_SIZE
from structlib.pictures.svg import svg_of

KINDS = ("bending", "shear", "bearing", "sag", "stability")
LOAD_NAMES = (
    "snow 310 lb/ft",
    "live 1,240 lb/ft",
    "dead 135 lb/ft",
    "snow 4.38 kN/m",
    "floor above, live, 480 lb/ft",
)
PAINTED = {"wall", "wood", "wood_cut", "steel", "force_band", "shear", "moment"}
frames = st.sampled_from(sorted(FRAMES))


def good(scene):
    assert label_overlaps(scene) == []
    assert outside(scene) == []
    assert all(label.size >= LEAST_SIZE for label in labels_of(scene))
    assert not any("n" in path for path in re.findall(r' d="([^"]*)"', svg_of(scene)))  # no nan, no inf
    assert bare_labels_over_paint(scene) == []


def bare_labels_over_paint(scene):
    """Texts without a plate that lie over something painted, where their contrast is not known."""
    painted = [
        (
            min(x for x, _ in points),
            min(y for _, y in points),
            max(x for x, _ in points),
            max(y for _, y in points),
        )
        for run in runs(scene)
        if not isinstance(run, Label) and run.kind == "area" and run.role in PAINTED
        for points, _ in run.outlines
    ]
    return [
        label.text
        for label in labels_of(scene)
        if not label.plate and any(boxes_meet(label.box(), box) for box in painted)
    ]


def shape(length, peak, points):
    x = np.linspace(0, length, points)
    return tuple(x), tuple(peak * np.sin(np.pi * x / length))


@st.composite
def openings(draw):
    number = lambda low, high: draw(st.floats(low, high))  # noqa: E731
    jacks = draw(st.integers(1, 4))
    clear, seat, depth = number(600, 7500), 38.1 * jacks, number(89, 610)
    length = clear + seat
    sag = shape(length, number(0, 90), draw(st.integers(2, 90)))
    before = PreviousBeam(number(89, 610), *shape(length, number(0, 90), 31)) if draw(st.booleans()) else None
    kinds = draw(st.permutations(KINDS))[: draw(st.integers(0, 5))]
    governs = draw(st.sampled_from(KINDS))
    marks = tuple(
        Mark(
            kind,
            number(0, length),
            number(0, 30),
            "What happens here, said in one sentence.",
            kind == governs,
        )
        for kind in kinds
    )
    loads = tuple(
        LoadBand(name, number(0, 60)) for name in draw(st.permutations(LOAD_NAMES))[: draw(st.integers(0, 3))]
    )
    points = tuple(PointLoad("post 3,200 lb", number(0, length)) for _ in range(draw(st.integers(0, 2))))
    peak = number(-90000, 90000)
    x = np.linspace(0, length, 41)
    return OpeningView(
        title=draw(
            st.sampled_from(("It holds", "Two 2x10s carry this floor: bending comes nearest its limit, at 83 %"))
        ),
        clear_width=clear,
        left_seat=seat,
        right_seat=seat,
        beam_depth=depth,
        opening_height=number(600, 3000),
        plies=draw(st.integers(1, 5)),
        ply_width=number(38, 140),
        material_kind=draw(st.sampled_from(("sawn", "lvl", "timber", "steel"))),
        section_name="3-ply 1 3/4 LVL",
        width_text=draw(st.sampled_from(("3 in", "5 1/4 in", "133 mm"))),
        depth_text=draw(st.sampled_from(("9 1/4 in", "11 7/8 in", "610 mm"))),
        clear_width_text="14'-6 1/2\" clear",
        flush=draw(st.booleans()),
        left_jacks=jacks,
        right_jacks=jacks,
        joist_depth=draw(st.sampled_from((0.0, 184.0, 286.0))),
        loads=loads,
        point_loads=points,
        load_full=draw(st.sampled_from((None, 12.0))),
        load_full_text="full arrow 820 lb/ft",
        sag_x=sag[0],
        sag_y=sag[1],
        exaggeration=number(1, 100),
        sag_text="true sag 0.32 in = L/450",
        sag_limit=draw(st.sampled_from((0.0, length / 360))),
        sag_limit_text="limit L/360",
        previous=before,
        marks=marks,
        shear_x=tuple(x),
        shear_y=tuple(peak * (1 - 2 * x / length)),
        shear_text="peak 13,918 lb",
        moment_x=tuple(x),
        moment_y=tuple(peak * x * (1 - x / length)),
        moment_text="156,544 lb-ft",
        camera_width=draw(st.sampled_from((0.0, 6000.0))),
        camera_depth=draw(st.sampled_from((0.0, 406.0))),
    )


@settings(max_examples=60, deadline=None)
@given(openings(), frames)
def test_opening_keeps_texts_apart_and_inside(view, frame):
    good(draw_opening(view, frame))


@st.composite
def boards(draw):
    def board(name):
        return Board(
            name,
            draw(st.integers(1, 5)),
            draw(st.floats(19, 140)),
            draw(st.floats(38, 610)),
            "5 1/4 in",
            "11 7/8 in",
            draw(st.sampled_from(("sawn", "lvl", "timber", "steel"))),
        )

    span = draw(st.floats(900, 9000))
    x, one = shape(span, draw(st.floats(0.01, 400)), 41)
    other, third = (shape(span, draw(st.floats(0.01, 400)), 41)[1] for _ in range(2))
    ghost = draw(st.booleans())
    return BoardsView(
        "Twice the depth: 8 times as stiff, 4 times as strong",
        board("2-2x6"),
        board("3-ply 2x12"),
        "wood 1.02 ×",
        "strength 12.09 ×",
        "stiffness 114.28 ×",
        span,
        "12'-0\"",
        x,
        one,
        other,
        "10.63 in",
        "0.15 in",
        draw(st.floats(1, 100)),
        board("2x8") if ghost else None,
        third if ghost else (),
        "Both carry the same load over the same span.",
    )


@settings(max_examples=60, deadline=None)
@given(boards(), frames)
def test_boards_keep_texts_apart_and_inside(view, frame):
    good(draw_boards(view, frame))


@st.composite
def houses(draw):
    place = draw(st.sampled_from(("inside", "left", "right")))
    left = 0.0 if place == "left" else draw(st.floats(2400, 5500))
    right = 0.0 if place == "right" else draw(st.floats(2400, 5500))
    hang = draw(st.floats(0, 700))
    levels, height = [], 0.0
    for name in draw(
        st.sampled_from(
            (("upper floor",), ("upper floor", "attic floor"), ("ground floor", "upper floor", "attic floor"))
        )
    ):
        height += draw(st.floats(2200, 3100))
        shares = [draw(st.sampled_from((0.0, 0.5, 0.625))) * side for side in (left, right)]
        texts = [f"{share / 304.8:.1f} ft × 50 psf" if share else "" for share in shares]
        levels.append(
            HouseLevel(
                name,
                "attic" if name == "attic floor" else "floor",
                height,
                left,
                right,
                draw(st.booleans()),
                *shares,
                *texts,
                f"{height:,.0f} lb/ft",
            )
        )
    if draw(st.booleans()):
        carries = place != "inside" and draw(st.booleans())
        share = (left + right) / 2 if carries else 0.0
        levels.append(
            HouseLevel(
                "roof",
                "roof",
                height + draw(st.floats(0, 600)),
                left,
                right,
                False,
                share if place == "right" else (hang if carries else 0.0),
                share if place == "left" else (hang if carries else 0.0),
                "15.3 ft × 45 psf" if share and place == "right" else "",
                "15.3 ft × 45 psf" if share and place == "left" else "",
                "690 lb/ft" if carries else "",
            )
        )
    return HouseSectionView(
        "The wall carries 1,390 lb on every foot of its length",
        tuple(levels[::-1]),
        left,
        right,
        draw(st.floats(300, 3500)),
        hang,
        "the middle wall",
        "An invented house.",
        "House 28 ft wide, to scale",
    )


@settings(max_examples=60, deadline=None)
@given(houses(), frames)
def test_house_keeps_texts_apart_and_inside(view, frame):
    good(draw_house_section(view, frame))


@settings(max_examples=60, deadline=None)
@given(st.lists(st.floats(0, 400), min_size=1, max_size=8))
def test_spread_parts_labels_keeps_their_order_and_stays_in_the_column(heights):
    labels = [Label(f"text {k}", 10, y) for k, y in enumerate(heights)]
    moved = spread(labels, top=0, bottom=400)
    boxes = [label.box() for label in moved]
    assert not any(boxes_meet(boxes[i], boxes[k]) for i in range(len(boxes)) for k in range(i))
    assert all(-1e-6 <= box[1] and box[3] <= 400 + 1e-6 for box in boxes)
    order = sorted(range(len(heights)), key=lambda k: (heights[k], k))
    assert order == sorted(order, key=lambda k: moved[k].y)


@settings(max_examples=60, deadline=None)
@given(st.text(st.sampled_from("abc 12,.%"), max_size=60), st.floats(60, 400))
def test_wrap_loses_no_word_and_every_line_of_several_words_fits(text, width):
    lines = wrap(text, width, 20)
    assert " ".join(lines).split() == text.split()
    # only a single word, or a number with its unit, may be wider than the room
    assert all(text_width(line, 20) <= width for line in lines if len(line.split()) > 2)


@settings(max_examples=40, deadline=None)
@given(st.floats(0, 500), st.floats(0, 500))
def test_overlap_check_sees_an_overlap_made_on_purpose(dx, dy):
    one, other = Label("first", 300, 300), Label("second", 300 + dx, 300 + dy)
    found = label_overlaps(Scene(900, 900, (one, other), "two", "", "two"))
    apart = dx >= text_width("first", 22) or dy >= 22 * 1.02
    assert (found == []) == apart
