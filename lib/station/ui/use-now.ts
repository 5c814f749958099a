import { useEffect, useState } from 'react'

/** The tablet's clock, looked at again and again: what falls due does so without anybody touching the tablet. */
export function useNow(everyMs = 15_000): number {
  const [now, setNow] = useState(() => Date.now())
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), everyMs)
    return () => clearInterval(timer)
  }, [everyMs])
  return now
}
