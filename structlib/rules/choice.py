"""The one place that says by whose rules the workbook works where nobody chose: nothing outside this folder does."""

from structlib.rules.us.book import RULEBOOK

__all__ = ["RULEBOOK"]
