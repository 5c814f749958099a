import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { query } from '../query'
import { Refusal } from '../refusal'
import { equipmentSelection } from './equipment-selection'

/** One piece of equipment. Refuses: not-found. */
export const getEquipment = query({
  name: 'stores.get-equipment',
  input: z.strictObject({ equipmentId: z.uuid() }),
  right: 'read-work',
  async run({ db, actor, input }) {
    const equipment = await db.equipment.findUnique({
      where: { bakeryId_id: { bakeryId: actor.bakeryId, id: input.equipmentId } },
      select: { id: true, endedAt: true, revision: true, createdAt: true, ...equipmentSelection },
    })
    if (!equipment) throw new Refusal('not-found')
    return { ...equipment, mayEdit: levelOf(actor, 'edit-stores') === 'yes' }
  },
})
