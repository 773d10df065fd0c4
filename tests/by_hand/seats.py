"""Answers of notebook 05 by hand, in inches, feet, pounds and psi."""

import math

from structlib.ground.units import ft, inch, lb, plf, psi


def _decides(n):
    push, width = n["push"] / lb, 1.5 * n["plies"]
    asked = {"beam": push / (width * n["beam"]), "plate": push / (width * n["plate"]), "code": 1.5}
    return max(asked, key=asked.get)


BY_HAND = {
    "seat_length": lambda n: n["push"] / lb / (1.5 * n["plies"] * (n["value"] / psi)) * inch,
    "crushing_share": lambda n: (
        (n["load"] / plf * (n["span"] / ft) / 2) / (1.5 * n["plies"] * (n["seat"] / inch)) / (n["value"] / psi)
    ),
    "which_face": _decides,
    "jack_stud_count": lambda n: math.ceil(
        round(n["push"] / lb) / (1.5 * n["plies"] * round(n["value"] / psi)) / 1.5 - 1e-9
    ),
    "joist_seat": lambda n: (n["plies"] * n["ply"] - n["gap"]) / 2,
}
