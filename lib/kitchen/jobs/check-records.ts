import 'server-only'
import { db } from '../../db/client'
import type { RecordFault } from '../../db/generated/enums'
import { log } from '../../db/log'
import type { ChainFault } from '../audit/follow-chain'
import { verifyRecord } from '../audit/verify-record'
import type { Job } from './job'

/** Bakeries read at once. */
const atOnce = 100

/** Follows the whole record of each bakery, and keeps how it was found; a bakery whose record cannot be followed keeps no other from its turn. */
export const checkRecords: Job = {
  name: 'check-records',
  everyMs: 24 * 60 * 60_000,
  async run({ now, signal }) {
    let missed = 0
    for await (const bakeryId of bakeries()) {
      signal.throwIfAborted()
      try {
        await checkRecord(bakeryId, now)
      } catch (error) {
        missed += 1
        log.error({ event: 'record-not-followed', error })
      }
    }
    if (missed > 0) throw new Error(`${missed} bakeries: the record could not be followed`)
  },
}

async function* bakeries(): AsyncGenerator<string> {
  for (let after: string | undefined; ; ) {
    const found = await db().bakery.findMany({
      where: after === undefined ? {} : { bakeryId: { gt: after } },
      select: { bakeryId: true },
      orderBy: { bakeryId: 'asc' },
      take: atOnce,
    })
    for (const { bakeryId } of found) yield bakeryId
    after = found.at(-1)?.bakeryId
    if (found.length < atOnce) return
  }
}

/** @throws Error when it could not be followed; one that is not whole could */
async function checkRecord(bakeryId: string, now: Date): Promise<void> {
  const result = await verifyRecord.call(
    { kind: 'job', job: 'check-records', bakeryId, address: 'this machine', device: 'this machine', now: () => now },
    {},
  )
  if (!result.ok) throw new Error(`refused: ${result.refusal.code}`)
  const { entries, fault } = result.value
  const found = { at: now, entries, faultNumber: fault?.number ?? null, fault: fault && storedFault(fault.why) }
  await db().recordCheck.upsert({ where: { bakeryId }, create: { bakeryId, ...found }, update: found })
}

function storedFault(why: ChainFault['why']): RecordFault {
  return why === 'unknown-format' ? 'unknown_format' : why
}
