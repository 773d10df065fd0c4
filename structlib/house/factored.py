"""The loads of a beam job under one combination."""

from dataclasses import replace

from structlib.mechanics.beams import LineLoad


def factored_loads(job, combination, *, own_weight, keep):
    """Return the loads of one combination on a job, each with its factor.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The opening and its loads [-].
    combination : structlib.rules.check.Combination
        Factors by load type [-].
    own_weight : float
        Weight of the beam, added to the dead load [N/mm].
    keep : callable
        Tells by load type whether it is wanted [-].

    Returns
    -------
    tuple
        Loads for the solver [-].

    Examples
    --------
    >>> from structlib.ground.units import ft, inch, plf
    >>> from structlib.house.beam import BeamJob, TypedLoad
    >>> from structlib.rules.check import Seat
    >>> from structlib.rules.choice import RULEBOOK
    >>> job = BeamJob(11 * ft, Seat(3 * inch), Seat(3 * inch), (
    ...     TypedLoad("live", LineLoad(0.0, 135 * inch, 100 * plf)),), unbraced_length=0.0)
    >>> both = RULEBOOK.combinations(["live"])[-1]
    >>> round(factored_loads(job, both, own_weight=0.0, keep=lambda kind: True)[0].intensity / plf)
    100
    """
    loads = []
    if keep("dead") and combination.factor("dead") and own_weight:
        loads.append(LineLoad(0.0, job.span, own_weight * combination.factor("dead")))
    for typed in job.loads:
        factor = combination.factor(typed.load_type)
        if not factor or not keep(typed.load_type):
            continue
        load = typed.load
        if isinstance(load, LineLoad):
            end = load.intensity if load.end_intensity is None else load.end_intensity
            loads.append(replace(load, intensity=load.intensity * factor, end_intensity=end * factor))
        else:
            loads.append(replace(load, force=load.force * factor))
    return tuple(loads)
