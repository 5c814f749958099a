import { useState, type ReactNode } from 'react'
import { say } from '../../words/say'
import { station } from '../../words/en/station'
import { stationChecks as words } from '../../words/en/station-checks'
import type { FloorInstrument } from '../keep/facts'
import type { KeptBy } from '../keep/keep-entry'
import { checkDraft, keepCheck } from '../keep/keep-check'
import { remember } from '../keep/tablet'
import { judgeCheck } from '../outbox/judge-check'
import { readTyped } from '../outbox/typed-digits'
import { sendOutbox } from '../talk/send-outbox'
import { shownEnd, shownTyped, shownValue } from '../ui/figures'
import { NumberPad } from '../ui/number-pad'
import { Tap } from '../ui/tap'
import { useDraft } from '../ui/use-draft'

type CheckProps = { instrument: FloorInstrument; by: KeptBy; unit: string; locale: string }

/** One check: what the test weight weighs, where nobody has said it, and then what the scale or the thermometer shows. */
export function Check({ instrument, by, unit, locale }: CheckProps) {
  const [mass, setMass] = useState<string | null>(null)
  const asksMass = instrument.kind === 'scale' && instrument.testMassG === null && mass === null
  return asksMass ? (
    <TestMass {...{ instrument, by, unit, locale }} onGo={setMass} />
  ) : (
    <Shown {...{ instrument, by, unit, locale, mass }} />
  )
}

function TestMass({ instrument, by, unit, locale, onGo }: CheckProps & { onGo(mass: string): void }) {
  const { text, type, isLost } = useDraft(checkDraft(by.personId, instrument.id, 'mass'))
  const typed = readTyped(text ?? '')
  const most = instrument.mostG ?? Infinity
  const isTooMuch = typed !== null && Number(typed) > most
  const canGo = typed !== null && Number(typed) > 0 && !isTooMuch
  return (
    <div className="two">
      <Asked title={say(words.massOf, 'en', { instrument: instrument.name })} {...{ text, unit, locale }}>
        <p>{words.mass}</p>
        <p role="alert" className="fault">
          {isLost
            ? station.reading.notKept
            : isTooMuch
              ? say(words.tooMuch, 'en', { most: shownEnd(most, unit, locale) })
              : null}
        </p>
      </Asked>
      <NumberPad
        text={text ?? ''}
        onType={type}
        locale={locale}
        keep={canGo ? say(words.next, 'en', { mass: shownValue(typed, unit, locale) }) : words.keepNothing}
        canKeep={canGo}
        onKeep={() => typed !== null && onGo(typed)}
      />
    </div>
  )
}

function Shown({ instrument, by, unit, locale, mass }: CheckProps & { mass: string | null }) {
  const { text, type: typeDraft, isLost } = useDraft(checkDraft(by.personId, instrument.id, 'shown'))
  const [failed, setFailed] = useState<string | null>(null)
  const [error, setError] = useState<string | null>(null)
  const typed = readTyped(text ?? '')
  const known = mass ?? (instrument.testMassG === null ? null : String(instrument.testMassG))
  const judged = (shown: string) => judgeCheck({ ...instrument, mass: known, shown, unit })
  const end = (value: number) => shownEnd(value, unit, locale)
  const keep = async (shown: string) => {
    const { isGood } = judged(shown)
    try {
      await keepCheck({ instrument, mass, shown, unit, isGood, by })
    } catch {
      setError(station.reading.notKept)
      return
    }
    void sendOutbox()
    await remember('checking', { instrumentId: null })
  }
  const off = failed === null ? null : judged(failed)
  const value = (shown: string) => shownValue(shown, unit, locale)
  return (
    <div className="two">
      <Asked title={instrument.name} {...{ text, unit, locale }}>
        <p>{known === null ? words.ice : say(words.scale, 'en', { mass: end(Number(known)) })}</p>
        <p>{say(words.offMost, 'en', { off: end(judged('0').most) })}</p>
        <p role="alert" className="fault">
          {isLost ? station.reading.notKept : error}
        </p>
      </Asked>
      {failed !== null && off ? (
        <div role="alert" className="odd">
          <p>{say(words.off, 'en', { value: value(failed), off: end(Math.abs(off.off)), most: end(off.most) })}</p>
          <Tap look="plain" onTap={() => setFailed(null)}>
            {words.change}
          </Tap>
          <Tap look="plain" onTap={() => void keep(failed)}>
            {say(words.keepFailed, 'en', { value: value(failed) })}
          </Tap>
        </div>
      ) : (
        <NumberPad
          text={text ?? ''}
          onType={(next) => {
            setError(null)
            typeDraft(next)
          }}
          locale={locale}
          keep={typed === null ? words.keepNothing : say(words.keep, 'en', { value: value(typed) })}
          canKeep={typed !== null}
          onKeep={() => {
            if (typed === null) return
            if (judged(typed).isGood) void keep(typed)
            else setFailed(typed)
          }}
          isSigned={instrument.kind === 'thermometer'}
        />
      )}
    </div>
  )
}

type AskedProps = { title: string; text: string | null; unit: string; locale: string; children: ReactNode }

function Asked({ title, text, unit, locale, children }: AskedProps) {
  return (
    <section>
      <div className="heads">
        <h1>{title}</h1>
        <Tap look="quiet" onTap={() => void remember('checking', { instrumentId: null })}>
          {words.toList}
        </Tap>
      </div>
      <p className="typed" aria-live="polite">
        {shownTyped(text ?? '', locale) || '…'}
        <small>{unit}</small>
      </p>
      {children}
    </section>
  )
}
