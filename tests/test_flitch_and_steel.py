"""Flitch beams, steel beams and the alternatives to them: layouts, limits, refusals."""

from dataclasses import replace
from math import hypot, inf, nan

import pytest

from structlib.ground.engineered import lvl
from structlib.ground.lumber import find_material
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch, kip, lb, plf, psi
from structlib.house.alternatives import Alternative, Space, alternatives
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam
from structlib.house.with_steel import check_flitch, check_steel, lay_out_flitch
from structlib.mechanics import composite
from structlib.mechanics.beams import LineLoad, PointLoad
from structlib.rules.check import Seat, governing
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import Flitch
from structlib.rules.us import flitch as rules
from structlib.rules.us import flitch_bolts as bolt_rules
from structlib.rules.us.flitch import plate_pieces, steel_plate_check
from structlib.rules.us.flitch_bolts import flitch_bolts
from structlib.rules.us.steel_beams import brace_lengths, steel_moment, steel_shear
from structlib.rules.us.steel_columns import steel_post
from structlib.rules.us.steel_sections import check_not_slender, flat_plate, shape_names, steel_shape

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
    return BeamJob(width, Seat(3 * inch), Seat(3 * inch), loads, **{"unbraced_length": 0.0, **more})


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


def test_what_a_bolt_hole_takes_off_is_said_and_is_hand_arithmetic():
    """Two strips of wood, 6 21/32 in and 2 1/32 in deep, about the middle of both together."""
    strips = ((0.0, 2.3125 - 0.28125), (2.3125 + 0.28125, 9.25))
    area = sum(high - low for low, high in strips)
    middle = sum((high**2 - low**2) / 2 for low, high in strips) / area
    inertia = sum(((high - middle) ** 3 - (low - middle) ** 3) / 3 for low, high in strips)
    left = inertia / max(middle, 9.25 - middle)
    lost = rules.hole_loss(_flitch(), edge_distance=2.3125 * inch, bolt_diameter=0.5 * inch)
    assert lost == pytest.approx(1 - left / (9.25**2 / 6))
    assert any(f"takes {100 * lost:.0f} % off" in one for one in _layout()[1].conditions)


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


def _left_at_a_hole(depth, from_below, hole):
    """Section modulus of a strip 1 in wide with a hole, over that of the whole strip; lengths in inches."""
    strips = ((0.0, from_below - hole / 2), (from_below + hole / 2, depth))
    area = sum(high - low for low, high in strips)
    middle = sum((high**2 - low**2) / 2 for low, high in strips) / area
    inertia = sum(((high - middle) ** 3 - (low - middle) ** 3) / 3 for low, high in strips)
    return inertia / max(middle, depth - middle) / (depth**2 / 6)


def test_wood_and_plate_are_checked_on_the_section_that_a_bolt_hole_leaves():
    """A 9/16 in hole, 2 5/16 in from the edge of the wood and 2 3/16 in from that of the plate."""
    job, beam = _job(), _flitch()
    checks = {check.name: check for check in check_flitch(job, beam, RULEBOOK)}
    # psi, in, lb: 2-2x10 of E 1.6e6 and a plate 1/2 x 9
    wood_ei, steel_ei = 1.6e6 * 3 * 9.25**3 / 12, 29e6 * 0.5 * 9**3 / 12
    weight = beam.weight / plf
    dead, live = (150 + weight) * 12.25**2 / 8 * 12, 400 * 12.25**2 / 8 * 12  # lb-in
    wood = 1.6e6 * 4.625 * (dead + live) / (wood_ei + steel_ei) / _left_at_a_hole(9.25, 2.3125, 0.5625)
    found = checks["bending, wood at a bolt hole"]
    assert found.asked / psi == pytest.approx(wood, rel=1e-6)
    assert found.share == pytest.approx(found.asked / found.given)
    # after years the wood has E / 1.5 for the dead load, and its own E for people
    crept = 29e6 * 4.5 * (dead / (wood_ei / 1.5 + steel_ei) + live / (wood_ei + steel_ei))
    found = checks["bending, plate at a bolt hole, after years"]
    assert found.asked / psi == pytest.approx(crept / _left_at_a_hole(9.0, 2.1875, 0.5625), rel=1e-6)
    assert found.given / psi == pytest.approx(0.6 * 36000)


def test_creep_moves_load_to_the_plate():
    wood_ei, steel_ei = 1.6e6 * 3 * 9.25**3 / 12, 29e6 * 0.5 * 9**3 / 12
    after, before = steel_ei / (wood_ei / 1.5 + steel_ei), steel_ei / (wood_ei + steel_ei)
    assert rules.creep_growth(_flitch(), creep_factor=1.5) == pytest.approx(after / before)
    assert rules.creep_growth(_flitch(), creep_factor=1.0) == 1.0
    with pytest.raises(BadInput):
        rules.creep_growth(_flitch(), creep_factor=0.5)


def test_shear_at_the_end_bolts_counts_the_wood_below_the_far_bolt_only():
    """NDS 3.4.3.3(a) by hand: f_v = (3 V / 2 b d_e)(d / d_e)^2, with bolts 2 5/16 and 6 15/16 in up."""
    job, beam = _job(), _flitch()
    checks = {check.name: check for check in check_flitch(job, beam, RULEBOOK)}
    push = (550 + beam.weight / plf) * 12.25 / 2
    stress = 3 * push / (2 * 3 * 6.9375) * (9.25 / 6.9375) ** 2
    assert checks["shear at the end bolts"].share == pytest.approx(stress / 180, rel=1e-9)
    assert checks["shear at the end bolts"].verified == "recalled"
    # nothing is left out near the seat, so it asks more than plain shear; a plate on a seat of its own ends
    # it
    assert checks["shear at the end bolts"].share > 2 * checks["shear, left end"].share
    helped = check_flitch(job, beam, RULEBOOK, plate_bears=True)
    assert "shear at the end bolts" not in {check.name for check in helped}


def test_where_end_bolts_have_no_answer_no_verdict_on_shear_stands():
    """Forty bolts at each end do not fit; a post on the beam needs a group of its own."""
    post = TypedLoad("live", PointLoad(6 * ft, 500 * lb))
    job = _job()
    cases = (
        (_job(live=20_000), "closer than"),
        (replace(job, loads=(*job.loads, post)), "group of bolts of its own"),
    )
    for one, why in cases:
        checks = check_flitch(one, _flitch(), RULEBOOK)
        shear = [check for check in checks if check.kind == "shear"]
        assert shear and not any(check.decides for check in shear)
        assert all("no verdict on shear" in check.sentence and why in check.sentence for check in shear)
    # a long group leaves the rule: ten bolts 13 in apart in a shallow beam
    beam = _flitch()
    far = replace(
        _layout()[1],
        holes=tuple(bolt_rules.BoltHole(along=13 * inch * k, up=60.0, group="left end") for k in range(10)),
    )
    with pytest.raises(OutsideRule, match="five depths"):
        bolt_rules.end_bolt_shear(beam, far, shear_value=FIR.shear)


def test_bolts_are_laid_out_for_the_combination_that_asks_most():
    job, beam = _job(), _flitch()
    found = lay_out_flitch(job, beam, RULEBOOK)
    load = 550 * plf + beam.weight
    by_hand = flitch_bolts(
        beam, length=12.5 * ft, line_load=load, reaction=load * 12.25 * ft / 2, bolt_diameter=0.5 * inch
    )
    assert (len(found.holes), found.end_bolts) == (len(by_hand.holes), by_hand.end_bolts)
    # snow on half of the span: 300 plf there beside 150 plf all along
    snow = TypedLoad("snow", LineLoad(0.0, job.span / 2, 300 * plf))
    half = replace(job, loads=(job.loads[1], snow))
    assert lay_out_flitch(half, beam, RULEBOOK).line_load == pytest.approx(
        beam.steel_share * (450 * plf + beam.weight), rel=1e-9
    )


def test_a_flitch_has_a_verdict_only_with_bolts():
    """Strong enough by every share, and yet withheld where a post lands; taken out where its bolts fit."""
    job = _job(live=200, dead=50)
    post = TypedLoad("live", PointLoad(6 * ft, 20 * lb))
    loaded = replace(job, loads=(*job.loads, post))
    usual = {"space": Space(middle=9.5 * inch), "flitches": [_flitch()], "rulebook": RULEBOOK}
    (free,), (held,) = alternatives(job, **usual), alternatives(loaded, **usual)
    assert free.below_full and not free.withheld and "1/2 in bolts" in free.name
    assert held.share <= 1 and not held.below_full and "group of bolts of its own" in held.withheld


def test_without_the_plates_help_at_the_seat_the_wood_takes_all_the_shear():
    job, beam = _job(), _flitch()
    alone = {check.name: check for check in check_flitch(job, beam, RULEBOOK)}
    helped = {check.name: check for check in check_flitch(job, beam, RULEBOOK, plate_bears=True)}
    ratio = helped["shear, left end"].asked / alone["shear, left end"].asked
    assert ratio == pytest.approx(1 - beam.steel_share, rel=1e-9)
    for name in ("bending, wood at a bolt hole", "bending, plate at a bolt hole, after years"):
        assert helped[name].asked == alone[name].asked


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
        steel_plate_check(_flitch(), moment=1e6, limit="0.6 Fy")


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


@pytest.mark.parametrize("name", shape_names())
def test_every_shape_is_accepted_wherever_a_steel_beam_is_and_nowhere_else(name):
    shape, job = steel_shape(name), _job(live=20, dead=10)
    assert check_not_slender(shape) is shape and brace_lengths(shape)[0] < brace_lengths(shape)[1]
    assert 0 < steel_moment(shape, unbraced_length=10 * ft).allowed and steel_shear(shape)[0] > 0
    [one] = alternatives(job, space=Space(middle=shape.depth), steel=[shape], rulebook=RULEBOOK)
    assert one.name == name and one.share == governing(check_steel(job, shape, RULEBOOK)).share
    with pytest.raises(OutsideRule, match=f"{name} is a beam here; posts are pipe"):
        steel_post(name)


@pytest.mark.parametrize("written", ["W8x18", "W8X18", "w8x18", "W8 x 18", " W 8×18"])
def test_a_shape_is_found_however_it_is_written(written):
    assert steel_shape(written).name == "W8x18"


def test_a_moment_that_is_capped_says_so():
    """C_b = 2 would lift a W8x18 and a plate past their plastic moments; with C_b = 1 nothing is capped."""
    kip_inches = (17.0 * 50, 36 * 9**2 / 4)
    sections = (steel_shape("W8x18"), flat_plate(thickness=inch, depth=9 * inch))
    for section, plastic in zip(sections, kip_inches):
        just_past, far = (brace_lengths(section)[end] * 1.05 for end in (0, 1))
        for length in (just_past, far):
            plain = steel_moment(section, unbraced_length=length)
            lifted = steel_moment(section, unbraced_length=length, moment_shape=3.0)
            assert plain.state.startswith("rolls over") and "M_p = F_y Z" not in plain.formula
            assert lifted.nominal / (kip * inch) == pytest.approx(plastic, rel=1e-9)
            assert lifted.state.startswith("yields") and "capped" in lifted.state
            assert lifted.formula.endswith("at most M_p = F_y Z") and lifted.clause == plain.clause
        held = steel_moment(section, unbraced_length=0.0, moment_shape=3.0)
        assert held.state == "yields" and held.nominal / (kip * inch) == pytest.approx(plastic, rel=1e-9)


def test_the_table_of_shapes_agrees_with_itself():
    """Published properties against each other: S = 2 I / d, r = sqrt(I / A), weight = 490 lb/ft3."""
    for name in shape_names():
        shape = steel_shape(name)
        assert 2 * shape.inertia / shape.depth == pytest.approx(shape.section_modulus, rel=0.01)
        assert (shape.weak_inertia / shape.area) ** 0.5 == pytest.approx(shape.weak_radius, rel=0.01)
        # the weight in the name is a nominal one
        assert shape.area / inch**2 * 490 / 144 == pytest.approx(shape.weight / plf, rel=0.03)
        # the web ends at its fillets; fillets and thick roots stiffen in twist; C_w = I_y h_o^2 / 4 if even
        clear = (shape.depth - 2 * shape.flange) / shape.web
        assert 0.6 * clear < shape.web_ratio < clear
        plates = 2 * shape.flange_width * shape.flange**3 + (shape.depth - 2 * shape.flange) * shape.web**3
        assert 1.0 < shape.torsion_constant / (plates / 3) < 1.4
        between = shape.depth - shape.flange
        assert shape.weak_inertia * between**2 / 4 == pytest.approx(shape.warping_constant, rel=0.04)


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


def test_shapes_whose_parts_are_slender_are_refused():
    shape = steel_shape("W8x31")
    thin = {"flange": replace(shape, flange=0.16 * inch), "web": replace(shape, web_ratio=95.0)}
    for part, one in thin.items():
        with pytest.raises(OutsideRule, match=f"the {part} of W8x31 is too lean"):
            steel_moment(one, unbraced_length=0.0)


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
        _flitch(depth=deep * inch, plate_depth=deep * inch - 0.25 * inch, plate_thickness=t * inch, plies=plies)
        for deep in (7.25, 9.25)
        for t in thick
        for plies in (2, 4)
    ]
    shapes = [steel_shape(name) for name in shape_names("W")]
    return {"sawn": sawn, "lvl": made, "flitches": mixed, "steel": shapes, "rulebook": RULEBOOK}


def test_the_shallower_end_sets_the_depth_of_every_family():
    offered = _offered()
    deep = alternatives(_job(), space=Space(middle=11.25 * inch), **offered)
    low = alternatives(_job(), space=Space(middle=11.25 * inch, left=9.25 * inch, right=7.25 * inch), **offered)
    assert [one.family for one in low] == ["sawn", "LVL", "flitch", "steel"]
    for one in low:
        assert isinstance(one, Alternative) and one.depth <= 7.25 * inch * (1 + 1e-9)
    for one, other in zip(deep, low):
        assert one.share <= 1 and (other.weight >= one.weight or not other.below_full)


def test_alternatives_agree_with_the_full_check_of_each():
    job = _job()
    for one in alternatives(job, space=Space(middle=9.5 * inch), **_offered()):
        if one.family in ("sawn", "LVL"):
            checks = check_beam(job, one.beam, RULEBOOK).checks
        elif one.family == "flitch":
            how = {"plate_bears": one.plate_bears, "bolt_diameter": one.bolt_diameter}
            checks = check_flitch(job, one.beam, RULEBOOK, **how)
            lay_out_flitch(job, one.beam, RULEBOOK, **how)  # refused if no bolts fit
        else:
            checks = check_steel(job, one.beam, RULEBOOK)
        assert one.share == pytest.approx(governing(checks).share, rel=1e-9)


def test_a_space_that_nothing_fits_gives_no_candidates_and_bad_spaces_are_refused():
    assert alternatives(_job(), space=Space(middle=2 * inch), **_offered()) == ()
    for bad in ({"middle": 0.0}, {"middle": None}, {"middle": 10 * inch, "left": nan}, {"middle": "10"}):
        with pytest.raises(BadInput):
            Space(**bad)
