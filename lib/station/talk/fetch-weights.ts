import { inOne, tablet } from '../keep/tablet'
import type { WeighList } from '../keep/weigh-facts'
import { askBook, refusalIn } from './ask-book'

/** What the book says where somebody is not given a list any more, and it is of no use here either. */
const gone = ['dough-key-closed', 'not-found', 'batch-not-begun', 'batch-not-baked', 'plan-unreadable']

/**
 * Fetches what a dough weighs, for somebody who has opened it, and keeps it on the tablet for them.
 * @returns null when it lies there, otherwise why not: words, or nothing without an answer
 */
export async function fetchWeights(
  batchId: string,
  personId: string,
  token: string | null,
): Promise<{ words: string | null } | null> {
  const answer = await askBook(`/api/v1/station/weights?batchId=${encodeURIComponent(batchId)}`, { token })
  const list = answer?.status === 200 ? (answer.body as Partial<WeighList>) : null
  if (list?.batchId === batchId && list.lines && list.scales) {
    await inOne(async () => {
      const before = await tablet.lists.get(batchId)
      await tablet.lists.put({
        batchId,
        list: list as WeighList,
        at: Date.now(),
        openedBy: [...new Set([...(before?.openedBy ?? []), personId])],
        swaps: before?.swaps ?? [],
      })
    })
    return null
  }
  const refused = refusalIn(answer)
  if (refused && gone.includes(refused.code)) await letGo(batchId, personId)
  return { words: refused?.words ?? null }
}

/** Takes a list away from somebody, and from the tablet when it is nobody's. */
async function letGo(batchId: string, personId: string): Promise<void> {
  await inOne(async () => {
    const kept = await tablet.lists.get(batchId)
    const openedBy = (kept?.openedBy ?? []).filter((each) => each !== personId)
    if (openedBy.length > 0) await tablet.lists.update(batchId, { openedBy })
    else await tablet.lists.delete(batchId)
  })
}
