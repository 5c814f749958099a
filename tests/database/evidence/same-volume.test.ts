import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest'
import { canonicalText } from '@/lib/documents/canonical-text'
import { costsOfFormat2, type CostsOfFormat2 } from '@/lib/documents/evidence-costs/costs-of-format-2'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { getDecision } from '@/lib/kitchen/decisions/get-decision'
import { keepFormula } from '@/lib/kitchen/decisions/keep-formula'
import { checkFile } from '@/lib/kitchen/evidence/check-file'
import { isSound } from '@/lib/kitchen/evidence/finding'
import { getFile } from '@/lib/kitchen/evidence/get-file'
import { makeBakery, valueOf, type TestBakery, type TestPerson } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { makeEndedTrial, type EndedTrial } from '../../support/ended-trial'
import { forgedFile, partOf } from '../../support/forged-file'

let database: FreshDatabase
let bakery: TestBakery
let trial: EndedTrial

beforeAll(async () => {
  database = await freshDatabase()
})
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
  trial = await makeEndedTrial(bakery)
})
afterAll(() => database.drop())

const resultOf = async ({ caller }: TestPerson) => valueOf(await getResult.call(caller, { trialId: trial.trialId }))
const fileOf = async ({ caller }: TestPerson) => valueOf(await getFile.call(caller, { trialId: trial.trialId })).text
const wrong = (text: string) =>
  checkFile(text).flatMap((finding) => (isSound(finding) ? [] : [`${finding.what} ${finding.outcome}`]))
const changed = (text: string, change: (costs: CostsOfFormat2) => void) =>
  wrong(
    forgedFile(text, 'costs', (part) => {
      const costs = costsOfFormat2.parse(JSON.parse(part))
      change(costs)
      return canonicalText(costs)
    }),
  )

it('owner and head baker are told at which price a litre costs as much as the control’s, nobody else', async () => {
  for (const who of [bakery.owner, bakery.head]) {
    const { costs } = await resultOf(who)
    const [control, malt, yoghurt] = costs!.arms
    expect(control!.sameVolume).toBeNull()
    expect(malt!.sameVolume).toMatchObject({
      outcome: 'worked-out',
      ingredient: 'Malt powder',
      at: { outcome: 'up-to' },
    })
    // It gives next to nothing, and displaces water, which is free.
    expect(yoghurt!.sameVolume).toMatchObject({ outcome: 'worked-out', ingredient: 'Yoghurt' })
  }
  expect((await resultOf(bakery.early)).costs).toBeNull()
  expect(await fileOf(bakery.early)).not.toMatch(/sameVolume|perKgMinor/)
})

it('the price is that of the costs shown: with it, the litres of both cost the same by the volume as it was analysed', async () => {
  const { costs, analysis } = await resultOf(bakery.owner)
  const [control, malt] = costs!.arms
  if (malt!.sameVolume?.outcome !== 'worked-out') throw new Error(malt!.sameVolume?.outcome)
  const { at, low, high, volume } = malt!.sameVolume
  // Loaves of 400 g: the volume differs as the specific volume does.
  const { pct, lowPct, highPct } = analysis.comparison!.arms[1]!.effect!
  expect(volume.ratio).toBeCloseTo(1 + pct! / 100, 10)
  expect(volume.low).toBeCloseTo(1 + lowPct! / 100, 10)
  expect(volume.high).toBeCloseTo(1 + highPct! / 100, 10)
  // A loaf has 12.12 g of malt in 3,481.5 g of dough, at 4.00 a kg; 850 g and 2 % loss.
  const maltKg =
    (trial.plannedG[1]!.at(-1)!.massG / 1000) *
    (850 / 0.98 / trial.plannedG[1]!.reduce((sum, { massG }) => sum + massG, 0))
  const rest = Number(malt!.perLoaf) - 4 * maltKg
  const worth = (ratio: number) => (ratio * Number(control!.perLoaf) - rest) / maltKg
  expect(Number(at.perKg)).toBeCloseTo(worth(volume.ratio), 6)
  expect(Number(low!.perKg)).toBeCloseTo(worth(volume.low!), 6)
  expect(Number(high!.perKg)).toBeCloseTo(worth(volume.high!), 6)
})

it('of a trial of loaf volume it goes by the comparison that the result shows, in % and in mL', async () => {
  const { stores } = trial
  const measureId = stores.measureIds['loaf-volume']!
  for (const rule of [{ margin: 5 }, { margin: 60, marginUnit: 'unit' }]) {
    trial = await makeEndedTrial(bakery, { stores, content: { measureId, ...rule } })
    const { costs, analysis } = await resultOf(bakery.owner)
    const same = costs!.arms[1]!.sameVolume
    if (same?.outcome !== 'worked-out') throw new Error(same?.outcome)
    const { pct, lowPct, highPct } = analysis.comparison!.arms[1]!.effect!
    expect(same.volume).toEqual({ ratio: 1 + pct! / 100, low: 1 + lowPct! / 100, high: 1 + highPct! / 100 })
    expect(wrong(await fileOf(bakery.owner))).toEqual([])
  }
})

it('it is kept with the costs and worked out again to the digit, from readings and plan as well', async () => {
  const text = await fileOf(bakery.owner)
  expect(wrong(text)).toEqual([])
  const found = ['costs differs']
  const malt = ({ arms }: CostsOfFormat2) => {
    const same = arms[1]!.sameVolume
    if (same?.outcome !== 'worked-out') throw new Error(same?.outcome)
    return same
  }
  expect(changed(text, (costs) => (malt(costs).at.perKg = '99'))).toEqual(found)
  expect(changed(text, (costs) => (malt(costs).low = null))).toEqual(found)
  expect(changed(text, (costs) => (costs.arms[1]!.sameVolume = null))).toEqual(found)
  // Made to fit among themselves.
  expect(
    changed(text, (costs) => {
      for (const arm of costs.rests.arms) Object.assign(arm, { dosed: [] })
      for (const arm of costs.arms) arm.sameVolume = null
    }),
  ).toEqual(found)
  expect(
    changed(text, (costs) => {
      costs.rests.arms[1]!.volume = null
      costs.arms[1]!.sameVolume = { outcome: 'not-measured' }
    }),
  ).toEqual(found)
})

it('a ratio that other rules came to is said to be that', async () => {
  const text = forgedFile(await fileOf(bakery.owner), 'shown', (part) =>
    part.replace('"calculations":2', '"calculations":1'),
  )
  expect(
    changed(text, (costs) => {
      costs.rests.arms[1]!.volume = null
      costs.arms[1]!.sameVolume = { outcome: 'not-measured' }
    }),
  ).toEqual(['costs other-calculations'])
})

it('it stays with the decision, and costs that were kept before it still agree', async () => {
  const { trialId, revision } = trial
  const { decisionId } = valueOf(
    await keepFormula.call(bakery.owner.caller, { trialId, seenRevision: revision, reason: 'Dear.' }),
  )
  const { evidence } = valueOf(await getDecision.call(bakery.owner.caller, { decisionId }))
  expect(evidence!.costs!.arms[1]!.sameVolume).toEqual((await resultOf(bakery.owner)).costs!.arms[1]!.sameVolume)
  const text = await fileOf(bakery.owner)
  expect(wrong(text)).toEqual([])
  expect(partOf(text, 'costs')).toMatchObject({ format: 2 })
  const former = forgedFile(text, 'costs', (part) => {
    const { arms, rests, ...costs } = costsOfFormat2.parse(JSON.parse(part))
    return canonicalText({
      ...costs,
      format: 1,
      arms: arms.map(({ sameVolume: _, ...arm }) => arm),
      rests: { ...rests, arms: rests.arms.map(({ dosed: _, volume: __, ...arm }) => arm) },
    })
  })
  // Only what the record noted is another one.
  expect(wrong(former)).toEqual(['evidence differs'])
})
