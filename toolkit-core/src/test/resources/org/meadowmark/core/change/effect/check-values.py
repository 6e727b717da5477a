"""Prints the values that the tests of the marker effect compare with. scipy 1.10.1 was used."""

from itertools import combinations

import numpy as np
from scipy import stats

marked = [-4.0, -6.5, -1.0, -5.2]
control = [0.5, -1.2, 2.2, 0.1, -0.7, 1.4]
t = stats.ttest_ind(marked, control, equal_var=False)
m, c = np.var(marked, ddof=1) / 4, np.var(control, ddof=1) / 6
df = (m + c) ** 2 / (m**2 / 3 + c**2 / 5)
half = stats.t.ppf(0.975, df) * np.sqrt(m + c)
d = np.mean(marked) - np.mean(control)
print("welch", d, t.statistic, df, t.pvalue, d - half, d + half)

# Ratio of ratios: metres before and after, exposure times years 1 everywhere.
before = np.array([40.0, 60, 30, 50, 45, 35, 55, 25, 65])
after = np.array([10.0, 20, 15, 45, 50, 30, 60, 28, 70])
n = 9


def log_ratio(is_marked):
    a, b = after[is_marked], before[is_marked]
    x, y = after[~is_marked], before[~is_marked]
    return np.log(a.sum() / b.sum()) - np.log(x.sum() / y.sum())


def statistic(is_marked):
    a, b = after[is_marked], before[is_marked]
    x, y = after[~is_marked], before[~is_marked]
    u = a / a.sum() - b / b.sum()
    v = x / x.sum() - y / y.sum()
    k, l = len(a), len(x)
    variance = k / (k - 1) * (u**2).sum() + l / (l - 1) * (v**2).sum()
    return log_ratio(is_marked) / np.sqrt(variance)


marks = np.zeros(n, bool)
marks[:3] = True
observed = abs(statistic(marks))
clear = 0
for chosen in combinations(range(n), 3):
    other = np.zeros(n, bool)
    other[list(chosen)] = True
    clear += abs(statistic(other)) >= observed - 1e-12
print("ratio", np.exp(log_ratio(marks)), "statistic", statistic(marks), "clear", clear, "of 84")


def jackknife(members):
    values = []
    for left in members:
        keep = np.arange(n) != left
        a, b = after[keep & marks].sum(), before[keep & marks].sum()
        x, y = after[keep & ~marks].sum(), before[keep & ~marks].sum()
        values.append(np.log(a / b) - np.log(x / y))
    values = np.array(values)
    k = len(values)
    return (k - 1) / k * ((values - values.mean()) ** 2).sum()


vm, vc = jackknife([0, 1, 2]), jackknife(range(3, 9))
df = (vm + vc) ** 2 / (vm**2 / 2 + vc**2 / 5)
half = stats.t.ppf(0.975, df) * np.sqrt(vm + vc)
ratio = np.exp(log_ratio(marks))
print("jackknife", vm + vc, df, ratio * np.exp(-half), ratio * np.exp(half))

# Power: chance of Student's t, noncentral, above its upper 2.5 % point.
for df, shift in ((5.5, 2.0), (12.0, 3.0), (40.0, 1.0)):
    print("power", df, shift, 1 - stats.nct.cdf(stats.t.ppf(0.975, df), df, shift))

print("binomial 200", stats.binom.ppf(0.0005, 200, 0.95), stats.binom.ppf(0.9995, 200, 0.95))
print("binomial 200 false", stats.binom.ppf(0.9995, 200, 0.05))
before_seasons, after_seasons = [3.0, 5.0, 4.0], [-1.0, 0.5, -2.0]
t = stats.ttest_ind(after_seasons, before_seasons, equal_var=False)
print("seasons", np.mean(after_seasons) - np.mean(before_seasons), t.pvalue)
