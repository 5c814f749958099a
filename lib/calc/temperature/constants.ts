/** Specific heat of liquid water near 15 °C, J/(g·K). 15 °C calorie, 4.1855 J; handbooks print 4.186. */
export const WATER_SPECIFIC_HEAT_J_PER_G_K = 4.186

/** Heat of melting of ice at 0 °C, J/g. IAPWS/CRC value 333.55, printed as 334 in tables; from memory. */
export const ICE_LATENT_HEAT_J_PER_G = 333.6

/** Specific heat of ice at 0 °C, J/(g·K): Choi and Okos 1986, 2.0623 + 0.0060769 T. */
export const ICE_SPECIFIC_HEAT_J_PER_G_K = 2.0623

/** What dough and pre-ferment can have, what room and flour can have, what a tap gives, °C. Common practice, no source. */
export const DOUGH_BOUNDS_C = { min: 0, max: 45 } as const
export const KITCHEN_BOUNDS_C = { min: 0, max: 50 } as const
export const TAP_BOUNDS_C = { min: 0, max: 60 } as const

/** Four times the largest rise by mixing that the heat balance takes, 40 °C. */
export const MOST_FRICTION_FACTOR_C = 160

/** Above this, water harms yeast that it meets. Common practice, no source: textbooks draw the line between 40 and 50 °C. */
export const HOTTEST_FOR_YEAST_C = 45
