import 'server-only'
import type { z } from 'zod'
import type { addEquipmentInput } from './add-equipment.input'

type Facts = z.output<typeof addEquipmentInput>

const none = {
  leastG: null,
  mostG: null,
  resolutionG: null,
  repeatabilityG: null,
  resolutionC: null,
  volumeMl: null,
  decks: null,
  placesPerDeck: null,
  frictionCPerMin: null,
  tempC: null,
  limitC: null,
  testMassG: null,
  offMostG: null,
  offMostC: null,
  blockMl: null,
  offMostMl: null,
}

/** The facts of a piece of equipment as its row holds them: what its kind does not have is empty. */
export function equipmentColumns(facts: Facts) {
  const shared = { ...none, kind: facts.kind, name: facts.name, note: facts.note }
  switch (facts.kind) {
    case 'scale':
      return {
        ...shared,
        leastG: facts.leastG ?? null,
        mostG: facts.mostG,
        resolutionG: facts.resolutionG,
        repeatabilityG: facts.repeatabilityG ?? null,
        testMassG: facts.testMassG ?? null,
        offMostG: facts.offMostG ?? null,
      }
    case 'thermometer':
      return { ...shared, resolutionC: facts.resolutionC, offMostC: facts.offMostC ?? null }
    case 'mixer':
      return { ...shared, leastG: facts.leastG, mostG: facts.mostG, frictionCPerMin: facts.frictionCPerMin ?? null }
    case 'proofer':
      return shared
    case 'oven':
      return { ...shared, decks: facts.decks, placesPerDeck: facts.placesPerDeck }
    case 'pan':
      return { ...shared, volumeMl: facts.volumeMl }
    case 'volume_gauge':
      return {
        ...shared,
        volumeMl: facts.volumeMl,
        blockMl: facts.blockMl ?? null,
        offMostMl: facts.offMostMl ?? null,
      }
    case 'hot_water':
      return { ...shared, tempC: facts.tempC, limitC: facts.limitC }
    case 'chilled_water':
    case 'ice':
    case 'tap_water':
      return { ...shared, tempC: facts.tempC }
    default:
      return facts satisfies never
  }
}
