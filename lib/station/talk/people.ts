import { forget, inOne, recall, remember, tablet } from '../keep/tablet'
import { pinWanted } from '../outbox/holds'
import type { Answer } from '../outbox/judge-answer'
import { askBook, refusalIn } from './ask-book'

type CameOn = { shiftToken?: string; endsAt?: string; person?: { id: string; name: string } }

/** Puts on the tablet whom the book says it is. @returns whether it said so */
async function cameOn(answer: Answer, pinAt: number | null): Promise<boolean> {
  const given = answer?.body as CameOn | undefined
  if (answer?.status !== 200 || !given?.shiftToken || !given.endsAt || !given.person) return false
  const { shiftToken: token, endsAt, person } = given
  await inOne(async () => {
    await tablet.holders.put({
      personId: person.id,
      name: person.name,
      token,
      endsAt: Date.parse(endsAt),
      asks: 'nothing',
      ...(pinAt === null ? {} : { pinAt }),
    })
    await remember('on', { personId: person.id, touchedAt: Date.now() })
    if (pinAt === null) return
    // What waited for this PIN goes on.
    await tablet.outbox
      .where('state')
      .equals('attention')
      .filter((entry) => entry.personId === person.id && entry.refusal === pinWanted)
      .modify({ state: 'waiting', refusal: null, words: null })
  })
  return true
}

/** Lets the book judge a PIN. @returns null when the person is on, otherwise why not: words, or nothing without an answer */
export async function logOnAs(personId: string, pin: string): Promise<{ words: string | null } | null> {
  const answer = await askBook('/api/v1/station/log-on', { body: { personId, pin } })
  if (await cameOn(answer, Date.now())) return null
  const { problems } = (answer?.body ?? {}) as { problems?: { pin?: string } }
  return { words: problems?.pin ?? refusalIn(answer)?.words ?? null }
}

/** Lets the book judge a badge, of which nothing stays here. @returns as `logOnAs` */
export async function logOnByBadge(badge: string): Promise<{ words: string | null } | null> {
  const answer = await askBook('/api/v1/station/show-badge', { body: { badge } })
  return (await cameOn(answer, null)) ? null : { words: refusalIn(answer)?.words ?? null }
}

/**
 * Goes on as somebody whose time here is not over. Without an answer they are on all the same: the book judges what
 * they keep when it comes in. @returns false where the book wants the PIN
 */
export async function goOnAs(personId: string): Promise<boolean> {
  const holder = await tablet.holders.get(personId)
  if (!holder?.token) return false
  const answer = await askBook('/api/v1/station/go-on', { body: { shiftToken: holder.token } })
  const wantsPin = refusalIn(answer)?.code === 'pin-again'
  await inOne(async () => {
    if (answer?.status === 200) await tablet.holders.update(personId, { asks: 'nothing' })
    if (!wantsPin) return
    await tablet.holders.update(personId, { asks: 'pin', token: null })
    if ((await recall('on'))?.personId === personId) await forget('on')
  })
  return !wantsPin
}

/** Puts a person whose time is not over on the tablet, at once. */
export async function beOn(personId: string): Promise<void> {
  await remember('on', { personId, touchedAt: Date.now() })
}

/** Logs whoever is on the tablet off: their PIN is asked next time, here and by the book. */
export async function logOff(): Promise<void> {
  const on = await recall('on')
  if (!on) return
  const token = (await tablet.holders.get(on.personId))?.token
  await inOne(async () => {
    await forget('on')
    await tablet.holders.update(on.personId, { token: null, asks: 'pin' })
  })
  if (token) await askBook('/api/v1/station/log-off', { token, body: {} })
}

/** Makes the tablet a new one, with nobody on it and nothing to read; what lies on it to be sent stays. */
export async function beginAnew(): Promise<void> {
  await inOne(async () => {
    await tablet.lists.clear()
    for (const name of ['on', 'at', 'floor', 'asking', 'begun', 'out', 'withdrawn'] as const) await forget(name)
    await tablet.holders.toCollection().modify({ token: null, asks: 'pin' })
  })
}
