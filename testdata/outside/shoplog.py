#!/usr/bin/python3
"""What a log of test cuts tells of a machine, by scipy.stats and numpy alone.

Reads one JSON object a line: {"off": lengths, "sigma", "known", "centered"}. Prints for
each [mean of the bias, mean of the variance, and the 5, 50, 95 and 99.865 % points of the
next cut].

Without what is known of measuring it is the closed form of the conjugate model (Gelman
and others, Bayesian Data Analysis, 3.3), a Student's t of scipy.stats. With it, the
variance is drawn from its prior, scaled inverse chi-square, and each draw weighed by how
likely it makes the readings.
"""
import json
import sys

import numpy
from scipy import stats

NU, KAPPA = 6, 1  # how many cuts the prior counts as: for the spread, and for the bias


def closed(off, sigma, centered):
    n, mean = len(off), 0 if centered else off.mean()
    nu, squares = NU + n, NU * sigma**2 + ((off - mean) ** 2).sum()
    if centered:
        scale2, bias, wide = squares / nu, 0, 1
    else:
        kappa = KAPPA + n
        scale2 = (squares + KAPPA * n / kappa * mean**2) / nu
        bias, wide = n * mean / kappa, 1 + 1 / kappa
    t = stats.t(nu, bias, numpy.sqrt(scale2 * wide))
    return [bias, scale2 * nu / (nu - 2)] + list(t.ppf([0.05, 0.5, 0.95, 0.99865]))


def weighed(off, sigma, known, centered):
    n, mean = len(off), off.mean()
    # points of the prior, each as likely: its own quantiles
    points = (numpy.arange(20_000) + 0.5) / 20_000
    variance = NU * sigma**2 / stats.chi2(NU).ppf(points)
    read = variance + known**2
    if centered:
        log = stats.norm.logpdf(off[:, None], 0, numpy.sqrt(read)).sum(axis=0)
        bias, wide = numpy.zeros_like(variance), variance
    else:
        prior = variance / KAPPA
        # all readings at once: their joint density is that of their mean and of what they differ by
        log = (stats.norm.logpdf(mean, 0, numpy.sqrt(prior + read / n))
               + stats.chi2(n - 1).logpdf(((off - mean) ** 2).sum() / read) - numpy.log(read))
        bias = mean * prior / (prior + read / n)
        wide = variance + prior * read / n / (prior + read / n)
    weight = numpy.exp(log - log.max())
    weight /= weight.sum()
    out = [(weight * bias).sum(), (weight * variance).sum()]
    for p in [0.05, 0.5, 0.95, 0.99865]:
        low, high = -20 * sigma - abs(mean) * 3, 20 * sigma + abs(mean) * 3
        for _ in range(40):
            middle = (low + high) / 2
            below = (weight * stats.norm.cdf(middle, bias, numpy.sqrt(wide))).sum()
            low, high = (middle, high) if below < p else (low, middle)
        out.append((low + high) / 2)
    return out


for line in sys.stdin:
    case = json.loads(line)
    off = numpy.array(case["off"])
    if case["known"]:
        print(json.dumps(weighed(off, case["sigma"], case["known"], case["centered"])))
    else:
        print(json.dumps(closed(off, case["sigma"], case["centered"])))
