"""Constants of ammonium, free shares and offsets of pH scales against 40 digits of mpmath.

Written from the equations, not from the code: every temperature and salinity is taken as the exact
number the core was given."""

from support.compare import Comparison, core, finish, need

mpmath = need("mpmath")
mpmath.mp.dps = 40
mpf, sqrt, ln, log10, exp = mpmath.mpf, mpmath.sqrt, mpmath.log, mpmath.log10, mpmath.exp


def d(text):
    return mpf(text)


def ionic(s):
    return d("19.924") * s / (1000 - d("1.005") * s)


def water_share(s):
    return 1 - d("0.001005") * s


def hso4(T, s):
    I = ionic(s)
    value = (d("-4276.1") / T + d("141.328") - d("23.093") * ln(T)
             + (d("-13856") / T + d("324.57") - d("47.986") * ln(T)) * sqrt(I)
             + (d("35474") / T - d("771.54") + d("114.723") * ln(T)) * I
             - d("2698") / T * I * sqrt(I) + d("1776") / T * I ** 2)
    return exp(value) * water_share(s)


def hf(T, s):
    return exp(d("1590.2") / T - d("12.641") + d("1.525") * sqrt(ionic(s))) * water_share(s)


def sulfate_part(T, s):
    return d("0.14") / d("96.062") * s / d("1.80655") / hso4(T, s)


def fluoride_part(T, s):
    return d("0.000067") / d("18.998") * s / d("1.80655") / hf(T, s)


def log_phi(t, T, s):
    def by_fh():
        f = d("1.2948") - d("0.002036") * T + (d("0.0004607") - d("0.000001475") * T) * s ** 2
        return log10(f * (1 + sulfate_part(T, s) + fluoride_part(T, s)))

    def by_davies():
        eps = (d("87.740") - d("0.40008") * t + d("9.398e-4") * t ** 2 - d("1.410e-6") * t ** 3)
        a = d("1.8246e6") / (eps * T) ** d("1.5")
        root = sqrt(ionic(s))
        return -a * (root / (1 + root) - d("0.3") * ionic(s))

    if s >= 9:
        return by_fh()
    if s <= 3:
        return by_davies()
    x = (s - 3) / 6
    w = x ** 2 * (3 - 2 * x)
    return w * by_fh() + (1 - w) * by_davies()


def offset(scale, t, s):
    T = t + d("273.15")
    if scale in ("meter", "nbs"):
        return -log_phi(t, T, s)
    if scale == "total":
        return -log10(1 + sulfate_part(T, s))
    if scale == "sws":
        return -log10(1 + sulfate_part(T, s) + fluoride_part(T, s))
    return mpf(0)


def equation_18(T, s):
    pk = d("9.244605") - d("2729.33") * (1 / d("298.15") - 1 / T)
    pk += (d("0.04203362") - d("11.24742") / T) * s ** d("0.25")
    pk += (d("-13.6416") + d("1.176949") * sqrt(T) - d("0.02860785") * T
           + d("545.4834") / T) * s ** d("0.5")
    pk += (d("-0.1462507") + d("0.0090226468") * sqrt(T) - d("0.0001471361") * T
           + d("10.5425") / T) * s ** d("1.5")
    pk += (d("0.004669309") - d("0.0001691742") * sqrt(T) - d("0.5677934") / T) * s ** 2
    pk += (d("-2.354039e-5") + d("0.009698623") / T) * s ** d("2.5")
    return pk


def pk_of(name, t, s):
    T = t + d("273.15")
    if name == "khoo1977-meter":
        return (d("0.09018") + d("2729.92") / T
                + (d("0.1552") - d("0.0003142") * t) * ionic(s))
    if name == "epa1989-meter":
        I = d("19.9273") * s / (1000 - d("1.005109") * s)
        return (d("9.245") + d("0.116") * I + d("0.0324") * (298 - T) + d("0.0415") / T)
    scale = name.split("-")[1]
    total = equation_18(T, s) - log10(water_share(s))
    return total + offset(scale, t, s) - offset("total", t, s)


comparisons = []
pks, fractions = {}, {}
for name, (ph, t, s, pk, fraction) in core("ammonia", 12000):
    if name not in pks:
        pks[name] = Comparison("pK " + name, 1e-13)
        fractions[name] = Comparison("fraction " + name, 1e-12, relative=True)
    want = pk_of(name, mpf(t), mpf(s))
    pks[name].add(mpf(pk), want, (t, s))
    fractions[name].add(mpf(fraction), 1 / (1 + mpmath.power(10, want - mpf(ph))), (ph, t, s))

offsets = {}
for name, (t, s, got) in core("offsets", 6000):
    offsets.setdefault(name, Comparison("offset " + name, 1e-13))
    offsets[name].add(mpf(got), offset(name, mpf(t), mpf(s)), (t, s))

finish([*pks.values(), *fractions.values(), *offsets.values()])
