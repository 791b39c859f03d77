"""Water changes against 40 digits of mpmath."""

from support.compare import Comparison, core, finish, need

mpmath = need("mpmath")
mpmath.mp.dps = 40
mpf = mpmath.mpf


def kept(method, exchanged):
    return 1 - exchanged if method == "batch" else mpmath.exp(-exchanged)


level_off = Comparison("level, of the larger level", 1e-14)
needed_off = Comparison("fresh water needed, ends at keep", 1e-14)
at_once_off = Comparison("exchange needed, ends at goal", 1e-13)
for method, (exchanged, rounds, now, fresh, level, needed, at_once) in core("change", 20000):
    where = (method, exchanged, rounds, now, fresh)
    scale = max(mpf(now), mpf(fresh), mpf("1e-300"))
    share = kept(method, mpf(exchanged))
    true = fresh + (mpf(now) - fresh) * share ** int(rounds)
    level_off.add(level / scale, true / scale, where)
    # As a mass balance: what stayed and what came in make the level asked for.
    scale = max(scale, abs(mpf(needed)) * (1 - share))
    needed_off.add((mpf(now) * share + mpf(needed) * (1 - share)) / scale, level / scale, where)
    if at_once == at_once:
        reached = fresh + (mpf(now) - fresh) * kept(method, mpf(at_once))
        at_once_off.add(reached / scale, level / scale, where)
finish([level_off, needed_off, at_once_off])
