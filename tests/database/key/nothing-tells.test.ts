import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { v7 as uuid } from 'uuid'
import type { Query } from '@/lib/kitchen/query'
import { db } from '@/lib/db/client'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { keepNote } from '@/lib/kitchen/notes/keep-note'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { noteCause } from '@/lib/kitchen/shifts/note-cause'
import { addEquipment } from '@/lib/kitchen/stores/add-equipment'
import { makeApprovedTrial, type ApprovedTrial } from '@/tests/support/approved-trial'
import { makeBakery, testNow, valueOf, type TestBakery } from '@/tests/support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '@/tests/support/database'
import { fromCamera } from '@/tests/support/made-pictures'
import { openTheKey } from '@/tests/support/open-the-key'
import { saidOf, sendWhole } from '@/tests/support/send-photo'
import { useCasesOnDisk } from '@/tests/support/use-cases'

let database: FreshDatabase
let bakery: TestBakery
let trial: ApprovedTrial
let photoId: string
/** Ingredients of which lots were said at the bench: one that all doughs have, and one that only some do. */
let said: string[]

const queries = (await useCasesOnDisk()).filter((useCase): useCase is Query => useCase.kind === 'query')

/** How each query is asked about the open trial; one that is new says here how, or that it knows of no trial. */
const asked: Record<string, () => unknown[]> = {
  'amendments.get-result': () => [{ trialId: trial.trialId }],
  'decisions.get-choices': () => [{ trialId: trial.trialId }],
  'evidence.check-trial': () => [{ trialId: trial.trialId }],
  'evidence.get-file': () => [{ trialId: trial.trialId }],
  'repairs.get-repairs': () => [{ trialId: trial.trialId }],
  'readings.preview-import': () => [
    { trialId: trial.trialId, look: null },
    ...[
      'Day,Arm,Dough,Dough temperature\n1,Control,2,26.4\n1,With 1 % milk powder,1,26.1\n',
      'Code,Water added\n108,9000\n115,1\n',
    ].map((file) => ({
      trialId: trial.trialId,
      look: {
        file: { name: 'shift.csv', bytes: new TextEncoder().encode(file) },
        day: '2026-03-02',
        keepOdd: false,
        outside: null,
        match: null,
        matched: '',
      },
    })),
  ],
  'shifts.get-batch': () => trial.batches.map(({ batchId }) => ({ batchId })),
  'trials.get-plan': () => [{ trialId: trial.trialId }],
  'trials.get-trial': () => [{ trialId: trial.trialId }, { trialId: null }],
  'trials.get-weigh-out': () => [{ trialId: trial.trialId }],
  'formulas.get-formula': () => [{ formulaId: trial.formulaId }],
  'formulas.get-version': () => [{ formulaId: trial.formulaId, versionId: trial.versionId }],
  'formulas.get-editor': () => [{ draft: null }],
  'weighings.list-lots-to-confirm': () => said.map((ingredientId) => ({ ingredientId })),
  // Of the whole bakery.
  'checks.list-checks': () => [{}],
  'audit.compare-anchors': () => [{}],
  'audit.list-record': () => [{}],
  'audit.verify-record': () => [{}],
  'decisions.list-decisions': () => [{}],
  'desk.list-waiting': () => [{}],
  'people.get-desk': () => [{}],
  'formulas.list-formulas': () => [{}],
  'notes.list-hand-over': () => [{}],
  'notes.list-notes': () => [{ batchId: null }, ...trial.batches.map(({ batchId }) => ({ batchId }))],
  'photos.get-photo': () => [true, false].map((isSmall) => ({ photoId, isSmall })),
  'photos.list-photos': () => trial.batches.map(({ batchId }) => ({ batchId })),
  'readings.get-reading-log': () => trial.batches.map(({ batchId }) => ({ batchId })),
  'readings.get-sheet': () => trial.batches.map(({ batchId }) => ({ batchId })),
  'readings.list-kept-aside': () => [{}],
  'shifts.get-shift': () => [{}],
  'stations.get-floor': () => [{}],
  'stations.get-slips': () => trial.batches.map(({ batchId }) => ({ batchId })),
  'stations.get-weigh-list': () => trial.batches.map(({ batchId }) => ({ batchId })),
  'trials.list-trials': () => [{}],
}
/** Of people, apart from where the record stands, of how tablets come in and what they hold, of what lies in the stores, and of sums that are typed in. */
const knowNoTrial =
  /^people\.(?!get-desk$)|^(stores|calculators|jobs)\.|^stations\.(?!get-floor$|get-slips$|get-weigh-list$)|^intake\.list-lacking$|^formulas\.compare-versions$|^decisions\.get-decision$/

beforeAll(async () => {
  // Slips have a code to scan where tablets reach the install.
  vi.stubEnv('NEXTAUTH_URL', 'https://bread.example')
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  // Doughs 0 and 1 are the control, 2 and 3 have more salt, 4 and 5 milk.
  trial = await makeApprovedTrial(bakery, { arms: 3, batchesPerArm: 2 })
  for (const at of [0, 1, 2]) {
    const { batchId } = trial.batches[at]!
    valueOf(await beginBatch.call(bakery.early.caller, { batchId, seenRevision: 1, cleanDownDone: false }))
    for (const [code, value, unit] of [
      ['dough-temp', String(25 + at), '°C'],
      ['water-added', '812', 'g'],
      ['flour-temp', '21', '°C'],
      ['room-temp', '23', '°C'],
      ['water-temp', '14', '°C'],
    ] as const)
      valueOf(
        await logReading.call(bakery.early.caller, {
          id: uuid(),
          batchId,
          measureId: trial.measures[code],
          repeat: 1,
          value,
          unit,
          takenAt: testNow.toISOString(),
          confirmed: true,
        }),
      )
    valueOf(await moveBatch.call(bakery.early.caller, { batchId, seenRevision: 2, to: 'in_work' }))
    for (const step of ['mixed', 'folded', 'in_oven'])
      valueOf(
        await takeEntries.call(bakery.early.caller, {
          entries: [{ kind: 'step', id: uuid(), batchId, step, isDone: true, agoS: 0, takenAt: testNow.toISOString() }],
        }),
      )
    valueOf(
      await noteCause.call(bakery.early.caller, {
        batchId,
        what: 'The prover was cold.',
        noticedMinAgo: 5,
      }),
    )
  }
  valueOf(
    await keepNote.call(bakery.early.caller, { batchId: trial.batches[1]!.batchId, text: 'Soft.', forNext: true }),
  )
  const photo = await fromCamera()
  const ofDough = saidOf(photo, trial.batches[1]!.batchId)
  photoId = ofDough.id
  await sendWhole(bakery.early.caller, photo, ofDough)
  const { bakeryId } = bakery
  const stage = await db().formulaStage.findFirstOrThrow({ where: { bakeryId, versionId: trial.versionId } })
  const ingredient = async (labelName: string) =>
    (await db().ingredient.findFirstOrThrow({ where: { bakeryId, labelName } })).id
  said = [await ingredient('Salt'), await ingredient('Milk powder')]
  for (const [at, ingredientId] of said.entries())
    valueOf(
      await takeEntries.call(bakery.early.caller, {
        entries: [
          {
            kind: 'weighing',
            id: uuid(),
            batchId: trial.batches[1 + at]!.batchId,
            stageId: stage.id,
            ingredientId,
            part: 'line',
            how: 'weighed',
            mass: '12',
            unit: 'g',
            lots: [{ code: `B ${at}` }],
            takenAt: testNow.toISOString(),
            confirmed: true,
          },
        ],
      }),
    )
  expect(await db().lot.count({ where: { bakeryId } })).toBe(2)
  const scale = { kind: 'scale', name: 'Bench', note: '', mostG: 5000, resolutionG: 1, testMassG: 1000 }
  const { equipmentId } = valueOf(await addEquipment.call(bakery.head.caller, scale))
  const check = { kind: 'check', equipmentId, shown: '900', unit: 'g', takenAt: testNow.toISOString() }
  valueOf(await takeEntries.call(bakery.early.caller, { entries: [{ ...check, id: uuid() }] }))
  const [lost] = trial.batches
  const seen = { batchId: lost!.batchId, seenRevision: 3 }
  valueOf(await moveBatch.call(bakery.early.caller, { ...seen, to: 'lost', why: 'It fell.' }))
})
afterAll(() => {
  vi.unstubAllEnvs()
  return database.drop()
})

const people = ['early', 'head', 'owner'] as const

/** Everything that the queries answer somebody about the trial. */
async function answersFor(who: (typeof people)[number]): Promise<Map<string, unknown>> {
  const answers = new Map<string, unknown>()
  for (const query of queries.filter(({ name }) => !knowNoTrial.test(name)))
    for (const input of asked[query.name]?.() ?? [])
      answers.set(`${query.name} ${JSON.stringify(input)}`, await query.call(bakery[who].caller, input))
  return answers
}

/** Puts each of two doughs into the other's arm, past every rule. */
async function swapArms(one: number, other: number): Promise<void> {
  const [a, b] = [trial.batches[one]!.batchId, trial.batches[other]!.batchId]
  await connected(database.superUrl, async (client) => {
    await client.query('ALTER TABLE batch DISABLE TRIGGER USER')
    await client.query(
      `UPDATE batch SET arm_id = (SELECT arm_id FROM batch AS other WHERE other.id = CASE batch.id WHEN $1::uuid THEN $2::uuid ELSE $1::uuid END)
       WHERE id IN ($1::uuid, $2::uuid)`,
      [a, b],
    )
    await client.query('ALTER TABLE batch ENABLE TRIGGER USER')
  })
}

describe('before the readings are closed nothing tells which dough is which', () => {
  it('asks every query that knows of a trial', () => {
    const open = queries.map(({ name }) => name).filter((name) => !knowNoTrial.test(name))
    expect(open.filter((name) => !(name in asked))).toEqual([])
    expect(Object.keys(asked).filter((name) => !open.includes(name))).toEqual([])
  })

  it.each(people)('%s is answered the same with two doughs in each other’s place', async (who) => {
    const before = await answersFor(who)
    await swapArms(1, 2)
    const after = await answersFor(who)
    await swapArms(1, 2)
    expect([...after.keys()]).toEqual([...before.keys()])
    // A refusal by right makes an entry, so for whoever is refused something the end of the record moves.
    const isRefused = [...before.values()].some((answer) => !(answer as { ok: boolean }).ok)
    for (const [what, answer] of before)
      if (!(isRefused && what.startsWith('people.get-desk'))) expect(after.get(what), what).toEqual(answer)
    // What is answered at all: a trial that nobody may look at tells nothing either.
    expect([...before.values()].filter((answer) => (answer as { ok: boolean }).ok).length).toBeGreaterThan(8)
  })

  it('says no arm in the record of what was done to a dough', async () => {
    const record = [...(await answersFor('owner'))].find(([what]) => what.startsWith('audit.list-record'))!
    const text = JSON.stringify(record[1])
    expect(text).toContain(`"batch":"${trial.batches[1]!.code}"`)
    for (const secret of [...trial.armIds, 'milk powder']) expect(text).not.toContain(secret)
  })

  it('says what was read around a failed check, of the swapped doughs too', async () => {
    const { batchId } = trial.batches[1]!
    expect(valueOf(await getBatch.call(bakery.early.caller, { batchId })).marks).toMatchObject([
      { instrument: { name: 'Bench' }, readings: [{ code: 'water-added', count: 1 }] },
    ])
  })

  it('the swap does show to whoever opened the key', async () => {
    await openTheKey(bakery.late.caller, trial.trialId)
    const { batchId } = trial.batches[1]!
    const armOf = async () => valueOf(await getBatch.call(bakery.late.caller, { batchId })).key?.position
    expect(await armOf()).toBe(0)
    await swapArms(1, 2)
    expect(await armOf()).toBe(1)
    await swapArms(1, 2)
  })
})
