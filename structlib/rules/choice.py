"""The one place that says by whose rules the workbook works where nobody chose: nothing outside this folder does."""

from structlib.rules.ca import vibration as BOUNCE  # the one criterion for the bounce of floor joists that is here
from structlib.rules.us.book import RULEBOOK

__all__ = ["BOUNCE", "RULEBOOK"]
