import { addEquipment } from '../../../lib/kitchen/stores/add-equipment'
import { callerOf, valueOf } from '../bakery'
import type { ActionWalk, PageWalk } from '../rights-walk'

const file = 'app/(desk)/shift/checks/actions.ts'

export const checksActions: readonly ActionWalk[] = [
  {
    action: `${file}#keep`,
    command: 'checks.keep-check',
    right: 'log-reading',
    async aim({ bakery, look }) {
      const scale = { kind: 'scale', name: 'Walked', note: '', mostG: 5000, resolutionG: 1, testMassG: 1000 }
      const { equipmentId } = valueOf(await addEquipment.call(callerOf(bakery.head.sessionSecret, new Date()), scale))
      return {
        page: '/shift/checks',
        bound: [equipmentId, 'g'],
        fields: { mass: '', shown: '999' },
        async happened() {
          const { rows } = await look.query<{ n: string }>(
            `SELECT count(*) n FROM equipment_check WHERE bakery_id = $1 AND equipment_id = $2 AND is_good`,
            [bakery.bakeryId, equipmentId],
          )
          return Number(rows[0]?.n) === 1
        },
      }
    },
  },
]

export const checksPages: readonly PageWalk[] = [
  { route: '/shift/checks', queries: ['checks.list-checks'], right: 'read-shift', address: () => '/shift/checks' },
]
