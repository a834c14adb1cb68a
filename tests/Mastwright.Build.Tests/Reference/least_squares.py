"""Least squares in SciPy: curve_fit for plain fits with covariance, least_squares for the soft loss and for bounds."""
import json, sys
import numpy as np
from scipy.optimize import curve_fit, least_squares

q = json.load(sys.stdin)
x = np.array(q["x"])
y = np.array(q["y"])


def decay(x, a, b, c):
    return a * np.exp(-b * x) + c


def antenna(x, loss, stray, height):
    """Series loss, a line-like radiator and a capacitance across it; x in MHz; real parts, then imaginary parts."""
    f = x * 1e6
    kh = 2 * np.pi * f * height / 299792458.0
    z = loss + 36 * kh ** 2 / 2.467 - 1j * 300 / np.tan(kh)
    z = 1 / (1 / z + 2j * np.pi * f * stray * 1e-12)
    return np.concatenate([z.real, z.imag])


model = {"decay": decay, "antenna": antenna}[q["model"]]
if q["how"] == "plain":
    p, cov = curve_fit(model, x, y, p0=q["start"], method="lm", ftol=1e-14, xtol=1e-14, gtol=1e-14, maxfev=20000)
    json.dump({"p": p.tolist(), "cov": cov.tolist()}, sys.stdout)
else:
    kw = {"loss": "soft_l1", "f_scale": q["scale"]} if q["how"] == "soft" else {"bounds": (q["lower"], q["upper"])}
    r = least_squares(lambda p: model(x, *p) - y, q["start"], x_scale="jac", ftol=1e-15, xtol=1e-15, gtol=1e-15, max_nfev=5000, **kw)
    json.dump({"p": r.x.tolist(), "cost": r.cost}, sys.stdout)
