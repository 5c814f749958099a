import { useEffect, useState } from 'react'

/**
 * Keeps the screen awake while something runs, and lets it go dark when nothing does.
 * @returns false where the browser refused
 */
export function useWakeLock(isWanted: boolean): boolean {
  const [isRefused, setRefused] = useState(false)
  useEffect(() => {
    if (!isWanted) return
    let lock: WakeLockSentinel | null = null
    let isOver = false
    const take = async () => {
      // A page that is not seen gets none, and loses the one that it had.
      if (document.visibilityState !== 'visible' || (lock && !lock.released)) return
      try {
        const taken = await navigator.wakeLock.request('screen')
        if (isOver) await taken.release()
        else lock = taken
        setRefused(false)
      } catch {
        setRefused(true)
      }
    }
    const again = () => void take()
    again()
    document.addEventListener('visibilitychange', again)
    return () => {
      isOver = true
      document.removeEventListener('visibilitychange', again)
      void lock?.release()
    }
  }, [isWanted])
  return !(isWanted && isRefused)
}
