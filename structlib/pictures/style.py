"""One style sheet for every picture: what a role looks like, in a light and in a dark room.

A drawing names roles ("wood", "force", "governs"); only this file knows colours, line widths,
dashes and type sizes. No meaning rests on colour alone: a role also has its own line width or
dash, and a label beside it. The tests hold the contrast of all text to 4.5 and keep the line
colours apart for readers who do not see red or green.
"""

from dataclasses import dataclass

from structlib.ground.refusals import check_choice

# Type sizes in viewBox units. Pictures are 720 units wide, so that on a phone 360 px wide
# a unit is half a pixel: a primary label is 11 px there and nothing is below 9 px.
# sizes that a title tries: in one line, then in two; in more only where it must name what it leaves out
TITLE_SIZES = {
    "page": ((1, (25, 22, 20)), (2, (22, 20)), (3, (18,))),
    "tall": ((1, (36, 32)), (2, (36, 32, 28)), (3, (28,)), (4, (24,))),
}
LABEL_SIZE = 22
NOTE_SIZE = 18
LEAST_SIZE = 18

FONT_STACK = "system-ui,-apple-system,'Segoe UI',Roboto,'DejaVu Sans',sans-serif"

THEMES = ("light", "dark")

COLOURS = {
    "light": {
        "paper": "#fbf8f1",
        "ink": "#2a2521",
        "quiet": "#665d53",
        "ghost": "#72685d",
        "wood": "#e6c795",
        "wood_cut": "#edd6ad",
        "wood_edge": "#6f4b26",
        "wood_grain": "#c49a5e",
        "steel": "#a9bac8",
        "steel_edge": "#3f4f5d",
        "wall": "#f0eadd",
        "hatch": "#d3c8b4",
        "force": "#155f9f",
        "force_soft": "#dfeaf3",
        "moved": "#b24b30",
        "governs": "#6c014f",
        "bearing": "#4a2f1b",
        "shear": "#0a7980",
        "shear_soft": "#d5eae9",
        "moment": "#1b2e88",
        "moment_soft": "#dcdff0",
    },
    "dark": {
        "paper": "#1f1c19",
        "ink": "#f1ebe1",
        "quiet": "#b5aa9c",
        "ghost": "#a79c8d",
        "wood": "#7d5d36",
        "wood_cut": "#8d6c43",
        "wood_edge": "#dcb983",
        "wood_grain": "#5f4425",
        "steel": "#5b6b7a",
        "steel_edge": "#c3d0db",
        "wall": "#2b2723",
        "hatch": "#453e36",
        "force": "#5d89eb",
        "force_soft": "#212b40",
        "moved": "#eb8863",
        "governs": "#bb7199",
        "bearing": "#f0dcc0",
        "shear": "#75ccd3",
        "shear_soft": "#1d3638",
        "moment": "#af96dc",
        "moment_soft": "#2f2940",
    },
}


@dataclass(frozen=True)
class RoleStyle:
    """How one role is drawn: names of colours, a line width and a dash."""

    fill: str | None = None
    stroke: str | None = None
    width: float = 1.6
    dash: tuple = ()


ROLES = {
    # surfaces
    "paper": RoleStyle(fill="paper"),
    "plate": RoleStyle(fill="paper"),
    "governs_plate": RoleStyle(fill="paper", stroke="governs", width=2.6),
    "wall": RoleStyle(fill="wall"),
    "hatch": RoleStyle(stroke="hatch", width=1.2),
    "wood": RoleStyle(fill="wood", stroke="wood_edge", width=1.8),
    "wood_cut": RoleStyle(fill="wood_cut", stroke="wood_edge", width=1.6),
    "wood_grain": RoleStyle(stroke="wood_grain", width=1.2),
    "masonry": RoleStyle(fill="hatch", stroke="quiet", width=1.6),
    "badge": RoleStyle(fill="paper", stroke="ink", width=1.6),
    "steel": RoleStyle(fill="steel", stroke="steel_edge", width=1.8),
    "steel_line": RoleStyle(stroke="steel_edge", width=1.4),
    # thin lines
    "ink": RoleStyle(stroke="ink", width=1.8),
    "ground": RoleStyle(stroke="ink", width=3),
    "quiet": RoleStyle(stroke="quiet", width=1.3),
    "leader": RoleStyle(stroke="quiet", width=1.1),
    "dimension": RoleStyle(stroke="quiet", width=1.4),
    "axis": RoleStyle(stroke="quiet", width=1.4),
    "guide": RoleStyle(stroke="quiet", width=1.1, dash=(2, 5)),
    # forces
    "force": RoleStyle(fill="force", stroke="force", width=1.8),
    "force_big": RoleStyle(fill="force", stroke="force", width=4),
    "force_band": RoleStyle(fill="force_soft", stroke="force", width=1.8),
    # shapes
    "moved": RoleStyle(stroke="moved", width=3.6),
    "reference": RoleStyle(stroke="ink", width=2.6, dash=(11, 5)),
    "ghost": RoleStyle(stroke="ghost", width=2, dash=(5, 5)),
    "limit": RoleStyle(stroke="ink", width=1.8, dash=(14, 4, 3, 4)),
    # checks drawn on the member
    "mark": RoleStyle(stroke="ink", width=2),
    "governs": RoleStyle(stroke="governs", width=4),
    "governs_thin": RoleStyle(stroke="governs", width=2.6),
    "bearing": RoleStyle(stroke="bearing", width=1.8),
    "ink_dot": RoleStyle(fill="ink", stroke="paper", width=1.5),
    # diagrams
    "shear": RoleStyle(fill="shear_soft", stroke="shear", width=2.2),
    "shear_dot": RoleStyle(fill="shear", stroke="paper", width=1.5),
    "moment": RoleStyle(fill="moment_soft", stroke="moment", width=2.2),
    "moment_dot": RoleStyle(fill="moment", stroke="paper", width=1.5),
    "slope": RoleStyle(fill="wall", stroke="quiet", width=2.2),
    "deflection": RoleStyle(stroke="moved", width=3.2),
    "moved_dot": RoleStyle(fill="moved", stroke="paper", width=1.5),
    # what lands where
    "tributary": RoleStyle(fill="force_soft", stroke="force", width=1.2, dash=(3, 4)),
}

# roles that a label may have; the text takes the colour of the same name
TEXT_ROLES = ("ink", "quiet", "force", "moved", "governs", "shear", "moment")

# line colours that a reader must tell apart
LINE_COLOURS = ("ink", "quiet", "force", "moved", "governs", "shear", "moment")

# surfaces that lie beside each other
SURFACE_COLOURS = ("paper", "wood", "steel")

# what text is written on: a label over anything else has a plate of paper behind it
TEXT_GROUNDS = ("paper",)


def colour(name, theme):
    """Give the colour of a name in a theme.

    Examples
    --------
    >>> colour("paper", "light")
    '#fbf8f1'
    """
    check_choice("theme", theme, THEMES)
    check_choice("colour", name, COLOURS[theme])
    return COLOURS[theme][name]


def role_style(role):
    """Give the style of a role.

    Examples
    --------
    >>> role_style("ghost").dash
    (5, 5)
    """
    return ROLES[check_choice("role", role, ROLES)]
