import { useEffect, useState } from 'react'

const everyMs = 15_000

/** The tablet's clock, looked at again and again: what falls due does so without anybody touching the tablet. */
export function useNow(): number {
  const [now, setNow] = useState(() => Date.now())
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), everyMs)
    return () => clearInterval(timer)
  }, [])
  return now
}
