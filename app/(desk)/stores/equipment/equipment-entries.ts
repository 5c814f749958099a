import type { EquipmentKind } from '@/lib/kitchen/stores/equipment-facts.input'
import { largeMassUnit, smallMassUnit, type MassUnits } from '@/lib/words/format/mass'
import { massText } from '@/lib/words/format/mass-text'
import { plainNumber } from '@/lib/words/format/plain-number'
import { temperatureInUnit } from '@/lib/words/format/temperature'
import { degreeSign, differenceInUnit, type TemperatureUnits } from '@/lib/words/format/temperature-difference'
import { withUnit } from '@/lib/words/format/with-unit'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

export type EquipmentRow = {
  kind: EquipmentKind
  name: string
  leastG: number | null
  mostG: number | null
  resolutionG: number | null
  repeatabilityG: number | null
  resolutionC: number | null
  volumeMl: number | null
  decks: number | null
  placesPerDeck: number | null
  frictionCPerMin: number | null
  tempC: number | null
  limitC: number | null
  testMassG: number | null
  offMostG: number | null
  offMostC: number | null
  blockMl: number | null
  offMostMl: number | null
  note: string
}

/** What a piece of equipment can do, in the bakery's units: the terms that its kind has and that are known. */
export function equipmentEntries(
  row: EquipmentRow,
  bakery: { locale: string; massUnits: MassUnits; temperatureUnits: TemperatureUnits },
  text: Words['stores']['equipment'],
  language: Language,
): { term: string; detail: string }[] {
  const { locale } = bakery
  const { terms } = text
  const isMixer = row.kind === 'mixer'
  const small = smallMassUnit(bakery.massUnits)
  const large = largeMassUnit(bakery.massUnits)
  const degree = degreeSign[bakery.temperatureUnits]
  const degrees = (differenceC: number) =>
    plainNumber(differenceInUnit(differenceC, bakery.temperatureUnits), { locale, significant: 3 })
  const temp = (tempC: number) =>
    withUnit(plainNumber(temperatureInUnit(tempC, bakery.temperatureUnits), { locale, significant: 3 }), degree)
  const volume = (volumeMl: number) => withUnit(plainNumber(volumeMl, { locale }), 'mL')
  const entry = <Value>(term: string, value: Value | null, detail: (value: Value) => string) =>
    value === null ? [] : [{ term, detail: detail(value) }]
  return [
    ...entry(terms.steps, row.resolutionG, (massG) => massText(massG, small, locale)),
    ...entry(isMixer ? terms.leastDough : terms.least, row.leastG, (massG) =>
      massText(massG, isMixer ? large : small, locale),
    ),
    ...entry(isMixer ? terms.mostDough : terms.most, row.mostG, (massG) => massText(massG, large, locale)),
    ...entry(terms.repeatability, row.repeatabilityG, (massG) => massText(massG, small, locale)),
    ...entry(terms.testMass, row.testMassG, (massG) => massText(massG, small, locale)),
    ...entry(terms.offMost, row.offMostG, (massG) => massText(massG, small, locale)),
    ...entry(terms.friction, row.frictionCPerMin, (perMin) =>
      say(text.perMin, language, { degree: withUnit(degrees(perMin), degree) }),
    ),
    ...entry(terms.steps, row.resolutionC, (stepC) => withUnit(degrees(stepC), degree)),
    ...entry(terms.offMost, row.offMostC, (offC) => withUnit(degrees(offC), degree)),
    ...entry(terms.temp, row.tempC, temp),
    ...entry(terms.limit, row.limitC, temp),
    ...entry(terms.decks, row.decks, String),
    ...entry(terms.places, row.placesPerDeck, String),
    ...entry(terms.volume, row.volumeMl, volume),
    ...entry(terms.block, row.blockMl, volume),
    ...entry(terms.offMost, row.offMostMl, volume),
  ]
}
