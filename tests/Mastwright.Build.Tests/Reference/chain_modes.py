"""Natural frequencies of a hanging cable, independently: a chain of point masses on linear springs, equilibrium by
root finding of the nodal forces, full 3-D tangent stiffness, generalised eigenproblem."""
import json, sys
import numpy as np
from scipy.linalg import eigh

p = json.load(sys.stdin)
l, h, L0, w, EA, n = p["l"], p["h"], p["L0"], p["w"], p["EA"], p["n"]
masses = p["masses"]
g = 9.80665
s0 = L0 / n
m = np.full(n - 1, w / g * s0)
for fraction, mass in masses:
    m[round(fraction * n) - 1] += mass
a, b = np.zeros(3), np.array([l, 0.0, h])
k = EA / s0


def nodes(x):
    return np.vstack([a, x.reshape(-1, 3), b])


def residual(x):
    r = nodes(x)
    d = np.diff(r, axis=0)
    length = np.linalg.norm(d, axis=1)
    t = k * (length - s0)
    f = (t / length)[:, None] * d
    out = f[1:] - f[:-1]
    out[:, 2] -= m * g
    return out.ravel()


def stiffness(x):
    r = nodes(x)
    d = np.diff(r, axis=0)
    length = np.linalg.norm(d, axis=1)
    K = np.zeros((3 * (n - 1), 3 * (n - 1)))
    for e in range(n):
        u = d[e] / length[e]
        t = k * (length[e] - s0)
        ke = k * np.outer(u, u) + t / length[e] * (np.eye(3) - np.outer(u, u))
        for i, si in ((e - 1, 1), (e, -1)):
            for j, sj in ((e - 1, 1), (e, -1)):
                if 0 <= i < n - 1 and 0 <= j < n - 1:
                    K[3 * i:3 * i + 3, 3 * j:3 * j + 3] += si * sj * ke
    return K


x = np.array(p["start"]).ravel()
for _ in range(12):  # Newton
    x = x + np.linalg.solve(stiffness(x), residual(x))
assert np.max(np.abs(residual(x))) < 1e-6, np.max(np.abs(residual(x)))
r = nodes(x)
first = np.linalg.norm(r[1] - r[0])
last = np.linalg.norm(r[-1] - r[-2])
K = stiffness(x)
M = np.diag(np.repeat(m, 3))
side = np.arange(1, 3 * (n - 1), 3)
plane = np.setdiff1d(np.arange(3 * (n - 1)), side)
fs = np.sqrt(eigh(K[np.ix_(side, side)], M[np.ix_(side, side)], eigvals_only=True)[:3]) / (2 * np.pi)
fp = np.sqrt(eigh(K[np.ix_(plane, plane)], M[np.ix_(plane, plane)], eigvals_only=True)[:3]) / (2 * np.pi)
json.dump({"side": fs.tolist(), "plane": fp.tolist(), "tensionFirst": k * (first - s0), "tensionLast": k * (last - s0)}, sys.stdout)
