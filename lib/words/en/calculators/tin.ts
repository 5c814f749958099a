/** Calculations of the subject: their titles, and one name for each field and choice that their forms and answers show. Units come from the field's ending. */
export const tinWords = {
  subject: 'Tins',
  titles: {
    'tin/dough-for-tin': 'Dough for a tin',
    'tin/from-tin-that-works': 'Dough for another tin, from one that works',
    'tin/tapered-volume': 'Volume of a tapered tin',
  },
  fields: {
    tinVolumeMl: 'Volume of the tin (fill it with water and weigh)',
    tinMlPerG: 'Tin for a g of dough: keep it with the product',
    doughMassG: 'Dough in it',
    warnings: 'Mind',
    newTinVolumeMl: 'Volume of the new tin',
    factor: 'New tin over old tin',
    newDoughMassG: 'Dough for the new tin',
    topLengthMm: 'Length inside, top',
    topWidthMm: 'Width inside, top',
    baseLengthMm: 'Length inside, base',
    baseWidthMm: 'Width inside, base',
    depthMm: 'Depth',
    topTimesDepthMl: 'Top times depth, which is too much',
  },
  choices: {
    'unusual-ratio':
      'Breads usually take 1.6 to 4.5 mL of tin for a g of dough. Look at both figures, and bake one first',
  },
} as const
