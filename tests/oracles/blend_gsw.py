"""Two waters mixed, up to 10 degrees apart: salt and heat against the mass and the enthalpy of gsw.

Heat twice. With the heat capacities of gsw the same balance gives the same temperature but for the
0.13 % between the two equations of heat capacity: 0.004 degrees. With its enthalpy the heat of mixing
counts too, which the core leaves out: 0.012 degrees in the water of a tank, 20 to 30 degrees and 0 to
36 g/kg, and 0.05 in cold brine: by gsw half water of 42 g/kg and half fresh at 0 degrees are 0.0485
cooler. Salt differs by what the two equations of density do: 0.009 kg/m3 each
way, some 2e-5 of a quarter of 42."""

from support.compare import Comparison, core, finish, need

gsw = need("gsw")


def mixed(share, temps, salinities):
    """Temperature by heat capacities, temperature by enthalpy, salinity."""
    absolute = [s * 35.16504 / 35 for s in salinities]
    density = [gsw.rho_t_exact(a, t, 0) for a, t in zip(absolute, temps)]
    mass = [(1 - share) * density[0], share * density[1]]
    capacity = [m * gsw.cp_t_exact(a, t, 0) for m, a, t in zip(mass, absolute, temps)]
    heat = [m * gsw.enthalpy_t_exact(a, t, 0) for m, a, t in zip(mass, absolute, temps)]
    salt = sum(m * a for m, a in zip(mass, absolute)) / sum(mass)
    balance = sum(c * t for c, t in zip(capacity, temps)) / sum(capacity)
    mixture = balance
    for _ in range(5):  # steps of Newton; what gsw has for this gives up in warm water of low salinity
        missing = sum(heat) / sum(mass) - gsw.enthalpy_t_exact(salt, mixture, 0)
        mixture += missing / gsw.cp_t_exact(salt, mixture, 0)
    return float(balance), float(mixture), float(salt * 35 / 35.16504)


capacities = Comparison("blend, temperature by heat capacities", 0.004)
tank = Comparison("blend, temperature by enthalpy, in a tank", 0.012)
cold = Comparison("blend, temperature by enthalpy, elsewhere", 0.05)
salt = Comparison("blend, salinity", 2e-4)

for _, (share, t, s, new_t, new_s, temp, salinity) in core("blend", 6000):
    where = (share, t, s, new_t, new_s)
    balance, enthalpy, want_salinity = mixed(share, (t, new_t), (s, new_s))
    usual = all(20 <= x <= 30 for x in (t, new_t)) and max(s, new_s) <= 36
    capacities.add(temp, balance, where)
    (tank if usual else cold).add(temp, enthalpy, where)
    salt.add(salinity, want_salinity, where)

finish([capacities, tank, cold, salt])
