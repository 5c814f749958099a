import 'server-only'
import { v7 as uuid } from 'uuid'
import { hashSecret } from '../../auth/secret'
import { stationCodeLifeMs } from '../../auth/session-life'
import { makeStationCode, shownStationCode } from '../../auth/station-code'
import { command } from '../command'
import { makeStationInput } from './make-station.input'

/**
 * Draws a tablet up under a name, with a code to type on it within a quarter of an hour. One of that name whose code ran
 * out gives way. Where it is not an owner who does it, the owners are told.
 * @returns the code, shown once to whoever asks
 * Refuses: station-name-taken.
 */
export const makeStation = command({
  name: 'stations.make-station',
  input: makeStationInput,
  right: 'manage-stations',
  isSecret: true,
  async run({ tx, actor, now, input: { name } }) {
    const { bakeryId, personId: madeById } = actor
    await tx.station.updateMany({
      where: {
        bakeryId,
        name: { equals: name, mode: 'insensitive' },
        enrolledAt: null,
        withdrawnAt: null,
        codeEndsAt: { lte: now },
      },
      data: { withdrawnAt: now, withdrawnById: madeById },
    })
    const id = uuid()
    const code = makeStationCode()
    const codeEndsAt = new Date(now.getTime() + stationCodeLifeMs)
    const ownerToldAt = actor.role === 'owner' ? now : null
    await tx.station.create({ data: { bakeryId, id, name, madeById, madeAt: now, codeEndsAt, ownerToldAt } })
    await tx.signInPointer.create({
      data: { hash: hashSecret('station-code', code), kind: 'station_code', bakeryId, targetId: id },
    })
    return {
      value: { stationId: id, code: shownStationCode(code), endsAt: codeEndsAt.toISOString() },
      audit: { target: id, after: { name } },
    }
  },
})
