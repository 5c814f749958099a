import { useEffect, useSyncExternalStore } from 'react'
import { stationSteps } from '../../words/en/station-steps'
import { say } from '../../words/say'
import { silence } from '../keep/silence'
import { openDough } from '../keep/tablet'
import { shownTimers, type ShownTimer } from '../outbox/shown-timers'
import type { CalledLook, RunningTimer } from '../outbox/steps-of-dough'
import { sayTimer } from '../ui/say-timer'
import { beep, listenSound, readSound } from '../ui/sound'
import { Tap } from '../ui/tap'
import { useNow } from '../ui/use-now'
import { useWakeLock } from '../ui/use-wake-lock'

const words = stationSteps.timers
const everyMs = 1_000
const beepEveryMs = 2_000

type TimersProps = {
  timers: readonly RunningTimer[]
  looks: readonly CalledLook[]
  silenced: readonly string[]
  /** Those that have time left are shown as well. */
  isBoard: boolean
  /** Whether somebody is on the tablet, who can open a dough. */
  opens: boolean
  locale: string
  timeZone: string
}

/**
 * What runs, on whatever screen somebody is and with nobody on the tablet: it is worked out of the stored steps at each
 * look, so that it stands right after a reload. What has run out flashes and sounds until anybody silences it.
 */
export function Timers({ timers: running, looks, silenced, isBoard, opens, ...clock }: TimersProps) {
  const now = useNow(everyMs)
  const timers = shownTimers(running, looks, now)
  const hasSound = useSyncExternalStore(listenSound, readSound)
  const ringing = timers.filter(({ key, endsMs }) => endsMs <= now && !silenced.includes(key))
  const staysAwake = useWakeLock(timers.some(({ endsMs }) => endsMs > now) || ringing.length > 0)
  const isRinging = ringing.length > 0
  useEffect(() => {
    if (!isRinging || !hasSound) return
    beep()
    const timer = setInterval(beep, beepEveryMs)
    return () => clearInterval(timer)
  }, [isRinging, hasSound])
  const shown = isBoard ? timers.filter((timer) => !ringing.includes(timer)) : []
  if (ringing.length + shown.length === 0) return null
  const keys = timers.map(({ key }) => key)
  return (
    <section className="narrow timers" aria-label={words.title}>
      <div role="alert" className="rows">
        {ringing.map((timer) => (
          <p key={timer.key} className="rings">
            {sayRings(timer)}
          </p>
        ))}
      </div>
      {ringing.map((timer) => {
        const said = sayTimer(timer, now, clock)
        return (
          <div key={timer.key} className="heads">
            <p>
              <b>{said.runs}</b> <span>{said.until}</span>
            </p>
            <Tap look="plain" onTap={() => void silence([timer.key], keys)}>
              {ringing.length > 1 ? say(words.silenceOf, 'en', { code: timer.code }) : words.silence}
            </Tap>
          </div>
        )
      })}
      {shown.length > 0 && <h2>{words.title}</h2>}
      <ul className="rows">
        {shown.map((timer) => (
          <li key={timer.key}>
            {opens ? (
              <Tap look="row" onTap={() => void openDough(timer.batchId)}>
                <Timer timer={timer} now={now} {...clock} />
              </Tap>
            ) : (
              <div className="tap-row lying">
                <Timer timer={timer} now={now} {...clock} />
              </div>
            )}
          </li>
        ))}
      </ul>
      {!hasSound && <p className="attention">{words.noSound}</p>}
      {!staysAwake && <p className="attention">{words.noWake}</p>}
    </section>
  )
}

/** What is called out: that time is up, that somebody is to look, or that it has waited longest. */
function sayRings({ calls, phase, code }: ShownTimer): string {
  if (phase === 'fold') return say(words.folds, 'en', { code })
  const said = { time: words.rings, look: words.looks, longest: words.longest }
  return say(said[calls], 'en', { code, phase: words.phases[phase] })
}

type TimerProps = { timer: ShownTimer; now: number; locale: string; timeZone: string }

function Timer({ timer, now, ...clock }: TimerProps) {
  const { runs, until } = sayTimer(timer, now, clock)
  return (
    <>
      <b className="figure">{timer.code}</b>
      <b>{runs}</b>
      <span className="end">{until}</span>
    </>
  )
}
