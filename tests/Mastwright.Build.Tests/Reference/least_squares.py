"""Fits in SciPy: curve_fit for plain least squares with covariance, a direct search for the soft loss."""
import json, sys
import numpy as np
from scipy.optimize import curve_fit, minimize

q = json.load(sys.stdin)
x = np.array(q["x"])
y = np.array(q["y"])


def antenna(x, loss, stray, height):
    """Series loss, a line-like radiator and a capacitance across it; x in MHz; real parts, then imaginary parts."""
    f = x * 1e6
    kh = 2 * np.pi * f * height / 299792458.0
    z = loss + 36 * kh ** 2 / 2.467 - 1j * 300 / np.tan(kh)
    z = 1 / (1 / z + 2j * np.pi * f * stray * 1e-12)
    return np.concatenate([z.real, z.imag])


if q["how"] == "plain":
    p, cov = curve_fit(antenna, x, y, p0=q["start"], method="lm", ftol=1e-14, xtol=1e-14, gtol=1e-14, maxfev=20000)
    json.dump({"p": p.tolist(), "cov": cov.tolist()}, sys.stdout)
else:
    # The soft loss of each complex difference, minimised without any least squares method.
    c = q["scale"]
    size = np.array(q["start"])
    half = len(y) // 2

    def cost(u):
        d = antenna(x, *(u * size)) - y
        return np.sum(2 * c * c * (np.sqrt(1 + (d[:half] ** 2 + d[half:] ** 2) / c ** 2) - 1))

    u = np.ones(3)
    for _ in range(4):
        u = minimize(cost, u, method="Nelder-Mead", options={"xatol": 1e-11, "fatol": 1e-13, "maxiter": 20000, "maxfev": 20000}).x
    json.dump({"p": (u * size).tolist(), "cost": cost(u)}, sys.stdout)
