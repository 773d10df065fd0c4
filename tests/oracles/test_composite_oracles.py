"""Composite sections and steel beams against other ways to the same numbers."""

import math

import numpy
import pytest

from structlib.ground.units import ft, inch, kip, ksi, psi
from structlib.mechanics.beams import Beam, LineLoad, Support, solve
from structlib.mechanics.composite import (
    Part,
    end_group_forces,
    end_slip,
    fastener_efficiency,
    joined_share,
    joined_stiffness,
    joined_stress,
    loose_stiffness,
    neutral_axis,
    partly_joined_stiffness,
    partly_joined_stress,
    seam_flow,
    stack,
    stepped_stiffness,
)
from structlib.rules.us.steel_beams import brace_lengths, steel_moment, steel_shear
from structlib.rules.us.steel_sections import flat_plate, lean_parts, shape_names, steel_shape

STACKS = {
    "two like boards": [(11000.0, 38.0, 140.0), (11000.0, 38.0, 140.0)],
    "steel under wood": [(9000.0, 89.0, 235.0), (200000.0, 89.0, 6.0)],
    "three unlike layers": [(8000.0, 50.0, 40.0), (13000.0, 38.0, 184.0), (70000.0, 60.0, 9.0)],
}


def _by_slices(layers, moment, count=20_000):
    """Axis, stiffness, stresses and seam flow by adding up thin slices: nothing of the parallel-axis rule."""
    edges = numpy.cumsum([0.0] + [depth for _, _, depth in layers])
    y, weight, modulus = [], [], []
    for (layer_modulus, width, depth), top in zip(layers, edges):
        step = depth / count
        places = top + (numpy.arange(count) + 0.5) * step
        y.append(places)
        weight.append(numpy.full(count, layer_modulus * width * step))
        modulus.append(numpy.full(count, layer_modulus))
    y, weight, modulus = (numpy.concatenate(one) for one in (y, weight, modulus))
    axis = (weight * y).sum() / weight.sum()
    stiffness = (weight * (y - axis) ** 2).sum()
    curvature = moment / stiffness
    upper = y < edges[1]
    flow_by_shear = abs((weight * (y - axis))[upper].sum()) / stiffness
    return axis, stiffness, layers[-1][0] * (edges[-1] - axis) * curvature, flow_by_shear


@pytest.mark.parametrize("name", STACKS)
def test_joined_layers_against_adding_up_thin_slices(name):
    layers, moment = STACKS[name], 5e6
    axis, stiffness, lowest, flow = _by_slices(layers, moment)
    parts = stack(layers)
    depth = sum(layer[2] for layer in layers)
    assert neutral_axis(parts) == pytest.approx(axis, rel=1e-9)
    assert joined_stiffness(parts) == pytest.approx(stiffness, rel=1e-7)
    found = joined_stress(parts, modulus=layers[-1][0], height=depth, moment=moment)
    assert found == pytest.approx(lowest, rel=1e-7)
    assert seam_flow(parts, above=1, shear=1000.0) == pytest.approx(1000.0 * flow, rel=1e-7)


def test_joined_layers_against_a_section_properties_library():
    """The composite section of a general finite-element package for cross sections."""
    from sectionproperties.analysis import Section
    from sectionproperties.pre import Material
    from sectionproperties.pre.library import rectangular_section

    for layers in STACKS.values():
        height, geometry = sum(layer[2] for layer in layers), None
        for number, (modulus, width, depth) in enumerate(layers):
            height -= depth
            material = Material(str(number), modulus, 0.0, 1.0, 1.0, "grey")
            one = rectangular_section(d=depth, b=width, material=material).shift_section(-width / 2, height)
            geometry = one if geometry is None else geometry + one
        geometry.create_mesh(mesh_sizes=[200.0])
        section = Section(geometry)
        section.calculate_geometric_properties()
        parts, depth = stack(layers), sum(layer[2] for layer in layers)
        assert section.get_eic(e_ref=1.0)[0] == pytest.approx(joined_stiffness(parts), rel=1e-9)
        assert depth - section.get_c()[1] == pytest.approx(neutral_axis(parts), rel=1e-9)


def test_two_layers_on_giving_fasteners_against_the_differential_equation():
    """Half a sine wave of load: the closed form must satisfy the equations of two beams on a seam of "
    "springs."""
    layers, span, spacing, slip_modulus = STACKS["two like boards"], 3600.0, 150.0, 900.0
    top, bottom = stack(layers)
    first, second = top.axial_stiffness, bottom.axial_stiffness
    gap, own = bottom.centre - top.centre, top.bending_stiffness + bottom.bending_stiffness
    wave, spread = math.pi / span, slip_modulus / spacing
    # Unknown amplitudes: sag w, end slides u1 and u2. Equilibrium of each layer along the beam, then of both
    # across.
    # E1 A1 u1'' + k (u2 - u1 + gap w') = 0; E2 A2 u2'' - k (...) = 0; own w'''' - k gap (u2' - u1' + gap
    # w'') = q.
    matrix = numpy.array(
        [
            [-first * wave**2 - spread, spread, spread * gap * wave],
            [spread, -second * wave**2 - spread, -spread * gap * wave],
            [-spread * gap * wave, spread * gap * wave, own * wave**4 + spread * gap**2 * wave**2],
        ]
    )
    sag = numpy.linalg.solve(matrix, [0.0, 0.0, 1.0])[2]
    stiffness = 1.0 / (sag * wave**4)
    efficiency = fastener_efficiency(axial_stiffness=first, spacing=spacing, slip_modulus=slip_modulus, span=span)
    joined = joined_share(top, bottom, efficiency=efficiency)
    assert partly_joined_stiffness([top, bottom], joined=joined) == pytest.approx(stiffness, rel=1e-9)


def test_two_layers_on_giving_fasteners_keep_their_balance():
    """Stresses over the depth must give back the moment and no push along the beam."""
    layers = [(9000.0, 38.0, 184.0), (13000.0, 64.0, 140.0)]
    top, bottom = stack(layers)
    moment = 4e6
    for joined in (0.0, 0.3, 0.8, 1.0):
        push = bend = 0.0
        edges = partly_joined_stress(top, bottom, moment=moment, joined=joined)
        for part, (upper, lower) in zip((top, bottom), edges):
            force = (upper + lower) / 2 * part.width * part.depth
            push += force
            bend += force * part.centre + (lower - upper) / 2 * part.width * part.depth**2 / 6
        assert push == pytest.approx(0.0, abs=1e-6 * moment / 100)
        assert bend == pytest.approx(moment, rel=1e-12)


def test_slip_of_loose_layers_is_what_two_bent_boards_show():
    """The lower fibre of the top board lengthens and the upper fibre of the other shortens: added up by "
    "strain."""
    modulus, deep, load, span = 11000.0, 140.0, 2.0, 3600.0
    parts = stack([(modulus, 38.0, deep)] * 2)
    stiffness = loose_stiffness(parts)
    x = numpy.linspace(0.0, span / 2, 200_001)
    curvature = load * x * (span - x) / 2 / stiffness
    by_strain = numpy.trapezoid(curvature * deep / 2 - curvature * -deep / 2, x)
    beam = solve(Beam(span, stiffness, (Support(0.0), Support(span)), (LineLoad(0.0, span, load),)))
    found = end_slip(gap=deep, end_slope=abs(float(beam.slope(0.0))), joined=0.0)
    assert found == pytest.approx(by_strain, rel=1e-8)


def test_partial_sister_sags_as_finite_elements_say():
    pynite = pytest.importorskip("Pynite")
    span, load, start, end = 4200.0, 3.5, 900.0, 3100.0
    modulus, bare, helped = 11000.0, 4.1e7, 8.9e7
    model = pynite.FEModel3D()
    for place in (0.0, start, span / 2, end, span):
        model.add_node(f"{place}", place, 0, 0)
    model.add_material("wood", modulus, modulus / 16, 0.3, 0.0)
    for name, inertia in (("bare", bare), ("helped", helped)):
        model.add_section(name, 1e4, 1e8, inertia, 1e8)
    ends = [0.0, start, span / 2, end, span]
    for left, right in zip(ends, ends[1:]):
        name = "helped" if start <= left < end else "bare"
        model.add_member(f"m{left}", f"{left}", f"{right}", "wood", name)
        model.add_member_dist_load(f"m{left}", "Fy", -load, -load)
    model.def_support("0.0", True, True, True, True, False, False)
    model.def_support(f"{span}", False, True, True, False, False, False)
    model.analyze(check_statics=False)
    pieces = stepped_stiffness(span=span, start=start, end=end, outside=modulus * bare, inside=modulus * helped)
    beam = solve(Beam(span, pieces, (Support(0.0), Support(span)), (LineLoad(0.0, span, load),)))
    for place in (start, span / 2, end):
        by_elements = -list(model.nodes[f"{place}"].DY.values())[0]
        assert float(beam.deflection(place)) == pytest.approx(by_elements, rel=1e-8)


def test_end_groups_hold_the_cut_piece_in_balance():
    moment, shear, arm = 3.2e6, 900.0, 450.0
    outer, inner = end_group_forces(moment=moment, shear=shear, arm=arm)
    # A stub cut just inside the inner group: its own shear acts down on the cut face, its moment turns it
    # back.
    assert outer + inner == pytest.approx(shear)
    assert outer * arm == pytest.approx(moment)


# ---- steel: in kips and inches, from the printed formulas, with nothing of the library's arithmetic -------


def _shape_moment_kip_in(name, unbraced_in, strength=50.0):
    shape = steel_shape(name)
    d, bf, tf = (one / inch for one in (shape.depth, shape.flange_width, shape.flange))
    s, z = shape.section_modulus / inch**3, shape.plastic_modulus / inch**3
    iy, ry, steel = shape.weak_inertia / inch**4, shape.weak_radius / inch, 29000.0
    ho = d - tf
    j, cw = shape.torsion_constant / inch**4, shape.warping_constant / inch**6
    rts = (iy * cw) ** 0.25 / s**0.5
    lp = 1.76 * ry * (steel / strength) ** 0.5
    a = j / (s * ho)
    lr = 1.95 * rts * steel / (0.7 * strength) * (a + (a * a + 6.76 * (0.7 * strength / steel) ** 2) ** 0.5) ** 0.5
    plastic = strength * z
    if (lean := bf / 2 / tf) > 0.38 * (steel / strength) ** 0.5:
        along = (lean / (steel / strength) ** 0.5 - 0.38) / (1.0 - 0.38)
        rolls = _shape_moment_kip_in_rolling(unbraced_in, plastic, s, lp, lr, rts, a, strength)
        return min(rolls, plastic - (plastic - 0.7 * strength * s) * along)
    return _shape_moment_kip_in_rolling(unbraced_in, plastic, s, lp, lr, rts, a, strength)


def _shape_moment_kip_in_rolling(unbraced_in, plastic, s, lp, lr, rts, a, strength, steel=29000.0):
    if unbraced_in <= lp:
        return plastic
    if unbraced_in <= lr:
        return min(plastic, plastic - (plastic - 0.7 * strength * s) * (unbraced_in - lp) / (lr - lp))
    lean = unbraced_in / rts
    return s * 3.141592653589793**2 * steel / lean**2 * (1 + 0.078 * a * lean**2) ** 0.5


@pytest.mark.parametrize("name", ["W6x12", "W6x15", "W8x18", "W8x31", "W10x12", "W10x22", "W12x26", "W14x22"])
def test_steel_moment_by_unbraced_length_against_a_second_working(name):
    for feet in (0, 2, 4, 6, 8, 12, 16, 20, 30):
        expected = _shape_moment_kip_in(name, feet * 12.0) / 1.67 / 12
        found = steel_moment(steel_shape(name), unbraced_length=feet * ft).allowed / (kip * ft)
        assert found == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("name", ["W8x18", "W10x22", "W14x22"])
def test_rolling_over_is_the_buckling_of_a_beam_under_even_moment(name):
    """While elastic: pi / L sqrt(E Iy G J + (pi E / L)^2 Iy Cw), with G = 11,200 ksi, as mechanics has it."""
    shape = steel_shape(name)
    length = 1.5 * brace_lengths(shape)[1]
    steel, shear_modulus = 29000 * ksi, 11200 * ksi
    j, cw = shape.torsion_constant, shape.warping_constant
    euler = (
        math.pi
        / length
        * math.sqrt(
            steel * shape.weak_inertia * shear_modulus * j + (math.pi * steel / length) ** 2 * shape.weak_inertia * cw
        )
    )
    assert steel_moment(shape, unbraced_length=length).nominal == pytest.approx(euler, rel=3e-3)


def test_plate_moment_against_a_second_working():
    depth, thick, strength, steel = 9.25, 0.5, 36.0, 29000.0
    plate = flat_plate(thickness=thick * inch, depth=depth * inch)
    yields = strength * thick * depth**2 / 6
    for feet in (0, 1, 2, 4, 8, 12):
        lean = feet * 12 * depth / thick**2
        if lean <= 0.08 * steel / strength:
            expected = 1.5 * yields
        elif lean <= 1.9 * steel / strength:
            expected = min(1.5 * yields, (1.52 - 0.274 * lean * strength / steel) * yields)
        else:
            expected = min(1.5 * yields, 1.9 * steel / lean * thick * depth**2 / 6)
        found = steel_moment(plate, unbraced_length=feet * ft).nominal / (kip * inch)
        assert found == pytest.approx(expected, rel=1e-9)


def test_shapes_that_are_not_compact_are_those_that_the_manual_marks():
    """Of these shapes at 50 ksi the user note of AISC 360-22 F2 (seen) names six as not compact."""
    lean = {
        name for name in shape_names("W") if any(ratio > most for ratio, most in lean_parts(steel_shape(name)).values())
    }
    assert lean == {"W6x8.5", "W6x9", "W6x15", "W8x10", "W8x31", "W10x12"}


def test_shear_of_a_rolled_web_against_hand_arithmetic():
    # 0.6 * 50 ksi * 8.14 in * 0.23 in / 1.5
    assert steel_shear(steel_shape("W8x18"))[0] / kip == pytest.approx(37.444, rel=1e-4)
    # the one web of the table that takes the greater safety factor: 0.6 * 50 ksi * 11.9 in * 0.2 in / 1.67
    assert steel_shear(steel_shape("W12x14"))[0] / kip == pytest.approx(42.754, rel=1e-4)
    # between its fillets the web of a W14x22 is not that lean: 0.6 * 50 ksi * 13.7 in * 0.23 in / 1.5
    assert steel_shear(steel_shape("W14x22"))[0] / kip == pytest.approx(63.02, rel=1e-4)


def test_webs_with_the_greater_safety_factor_are_those_that_the_specification_names():
    """The user note of AISC 360-22 G2.1(a) (seen) names W12x14 alone of the shapes listed here."""
    named = {name for name in shape_names("W") if steel_shear(steel_shape(name))[1].endswith("G2.1(b)")}
    assert named == {"W12x14"}


def test_bolt_through_a_plate_against_hand_arithmetic():
    """Half-inch bolt, half-inch A36 plate between 1-1/2 in plies of specific gravity 0.50, load across the
    grain.

    Bearing of the wood 6100 G^1.45 / sqrt(D), to 50 psi, is 3150 psi; of the steel 1.5 x 58,000 psi; F_yb
    45,000 psi.
    """
    from structlib.ground.lumber import find_material
    from structlib.ground.units import lb
    from structlib.rules.members import Flitch
    from structlib.rules.us.flitch_bolts import bolt_through_plate

    wood, steel, bend, d, side, main = 3150.0, 87000.0, 45000.0, 0.5, 1.5, 0.5
    ratio = steel / wood
    k3 = -1 + math.sqrt(2 * (1 + ratio) / ratio + 2 * bend * (2 + ratio) * d**2 / (3 * steel * side**2))
    modes = {
        "Im": d * main * steel / (4 * 1.25),
        "Is": 2 * d * side * wood / (4 * 1.25),
        "IIIs": 2 * k3 * d * side * steel / ((2 + ratio) * 3.2 * 1.25),
        "IV": 2 * d**2 / (3.2 * 1.25) * math.sqrt(2 * steel * bend / (3 * (1 + ratio))),
    }
    beam = Flitch(
        wood=find_material("Douglas Fir-Larch", "No.2"),
        ply_width=1.5 * inch,
        depth=9.25 * inch,
        plies=2,
        plate_thickness=0.5 * inch,
        plate_depth=9 * inch,
    )
    value, found, _ = bolt_through_plate(beam, bolt_diameter=0.5 * inch)
    assert found.mode == min(modes, key=modes.get)
    assert value / lb == pytest.approx(min(modes.values()), rel=1e-6)


def test_parts_side_by_side_take_load_until_they_sag_alike():
    """Each ply as a beam of its own, under the share it is given, must have the same sag as its "
    "neighbours."""
    from structlib.mechanics.composite import shares_by_stiffness

    parts = [
        Part(modulus=1.6e6 * psi, width=3 * inch, depth=9.25 * inch),
        Part(modulus=29e6 * psi, width=0.375 * inch, depth=8.5 * inch),
        Part(modulus=2.0e6 * psi, width=1.75 * inch, depth=9.5 * inch),
    ]
    sags = []
    for part, share in zip(parts, shares_by_stiffness(parts)):
        load = (LineLoad(0.0, 4000.0, 6.0 * share),)
        beam = solve(Beam(4000.0, part.bending_stiffness, (Support(0.0), Support(4000.0)), load))
        sags.append(float(beam.deflection(2000.0)))
    assert sags == pytest.approx([sags[0]] * 3, rel=1e-12)
