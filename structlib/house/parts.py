"""The parts of a house as the steps of the path look at them: what a step looked at says when it must be run again."""

from structlib.house.plan import Opening


class Parts(dict):
    """Parts by name, asked for one by one; ``seen`` notes what was found since it was last emptied.

    Parameters
    ----------
    parts : dict
        Parts by name [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> parts = Parts({one.name: one for one in demo_house().parts()})
    >>> parts["main beam"].name, list(parts.seen)
    ('main beam', ['main beam'])
    """

    def __init__(self, parts):
        super().__init__(parts)
        self.seen = {}
        self._openings = {}
        for one in parts.values():
            if isinstance(one, Opening):
                self._openings.setdefault(one.wall, []).append(one)

    def __getitem__(self, name):
        found = self.seen[name] = super().__getitem__(name)
        return found

    def get(self, name, default=None):
        """Return a part by its name.

        Parameters
        ----------
        name : str
            The name [-].
        default : any
            What is given where there is none [any].

        Returns
        -------
        any
            The part [any].

        Examples
        --------
        >>> Parts({}).get("a chimney") is None
        True
        """
        found = self.seen[name] = super().get(name)
        return default if found is None else found

    def openings_in(self, wall):
        """Return the openings of one wall, along it.

        Parameters
        ----------
        wall : str
            The wall [-].

        Returns
        -------
        tuple of structlib.house.plan.Opening
            The openings [-].

        Examples
        --------
        >>> from structlib.house.file import demo_house
        >>> parts = Parts({one.name: one for one in demo_house().parts()})
        >>> [one.name for one in parts.openings_in("middle wall")]
        ['kitchen opening']
        """
        found = tuple(sorted(self._openings.get(wall, ()), key=lambda one: one.start))
        self.seen["openings in", wall] = found
        return found

    def still(self, seen):
        """Tell whether everything that was once seen is found the same here.

        Parameters
        ----------
        seen : dict
            What was seen in the parts of another house [-].

        Returns
        -------
        bool
            Whether it is [-].

        Examples
        --------
        >>> from structlib.house.file import demo_house
        >>> parts = Parts({one.name: one for one in demo_house().parts()})
        >>> parts.still({"main beam": None})
        False
        """
        return all(
            (self.openings_in(key[1]) if isinstance(key, tuple) else super(Parts, self).get(key)) == found
            for key, found in seen.items()
        )

    def _one_by_one(self):
        raise TypeError("a step asks for the parts that it needs by name, so that it is known which ones they are")

    __iter__ = keys = values = items = _one_by_one
