"""Units as plain numbers with names: inside the library lengths are mm, forces N, stresses MPa.

Write ``span = 16*ft + 4*inch`` and show ``moment / (lb*ft)``. A value is always a plain float
(or an array, or a sympy expression); there is no quantity class.
"""

import math

# length, in millimetres
mm = 1.0
cm = 10.0
m = 1000.0
inch = 25.4
ft = 12 * inch

# force, in newtons (exact: the standard pound-force)
N = 1.0
kN = 1000.0
lb = 0.45359237 * 9.80665
kip = 1000 * lb
kg = 9.80665  # the weight of a kilogram where gravity is standard

# stress and area load, in megapascals (newtons per square millimetre)
MPa = 1.0
GPa = 1000.0
kPa = 1e-3
psi = lb / inch**2
ksi = 1000 * psi
psf = lb / ft**2

# line load, in newtons per millimetre
plf = lb / ft
kN_per_m = 1.0

# weight of a volume, in newtons per cubic millimetre
pcf = lb / ft**3
kN_per_m3 = 1e-6

# angle, in radians
deg = math.pi / 180
