import { plantTrial, type PlantedDough } from '../planted-trial'
import { walkAmended } from './amendments'
import type { ActionWalk, PageWalk, WalkContext } from '../rights-walk'

const page = '/trials/[trialId]/result'

/** Two mixing days of control and arm, a dough warmer than the other, a loaf less good. */
const doughs: readonly PlantedDough[] = [0, 1, 2, 3].map((i) => ({
  arm: i % 2,
  day: 1 + Math.floor(i / 2),
  doughTempC: 25 + 1.5 * (i % 2),
  piecesGood: i === 3 ? 3 : 4,
  loaves: [0, 1].map((loaf) => ({
    massG: 400,
    volumesMl: [1600 + 130 * (i % 2) + 7 * i + 5 * loaf, 1604 + 130 * (i % 2) + 7 * i + 5 * loaf] as const,
  })),
}))
const withOneOpen = doughs.map((dough, i) => (i === 3 ? { ...dough, state: 'in_work' as const } : dough))

const plant = async ({ bakery }: WalkContext, state: 'closed' | 'baking', of: readonly PlantedDough[]) =>
  (await plantTrial(bakery, { state, mixingDays: 2, doughs: of, at: new Date() })).trialId

const isInState =
  ({ look }: WalkContext, trialId: string, state: string) =>
  async () => {
    const { rows } = await look.query<{ state: string }>('SELECT state FROM trial WHERE id = $1', [trialId])
    return rows[0]?.state === state
  }

export const resultsActions: readonly ActionWalk[] = [
  {
    action: 'app/(desk)/trials/[trialId]/result/actions.ts#close',
    command: 'results.close-trial',
    right: 'approve-plan',
    async aim(context) {
      const trialId = await plant(context, 'baking', withOneOpen)
      return {
        page: page.replace('[trialId]', trialId),
        bound: [trialId, 1, true],
        fields: { reason: 'Walked' },
        happened: isInState(context, trialId, 'stopped'),
      }
    },
  },
]

export const resultsPages: readonly PageWalk[] = [
  {
    route: page,
    queries: ['amendments.get-result'],
    right: 'read-work',
    address: async (context) =>
      page.replace('[trialId]', await walkAmended(context, await plant(context, 'closed', doughs))),
    named: true,
  },
  {
    route: `${page}/amendments`,
    queries: ['amendments.get-result'],
    right: 'read-work',
    address: async (context) =>
      `${page.replace('[trialId]', await walkAmended(context, await plant(context, 'closed', doughs)))}/amendments`,
    named: true,
  },
  {
    route: '/trials/[trialId]/check',
    queries: ['evidence.check-trial'],
    right: 'read-work',
    address: async (context) => `/trials/${await plant(context, 'closed', doughs)}/check`,
    named: true,
  },
]
