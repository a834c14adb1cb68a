"""Reference values for quadrature, random numbers, robust lines, fits, interpolation and bands, from SciPy and NumPy.

Run:  python3 library_values.py     and copy the printed values into the tests named beside them.
"""
import numpy as np
import scipy
from scipy import integrate, interpolate, linalg, optimize, stats

np.set_printoptions(precision=17)
print("scipy", scipy.__version__, "numpy", np.__version__)

print("\n# QuadratureTests")
print("sin(x^2) 0..10", integrate.quad(lambda x: np.sin(x * x), 0, 10, epsabs=0, epsrel=1e-13, limit=500)[0])
print("1/(1e-4+(x-0.3)^2) 0..1", integrate.quad(lambda x: 1 / (1e-4 + (x - 0.3) ** 2), 0, 1, epsabs=0, epsrel=1e-13, limit=500)[0])

print("\n# SeededRandomTests: PCG64 seeded as the generator's own paper seeds it")
M = 0x2360ED051FC65DA44385DF649FCCF645
mask = (1 << 128) - 1
for seed, stream in [(42, 0), (20240229, 7)]:
    inc = ((stream << 1) | 1) & mask
    state = inc
    state = (state + seed) & mask
    state = (state * M + inc) & mask
    g = np.random.PCG64()
    g.state = {"bit_generator": "PCG64", "state": {"state": state, "inc": inc}, "has_uint32": 0, "uinteger": 0}
    print(seed, stream, [int(v) for v in g.random_raw(4)])

print("\n# TheilSenTests")
x = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]
y = [1.2, 2.9, 5.1, 7.3, 8.8, 40.0, 13.1, 15.2, 16.8, -20.0, 21.3, 22.9]
print(stats.theilslopes(y, x, 0.95, method="separate"))
xt = [1, 1, 2, 2, 3, 4, 5, 5, 6, 7]
yt = [2.0, 2.5, 2.5, 3.0, 3.5, 4.0, 4.0, 5.0, 5.5, 5.5]
print(stats.theilslopes(yt, xt, 0.90, method="separate"))

print("\n# LeastSquaresTests: NIST StRD Misra1a")
xm = np.array([77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0])
ym = np.array([10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78])
p, c = optimize.curve_fit(lambda t, b1, b2: b1 * (1 - np.exp(-b2 * t)), xm, ym, p0=[250, 5e-4], xtol=1e-14, ftol=1e-14)
r = p[0] * (1 - np.exp(-p[1] * xm)) - ym
print(p, np.sqrt(np.diag(c)), r @ r, "t", stats.t.ppf(0.975, 12))
pb = optimize.least_squares(lambda b: b[0] * (1 - np.exp(-b[1] * xm)) - ym, [210, 6e-4], bounds=([0, 0], [220, 1]), x_scale=[200, 5e-4], xtol=1e-14, ftol=1e-14, gtol=1e-14)
print("bounded b1 <= 220:", pb.x, 2 * pb.cost)

print("\n# InterpolationTests")
xi = [0.0, 1.0, 1.5, 4.0, 5.0, 7.0]
yi = [0.0, 0.5, 2.0, 2.0, 1.0, 6.0]
q = [0.3, 1.2, 2.0, 4.4, 6.5]
print("pchip", interpolate.PchipInterpolator(xi, yi)(q))

print("\n# BandTests: eigenvalues of K v = lambda M v")
n, w = 40, 3
K = np.zeros((n, n)); Mm = np.zeros((n, n))
for i in range(n):
    for j in range(max(0, i - w), i + 1):
        K[i, j] = K[j, i] = 10 + i * 0.1 if i == j else np.cos(3 * i + 7 * j)
        Mm[i, j] = Mm[j, i] = 2 + 0.05 * i if i == j else 0.1 * np.sin(i + 2 * j)
K -= 8 * np.eye(n)
e = linalg.eigh(K, Mm, eigvals_only=True)
print(e[[0, 1, 5, 39]], "below zero:", (e < 0).sum(), "below 2:", (e < 2).sum())
