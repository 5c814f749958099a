export type Arm = 'control' | 'A' | 'B' | 'C' | 'D' | 'E' | 'F'

/**
 * The outline of each arm's mark, as an SVG path in an 18 × 18 box with its middle at 9, 9: square, disc, triangle,
 * diamond, cross, hourglass, dome. They stay apart at 9 px, filled and hollow. One list for marks, charts and print.
 */
export const armShape: Record<Arm, string> = {
  control: 'M3 3h12v12H3z',
  A: 'M9 2a7 7 0 0 1 0 14a7 7 0 0 1 0-14z',
  B: 'M9 1.5l8 14.5H1z',
  C: 'M9 1l8 8-8 8-8-8z',
  D: 'M6.5 1.5h5v5h5v5h-5v5h-5v-5h-5v-5h5z',
  E: 'M2 1.5h14L10.5 9l5.5 7.5H2L7.5 9z',
  F: 'M1 14a8 10 0 0 1 16 0z',
}
