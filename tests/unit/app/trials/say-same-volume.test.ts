import { expect, it } from 'vitest'
import { resultForms } from '@/app/(desk)/trials/[trialId]/result/result-forms'
import { saySameVolume } from '@/app/(desk)/trials/[trialId]/result/say-same-volume'
import type { ShownBakery, ShownCosts } from '@/app/(desk)/trials/[trialId]/result/shown-result'

type Cost = ShownCosts['arms'][number]
type WorkedOut = Extract<NonNullable<Cost['sameVolume']>, { outcome: 'worked-out' }>

const bakery = { locale: 'en-GB', massUnits: 'metric', currency: 'EUR' } as unknown as ShownBakery
const declared = {
  kind: 'gain',
  measure: { name: 'Loaf volume', unit: 'mL', digits: 0, direction: 'larger' },
  margin: 3,
  marginUnit: 'pct',
  confidencePct: 95,
  holdsFor: 'any_day',
} as const
const said = (sameVolume: Cost['sameVolume'], own = bakery) =>
  saySameVolume(
    { arm: 1, sameVolume },
    {
      currency: 'EUR',
      bakery: own,
      forms: resultForms({
        result: { declared, analysis: { comparison: null } },
        measureCode: 'loaf-volume',
        bakery: own,
        language: 'en',
      }),
    },
  )
const upTo = (perKg: string) => ({ outcome: 'up-to', perKg }) as const
const from = (perKg: string) => ({ outcome: 'from', perKg }) as const
const no = (outcome: 'never' | 'always' | 'no-bearing') => ({ outcome, perKg: null })
const priced = (
  [low, at, high]: [WorkedOut['low'], WorkedOut['at'], WorkedOut['high']],
  volume = { ratio: 1.05, low: 1.02, high: 1.08 } as WorkedOut['volume'],
) => said({ outcome: 'worked-out', ingredient: 'Malt', volume, at, low, high })

const range = 'In volume its loaves differ from the control’s by +2.0 to +8.0 %.'

it('goes from the one end of the interval to the other, in the bakery’s own unit', () => {
  expect(priced([upTo('2.5'), upTo('4'), upTo('6')])).toBe(
    `Dough A: a litre costs as much as the control’s with Malt at a price from €2.50 to €6.00 a kg, and less below that. ${range}`,
  )
  const pounds = { ...bakery, massUnits: 'ounces' } as const
  const volume = { ratio: 1.05, low: 1.02, high: 1.08 }
  const worked = { outcome: 'worked-out', ingredient: 'Malt', volume, at: upTo('4'), low: upTo('2.5'), high: upTo('6') }
  expect(said(worked as WorkedOut, pounds)).toContain('from €1.13 to €2.72 a lb')
})

it('without an interval is one price, with that said', () => {
  expect(priced([null, upTo('4'), null], { ratio: 1.05, low: null, high: null })).toBe(
    'Dough A: a litre costs as much as the control’s with Malt at €4.00 a kg, and less below that. In volume its loaves differ from the control’s by +5.0 %; how sure that is cannot be told, and so it is with the price.',
  )
})

it('where the interval reaches no gain, says that it is not sure that any price would do', () => {
  const unsure =
    'Dough A: at best, a litre costs as much as the control’s with Malt at €6.00 a kg. At worst it gains too little volume, so it is not sure that any price would do.'
  expect(priced([no('never'), upTo('4'), upTo('6')])).toBe(`${unsure} ${range}`)
  expect(priced([no('never'), no('never'), upTo('6')])).toBe(`${unsure} ${range}`)
  expect(priced([upTo('0.1'), upTo('4'), upTo('6')], { ratio: 1.05, low: 1, high: 1.08 })).toContain(unsure)
})

it('says in words what no price changes', () => {
  expect(priced([no('never'), no('never'), no('never')])).toContain('at any price of Malt, even as a gift.')
  expect(priced([no('always'), no('always'), no('always')])).toContain('whatever Malt costs.')
  expect(priced([no('no-bearing'), no('no-bearing'), no('no-bearing')])).toContain('no price of it makes them cost')
  expect(priced([no('never'), no('never'), from('6')])).toContain('not sure enough to say')
  expect(priced([no('never'), no('never'), no('never')])).not.toContain('€')
})

it('of a dough that holds less of it says from which price on', () => {
  expect(priced([from('4'), from('3'), from('2')])).toContain('once Malt costs €2.00 to €4.00 a kg or more.')
  expect(priced([null, from('3'), null])).toContain('once Malt costs €3.00 a kg or more.')
  expect(priced([from('4'), no('always'), no('always')])).toContain('at worst only once it costs €4.00 a kg or more.')
})

it('says why there is none, and nothing of the control', () => {
  expect(said({ outcome: 'several-doses' })).toBe(
    'Dough A: it doses several ingredients, so there is no single price of one.',
  )
  expect(said({ outcome: 'not-measured' })).toContain('was not measured')
  expect(said({ outcome: 'not-costed' })).toContain('other prices are missing')
  expect(said(null)).toBeNull()
})
