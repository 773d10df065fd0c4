"""Questions of notebook 05: what does it sit on?"""

from structlib.ground.units import ft, inch, lb, plf, psi
from structlib.mechanics import formulas
from structlib.pages.kit.questions.question import Mistake, Question, asks
from structlib.pages.kit.questions.wording import SEAT_STEPS, any_unit, carried, one_word, say, times, whole
from structlib.rules.choice import RULEBOOK

bearing, seats = RULEBOOK.room("bearing"), RULEBOOK.room("seats")

_MADE_UP = "The values are made up for practice."
_PLY = 1.5 * inch


def _width(plies):
    return plies * _PLY


@asks("05", "seat_length", "A push and a width: how long must the seat be?")
def _seat_length(draw):
    push = draw.randrange(2000, 9001, 100) * lb
    plies = draw.choice((2, 3, 4))
    value = draw.choice((405, 425, 500, 565, 625)) * psi
    answer = bearing.bearing_length_needed(reaction=push, width=_width(plies), bearing_value=value)
    (area,) = carried([(push / value, "area")], lambda shown: shown / _width(plies), "small length")
    return Question(
        prompt=(
            f"The end of a beam pushes down with {say(push, 'force')}. It has {plies} plies, each 1 1/2 "
            "in thick."
            f" The wood below may be pressed to {say(value, 'stress')}. {_MADE_UP}"
            f" How long must the seat be, along the beam? {any_unit('inches (in)', 'at least', SEAT_STEPS)}"
        ),
        dimension="small length",
        side="at least",
        stock=SEAT_STEPS,
        answer=answer,
        mistakes=(
            Mistake(plies * answer, "one ply only", f"You took one ply. All {plies} plies are in contact."),
            Mistake(answer / 2, "halved", "You halved it. The push given is that of one end already."),
            Mistake(
                answer * _width(plies) / inch,
                "the area instead of the length",
                "That is the area in contact. Divide it by the width.",
            ),
            Mistake(
                answer * _PLY / (2 * inch),
                "nominal size",
                "You took 2 in for a ply. A dry ply is 1 1/2 in thick.",
            ),
            Mistake(
                144 * answer,
                "pounds per square foot (x144)",
                "You mixed square feet and square inches. 144 stands between them.",
            ),
        ),
        hints=(
            "Push over pressure is an area. Area over width is a length.",
            "Seat = push / (____ × value).",
            (f"Seat = {say(push, 'force')} / ({say(_width(plies), 'section length')} × {say(value, 'stress')})."),
        ),
        solution=(
            f"Width in contact: {plies} × 1 1/2 in = {say(_width(plies), 'section length')}.\n\nArea needed:"
            f" {say(push, 'force')} / {say(value, 'stress')} = {area}.\n\nSeat ="
            f" {area} / {say(_width(plies), 'section length')} = **{say(answer, 'small length')}**.\n\nThe"
            f" code also sets a least seat. The longer one counts."
        ),
        numbers={"push": push, "plies": plies, "value": value},
    )


@asks("05", "crushing_share", "What share of the seat is used?")
def _crushing_share(draw):
    span = draw.randrange(6, 15) * ft
    plies, seat = draw.choice((2, 3, 4)), draw.choice((1.5, 3.0, 4.5)) * inch
    value = draw.choice((405, 425, 500, 565, 625)) * psi
    # a share worth asking about comes first, too far from 100 % for rounding to turn the verdict;
    # the load that makes nearly that share is a round number
    share = draw.choice((*range(35, 93), *range(108, 141))) / 100
    load = round(share * value * _width(plies) * seat * 2 / span / (10 * plf)) * 10 * plf
    push = formulas.simple_uniform_reaction(line_load=load, span=span)
    stress = bearing.bearing_stress(reaction=push, width=_width(plies), bearing_length=seat)
    answer = stress / value
    (pressed,) = carried([(stress, "stress")], lambda shown: shown / value, "share")
    return Question(
        prompt=(
            f"A simple beam spans {say(span, 'length')} and carries {say(load, 'line load')} all along. "
            f"It has {plies}"
            f" plies, each 1 1/2 in thick. Each end sits on {say(seat, 'section length')} of a plate that "
            "may be"
            f" pressed to {say(value, 'stress')}. {_MADE_UP} What share of the plate's value is used? "
            f"{times()}"
        ),
        dimension="ratio",
        answer=answer,
        mistakes=(
            Mistake(2 * answer, "half span forgotten", "You set the whole load on one end. Each end takes half."),
            Mistake(plies * answer, "one ply only", f"You took one ply. All {plies} plies press on the plate."),
            Mistake(1 / answer, "upside down", "Turn it round: what is asked, over what can be given."),
            Mistake(
                answer * seat / inch,
                "seat forgotten",
                "You left out the length of the seat. The area is width times seat.",
            ),
            Mistake(
                answer * 3 / 4,
                "nominal size",
                "You took 2 in for a ply. A dry ply is 1 1/2 in thick.",
            ),
        ),
        hints=(
            "First the push of one end, then the pressure, then the share.",
            "Share = (w × L / ____) / (width × seat) / ____.",
            f"Push = {say(push, 'force')}. Area = {say(_width(plies) * seat, 'area')}.",
        ),
        solution=(
            f"Push of one end: {say(load, 'line load')} × {say(span, 'length')} / 2 = "
            f"{say(push, 'force')}.\n\n"
            f"Pressure: {say(push, 'force')} / {say(_width(plies) * seat, 'area')} = "
            f"{pressed}.\n\n"
            f"Share: {pressed} / {say(value, 'stress')} = **{say(answer, 'share')}**."
        ),
        numbers={"load": load, "span": span, "plies": plies, "seat": seat, "value": value},
    )


_FACES = ("beam", "plate", "code")


@asks("05", "which_face", "Beam, plate or code: what decides the seat?")
def _which_face(draw):
    plies = draw.choice((2, 3, 4))
    beam, plate = draw.sample((405, 425, 500, 565, 625, 740), 2)
    # no push here makes two of the three alike: none is a multiple of 4 1/2 times a value
    push = draw.randrange(610, 6011, 100) * lb
    least = seats.seat_minimum("plate").length
    needed = {
        name: bearing.bearing_length_needed(reaction=push, width=_width(plies), bearing_value=value * psi)
        for name, value in (("beam", beam), ("plate", plate))
    }
    needed["code"] = least
    ranked = sorted(_FACES, key=needed.get, reverse=True)
    answer = ranked[0]
    why = {
        "beam": "The beam's own face asks for",
        "plate": "The face of the plate asks for",
        "code": "The code's least is",
    }

    def slip(name):
        told = f"{why[name]} {say(needed[name], 'small length')}. Another one asks for a longer seat."
        if name == "code":
            return "code alone", f"{told} The code's least is a floor under the sum, not the sum."
        if needed[name] == min(needed["beam"], needed["plate"]):
            return "stronger face", f"{told} You took the stronger face. The weaker one is crushed first."
        return "code forgotten", f"{told} The code sets a least, however small the push."

    return Question(
        prompt=(
            f"A beam of {plies} plies, each 1 1/2 in thick, pushes down with {say(push, 'force')}. The "
            "beam may be"
            f" pressed to {beam} psi, the plate below it to {plate} psi. The code asks for at least"
            f" {say(least, 'section length')} of seat. {_MADE_UP} Which one decides how long the seat "
            "must be?"
            f" {one_word(_FACES)}"
        ),
        dimension="word",
        answer=answer,
        tolerance=0,
        choices=_FACES,
        mistakes=tuple(Mistake(name, *slip(name)) for name in ranked[1:]),
        hints=(
            "Both faces feel one and the same push on one and the same area.",
            "Seat = push / (width × the ____ value). Then look at the code's ____.",
            (f"Seat = {say(push, 'force')} / ({say(_width(plies), 'section length')} × {min(beam, plate)} psi)."),
        ),
        solution=(
            "\n\n".join(f"{why[name]} {say(needed[name], 'small length')}." for name in _FACES)
            + f"\n\nThe longest seat decides: **{answer}**."
        ),
        numbers={"push": push, "plies": plies, "beam": beam, "plate": plate},
    )


@asks("05", "jack_stud_count", "How many jack studs?")
def _jack_stud_count(draw):
    push, plies = draw.randrange(1500, 9001, 100) * lb, draw.choice((2, 3))
    value = draw.choice((405, 425, 565, 625)) * psi
    found = seats.jack_studs(reaction=push, width=_width(plies), bearing_value=value)
    needed = found.seat_needed
    return Question(
        prompt=(
            f"A header of {plies} plies, each 1 1/2 in thick, pushes down with {say(push, 'force')} at "
            "one end. Its own"
            f" face may be pressed to {say(value, 'stress')}. {_MADE_UP} It sits on jack studs, each 1 "
            "1/2 in along"
            f" the header. How many jack studs does that end need? {whole('jack studs')}"
        ),
        dimension="count",
        side="at least",
        answer=found.count,
        tolerance=0,
        mistakes=(
            Mistake(
                int(needed / _PLY),
                "rounded down",
                "You rounded down. There is no part of a stud: the next whole one counts.",
            ),
            Mistake(found.count + 1, "one too many", "You added a king stud. The header does not sit on that."),
            Mistake(
                max(1, -int(-(needed / 2) // _PLY)),
                "halved",
                "You halved the push. The push given is that of one end already.",
            ),
            Mistake(
                -int(-(plies * needed) // _PLY),
                "one ply only",
                f"You took one ply. All {plies} plies sit on the studs.",
            ),
        ),
        hints=(
            "First the seat that the header needs. Then count studs until it is there.",
            "Studs = push / (width × value) / ____, rounded ____.",
            (f"Seat = {say(push, 'force')} / ({say(_width(plies), 'section length')} × {say(value, 'stress')})."),
        ),
        solution=(
            f"Seat needed: {say(push, 'force')} / ({say(_width(plies), 'section length')} × "
            f"{say(value, 'stress')}) ="
            f" {say(needed, 'small length')}.\n\nEach stud gives 1 1/2 in. Rounded up:"
            f" **{found.count} studs**.\n\nThe studs themselves are columns, and a check of their own."
        ),
        numbers={"push": push, "plies": plies, "value": value},
    )


@asks("05", "joist_seat", "Two joists over a beam: how much seat has each?")
def _joist_seat(draw):
    plies = draw.choice((1, 2, 3, 4))
    ply, gap = draw.choice((1.5, 1.75)) * inch, draw.choice((0.125, 0.25, 0.375, 0.5)) * inch
    found = seats.joists_over_beam(ply_width=ply, plies=plies, meeting="butted", gap=gap)
    width = plies * ply
    many = f"{plies} plies, each" if plies > 1 else "one ply,"
    return Question(
        prompt=(
            f"A beam has {many} {say(ply, 'section length')} thick. Two joists in line meet over its "
            "middle, and a gap"
            f" of {say(gap, 'section length')} stays between their ends. How much seat does each joist get?"
            f" {any_unit('inches (in)')}"
        ),
        dimension="small length",
        answer=found.each,
        mistakes=(
            Mistake(width / 2, "gap forgotten", "You forgot the gap. Each joist loses half of it."),
            Mistake(
                width,
                "as if side by side",
                "Only joists side by side get the whole width. These are in line.",
            ),
            Mistake(
                width / 2 - gap,
                "whole gap off each",
                "You took the whole gap off each joist. Each one loses half of it.",
            ),
            Mistake(width - gap, "not shared", "You took the gap off the width. Now share it between two joists."),
            Mistake((width + gap) / 2, "gap added", "You added the gap. It takes seat away."),
        ),
        hints=(
            "Subtract the gap from the width. Two joists share what is left.",
            "Seat = (plies × thickness − ____) / ____.",
            f"Seat = ({say(width, 'section length')} − {say(gap, 'section length')}) / 2.",
        ),
        solution=(
            f"The beam is {say(width, 'section length')} wide.\n\nLess the gap, shared by two: "
            f"({say(width, 'section length')} − {say(gap, 'section length')}) / 2 ="
            f" **{say(found.each, 'small length')}**.\n\nThe code asks for"
            f" {say(found.needed, 'section length')}. That takes {found.plies_needed} plies of this "
            "thickness."
        ),
        numbers={"plies": plies, "ply": ply, "gap": gap},
    )
