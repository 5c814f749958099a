export type Arm = 'control' | 'A' | 'B' | 'C' | 'D' | 'E' | 'F'

/**
 * The outline of each arm's mark, as an SVG path that goes from its middle in relative steps, 18 × 18 at most: square,
 * disc, triangle, diamond, cross, hourglass, dome. They stay apart at 9 px, filled and hollow. One list for marks,
 * charts and print; several of one arm are one path, `M x y` before each.
 */
export const armShape: Record<Arm, string> = {
  control: 'm-6-6h12v12h-12z',
  A: 'm0-7a7 7 0 0 1 0 14a7 7 0 0 1 0-14z',
  B: 'm0-7.5l8 14.5h-16z',
  C: 'm0-8l8 8-8 8-8-8z',
  D: 'm-2.5-7.5h5v5h5v5h-5v5h-5v-5h-5v-5h5z',
  E: 'm-7-7.5h14l-5.5 7.5 5.5 7.5h-14l5.5-7.5z',
  F: 'm-8 5a8 10 0 0 1 16 0z',
}
