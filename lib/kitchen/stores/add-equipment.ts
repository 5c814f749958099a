import 'server-only'
import { v7 as uuid } from 'uuid'
import { command } from '../command'
import { addEquipmentInput } from './add-equipment.input'
import { equipmentColumns } from './equipment-columns'

/** Adds a piece of equipment. Refuses: invalid, with 'name-taken' at its name. */
export const addEquipment = command({
  name: 'stores.add-equipment',
  input: addEquipmentInput,
  right: 'edit-stores',
  async run({ tx, actor, now, input }) {
    const equipmentId = uuid()
    const columns = equipmentColumns(input)
    await tx.equipment.create({
      data: { bakeryId: actor.bakeryId, id: equipmentId, ...columns, revision: 1, createdAt: now },
    })
    return { value: { equipmentId }, audit: { target: equipmentId, after: columns } }
  },
})
