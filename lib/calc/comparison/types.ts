/** An F test with its numerator and denominator degrees of freedom. */
export type FTest = { f: number; df1: number; df2: number; p: number }
