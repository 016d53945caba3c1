#!/usr/bin/python3
"""The estimator of docs/methods/hold.md with numpy and scipy, on the record of bench/hold_bench.cc.

Two passes, 60 rows of pump-up, 120 averages of the hold, the same grid of cells. Densities come
from a spline over a table, made before the clock starts; linear algebra is LAPACK's.
"""
import math
import time

import numpy as np
from iapws.iapws97 import _Region1
from scipy.interpolate import RectBivariateSpline
from scipy.linalg import cho_factor, cho_solve
from scipy.optimize import brentq
from scipy.stats import norm

PATM, V, C, STEEL = 101325.0, 8.0, 1e-10, 11.5e-6
RES_P, SD_P, RES_T, SD_T, WEIGHT, WEIGHT_SD = 1e3, 1e3, 0.01, 0.02, 0.0, 0.1
_p = np.linspace(0.02, 12, 40) * 1e6
_t = np.linspace(283, 313, 40)
_v = RectBivariateSpline(_p, _t, np.array([[_Region1(t, p / 1e6)["v"] * 1e3 for t in _t] for p in _p]), kx=5, ky=5)


def density(p, t):
    return 1e3 / _v.ev(p, t)


def coefficients(p, t):
    v = _v.ev(p, t)
    return _v.ev(p, t, dy=1) / v, -_v.ev(p, t, dx=1) / v


def mass(p, tw, ts):
    return V * (1 + 3 * STEEL * (ts - 293.15) + C * (p - PATM)) * density(p, tw)


def record(rows):
    s = np.arange(rows, dtype=float)
    share, held = np.minimum(s / 600, 1), np.maximum(s - 600, 0)
    wave = ((np.arange(rows) * 7919) % 101) / 101 - 0.5
    ideal = PATM + 45e5 * share
    same = np.full(rows, 298.15)
    pumped = (mass(ideal, same, same) - mass(np.array([PATM]), same[:1], same[:1])) / 997
    return (s, ideal - 3 * held + 2e3 * wave, 298.15 - 1e-6 * held + 0.01 * wave,
            298.25 - 2e-6 * held - 0.01 * wave, pumped + 3e-3 * (1 - 1 / (1 + 45 * share)))


def ou(t, tau):
    return np.exp(-np.abs(t[:, None] - t[None, :]) / tau)


def pump_fit(t, p, tw, pumped, q_prior):
    k = np.linspace(0, len(t) - 1, 60).astype(int)
    t, p, tw, pumped = t[k], p[k].copy(), tw[k], pumped[k] - pumped[0]
    p[0] = PATM
    tw = np.polyval(np.polyfit(t, tw, 2), t)
    f1 = (mass(p, tw, tw) - mass(p[:1], tw[:1], tw[:1])) / 997
    f2 = 1 - PATM / p
    g = np.sqrt(np.clip(p - PATM, 0, None) / np.ptp(p))
    f3 = np.concatenate([[0], np.cumsum(0.5 * (g[1:] + g[:-1]) * np.diff(t))])
    alpha, kappa = coefficients(p, tw)
    slope, theta = V * (kappa + C), V * alpha.mean()
    x, y, since = np.c_[f1, f2, f3][1:], pumped[1:], (t - t[0])[1:]
    prior, weight = np.array([1, 0, q_prior[0]]), np.diag([1 / .04 ** 2, 0, 1 / q_prior[1] ** 2])
    c = np.array([1, .0005 * V, q_prior[0]])
    for _ in range(8):
        w = np.minimum(c[0] * slope + max(c[1], 0) * PATM / p ** 2, 30 * slope.mean() + max(c[1], 0) / 3e5)[1:]
        cov = np.diag(w ** 2 * (SD_P ** 2 + RES_P ** 2 / 12) + 4e-10)
        cov += np.minimum.outer(since, since) * (theta * .02) ** 2 / 1800 + np.outer(since, since) * (theta * .25 / 3600) ** 2
        cov += (theta * RES_T) ** 2 / 12 * ou(since, 1800)
        for k_, tau in ((.08, 900), (.06, 150)):
            e = 1 - np.exp(-since / tau)
            cov += (theta * k_) ** 2 * np.outer(e, e)
        u = f1[1:] / f1.max()
        cov += np.outer(.006 * f1.max() * u * (1 - u), .006 * f1.max() * u * (1 - u))
        cf = cho_factor(cov)
        a = x.T @ cho_solve(cf, x) + weight
        c = np.linalg.solve(a, x.T @ cho_solve(cf, y) + weight @ prior)
    return c, np.linalg.inv(a)


def hold_fit(t, p, tw, tm, scale, air, onsets):
    edges = np.linspace(t[0], t[-1] + 1e-9, 121)
    k = np.clip(np.searchsorted(edges, t, "right") - 1, 0, 119)
    n = np.bincount(k, minlength=120).astype(float)
    t, p, tw, tm = (np.bincount(k, y, minlength=120) / n for y in (t, p, tw, tm))
    t = t - t[0]
    ts = tw + .3 * (tm - tw)
    alpha, kappa = (float(a[0]) for a in coefficients(p.mean()[None] if np.ndim(p.mean()) else np.array([p.mean()]), np.array([tw.mean()])))
    rho = float(density(np.array([p.mean()]), np.array([tw.mean()]))[0])
    m = mass(p, tw, ts)
    lost = (scale * (m[0] - m) / rho + air * PATM * (1 / p - 1 / p[0])) * 1e6
    stiff = (scale * V * (kappa + C) + air * PATM / p.mean() ** 2) * 1e6
    theta, steel = scale * V * alpha * 1e6, scale * V * 3 * STEEL * 1e6
    both, apart = math.hypot(theta, steel), (tm - tw) - (tm[0] - tw[0])
    fixed = np.diag(stiff ** 2 * (SD_P ** 2 + RES_P ** 2 / 12) / n + theta ** 2 * (SD_T ** 2 + RES_T ** 2 / 12) / n + 1e-3)
    fixed += (theta * WEIGHT_SD) ** 2 * np.outer(apart, apart)
    drift = math.hypot(.10, .30 * abs(np.polyfit(t / 3600, apart, 1)[0])) / 3600
    unseen = (both * drift) ** 2 * np.outer(t, t)
    for tau in (900, 2700):
        e = np.exp(-t / tau) - 1
        unseen += (both * .05) ** 2 * np.outer(e, e)
    wander = theta * math.hypot(.01, .1 * np.ptp(np.convolve(apart, np.ones(5) / 5, "valid")))
    y = lost + WEIGHT * theta * apart
    root = np.sqrt(np.clip(p - PATM, 0, None) / (p[0] - PATM))
    one, cells = np.ones(120), []
    for tau, pt in ((1800, .3), (7200, .4), (28800, .3)):
        moving = unseen + wander ** 2 * ou(t, tau)
        for f, pf in ((.35, .25), (.7, .35), (1.4, .25), (2.8, .15)):
            cf = cho_factor(fixed + f * f * moving, lower=True)
            log_det = 2 * np.log(np.diag(cf[0])).sum()
            s1, sy = cho_solve(cf, one), cho_solve(cf, y)
            a = one @ s1
            yy = y @ sy - (one @ sy) ** 2 / a
            for drive, pd in ((root, .65), (root ** 2, .35)):
                for j in range(10 if onsets else 1):
                    inside = t[1:] > .1 * j * t[-1]
                    x = np.concatenate([[0], np.cumsum(.5 * (drive[1:] + drive[:-1]) * np.diff(t) * inside)]) / 60
                    x = x / (x[-1] / (t[-1] * (1 - .1 * j) / 60))
                    sx = cho_solve(cf, x)
                    xx = x @ sx - (one @ sx) ** 2 / a
                    xy = x @ sy - (one @ sx) * (one @ sy) / a
                    weight = pf * pt * pd * (1 if not onsets else .7 if j == 0 else .3 / 9)
                    cells.append((math.log(weight) - .5 * (log_det + math.log(a) + yy), xy / xx, 1 / xx, 1 - .1 * j))
    level, q, var, share = np.array(cells).T
    flat = level + q ** 2 / var / 2 + .5 * np.log(var)
    w = np.exp(flat - flat.max())
    w /= w.sum()
    mean = w @ (q * share)
    sd = math.sqrt(w @ (var * share ** 2 + (q * share) ** 2) - mean ** 2)
    below = lambda z: w @ norm.cdf((z - q * share) / (np.sqrt(var) * share))
    low, high = (brentq(lambda z: below(z) - v, mean - 40 * sd, mean + 40 * sd) for v in (.05, .95))
    return mean, sd, low, high


def analyse(s, p, tw, tm, pumped):
    up, held = s <= 601, s >= 660
    prior = (0.0, 2e-5)
    for second in (False, True):
        c, _ = pump_fit(s[up], p[up], tw[up], pumped[up], prior)
        mean, sd, low, high = hold_fit(s[held], p[held], tw[held], tm[held], c[0], max(c[1], 0), second)
        prior = (.9 * max(mean, 0) * 1e-6 / 60, 1.3 * max(sd, 1, .15 * abs(mean)) * 1e-6 / 60)
    return c[1] * 1e3, mean, low, high


for rows in (3600, 86400):
    data = record(rows)
    times = []
    for _ in range(5):
        start = time.perf_counter()
        answer = analyse(*data)
        times.append(time.perf_counter() - start)
    print("numpy and scipy, %d readings: %.0f ms (best of 5); air %.2f L, loss %.1f [%.1f, %.1f] mL/min" % (
        rows, min(times) * 1e3, *answer))
