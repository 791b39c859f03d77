"""Two waters mixed: salt and heat against the mass and the enthalpy of gsw.

The core mixes with one heat capacity for both waters. That is up to 0.125 degrees off when fresh water
meets sea water 10 degrees apart, and right where the salinities are alike: there 0.012 is allowed. Salt
differs by what the two equations of density do: 0.009 kg/m3 each way, some 2e-5 of a quarter of 42."""

from support.compare import Comparison, core, finish, need

gsw = need("gsw")


def mixed(share, t, s, new_t, new_s):
    absolute = [s * 35.16504 / 35, new_s * 35.16504 / 35]
    mass = [(1 - share) * gsw.rho_t_exact(absolute[0], t, 0),
            share * gsw.rho_t_exact(absolute[1], new_t, 0)]
    heat = [gsw.enthalpy_t_exact(absolute[0], t, 0), gsw.enthalpy_t_exact(absolute[1], new_t, 0)]
    whole = sum(mass)
    salt = sum(m * a for m, a in zip(mass, absolute)) / whole
    enthalpy = sum(m * h for m, h in zip(mass, heat)) / whole
    ct = gsw.CT_from_enthalpy(salt, enthalpy, 0)
    return float(gsw.t_from_CT(salt, ct, 0)), float(salt * 35 / 35.16504)


heat = Comparison("blend, temperature", 0.125)
alike = Comparison("blend, temperature, like salinities", 0.012)
salt = Comparison("blend, salinity", 2e-4)

for _, (share, t, s, new_t, new_s, temp, salinity) in core("blend", 6000):
    where = (share, t, s, new_t, new_s)
    want_temp, want_salinity = mixed(*where)
    heat.add(temp, want_temp, where)
    if abs(s - new_s) < 2:
        alike.add(temp, want_temp, where)
    salt.add(salinity, want_salinity, where)

finish([heat, alike, salt])
