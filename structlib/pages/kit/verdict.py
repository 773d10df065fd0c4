"""What a page says of all its checks together: its title, the share that governs, and how well all of it is known.

Every page words its title here. A title then never says less than the worst check that decides, and names
what it leaves out.
"""

from dataclasses import dataclass
from math import isfinite

from structlib.ground.showing import show
from structlib.rules.check import VERIFIED_ORDER, governing, least_verified, uses_more

STOP = "Stop and call first: only what is asked is shown"

#: Said of what the reader types, or a house file holds: no publication stands behind it.
ENTERED = "as entered"

CAUTION = "This page teaches and prepares. A licensed engineer, the local code and the permit decide what is built."
SEAT_NOT_KNOWN = (
    "What the beam sits on was not looked at: find it before anything is chosen. Only what is asked is shown."
)

_MOST_NAMES = 4


@dataclass(frozen=True)
class Judged:
    """A question of a page that has no record of its own in the rules: its name, its share, how it is known."""

    name: str
    share: float
    verified: str
    decides: bool = True
    factors: tuple = ()


def used(share):
    """Write the share that a check uses.

    Examples
    --------
    >>> used(0.42), used(1.664), used(float("inf"))
    ('42 % used', '166 % used', 'beyond any limit')
    """
    return f"{show(share, 'ratio')} used" if isfinite(share) else "beyond any limit"


def worst(checks):
    """Return the check that governs a page; None where none decides."""
    checks = tuple(checks)
    return governing(checks) if any(check.decides for check in checks) else None


def headline(checks, gates, words, *, unjudged=(), stop=STOP):
    """Word the title of a page from all its checks.

    The page's own words come first. The share of the check that governs is added where they lack it, and so
    is the name of what does not decide but uses more, and of what no rule covers.

    Examples
    --------
    >>> found = (Judged("bending", 0.42, "seen"), Judged("sag after years", 1.5, "recalled", decides=False))
    >>> headline(found, (), lambda first: "The beam carries 900 lb")
    'The beam carries 900 lb; bending 42 % used; left out: sag after years, 150 %'
    """
    if gates:
        return stop
    checks = tuple(checks)
    first = worst(checks)
    title = words(first)
    if first is not None and not _says(title, first.share):
        title += f"; {first.name} {used(first.share)}"
    floor = 0.0 if first is None else first.share
    aside = max((one for one in checks if not one.decides), key=lambda one: one.share, default=None)
    if aside is not None and uses_more(aside.share, floor):
        title += f"; left out: {aside.name}, {used(aside.share).removesuffix(' used')}"
    if unjudged:
        title += f"; not judged: {', '.join(unjudged)}"
    return title


def _says(title, share):
    if any(f"{word} {share:.2f} times" in title for word in ("ask", "asks", "asked")):
        return True
    if not isfinite(share):
        return any(words in title for words in ("bow out", "bows out", "refuses", "beyond any limit"))
    before = title.split(used(share))[:-1]  # a share stands there where its number does not go on to the left
    return any(not (part[-1:].isdecimal() or part.endswith((".", ","))) for part in before)


def share_text(check, checks):
    """Write the share of one check as the rows of a page show it.

    Examples
    --------
    >>> one, two = Judged("bending", 0.42, "seen"), Judged("sag after years", 1.5, "recalled", decides=False)
    >>> share_text(one, (one, two)), share_text(two, (one, two))
    ('42 % governs', '150 % (for information)')
    """
    told = used(check.share).removesuffix(" used")
    if not check.decides:
        return told + " (for information)"
    return told + (" governs" if check is worst(checks) else "")


def evidence(checks, *more):
    """List all that a page used, each with how well it is known.

    Examples
    --------
    >>> evidence([Judged("bending", 0.4, "recalled")], ("Hem-Fir No.2", "seen"))
    (('bending', 'recalled'), ('Hem-Fir No.2', 'seen'))
    """
    found = {}
    for check in checks:
        found[check.name, check.verified] = None
        for factor in check.factors:
            found[factor.symbol, factor.verified] = None
    for one in more:
        found[one] = None
    return tuple(found)


def weakest(known):
    """Say which of all that a page used is known least, and how.

    Examples
    --------
    >>> weakest((("bending", "recalled"), ("Hem-Fir No.2", "seen"), ("loads", ENTERED)))
    'The weakest evidence here is recalled: bending. Look it up before it counts. As entered: loads.'
    >>> weakest((("E of Hem-Fir", "seen"),))
    'The weakest evidence here is seen.'
    """
    words = [word for _, word in known if word != ENTERED]
    said = []
    if words:
        least = least_verified(words)
        names = list(dict.fromkeys(what for what, word in known if word == least))
        listed = "; ".join(names[:_MOST_NAMES])
        if len(names) > _MOST_NAMES:
            listed += f"; and {len(names) - _MOST_NAMES} more"
        said.append(
            f"The weakest evidence here is {least}."
            if least == VERIFIED_ORDER[0]
            else f"The weakest evidence here is {least}: {listed}. Look it up before it counts."
        )
    entered = list(dict.fromkeys(what for what, word in known if word == ENTERED))
    if entered:
        said.append(f"As entered: {'; '.join(entered)}.")
    return " ".join(said)


def beam_evidence(result, checks):
    """List what a page used of one checked beam, each with how well it is known."""
    combinations = ((f"loads {one.combination.name}", one.combination.verified) for one in result.demands)
    material = result.member.material
    loads = (("loads", ENTERED),)
    return evidence(checks, *combinations, (material.name, material.verified), *loads)
