import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { query } from '../query'
import { equipmentSelection } from './equipment-selection'

/** The equipment of the bakery, in use or not. */
export const listEquipment = query({
  name: 'stores.list-equipment',
  input: z.strictObject({}),
  right: 'read-work',
  async run({ db, actor }) {
    const equipment = await db.equipment.findMany({
      where: { bakeryId: actor.bakeryId },
      select: { id: true, endedAt: true, ...equipmentSelection },
      orderBy: [{ kind: 'asc' }, { name: 'asc' }],
    })
    return { equipment, mayEdit: levelOf(actor, 'edit-stores') === 'yes' }
  },
})
