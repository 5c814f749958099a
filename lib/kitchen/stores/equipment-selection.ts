import 'server-only'

/** The columns of equipment that commands and queries of this subject read. */
export const equipmentSelection = {
  kind: true,
  name: true,
  leastG: true,
  mostG: true,
  resolutionG: true,
  repeatabilityG: true,
  resolutionC: true,
  volumeMl: true,
  decks: true,
  placesPerDeck: true,
  frictionCPerMin: true,
  tempC: true,
  limitC: true,
  testMassG: true,
  offMostG: true,
  offMostC: true,
  blockMl: true,
  offMostMl: true,
  note: true,
} as const
