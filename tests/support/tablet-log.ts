import type { Page } from 'playwright/test'
import { db } from '../../lib/db/client'

export type LogLine = { id: string; hash: string; counter: number; state: string }

/** What a tablet holds of its entries by its own store, read without a line of the app's; the oldest first. */
export async function logOfTablet(page: Page): Promise<LogLine[]> {
  return page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('evendough-station')
      opening.onsuccess = () => resolve(opening.result)
      opening.onerror = () => reject(new Error('the store does not open'))
    })
    const all = database.transaction('outbox').objectStore('outbox').getAll()
    await new Promise((resolve, reject) => {
      all.onsuccess = resolve
      all.onerror = () => reject(new Error('the store is not read'))
    })
    database.close()
    return (all.result as LogLine[])
      .map(({ id, hash, counter, state }) => ({ id, hash, counter, state }))
      .sort((a, b) => a.counter - b.counter)
  })
}

/** Every entry that the database holds, of whatever kind, as `id hash`: as often as it is there. */
export async function entriesInBook(): Promise<string[]> {
  const select = { id: true, contentHash: true } as const
  const rows = await Promise.all([
    db().reading.findMany({ select }),
    db().weighing.findMany({ select }),
    db().note.findMany({ select }),
    db().step.findMany({ select }),
    db().batchCause.findMany({ select }),
    db().equipmentCheck.findMany({ select }),
    db().pieceCount.findMany({ select }),
  ])
  return rows
    .flat()
    .map(({ id, contentHash }) => `${id} ${contentHash}`)
    .sort()
}
