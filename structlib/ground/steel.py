"""Steel as it is bought: what it weighs, how stiff it is, rolled W and S shapes by name, flat plates."""

from dataclasses import dataclass
from functools import cache
from math import sqrt

from structlib.ground.records import measured
from structlib.ground.refusals import check_choice, check_one_number
from structlib.ground.sections import rectangle_area, rectangle_inertia, rectangle_section_modulus
from structlib.ground.showing import show
from structlib.ground.tables import in_library_units, table_row, table_rows
from structlib.ground.units import inch, ksi


@cache
def steel_fact(key):
    """Return one fact of steel in the library's own units.

    Parameters
    ----------
    key : str
        Key of a row in data/steel.csv [-].

    Returns
    -------
    float
        The value [by row].

    Examples
    --------
    >>> round(steel_fact("modulus") / ksi)
    29000
    """
    return in_library_units(table_row("steel", key=key), "value")


def steel_fact_known(key):
    """Return how well one fact of steel is known.

    Parameters
    ----------
    key : str
        Key of a row in data/steel.csv [-].

    Returns
    -------
    str
        A word such as ``seen`` [-].

    Examples
    --------
    >>> steel_fact_known("modulus")
    'seen'
    """
    return table_row("steel", key=key)["verified"]


@dataclass(frozen=True, kw_only=True)
class SteelSection:
    """A steel beam: a rolled shape, or a flat plate on edge.

    Parameters
    ----------
    name : str
        Name to show [-].
    kind : str
        ``shape`` or ``plate`` [-].
    depth : float
        Depth [mm].
    flange_width : float
        Width of the flange; of a plate its thickness [mm].
    web : float
        Thickness of the web; of a plate its thickness [mm].
    flange : float
        Thickness of the flange; zero for a plate [mm].
    area : float
        Area [mm2].
    inertia : float
        Second moment of area about the strong axis [mm4].
    section_modulus : float
        Elastic section modulus [mm3].
    plastic_modulus : float
        Plastic section modulus [mm3].
    weak_inertia : float
        Second moment of area about the weak axis [mm4].
    weak_radius : float
        Radius of gyration about the weak axis [mm].
    web_ratio : float
        Web between its fillets over its thickness, h/tw as listed; zero for a plate [-].
    torsion_constant : float
        Twisting constant J as listed; zero for a plate [mm4].
    warping_constant : float
        Warping constant C_w as listed; zero for a plate [mm6].
    weight : float
        Weight by length [N/mm].
    yield_strength : float
        Yield strength F_y [MPa].
    verified : str
        How the numbers are known [-].

    Examples
    --------
    >>> round(steel_shape("W8x18").plastic_modulus / inch**3, 1)
    17.0
    """

    name: str = measured("text", "name")
    kind: str = measured("text", "kind")
    depth: float = measured("section length", "depth")
    flange_width: float = measured("section length", "flange width")
    web: float = measured("section length", "web thickness")
    flange: float = measured("section length", "flange thickness")
    area: float = 0.0
    inertia: float = 0.0
    section_modulus: float = 0.0
    plastic_modulus: float = 0.0
    weak_inertia: float = 0.0
    weak_radius: float = 0.0
    web_ratio: float = 0.0
    torsion_constant: float = 0.0
    warping_constant: float = 0.0
    weight: float = measured("line load", "own weight", default=0.0)
    yield_strength: float = measured("stress", "yield strength", default=0.0)
    verified: str = measured("text", "how it is known", default="recalled")

    @property
    def width(self):
        """Width of its flange, or of a plate its thickness [mm]."""
        return self.flange_width

    @property
    def bending_stiffness(self):
        """Modulus of steel times second moment of area [N*mm2]."""
        return steel_fact("modulus") * self.inertia


def shape_names(kind=None):
    """List the rolled shapes of the data file.

    Parameters
    ----------
    kind : str
        ``W`` or ``S``, or None for both [-].

    Returns
    -------
    tuple of str
        Names such as ``W8x18`` [-].

    Examples
    --------
    >>> shape_names("S")[0]
    'S3x5.7'
    """
    if kind is not None:
        check_choice("kind of shape", kind, ("W", "S"))
    names = tuple(row["shape"] for row in table_rows("steel_shapes"))
    return tuple(name for name in names if kind is None or name[0] == kind)


def steel_shape(name, *, yield_strength=None):
    """Return a rolled shape by name.

    Parameters
    ----------
    name : str
        Name such as ``W8x18``; capitals and spaces make no difference [-].
    yield_strength : float
        Yield strength; 50 ksi for W shapes and 36 ksi for S shapes when None [MPa].

    Returns
    -------
    SteelSection
        The shape [-].

    Examples
    --------
    >>> round(steel_shape("W8x18").inertia / inch**4, 1)
    61.9
    """
    if isinstance(name, str):
        name = "".join(name.split()).replace("×", "x").capitalize()
    check_choice("steel shape", name, shape_names())
    row = table_row("steel_shapes", shape=name)
    usual = steel_fact("yield_A992" if name[0] == "W" else "yield_A36")
    return SteelSection(
        name=name,
        kind="shape",
        depth=in_library_units(row, "depth_in"),
        flange_width=in_library_units(row, "flange_width_in"),
        web=in_library_units(row, "web_in"),
        flange=in_library_units(row, "flange_in"),
        area=in_library_units(row, "area_in2"),
        inertia=in_library_units(row, "inertia_in4"),
        section_modulus=in_library_units(row, "section_modulus_in3"),
        plastic_modulus=in_library_units(row, "plastic_modulus_in3"),
        weak_inertia=in_library_units(row, "weak_inertia_in4"),
        weak_radius=in_library_units(row, "weak_radius_in"),
        web_ratio=row["web_ratio"],
        torsion_constant=in_library_units(row, "torsion_constant_in4"),
        warping_constant=in_library_units(row, "warping_constant_in6"),
        weight=in_library_units(row, "weight_plf"),
        yield_strength=check_yield(yield_strength, usual=usual),
        verified=row["verified"],
    )


def flat_plate(*, thickness, depth, yield_strength=None):
    """Return a flat steel plate that stands on edge.

    Parameters
    ----------
    thickness : float
        Thickness, 1/8 in to 2 in [mm].
    depth : float
        Depth [mm].
    yield_strength : float
        Yield strength; 36 ksi when None [MPa].

    Returns
    -------
    SteelSection
        The plate [-].

    Examples
    --------
    >>> plate = flat_plate(thickness=0.5 * inch, depth=9.25 * inch)
    >>> round(plate.inertia / inch**4, 2), plate.name
    (32.98, 'plate 1/2 in x 9 1/4 in')
    """
    check_one_number(
        "plate thickness",
        thickness,
        low=inch / 8,
        high=2 * inch,
        shown=_inches,
        hint="for example 0.5*inch",
    )
    check_one_number("plate depth", depth, low=1 * inch, high=36 * inch, shown=_inches, hint="for example 9*inch")
    area = rectangle_area(width=thickness, depth=depth)
    elastic = rectangle_section_modulus(width=thickness, depth=depth)
    return SteelSection(
        name=f"plate {_inches(thickness)} x {_inches(depth)}",
        kind="plate",
        depth=depth,
        flange_width=thickness,
        web=thickness,
        flange=0.0,
        area=area,
        inertia=rectangle_inertia(width=thickness, depth=depth),
        section_modulus=elastic,
        plastic_modulus=1.5 * elastic,
        weak_inertia=rectangle_inertia(width=depth, depth=thickness),
        weak_radius=thickness / sqrt(12),
        weight=area * steel_fact("weight"),
        yield_strength=check_yield(yield_strength, usual=steel_fact("yield_A36")),
        verified="computed",
    )


def check_yield(value, *, usual):
    """Refuse a yield strength that no building steel has.

    Parameters
    ----------
    value : float
        Yield strength, 30 to 65 ksi, or None [MPa].
    usual : float
        What is taken for None [MPa].

    Returns
    -------
    float
        The yield strength [MPa].

    Examples
    --------
    >>> round(check_yield(None, usual=36 * ksi) / ksi)
    36
    """
    if value is None:
        return usual
    check_one_number(
        "yield strength",
        value,
        low=30 * ksi,
        high=65 * ksi,
        shown=lambda stress: f"{stress / ksi:g} ksi",
        hint="for example 50*ksi",
    )
    return value


def _inches(size):
    return show(size, "section length")
