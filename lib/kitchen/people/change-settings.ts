import 'server-only'
import { shortenStationShifts } from '../../auth/station-shifts'
import { looksColumns } from '../looks-columns'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { changeSettingsInput } from './change-settings.input'

/**
 * Changes the bakery's name, units, money and clock, whether somebody who works alone may approve their own proposal,
 * which each such record then says, from which change of cost the owner signs, when its day turns, how long tablets keep
 * people on and take their PIN, and the language of those who chose none. A shorter time of the PIN is also that of whoever
 * is on a tablet by now; a longer one is not. Refuses: stale.
 */
export const changeSettings = command({
  name: 'people.change-settings',
  input: changeSettingsInput,
  right: 'change-settings',
  async run({ tx, actor, input }) {
    const { seenRevision, bakeryName, ...settings } = input
    const after = { name: bakeryName, ...settings }
    const before = await tx.bakery.findUnique({
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
      },
    })
    if (!before) throw new Refusal('not-found')
    const { count } = await tx.bakery.updateMany({
      where: { bakeryId: actor.bakeryId, revision: seenRevision },
      data: { ...after, revision: { increment: 1 } },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, actor.bakeryId)
    if (settings.pinLastsH < before.pinLastsH) await shortenStationShifts(tx, actor.bakeryId, settings.pinLastsH)
    return { value: null, audit: { target: actor.bakeryId, before, after } }
  },
})
