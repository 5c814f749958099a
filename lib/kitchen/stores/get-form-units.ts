import 'server-only'
import { z } from 'zod'
import { query } from '../query'

/** In which units the forms of the stores are filled in; asked by the pages that only those who edit may open. */
export const getFormUnits = query({
  name: 'stores.get-form-units',
  input: z.strictObject({}),
  right: 'edit-stores',
  run: ({ db, actor }) =>
    db.bakery.findUniqueOrThrow({
      where: { bakeryId: actor.bakeryId },
      select: { locale: true, massUnits: true, temperatureUnits: true },
    }),
})
