"""Reference values of the special functions, from SciPy, as tab-separated text.

Run:  python3 special_tables.py > ../Reference/special.tsv
Columns: function, real and imaginary part of the argument, real and imaginary part of the value.
"""
import cmath
import numpy as np
import scipy
from scipy import special as sp

print(f"# scipy {scipy.__version__}, by scripts/special_tables.py")


def row(name, z, w):
    z, w = complex(z), complex(w)
    print(name, repr(z.real), repr(z.imag), repr(w.real), repr(w.imag), sep="\t")


real = [1e-8, 1e-3, 0.1, 0.5, 1.0, 2.0, 2.404825557695773, 3.7, 5.0, 7.99, 8.01, 11.3, 20.0, 24.9, 25.1, 50.5, 123.4, 1000.7, 1e5]
for x in real:
    row("J0", x, sp.jv(0, x)); row("J1", x, sp.jv(1, x))
    row("Y0", x, sp.yv(0, x)); row("Y1", x, sp.yv(1, x))
for x in real[:17]:
    row("Si", x, sp.sici(x)[0]); row("Ci", x, sp.sici(x)[1])
    row("Si", -x, sp.sici(-x)[0])
radii = [1e-6, 0.01, 0.3, 1.0, 2.5, 4.0, 6.0, 8.0, 11.0, 12.5, 17.0, 25.0, 40.0, 90.0]
angles = [0.0, 10.0, 33.0, 45.0, 60.0, 80.0, 90.0, 100.0, 135.0, 170.0, -20.0, -45.0, -89.0, -120.0, -160.0]
for r in radii:
    for a in angles:
        z = cmath.rect(r, np.deg2rad(a))
        row("J0", z, sp.jv(0, z)); row("J1", z, sp.jv(1, z))
        row("H20", z, sp.hankel2(0, z)); row("H21", z, sp.hankel2(1, z))
        row("H10", z, sp.hankel1(0, z))
        row("E1", z, sp.exp1(z))
        if r < 25:
            row("w", z, sp.wofz(z)); row("erfc", z, sp.erfc(z))
        elif a >= 0:
            row("w", z, sp.wofz(z))
for m in [0.0, 1e-9, 0.1, 0.3, 0.5, 0.7, 0.9, 0.99, 0.999999, -0.5, -3.0, -100.0]:
    row("K", m, sp.ellipk(m)); row("E", m, sp.ellipe(m))
