import 'server-only'
import { textOf } from '@/lib/ui/text-of'
import { massOf } from '@/lib/ui/mass-of'
import { numberOf } from '@/lib/ui/number-of'
import type { EquipmentKind } from '@/lib/kitchen/stores/equipment-facts.input'
import { largeMassUnit, smallMassUnit } from '@/lib/words/format/mass'
import { temperatureFromUnit } from '@/lib/words/format/temperature'
import { differenceFromUnit } from '@/lib/words/format/temperature-difference'
import type { OwnUnits } from '@/lib/words/format/own-units'

/** The facts of a piece of equipment as they were typed, in base units, for the command to judge. */
export function readEquipmentForm(form: FormData, kind: EquipmentKind, units: OwnUnits) {
  const { locale, massUnits, temperatureUnits } = units
  const number = (name: string) => numberOf(form, name, locale)
  const small = (name: string) => massOf(form, name, locale, smallMassUnit(massUnits))
  const large = (name: string) => massOf(form, name, locale, largeMassUnit(massUnits))
  const degrees = (name: string) => {
    const typed = number(name)
    return typeof typed === 'number' ? differenceFromUnit(typed, temperatureUnits) : typed
  }
  const temp = (name: string) => {
    const typed = number(name)
    return typeof typed === 'number' ? temperatureFromUnit(typed, temperatureUnits) : typed
  }
  const shared = { kind, name: textOf(form, 'name'), note: textOf(form, 'note') }
  switch (kind) {
    case 'scale':
      return {
        ...shared,
        resolutionG: small('resolutionG'),
        mostG: large('mostG'),
        leastG: small('leastG'),
        repeatabilityG: small('repeatabilityG'),
        testMassG: small('testMassG'),
        offMostG: small('offMostG'),
      }
    case 'thermometer':
      return { ...shared, resolutionC: degrees('resolutionC'), offMostC: degrees('offMostC') }
    case 'mixer':
      return { ...shared, leastG: large('leastG'), mostG: large('mostG'), frictionCPerMin: degrees('frictionCPerMin') }
    case 'proofer':
      return shared
    case 'oven':
      return { ...shared, decks: number('decks'), placesPerDeck: number('placesPerDeck') }
    case 'pan':
      return { ...shared, volumeMl: number('volumeMl') }
    case 'volume_gauge':
      return { ...shared, volumeMl: number('volumeMl'), blockMl: number('blockMl'), offMostMl: number('offMostMl') }
    case 'hot_water':
      return { ...shared, tempC: temp('tempC'), limitC: temp('limitC') }
    case 'chilled_water':
    case 'ice':
    case 'tap_water':
      return { ...shared, tempC: temp('tempC') }
    default:
      return kind satisfies never
  }
}
