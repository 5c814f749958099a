import { useEffect, useId, useState } from 'react'
import { detailsOfStep, stepTempC, type StepKind } from '../../kitchen/steps/step-kinds.input'
import { station } from '../../words/en/station'
import { stationSteps } from '../../words/en/station-steps'
import { say } from '../../words/say'
import type { KeptBy } from '../keep/keep-entry'
import { keepStep, stepDraft } from '../keep/keep-step'
import { atDough, openDough, tablet } from '../keep/tablet'
import { readTyped, type FieldFault, type TypedStep } from '../outbox/typed-step'
import { sendOutbox } from '../talk/send-outbox'
import { shownEnd } from '../ui/figures'
import { inCelsius, inTemperatureUnit } from '../ui/said-of-step'
import { minutes } from '../ui/say-timer'
import { Tap } from '../ui/tap'
import { useGoOn } from '../ui/use-go-on'

const words = stationSteps.step
const agoMin = [0, 5, 10, 20, 30, 60]
const longest = { setting: 60, place: 60, beside: 200, chamberTempC: 8, setTempC: 8, readTempC: 8 }

type StepScreenProps = {
  dough: { id: string; code: string }
  step: StepKind
  by: KeptBy
  temperatureUnit: '°C' | '°F'
  locale: string
}

/** A step with what there is to say of it, all of which may be left out, and with when it was where somebody is late. */
export function StepScreen({ dough, step, by, temperatureUnit: unit, locale }: StepScreenProps) {
  const [typed, setTyped] = useState<TypedStep>({})
  const [ago, setAgo] = useState(0)
  const [faults, setFaults] = useState<Partial<Record<keyof TypedStep, FieldFault>>>({})
  const [error, setError] = useState<string | null>(null)
  const goOn = useGoOn()
  const id = useId()
  const draft = stepDraft(by.personId, dough.id, step)
  useEffect(() => {
    void tablet.drafts.get(draft).then((kept) => {
      if (kept) setTyped((now) => ({ ...(JSON.parse(kept.text) as TypedStep), ...now }))
    })
  }, [draft])
  const type = (more: TypedStep) => {
    const now = { ...typed, ...more }
    setTyped(now)
    void tablet.drafts.put({ place: draft, text: JSON.stringify(now) })
  }
  const keep = async () => {
    const read = readTyped(step, typed, (value) => inCelsius(value, unit))
    setFaults(read.faults)
    if (Object.keys(read.faults).length > 0) return
    const { id: batchId, code } = dough
    try {
      await keepStep({ batchId, code, step, agoS: ago * 60, details: read.details, fix: null, by, draft })
    } catch {
      setError(station.reading.notKept)
      return
    }
    void sendOutbox()
    await goOn(atDough(dough.id))
  }
  const fields = detailsOfStep[step] ?? []
  const end = (tempC: number) => shownEnd(inTemperatureUnit(tempC, unit), unit, locale)
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{say(words.of, 'en', { code: dough.code, step: stationSteps.done[step] })}</h1>
        <Tap look="quiet" onTap={() => void openDough(dough.id)}>
          {words.back}
        </Tap>
      </div>
      {step === 'in_oven' && <p>{stationSteps.hotOven}</p>}
      {fields.length > 0 && <p>{words.said}</p>}
      {fields.map((name) =>
        name === 'steam' ? (
          <div key={name} role="group" aria-label={words.fields.steam} className="acts">
            {([true, false, null] as const).map((steam) => (
              <Tap
                key={String(steam)}
                look="plain"
                pressed={(typed.steam ?? null) === steam}
                onTap={() => type({ steam })}
              >
                {steam === null ? words.steam.unsaid : steam ? words.steam.yes : words.steam.no}
              </Tap>
            ))}
          </div>
        ) : (
          <div key={name}>
            <label htmlFor={`${id}${name}`}>{say(words.fields[name], 'en', { unit })}</label>
            <input
              id={`${id}${name}`}
              className="line"
              value={typed[name] ?? ''}
              maxLength={longest[name]}
              inputMode={name.endsWith('C') ? 'decimal' : 'text'}
              autoComplete="off"
              aria-invalid={faults[name] !== undefined}
              aria-describedby={`${id}${name}-fault`}
              onChange={({ target }) => type({ [name]: target.value })}
            />
            <p id={`${id}${name}-fault`} role="alert" className="fault">
              {faults[name] === 'no-number' && words.noNumber}
              {faults[name] === 'outside' &&
                say(words.outside, 'en', { least: end(stepTempC.least), most: end(stepTempC.most) })}
            </p>
          </div>
        ),
      )}
      <h2>{words.when}</h2>
      <div role="group" aria-label={words.when} className="acts times">
        {agoMin.map((each) => (
          <Tap key={each} look="plain" pressed={ago === each} onTap={() => setAgo(each)}>
            {each === 0 ? words.now : say(words.ago, 'en', { time: minutes(each * 60_000, locale) })}
          </Tap>
        ))}
      </div>
      <p role="alert" className="fault">
        {error}
      </p>
      <Tap look="main" onTap={() => void keep()}>
        {words.keep}
      </Tap>
    </div>
  )
}
