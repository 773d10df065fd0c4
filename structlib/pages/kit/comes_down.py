"""What else comes down here? One pick and its answers, for every page of a beam, a wall, a seat or a post."""

from structlib.pages.kit.controls import Pick

NOT_LOOKED = "not looked yet"

_STOP = (
    "{what} comes down here: it is one great push at one place, not the even load of this page, and an "
    "engineer must follow it down. Only what is asked is shown."
)
_KINDS = {
    "truss": ("truss or girder end", "A truss or girder end"),
    "chimney": ("chimney", "A chimney"),
    "tub": ("tub", "A filled tub"),
    "post": ("post or point load", "A post or point load"),
    "bracing": ("bracing wall", "A wall that braces the house"),
}
_GATES = {key: _STOP.format(what=what) for key, (_, what) in _KINDS.items()}
_GATES["bracing"] = (
    "A wall that braces the house comes down here: in wind and earthquake it pushes down, lifts and leans "
    "sideways, and none of that is on this page. Ask the engineer. Only what is asked is shown."
)


def comes_down_pick():
    """Return the control that asks what else comes down here."""
    options = ((NOT_LOOKED, NOT_LOOKED), ("none of these", "none"))
    kinds = tuple((word, key) for key, (word, _) in _KINDS.items())
    return Pick("above", "What else?", options + kinds, NOT_LOOKED)


def comes_down(values):
    """Return the gate of what else comes down, and the remark that stands beside a title.

    Examples
    --------
    >>> comes_down({"above": "none"})
    ((), '')
    >>> comes_down({})
    ((), 'what else comes down here: not looked yet')
    """
    above = values.get("above", NOT_LOOKED)
    if above in _GATES:
        return (_GATES[above],), ""
    return (), f"what else comes down here: {NOT_LOOKED}" if above == NOT_LOOKED else ""


#: The title, and the note, of a page on which no load is typed.
NO_LOAD = "No load is typed: only own weight is on it, so no share is shown"


def without_load(values, names):
    """Return what withdraws the shares where every load typed is zero: a share of own weight misleads.

    Examples
    --------
    >>> without_load({"dead": 0.0, "live": 3.0}, ("dead", "live"))
    ()
    """
    return () if any(values[name] for name in names) else (NO_LOAD,)


def titled(title, values, withdrawn=()):
    """Write a title with what was not looked at beside it; where a gate stands, the gate is the message.

    Examples
    --------
    >>> titled("Bending governs: 84 % used", {})
    'Bending governs: 84 % used; what else comes down here: not looked yet'
    """
    if withdrawn == (NO_LOAD,):
        title = NO_LOAD
    elif withdrawn:
        return title
    remark = comes_down(values)[1]
    return f"{title}; {remark}" if remark else title
