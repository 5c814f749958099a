/** Calculations of the subject: their titles, and one name for each field and choice that their forms and answers show. Units come from the field's ending. */
export const colourWords = {
  subject: 'Colour',
  titles: {
    'colour/lab-from-srgb': 'Colour of a photo’s pixel in CIELAB',
    'colour/delta-e2000': 'Difference of two colours (CIEDE2000)',
    'colour/browning-index': 'Browning index',
  },
  fields: {
    red: 'Red, 0 to 255',
    green: 'Green, 0 to 255',
    blue: 'Blue, 0 to 255',
    lightness: 'Lightness (L*)',
    a: 'Green to red (a*)',
    b: 'Blue to yellow (b*)',
    lightness1: 'Lightness (L*) of the first',
    a1: 'Green to red (a*) of the first',
    b1: 'Blue to yellow (b*) of the first',
    lightness2: 'Lightness (L*) of the second',
    a2: 'Green to red (a*) of the second',
    b2: 'Blue to yellow (b*) of the second',
    difference: 'Difference',
    divisor: 'Divisor',
    browningIndex: 'Browning index',
  },
  choices: {
    '0.17': '0.17, as first published',
    '0.172': '0.172, as in some later papers',
  },
} as const
