import { useState } from 'react'
import { isOwnSlip } from '../../kitchen/conduct/is-own-slip.input'
import { longestAgoS, stepDetails } from '../../kitchen/steps/step-kinds.input'
import { station } from '../../words/en/station'
import { stationSteps } from '../../words/en/station-steps'
import { say } from '../../words/say'
import type { KeptBy } from '../keep/keep-entry'
import { keepStep, stepDraft } from '../keep/keep-step'
import { atDough, openDough } from '../keep/tablet'
import type { StepStanding } from '../outbox/steps-of-dough'
import { sendOutbox } from '../talk/send-outbox'
import { shownTime } from '../ui/figures'
import { minutes } from '../ui/say-timer'
import { Tap } from '../ui/tap'
import { useNow } from '../ui/use-now'
import { useGoOn } from '../ui/use-go-on'
import { Reasons } from './reasons'
import { usePinFirst } from './use-pin-first'

const words = stationSteps.fix
const byMin = [1, 5, 10, 15, 30, 60]

type FixStepProps = {
  dough: { id: string; code: string }
  wrong: StepStanding
  by: KeptBy
  /** When whoever is on the tablet typed their PIN here, ms. */
  pinAt: number
  correctsAny: boolean
  locale: string
  timeZone: string
}

/** What is wrong with a step that was entered, and why: it was at another time, or was not done at all. */
export function FixStep({ dough, wrong, by, pinAt, correctsAny, locale, timeZone }: FixStepProps) {
  /** How much earlier it was, min; less than nothing for later, and `not` where it was not done. */
  const [said, setSaid] = useState<number | 'not' | null>(null)
  const [error, setError] = useState<string | null>(null)
  const goOn = useGoOn()
  const draft = `${stepDraft(by.personId, dough.id, wrong.step)} why`
  const isOwn = wrong.personId === by.personId
  const now = useNow()
  /** How long ago it was, s, from a moment. */
  const agoOf = (from: number, earlierMin: number) => Math.round((from - wrong.atMs) / 1000) + earlierMin * 60
  const keep = async (reason: string) => {
    if (said === null) return
    const isDone = said !== 'not'
    try {
      const isKept = await keepStep({
        batchId: dough.id,
        code: dough.code,
        step: wrong.step,
        agoS: isDone ? agoOf(Date.now(), said) : 0,
        details: isDone ? Object.fromEntries(stepDetails.map((name) => [name, wrong[name]])) : {},
        fix: { wrongId: wrong.id, reason, isDone },
        by,
        draft,
      })
      if (!isKept) {
        setError(station.fix.taken)
        return
      }
    } catch {
      setError(station.reading.notKept)
      return
    }
    void sendOutbox()
    await goOn(atDough(dough.id))
  }
  const isSlip = isOwnSlip(
    { person: { id: wrong.personId }, receivedAt: new Date(wrong.receivedMs) },
    { person: { id: by.personId }, receivedAt: new Date() },
  )
  const pinFirst = usePinFirst<string>({ isSlip, pinAt, by, onPut: (reason) => void keep(reason) })
  if (pinFirst.pad) return pinFirst.pad
  const inDay = (earlierMin: number) => agoOf(now, earlierMin) >= 0 && agoOf(now, earlierMin) <= longestAgoS
  const ways = [
    ...byMin.map((each) => ({ min: each, word: words.earlier })),
    ...byMin.map((each) => ({ min: -each, word: words.later })),
  ].filter(({ min }) => inDay(min))
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{say(stationSteps.step.of, 'en', { code: dough.code, step: stationSteps.done[wrong.step] })}</h1>
        <Tap look="quiet" onTap={() => void openDough(dough.id)}>
          {stationSteps.step.back}
        </Tap>
      </div>
      <p>{say(words.stands, 'en', { who: wrong.who, at: shownTime(wrong.atMs, { locale, timeZone }) })}</p>
      <p role="alert" className="fault">
        {error}
      </p>
      {!isOwn && !correctsAny ? (
        <p>{words.notYours}</p>
      ) : said === null ? (
        <>
          <h2>{words.which}</h2>
          <ul className="rows">
            <li>
              <Tap look="row" onTap={() => setSaid('not')}>
                {words.not}
              </Tap>
            </li>
            {ways.map(({ min, word }) => (
              <li key={min}>
                <Tap look="row" onTap={() => setSaid(min)}>
                  {say(word, 'en', { time: minutes(Math.abs(min) * 60_000, locale) })}
                </Tap>
              </li>
            ))}
          </ul>
        </>
      ) : (
        <Reasons reasons={Object.values(words.reasons)} draft={draft} onChoose={pinFirst.put} />
      )}
    </div>
  )
}
