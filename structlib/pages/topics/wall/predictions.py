"""Predictions of the page of wall."""

from structlib.ground.units import ft, inch, psf
from structlib.house.file import demo_house
from structlib.house.influence import influence
from structlib.house.pieces import area_load, joist_weight
from structlib.house.plan import Joists
from structlib.pages.kit.prediction import Prediction


def cut_or_continuous():
    """Ask what a joist in one piece over a middle wall does to the load on it.

    Examples
    --------
    >>> cut_or_continuous().right
    'a quarter more'
    """
    cut, through = (influence((0.0, 12 * ft, 24 * ft), joints, 0.0, 24 * ft)[1] for joints in ("cut", "continuous"))
    ratio = through / cut
    words = {1.0: "the same", 1.25: "a quarter more", 1.5: "half more", 0.75: "a quarter less"}
    return Prediction(
        "Two equal joist spans meet over a wall. In one house the joists are cut over it, in the other they run through "
        "in one piece. What does the wall carry in the second house?",
        tuple(words.values()),
        words[round(ratio, 6)],
        f"The piece that runs through is stiff over the wall, so it leans on it: {ratio:.2f} times the load. "
        "The two outside walls get less.",
    )


def deeper_joists_heavier_wall():
    """Ask how much deeper joists add to what a wall carries.

    Examples
    --------
    >>> deeper_joists_heavier_wall().right
    'a little: 1 to 3 %'
    """
    thin, thick = (
        joist_weight(Joists(species="Hem-Fir", grade="No.2", size=size, spacing=16 * inch)) for size in ("2x8", "2x12")
    )
    level = demo_house().part("upper floor")
    total = sum(area_load(level, level.slope))
    more = (thick - thin) / total
    choices = {"a little: 1 to 3 %": (0.01, 0.03), "about 10 %": (0.08, 0.12), "about 50 %": (0.4, 0.6)}
    right = next(name for name, (low, high) in choices.items() if low <= more <= high)
    return Prediction(
        "You change the floor's joists from 2x8 to 2x12. How much more does the wall under them carry?",
        tuple(choices),
        right,
        f"The joists themselves weigh {thin / psf:.1f} psf and then {thick / psf:.1f} psf, of some {total / psf:.0f} psf in "
        f"all: {100 * more:.1f} % more. Spans and what people put on the floor make the load, not the joists.",
    )
