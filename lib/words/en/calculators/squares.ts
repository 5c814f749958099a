/** Calculations of the subject: their titles, and one name for each field and choice that their forms and answers show. Units come from the field's ending. */
export const squaresWords = {
  subject: 'Squares',
  titles: {
    'squares/cyclic-square': 'Standard Latin square',
    'squares/latin-square': 'Latin square in random order',
    'squares/williams-square': 'Orders balanced for what came before',
  },
  fields: {
    treatments: 'Doughs or samples',
    seed: 'Seed: the same text gives the same square',
    rows: 'Rows',
    row: 'Row',
    treatmentsInOrder: 'Numbers in order',
  },
  choices: {},
} as const
