'use client'

import { useState } from 'react'
import { ruleOf } from '@/lib/ui/field-rules'
import { FloorButton } from '@/lib/ui/floor-button'
import { Lines } from '@/lib/ui/lines'
import { floorControlClass } from '@/lib/ui/floor-control-class'
import { useFirstKept } from '@/lib/ui/use-first-kept'
import { say } from '@/lib/words/say'
import { CorrectForm, nameOfCorrection } from './correct-form'
import { DraftStatus } from './draft-status'
import { asksForAt, idOfField, keyOfPlace, type KeptReading, type ReadingPlaceProps } from './reading-types'
import { isAtFault, useReadingDraft, type DraftState } from './use-reading-draft'

/** One thing to read: what is in the book of it, and a large field for the reading that is still to come. */
export function ReadingPlace(props: ReadingPlaceProps) {
  const { batchId, place, measure, label, kept, needs, isOpen, mayKeep, rules, words, language } = props
  const key = keyOfPlace(place)
  const id = idOfField(place)
  const [value, setValue] = useState('')
  const [unit, setUnit] = useState(measure.units[0] ?? '')
  /** Which reading of the place it was when somebody began to type. */
  const [typedFor, setTypedFor] = useState<number | null>(null)
  const [correcting, setCorrecting] = useState<string | null>(null)
  const facts = { measure: measure.name, place: label }
  const repeat = firstFree(kept.map((reading) => reading.repeat))
  const asksFor = asksForAt(kept.length, measure, needs)
  // Where somebody else was faster and nothing further is asked for, the book keeps it aside as what it was typed for.
  const sentAs = asksFor === null ? (typedFor ?? repeat) : repeat

  const { state, send, empty, typed, drop } = useReadingDraft({
    name: `reading-${key}`,
    inTheBook: kept.map((reading) => reading.id),
    make: (typed) => ({
      id: typed.id,
      batchId,
      ...place,
      repeat: Number(typed.repeat),
      value: typed.value ?? '',
      unit: typed.unit ?? '',
      takenAt: typed.takenAt,
      confirmed: typed.confirmed === 'yes' || undefined,
    }),
    onKept(entry, sent) {
      props.onKept(
        {
          id: entry.id,
          ...place,
          repeat: entry.repeat,
          valueEntered: entry.value,
          unitEntered: entry.unit,
          byline: props.nowByline(),
          supersedesId: null,
          outside: sent.outOfRange ? { least: measure.least, most: measure.most } : null,
          mayCorrect: true,
        },
        sent.needs,
      )
      clear()
    },
    onBack(typed) {
      setValue(typed.value ?? '')
      if (typed.unit !== undefined && measure.units.includes(typed.unit)) setUnit(typed.unit)
      props.onDraft(key, true)
    },
    onArrived: clear,
    onRefused: props.onRefused,
    // It is the book's now; left in the field it would be sent as another one.
    onAside: clear,
  })
  const corrections = new Map(kept.map((reading) => [nameOfCorrection(reading.id), reading.id]))
  useFirstKept([...corrections.keys()], (name) => setCorrecting(corrections.get(name) ?? null))

  function clear(): void {
    setValue('')
    setTypedFor(null)
    props.onDraft(key, false)
  }

  function change(next: { value?: string; unit?: string }): void {
    const now = { value, unit, ...next }
    setValue(now.value)
    setUnit(now.unit)
    setTypedFor((former) => (now.value === '' ? null : (former ?? repeat)))
    if (now.value === '') drop()
    else typed(now)
    props.onDraft(key, now.value !== '')
  }

  const which = asksFor === 'third' ? words.third : repeat === 1 ? words.first : words.second
  const told = [
    ...(measure.repeats > 1 || repeat > 1 ? [which] : []),
    ...(measure.planned === null ? [] : [say(words.planned, language, { value: measure.planned })]),
  ]
  const isFixed = state.step === 'sending' || state.step === 'unsent'
  const keep = (confirmed?: true) => {
    if (state.step === 'sending') return
    if (value.trim() === '' && state.step !== 'unsent') {
      empty()
      document.getElementById(id)?.focus()
      return
    }
    void send({ value: value.trim(), unit, repeat: String(sentAs), ...(confirmed && { confirmed: 'yes' }) })
  }

  return (
    <div className="border-b border-rule py-3">
      <h3 className="font-semibold">{label}</h3>
      {kept.length > 0 ? (
        <ul>
          {kept.map((reading) => (
            <li key={reading.id} className="py-1">
              <div className="flex items-start justify-between gap-x-4">
                <p className="min-w-0">
                  <span className="text-lead font-bold whitespace-nowrap">{shown(reading)}</span>
                  <span className="block text-small text-ink-2">{reading.byline}</span>
                </p>
                {isOpen && reading.mayCorrect && correcting !== reading.id ? (
                  <button
                    type="button"
                    onClick={() => setCorrecting(reading.id)}
                    aria-label={say(words.correctFull, language, { value: shown(reading), ...facts })}
                    className="min-h-12 shrink-0 px-3 underline underline-offset-4 print:hidden"
                  >
                    {words.correct}
                  </button>
                ) : null}
              </div>
              {reading.outside ? (
                <p className="max-w-column font-semibold text-warn">{say(words.odd, language, reading.outside)}</p>
              ) : null}
              {correcting === reading.id ? (
                <CorrectForm
                  {...props}
                  reading={reading}
                  onDone={() => {
                    setCorrecting(null)
                    props.onDraft(reading.id, false)
                  }}
                />
              ) : null}
            </li>
          ))}
        </ul>
      ) : null}
      {/* What was typed stays beside the reading that was there first. */}
      {mayKeep && (asksFor || value !== '' || staysFor.has(state.step)) ? (
        <form
          noValidate
          onSubmit={(event) => {
            event.preventDefault()
            keep()
          }}
        >
          {measure.mind === null ? null : <p className="max-w-column font-semibold">{measure.mind}</p>}
          <p className="text-small text-ink-2">
            <Lines texts={told} />
          </p>
          <div className="mt-1 flex items-stretch gap-2">
            <input
              id={id}
              value={value}
              onChange={(event) => change({ value: event.target.value })}
              readOnly={isFixed}
              inputMode="decimal"
              enterKeyHint="send"
              autoComplete="off"
              maxLength={ruleOf(rules.take, 'value')?.mostLength}
              aria-label={say(words.fieldLabel, language, { ...facts, repeat })}
              aria-invalid={isAtFault(state) ? true : undefined}
              aria-describedby={`${id}-status`}
              className={floorControlClass('number')}
            />
            {measure.units.length > 1 ? (
              <select
                value={unit}
                onChange={(event) => change({ unit: event.target.value })}
                disabled={isFixed}
                aria-label={say(words.unit, language, facts)}
                className={floorControlClass('unit')}
              >
                {measure.units.map((each) => (
                  <option key={each}>{each}</option>
                ))}
              </select>
            ) : (
              <span className="flex min-w-[2.5rem] items-center text-lead text-ink-2">{unit}</span>
            )}
            <FloorButton
              tone="plain"
              disabled={state.step === 'sending'}
              fullLabel={state.step === 'unsent' ? undefined : say(words.keepFull, language, facts)}
            >
              {state.step === 'unsent' ? words.sendAgain : words.keep}
            </FloorButton>
          </div>
          <DraftStatus
            id={id}
            state={state}
            measure={measure}
            words={words}
            language={language}
            value={`${value.trim()}\u00a0${unit}`}
            sayMoment={props.sayMoment}
            onConfirm={() => keep(true)}
            onThrowAway={() => change({ value: '' })}
          />
        </form>
      ) : null}
    </div>
  )
}

/** What was typed stays in sight in these, also where the place asks for nothing any more. */
const staysFor: ReadonlySet<DraftState['step']> = new Set(['back', 'unsent', 'refused', 'aside'])

/** A correction to another piece may have left a gap. */
function firstFree(repeats: readonly number[]): number {
  let free = 1
  while (repeats.includes(free)) free++
  return free
}

function shown({ valueEntered, unitEntered }: KeptReading): string {
  return `${valueEntered}\u00a0${unitEntered}`
}
