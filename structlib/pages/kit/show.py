"""What a notebook cell shows without any slider: a picture, a table, a derivation, a comparison."""

import html
import textwrap
from os import PathLike

from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.tables import table_rows
from structlib.pages.kit.controls import start_values
from structlib.pages.kit.door import hold
from structlib.pictures import svg
from structlib.pictures.scene import Scene


class Picture:
    """A still picture on the page, with its alternative text."""

    def __init__(self, scene: Scene):
        self.scene = scene

    def _repr_html_(self):
        return f'<div style="max-width:860px">{svg.stylesheet()}{svg.svg_of(self.scene)}</div>'

    def __repr__(self):
        return self.scene.alt


class Table:
    """Rows of text as a table on the page, and as plain text elsewhere."""

    def __init__(self, head: tuple[str, ...], rows, caption: str = ""):
        self.head, self.rows, self.caption = tuple(head), tuple(tuple(row) for row in rows), caption

    def _repr_html_(self):
        top = "".join(f'<th scope="col" style="text-align:left">{html.escape(name)}</th>' for name in self.head)
        body = "".join(
            "<tr>" + "".join(f'<td style="{_cell_style(text)}">{html.escape(text)}</td>' for text in row) + "</tr>"
            for row in self.rows
        )
        line = f"<caption style='text-align:left'>{html.escape(self.caption)}</caption>" if self.caption else ""
        return (
            f'<div style="overflow-x:auto"><table style="font-size:15px">{line}<thead><tr>{top}</tr></thead>'
            f"<tbody>{body}</tbody></table></div>"
        )

    def __repr__(self):
        lines = [tuple(row) + ("",) * (len(self.head) - len(row)) for row in (self.head, *self.rows)]
        widths = [max(len(cell) for cell in column) for column in zip(*lines)]
        text = ["  ".join(cell.ljust(width) for cell, width in zip(line, widths)).rstrip() for line in lines]
        above = [textwrap.fill(line, 110) for line in self.caption.splitlines()]
        return "\n".join(above + text)


def _cell_style(text):
    """A number stays beside its unit on a narrow page; a sentence may break."""
    return "text-align:left" + (";white-space:nowrap" if len(text) <= 16 else "")


class Cards:
    r"""Myths and their answers, one below the other, on the page and as plain text.

    Examples
    --------
    >>> Cards("They say: Two is more than three.\nThe number: 3 - 2 = 1.")
    They say: Two is more than three.
    The number: 3 - 2 = 1.
    """

    def __init__(self, *cards):
        self.cards = cards

    def _repr_html_(self):
        def line(text):
            head, _, rest = text.partition(":")
            return f"<b>{html.escape(head)}:</b>{html.escape(rest)}"

        blocks = ("<br>".join(map(line, card.splitlines())) for card in self.cards)
        return "".join(f'<p style="font-size:16px;line-height:1.5;max-width:46em">{block}</p>' for block in blocks)

    def __repr__(self):
        return "\n\n".join(
            "\n".join(textwrap.fill(line, 100, break_long_words=False) for line in card.splitlines())
            for card in self.cards
        )


def still(page, **changes):
    """Return the picture of a page for its starting values, some of them changed."""
    values = start_values(page, **changes)
    return Picture(page.compute(values).scene)


def save(
    page,
    path: str | PathLike,
    frame: str = "wide",
    theme: str = "light",
    transparent: bool = False,
    overwrite: bool = False,
    **changes,
):
    """Save the picture of a page for a film or a slide, as PNG or SVG by the ending of the file name."""
    from structlib.pictures.paper import still as save_still

    sizes = {"wide": (1920, 1080), "tall": (1080, 1920)}
    size = sizes[check_choice("frame", frame, sizes)]
    scene = page.compute(start_values(page, **changes), frame=frame).scene
    return save_still(scene, path, size=size, theme=theme, transparent=transparent, overwrite=overwrite)


def published(key: str, ours: float):
    """Compare a number with the published one, and say where it is printed.

    ``ours`` [as the row says].

    Examples
    --------
    >>> print(published("section modulus of a 4x8", 30.6615))
    section modulus of a 4x8: published 30.66 in3, ours 30.66 in3
        seen in NDS Supplement Table 1B, quoted in a university course, Problem 6.5
    """
    rows = {row["key"]: row for row in table_rows("published_checks")}
    row = rows[check_choice("published value", key, rows)]
    printed, value = row["printed"], row["value"]
    if abs(ours - value) > row["tolerance"] * abs(value):
        raise BadInput(
            f"{key}: published {printed} {row['unit']}, ours {ours:g}; they should agree, so one of the inputs "
            "is not that of the publication"
        )
    digits = len(printed.split(".")[1]) if "." in printed else 0
    unit = "" if row["unit"] == "-" else f" {row['unit']}"
    source = textwrap.fill(f"{row['verified']} in {row['source']}", 96, initial_indent="    ", subsequent_indent="    ")
    return f"{key}: published {printed}{unit}, ours {ours:.{digits}f}{unit}\n{source}"


hold(globals())
