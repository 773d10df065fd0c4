"""The woods a page offers, in the order a yard would name them, and the sizes each comes in."""

from dataclasses import dataclass, replace
from functools import cache

from structlib.ground.lumber import find_material, lvl
from structlib.ground.refusals import check_choice
from structlib.ground.sizes import stock_sizes
from structlib.ground.units import inch
from structlib.house import plan
from structlib.pages.kit.controls import Pick
from structlib.rules.check import least_verified
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import NotCovered, ask

#: Key of a wood that nobody has named: at each size the least of each value of the sawn woods listed.
UNKNOWN = "unknown"


@dataclass(frozen=True)
class Wood:
    """One choice of a page's material list: what is shown, and where its values and sizes come from."""

    key: str
    label: str
    species: str
    grade: str
    kind: str
    thickness: float

    def material(self, nominal):
        """Return the design values for a piece of this wood in one size."""
        return lvl(self.grade) if self.kind == "lvl" else find_material(self.species, self.grade, nominal)

    def words(self, size, plies, **as_put_in):
        """Return the words of a house for a beam or a post of this wood."""
        return plan.Wood(species=self.species, grade=self.grade, size=size, plies=plies, **as_put_in)

    def sizes(self):
        """Return the stock sizes of this wood, shallow first."""
        if self.kind == "lvl":
            return stock_sizes("lvl")
        return stock_sizes(
            "timber" if self.kind == "timber" else "dimension",
            thickness=self.thickness,
            special_order=self.kind == "timber",
        )


WOODS = (
    Wood("hem-fir", "Hem-Fir No.2", "Hem-Fir", "No.2", "dimension", 2),
    Wood("spf", "Spruce-Pine-Fir No.1/No.2", "Spruce-Pine-Fir", "No.1/No.2", "dimension", 2),
    Wood("fir", "Douglas Fir-Larch No.2", "Douglas Fir-Larch", "No.2", "dimension", 2),
    Wood(
        "fir select",
        "Douglas Fir-Larch Select Structural",
        "Douglas Fir-Larch",
        "Select Structural",
        "dimension",
        2,
    ),
    Wood("southern pine", "Southern Pine No.2", "Southern Pine", "No.2", "dimension", 2),
    Wood("fir timber", "Douglas Fir-Larch No.1, 6x timber", "Douglas Fir-Larch", "No.1", "timber", 6),
    Wood("lvl 1.9", "LVL 1.9E-2600Fb, generic", "LVL", "1.9E-2600Fb", "lvl", 1.75),
    Wood("lvl 2.0", "LVL 2.0E-2900Fb, generic", "LVL", "2.0E-2900Fb", "lvl", 1.75),
)

#: The plates that a page offers below a beam or a post, by the key of their wood.
PLATES = {
    "spf": plan.Plate(species="Spruce-Pine-Fir", grade="No.1/No.2"),
    "hem-fir": plan.Plate(species="Hem-Fir", grade="No.2"),
    "fir": plan.Plate(species="Douglas Fir-Larch", grade="No.2"),
    "southern pine": plan.Plate(species="Southern Pine", grade="No.2"),
}
#: What a beam may sit on, as a page asks it.
SITS_ON = (
    *((f"plate of {plate.species}", key) for key, plate in PLATES.items()),
    ("plate, its wood not known", "plate"),
    ("end grain of jack studs", "post"),
    ("masonry", "masonry"),
    ("not looked yet", UNKNOWN),
)
#: How far apart joists and rafters stand.
SPACINGS = tuple((f"{inches:g} in", inches * inch) for inches in (12, 16, 19.2, 24))


def wood(key):
    """Return one of the woods by its key.

    Examples
    --------
    >>> wood("fir").species
    'Douglas Fir-Larch'
    """
    found = {one.key: one for one in WOODS}
    return found[check_choice("wood", key, found)]


#: Three separate facts that a page asks of a post or beam, none of them taken for granted.
IN_USE = (
    Pick("moisture", "Wood in use", (("dry", "dry"), ("wet: stays above 19 % moisture", "wet")), "dry"),
    Pick("incised", "Incised", (("no", "no"), ("yes: small cuts all over it", "yes")), "no"),
    Pick(
        "treatment",
        "Treated",
        (("no", "none"), ("preservative, under pressure", "preservative"), ("fire retardant", "fire retardant")),
        "none",
    ),
)


def in_use(values):
    """Read the three facts from the values of a page.

    Examples
    --------
    >>> in_use({"moisture": "wet", "incised": "no", "treatment": "none"})
    {'wet': True, 'incised': False, 'treatment': 'none'}
    """
    return dict(wet=values["moisture"] == "wet", incised=values["incised"] == "yes", treatment=values["treatment"])


def in_use_notes(values, material, where, rulebook):
    """Ask for the three facts where none is told and the place calls for them; else say what they do."""
    facts = in_use(values)
    if facts == {"wet": False, "incised": False, "treatment": "none"}:
        asked = (
            f"{where}: does the wood stay damp, above 19 % moisture? Is it treated? Is it incised? None of the "
            "three is counted until it is chosen here, and the first and the third lower what it can give.",
        )
        return asked if where else ()
    try:
        return ask(rulebook, "wood_in_use", material, facts["wet"])
    except NotCovered as none:
        return (f"{none}.",)


@cache
def pieces(key, rulebook=RULEBOOK):
    """Return every size of a wood as (depth, width of a ply, name, material).

    Gives [mm, mm, -, -].

    Examples
    --------
    >>> [name for _, _, name, _ in pieces("hem-fir")]
    ['2x4', '2x6', '2x8', '2x10', '2x12']
    """
    if key == UNKNOWN:
        return weakest_pieces(rulebook)
    one = wood(key)
    return tuple(
        (size.depth, size.width, size.nominal, one.material(size.nominal))
        for size in one.sizes()
        if one.kind != "timber" or size.depth > size.width - 0.5 * inch
    )


@cache
def weakest_pieces(rulebook=RULEBOOK):
    """Return every 2x size with the least of each design value that a listed wood has there.

    Gives [mm, mm, -, -].

    Examples
    --------
    >>> from structlib.ground.units import psi
    >>> [round(wood.bearing / psi) for *_, wood in weakest_pieces()]
    [405, 405, 405, 405, 405]
    """
    listed = [pieces(one.key) for one in WOODS if one.kind == "dimension"]
    return tuple(_weakest(same, rulebook) for same in zip(*listed))


def _weakest(same, rulebook):
    depth, width, name, base = same[0]
    woods = [wood for *_, wood in same]

    def factor(wood):
        try:
            return ask(rulebook, "size_on_bending", wood, width, depth)
        except NotCovered:
            return 1.0

    values = ("tension", "shear", "bearing", "compression", "modulus", "modulus_stability", "specific_gravity")
    least = {field: min(getattr(wood, field) for wood in woods) for field in values}
    return (
        depth,
        width,
        name,
        replace(
            base,
            **least,
            bending=min(wood.bending * factor(wood) for wood in woods) / factor(base),
            weight_density=max(wood.weight_density for wood in woods),
            species="not known",
            grade="",
            name=f"wood not known, weakest listed {name}",
            source="the least of each value among the sawn woods listed",
            verified=least_verified([wood.verified for wood in woods]),
        ),
    )
