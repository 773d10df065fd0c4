"""Tables whose rows are single numbers of a rule, each with a key."""

from functools import lru_cache

from structlib.ground.tables import in_library_units, table_row
from structlib.rules.check import least_verified


class KeyedNumbers:
    """Single numbers of a rulebook, read by key from one table of data/.

    Parameters
    ----------
    table : str
        Name of the file without its ending; its columns are key, value and unit among others [-].

    Examples
    --------
    >>> snow = KeyedNumbers("us_snow_numbers")
    >>> snow.number("flat_roof_share"), snow.verified("flat_roof_share")
    (0.7, 'seen')
    """

    def __init__(self, table):
        self.table = table
        self.number = lru_cache(maxsize=None)(self._number)

    def row(self, key):
        """Return one row of the table.

        Parameters
        ----------
        key : str
            Key of the row [-].

        Returns
        -------
        mapping
            Cell by column [-].

        Examples
        --------
        >>> KeyedNumbers("us_snow_numbers").row("flat_roof_share")["unit"]
        '-'
        """
        return table_row(self.table, key=key)

    def _number(self, key):
        return in_library_units(self.row(key), "value")

    def verified(self, *keys):
        """Return how well the least well known of several numbers is known.

        Parameters
        ----------
        *keys : str
            Keys of rows [-].

        Returns
        -------
        str
            A ``verified`` word [-].

        Examples
        --------
        >>> KeyedNumbers("us_snow_numbers").verified("flat_roof_share", "low_slope_pg")
        'transcribed'
        """
        return least_verified(self.row(key)["verified"] for key in keys)
