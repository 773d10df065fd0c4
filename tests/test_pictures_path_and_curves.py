"""The load path and the beam with its four diagrams show what they were given, and refuse nonsense."""

import math
from dataclasses import replace

import numpy as np
import pytest
from label_boxes import labels_of
from pictures_samples import PATH, beam_lines, curves_view

from structlib.ground.refusals import BadInput
from structlib.pictures.drawings import (
    BeamSupport,
    CurvePoint,
    CurveSpread,
    Station,
    draw_beam_curves,
    draw_load_path,
)
from structlib.pictures.drawings.load_path import PLACES
from structlib.pictures.scene import Arrow, Line, Polygon, flat

FRAMES = ("page", "wide", "tall")
frames = pytest.mark.parametrize("frame", FRAMES)


def items(scene, kind, role):
    return [item for item in flat(scene.items) if type(item) is kind and item.role == role]


def extent(shape):
    xs, ys = zip(*shape.points)
    return max(xs) - min(xs), max(ys) - min(ys)


# --- the load path --------------------------------------------------------------------------


@frames
def test_every_station_has_its_number_in_the_house_and_in_its_row(frame):
    labels = labels_of(draw_load_path(PATH, frame))
    for k, station in enumerate(PATH.stations):
        numbers = [label for label in labels if label.text == str(k + 1)]
        assert len(numbers) == 2 and all(label.plate == "badge" for label in numbers)
        (name,) = [label for label in labels if label.text == station.name]
        # the right one of the two numbers, or the lower one, stands beside the name
        assert min(abs(number.y - name.y) for number in numbers) < 20
        assert sum(label.text == station.text for label in labels) == 1


@frames
def test_stations_follow_each_other_from_top_to_bottom(frame):
    labels = labels_of(draw_load_path(PATH, frame))
    middle = min(label.x for label in labels if label.text == "1") if frame != "tall" else None
    rows = [next(label.y for label in labels if label.text == station.name) for station in PATH.stations]
    assert rows == sorted(rows)
    if middle is not None:
        plates = [label.y for label in labels if label.plate == "badge" and label.x == middle]
        assert plates == sorted(plates) and len(plates) == len(PATH.stations)


@frames
@pytest.mark.parametrize("span, depth", [(2438.4, 285.75), (6096.0, 184.15), (1219.2, 406.4)])
def test_main_beam_in_the_inset_is_to_scale(frame, span, depth):
    scene = draw_load_path(replace(PATH, beam_span=span, beam_depth=depth), frame)
    assert any(
        math.isclose(wide / high, span / depth, rel_tol=1e-6)
        for wide, high in map(extent, items(scene, Polygon, "wood"))
    )
    plies = [
        extent(shape)
        for shape in items(scene, Polygon, "wood_cut")
        if math.isclose(extent(shape)[1] / extent(shape)[0], depth / 38.1, rel_tol=1e-6)
    ]
    assert len(plies) == PATH.beam_plies


def test_load_path_alt_text_holds_every_number_and_says_that_the_house_is_invented():
    scene = draw_load_path(PATH)
    for k, station in enumerate(PATH.stations):
        assert f"{k + 1}: {station.name}, {station.text}." in scene.alt
    for words in ("8 ft span", "4 1/2 x 11 1/4 in", "invented house"):
        assert words in scene.alt


def test_any_nine_places_in_order_make_a_path():
    chosen = [place for place in PLACES if place not in ("ridge", "upper wall")]
    stations = tuple(Station(place, place, "1,000 lb/ft") for place in chosen)
    for frame in FRAMES:
        assert len(labels_of(draw_load_path(replace(PATH, stations=stations), frame))) > 27


def test_roof_comes_down_the_middle_only_when_a_station_says_so():
    def drawn(places):
        stations = tuple(station for station in PATH.stations if station.place in places)
        scene = draw_load_path(replace(PATH, stations=stations))
        return len(items(scene, Arrow, "force")), len(items(scene, Polygon, "wood"))

    snow, posts = drawn(("roof", "ridge", "beam", "soil"))
    bare = drawn(("attic floor", "beam", "soil"))
    assert snow > 0 and bare == (0, posts - 1)


@pytest.mark.parametrize(
    "change, words",
    [
        ({"stations": ()}, "between 1 and 9"),
        ({"stations": PATH.stations[::-1]}, "top down"),
        ({"stations": (PATH.stations[0],) * 2}, "each once"),
        ({"stations": (Station("rof", "roof", "1 psf"),)}, "did you mean 'roof'"),
        (
            {"stations": (Station("roof", "a name that is far too long for any row", "1 psf"),)},
            "does not fit",
        ),
        ({"beam_span": 0.0}, "span of the main beam"),
        ({"beam_span": "8 ft"}, "span of the main beam"),
        ({"beam_depth": math.nan}, "depth of the main beam"),
        ({"beam_depth": -1.0}, "depth of the main beam"),
        ({"beam_plies": 0}, "plies of the main beam"),
        ({"beam_ply_width": math.inf}, "ply width"),
        ({"material_kind": "swan"}, "did you mean 'sawn'"),
        ({"size_text": "a size that is told in so many words that none could read it"}, "too long"),
        ({"title": " "}, "title"),
        ({"note": "word " * 90}, "caption"),
    ],
)
def test_paths_that_cannot_be_are_refused_in_one_sentence(change, words):
    with pytest.raises(BadInput, match=words) as caught:
        draw_load_path(replace(PATH, **change))
    assert "\n" not in str(caught.value)


# --- the beam and its diagrams --------------------------------------------------------------


@frames
def test_diagrams_lie_below_the_beam_at_its_scale_and_peak_where_the_numbers_do(frame):
    scene = draw_beam_curves(curves_view(1500.0), frame)
    beam = items(scene, Polygon, "wood")[0]
    left, right = min(x for x, _ in beam.points), max(x for x, _ in beam.points)
    for k, dot in enumerate(("shear_dot", "moment_dot", "ink_dot", "moved_dot")):
        x, y = map(np.asarray, beam_lines(1500.0)[k])
        (peak,) = items(scene, Polygon, dot)
        place = left + (right - left) * x[np.argmax(np.abs(y))] / 4000.0
        assert np.mean([p for p, _ in peak.points]) == pytest.approx(place)


@frames
def test_heights_in_a_diagram_stand_to_each_other_like_the_values(frame):
    scene = draw_beam_curves(curves_view(1500.0), frame)
    (shear,) = items(scene, Polygon, "shear")
    axis = shear.points[0][1]
    up, down = axis - min(y for _, y in shear.points), max(y for _, y in shear.points) - axis
    assert up / down == pytest.approx(2500 / 1500, rel=0.02)
    # a sag hangs down
    (sag,) = items(scene, Line, "deflection")
    assert sag.points[len(sag.points) // 2][1] > sag.points[0][1]


def test_axis_and_texts_stay_where_they_are_while_a_load_moves():
    def places(place):
        scene = draw_beam_curves(curves_view(place))
        still = [(label.text, label.x, label.y) for label in labels_of(scene) if label.text != "900 lb"]
        return still, [line.points for line in items(scene, Line, "axis")]

    first = places(10.0)
    assert all(places(float(place)) == first for place in np.linspace(50, 3990, 12))


def test_state_before_the_change_is_dashed_and_said():
    scene = draw_beam_curves(curves_view(1500.0, before=1800.0))
    assert len(items(scene, Line, "ghost")) == 4 and "Dashed: before the change." in scene.caption


def test_every_kind_of_support_is_told_and_drawn_differently():
    drawn = {}
    for kind in ("pinned", "roller", "fixed", "free"):
        scene = draw_beam_curves(curves_view(supports=(BeamSupport(0.0, kind),)))
        drawn[kind] = repr(
            [
                item
                for item in flat(scene.items)
                if type(item) in (Polygon, Line) and item.role in ("steel", "ground", "wall", "hatch")
            ]
        )
        assert kind.capitalize() in scene.alt
    assert len(set(drawn.values())) == 4


def test_curves_alt_text_holds_every_number():
    scene = draw_beam_curves(curves_view())
    for words in (
        "13 ft 1 in",
        "900 lb",
        "7 lb/ft",
        "pushes 560 lb",
        "pushes 340 lb",
        "Greatest shear 1000,5 lb",
        "Greatest deflection 1003,5 in",
    ):
        assert words in scene.alt, words


def test_arrows_of_a_spread_load_follow_its_profile():
    scene = draw_beam_curves(curves_view(spread_loads=(CurveSpread(0.0, 4000.0, 0.0, 2.0, "0 to 137 lb/ft"),)))
    lengths = [arrow.tip[1] - arrow.tail[1] for arrow in items(scene, Arrow, "force")]
    assert lengths == sorted(lengths) and lengths[-1] > 4 * lengths[0]


CURVES = curves_view().curves


@pytest.mark.parametrize(
    "change, words",
    [
        ({"length": 0.0}, "length of the beam"),
        ({"length": math.nan}, "length of the beam"),
        ({"length": "12 ft"}, "length of the beam"),
        ({"supports": ()}, "needs a support"),
        ({"supports": (BeamSupport(0.0, "pined"),)}, "did you mean 'pinned'"),
        ({"supports": (BeamSupport(5000.0, "pinned"),)}, "pinned support"),
        ({"point_loads": (CurvePoint(-5.0, "900 lb"),)}, "900 lb"),
        ({"point_loads": tuple(CurvePoint(9.0 * k, "a long load text") for k in range(5))}, "one row"),
        ({"spread_loads": (CurveSpread(900.0, 100.0, 1.0, 1.0, "7 lb/ft"),)}, "right of its start"),
        ({"spread_loads": (CurveSpread(0.0, 100.0, -1.0, 1.0, "7 lb/ft"),)}, "press down"),
        ({"curves": CURVES[:3]}, "in this order"),
        ({"curves": CURVES[::-1]}, "in this order"),
        ({"curves": (replace(CURVES[0], y=(1.0,)), *CURVES[1:])}, "shear"),
        ({"curves": (replace(CURVES[0], y=(math.inf,) * 81), *CURVES[1:])}, "shear"),
        ({"curves": (replace(CURVES[0], peak_text="word " * 20), *CURVES[1:])}, "too long"),
        ({"curves": (replace(CURVES[0], full=-1.0), *CURVES[1:])}, "full shear"),
        ({"previous": beam_lines(900.0)[:2]}, "all four"),
        ({"length_text": "a length that is told in far too many words"}, "too long"),
        ({"title": ""}, "title"),
    ],
)
def test_beams_that_cannot_be_are_refused_in_one_sentence(change, words):
    with pytest.raises(BadInput, match=words) as caught:
        draw_beam_curves(curves_view(**change))
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize("draw, view", [(draw_load_path, PATH), (draw_beam_curves, curves_view())])
def test_an_unknown_frame_is_refused(draw, view):
    with pytest.raises(BadInput, match="did you mean 'page'"):
        draw(view, "pages")
