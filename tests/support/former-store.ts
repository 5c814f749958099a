import type { Page } from 'playwright/test'

/** Tables of a tablet's store with their keys and indexes, by the version from which each was there. */
const tables = [
  { name: 'outbox', since: 1, keyPath: 'id', indexes: ['state', 'counter'] },
  { name: 'holders', since: 1, keyPath: 'personId', indexes: [] },
  { name: 'drafts', since: 1, keyPath: 'place', indexes: [] },
  { name: 'kept', since: 1, keyPath: 'name', indexes: [] },
  { name: 'lists', since: 4, keyPath: 'batchId', indexes: [] },
  { name: 'photos', since: 7, keyPath: 'id', indexes: ['state'] },
  { name: 'photoPieces', since: 7, keyPath: ['photoId', 'number'], indexes: ['photoId'] },
]

export type FormerRows = Record<string, Record<string, unknown>[]>

/** Everything that lies on a tablet. */
export function readStore(page: Page): Promise<FormerRows> {
  return page.evaluate(
    async (names) => {
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        const opening = indexedDB.open('evendough-station')
        opening.onsuccess = () => resolve(opening.result)
        opening.onerror = () => reject(new Error('the store does not open'))
      })
      const read = names.map(
        (name) =>
          new Promise<[string, Record<string, unknown>[]]>((resolve) => {
            const all = database.transaction(name).objectStore(name).getAll()
            all.onsuccess = () => resolve([name, all.result as Record<string, unknown>[]])
          }),
      )
      const rows = Object.fromEntries(await Promise.all(read))
      database.close()
      return rows
    },
    tables.map(({ name }) => name),
  )
}

/** Makes the store as a former build wrote it, with the tables of its version, which its library counts tenfold. */
export function putFormerStore(page: Page, rows: FormerRows, version: number): Promise<void> {
  return page.evaluate(
    async ({ rows, version, tables }) => {
      const former = await new Promise<IDBDatabase>((resolve, reject) => {
        const opening = indexedDB.open('evendough-station', version * 10)
        opening.onupgradeneeded = () => {
          for (const { name, keyPath, indexes } of tables) {
            const store = opening.result.createObjectStore(name, { keyPath })
            for (const index of indexes) store.createIndex(index, index)
          }
        }
        opening.onsuccess = () => resolve(opening.result)
        opening.onerror = () => reject(new Error('the store does not open'))
      })
      const names = tables.map(({ name }) => name)
      const put = former.transaction(names, 'readwrite')
      for (const name of names) for (const row of rows[name] ?? []) put.objectStore(name).put(row)
      await new Promise((resolve) => (put.oncomplete = resolve))
      former.close()
    },
    { rows, version, tables: tables.filter(({ since }) => since <= version) },
  )
}
