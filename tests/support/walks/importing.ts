import { makeApprovedTrial } from '../approved-trial'
import type { ActionWalk, PageWalk, WalkContext } from '../rights-walk'

const page = '/trials/[trialId]/import'

const plant = ({ bakery }: WalkContext) => makeApprovedTrial(bakery, { now: new Date() })

export const importingActions: readonly ActionWalk[] = [
  {
    action: 'app/(desk)/trials/[trialId]/import/actions.ts#send',
    command: 'readings.import-readings',
    right: 'import-readings',
    async aim(context) {
      const { trialId, batches, measures } = await plant(context)
      const fields = {
        intent: 'store',
        text: `code,piece,loaf\n${batches[0]!.code},1,412.5`,
        day: new Date().toISOString().slice(0, 10),
        outside: 'on',
        cleanDownDone: 'on',
        separator: ',',
        decimal: '.',
        'columns.0': 'code',
        'columns.1': 'piece',
        'columns.2': `measure:${measures['loaf-mass']}:g`,
      }
      const happened = async () => {
        const { rows } = await context.look.query<{ n: string }>('SELECT count(*) n FROM reading WHERE trial_id = $1', [
          trialId,
        ])
        return Number(rows[0]?.n) === 1
      }
      return { page: page.replace('[trialId]', trialId), bound: [trialId], fields, happened }
    },
  },
]

export const importingPages: readonly PageWalk[] = [
  {
    route: page,
    queries: ['readings.preview-import'],
    right: 'import-readings',
    address: async (context) => page.replace('[trialId]', (await plant(context)).trialId),
    named: true,
  },
]
