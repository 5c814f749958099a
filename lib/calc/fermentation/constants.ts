/** Optimum and maximum for growth of Saccharomyces cerevisiae, °C. Salvado et al. 2011, doi 10.1128/AEM.01861-10. */
export const YEAST_OPTIMUM_TEMP_C = 32.3
export const YEAST_MAXIMUM_TEMP_C = 45.4

/** Minimum, °C: the same paper gives 1.3 to 4.3 over the genus; the middle is an assumption of ours. */
export const YEAST_MINIMUM_TEMP_C = 2.8

/** Rise of yeast activity for one °C, %: rule of thumb, US baking trade magazine. */
export const ACTIVITY_RISE_PCT_PER_C = 10
