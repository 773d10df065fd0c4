"""What does this wall carry? Level by level, from the roof down, with a check that nothing is lost."""

from dataclasses import replace
from functools import lru_cache

from structlib.ground.lumber import find_material
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, psf
from structlib.house.model import demo_house
from structlib.ground.sizes import dressed_size
from structlib.house.takedown import take_down
from structlib.pages import verdict
from structlib.pages.beam_page import CAUTION
from structlib.pages.comes_down import comes_down, comes_down_pick, titled
from structlib.pages.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.door import hold
from structlib.pages.show import Table, start_values
from structlib.pictures.drawings.house_section import HouseLevel, HouseSectionView, draw_house_section

_SIZES = ("2x6", "2x8", "2x10", "2x12")
_JOISTS = (("as in the house", "as is"), ("cut over the wall", "cut"), ("in one piece over it", "continuous"))
_STOREY = 9 * ft
_HEAD = ("level", "width that lands here", "dead", "live", "roof live", "snow", "sum from the top")


class WallPage(Page):
    """The bench of the take-down: what comes down on one wall of a house.

    Parameters
    ----------
    house : structlib.house.model.House or None
        The house; the invented demo house when None [-].
    system : str
        Units of the reader: 'us' or 'metric' [-].
    """

    def __init__(self, house=None, system="us"):
        self.house = demo_house() if house is None else house
        self.system = system
        self.result = lru_cache(maxsize=64)(self._result)

    def controls(self, values):
        lowest = self.house.levels[-1]
        depths = tuple(self.sizes())
        own = dressed_size(lowest.joist.size).depth if lowest.joist else depths[2]
        plies = lowest.joist.plies if lowest.joist else 1
        return (
            Slide("span", "Span, left joists", "length", 0.0, 20 * ft, 3 * inch, lowest.left_span),
            Steps("depth", "Depth of joists", "section length", depths, own),
            Slide("plies", "Plies of each joist", "count", 1, 3, 1, plies),
            comes_down_pick(),
            Box("right_span", "Span, right joists", "length", 0.0, 20 * ft, lowest.right_span),
            Pick("joists", "Joists are", _JOISTS, "as is"),
            Box("live", "Live load, floor", "area load", 0.0, 150 * psf, lowest.live),
        )

    def sizes(self):
        """List the joists on offer, that of the house among them.

        Returns
        -------
        dict
            Nominal size by depth, from the least [mm].
        """
        joist = self.house.levels[-1].joist
        offered = {dressed_size(size).depth: size for size in (*_SIZES, *([joist.size] if joist else []))}
        return dict(sorted(offered.items()))

    def levels(self, values):
        """Return the levels of the house with the reader's joists in them.

        Parameters
        ----------
        values : dict
            Values of the controls [any].

        Returns
        -------
        tuple of structlib.house.model.Level
            Levels from the top down [-].
        """
        size = self.sizes()[values["depth"]]
        found = []
        for level in self.house.levels:
            changed = replace(level, left_span=values["span"], right_span=values["right_span"])
            if level.joist is not None and level.kind != "roof":
                changed = replace(changed, joist=replace(level.joist, size=size, plies=int(values["plies"])))
            if values["joists"] != "as is" and level.kind != "roof":
                both = values["span"] and values["right_span"]
                changed = replace(changed, joists=values["joists"] if both else "cut")
            found.append(changed)
        return tuple(
            replace(level, live=values["live"]) if i == len(found) - 1 and level.kind != "roof" else level
            for i, level in enumerate(found)
        )

    def _result(self, items):
        from structlib.house.model import check_level

        levels = self.levels(dict(items))
        for level in levels:
            check_level(level, f"the {level.name}")
        return levels, take_down(levels)

    def compute(self, values, before=None, frame="page"):
        levels, found = self.result(tuple(values.items()))
        was = self.result(tuple(before.items()))[1] if before else None
        scene, gates = self.scene(values, levels, found, was, frame), comes_down(values)[0]
        return Shown(scene, _HEAD, self.rows(found), self.notes(found), gates, known=self.known(levels))

    def known(self, levels):
        """List all that the page used, each with how well it is known.

        Parameters
        ----------
        levels : tuple of structlib.house.model.Level
            Levels from the top down [-].

        Returns
        -------
        tuple of (str, str)
            What, and how it is known [-].
        """
        woods = [find_material(one.species, one.grade, one.size) for one in (level.joist for level in levels) if one]
        found = [(f"weight of {wood.name}", wood.verified) for wood in woods]
        return (*found, ("layers and live loads", verdict.ENTERED))

    def table(self, **changes):
        """Return the take-down as a table, for the starting values with some of them changed.

        Parameters
        ----------
        **changes : any
            Values of controls by name, in the library's own units [any].

        Returns
        -------
        structlib.pages.show.Table
            The take-down [-].
        """
        return Table(_HEAD, self.rows(self.result(tuple(start_values(self, **changes).items()))[1]))

    def rows(self, found):
        """Return the take-down as rows of text, with the total and the sum check.

        Parameters
        ----------
        found : structlib.house.takedown.TakeDown
            The loads carried down [-].

        Returns
        -------
        tuple of tuple of str
            Level, width, load by type, running sum [-].
        """
        line = lambda value: show(value, "line load", self.system)  # noqa: E731
        rows = []
        for share in found.shares:
            if not share.line.sum_for_equilibrium_only() and not share.wall:
                rows.append((share.name, "nothing: it stands on other walls", "", "", "", "", ""))
                continue
            width = share.left_width + share.right_width
            above = share.running.sum_for_equilibrium_only() - share.wall
            rows.append(
                (
                    share.name,
                    show(width, "length", self.system),
                    *(line(v) for v in share.line.values()),
                    line(above),
                )
            )
            if share.wall:
                rows.append(
                    (
                        f"wall under the {share.name}",
                        "",
                        line(share.wall),
                        "",
                        "",
                        "",
                        line(share.running.sum_for_equilibrium_only()),
                    )
                )
        rows.append(
            (
                "in all, by type",
                "",
                *(line(v) for v in found.total.values()),
                line(found.total.sum_for_equilibrium_only()),
            )
        )
        entered = sum(share.entered for share in found.shares)
        elsewhere = sum(share.elsewhere for share in found.shares)
        rows.append(
            (
                "sum check",
                f"all levels hold {line(entered)}",
                f"other supports {line(elsewhere)}",
                "",
                "",
                "",
                f"left over {line(abs(found.left_over))}",
            )
        )
        return tuple(rows)

    def notes(self, found):
        """Return what must be said below the numbers.

        Parameters
        ----------
        found : structlib.house.takedown.TakeDown
            The loads carried down [-].

        Returns
        -------
        tuple of str
            One sentence a note [-].
        """
        notes = ["The types are kept apart: a rulebook combines them later, each with its own factor."]
        if any(share.joists == "continuous" for share in found.shares):
            notes.append(
                "A joist in one piece over the wall puts more than half of each span on it: a quarter more in "
                "all when both spans are equal."
            )
        if self.house.invented:
            notes.append(f"{self.house.name} is an invented house, made up for this workbook.")
        notes.append(CAUTION)
        return tuple(notes)

    def scene(self, values, levels, found, was, frame="page"):
        """Draw the section through the house, with what gathers in the wall.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        levels : tuple of structlib.house.model.Level
            Levels from the top down [-].
        found : structlib.house.takedown.TakeDown
            The loads carried down [-].
        was : structlib.house.takedown.TakeDown or None
            The same before the last change [-].
        frame : str
            Shape of the picture: 'page', 'wide' or 'tall' [-].

        Returns
        -------
        structlib.pictures.scene.Scene
            The picture [-].
        """
        line = lambda value: show(value, "line load", self.system)  # noqa: E731
        floors = sum(level.kind != "roof" for level in levels)
        drawn, height = [], _STOREY * floors
        for level, share in zip(levels, found.shares):
            per_width = share.area.sum_for_equilibrium_only()
            drawn.append(
                HouseLevel(
                    level.name,
                    level.kind,
                    height,
                    level.left_span,
                    level.right_span,
                    level.joists == "continuous",
                    share.left_width,
                    share.right_width,
                    line(share.left_width * per_width) if share.left_width else "",
                    line(share.right_width * per_width) if share.right_width else "",
                    line(share.running.sum_for_equilibrium_only()) if level.lands else "",
                )
            )
            height -= 0.0 if level.kind == "roof" else _STOREY
        total = found.total.sum_for_equilibrium_only()
        title = f"This wall carries {line(total)}"
        if was is not None:
            before = was.total.sum_for_equilibrium_only()
            title += f", {show(abs(total - before), 'line load', self.system, 0 if self.system == 'us' else None)} {'more' if total >= before else 'less'} than before"
        title = "Stop and call first: more comes down than is added up here" if comes_down(values)[0] else title
        left = max(level.left_span for level in levels)
        right = max(level.right_span for level in levels)
        roof = any(level.kind == "roof" for level in levels)
        return draw_house_section(
            HouseSectionView(
                titled(title, values, comes_down(values)[0]),
                tuple(drawn),
                left,
                right,
                roof_rise=0.25 * (left + right) if roof else 0.0,
                wall_name="the wall in question",
                note="Dead and live together, for the eye only.",
                scale_text=f"House {show(left + right, 'length', self.system)} wide",
            ),
            frame,
        )


hold(globals())
