"""Species and grades of sawn lumber: rows of the data files as typed records, found by name and size."""

from dataclasses import replace
from functools import cache, lru_cache, partial

# One room for its callers: sizes and engineered lumber are found here too.
from structlib.ground.engineered import lvl
from structlib.ground.material import Material, wood_weight_density
from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.sizes import nominal_size
from structlib.ground.tables import in_library_units, table_rows

KINDS = ("dimension", "southern pine", "timber", "lvl")

_TABLES = {"dimension": "lumber_dimension", "southern pine": "lumber_southern_pine", "timber": "lumber_timbers"}
_SOUTHERN_PINE = "Southern Pine"


def materials(kind=None):
    """List every sawn and generic engineered material of the data files.

    Parameters
    ----------
    kind : str
        ``dimension``, ``southern pine``, ``timber``, ``lvl``, or None for all [-].

    Returns
    -------
    tuple of Material
        The materials in the order of the publications [-].

    Examples
    --------
    >>> len(materials("timber"))
    33
    """
    if kind is None:
        return tuple(material for each in KINDS for material in materials(each))
    check_choice("kind", kind, KINDS)
    return _materials_of(kind)


@cache
def _materials_of(kind):
    if kind == "lvl":
        return tuple(lvl(row["grade"]) for row in table_rows("lvl_grades"))
    return tuple(_sawn(kind, row) for row in table_rows(_TABLES[kind]))


def _sawn(kind, row):
    value = partial(in_library_units, row)
    label, note, depth = _size_words(kind, row)
    return Material(
        kind=kind,
        species=row["species"],
        grade=row["grade"],
        name=f"{row['species']} {row['grade']}{label}",
        bending=value("Fb_psi"),
        tension=value("Ft_psi"),
        shear=value("Fv_psi"),
        bearing=value("Fcperp_psi"),
        compression=value("Fc_psi"),
        modulus=value("E_psi"),
        modulus_stability=value("Emin_psi"),
        specific_gravity=row["G"],
        weight_density=wood_weight_density(row["G"]),
        source=row["source"],
        verified=row["verified"],
        size_note=note,
        size_factor_group=row["size_factor_group"],
        tabulated_depth=depth,
        note=row["note"],
    )


def _size_words(kind, row):
    if kind == "dimension":
        return "", "the size factor still applies", None
    if kind == "timber":
        use = "" if row["use"] == "any" else f", {row['use']}"
        return use, "5x5 and larger; the size factor applies over 12 in deep", None
    low, high = int(row["width_min"]), int(row["width_max"])
    wide = f"{high} in wide" if low == high else f"{low} to {high} in wide"
    return f", {wide}", f"values for {wide}; the size is already in them", high


def find_material(species, grade, nominal=None):
    """Find the design values of a species and grade, for a size where they depend on it.

    Parameters
    ----------
    species : str
        Species group as published, for example ``Douglas Fir-Larch`` [-].
    grade : str
        Grade as published, for example ``No.2`` [-].
    nominal : str
        Nominal size, for example ``2x10``; needed for Southern Pine and for timbers [-].

    Returns
    -------
    Material
        The design values [-].

    Examples
    --------
    >>> from structlib.ground.units import psi
    >>> round(find_material("Southern Pine", "No.2", "2x10").bending / psi)
    800
    >>> find_material("Douglas Fir-Larch", "No.1", "6x12").name
    'Douglas Fir-Larch No.1, Beams & Stringers'
    """
    if all(isinstance(word, (str, type(None))) for word in (species, grade, nominal)):
        return _found(species, grade, nominal)
    return _found.__wrapped__(species, grade, nominal)  # refused there, in words


@lru_cache(maxsize=1024)
def _found(species, grade, nominal):
    thin, wide = sorted(nominal_size(nominal)) if nominal is not None else (None, None)
    if thin == 1:
        raise BadInput(f"{nominal} is a board, not lumber with design values; sizes start at 2 in, like 2x10")
    if thin is not None and thin >= 5:
        found = _of_grade(materials("timber"), species, grade)
        return _timber_of_size(found, thin, wide)
    found = _of_grade(materials("dimension") + materials("southern pine"), species, grade)
    return _southern_pine_of_size(found, wide) if species == _SOUTHERN_PINE else found[0]


def _of_grade(listed, species, grade):
    check_choice("species", species, dict.fromkeys(one.species for one in listed))
    of_species = [one for one in listed if one.species == species]
    check_choice(f"grade of {species}", grade, dict.fromkeys(one.grade for one in of_species))
    return [one for one in of_species if one.grade == grade]


def _timber_of_size(found, thin, wide):
    use = "Beams & Stringers" if wide - thin > 2 else "Posts & Timbers"
    by_use = [one for one in found if one.name.endswith(use)]
    return (by_use or found)[0]


def _southern_pine_of_size(found, width):
    if width is None:
        raise BadInput(f"the values of {found[0].species} {found[0].grade} go by size; give it, for example 2x10")
    for row, one in zip(table_rows("lumber_southern_pine"), materials("southern pine")):
        if one in found and row["width_min"] <= width <= row["width_max"]:
            return one
    widest = max(one.tabulated_depth for one in found)
    if width > widest == 12:
        one = next(one for one in found if one.tabulated_depth == widest)
        return replace(
            one,
            name=f"{one.species} {one.grade}, over 12 in wide",
            size_note="values for 12 in wide; the size factor applies over 12 in",
        )
    raise BadInput(
        f"{found[0].species} {found[0].grade} has no values for {width} in wide; published are widths up to {widest} in"
    )
