"""Signs seen in an old house, sorted: outside causes first, then inside ones, and what means stop and call.

It sorts evidence; it finds no cause and passes no judgement. All of it stands in a data file.
"""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.tables import table_rows

_SIDES = ("outside", "inside")


@dataclass(frozen=True)
class Lead:
    """One cause that a sign may have: its side, what points to it, and what to look at next."""

    sign: str
    side: str
    cause: str
    points_to_it: str
    look_next: str
    verified: str


@dataclass(frozen=True)
class Triage:
    """Leads in the order to look, and the gates: sentences that mean stop and call."""

    leads: tuple
    gates: tuple


def signs():
    """List the signs of the data file.

    Returns
    -------
    tuple of str
        Signs, each once, in the file's order [-].

    Examples
    --------
    >>> signs()[:2]
    ('sagging floor', 'bouncy floor')
    """
    return tuple(dict.fromkeys(row["sign"] for row in table_rows("triage_signs")))


def triage(seen):
    """Sort what is seen into leads, outside causes first, with the gates of the signs.

    Parameters
    ----------
    seen : iterable of str
        Signs that are there [-].

    Returns
    -------
    Triage
        Leads and gates [-].

    Examples
    --------
    >>> found = triage(["bowing wall"])
    >>> found.leads[0].cause, len(found.gates)
    ('soil and water push', 1)
    """
    if isinstance(seen, str):
        raise BadInput(f"signs must be a list of words, got {seen!r}; for example ['sagging floor']")
    wanted = [check_choice("sign", sign, signs()) for sign in seen]
    rows = [row for row in table_rows("triage_signs") if row["sign"] in wanted]
    leads = tuple(
        Lead(*(row[name] for name in ("sign", "side", "cause", "points_to_it", "look_next", "verified")))
        for side in _SIDES
        for row in rows
        if row["side"] == side
    )
    gates = tuple(dict.fromkeys(row["gate"] for row in rows if row["gate"]))
    return Triage(leads, gates)
