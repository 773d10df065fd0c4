"""What everything else stands on: units, refusals, data tables, lumber, sections, loads."""
