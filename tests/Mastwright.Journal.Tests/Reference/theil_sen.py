"""Robust slope, its bounds and the intercept, for series of points."""
import json, sys
from scipy.stats import theilslopes

out = []
for series in json.load(sys.stdin):
    r = theilslopes(series["y"], series["x"], alpha=series["confidence"])
    out.append({"slope": r[0], "intercept": r[1], "low": r[2], "high": r[3]})
json.dump(out, sys.stdout)
