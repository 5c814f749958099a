/** A colour in CIELAB, light D65 at 2°: lightness L* 0 to 100, a* green to red, b* blue to yellow. */
export type Lab = { lightness: number; a: number; b: number }
