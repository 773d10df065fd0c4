"""The invented roof of the tables beside the bench, and what the tables ask of it alike."""

from structlib.ground.lumber import find_material
from structlib.ground.sections import rectangle_area, rectangle_inertia
from structlib.ground.sizes import dressed_size
from structlib.ground.units import ft, inch, psf
from structlib.rules.choice import RULEBOOK

#: 24 ft wide, 6 in 12, rafters every 16 in, 15 psf dead, 30 psf snow.
SPAN, RISE, SPACING, DEAD, SNOW = 24 * ft, 6 * ft, 16 * inch, 15 * psf, 30 * psf
WOOD = ("Douglas Fir-Larch", "No.2")
#: The combination with snow in it.
UNDER_SNOW = RULEBOOK.combinations({"snow"})[-1]


def pair(load=DEAD + SNOW):
    """Return the load and the span of one pair of rafters, as the formulas of frames take them.

    ``load`` [MPa]; gives [N/mm, mm].
    """
    return {"line_load": load * SPACING, "building_span": SPAN}


def stiffness(nominal):
    """Return how stiff a piece of the roof's wood is.

    Gives [N, N*mm2].
    """
    size, wood = dressed_size(nominal), find_material(*WOOD, nominal)
    box = {"width": size.width, "depth": size.depth}
    return {
        "axial_stiffness": wood.modulus * rectangle_area(**box),
        "bending_stiffness": wood.modulus * rectangle_inertia(**box),
    }
