import { connected, type FreshDatabase } from './database'

/** Waits until a statement in the database waits for a lock, as PostgreSQL itself sees it. */
export async function untilSomebodyWaits({ name, superUrl }: FreshDatabase): Promise<void> {
  await connected(superUrl, async (client) => {
    const deadline = Date.now() + 10_000
    for (;;) {
      const { rowCount } = await client.query(
        `SELECT 1 FROM pg_stat_activity WHERE datname = $1 AND wait_event_type = 'Lock'`,
        [name],
      )
      if (rowCount) return
      if (Date.now() > deadline) throw new Error('nobody waited')
    }
  })
}
