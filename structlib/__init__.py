"""Residential structure, computed and explained: the load path from the snow to the soil.

The rooms are read in the order in which a load travels up to a reader:
``ground`` (units, lumber, sections, loads), ``mechanics`` (true everywhere),
``rules`` (one folder a rulebook), ``house`` (members tied together),
``pictures`` and ``pages`` (what a notebook shows). Each room knows only the rooms below it.

It teaches and prepares. It does not replace a licensed engineer, the local code or the permit.
"""

__version__ = "0.1.0"
