import 'server-only'
import type { Actor } from '../../auth/actor'
import { mayTry } from '../../auth/rights'
import { bookListener } from '../../db/book-listener'
import { db } from '../../db/client'
import { answer } from '../answer'
import type { Caller } from '../caller'
import { lookUpCaller } from '../find-caller'
import { Refusal } from '../refusal'
import type { Result } from '../result'
import { atMostEvery } from './at-most-every'
import { takePlace } from './places'

export type Follower = {
  /** Something of the book may have changed. What, the follower asks for as anybody does. */
  lookAgain(): void
  /** Nothing more is told: whoever it was is signed out, switched off or withdrawn, or the process ends. */
  end(): void
}

const checkEveryMs = 30_000
const gatherMs = 1_000

/**
 * Tells somebody who is signed in, or a tablet, whenever their bakery's book has changed, once a second at most. Following
 * is no use of a session: whoever only follows is idle. Who it is is looked up before each telling and twice a minute.
 * @param seen how far the record went when what they look at was made; null for nothing, so they are told at once
 * Refuses: not-signed-in, not-allowed, too-many-following.
 * @returns how to leave
 */
export function followBook(
  caller: Caller,
  follower: Follower,
  seen: number | null,
  pace = { checkEveryMs, gatherMs },
): Promise<Result<{ leave(): void }>> {
  const now = caller.now ?? (() => new Date())
  return answer(async () => {
    const actor = await lookUpCaller(caller, now())
    if (!actor) throw new Refusal('not-signed-in')
    if (!mayTry(actor, 'follow-book')) throw new Refusal('not-allowed')
    const steps: (() => void)[] = []
    let isOver = false
    const leave = () => {
      isOver = true
      for (const step of steps.splice(0)) step()
    }
    const end = () => {
      if (isOver) return
      leave()
      follower.end()
    }
    const freePlace = takePlace(keyOf(actor), end)
    if (!freePlace) throw new Refusal('too-many-following')
    steps.push(freePlace)
    /** A book that does not answer says nothing of who it is. */
    const isStillThere = async () => {
      try {
        return (await lookUpCaller(caller, now())) !== null
      } catch {
        return true
      }
    }
    const check = async (then?: () => void) => {
      if (!(await isStillThere())) end()
      else if (!isOver) then?.()
    }
    const gathered = atMostEvery(pace.gatherMs, () => void check(() => follower.lookAgain()))
    const checking = setInterval(() => void check(), pace.checkEveryMs)
    checking.unref()
    steps.push(gathered.stop, () => clearInterval(checking), bookListener().listen(actor.bakeryId, gathered.call))
    // Asked once everything from now on is heard.
    if (seen === null || (await recordNumber(actor.bakeryId)) !== seen) gathered.call()
    return { value: { leave } }
  })
}

/** How far a bakery's record goes; -1 where that cannot be read just now. */
async function recordNumber(bakeryId: string): Promise<number> {
  const head = await db()
    .auditHead.findUnique({ where: { bakeryId }, select: { number: true } })
    .catch(() => null)
  return Number(head?.number ?? -1)
}

function keyOf(actor: Actor): string {
  const who = actor.kind === 'desk' ? actor.personId : actor.kind === 'station' ? actor.stationId : actor.kind
  return `${actor.bakeryId} ${who}`
}
