import { v7 as uuid } from 'uuid'
import { takeEntries } from '../../../lib/kitchen/intake/take-entries'
import { beginBatch } from '../../../lib/kitchen/shifts/begin-batch'
import { moveBatch } from '../../../lib/kitchen/shifts/move-batch'
import { noteFoundCause } from '../../../lib/kitchen/shifts/note-found-cause'
import { undoMs } from '../../../lib/kitchen/batches/rules'
import { makeApprovedTrial } from '../approved-trial'
import { callerOf, valueOf } from '../bakery'
import type { ActionWalk, PageWalk, WalkContext } from '../rights-walk'

/** The first batch of a trial that is ready to be baked; begun when asked for. */
async function firstBatch({ bakery }: WalkContext, begun = false): Promise<string> {
  const now = new Date()
  const { batches } = await makeApprovedTrial(bakery, { now })
  const batchId = batches[0]!.batchId
  if (begun)
    valueOf(
      await beginBatch.call(callerOf(bakery.owner.sessionSecret, now), {
        batchId,
        seenRevision: 1,
        cleanDownDone: false,
      }),
    )
  return batchId
}

/** The first batch of a trial that will not be baked, as somebody said. */
async function unbakedBatch(context: WalkContext): Promise<string> {
  const batchId = await firstBatch(context)
  const input = { batchId, seenRevision: 1, to: 'not_baked', why: 'walked' }
  valueOf(await moveBatch.call(callerOf(context.bakery.owner.sessionSecret, new Date()), input))
  return batchId
}

const isNow = async ({ look }: WalkContext, batchId: string, condition: string) =>
  Number(
    (await look.query<{ n: string }>(`SELECT count(*) n FROM batch WHERE id = $1 AND ${condition}`, [batchId])).rows[0]
      ?.n,
  ) === 1

/** The flour of a batch that was begun, as its page asks for it. */
export async function lineToWeigh(context: WalkContext) {
  const batchId = await firstBatch(context, true)
  const { rows } = await context.look.query<{ stageId: string; ingredientId: string }>(
    `SELECT line.stage_id AS "stageId", line.ingredient_id AS "ingredientId" FROM arm_line line
     JOIN batch ON batch.bakery_id = line.bakery_id AND batch.arm_id = line.arm_id
     WHERE batch.id = $1 ORDER BY line.position LIMIT 1`,
    [batchId],
  )
  return { batchId, line: { ...rows[0]!, part: 'line', seenId: null } }
}

const file = 'app/(desk)/shift/[batchId]/actions.ts'

export const shiftActions: readonly ActionWalk[] = [
  {
    action: `${file}#begin`,
    command: 'shifts.begin-batch',
    right: 'log-reading',
    async aim(context) {
      const batchId = await firstBatch(context)
      return {
        page: `/shift/${batchId}`,
        bound: [batchId, 1],
        fields: {},
        happened: () => isNow(context, batchId, `state = 'weighing'`),
      }
    },
  },
  {
    action: `${file}#moveOn`,
    command: 'shifts.move-batch',
    right: 'log-reading',
    async aim(context) {
      const batchId = await firstBatch(context, true)
      return {
        page: `/shift/${batchId}`,
        bound: [batchId, 2, 'in_work'],
        fields: {},
        happened: () => isNow(context, batchId, `state = 'in_work'`),
      }
    },
  },
  {
    action: `${file}#undo`,
    command: 'shifts.undo-move',
    right: 'log-reading',
    // The owner began it, and only whoever made a move may undo it.
    narrowedFor: ['head_baker', 'shift_baker'],
    async aim(context) {
      const batchId = await firstBatch(context)
      // Begun a little ahead of now, so that a slow machine has more than the ten seconds.
      const begun = new Date(Date.now() + undoMs - 1000)
      valueOf(
        await beginBatch.call(callerOf(context.bakery.owner.sessionSecret, begun), {
          batchId,
          seenRevision: 1,
          cleanDownDone: false,
        }),
      )
      return {
        page: `/shift/${batchId}`,
        bound: [batchId, 2],
        fields: {},
        happened: () => isNow(context, batchId, `state = 'waiting' AND revision = 3`),
      }
    },
  },
  {
    action: `${file}#takeOut`,
    command: 'shifts.move-batch',
    right: 'log-reading',
    async aim(context) {
      const batchId = await firstBatch(context)
      return {
        page: `/shift/${batchId}`,
        bound: [batchId, 1],
        fields: { to: 'not_baked', why: 'walked' },
        happened: () => isNow(context, batchId, `state = 'not_baked'`),
      }
    },
  },
  {
    action: `${file}#again`,
    command: 'repairs.bake-again',
    right: 'log-reading',
    async aim(context) {
      const batchId = await unbakedBatch(context)
      return {
        page: `/shift/${batchId}`,
        bound: [batchId],
        fields: {},
        happened: () => isNow(context, batchId, `id IN (SELECT batch_id FROM repair WHERE kind = 'bake_again')`),
      }
    },
  },
  {
    action: `${file}#exchange`,
    command: 'repairs.swap-doughs',
    right: 'log-reading',
    async aim(context) {
      const { batches } = await makeApprovedTrial(context.bakery, { now: new Date() })
      const [batchId, otherId] = batches.map((batch) => batch.batchId)
      return {
        page: `/shift/${batchId}`,
        bound: [batchId, 1],
        fields: { otherId: otherId!, why: 'walked' },
        happened: () => isNow(context, batchId!, `id IN (SELECT batch_id FROM repair WHERE kind = 'swap')`),
      }
    },
  },
  {
    action: `${file}#note`,
    command: 'shifts.note-cause',
    right: 'log-reading',
    async aim(context) {
      const batchId = await firstBatch(context)
      return {
        page: `/shift/${batchId}`,
        bound: [batchId],
        fields: { what: 'walked', noticedMinAgo: '5' },
        happened: () => isNow(context, batchId, `id IN (SELECT batch_id FROM batch_cause WHERE what = 'walked')`),
      }
    },
  },
  {
    action: `${file}#weighAsPlanned`,
    command: 'weighings.log-weighings',
    right: 'log-reading',
    async aim(context) {
      const { batchId, line } = await lineToWeigh(context)
      return {
        page: `/shift/${batchId}`,
        bound: [batchId, 'metric', [line]],
        fields: {},
        happened: () => isNow(context, batchId, `id IN (SELECT batch_id FROM weighing WHERE how = 'ticked')`),
      }
    },
  },
  {
    action: `${file}#weigh`,
    command: 'weighings.log-weighings',
    right: 'log-reading',
    async aim(context) {
      const { batchId, line } = await lineToWeigh(context)
      return {
        page: `/shift/${batchId}`,
        bound: [batchId, 'metric', [line]],
        fields: { 'lines.0.mass': '1000' },
        happened: () => isNow(context, batchId, `id IN (SELECT batch_id FROM weighing WHERE mass_g = 1000)`),
      }
    },
  },
  {
    action: `${file}#noteFound`,
    command: 'shifts.note-found-cause',
    right: 'log-reading',
    async aim(context) {
      const batchId = await firstBatch(context, true)
      return {
        page: `/shift/${batchId}`,
        bound: [batchId],
        fields: { object: 'stock_count', what: 'walked' },
        happened: () => isNow(context, batchId, `id IN (SELECT batch_id FROM found_cause WHERE what = 'walked')`),
      }
    },
  },
  {
    action: `${file}#signFound`,
    command: 'shifts.sign-found-cause',
    right: 'log-reading',
    // The owner found it, so somebody else signs it.
    narrowedFor: ['owner'],
    async aim(context) {
      const batchId = await firstBatch(context, true)
      const { foundCauseId } = valueOf(
        await noteFoundCause.call(callerOf(context.bakery.owner.sessionSecret, new Date()), {
          batchId,
          object: 'tasted',
          what: 'walked',
        }),
      )
      return {
        page: `/shift/${batchId}`,
        bound: [foundCauseId, 2],
        fields: {},
        happened: () => isNow(context, batchId, `state = 'set_aside'`),
      }
    },
  },
  {
    action: `${file}#openKey`,
    command: 'shifts.open-dough-key',
    right: 'read-shift',
    async aim(context) {
      const batchId = await firstBatch(context)
      return {
        page: `/shift/${batchId}`,
        bound: [batchId],
        fields: {},
        happened: () => isNow(context, batchId, 'id IN (SELECT batch_id FROM opened_dough_key)'),
      }
    },
  },
  {
    action: `${file}#count`,
    command: 'shifts.count-pieces',
    right: 'log-reading',
    async aim(context) {
      const batchId = await firstBatch(context, true)
      return {
        page: `/shift/${batchId}`,
        bound: [batchId, 2],
        fields: { piecesMade: '4', piecesGood: '3' },
        happened: () => isNow(context, batchId, 'pieces_good = 3'),
      }
    },
  },
  {
    action: 'app/(desk)/shift/[batchId]/paper/actions.ts#keyIn',
    command: 'readings.key-in-sheet',
    right: 'log-reading',
    async aim(context) {
      const { batchId, measureId, repeat, unit } = await walkReading(context)
      return {
        page: `/shift/${batchId}/paper`,
        bound: [batchId, 'UTC', [{ measureId, piece: null, factorLevel: null, repeat, unit }]],
        fields: {
          writtenById: context.bakery.late.personId,
          writtenAt: new Date().toISOString().slice(0, 10),
          time: '00:00',
          'lines.0.value': '26.4',
        },
        happened: () => isNow(context, batchId, 'id IN (SELECT batch_id FROM paper_sheet)'),
      }
    },
  },
  {
    action: 'app/(desk)/shift/kept-aside/actions.ts#settle',
    command: 'readings.settle-entry',
    right: 'settle-entries',
    async aim(context) {
      const { there, aside } = await walkEntryAside(context)
      return {
        page: '/shift/kept-aside',
        bound: [aside.entryId, aside.hash, there.id],
        fields: { take: 'yes', reason: 'walked' },
        happened: async () =>
          (await context.look.query('SELECT 1 FROM reading WHERE supersedes_id = $1', [there.id])).rows.length === 1,
      }
    },
  },
]

/** With a batch that can be baked again. */
async function withLoss(context: WalkContext): Promise<string> {
  await unbakedBatch(context)
  return '/shift'
}

export const shiftPages: readonly PageWalk[] = [
  { route: '/shift', queries: ['shifts.get-shift', 'notes.list-hand-over'], right: 'read-shift', address: withLoss },
  {
    route: '/shift/kept-aside',
    queries: ['readings.list-kept-aside'],
    right: 'settle-entries',
    address: async (context) => {
      await walkEntryAside(context)
      return '/shift/kept-aside'
    },
  },
  {
    route: '/shift/[batchId]',
    queries: ['shifts.get-batch', 'notes.list-notes', 'photos.list-photos'],
    right: 'read-shift',
    address: async (context) => `/shift/${await firstBatch(context, true)}`,
    named: true,
  },
  {
    route: '/shift/[batchId]/log',
    queries: ['readings.get-reading-log'],
    right: 'read-shift',
    address: async (context) => `/shift/${await firstBatch(context, true)}/log`,
    named: true,
  },
  {
    route: '/shift/[batchId]/paper',
    queries: ['readings.get-sheet'],
    right: 'read-shift',
    address: async (context) => `/shift/${await firstBatch(context, true)}/paper`,
    named: true,
  },
  {
    route: '/shift/[batchId]/slips',
    queries: ['stations.get-slips'],
    right: 'read-shift',
    address: async (context) => `/shift/${await firstBatch(context)}/slips`,
    named: true,
  },
]

/** A reading to send to a batch that was begun just now. */
export async function walkReading(context: WalkContext) {
  const batchId = await firstBatch(context, true)
  const { rows } = await context.look.query<{ id: string }>(
    `SELECT id FROM measure WHERE bakery_id = $1 AND code = 'dough-temp'`,
    [context.bakery.bakeryId],
  )
  return {
    id: uuid(),
    batchId,
    measureId: rows[0]!.id,
    repeat: 1,
    value: '26.4',
    unit: '°C',
    takenAt: new Date().toISOString(),
  }
}

/** A reading in the book, and an entry that came too late for its place. */
export async function walkEntryAside(context: WalkContext) {
  const there = { kind: 'reading', ...(await walkReading(context)) }
  const late = { ...there, id: uuid(), value: '27.1' }
  const { entries } = valueOf(
    await takeEntries.call(callerOf(context.bakery.early.sessionSecret, new Date()), { entries: [there, late] }),
  )
  const aside = entries[1]
  if (aside?.outcome !== 'aside') throw new Error(`not aside: ${aside?.outcome}`)
  return { there, aside: { entryId: aside.id, hash: aside.hash } }
}
