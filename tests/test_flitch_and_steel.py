"""Flitch beams, steel beams and the alternatives to them: layouts, limits, refusals."""

from math import hypot, inf, nan

import pytest

from structlib.ground.engineered import lvl
from structlib.ground.lumber import find_material
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch, lb, plf
from structlib.house.alternatives import Alternative, Space, alternatives, check_flitch, check_steel
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam
from structlib.mechanics import composite
from structlib.mechanics.beams import LineLoad
from structlib.rules.check import Seat, governing
from structlib.rules.us import flitch as rules
from structlib.rules.us.book import RULEBOOK
from structlib.rules.us.flitch import Flitch, flitch_bolts, plate_check, plate_pieces
from structlib.rules.us.steel_beams import brace_lengths, steel_moment, steel_shear
from structlib.rules.us.steel_sections import check_compact, flat_plate, shape_names, steel_shape

FIR = find_material("Douglas Fir-Larch", "No.2")


def _flitch(**changes):
    usual = {
        "wood": FIR,
        "ply_width": 1.5 * inch,
        "depth": 9.25 * inch,
        "plies": 2,
        "plate_thickness": 0.5 * inch,
        "plate_depth": 9 * inch,
    }
    return Flitch(**{**usual, **changes})


def _job(live=400.0, dead=150.0, width=12 * ft, **more):
    span = width + 3 * inch
    loads = (
        TypedLoad("live", LineLoad(0.0, span, live * plf)),
        TypedLoad("dead", LineLoad(0.0, span, dead * plf)),
    )
    return BeamJob(width, Seat(3 * inch), Seat(3 * inch), loads, **more)


# ---- flitch -----------------------------------------------------------------------------------------------


def _layout(**changes):
    usual = {"length": 12 * ft, "line_load": 500 * plf, "reaction": 3000 * lb, "bolt_diameter": 0.5 * inch}
    beam = changes.pop("beam", _flitch())
    return beam, flitch_bolts(beam, **{**usual, **changes})


@pytest.mark.parametrize(
    "changes",
    [
        {},
        {"bolt_diameter": 0.625 * inch},
        {"line_load": 900 * plf, "reaction": 5400 * lb, "length": 14 * ft},
        {"plate_bears": True},
        {"beam": _flitch(depth=11.25 * inch, plate_depth=11 * inch, plies=4)},
        {"beam": _flitch(depth=5.5 * inch, plate_depth=5.5 * inch)},
    ],
)
def test_every_hole_keeps_its_distances(changes):
    diameter, length = changes.get("bolt_diameter", 0.5 * inch), changes.get("length", 12 * ft)
    beam, found = _layout(**changes)
    places = [(hole.along, hole.up) for hole in found.holes]
    assert places == sorted(places) and len(set(places)) == len(places)
    assert len(found.holes) >= 2 * found.end_bolts
    for along, up in places:
        # four diameters to a loaded edge and to an end, recalled from NDS 12.5.1
        assert min(up, beam.depth - up) >= 4 * diameter * (1 - 1e-9)
        assert min(along, length - along) >= 4 * diameter * (1 - 1e-9)
    gaps = [b[0] - a[0] for a, b in zip(places, places[1:])]
    assert max(gaps) <= found.spacing * (1 + 1e-9)
    assert min(hypot(b[0] - a[0], b[1] - a[1]) for a, b in zip(places, places[1:])) >= 2.5 * diameter
    for check in found.checks:
        assert check.share <= 1 + 1e-9


def test_end_bolts_carry_the_plates_share_of_the_reaction():
    beam, found = _layout()
    assert found.reaction == pytest.approx(beam.steel_share * 3000 * lb)
    assert (found.end_bolts - 1) * found.value < found.reaction <= found.end_bolts * found.value
    assert _layout(plate_bears=True)[1].end_bolts == 2


def test_bolts_that_do_not_fit_are_refused():
    with pytest.raises(OutsideRule, match="closer than"):
        _layout(line_load=20_000 * plf)
    with pytest.raises(OutsideRule, match="do not fit"):
        _layout(reaction=60_000 * lb)
    with pytest.raises(OutsideRule, match="edge"):
        _layout(beam=_flitch(depth=5.5 * inch, plate_depth=5.5 * inch), bolt_diameter=0.75 * inch)


def test_plate_pieces_weigh_the_whole():
    beam = _flitch()
    pieces = plate_pieces(beam, length=13 * ft, pieces=3)
    # 490 lb/ft3 of half an inch by nine inches by 13 ft
    assert sum(piece.weight for piece in pieces) / lb == pytest.approx(490 * 0.5 * 9 / 144 * 13)
    assert pieces[0].start == 0 and pieces[-1].end == pytest.approx(13 * ft)
    assert "no bending" in rules.splice_note(3)


def test_wood_of_a_flitch_sags_as_the_whole_does():
    """Wood under its share must sag as E I of both under all of it; here by the textbook formula."""
    job, beam = _job(), _flitch()
    checks = {check.name: check for check in check_flitch(job, beam, RULEBOOK)}
    load = 550 * plf + beam.weight
    expected = 5 * load * job.span**4 / (384 * beam.bending_stiffness)
    assert checks["sag under all load"].asked == pytest.approx(expected, rel=1e-9)
    moment = load * job.span**2 / 8
    steel = 29e6 * 4.5 * inch * moment / beam.bending_stiffness * (lb / inch**2)
    assert checks["bending, steel plate"].asked == pytest.approx(steel, rel=1e-9)
    wood = FIR.modulus * beam.depth / 2 * moment / beam.bending_stiffness
    assert checks["bending"].asked == pytest.approx(wood, rel=1e-9)


def test_without_the_plates_help_at_the_seat_the_wood_takes_all_the_shear():
    job, beam = _job(), _flitch()
    alone = {check.name: check for check in check_flitch(job, beam, RULEBOOK)}
    helped = {check.name: check for check in check_flitch(job, beam, RULEBOOK, plate_bears=True)}
    ratio = helped["shear, left end"].asked / alone["shear, left end"].asked
    assert ratio == pytest.approx(1 - beam.steel_share, rel=1e-9)
    assert helped["bending"].asked == alone["bending"].asked


def test_a_plate_carries_more_than_the_wood_alone():
    job = _job()
    bare = check_beam(job, BeamChoice(FIR, 1.5 * inch, 9.25 * inch, 2), RULEBOOK)
    helped = governing([c for c in check_flitch(job, _flitch(), RULEBOOK) if c.kind in ("bending", "sag")])
    assert helped.share < 0.5 * max(bare.check("bending").share, bare.check("sag under live load").share)


@pytest.mark.parametrize(
    "changes",
    [
        {"wood": "pine"},
        {"ply_width": 0.0},
        {"depth": 400 * ft},
        {"plies": 3},
        {"plies": 0},
        {"plate_thickness": nan},
        {"plate_thickness": 6 * inch},
        {"plate_depth": 11 * inch},
        {"yield_strength": 50.0},
        {"ply_width": "1.5"},
        {"depth": inf},
    ],
)
def test_bad_flitches_are_refused_in_one_sentence(changes):
    with pytest.raises(BadInput) as refusal:
        _flitch(**changes)
    assert "\n" not in str(refusal.value) and len(str(refusal.value)) > 20


@pytest.mark.parametrize(
    "changes",
    [
        {"length": 0.0},
        {"length": 400 * ft},
        {"line_load": -1.0},
        {"reaction": nan},
        {"plate_bears": 1},
        {"bolt_diameter": "1/2"},
        {"bolt_diameter": [0.5 * inch]},
        {"moisture": "damp"},
    ],
)
def test_bad_layouts_are_refused(changes):
    with pytest.raises(BadInput):
        _layout(**changes)


def test_wet_flitches_and_unknown_limits_are_refused():
    with pytest.raises(OutsideRule, match="wet"):
        check_flitch(_job(wet=True), _flitch(), RULEBOOK)
    with pytest.raises(BadInput, match="0.60 Fy"):
        plate_check(_flitch(), moment=1e6, limit="0.6 Fy")


# ---- steel ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", ["W8x18", "W12x26", "S8x18.4", "S12x35"])
def test_moment_falls_as_braces_stand_further_apart(name):
    shape = steel_shape(name)
    moments = [steel_moment(shape, unbraced_length=feet * ft).allowed for feet in range(0, 31)]
    assert all(high >= low > 0 for high, low in zip(moments, moments[1:]))
    for limit in brace_lengths(shape):
        near = [steel_moment(shape, unbraced_length=limit * (1 + k)).allowed for k in (-1e-9, 1e-9)]
        # The two formulas meet: to rounding at L_p, and to the rounding of 1.95 and 6.76 at L_r.
        assert near[0] == pytest.approx(near[1], rel=3e-3)


def test_every_shape_answers_or_is_refused_with_a_reason():
    answered = 0
    for name in shape_names():
        shape = steel_shape(name)
        try:
            check_compact(shape)
        except OutsideRule as refusal:
            assert name in str(refusal)
            continue
        assert 0 < steel_moment(shape, unbraced_length=10 * ft).allowed and steel_shear(shape)[0] > 0
        answered += 1
    assert answered > 40


def test_the_table_of_shapes_agrees_with_itself():
    """Published properties against each other: S = 2 I / d, r = sqrt(I / A), weight = 490 lb/ft3."""
    for name in shape_names():
        shape = steel_shape(name)
        assert 2 * shape.inertia / shape.depth == pytest.approx(shape.section_modulus, rel=0.01)
        assert (shape.weak_inertia / shape.area) ** 0.5 == pytest.approx(shape.weak_radius, rel=0.01)
        # the weight in the name is a nominal one
        assert shape.area / inch**2 * 490 / 144 == pytest.approx(shape.weight / plf, rel=0.03)


@pytest.mark.parametrize(
    "ask",
    [
        lambda: steel_shape("W8x19"),
        lambda: steel_shape(None),
        lambda: steel_shape("W8x18", yield_strength=50.0 * 1000),
        lambda: flat_plate(thickness=0.0, depth=9 * inch),
        lambda: flat_plate(thickness=0.5 * inch, depth=nan),
        lambda: steel_moment("W8x18", unbraced_length=0.0),
        lambda: steel_moment(steel_shape("W8x18"), unbraced_length=-1.0),
        lambda: steel_moment(steel_shape("W8x18"), unbraced_length=400 * ft),
        lambda: steel_moment(steel_shape("W8x18"), unbraced_length=0.0, moment_shape=0.0),
        lambda: shape_names("HP"),
    ],
)
def test_bad_steel_is_refused(ask):
    with pytest.raises(BadInput):
        ask()


def test_shapes_that_are_not_compact_are_refused():
    with pytest.raises(OutsideRule, match="compact"):
        steel_moment(steel_shape("W8x31"), unbraced_length=0.0)


def test_unbraced_steel_carries_less_in_a_job():
    shape = steel_shape("W8x18")
    held = check_steel(_job(live=900), shape, RULEBOOK)[0]
    free = check_steel(_job(live=900, unbraced_length=12 * ft), shape, RULEBOOK)[0]
    assert free.share > 1.3 * held.share and free.asked == held.asked


# ---- composite mechanics: refusals ------------------------------------------------------------------------


@pytest.mark.parametrize(
    "ask",
    [
        lambda: composite.Part(modulus=0.0, width=1.0, depth=1.0),
        lambda: composite.Part(modulus=1.0, width=nan, depth=1.0),
        lambda: composite.Part(modulus=1.0, width=1.0, depth=400 * ft),
        lambda: composite.Part(modulus="1.6e6", width=1.0, depth=1.0),
        lambda: composite.loose_stiffness([]),
        lambda: composite.loose_stiffness("2x10"),
        lambda: composite.loose_stiffness([1.0, 2.0]),
        lambda: composite.stack([(1.0, 2.0)]),
        lambda: composite.stack(5),
        lambda: composite.seam_flow(composite.stack([(1.0, 1.0, 1.0)] * 2), above=2, shear=1.0),
        lambda: composite.partly_joined_stiffness(composite.stack([(1.0, 1.0, 1.0)] * 2), joined=1.2),
        lambda: composite.fastener_efficiency(axial_stiffness=1.0, spacing=0.0, slip_modulus=1.0, span=1.0),
        lambda: composite.end_group_forces(moment=1.0, shear=1.0, arm=0.0),
        lambda: composite.stepped_stiffness(span=4000.0, start=3000.0, end=2000.0, outside=1.0, inside=2.0),
        lambda: composite.end_slip(gap=100.0, end_slope=-0.1, joined=0.5),
    ],
)
def test_bad_sections_are_refused(ask):
    with pytest.raises(BadInput):
        ask()


# ---- the same opening in every family ---------------------------------------------------------------------


def _offered():
    sawn = [(FIR, 1.5 * inch, deep * inch) for deep in (7.25, 9.25, 11.25)]
    grade = lvl("2.0E-2900Fb")
    made = [(grade, 1.75 * inch, deep * inch) for deep in (7.25, 9.25, 9.5, 11.25)]
    thick = (0.25, 0.375, 0.5, 0.75)
    mixed = [
        _flitch(
            depth=deep * inch, plate_depth=deep * inch - 0.25 * inch, plate_thickness=t * inch, plies=plies
        )
        for deep in (7.25, 9.25)
        for t in thick
        for plies in (2, 4)
    ]
    shapes = [steel_shape(name) for name in shape_names("W")]
    return {"sawn": sawn, "lvl": made, "flitches": mixed, "steel": shapes, "rulebook": RULEBOOK}


def test_the_shallower_end_sets_the_depth_of_every_family():
    offered = _offered()
    deep = alternatives(_job(), space=Space(middle=11.25 * inch), **offered)
    low = alternatives(
        _job(), space=Space(middle=11.25 * inch, left=9.25 * inch, right=7.25 * inch), **offered
    )
    assert [one.family for one in low] == ["sawn", "LVL", "flitch", "steel"]
    for one in low:
        assert isinstance(one, Alternative) and one.depth <= 7.25 * inch * (1 + 1e-9)
    for one, other in zip(deep, low):
        assert one.share <= 1 and (other.weight >= one.weight or not other.carries)


def test_alternatives_agree_with_the_full_check_of_each():
    job = _job()
    for one in alternatives(job, space=Space(middle=9.5 * inch), **_offered()):
        if one.family in ("sawn", "LVL"):
            checks = check_beam(job, one.beam, RULEBOOK).checks
        elif one.family == "flitch":
            checks = check_flitch(job, one.beam, RULEBOOK)
        else:
            checks = check_steel(job, one.beam, RULEBOOK)
        assert one.share == pytest.approx(governing(checks).share, rel=1e-9)


def test_a_space_that_nothing_fits_gives_no_candidates_and_bad_spaces_are_refused():
    assert alternatives(_job(), space=Space(middle=2 * inch), **_offered()) == ()
    for bad in ({"middle": 0.0}, {"middle": None}, {"middle": 10 * inch, "left": nan}, {"middle": "10"}):
        with pytest.raises(BadInput):
            Space(**bad)
