/** Where a person finds the figures that a plan is worked out of, after the sentence that it cannot be worked out. */
export const planFigures = {
  percentages: 'Look at the lines of the formula and their percentages.',
  pieces: 'Look at the loaves or pieces from a dough in the draft, and the scaling weight of the formula.',
  loss: 'Look at the dough loss of the formula.',
  masses: 'Look at the percentages in the formula, and the doses in the draft.',
  doses: 'Look at the doses in the draft, and what the formula has of those ingredients.',
  active: 'Look at the active substance of what is dosed, in the stores.',
  'equal-by':
    'Look at what stays equal where one ingredient takes the place of another, in the draft; the stores must state it for both.',
  composition: 'Look at the composition of the ingredients, in the stores.',
  held: 'Look at the totals that are held equal, in the draft.',
  scales: 'Look at the scales, among the equipment.',
  'dough-temperature': 'Look at the dough temperature of the formula.',
  temperatures: 'Look at the temperatures of flour and room, in the draft.',
  water:
    'Look at the water in the formula and its temperatures: the tap’s in the draft, hot, chilled and ice among the equipment.',
  mixing: 'Look at the mixing time of the formula, and how much the mixer warms the dough, among the equipment.',
  size: 'Look at the number of mixing days, doughs and pieces in the draft.',
  margin: 'Look at the smallest difference worth having, and how sure you want to be, in the draft.',
  several: 'Look at the figures of the formula, the draft, the stores and the equipment.',
} as const
