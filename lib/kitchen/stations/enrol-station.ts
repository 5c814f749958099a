import 'server-only'
import { mayAttempt, takeBackAttempt } from '../../auth/attempts'
import { levelOf } from '../../auth/rights'
import { hashSecret, makeSecret } from '../../auth/secret'
import { latestMoment } from '../../auth/session-life'
import { readStationCode } from '../../auth/station-code'
import { db, type Tx } from '../../db/client'
import { openCommand } from '../open-command'
import { Refusal } from '../refusal'
import { enrolStationInput } from './enrol-station.input'

/** Wrong codes from one network address are slowed down, and never stop being judged: a bakery shares one address. */
const limit = { freeTries: 10, mostTries: 1_000_000_000 }
const tries = (address: string) => `enrol-from:${address}`

/**
 * Enrols the tablet on which the code of a station is typed, once, while the code lasts and whoever drew it up still
 * may. @returns the tablet's secret, which is kept nowhere but there
 * Refuses: too-many-codes, station-code-dead.
 */
export const enrolStation = openCommand({
  name: 'stations.enrol-station',
  input: enrolStationInput,
  async prepare({ caller, now }) {
    if (!(await mayAttempt(db(), tries(caller.address), now, limit))) throw new Refusal('too-many-codes')
  },
  async run({ tx, caller, now, input }) {
    const station = await stationOfCode(tx, readStationCode(input.code), now)
    if (!station) throw Refusal.at('code', 'station-code-dead')
    const { bakeryId, id, name } = station
    const { count } = await tx.station.updateMany({
      where: { bakeryId, id, enrolledAt: null, withdrawnAt: null, codeEndsAt: { gt: now } },
      data: { enrolledAt: now, lastSeenAt: now },
    })
    if (count !== 1) throw Refusal.at('code', 'station-code-dead')
    await takeBackAttempt(tx, tries(caller.address), limit)
    await tx.signInPointer.deleteMany({ where: { bakeryId, targetId: id, kind: 'station_code' } })
    const secret = makeSecret()
    await tx.signInPointer.create({
      data: { hash: hashSecret('station', secret), kind: 'station', bakeryId, targetId: id },
    })
    return {
      value: { secret, name, bakery: station.bakery.name },
      audit: {
        bakeryId,
        who: { kind: 'station', stationId: id, stationName: name, personId: null },
        target: id,
        after: { device: caller.device.slice(0, 200) },
      },
    }
  },
})

async function stationOfCode(tx: Tx, code: string | null, now: Date) {
  if (code === null) return null
  const pointer = await tx.signInPointer.findFirst({
    where: { hash: hashSecret('station-code', code), kind: 'station_code' },
    select: { bakeryId: true, targetId: true },
  })
  if (!pointer) return null
  const station = await tx.station.findFirst({
    where: {
      bakeryId: pointer.bakeryId,
      id: pointer.targetId,
      enrolledAt: null,
      withdrawnAt: null,
      codeEndsAt: { gt: now },
      // Drawn up while the clock was wrong, its code would last for as long as the clock was ahead.
      madeAt: { lte: latestMoment() },
    },
    select: {
      bakeryId: true,
      id: true,
      name: true,
      bakery: { select: { name: true } },
      madeBy: { select: { role: true, endedAt: true } },
    },
  })
  if (!station) return null
  const { madeBy, ...rest } = station
  const may = madeBy.endedAt === null && levelOf({ kind: 'desk', role: madeBy.role }, 'manage-stations') === 'yes'
  return may ? rest : null
}
