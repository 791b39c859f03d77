/* seawater_kernel.h - the bodies behind holdwater/seawater.h that other subjects share. Arguments
 * are in range; nothing is checked here. */
#ifndef HOLDWATER_SEAWATER_KERNEL_H
#define HOLDWATER_SEAWATER_KERNEL_H

/* Formal ionic strength, mol per kg of water (DOE 1994). */
static inline double hw_ionic_strength(double salinity)
{
    return 19.924 * salinity / (1000.0 - 1.005 * salinity);
}

#endif
