"""The checks that a span table leaves out, asked of one of its cells: shear, sag under all load, bracing."""

from structlib.ground.loads import line_load
from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.sections import rectangle_inertia, rectangle_section_modulus
from structlib.ground.tables import table_rows
from structlib.mechanics import formulas
from structlib.rules.check import Check, Factor, least_verified
from structlib.rules.us import factors
from structlib.rules.us.bending import bending_value
from structlib.rules.us.inputs import at_most
from structlib.rules.us.span_table_lumber import sharing_members, table_material, table_size
from structlib.rules.us.span_tables import span_limit
from structlib.rules.us.stability import beam_effective_length, slenderness_ratio


def left_out(basis, species, grade, nominal, spacing):
    """Return the checks that a span table leaves out, for one cell at its full span, not rounded.

    A span that the table cuts off is taken where it is cut. The checks show what the table does not ask; none
    of them decides. For those the code has other rules, on seats, blocking, decks and ceilings.

    Parameters
    ----------
    basis : structlib.rules.us.span_table_bases.TableBasis
        The table [-].
    species : str
        A species of the table [-].
    grade : str
        A grade of the table [-].
    nominal : str
        A size of the table [-].
    spacing : float
        Spacing center to center [mm].

    Returns
    -------
    tuple of structlib.rules.check.Check
        Shear at the seat; sag under all load, where a limit is published (not for ceiling joists); bending,
        or slenderness where that is past its limit, as if nothing held the top edge between the seats [-].

    Notes
    -----
    NDS 2018 3.4.2 (the whole push of the seat counts), IBC 2018 Table 1604.3, NDS 2018 3.3.3.

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> from structlib.rules.us.span_table_bases import find_basis
    >>> floor = find_basis("R502.3.1(2) dead 10")
    >>> [(one.name, round(one.share, 2)) for one in left_out(floor, "Hem-Fir", "No.2", "2x10", 16 * inch)][:2]
    [('shear', 0.36), ('sag under all load', 0.81)]
    """
    cell = span_limit(basis, species, grade, nominal, spacing)
    if not isinstance(cell.span, float):
        raise BadInput("the checks left out are shown for one spacing at a time; for example 16*inch")
    span = cell.span if basis.greatest_span is None else min(cell.span, basis.greatest_span)
    material, size = table_material(basis, species, grade, nominal), table_size(nominal)
    load = line_load(basis.dead + basis.live, tributary_width=spacing)
    checks = [_shear(basis, material, size, span, load)]
    if basis.total_limit:
        checks.append(_total_sag(basis, material, size, span, load))
    return (*checks, _bracing(basis, material, size, span, load))


def _shear(basis, material, size, span, load):
    push = formulas.simple_uniform_reaction(line_load=load, span=span)
    stress = formulas.rectangle_shear_stress(shear=push, width=size.width, depth=size.depth)
    given = material.shear * basis.time_factor
    return _check(
        "shear",
        "shear",
        "the fibres slide along each other near the seat; the table does not ask",
        stress,
        given,
        "stress",
        0.0,
        "at the seat",
        "NDS 2018 3.4.2",
        "f_v = 3 V / (2 b d) <= F_v' = F_v * C_D",
        (
            ("V", push, "force"),
            ("b", size.width, "section length"),
            ("d", size.depth, "section length"),
            ("f_v", stress, "stress"),
            ("F_v", material.shear, "stress"),
            ("F_v'", given, "stress"),
        ),
        (
            Factor(
                "C_D",
                basis.time_factor,
                "how long the load lasts",
                "NDS 2018 Table 2.3.2",
                factors.verified("load_duration_live"),
            ),
        ),
        [material.verified],
    )


def _total_sag(basis, material, size, span, load):
    divisor, clause, verified = _total_limit(basis.total_limit)
    inertia = rectangle_inertia(width=size.width, depth=size.depth)
    stiffness = formulas.bending_stiffness(modulus=material.modulus, inertia=inertia)
    sag = formulas.simple_uniform_deflection(line_load=load, span=span, bending_stiffness=stiffness)
    limit = span / divisor
    return _check(
        "sag under all load",
        "sag",
        "the table limits the sag under live load only",
        sag,
        limit,
        "small length",
        span / 2,
        "at the middle",
        clause,
        f"sag(all) <= span / {divisor:.0f}",
        (
            ("sag", sag, "small length"),
            ("span", span, "length"),
            ("limit", limit, "small length"),
            ("E", material.modulus, "stress"),
            ("I", inertia, "inertia"),
        ),
        (),
        [material.verified, verified],
    )


def _total_limit(member):
    rows = {
        row["member"]: row
        for row in table_rows("us_deflection_limits")
        if row["rulebook"] == "IBC" and row["loads"] == "dead and live"
    }
    row = rows[check_choice("member with a limit under all load", member, rows)]
    return row["divisor"], row["source"], row["verified"]


def _bracing(basis, material, size, span, load):
    length = float(beam_effective_length(unbraced_length=span, depth=size.depth))
    slenderness = float(slenderness_ratio(effective_length=length, depth=size.depth, width=size.width))
    greatest = factors.scalar("beam_slenderness_greatest")
    known = factors.verified("beam_slenderness_greatest")
    middle, where = span / 2, "at the middle, if nothing held the top edge between the seats"
    if not at_most(slenderness, greatest):
        # the ratio grows with the root of the effective length
        given = length * (greatest / slenderness) ** 2
        return _check(
            "slenderness",
            "stability",
            "too slender to be judged unless something holds its top edge",
            length,
            given,
            "length",
            middle,
            where,
            "NDS 2018 3.3.3.7",
            f"R_B = root(l_e d / b^2) <= {greatest:.0f}",
            (("l_e", length, "length"), ("d", size.depth, "section length"), ("b", size.width, "section length")),
            (),
            [known],
        )
    value, used = bending_value(
        material,
        width=size.width,
        depth=size.depth,
        plies=1,
        ply_width=size.width,
        unbraced_length=span,
        time_factor=basis.time_factor,
        sharing_members=sharing_members(basis),
    )
    modulus = rectangle_section_modulus(width=size.width, depth=size.depth)
    moment = formulas.simple_uniform_moment(line_load=load, span=span)
    stress, given = formulas.bending_stress(moment=moment, section_modulus=modulus), float(value)
    return _check(
        "bending, top edge free",
        "bending",
        "the table counts on a deck or ceiling that keeps the joist from rolling",
        stress,
        given,
        "stress",
        middle,
        where,
        "NDS 2018 3.3.3",
        "f_b = M / S <= F_b' = F_b * factors",
        (
            ("M", moment, "moment"),
            ("S", modulus, "section modulus"),
            ("f_b", stress, "stress"),
            ("F_b", material.bending, "stress"),
            ("F_b'", given, "stress"),
        ),
        used,
        [material.verified, *(factor.verified for factor in used)],
    )


def _check(name, kind, sentence, asked, given, dimension, position, where, clause, formula, substitute, used, known):
    return Check(
        name=name,
        kind=kind,
        sentence=sentence,
        asked=asked,
        given=given,
        share=asked / given,
        dimension=dimension,
        position=position,
        where=where,
        combination="dead and live load together",
        clause=clause,
        formula=formula,
        substitute=substitute,
        factors=used,
        verified=least_verified(known),
        decides=False,
    )
