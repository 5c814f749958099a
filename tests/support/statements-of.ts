import pg from 'pg'
import { vi } from 'vitest'

/** How many statements some work sends to the database, beside what it answers. */
export async function statementsOf<T>(work: () => Promise<T>): Promise<{ answer: T; statements: number }> {
  const sent = vi.spyOn(pg.Client.prototype, 'query')
  try {
    const answer = await work()
    return { answer, statements: sent.mock.calls.length }
  } finally {
    sent.mockRestore()
  }
}
