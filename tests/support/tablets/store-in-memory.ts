type Row = Record<string, unknown>

/**
 * A tablet's store as the tablet's modules use it, without a browser: rows are copied in and out, as a real one does, and
 * what is done in one is done whole before the next begins. It outlives the page, as the disk does.
 */
export function storeInMemory() {
  const outbox = table('id')
  const kept = table('name')
  let last: Promise<unknown> = Promise.resolve()
  const module = {
    tablet: {
      outbox,
      holders: table('personId'),
      lists: table('batchId'),
      drafts: table('place'),
      photos: table('id'),
      kept,
    },
    inOne: <Value>(work: () => Promise<Value>): Promise<Value> => {
      const done = last.then(work)
      last = done.catch(() => undefined)
      return done
    },
    recall: async (name: string) => (await kept.get(name))?.value,
    remember: (name: string, value: unknown) => kept.put({ name, value }),
    forget: (name: string) => kept.delete(name),
  }
  return module
}

export type StoreInMemory = ReturnType<typeof storeInMemory>

function table(key: string) {
  const rows = new Map<unknown, Row>()
  const all = () => [...rows.values()].map((row) => structuredClone(row))
  const put = async (row: Row) => void rows.set(row[key], structuredClone(row))
  return {
    get: async (id: unknown) => structuredClone(rows.get(id)),
    put,
    async add(row: Row) {
      if (rows.has(row[key])) throw new Error(`${String(row[key])} is there already`)
      return put(row)
    },
    async update(id: unknown, change: Row) {
      const row = rows.get(id)
      if (row) await put({ ...row, ...change })
    },
    delete: async (id: unknown) => void rows.delete(id),
    toArray: async () => all(),
    where(field: string) {
      const among = (wanted: readonly unknown[], also: (row: Row) => boolean = () => true) => {
        const found = () => all().filter((row) => wanted.includes(row[field]) && also(row))
        return {
          toArray: async () => found(),
          sortBy: async (by: string) => found().sort((a, b) => Number(a[by]) - Number(b[by])),
          filter: (more: (row: Row) => boolean) => among(wanted, more),
          async delete() {
            for (const row of found()) rows.delete(row[key])
          },
        }
      }
      return { equals: (value: unknown) => among([value]), anyOf: (...values: unknown[]) => among(values) }
    },
  }
}
