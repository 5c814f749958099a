/** Calculations of the subject: their titles, and one name for each field and choice that their forms and answers show. Units come from the field's ending. */
export const acidityWords = {
  subject: 'Acidity and salt in water',
  titles: {
    'acidity/titratable-acidity': 'Titratable acidity',
    'acidity/compare-ph': 'What a difference of pH means',
    'acidity/water-phase-salt': 'Salt in the water phase',
  },
  fields: {
    sampleMassG: 'Sample',
    alkaliMl: 'Sodium hydroxide used',
    alkaliMolPerL: 'Its strength',
    endPointPh: 'Titrated to pH (8.5 for dough and bread in most laboratories)',
    acidityMlPer10g: 'Acidity, in 0.1 mol/L sodium hydroxide',
    lacticAcidPct: 'All of it as lactic acid',
    controlPh: 'pH of the control',
    armPh: 'pH of the test dough',
    differencePh: 'Test dough less control',
    timesAsAcid: 'Hydrogen ions, test dough over control',
    saltMassG: 'Salt',
    waterMassG: 'All water, also the flour’s',
    waterPhaseSaltPct: 'Salt in salt and water',
    warnings: 'Mind',
  },
  choices: {
    'same-end-point-only':
      'Compare only with acidities that were titrated to the same pH: to another one they are other figures',
    'not-the-usual-end-point':
      'Dough and bread are titrated to pH 8.5 in most laboratories. This is not that figure, so write the pH beside it',
    'above-saturation': 'More salt than that water dissolves',
    'no-proof-of-keeping': 'No proof that it keeps: shelf life is tested, and a competent person judges it',
  },
} as const
