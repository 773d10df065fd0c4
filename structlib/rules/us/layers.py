"""Layers added to a roof or a floor: by how much each member that stays is loaded more.

The trigger is the share of change from which the local code asks for a check. Codes differ, so it is
entered by the reader, and nothing more is said than above or not above it.
"""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, psf
from structlib.rules.us.one_number import check_one_number, length_text

_GREATEST_LAYER = 200 * psf


@dataclass(frozen=True)
class AddedLayer:
    """One layer that is added or taken away: ``name``, and ``area_load`` [MPa] on plan, negative where "
    "taken."""

    name: str
    area_load: float


@dataclass(frozen=True)
class KeptMember:
    """A member that stays: what it carries today and the width of roof or floor that hangs on it.

    ``dead`` and ``variable`` [N/mm] are today's line loads, the latter snow, roof live or live load;
    ``variable_after`` [N/mm] is that load afterwards, None where it stays. ``tributary_width`` is in mm.
    """

    name: str
    dead: float
    variable: float
    tributary_width: float
    variable_after: float | None = None


@dataclass(frozen=True)
class LayerChange:
    """What added layers change on one member.

    ``before`` and ``after`` [N/mm] are whole loads, ``added`` [N/mm] the difference, ``change`` it
    over ``before``. ``trigger`` is as entered, ``trigger_source`` who asks for it; ``above`` tells whether
    the change is more.
    """

    name: str
    before: float
    after: float
    added: float
    change: float
    trigger: float
    trigger_source: str
    above: bool
    sentence: str


def layers_load(layers):
    """Add up layers on plan.

    Parameters
    ----------
    layers : iterable of AddedLayer
        Layers added (positive) and taken away (negative) [MPa].

    Returns
    -------
    float
        Change of the dead load on plan [MPa].

    Examples
    --------
    >>> round(layers_load([AddedLayer("second roofing", 2.5*psf), AddedLayer("old ceiling out", -1.5*psf)]) / psf, 6)
    1.0
    """
    listed = _listed("layers", layers, AddedLayer, "AddedLayer('second roofing', 2.5*psf)")
    for layer in listed:
        _check_name("layer", layer.name)
        check_one_number(
            f"load of the layer {layer.name!r}",
            layer.area_load,
            low=-_GREATEST_LAYER,
            high=_GREATEST_LAYER,
            shown=lambda load: f"{load / psf:g} psf",
            hint="for example 2.5*psf",
        )
    return sum(layer.area_load for layer in listed)


def layer_changes(members, layers, *, trigger=None, trigger_source=""):
    """Return by how much layers change the load on each member that stays, beside a trigger from local code.

    Parameters
    ----------
    members : iterable of KeptMember
        Members that stay [-].
    layers : iterable of AddedLayer
        Layers added and taken away, on plan [MPa].
    trigger : float
        Share of change from which the local code asks for a check, such as 0.05; must be given [-].
    trigger_source : str
        Where the trigger comes from: the code and section, or the official who named it [-].

    Returns
    -------
    tuple of LayerChange
        One for each member [-].

    Notes
    -----
    No verdict on the member: a member may be overloaded before any layer is added. Colder roofs carry more
    snow: give that as ``variable_after``.

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> rafter = KeptMember("rafter", dead=13*plf, variable=40*plf, tributary_width=16/12*ft)
    >>> found, = layer_changes([rafter], [AddedLayer("second roofing", 3*psf)], trigger=0.05,
    ...     trigger_source="town building code")
    >>> round(found.change, 4), found.above
    (0.0755, True)
    """
    _check_trigger(trigger, trigger_source)
    added = layers_load(layers)
    listed = _listed("members", members, KeptMember, "KeptMember('rafter', 13*plf, 40*plf, 16*inch)")
    return tuple(_change(member, added, trigger, trigger_source) for member in listed)


def _change(member, added, trigger, source):
    _check_name("member", member.name)
    _check_line("dead load", member.dead, member.name)
    _check_line("variable load", member.variable, member.name)
    after_variable = member.variable if member.variable_after is None else member.variable_after
    _check_line("variable load afterwards", after_variable, member.name)
    check_one_number(
        f"tributary width of {member.name!r}",
        member.tributary_width,
        low=0.0,
        high=60 * ft,
        low_allowed=False,
        shown=length_text,
        hint="for example 16*inch",
    )
    before = member.dead + member.variable
    if before <= 0:
        raise BadInput(f"the member {member.name!r} carries nothing today, so no change in percent can be given")
    dead_after = member.dead + added * member.tributary_width
    if dead_after < 0:
        raise BadInput(f"more is taken away than the member {member.name!r} carries; enter its dead load today")
    after = dead_after + after_variable
    change = after / before - 1
    above = bool(change > trigger)
    sentence = (
        f"the load on {member.name} changes by {100 * change:+.1f} %, "
        f"{'above' if above else 'not above'} the trigger of {100 * trigger:g} % that you entered "
        f"({source})"
    )
    return LayerChange(member.name, before, after, after - before, change, trigger, source, above, sentence)


def _check_trigger(trigger, source):
    if trigger is None:
        raise BadInput(
            "the trigger is missing: enter the share of change from which your local code asks for a "
            "check, for example trigger=0.05"
        )
    check_one_number("trigger", trigger, low=0.0, high=1.0, hint="a share, for example 0.05 for 5 %")
    if not isinstance(source, str) or not source.strip():
        raise BadInput(f"say where the trigger comes from, got {source!r}; for example 'town code, section 12'")


def _check_line(name, value, member):
    check_one_number(
        f"{name} of {member!r}",
        value,
        low=0.0,
        high=1000.0,
        shown=lambda load: f"{load:g} N/mm",
        hint="for example 13*plf",
    )


def _check_name(what, name):
    if not isinstance(name, str) or not name.strip():
        raise BadInput(f"a {what} needs a name, got {name!r}; for example 'rafter'")


def _listed(what, items, kind, example):
    listed = None
    if not isinstance(items, (str, bytes, kind)):
        try:
            listed = list(items)
        except TypeError:
            pass
    if not listed or not all(isinstance(one, kind) for one in listed):
        raise BadInput(f"{what} must be a list of at least one {kind.__name__}, got {items!r}; for example [{example}]")
    return listed
