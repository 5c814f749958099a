import { liveQuery } from 'dexie'
import { useEffect, useState } from 'react'

/** What is on the tablet, read anew whenever something there changes, by whichever page. */
export function useLive<Value>(read: () => Promise<Value>): { value: Value | null; failed: boolean } {
  const [live, setLive] = useState<{ value: Value | null; failed: boolean }>({ value: null, failed: false })
  useEffect(() => {
    const subscription = liveQuery(read).subscribe({
      next: (value) => setLive({ value, failed: false }),
      error: () => setLive((former) => ({ ...former, failed: true })),
    })
    return () => subscription.unsubscribe()
  }, [read])
  return live
}
