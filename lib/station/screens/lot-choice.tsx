import { useEffect, useId, useRef, useState } from 'react'
import { say } from '../../words/say'
import { stationLots as words } from '../../words/en/station-lots'
import type { LotOffered } from '../keep/weigh-facts'
import { findLot } from '../outbox/lots-of-line'
import type { StoodLine } from '../outbox/stand-of-line'
import { Tap } from '../ui/tap'
import type { LotsOfPad } from './line-lots'

type LotChoiceProps = Pick<LotsOfPad, 'chosen' | 'choose' | 'last'> & {
  line: StoodLine
  lines: readonly StoodLine[]
  onDone(): void
}

/** All lots that a line may be taken from, the one that was used last first; or one by its code, typed or scanned. */
export function LotChoice({ line, lines, chosen, choose, last, onDone }: LotChoiceProps) {
  const [code, setCode] = useState('')
  const [fault, setFault] = useState<string | null>(null)
  const field = useRef<HTMLInputElement>(null)
  const id = useId()
  const { given, now } = chosen
  const isGiven = (lot: LotOffered) => given.some((each) => each.id === lot.id)
  useEffect(() => {
    // A scanner types without anybody touching the field.
    const lead = ({ key }: KeyboardEvent) => {
      if (key.length === 1) field.current?.focus()
    }
    window.addEventListener('keydown', lead)
    return () => window.removeEventListener('keydown', lead)
  }, [])
  const take = (lot: LotOffered | null) => {
    choose({ given, now: lot })
    onDone()
  }
  const find = () => {
    const named = { code: code.trim(), ingredient: line.name }
    if (named.code === '') return
    const found = findLot(code, line, lines)
    if (found.found === 'lot' && !isGiven(found.lot)) {
      take(found.lot)
      return
    }
    setCode('')
    if (found.found === 'lot') setFault(say(words.given, 'en', { code: found.lot.code }))
    else if (found.found === 'other') setFault(say(words.ofOther, 'en', { ...named, other: found.name }))
    else setFault(say(words.notThere, 'en', named))
  }
  const offered = [...line.lots].sort((a, b) => Number(b.id === last?.id) - Number(a.id === last?.id))
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{say(words.title, 'en', { ingredient: line.name })}</h1>
        <Tap look="quiet" onTap={onDone}>
          {words.back}
        </Tap>
      </div>
      <form
        onSubmit={(event) => {
          event.preventDefault()
          find()
        }}
      >
        <label htmlFor={id}>{words.code}</label>
        <p>{words.codeNote}</p>
        <div className="find">
          <input
            id={id}
            ref={field}
            className="line"
            value={code}
            maxLength={80}
            autoComplete="off"
            autoCapitalize="off"
            spellCheck={false}
            onChange={({ target }) => {
              setFault(null)
              setCode(target.value)
            }}
          />
          <Tap look="plain" disabled={code.trim() === ''} onTap={find}>
            {words.find}
          </Tap>
        </div>
      </form>
      <p role="alert" className="fault">
        {fault}
      </p>
      {offered.length === 0 && <p>{say(words.nobody, 'en', { ingredient: line.name })}</p>}
      <ul className="rows">
        {offered.map((lot) => (
          <li key={lot.id}>
            <Tap look="row" pressed={lot.id === now?.id} disabled={isGiven(lot)} onTap={() => take(lot)}>
              <b>{lot.code}</b>
              {lot.isPast && <span className="attention">{words.isPast}</span>}
              {isGiven(lot) ? (
                <span className="end">{words.isGiven}</span>
              ) : (
                lot.id === last?.id && <span className="end">{words.isLast}</span>
              )}
            </Tap>
          </li>
        ))}
      </ul>
      <Tap look="plain" onTap={() => take(null)}>
        {words.without}
      </Tap>
    </div>
  )
}
