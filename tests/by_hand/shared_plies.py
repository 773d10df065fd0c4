"""Answers of notebook 11 by hand, in inches, feet, pounds and psi."""

from structlib.ground.units import ft, inch, lb, plf, psi


def _plate(n):
    counts_as = 29e6 / (n["modulus"] / psi) * (n["thick"] / inch)
    return counts_as / (counts_as + 1.5 * n["plies"])


BY_HAND = {
    "plate_share": _plate,
    "joined_stack": lambda n: n["count"] ** 2,
    "sister_end": lambda n: n["share"] * (n["moment"] / (lb * ft)) / (n["arm"] / ft) * lb,
    "plate_weight": lambda n: (n["thick"] / inch) * (n["deep"] / inch) / 144 * n["feet"] / n["pieces"] * 490 * lb,
    "side_load": lambda n: (n["load"] / plf) * (n["plies"] - 1) / n["plies"] * plf,
}
