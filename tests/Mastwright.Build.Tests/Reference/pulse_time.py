"""Travel time of a transverse pulse on a hanging elastic cable: the shape from a boundary value problem, the time by
integrating ds/c along the stretched shape."""
import json, sys
import numpy as np
from scipy.integrate import quad, solve_bvp

p = json.load(sys.stdin)
l, h, L0, w, EA = p["l"], p["h"], p["L0"], p["w"], p["EA"]


def rhs(s, y):  # y = x, z, H, V along the unstretched arc
    t = np.hypot(y[2], y[3])
    e = 1 + t / EA
    return np.vstack([e * y[2] / t, e * y[3] / t, np.zeros_like(s), np.full_like(s, w)])


def bc(a, b):
    return np.array([a[0], a[1], b[0] - l, b[1] - h])


s = np.linspace(0, L0, 200)
T = p["guess"]
c = np.hypot(l, h)
sol = solve_bvp(rhs, bc, s, np.vstack([s / L0 * l, s / L0 * h, np.full_like(s, T * l / c), T * h / c + w * (s - L0 / 2)]), tol=1e-10, max_nodes=20000)
assert sol.success, sol.message


def slowness(s):
    y = sol.sol(s)
    t = np.hypot(y[2], y[3])
    e = 1 + t / EA
    mass = w / 9.80665 / e          # by stretched length
    return e / np.sqrt(t / mass)    # d(stretched)/c


json.dump({"return": 2 * quad(slowness, 0, L0, epsabs=1e-13, epsrel=1e-11, limit=200)[0],
           "anchor": float(np.hypot(*sol.sol(0)[2:])), "mast": float(np.hypot(*sol.sol(L0)[2:]))}, sys.stdout)
