import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { addMeasure } from '@/lib/kitchen/stores/add-measure'
import { listMeasures } from '@/lib/kitchen/stores/list-measures'
import { draftTrial } from '@/lib/kitchen/trials/draft-trial'
import { getTrial } from '@/lib/kitchen/trials/get-trial'
import { makeBakery, refusalOf, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { makeTrialStores, trialContentOf } from '../../support/trials'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())

const score = {
  name: 'Crumb score',
  unit: 'points',
  digits: 1,
  level: 'piece',
  direction: 'larger',
  plausibleLeast: 0,
  plausibleMost: 10,
  repeats: 2,
  repeatLimit: 1,
  method: 'two bakers, apart',
  ageLeastH: 18,
  ageMostH: 26,
}

describe('a measure of the bakery’s own', () => {
  it('stands behind the others, with an entry in the record, and can decide a trial', async () => {
    const stores = await makeTrialStores(bakery)
    const { measureId } = valueOf(await addMeasure.call(bakery.head.caller, score))
    const { measures } = valueOf(await listMeasures.call(bakery.early.caller, {}))
    expect(measures.at(-1)).toEqual({ id: measureId, code: null, derivation: null, ...score })
    expect(
      await db().auditEntry.count({
        where: { bakeryId: bakery.bakeryId, action: 'stores.add-measure', targetId: measureId },
      }),
    ).toBe(1)
    expect(valueOf(await getTrial.call(bakery.early.caller, { trialId: null })).measures.map(({ id }) => id)).toContain(
      measureId,
    )
    const content = { ...trialContentOf(stores), measureId }
    expect(refusalOf(await draftTrial.call(bakery.early.caller, { content }))).toBe(
      'invalid content.marginUnit:pct-without-zero',
    )
    const inPoints = { ...content, marginUnit: 'unit', margin: 1 }
    valueOf(await draftTrial.call(bakery.early.caller, { content: inPoints }))
    const { measures: theirs } = valueOf(await listMeasures.call(neighbour.owner.caller, {}))
    expect(theirs.map(({ id }) => id)).not.toContain(measureId)
    expect(refusalOf(await addMeasure.call(bakery.head.caller, score))).toBe('invalid name:name-taken')
  })

  it.each<[string, object]>([
    ['name:missing', { name: ' ' }],
    ['unit:too-long', { unit: 'x'.repeat(21) }],
    ['digits:too-big', { digits: 7 }],
    ['level:wrong-choice', { level: 'slice' }],
    ['direction:missing', { direction: undefined }],
    ['plausibleMost:range-without-room', { plausibleMost: 0 }],
    ['repeats:too-big', { repeats: 4 }],
    ['repeatLimit:not-above', { repeatLimit: 0 }],
    ['method:missing', { method: '' }],
    ['ageLeastH:too-small', { ageLeastH: -1 }],
    ['ageMostH:too-big', { ageMostH: 745 }],
    ['ageMostH:age-without-room', { ageMostH: 18 }],
    ['ageMostH:age-without-room', { ageLeastH: null }],
  ])('is refused with %s', async (problem, change) => {
    expect(refusalOf(await addMeasure.call(bakery.head.caller, { ...score, name: 'Another', ...change }))).toBe(
      `invalid ${problem}`,
    )
  })

  it('is added by those who keep the stores', async () => {
    expect(refusalOf(await addMeasure.call(bakery.early.caller, { ...score, name: 'Another' }))).toBe('not-allowed')
  })
})
