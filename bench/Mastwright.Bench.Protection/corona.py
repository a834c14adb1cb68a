"""The same corona problem with NumPy and SciPy: axisymmetric boundary elements of one upright rod with a half-ball end on a plane.
Prints seconds for one solution (best of five) and the enhancement at the tip. Elements: geometric along the shaft, even on the dome."""
import sys
import time

import numpy as np
from scipy.special import ellipkm1

height, radius, dome, shaft = float(sys.argv[1]), float(sys.argv[2]), int(sys.argv[3]), int(sys.argv[4])


def outline():
    arc = np.linspace(np.pi / 2, 0, dome + 1)
    r = list(radius * np.cos(arc))
    z = list(height - radius + radius * np.sin(arc))
    first, top = radius * np.pi / 2 / dome, height - radius
    low, high = 1.0, 3.0
    for _ in range(80):
        g = (low + high) / 2
        total = first * (g ** shaft - 1) / (g - 1) if g > 1 else first * shaft
        low, high = (g, high) if total < top else (low, g)
    sizes = first * g ** np.arange(shaft)
    for s in np.cumsum(sizes * top / sizes.sum()):
        r.append(radius)
        z.append(top - s)
    return np.array(r), np.array(z)


def solve():
    r, z = outline()
    rm, zm = (r[1:] + r[:-1]) / 2, (z[1:] + z[:-1]) / 2
    n = len(rm)
    x, w = np.polynomial.legendre.leggauss(8)
    length = np.hypot(np.diff(r), np.diff(z))

    def block(zi):
        # Both halves of every element, graded towards its middle by u^3, which is right for the own element and good enough for its neighbours.
        out = np.zeros((n, n))
        for side in (-1, 1):
            u = (x + 1) / 2
            t = 0.5 + side * 0.5 * u ** 3
            jac = 0.5 * 3 * u ** 2 * w / 2
            rs = r[:-1, None] + t * np.diff(r)[:, None]
            zs = z[:-1, None] + t * np.diff(z)[:, None]
            dz = zi[:, None, None] - zs[None]
            far = (rm[:, None, None] + rs[None]) ** 2 + dz ** 2
            near = (rm[:, None, None] - rs[None]) ** 2 + dz ** 2
            out += (jac * rs[None] * ellipkm1(near / far) / (np.pi * np.sqrt(far))).sum(axis=2) * length
        return out

    sigma = np.linalg.solve(block(zm) - block(-zm), zm)
    return n, sigma[0]


best, found = 1e9, None
for _ in range(5):
    start = time.perf_counter()
    found = solve()
    best = min(best, time.perf_counter() - start)
print(best, found[0], found[1])
