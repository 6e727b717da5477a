"""Prints the values that the tests of the rates compare with. scipy 1.10.1 was used."""

import numpy as np
from scipy import optimize, stats

for n in (0, 1, 7, 100):
    low = stats.chi2.ppf(0.025, 2 * n) / 2 if n else 0.0
    print("garwood", n, low, stats.chi2.ppf(0.975, 2 * n + 2) / 2)

# Fay and Feuer as gamma distributions, in another form than the programme's chi-squared.
w = np.array([5.0, 12, 30, 8, 8, 21, 3])
y, v, m = w.sum(), (w**2).sum(), w.max()
print(
    "fay-feuer",
    stats.gamma.ppf(0.025, y**2 / v, scale=v / y),
    stats.gamma.ppf(0.975, (y + m) ** 2 / (v + m**2), scale=(v + m**2) / (y + m)),
)

for k, n in ((0, 10), (3, 10), (10, 10), (45, 60)):
    r = stats.binomtest(k, n).proportion_ci(0.95, "exact")
    print("clopper-pearson", k, n, r.low, r.high)

# Edge rates: 120 scars, lognormal rate, median 0.08 m a year, looked at after 1 and 2.5 years.
# Written by hand as a formula, so that the test can make the same ones.
distance, opened, closed = [], [], []
for i in range(120):
    d = 0.05 + 0.25 * ((i * 37) % 120) / 120
    z = stats.norm.ppf((((i * 53) % 120) + 0.5) / 120)
    e = 0.08 * np.exp(0.6 * z)
    t = d / e
    looks = (1.0,) if i % 3 == 0 else (1.0, 2.5)
    s = max([0.0] + [x for x in looks if x < t])
    c = min([np.inf] + [x for x in looks if x >= t])
    distance.append(d)
    opened.append(s)
    closed.append(c)
d, s, c = map(np.array, (distance, opened, closed))
with np.errstate(divide="ignore"):
    lo, hi = np.log(d / c), np.log(d / s)


def loss(p):
    mu, sigma = p[0], np.exp(p[1])
    zl, zh = (mu - lo) / sigma, (mu - hi) / sigma
    return -np.log(stats.norm.cdf(zl) - stats.norm.cdf(zh)).sum()


fit = optimize.minimize(loss, [np.log(0.1), 0.0], method="Nelder-Mead", options={"xatol": 1e-10, "fatol": 1e-12, "maxiter": 9999})
mu, sigma = fit.x[0], np.exp(fit.x[1])
print("fit", np.exp(mu), sigma, -fit.fun, "closed", int(np.isfinite(c).sum()))


def profile(median):
    one = optimize.minimize_scalar(lambda q: loss((median, q)), bounds=(-4, 4), method="bounded", options={"xatol": 1e-12})
    return 2 * (one.fun - fit.fun) - stats.chi2.ppf(0.95, 1)


print("limits", np.exp(optimize.brentq(profile, mu - 1, mu)), np.exp(optimize.brentq(profile, mu, mu + 1)))
