/** What a tablet says of notes. It goes into the tablet's script. */
export const stationNotes = {
  write: 'Write a note',
  ofShift: 'Note of the shift',
  ofDough: 'Note of dough {code}',
  everybody: 'Everybody here reads it, so write nothing that tells which dough is which.',
  text: 'Note',
  forNext: 'For the next shift',
  notForNext: 'Not for the next shift',
  forNextNote: 'Tap to change it.',
  keep: 'Keep the note',
  left: 'Left for this shift',
  by: '{who}, {at}',
  byOfDough: '{who}, {at}, of dough {code}',
  row: 'Note: {text}',
  rowOfDough: 'Dough {code}, note: {text}',
} as const
