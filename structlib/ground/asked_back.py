"""A limit asked back: which span, depth, load or size just uses the share allowed of anything that grows steadily."""

import math
from numbers import Real

from structlib.ground.refusals import BadInput, OutsideRule, check_number

_CLOSE = 1e-9  # of the range: nearer than any tape reads


def asked_back(share, *, low, high, limit=1.0, never="", always=""):
    """Return the value at which a share that only rises, or only falls, meets its limit.

    Parameters
    ----------
    share : callable
        Gives the share used at a value, float to float; it must rise or fall all the way [-].
    low, high : float
        Ends of the range that is searched [any].
    limit : float
        Share to be met [-].
    never, always : str
        Sentences for a limit that is passed, or kept to, all over the range; empty for a plain one [-].

    Returns
    -------
    float
        The value, on the side that keeps to the limit [unit of the range].

    Raises
    ------
    OutsideRule
        When the limit is passed, or kept to, at both ends.

    Examples
    --------
    >>> round(asked_back(lambda span: span**2 / 9.0, low=1.0, high=8.0, limit=4.0), 6)
    6.0
    """
    if not callable(share):
        raise BadInput(
            f"the share must be a function of one number, got {share!r}; for example lambda depth: 9.0 / depth"
        )
    for name, value, least in (("least value", low, -1e12), ("greatest value", high, low), ("limit", limit, 0.0)):
        if not isinstance(value, Real):
            raise BadInput(f"{name} must be one number, got {value!r}; for example 3600.0")
        check_number(name, value, low=least, high=1e12, low_allowed=name == "least value")
    keeps = [_share_at(share, end) <= limit for end in (low, high)]
    if not any(keeps):
        raise OutsideRule(never or f"no value from {low:g} to {high:g} keeps to the limit")
    if all(keeps):
        raise OutsideRule(always or f"every value from {low:g} to {high:g} keeps to the limit, so it sets none")
    inside, beyond = (low, high) if keeps[0] else (high, low)
    while abs(beyond - inside) > _CLOSE * (high - low):
        middle = (inside + beyond) / 2
        inside, beyond = (middle, beyond) if _share_at(share, middle) <= limit else (inside, middle)
    return inside


def first_listed(share, values, *, limit=1.0, never=""):
    """Return the first of several listed values whose share keeps to a limit.

    Parameters
    ----------
    share : callable
        Gives the share used by one of them [-].
    values : iterable
        Sizes, plies or pieces, the one wanted most first [any].
    limit : float
        Share to be kept to [-].
    never : str
        Sentence where none does; empty for a plain one [-].

    Returns
    -------
    object
        The value, as it is listed [any].

    Raises
    ------
    OutsideRule
        When none of them does.

    Examples
    --------
    >>> first_listed(lambda plies: 2.4 / plies, (1, 2, 3, 4))
    3
    """
    for one in values:
        if _share_at(share, one) <= limit:
            return one
    raise OutsideRule(never or "none of what is listed keeps to the limit")


def _share_at(share, value):
    try:
        found = float(share(value))
    except ArithmeticError:
        found = math.inf
    if math.isnan(found):
        raise BadInput(f"the share used at {value!r} is not a number, so no limit can be asked back")
    return found
