import 'server-only'
import { v7 as uuid } from 'uuid'
import { command } from '../command'
import { addMeasureInput } from './add-measure.input'

/**
 * Adds a measure of the bakery's own, behind those that are there. It can be read on every dough from then on, and
 * decide a trial when it has a good direction. Refuses: invalid, with 'name-taken' at its name.
 */
export const addMeasure = command({
  name: 'stores.add-measure',
  input: addMeasureInput,
  right: 'edit-stores',
  async run({ tx, actor, now, input }) {
    const { bakeryId } = actor
    const measureId = uuid()
    const { _max } = await tx.measure.aggregate({ where: { bakeryId }, _max: { position: true } })
    await tx.measure.create({
      data: {
        bakeryId,
        id: measureId,
        code: null,
        derivation: null,
        ...input,
        position: (_max.position ?? -1) + 1,
        revision: 1,
        createdAt: now,
      },
    })
    return { value: { measureId }, audit: { target: measureId, after: input } }
  },
})
