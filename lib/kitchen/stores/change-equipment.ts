import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { changeEquipmentInput } from './change-equipment.input'
import { equipmentColumns } from './equipment-columns'
import { equipmentSelection } from './equipment-selection'

/**
 * Changes what is written down of a piece of equipment, or takes it out of use and back. Its kind stays.
 * Refuses: not-found (also for another kind), stale, invalid with 'name-taken' at its name.
 */
export const changeEquipment = command({
  name: 'stores.change-equipment',
  input: changeEquipmentInput,
  right: 'edit-stores',
  async run({ tx, actor, now, input }) {
    const key = { bakeryId: actor.bakeryId, id: input.equipmentId }
    const former = await tx.equipment.findUnique({
      where: { bakeryId_id: key, kind: input.kind },
      select: { ...equipmentSelection, endedAt: true },
    })
    if (!former) throw new Refusal('not-found')
    const columns = equipmentColumns(input)
    const { count } = await tx.equipment.updateMany({
      where: { ...key, revision: input.seenRevision },
      data: { ...columns, endedAt: input.inUse ? null : (former.endedAt ?? now), revision: { increment: 1 } },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, key.id)
    const { endedAt, ...before } = former
    return {
      value: null,
      audit: { target: key.id, before: { ...before, inUse: !endedAt }, after: { ...columns, inUse: input.inUse } },
    }
  },
})
