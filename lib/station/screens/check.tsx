import { useState, type ReactNode } from 'react'
import { say } from '../../words/say'
import { station } from '../../words/en/station'
import { stationChecks as words } from '../../words/en/station-checks'
import type { FloorInstrument } from '../keep/facts'
import type { KeptBy } from '../keep/keep-entry'
import { checkDraft, keepCheck } from '../keep/keep-check'
import { goOn, type Kept } from '../keep/tablet'
import { judgeCheck } from '../outbox/judge-check'
import { standardOf } from '../outbox/standard-of'
import { readTyped } from '../outbox/typed-digits'
import { sendOutbox } from '../talk/send-outbox'
import { shownEnd, shownTyped, shownValue } from '../ui/figures'
import { NumberPad } from '../ui/number-pad'
import { Tap } from '../ui/tap'
import { useDraft } from '../ui/use-draft'

type CheckProps = {
  instrument: FloorInstrument
  by: KeptBy
  unit: string
  locale: string
  /** How it was opened: whoever came from the pad of a reading goes back there. */
  of: Kept['checking']
}

/** One check: what the test weight or the block is, where nobody has said it, and then what the instrument shows. */
export function Check(q: CheckProps) {
  const [typed, setTyped] = useState<string | null>(null)
  const standard = standardOf(q.instrument)
  return standard?.known === null && typed === null ? (
    <Known {...q} most={standard.most} onGo={setTyped} />
  ) : (
    <Shown {...q} typed={typed} />
  )
}

function Known({
  instrument,
  by,
  unit,
  locale,
  of,
  most,
  onGo,
}: CheckProps & { most: number; onGo(known: string): void }) {
  const { text, type, isLost } = useDraft(checkDraft(by.personId, instrument.id, 'known'))
  const typed = readTyped(text ?? '')
  const isScale = instrument.kind === 'scale'
  const isTooMuch = typed !== null && Number(typed) > most
  const canGo = typed !== null && Number(typed) > 0 && !isTooMuch
  return (
    <div className="two">
      <Asked
        title={say(isScale ? words.massOf : words.blockOf, 'en', { instrument: instrument.name })}
        {...{ text, unit, locale, of }}
      >
        <p>{isScale ? words.mass : words.block}</p>
        <p role="alert" className="fault">
          {isLost
            ? station.reading.notKept
            : isTooMuch
              ? say(isScale ? words.tooMuch : words.tooLarge, 'en', { most: shownEnd(most, unit, locale) })
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

function Shown({ instrument, by, unit, locale, of, typed: own }: CheckProps & { typed: string | null }) {
  const { text, type: typeDraft, isLost } = useDraft(checkDraft(by.personId, instrument.id, 'shown'))
  const [failed, setFailed] = useState<string | null>(null)
  const [error, setError] = useState<string | null>(null)
  const typed = readTyped(text ?? '')
  const kept = standardOf(instrument)?.known ?? null
  const known = own ?? (kept === null ? null : String(kept))
  const judged = (shown: string) => judgeCheck({ ...instrument, known, shown, unit })
  const end = (value: number) => shownEnd(value, unit, locale)
  const keep = async (shown: string) => {
    const { isGood } = judged(shown)
    try {
      // The book may hold another block by the time it hears of this one.
      const standard = instrument.kind === 'volume_gauge' ? { mass: null, block: known } : { mass: own, block: null }
      await keepCheck({ instrument, ...standard, shown, unit, isGood, by })
    } catch {
      setError(station.reading.notKept)
      return
    }
    void sendOutbox()
    await goOn('checking', of, after(of))
  }
  const off = failed === null ? null : judged(failed)
  const value = (shown: string) => shownValue(shown, unit, locale)
  const told =
    known === null
      ? words.ice
      : instrument.kind === 'scale'
        ? say(words.scale, 'en', { mass: end(Number(known)) })
        : say(words.gauge, 'en', { block: end(Number(known)) })
  return (
    <div className="two">
      <Asked title={instrument.name} {...{ text, unit, locale, of }}>
        <p>{told}</p>
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

type AskedProps = Omit<CheckProps, 'instrument' | 'by'> & { title: string; text: string | null; children: ReactNode }

function Asked({ title, text, unit, locale, of, children }: AskedProps) {
  return (
    <section>
      <div className="heads">
        <h1>{title}</h1>
        <Tap look="quiet" onTap={() => void goOn('checking', of, after(of))}>
          {of.isFromPad ? words.toLoaf : words.toList}
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

/** What is open once a check is done with: the list of them, or the pad that it was opened from. */
function after({ isFromPad }: Kept['checking']): Kept['checking'] | null {
  return isFromPad ? null : { instrumentId: null }
}
