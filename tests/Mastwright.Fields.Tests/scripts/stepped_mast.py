# A mast of tubes over perfect ground as the body of revolution it is: rings of current on every wall, on the flat ring of
# each step and on the cap at the top. Mixed-potential equation, pulses between strip middles, ring kernels by elliptic integrals.
# Nothing of it is shared with the project: another basis, another testing, other kernels, and the step's own surface is there.
# Run with numpy and scipy; prints the feed impedance at 3.6 MHz, the first resonance and the resistance there at two finenesses.
import numpy as np
from scipy.special import ellipe, ellipkm1

ETA, C = 376.730313412, 299792458.0
XG, WG = np.polynomial.legendre.leggauss(8)
T = 0.5 * (XG + 1)
NODES, WEIGHTS = T**3, 3 * T * T * 0.5 * WG          # for a logarithm at 0
HALF = np.sin(np.pi * (np.arange(12) + 0.5) / 24) ** 2
COS = np.cos(np.pi * (np.arange(12) + 0.5) / 12)


def rings(k, r, z, r2, z2):
    """Mean over azimuth of exp(-jkR)/R, plain and weighted by cos(phi)."""
    s2 = (r + r2) ** 2 + (z - z2) ** 2
    d2 = (r - r2) ** 2 + (z - z2) ** 2
    m, s = 4 * r * r2 / s2, np.sqrt(s2)
    K, E = ellipkm1(d2 / s2), ellipe(m)
    g0 = 2 / np.pi * K / s
    with np.errstate(all="ignore"):
        g1 = np.where(m < 1e-4, m / (8 * s), 4 / (np.pi * m * s) * ((1 - m / 2) * K - E))
    R = np.sqrt(d2[..., None] + 4 * (r * r2)[..., None] * HALF)
    rest = (np.exp(-1j * k * R) - 1) / R
    return g0 + rest.mean(-1), g1 + (rest * COS).mean(-1)


def strips(outline, longest, smallest):
    """Nodes along the outline, finer by a constant ratio towards every corner and the feed."""
    points = [np.array(outline[0], float)]
    for a, b in zip(outline, outline[1:]):
        a, b = np.array(a, float), np.array(b, float)
        length, x, left = np.hypot(*(b - a)), 0.0, [0.0]
        first = min(smallest, length / 4)
        while x < length / 2:
            x += min(longest, first + 0.5 * x)
            left.append(x)
        left = np.array(left) * (length / 2) / left[-1]
        both = np.concatenate([left, (length - left[:-1])[::-1]])
        points += [a + (b - a) * t / length for t in both[1:]]
    return np.array(points)


def impedance(outline, f, longest, smallest):
    k = 2 * np.pi * f / C
    p = strips(outline, longest, smallest)
    n = len(p) - 1
    mid = 0.5 * (p[1:] + p[:-1])
    ends = np.empty((2 * n + 1, 2)); ends[0::2] = p; ends[1::2] = mid
    start, vec = ends[:-1], ends[1:] - ends[:-1]      # half strips
    length = np.hypot(*vec.T); tangent = vec / length[:, None]

    def integrate(at, split):
        """Over every half strip as seen from the points; split: the index of the half strip a point lies in the middle of, else none."""
        total = [np.zeros((len(at), 2 * n), complex) for _ in range(4)]
        for i in range(len(at)):
            w = np.hypot(*(start + 0.5 * vec - at[i]).T)
            whole = [(start, vec)]
            for piece in range(2):
                # Both halves of each half strip, graded towards the end nearer to the point.
                a = start + 0.5 * piece * vec; v = 0.5 * vec
                flip = np.hypot(*(a + v - at[i]).T) < np.hypot(*(a - at[i]).T)
                a = np.where(flip[:, None], a + v, a); v = np.where(flip[:, None], -v, v)
                q = a[:, None, :] + NODES[None, :, None] * v[:, None, :]
                weight = WEIGHTS * np.hypot(*v.T)[:, None]
                for image in (0, 1):
                    g0, g1 = rings(k, np.full(q.shape[:2], at[i, 0]), np.full(q.shape[:2], at[i, 1]), q[..., 0], -q[..., 1] if image else q[..., 1])
                    total[2 * image][i] += (weight * g0).sum(1); total[2 * image + 1][i] += (weight * g1).sum(1)
        return total

    m0, m1, i0, i1 = integrate(start + 0.5 * vec, True)
    tz, tr = tangent[:, 1], tangent[:, 0]
    A = (tz[:, None] * tz) * (m0 + i0) + (tr[:, None] * tr) * (m1 - i1)
    p0, _, q0, _ = integrate(mid, False)
    phi = (p0 - q0)[:, 0::2] + (p0 - q0)[:, 1::2]     # potential at strip middles of a unit line charge on each strip
    owner = np.array([(h + 1) // 2 for h in range(2 * n)])    # the node whose pulse covers a half strip
    use = owner < n
    S = np.zeros((2 * n, n)); S[np.arange(2 * n)[use], owner[use]] = 1
    L = S.T * length
    Q = np.zeros((n, n))                              # I(node) to dI/dl on strips
    whole = length[0::2] + length[1::2]
    for s in range(n):
        Q[s, s] -= 1 / whole[s]
        if s + 1 < n: Q[s, s + 1] += 1 / whole[s]
    D = np.zeros((n, n))                              # strip middles to difference across a node's path
    for i in range(n):
        D[i, i] += 1
        if i > 0: D[i, i - 1] -= 1
    Z = 1j * k * ETA / (4 * np.pi) * (L @ A @ S) - ETA / (4j * np.pi * k) * (D @ phi @ Q)
    v = np.zeros(n, complex); v[0] = 1
    return 1 / np.linalg.solve(Z, v)[0], n


# Every mast is fed through a lead of 6 mm radius and 0.3 m length, as a mast on its insulator is: on a thin lead the gap of no width matters little.
def tubes(*runs):
    points, z = [(0.006, 0), (0.006, 0.3)], 0.3
    for low, high, length in runs:
        points += [(low, z)] if points[-1] != (low, z) else []
        z += length
        points += [(high, z)]
    return points + [(0, z)]


CASES = {
    "plain 25 mm": tubes((0.025, 0.025, 12)),
    "step 38 to 12.7 mm": tubes((0.038, 0.038, 6), (0.0127, 0.0127, 6)),
    "step 12.7 to 38 mm": tubes((0.0127, 0.0127, 6), (0.038, 0.038, 6)),
    "three tubes 60, 30, 10 mm": tubes((0.06, 0.06, 4), (0.03, 0.03, 4), (0.01, 0.01, 4)),
    "taper 60 to 20 mm": tubes((0.06, 0.02, 12)),
    "step 150 to 20 mm": tubes((0.15, 0.15, 6), (0.02, 0.02, 6)),
}

def resonance(outline, fineness):
    """Lowest frequency without reactance and the resistance there."""
    low, high = 4e6, 8e6
    x = {f: impedance(outline, f, *fineness)[0].imag for f in (low, high)}
    for _ in range(6):
        f = low - x[low] * (high - low) / (x[high] - x[low])
        z = impedance(outline, f, *fineness)[0]
        x[f] = z.imag
        if abs(z.imag) < 1e-3: break
        low, high = (f, high) if z.imag < 0 else (low, f)
    return f, z.real


if __name__ == "__main__":
    for name, outline in CASES.items():
        for fineness in ((0.5, 0.01), (0.25, 0.005)):
            f, r = resonance(outline, fineness)
            print(name, fineness, "3.6 MHz %.3f%+.3fj" % (lambda z: (z.real, z.imag))(impedance(outline, 3.6e6, *fineness)[0]), "resonance %.4f MHz %.3f ohm" % (f / 1e6, r), flush=True)
