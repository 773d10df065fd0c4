"""Predictions of notebook 05: what does it sit on?"""

from structlib.ground.lumber import find_material
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, lb
from structlib.pages.kit.prediction import Prediction
from structlib.rules.choice import RULEBOOK

bearing, seats = RULEBOOK.room("bearing"), RULEBOOK.room("seats")


def deeper_or_wider():
    """Ask which change lets a beam do with half of its seat: twice the depth or twice the plies.

    Examples
    --------
    >>> deeper_or_wider().right
    'twice the plies'
    """
    value = find_material("Spruce-Pine-Fir", "No.1/No.2").bearing
    one, two = (
        bearing.bearing_length_needed(reaction=3000 * lb, width=plies * 1.5 * inch, bearing_value=value)
        for plies in (2, 4)
    )
    choices = ("twice the depth", "twice the plies", "neither")
    return Prediction(
        "A beam is crushed on its seat, and the seat cannot be made longer. What helps: twice the depth, "
        "or twice "
        "the plies?",
        choices,
        choices[1] if two < one else choices[2],
        f"Under 3,000 lb, two plies need {show(one, 'small length')} of seat and four plies need "
        f"{show(two, 'small length')}. Depth does not touch the seat; a deeper beam only weighs more.",
    )


def joists_meet_on_two_plies():
    """Ask how many plies two joists in line need below them when a gap of 1/4 in stays between their ends.

    Examples
    --------
    >>> joists_meet_on_two_plies().right
    'three'
    """
    found = seats.joists_over_beam(ply_width=1.5 * inch, plies=2, meeting="butted", gap=0.25 * inch)
    names = {1: "one", 2: "two", 3: "three", 4: "four"}
    return Prediction(
        "Two joists meet end to end over a beam of 1 1/2 in plies. A gap of 1/4 in stays between them. "
        "How many "
        "plies give each joist the code's least seat?",
        tuple(names.values()),
        names[found.plies_needed],
        f"On two plies each gets {show(found.each, 'section length')}, and the code asks for "
        f"{show(found.needed, 'section length')}. The saw cut alone can ask for one more ply.",
    )


def how_short_to_tilt_it_in():
    """Ask how much shorter than the room a beam must be cut so that it can be tilted up between two walls.

    Examples
    --------
    >>> how_short_to_tilt_it_in().right
    'about 5/16 in'
    """
    room, depth = 12 * ft, 9.25 * inch
    short = room - seats.tilted_length(room=room, across=depth)
    told = f"about {show(short, 'section length')}"
    return Prediction(
        "Two walls stand 12 ft apart. A beam 9 1/4 in deep is to be tilted up between them. How much "
        "shorter than "
        "the room must it be?",
        ("nothing", told, "about 3 in", "about 9 1/4 in"),
        told,
        f"Its diagonal must clear the room: the longest beam is {show(room - short, 'length')}. Leave "
        "some play "
        "for your hands, and put the jack studs under it afterwards.",
    )
