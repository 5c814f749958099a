/** Specific heat of liquid water near 15 °C, J/(g·K). 15 °C calorie, 4.1855 J; handbooks print 4.186. */
export const WATER_SPECIFIC_HEAT_J_PER_G_K = 4.186

/** Heat of melting of ice at 0 °C, J/g. IAPWS/CRC value 333.55, printed as 334 in tables; from memory. */
export const ICE_LATENT_HEAT_J_PER_G = 333.6

/** Specific heat of ice at 0 °C, J/(g·K): Choi and Okos 1986, 2.0623 + 0.0060769 T. */
export const ICE_SPECIFIC_HEAT_J_PER_G_K = 2.0623
