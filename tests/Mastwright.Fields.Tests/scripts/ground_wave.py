# Vertical field along the surface from a short vertical dipole on it, over real soil relative to perfect ground: Sommerfeld's
# integral itself, no attenuation function. The path leaves the real axis into the first quadrant, passes the branch points and
# the pole, and beyond them J0 is split into Hankel functions that die away upward and downward. Beside it Norton's factor.
# exp(+jwt), lengths in 1/k. Own work, NumPy and SciPy.
import numpy as np
from scipy.special import hankel1, hankel2, jv, wofz

C, EPS0 = 299792458.0, 8.8541878128e-12
XG, WG = np.polynomial.legendre.leggauss(64)


def root(x):
    s = np.sqrt(x + 0j)
    return np.where(s.real < 0, -s, s)


def gauss(fun, a, b, n):
    e = np.linspace(a, b, n + 1)
    return sum(np.sum(WG * fun(0.5 * (q - p) * XG + 0.5 * (p + q))) * 0.5 * (q - p) for p, q in zip(e, e[1:]))


def field(n2, r):
    f = lambda l: 2 * n2 * l**3 / (n2 * root(l * l - 1) + root(l * l - n2))
    end = 1.2 * root(n2).real + 1.5
    lift, middle = min(0.5, 2 / r), min(2.0, 0.5 * end)
    path = [0, 1 + 1j * lift, middle + 1j * lift, end]
    total = 0
    for p, q in zip(path, path[1:]):
        total += gauss(lambda t: f(p + (q - p) * t) * jv(0, (p + (q - p) * t) * r) * (q - p), 0, 1, 60 + int(abs(q - p) * r / 8))
    tail = np.concatenate([[0], np.geomspace(0.045 / r, 45 / r, 20)])
    for a, b in zip(tail, tail[1:]):
        total += gauss(lambda t: 0.5j * f(end + 1j * t) * hankel1(0, (end + 1j * t) * r), a, b, 1)
        total -= gauss(lambda t: 0.5j * f(end - 1j * t) * hankel2(0, (end - 1j * t) * r), a, b, 1)
    return total


def perfect(r):
    return 2 * np.exp(-1j * r) * (1 / r - 1j / r**2 - 1 / r**3)


def norton(n2, r):
    w = -0.5j * r * (n2 - 1) / n2**2
    return 1 - 1j * np.sqrt(np.pi) * np.sqrt(w) * wofz(-np.sqrt(w))


if __name__ == "__main__":
    for name, permittivity, conductivity in (("sea", 70, 5), ("good land", 40, 0.03), ("poor land", 22, 0.003)):
        for f in (1.9e6, 3.6e6, 7.1e6):
            n2 = permittivity - 1j * conductivity / (2 * np.pi * f * EPS0)
            for metres in (200, 1000):
                r = 2 * np.pi * f / C * metres
                print(name, f / 1e6, metres, "exact %.6f at %.3f deg" % (abs(field(n2, r) / perfect(r)), np.degrees(np.angle(field(n2, r) / perfect(r)))), "Norton %.6f" % abs(norton(n2, r)), flush=True)
