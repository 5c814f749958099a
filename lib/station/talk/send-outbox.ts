import { station as words } from '../../words/en/station'
import { inOne, recall, tablet } from '../keep/tablet'
import { backOffMs } from '../outbox/back-off'
import { judgeAnswer } from '../outbox/judge-answer'
import { nextToSend } from '../outbox/next-to-send'
import { askBook } from './ask-book'
import { giveBack } from './give-back'
import { knowWho } from './know-who'
import { tellOnline } from './online'
import { sendNextPhoto } from './send-next-photo'

let failures = 0
let isWanted = false
let later: ReturnType<typeof setTimeout> | undefined

/**
 * Sends what waits, one request after another, until nothing does or the book does not answer; then it comes back by
 * itself. One page of the tablet sends at a time, however many are open.
 */
export async function sendOutbox(): Promise<void> {
  clearTimeout(later)
  isWanted = true
  const isToRetry = await navigator.locks.request('evendough-station-sender', { ifAvailable: true }, async (lock) => {
    if (!lock) return false
    while (isWanted) {
      // Whoever keeps something while this sends asks anew, and so does a network that comes back.
      isWanted = false
      if (!(await giveBack())) return true
      let went = await sendNext()
      while (went === 'sent') went = await sendNext()
      // Photos are large, so they come after everything else, and make way for it.
      if (went === 'nothing') went = await sendNextPhoto(() => isWanted)
      if (went === 'sent') isWanted = true
      if (went === 'failed' && !isWanted) return true
    }
    return false
  })
  if (!isToRetry) return
  failures += 1
  later = setTimeout(() => void sendOutbox(), backOffMs(failures, Math.random()))
}

async function sendNext(): Promise<'nothing' | 'sent' | 'failed'> {
  if (await recall('withdrawn')) return 'nothing'
  const [entries, holders] = await Promise.all([
    tablet.outbox.where('state').equals('waiting').toArray(),
    tablet.holders.toArray(),
  ])
  const next = nextToSend(entries, holders)
  if (!next) return 'nothing'
  const answer = await askBook('/api/v1/entries', {
    token: next.token,
    body: { entries: next.entries.map(({ kind, payload }) => ({ kind, ...payload })) },
  })
  const judged = judgeAnswer(next.entries, answer, words.list.unreadable)
  tellOnline(judged.outcome !== 'again')
  switch (judged.outcome) {
    case 'answered': {
      const settledAt = Date.now()
      await inOne(async () => {
        for (const { id, ...became } of judged.settled) await tablet.outbox.update(id, { ...became, settledAt })
      })
      // Where only some have an answer, the rest come again after a pause.
      const isWhole = judged.settled.length === next.entries.length
      if (isWhole) failures = 0
      return isWhole ? 'sent' : 'failed'
    }
    case 'who':
      return (await knowWho(next.personId, next.token)) ? 'failed' : 'sent'
    case 'again':
      return 'failed'
    default:
      return judged satisfies never
  }
}
