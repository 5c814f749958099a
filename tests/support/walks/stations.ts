import { makeStation } from '../../../lib/kitchen/stations/make-station'
import { callerOf, valueOf } from '../bakery'
import type { ActionWalk, PageWalk, WalkContext } from '../rights-walk'

const file = 'app/(desk)/stations/actions.ts'
const page = '/stations'

/** A tablet that the head baker drew up, of which the owner does not know yet. */
async function drawnUp({ bakery }: WalkContext): Promise<string> {
  const head = callerOf(bakery.head.sessionSecret, new Date())
  return valueOf(await makeStation.call(head, { name: 'Walk' })).stationId
}

const isThere = async ({ look, bakery }: WalkContext, what: string) =>
  (await look.query(`SELECT 1 FROM station WHERE bakery_id = $1 AND ${what}`, [bakery.bakeryId])).rows.length === 1

export const stationActions: readonly ActionWalk[] = [
  {
    action: `${file}#make`,
    command: 'stations.make-station',
    right: 'manage-stations',
    aim: (context) =>
      Promise.resolve({
        page,
        bound: [],
        fields: { name: 'Walked' },
        happened: () => isThere(context, "name = 'Walked'"),
      }),
  },
  {
    action: `${file}#withdraw`,
    command: 'stations.withdraw-station',
    right: 'manage-stations',
    aim: async (context) => ({
      page,
      bound: [await drawnUp(context)],
      fields: {},
      happened: () => isThere(context, 'withdrawn_at IS NOT NULL'),
    }),
  },
  {
    action: `${file}#told`,
    command: 'stations.note-told',
    right: 'manage-stations',
    // Of the head baker's doings the owner is told.
    narrowedFor: ['head_baker'],
    aim: async (context) => ({
      page,
      bound: [await drawnUp(context)],
      fields: {},
      happened: () => isThere(context, 'owner_told_at IS NOT NULL'),
    }),
  },
]

export const stationPages: readonly PageWalk[] = [
  {
    route: page,
    queries: ['stations.get-address', 'stations.list-stations'],
    right: 'manage-stations',
    address: async (context) => {
      await drawnUp(context)
      return page
    },
  },
]
