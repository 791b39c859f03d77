# salinity.awk - `salinity --of sg --reference 25C/25C` of reading,temp for awk: the equation of density of 1980 turned by
# Newton's steps, and the practical salinity scale of 1978.
function slope(t) { return 8.24493e-1 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9))) }
function pure(t) {
    return 999.842594 + t * (6.793952e-2 + t * (-9.095290e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))))
}
function second(t) { return -5.72466e-3 + t * (1.0227e-4 - t * 1.6546e-6) }
function density(t, s) { return pure(t) + s * (slope(t) + sqrt(s) * second(t) + s * 4.8314e-4) }
BEGIN { FS = ","; t25 = 1.00024 * 25; pure25 = pure(t25) }
NR == 1 { print $0 ",salinity_g_kg,density_kg_m3,sg_25_25,conductivity_mS_cm"; next }
{
    t = 1.00024 * $2
    rho = $1 * pure25 / (1 + 2.5e-5 * ($2 - 25))
    a = slope(t); b = second(t); s = (rho - pure(t)) / a
    do {
        step = (s * (a + sqrt(s) * b + s * 4.8314e-4) - rho + pure(t)) / (a + 1.5 * sqrt(s) * b + 2 * s * 4.8314e-4)
        s -= step
    } while (step > 1e-9 || step < -1e-9)
    warm = (t - 15) / (1 + 0.0162 * (t - 15))
    c0 = 0.0080 + warm * 0.0005 - s; c1 = -0.1692 - warm * 0.0056; c2 = 25.3851 - warm * 0.0066
    c3 = 14.0941 - warm * 0.0375; c4 = -7.0261 + warm * 0.0636; c5 = 2.7081 - warm * 0.0144
    x = sqrt(s / 35)
    do {
        step = (c0 + x * (c1 + x * (c2 + x * (c3 + x * (c4 + x * c5))))) / \
            (c1 + x * (2 * c2 + x * (3 * c3 + x * (4 * c4 + x * 5 * c5))))
        x -= step
    } while (step > 1e-12 || step < -1e-12)
    ratio = 0.6766097 + t * (2.00564e-2 + t * (1.104259e-4 + t * (-6.9698e-7 + t * 1.0031e-9)))
    printf "%s,%.6g,%.6g,%.6g,%.6g\n", $0, s, density(t, s), density(t25, s) / pure25, 42.914 * x * x * ratio
}
