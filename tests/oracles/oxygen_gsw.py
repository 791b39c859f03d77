"""Oxygen saturation at one atmosphere against Garcia & Gordon 1992, by the package gsw.

Two fits to the same measurements by Benson & Krause; the notes of our reference say that they agree
within 0.03 %, so 0.035 % is allowed. The package gives umol per kg of water: its own density makes
that mg/L."""

from support.compare import Comparison, core, finish, need

gsw = need("gsw")

fitted = Comparison("oxygen, salinity 0 to 40", 0.00035, relative=True)

for _, (s, t, got) in core("oxygen", 20000):
    if s > 40:
        continue  # outside the fit
    reference_salinity = s * 35.16504 / 35
    density = float(gsw.rho_t_exact(reference_salinity, t, 0))
    want = float(gsw.O2sol_SP_pt(s, t)) * 31.9988e-6 * density
    fitted.add(got, want, (s, t))

finish([fitted])
