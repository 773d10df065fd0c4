"""What the drawings say is what they were given, to scale, and nonsense is refused."""

import math
import re
from dataclasses import replace

import numpy as np
import pytest
from label_boxes import labels_of

from structlib.ground.refusals import BadInput
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
from structlib.pictures.scene import Arrow, Line, Polygon, flat
from structlib.pictures.svg import svg_of

LENGTH = 2514.6
X = tuple(float(x) for x in np.linspace(0, LENGTH, 61))
SAG = tuple(6.0 * math.sin(math.pi * x / LENGTH) for x in X)
MARKS = (
    Mark("bending", LENGTH / 2, 0.83, "The bottom fibres at mid-span are pulled hardest.", True),
    Mark("shear", 235, 0.46, "The wood slides along its grain near the end."),
    Mark("bearing", 0, 0.71, "The wood over the jacks is pressed across its grain."),
    Mark("sag", LENGTH / 2, 0.64, "The beam hangs lowest at mid-span."),
    Mark("stability", LENGTH / 2, 0.12, "The top edge wants to swing sideways."),
)
OPENING = OpeningView(
    title="Two 2x10s carry this floor",
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
    loads=(LoadBand("snow 310 lb/ft", 4.5), LoadBand("dead 135 lb/ft", 2.0)),
    load_full=13.0,
    load_full_text="full arrow 890 lb/ft",
    point_loads=(PointLoad("post 3,200 lb", 900.0),),
    sag_x=X,
    sag_y=SAG,
    exaggeration=20,
    sag_text="true sag 0.24 in = L/419",
    sag_limit=LENGTH / 360,
    sag_limit_text="limit L/360",
    marks=MARKS,
    shear_x=X,
    shear_y=tuple(12000 * (1 - 2 * x / LENGTH) for x in X),
    shear_text="2,698 lb",
    moment_x=X,
    moment_y=tuple(10 * x * (LENGTH - x) / 2 for x in X),
    moment_text="5,830 lb-ft",
)
BOARDS = BoardsView(
    "Same wood, 4.3 times as stiff",
    Board("2-2x6", 2, 38.1, 139.7, "3 in", "5 1/2 in"),
    Board("2x12", 1, 38.1, 285.75, "1 1/2 in", "11 1/4 in"),
    "wood 1.02 ×",
    "strength 2.09 ×",
    "stiffness 4.28 ×",
    LENGTH,
    "8'-3\"",
    X,
    tuple(3 * s for s in SAG),
    SAG,
    "0.71 in",
    "0.24 in",
    5.0,
)
HOUSE = HouseSectionView(
    "The middle wall carries 1,250 lb on every foot",
    (
        HouseLevel("roof", "roof", 5500.0, 4267.0, 3962.0, False),
        HouseLevel(
            "attic floor",
            "attic",
            5300.0,
            4267.0,
            3962.0,
            False,
            2133.5,
            1981.0,
            "7 ft × 30 psf",
            "6.5 ft × 30 psf",
            "405 lb/ft",
        ),
        HouseLevel(
            "upper floor",
            "floor",
            2700.0,
            4267.0,
            3962.0,
            True,
            2667.0,
            2476.0,
            "8.8 ft × 50 psf",
            "8.1 ft × 50 psf",
            "1,250 lb/ft",
        ),
    ),
    4267.0,
    3962.0,
    2400.0,
    wall_name="the middle wall",
)


def items(scene, kind, role):
    return [item for item in flat(scene.items) if type(item) is kind and item.role == role]


def width_of(shape):
    xs = [x for x, _ in shape.points]
    return max(xs) - min(xs)


def height_of(shape):
    ys = [y for _, y in shape.points]
    return max(ys) - min(ys)


def texts(scene):
    return [label.text for label in labels_of(scene)]


# --- the opening ----------------------------------------------------------------------------


def beam(scene):
    return max(items(scene, Polygon, "wood"), key=width_of)


def test_beam_is_drawn_to_scale():
    shape = beam(draw_opening(OPENING))
    assert height_of(shape) / width_of(shape) == pytest.approx(234.95 / (2438.4 + 2 * 76.2))


@pytest.mark.parametrize("frame", ["page", "wide", "tall"])
@pytest.mark.parametrize("asked", [1, 20, 500])
def test_drawn_sag_divided_by_the_printed_factor_is_the_true_sag(asked, frame):
    scene = draw_opening(replace(OPENING, exaggeration=asked), frame)
    scale = width_of(beam(scene)) / (2438.4 + 2 * 76.2)
    (curve,) = items(scene, Line, "moved")
    low = max(y for _, y in curve.points) - max(y for _, y in beam(scene).points)
    printed = re.search(r"Sag drawn (?:([\d.]+) times true size|at true size)", scene.caption)
    factor = float(printed.group(1) or 1)
    assert factor <= asked
    # the thinned curve may miss the low point by its tolerance
    assert low / scale / factor == pytest.approx(6.0, abs=0.21 / scale / factor)
    assert printed.group(0) in scene.alt and "true sag 0.24 in = L/419" in scene.caption


def test_ghost_and_shape_share_one_factor():
    before = PreviousBeam(184.15, X, tuple(2 * s for s in SAG))
    scene = draw_opening(replace(OPENING, previous=before))
    bottom = max(y for _, y in beam(scene).points)
    drop = [max(y for _, y in line.points) - bottom for line in items(scene, Line, "ghost") if len(line.points) > 5]
    (moved,) = items(scene, Line, "moved")
    assert drop[0] / (max(y for _, y in moved.points) - bottom) == pytest.approx(2, rel=0.02)
    assert "Dashed: before the change." in scene.caption


def test_a_camera_keeps_the_scale_while_span_and_depth_change():
    wide = replace(OPENING, camera_width=5000.0, camera_depth=305.0, marks=())
    one = draw_opening(replace(wide, clear_width=3000.0, beam_depth=300.0))
    other = draw_opening(replace(wide, clear_width=2000.0, beam_depth=150.0))
    assert width_of(beam(one)) / 3152.4 == pytest.approx(width_of(beam(other)) / 2152.4)


def test_arrow_lengths_stand_to_each_other_like_the_loads():
    scene = draw_opening(replace(OPENING, point_loads=()))
    arrows = items(scene, Arrow, "force")
    lengths = sorted({round(a.tip[1] - a.tail[1], 3) for a in arrows})
    assert len(arrows) == 24 and len(lengths) == 2
    assert lengths[1] / lengths[0] == pytest.approx(4.5 / 2.0, rel=1e-3)


def test_a_varying_load_is_drawn_with_its_own_profile():
    scene = draw_opening(
        replace(
            OPENING,
            point_loads=(),
            load_full=None,
            loads=(LoadBand("wall 0 to 400 lb/ft", ((0.0, 0.0), (LENGTH, 6.0))),),
        )
    )
    lengths = [a.tip[1] - a.tail[1] for a in items(scene, Arrow, "force")]
    assert lengths == sorted(lengths) and lengths[-1] > 5 * lengths[0]


def test_checks_are_drawn_where_they_govern():
    scene = draw_opening(replace(OPENING, marks=(replace(MARKS[2], governs=True),)))
    shape = beam(scene)
    left, bottom = min(x for x, _ in shape.points), max(y for _, y in shape.points)
    scale = width_of(shape) / (2438.4 + 2 * 76.2)
    crushed = [line for line in items(scene, Line, "governs_thin")]
    xs = [x for line in crushed for x, _ in line.points]
    assert min(xs) == pytest.approx(left) and max(xs) == pytest.approx(left + 76.2 * scale)
    assert max(y for line in crushed for _, y in line.points) == pytest.approx(bottom)
    bent = draw_opening(replace(OPENING, marks=(MARKS[0],)))
    xs = [x for line in items(bent, Line, "governs_thin") for x, _ in line.points]
    shape = beam(bent)
    assert (min(xs) + max(xs)) / 2 == pytest.approx(sum(x for x, _ in shape.points) / 4)


def test_the_governing_check_is_told_by_word_weight_and_outline():
    scene = draw_opening(OPENING)
    told = [label for label in labels_of(scene) if label.role == "governs"]
    assert [label.text for label in told] == ["bending", "83 %", "governs"]
    assert all(label.bold for label in told) and len({label.x for label in told}) == 1
    # a frame around the reading, a ring around the place on the beam
    (frame,) = items(scene, Polygon, "governs_plate")
    left, right = min(x for x, _ in frame.points), max(x for x, _ in frame.points)
    assert all(left < label.box()[0] and label.box()[2] < right for label in told)
    assert len(items(scene, Line, "governs")) == 1
    assert not any(label.bold for label in labels_of(scene) if label.text in ("46 %", "64 %"))
    assert "The bottom fibres at mid-span are pulled hardest." in scene.caption


def test_opening_alt_text_holds_the_numbers_of_the_picture():
    scene = draw_opening(OPENING)
    for words in (
        "2-2x10",
        "3 in",
        "9 1/4 in",
        "8'-0\" clear",
        "snow 310 lb/ft",
        "dead 135 lb/ft",
        "post 3,200 lb",
        "Bending uses 83 %, which governs",
        "Shear uses 46 %",
        "Bearing uses 71 %",
        "Sag uses 64 %",
        "2,698 lb",
        "5,830 lb-ft",
        "L/419",
        "Limit L/360",
    ):
        assert words in scene.alt, words


def test_diagrams_peak_below_the_place_of_the_beam_where_they_do():
    scene = draw_opening(OPENING)
    (peak,) = items(scene, Polygon, "moment_dot")
    shape = beam(scene)
    assert np.mean([x for x, _ in peak.points]) == pytest.approx(np.mean([x for x, _ in shape.points]), abs=0.5)
    assert "2,698 lb" in texts(scene) and "5,830 lb-ft" in texts(scene)


@pytest.mark.parametrize(
    "change, words",
    [
        ({"clear_width": 0.0}, "clear width"),
        ({"clear_width": -1.0}, "clear width"),
        ({"clear_width": math.nan}, "clear width"),
        ({"clear_width": math.inf}, "clear width"),
        ({"clear_width": "8 ft"}, "clear width"),
        ({"clear_width": 400 * 304.8}, "clear width"),
        ({"beam_depth": 0.0}, "beam depth"),
        ({"plies": 0}, "plies"),
        ({"plies": 40}, "plies"),
        ({"left_jacks": -1}, "left jacks"),
        ({"exaggeration": 0}, "exaggeration"),
        ({"sag_limit": -1.0}, "sag limit"),
        ({"material_kind": "swan"}, "did you mean 'sawn'"),
        ({"title": "  "}, "title"),
        ({"title": "word " * 40}, "three lines"),
        ({"sag_y": SAG[:-1]}, "as many places"),
        ({"sag_y": (math.nan,) * 61}, "sag"),
        ({"shear_x": ()}, "shear"),
        ({"marks": (Mark("bowing", 0, 0.5),)}, "mark"),
        ({"marks": (Mark("shear", 0, math.nan),)}, "share of shear"),
        ({"marks": (Mark("shear", 0, -0.1),)}, "share of shear"),
        ({"loads": (LoadBand("up", -1.0),)}, "press down"),
        ({"loads": (LoadBand("one", ((0.0, 1.0),)),)}, "two pairs"),
        ({"loads": (LoadBand("back", ((9.0, 1.0), (0.0, 1.0))),)}, "left to right"),
        ({"shear_text": "a very long text that no column holds whatever is done"}, "too long"),
        ({"section_name": "a section with a name beyond all measure and room"}, "section name"),
        ({"sag_text": "word " * 90}, "caption"),
        (
            {"point_loads": tuple(PointLoad("a long label for a post", 100.0 * k) for k in range(5))},
            "point loads",
        ),
    ],
)
def test_openings_that_cannot_be_are_refused_in_one_sentence(change, words):
    with pytest.raises(BadInput, match=words) as caught:
        draw_opening(replace(OPENING, **change))
    assert "\n" not in str(caught.value)


def test_an_opening_with_nothing_on_it_is_still_a_picture():
    bare = replace(
        OPENING,
        loads=(),
        point_loads=(),
        marks=(),
        sag_x=(),
        sag_y=(),
        shear_x=(),
        shear_y=(),
        moment_x=(),
        moment_y=(),
        load_full_text="",
        sag_limit=0.0,
    )
    assert "2-2x10" in svg_of(draw_opening(bare))


# --- two boards -----------------------------------------------------------------------------


def test_both_sections_share_one_scale_and_both_sags_one_factor():
    scene = draw_boards(BOARDS)
    cuts = [shape for shape in items(scene, Polygon, "wood_cut") if len(shape.points) == 4]
    assert len(cuts) == 3
    assert height_of(cuts[2]) / height_of(cuts[0]) == pytest.approx(285.75 / 139.7)
    assert width_of(cuts[2]) == pytest.approx(width_of(cuts[0]))
    (one,), (other,) = items(scene, Line, "reference"), items(scene, Line, "moved")
    assert height_of(one) / height_of(other) == pytest.approx(3, rel=0.02)


def test_boards_alt_text_and_labels_hold_the_ratios():
    scene = draw_boards(BOARDS)
    for words in (
        "wood 1.02 ×",
        "strength 2.09 ×",
        "stiffness 4.28 ×",
        "0.71 in",
        "0.24 in",
        "5 1/2 in",
        "11 1/4 in",
    ):
        # a ratio stands in two lines: its word, and its number below
        assert words in scene.alt and words in " ".join(texts(scene)), words


@pytest.mark.parametrize(
    "change, words",
    [
        ({"span": 0.0}, "span"),
        ({"span": "12 ft"}, "span"),
        ({"x": ()}, "reference sag"),
        ({"current_sag": SAG[:5]}, "current sag"),
        ({"exaggeration": -3}, "exaggeration"),
        ({"reference": Board("none", 0, 38.1, 139.7, "", "")}, "plies of the reference"),
        ({"current": Board("flat", 1, 38.1, 0.0, "", "")}, "depth of the current"),
        ({"current": Board("odd", 1, 38.1, 90.0, "", "", "cheese")}, "material kind"),
        ({"strength_text": "strength that is a great deal larger than before"}, "too long"),
        ({"title": ""}, "title"),
    ],
)
def test_boards_that_cannot_be_are_refused_in_one_sentence(change, words):
    with pytest.raises(BadInput, match=words) as caught:
        draw_boards(replace(BOARDS, **change))
    assert "\n" not in str(caught.value)


# --- the house ------------------------------------------------------------------------------


def test_shaded_width_is_what_lands_on_the_wall_to_scale():
    scene = draw_house_section(HOUSE)
    shaded = [width_of(shape) for shape in items(scene, Polygon, "tributary")]
    joists = max(width_of(shape) for shape in items(scene, Polygon, "wood") if height_of(shape) < 14)
    scale = joists / (4267.0 + 3962.0)
    assert sorted(shaded) == pytest.approx(sorted(scale * w for w in (2133.5, 1981.0, 2667.0, 2476.0)))


def test_cut_joists_show_a_gap_and_continuous_ones_do_not():
    pieces = {}
    for continuous in (True, False):
        levels = (replace(HOUSE.levels[2], continuous=continuous),)
        scene = draw_house_section(replace(HOUSE, levels=levels))
        pieces[continuous] = [s for s in items(scene, Polygon, "wood") if height_of(s) < 14 and width_of(s) > 50]
    assert len(pieces[True]) == 1 and len(pieces[False]) == 2


def test_running_totals_stand_at_the_wall_in_order_and_in_the_alt_text():
    scene = draw_house_section(HOUSE)
    places = {label.text: label.y for label in labels_of(scene)}
    assert places["405 lb/ft"] < places["1,250 lb/ft"]
    for words in (
        "7 ft × 30 psf",
        "8.1 ft × 50 psf",
        "total in the middle wall below it 1,250 lb/ft",
        "Roof: nothing lands on it",
    ):
        assert words in scene.alt, words


def test_arrows_in_the_wall_grow_with_every_level():
    scene = draw_house_section(HOUSE)
    widths = [width_of(shape) for shape in items(scene, Polygon, "force")]
    assert len(widths) == 2 and widths[0] < widths[1]


def test_an_outside_wall_takes_load_from_one_side_and_the_eaves():
    house = HouseSectionView(
        "The eave wall carries half the roof",
        (
            HouseLevel(
                "roof",
                "roof",
                5200.0,
                0.0,
                4267.0,
                False,
                400.0,
                4267.0,
                "",
                "15.3 ft × 45 psf",
                "690 lb/ft",
            ),
            HouseLevel(
                "ceiling",
                "ceiling",
                4900.0,
                0.0,
                4267.0,
                False,
                0.0,
                2133.5,
                "",
                "7 ft × 15 psf",
                "795 lb/ft",
            ),
        ),
        0.0,
        8534.0,
        2400.0,
        overhang=400.0,
        wall_name="the eave wall",
    )
    scene = draw_house_section(house)
    assert "from the right 15.3 ft × 45 psf; total in the eave wall below it 690 lb/ft" in scene.alt
    assert len(items(scene, Polygon, "tributary")) == 3


@pytest.mark.parametrize(
    "change, words",
    [
        ({"levels": ()}, "at least one level"),
        ({"house_left": 0.0, "house_right": 0.0}, "no width"),
        ({"house_left": -1.0}, "house left"),
        ({"roof_rise": math.nan}, "roof rise"),
        ({"levels": HOUSE.levels[::-1]}, "top down|first level"),
        ({"levels": (replace(HOUSE.levels[1], kind="cellar"),)}, "kind of"),
        ({"levels": (replace(HOUSE.levels[1], left_span=9000.0),)}, "longer than"),
        ({"levels": (replace(HOUSE.levels[1], left_tributary=9000.0),)}, "left tributary"),
        ({"levels": (replace(HOUSE.levels[1], height=0.0),)}, "height of"),
        ({"levels": (replace(HOUSE.levels[1], name="a floor with a very long name"),)}, "too long"),
        ({"note": "word " * 90}, "caption"),
    ],
)
def test_houses_that_cannot_be_are_refused_in_one_sentence(change, words):
    with pytest.raises(BadInput, match=words) as caught:
        draw_house_section(replace(HOUSE, **change))
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize("draw, view", [(draw_opening, OPENING), (draw_boards, BOARDS), (draw_house_section, HOUSE)])
def test_an_unknown_frame_is_refused(draw, view):
    with pytest.raises(BadInput, match="did you mean 'page'"):
        draw(view, "pages")
