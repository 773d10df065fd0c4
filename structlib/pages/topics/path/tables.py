"""The whole path of a house as a table, part by part, and what a finding on site would move."""

from dataclasses import fields, is_dataclass

from structlib.ground.loads import LOAD_TYPES
from structlib.ground.showing import show
from structlib.house.changes import differences
from structlib.house.file import demo_house
from structlib.house.judging import judge
from structlib.house.path import follow
from structlib.house.plan import House
from structlib.pages.kit import verdict
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table
from structlib.rules.check import Rulebook
from structlib.rules.choice import RULEBOOK


def path_table(house: House | None = None, rulebook: Rulebook = RULEBOOK, system: str = "us"):
    """List every part of a house from the top: what it hands on by type, and what is used of it.

    Examples
    --------
    >>> [row[1] for row in path_table().rows if row[0] == "north post"]
    ['north pad']
    """
    path = follow(demo_house() if house is None else house)
    judged, rows = judge(path, rulebook), []
    for one in path.elements:
        total = one.total()
        amounts = (_amount(total[kind], system) for kind in LOAD_TYPES)
        rows.append((one.name, _rests_on(one), *amounts, _used(judged.get(one.name))))
    invented = " It is invented." if path.house.invented else ""
    return Table(
        ("part", "hands its load to", *LOAD_TYPES, "most used"), rows,
        f"{path.house.name}: the sum that each part hands on, without any factor.{invented}",
    )  # fmt: skip


def what_if(changes: dict, house: House | None = None, rulebook: Rulebook = RULEBOOK, system: str = "us"):
    """Set beside each other what the parts of a house hand on before and after a change, and what is used then.

    Examples
    --------
    >>> what_if({"upper floor": {"joists": "continuous"}}).rows[0][0]
    'west lower wall'
    """
    house = demo_house() if house is None else house
    before, after = follow(house), follow(house, changes)
    was, now = judge(before, rulebook), judge(after, rulebook)
    rows = [
        (
            one.name,
            *(_sum(total, system) for total in (one.before, one.after)),
            *(_used(found.get(one.name)) for found in (was, now)),
        )
        for one in differences(before, after)
    ]
    told = "; ".join(_told(after.house.part(name), key, system) for name, new in changes.items() for key in new)
    return Table(("part", "handed on before", "and after", "most used before", "and after"), rows, f"What if: {told}.")


def _told(part, key, system):
    """A field of a part with its new value, as a reader says it."""
    value, kind = getattr(part, key), next(one for one in fields(part) if one.name == key).metadata["kind"]
    return f"{part.name}, {key.replace('_', ' ')}: {_word(value, kind, system)}"


def _word(value, kind, system):
    if isinstance(value, float):
        return show(value, kind, system)
    if not is_dataclass(value):
        return "none" if value is None else str(value)
    told = [(getattr(value, one.name), one) for one in fields(value)]
    return " ".join(_word(field, one.metadata["kind"], system) for field, one in told if field != one.default)


def _rests_on(element):
    return ", ".join(dict.fromkeys(share.to for share in element.gives))


def _amount(value, system):
    return show(value, "force", system) if abs(value) > 0.5 else ""


def _sum(total, system):
    return "" if total is None else show(total.sum_for_equilibrium_only(), "force", system)


def _used(judged):
    """The check that governs; a gate, or what has no rule, stands before any share."""
    if judged is None:
        return ""
    if judged.gates:
        return "stop and call"
    if judged.governs is None:
        return "not judged"
    partly = "; not all judged" if judged.refused else ""
    return f"{verdict.used(judged.governs.share)}: {judged.governs.name}{partly}"


hold(globals())
