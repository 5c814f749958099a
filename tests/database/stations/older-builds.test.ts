import fs from 'node:fs'
import path from 'node:path'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { hashOfText } from '@/lib/documents/hash-of-text'
import { entryHandlers } from '@/lib/kitchen/intake/handlers'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { addEquipment } from '@/lib/kitchen/stores/add-equipment'
import { makeApprovedTrial } from '../../support/approved-trial'
import { callerOf, makeBakery, testNow, valueOf } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { receiveLots } from '../../support/receive-lots'
import { atStation, enrolledStation, givePin, tokenAt } from '../../support/stations'

type Row = { kind: string; sent: Record<string, unknown>; text: string }

const folder = path.resolve(import.meta.dirname, '../../fixtures/station-builds')
const builds = fs.readdirSync(folder).filter((name) => name.endsWith('.json'))
const rowsOf = (name: string) => JSON.parse(fs.readFileSync(path.join(folder, name), 'utf8')) as Row[]

let database: FreshDatabase
beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(() => database.drop())

/** What stands for an id of the test's own, in place of it. */
const fill = (text: string, ids: Readonly<Record<string, string>>) =>
  text.replaceAll(/\{([a-z0-9-]+)\}/g, (_, name: string) => {
    const id = ids[name]
    if (id === undefined) throw new Error(`nothing stands for {${name}}`)
    return id
  })

it('what older builds of the tablet sent is kept under the very hash that they wait for, and again the same', async () => {
  const bakery = await makeBakery()
  const station = await enrolledStation(bakery)
  await givePin(bakery.early)
  const token = await tokenAt(station, bakery.early)
  const trial = await makeApprovedTrial(bakery)
  const batch = trial.batches[0]!.batchId
  valueOf(
    await beginBatch.call(callerOf(bakery.early.sessionSecret), {
      batchId: batch,
      seenRevision: 1,
      cleanDownDone: false,
    }),
  )
  await receiveLots(bakery, 'Salt', [{ code: 'S-1' }], testNow)
  const { bakeryId } = bakery
  const ingredient = async (labelName: string) =>
    (await db().ingredient.findFirstOrThrow({ where: { bakeryId, labelName } })).id
  const scale = { kind: 'scale', name: 'Bench', note: '', mostG: 5000, resolutionG: 1 }
  const { equipmentId } = valueOf(await addEquipment.call(bakery.head.caller, scale))
  const gauge = { kind: 'volume_gauge', name: 'Seed gauge', note: '', volumeMl: 3000 }
  const { equipmentId: gaugeId } = valueOf(await addEquipment.call(bakery.head.caller, gauge))
  const stage = await db().formulaStage.findFirstOrThrow({ where: { bakeryId, versionId: trial.versionId } })
  const ids = {
    ...trial.measures,
    ...Object.fromEntries(Array.from({ length: 20 }, (_, i) => [`id-${i + 1}`, uuid()])),
    batch,
    stage: stage.id,
    scale: equipmentId,
    gauge: gaugeId,
    flour: await ingredient('Wheat flour'),
    salt: await ingredient('Salt'),
    yeast: await ingredient('Yeast'),
    lot: (await db().lot.findFirstOrThrow({ where: { bakeryId } })).id,
  }
  for (const build of builds) {
    const rows = rowsOf(build)
    const entries = rows.map(({ kind, sent }) => ({
      kind,
      ...(JSON.parse(fill(JSON.stringify(sent), ids)) as { id: string }),
    }))
    for (const isAgain of [false, true]) {
      const answered = valueOf(await takeEntries.call(atStation(station, token, testNow), { entries })).entries
      expect(answered.map((each) => ({ ...each, about: null }))).toEqual(
        rows.map(({ text }, at) => ({
          outcome: 'kept',
          id: entries[at]!.id,
          hash: hashOfText(fill(text, ids)),
          isAgain,
          about: null,
        })),
      )
    }
  }
})

it('every kind of entry that the book takes has been sent by a build that is kept here', () => {
  const sent = new Set(builds.flatMap(rowsOf).map(({ kind }) => kind))
  expect([...sent].sort()).toEqual([...new Set(entryHandlers.flatMap(({ kinds }) => Object.keys(kinds)))].sort())
})
