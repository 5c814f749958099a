import 'server-only'
import { z } from 'zod'
import { looksColumns } from '../looks-columns'
import { query } from '../query'

/** The bakery's settings, for the owner to change. */
export const getSettings = query({
  name: 'people.get-settings',
  input: z.strictObject({}),
  right: 'change-settings',
  run: ({ db, actor }) =>
    db.bakery.findUniqueOrThrow({
      where: { bakeryId: actor.bakeryId },
      select: {
        name: true,
        timeZone: true,
        locale: true,
        currency: true,
        region: true,
        massUnits: true,
        temperatureUnits: true,
        worksAlone: true,
        costChangeLimitPct: true,
        dayTurnsAtH: true,
        stationIdleMin: true,
        pinLastsH: true,
        ...looksColumns,
        language: true,
        revision: true,
      },
    }),
})
