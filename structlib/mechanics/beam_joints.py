"""The joints of a beam: one equation for each moment and each deflection that is not known beforehand.

Unknown are the moment at each joint that passes one on (two at a fixed support, one for each side)
and the deflection of each joint that can sink. The equations say that neighbouring spans meet at the
same slope, and that a joint without a support takes no force. Lengths are divided by the beam's length
and deflections multiplied by EI / length^2, so that all numbers are of like size.
"""


def joint_state(beam, joints, spans, lifted):
    """Find the moments and deflections of all joints, and what the supports give.

    Parameters
    ----------
    beam : Beam
        The beam [-].
    joints : list of tuple
        From left to right: number of the place, number of the support or None, hinge or not [-].
    spans : list of tuple
        Each span as a simple span: length, three unit slopes, two load slopes, two load shears [-].
    lifted : collection of int
        Numbers of the supports that the beam has left [-].

    Returns
    -------
    tuple of list
        Moments at both ends of each span; deflection, upward force and couple of each joint [-].

    Examples
    --------
    >>> from structlib.mechanics.beam_model import Beam, Support
    >>> beam = Beam(6.0, 9.0, [Support(0.0), Support(6.0)])
    >>> span = (6.0, 2 / 9, 1 / 9, 2 / 9, 2.0, 2.0, 6.0, -6.0)  # under a uniform load of 2
    >>> joint_state(beam, [(0, 0, False), (1, 1, False)], [span], ())[2]
    [6.0, 6.0]
    """
    last = len(joints) - 1
    left_of, right_of, sink_of = [], [], []  # numbers of the unknowns of each joint, None where known
    sinks = []
    size = 0
    for joint, (_, i, hinge) in enumerate(joints):
        support = None if i is None or i in lifted else beam.supports[i]
        fixed = support is not None and support.kind == "fixed"
        left = right = sink = None
        if support is None or support.kind == "spring":
            sink = size
            size += 1
        if fixed:
            if joint > 0:
                left = size
                size += 1
            if joint < last:
                right = size
                size += 1
        elif not hinge and 0 < joint < last:
            left = right = size
            size += 1
        left_of.append(left)
        right_of.append(right)
        sink_of.append(sink)
        sinks.append(0.0 if sink is not None else support.settlement)
    unknown = ()
    if size:
        numbering = left_of, right_of, sink_of, sinks
        matrix, given = _joint_equations(beam, joints, spans, lifted, numbering, size)
        unknown = _solve_dense(matrix, given)
        scale = beam.length**2 / _reference_stiffness(beam)
        sinks = [y if n is None else unknown[n] * scale for y, n in zip(sinks, sink_of)]
    moments = [
        (0.0 if i is None else unknown[i], 0.0 if j is None else unknown[j]) for i, j in zip(right_of, left_of[1:])
    ]
    forces, turns = [0.0] * (last + 1), [0.0] * (last + 1)
    for s, (i, j) in enumerate(moments):
        length, _, _, _, _, _, left_shear, right_shear = spans[s]
        passed = (j - i) / length
        forces[s] += left_shear + passed
        forces[s + 1] -= right_shear + passed
        turns[s] += i
        turns[s + 1] -= j
    return moments, sinks, forces, turns


def _reference_stiffness(beam):
    ei = beam.bending_stiffness
    return ei if type(ei) is not tuple else max([value for _, value in ei])


def _joint_equations(beam, joints, spans, lifted, numbering, size):
    """One row for each unknown moment (slopes meet) and each unknown deflection (forces balance)."""
    left_of, right_of, sink_of, sinks = numbering
    whole = beam.length
    ei = _reference_stiffness(beam)
    soft = ei / whole
    matrix = [[0.0] * size for _ in range(size)]
    given = [0.0] * size
    for s, (length, near, cross, far, left_slope, right_slope, left_shear, right_shear) in enumerate(spans):
        i, j, a, b = right_of[s], left_of[s + 1], sink_of[s], sink_of[s + 1]
        lean = whole / length
        drop = (sinks[s + 1] - sinks[s]) / length
        if i is not None:
            row = matrix[i]
            row[i] += near * soft
            given[i] -= (left_slope + drop) * soft
            if j is not None:
                row[j] += cross * soft
            if a is not None:
                row[a] -= lean
                matrix[a][i] -= lean
            if b is not None:
                row[b] += lean
                matrix[b][i] += lean
        if j is not None:
            row = matrix[j]
            row[j] += far * soft
            given[j] -= (right_slope - drop) * soft
            if i is not None:
                row[i] += cross * soft
            if a is not None:
                row[a] += lean
                matrix[a][j] += lean
            if b is not None:
                row[b] -= lean
                matrix[b][j] -= lean
        if a is not None:
            given[a] -= left_shear * whole
        if b is not None:
            given[b] += right_shear * whole
    for joint, (_, i, _) in enumerate(joints):
        n = sink_of[joint]
        if n is not None and i is not None and i not in lifted:
            support = beam.supports[i]
            matrix[n][n] -= support.stiffness * whole**3 / ei
            given[n] -= support.stiffness * support.settlement * whole
    return matrix, given


def _solve_dense(matrix, given):
    """Gauss elimination; the pivot is the row that is greatest beside its own largest entry."""
    size = len(given)
    if size == 1:
        return [given[0] / matrix[0][0]]
    weight = [max(max(row), -min(row)) for row in matrix]
    for k in range(size - 1):
        best, pivot = -1.0, k
        for i in range(k, size):
            share = abs(matrix[i][k]) / weight[i]
            if share > best:
                best, pivot = share, i
        if pivot != k:
            matrix[k], matrix[pivot] = matrix[pivot], matrix[k]
            given[k], given[pivot] = given[pivot], given[k]
            weight[k], weight[pivot] = weight[pivot], weight[k]
        top = matrix[k]
        for i in range(k + 1, size):
            row = matrix[i]
            if row[k]:  # most entries are zero: a joint only knows its neighbours
                factor = row[k] / top[k]
                for j in range(k + 1, size):
                    if top[j]:
                        row[j] -= factor * top[j]
                given[i] -= factor * given[k]
    for k in range(size - 1, -1, -1):
        row = matrix[k]
        total = given[k]
        for j in range(k + 1, size):
            if row[j]:
                total -= row[j] * given[j]
        given[k] = total / row[k]
    return given
