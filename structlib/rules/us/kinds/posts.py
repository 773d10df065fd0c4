"""Posts, plates and pads: the rules by kind, and the answers given beside the checks."""

from dataclasses import replace

import numpy

from structlib.ground.refusals import OutsideRule
from structlib.rules.members import OFF_MIDDLE, LeastPad, PadMember, Partly, PlateMember, PostMember
from structlib.rules.us import columns, factors, fastening, footings, service


class Posts:
    """Answers about posts, what they stand on, and the wood that they are made of."""

    def soils(self):
        """List the classes of soil with their presumed bearing, softest first (IRC Table R401.4.1).

        Returns
        -------
        tuple of structlib.rules.us.footings.Soil
            The classes [MPa].

        Examples
        --------
        >>> from structlib.ground.units import psf
        >>> [round(one.pressure / psf) for one in Posts().soils()][:2]
        [1500, 2000]
        """
        return tuple(footings.find_soil(name) for name in footings.soil_names())

    def capacity(self, post, heights, time_factor):
        """Return what a post carries in its middle, by height; zero where it is too slender (NDS 2018 3.7, 15.3).

        Parameters
        ----------
        post : structlib.rules.members.PostMember
            The post; its own height does not count, and its plies may be an array, one load each [-].
        heights : iterable of float
            Heights to ask for [mm].
        time_factor : float
            Load duration factor of the combination [-].

        Returns
        -------
        numpy.ndarray
            Loads [N].

        Examples
        --------
        >>> from structlib.ground.lumber import find_material
        >>> from structlib.ground.units import ft, inch, lb
        >>> post = PostMember(find_material("Douglas Fir-Larch", "No.2"), 1.5 * inch, 5.5 * inch, 8 * ft, plies=3)
        >>> [round(load / lb) for load in Posts().capacity(post, (8 * ft,), 1.0)]
        [12384]
        """
        return columns.column_capacity(
            post.material, ply_width=post.ply_width, depth=post.depth, height=numpy.asarray(heights), plies=post.plies,
            time_factor=time_factor, fastening=post.fastening, held_width=post.held_width, wet=post.wet,
        ).load  # fmt: skip

    def least_pad(self, pad, push):
        """Return the least side of a plain pad for a push, and its least thickness (IRC R401.4.1, R403.1.1).

        Parameters
        ----------
        pad : structlib.rules.members.PadMember
            The pad [-].
        push : structlib.rules.members.Push
            What presses on it [N].

        Returns
        -------
        structlib.rules.members.LeastPad
            Side at which soil and own weight are used up, and thickness at the side that it has [mm].

        Examples
        --------
        >>> from structlib.ground.units import inch, kip
        >>> from structlib.rules.members import Push
        >>> pad = PadMember(side=32 * inch, base=4 * inch, soil="clay or silt")
        >>> found = Posts().least_pad(pad, Push(None, 10 * kip))
        >>> round(found.side / inch, 1), round(found.thickness / inch, 1)
        (33.0, 14.0)
        """
        thick = footings.pad_thickness(side=pad.side, base=pad.base)
        pressure = footings.find_soil(pad.soil).pressure
        side = footings.pad_side(load=push.axial, soil_pressure=pressure, thickness=thick)
        return LeastPad(max(side, factors.length("footing_least_width")), thick, "IRC R403.1.1")

    def slab_pressure(self, load, plate, thickness):
        """Return the pressure under a slab on which something stands for a time (geometry; common practice).

        Parameters
        ----------
        load : float
            What stands there; whatever stays is refused on a slab [N].
        plate, thickness : float
            Side of the square that it comes down on, and thickness of the slab [mm].

        Returns
        -------
        float
            The pressure, with the load spread at 45 degrees; a demand only [MPa].

        Examples
        --------
        >>> from structlib.ground.units import inch, lb, psf
        >>> round(Posts().slab_pressure(15000 * lb, 6 * inch, 4 * inch) / psf)  # 14 in square
        11020
        """
        return footings.post_on_slab(load=load, plate=plate, slab_thickness=thickness, permanent=False).pressure

    def held_top(self, push):
        """Return what keeps the top of a post from kicking out sideways (IRC R502.9; the force is common practice).

        Parameters
        ----------
        push : structlib.rules.members.Push
            What presses on the post [N].

        Returns
        -------
        structlib.rules.us.fastening.Restraint
            A sideways force and the condition to verify [N].

        Examples
        --------
        >>> from structlib.ground.units import kip
        >>> from structlib.rules.members import Push
        >>> round(Posts().held_top(Push(None, 10 * kip)).force)  # 200 lb
        890
        """
        return fastening.post_top_restraint(axial=push.axial)

    def wood_in_use(self, material, wet):
        """Say what wet service, incising and treatment do to a wood (NDS 2018 4.3).

        Parameters
        ----------
        material : structlib.ground.lumber.Material
            The wood as it is put in [-].
        wet : bool
            True where it stays above 19 % moisture [-].

        Returns
        -------
        tuple of str
            One sentence for each that holds [-].

        Examples
        --------
        >>> from structlib.ground.lumber import find_material
        >>> Posts().wood_in_use(find_material("Hem-Fir", "No.2"), False)
        ()
        """
        return service.service_sentences(material, wet=wet)

    def conditions(self, post):
        """Say what the strength of a post stands on (NDS 2018 15.3.3, 15.3.4).

        Parameters
        ----------
        post : structlib.rules.members.PostMember
            The post [-].

        Returns
        -------
        tuple of str
            One sentence a condition [-].

        Examples
        --------
        >>> Posts().conditions(PostMember(None, 38.0, 140.0, 2400.0))
        ()
        """
        if post.plies == 1:
            return ()
        return (
            f"A built-up post: its plies must be {post.fastening} by NDS 15.3.3 or 15.3.4, and every ply must bear at "
            "both ends.",
        )


def _column(post):
    return columns.Column(
        post.material,
        post.ply_width,
        post.depth,
        post.height,
        plies=post.plies,
        fastening=post.fastening,
        held_width=post.held_width,
        wet=post.wet,
    )


def _pushes(demands):
    return tuple(columns.ColumnDemand(one.combination, one.axial, one.off_middle) for one in demands)


def _post(post, demands):
    column = _column(post)
    size = (columns.least_size_check(column),) if post.stands_free else ()
    try:
        return (*columns.column_checks(column, _pushes(demands)), *size)
    except OutsideRule as refusal:
        sentence = str(refusal)
    try:
        found, left_out = (
            columns.column_checks(column, _pushes(replace(one, off_middle=0.0) for one in demands)),
            OFF_MIDDLE,
        )
    except OutsideRule as refusal:
        sentence, left_out = str(refusal), "compression"
        found = tuple(columns.slenderness_check(column, way=way) for way in columns.WAYS)
    raise Partly(sentence, (*found, *size), left_out)


def _plate(plate, demands):
    # the post may stand at an end of the plate: no help from neighboring fibres is counted
    return (columns.plate_check(_column(plate.post), _pushes(demands), plate.material, wet=plate.post.wet),)


def _pad(pad, demands):
    most = max(demands, key=lambda one: one.axial)
    return footings.pad_checks(
        load=most.axial,
        side=pad.side,
        base=pad.base,
        soil=footings.find_soil(pad.soil),
        thickness=footings.pad_thickness(side=pad.side, base=pad.base),
        combination=most.combination.name,
    )


#: By kind of member.
RULES = {PostMember: _post, PlateMember: _plate, PadMember: _pad}
