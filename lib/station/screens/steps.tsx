import { useState } from 'react'
import { outOfOrder, stepsToCome, timerOf } from '../../kitchen/steps/course-of-dough.input'
import { detailsOfStep, type StepKind } from '../../kitchen/steps/step-kinds.input'
import { station } from '../../words/en/station'
import { stationSteps as words } from '../../words/en/station-steps'
import type { FloorDough } from '../keep/facts'
import type { KeptBy } from '../keep/keep-entry'
import { keepStep } from '../keep/keep-step'
import { openDough } from '../keep/tablet'
import type { OutboxEntry } from '../outbox/entry'
import { stepsOfDough } from '../outbox/steps-of-dough'
import { sendOutbox } from '../talk/send-outbox'
import { shownTime } from '../ui/figures'
import { detailsSaid } from '../ui/said-of-step'
import { sayTimer } from '../ui/say-timer'
import { Tap } from '../ui/tap'
import { useNow } from '../ui/use-now'

type StepsProps = {
  dough: FloorDough
  entries: readonly OutboxEntry[]
  by: KeptBy
  /** Steps are what is done with the dough now, once it is weighed out. */
  isMain: boolean
  aheadMs: number
  temperatureUnit: '°C' | '°F'
  locale: string
  timeZone: string
}

/** What was done with a dough and when, what runs, and what is done next: a tap, or two where there is more to say. */
export function Steps({ dough, entries, by, isMain, aheadMs, temperatureUnit, ...clock }: StepsProps) {
  const [isOpen, setOpen] = useState(false)
  const [error, setError] = useState<string | null>(null)
  const now = useNow(1_000)
  const { id: batchId, code } = dough
  const steps = stepsOfDough(dough, entries, aheadMs)
  const { next, others } = stepsToCome(steps)
  const odd = outOfOrder(steps)
  const timer = timerOf(steps, dough.times)
  const said = timer && sayTimer(timer, now, clock)
  const enter = (step: StepKind) => openDough(batchId, { step: { kind: step, wrongId: null } })
  const keep = async (step: StepKind) => {
    setError(null)
    try {
      await keepStep({ batchId, code, step, agoS: 0, details: {}, fix: null, by, draft: null })
      void sendOutbox()
    } catch {
      setError(station.reading.notKept)
    }
  }
  return (
    <section>
      <h2>{words.title}</h2>
      {said && (
        <p>
          <b className="figure">{said.runs}</b> {said.until}
        </p>
      )}
      {steps.length === 0 && <p>{words.none}</p>}
      <ul className="rows">
        {steps.map((step) => (
          <li key={step.id} className="stood">
            <Tap look="row" onTap={() => void openDough(batchId, { step: { kind: step.step, wrongId: step.id } })}>
              <b className="figure">{shownTime(step.atMs, clock)}</b>
              <span>
                {words.done[step.step]}
                {detailsSaid(step, {
                  unit: temperatureUnit,
                  locale: clock.locale,
                  words: words.step,
                  language: 'en',
                }).map((each) => (
                  <small key={each}>
                    <br />
                    {each}
                  </small>
                ))}
              </span>
              <span className="end">
                {station.states[step.state]}
                <br />
                <small>{step.who}</small>
              </span>
            </Tap>
            {odd.includes(step) && <p className="attention">{words.odd}</p>}
          </li>
        ))}
      </ul>
      {(next === 'in_oven' || next === 'out_of_oven') && <p>{words.hotOven}</p>}
      <p role="alert" className="fault">
        {error}
      </p>
      <div className="more">
        {next && (
          <Tap
            // While a dough is weighed out the scales are what is done next.
            look={!isMain || (dough.state === 'weighing' && steps.length === 0) ? 'plain' : 'main'}
            onTap={() => void (detailsOfStep[next] ? enter(next) : keep(next))}
          >
            {words.go[next]}
          </Tap>
        )}
        <Tap look="quiet" onTap={() => setOpen((is) => !is)}>
          {isOpen ? words.otherClose : words.other}
        </Tap>
      </div>
      {isOpen && (
        <ul className="rows">
          {others.map((step) => (
            <li key={step}>
              <Tap look="row" onTap={() => void enter(step)}>
                {words.go[step]}
              </Tap>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
