import { useEffect, useId, useRef, useState } from 'react'
import { say } from '../../words/say'
import { stationLots as words } from '../../words/en/station-lots'
import { stationScan } from '../../words/en/station-scan'
import type { LotOffered } from '../keep/weigh-facts'
import type { StoodLine } from '../outbox/stand-of-line'
import { lotOfCodes, type LotOfCodes } from '../scan/lot-of-codes'
import { Scanner } from '../scan/scanner'
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
  const [isScanning, setScanning] = useState(false)
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
  const find = (texts: readonly string[]) => {
    const found = lotOfCodes(texts, line, lines)
    if (found?.found === 'lot' && !isGiven(found.lot)) {
      take(found.lot)
      return
    }
    setCode('')
    setFault(found && faultOf(found, line.name))
  }
  const findTyped = () => {
    if (code.trim() !== '') find([code])
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
      {isScanning && <Scanner onCodes={find} />}
      <p role="alert" className="fault">
        {fault}
      </p>
      <Tap
        look="plain"
        onTap={() => {
          setFault(null)
          setScanning((is) => !is)
        }}
      >
        {isScanning ? stationScan.labelEnd : stationScan.label}
      </Tap>
      <form
        onSubmit={(event) => {
          event.preventDefault()
          findTyped()
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
          <Tap look="plain" disabled={code.trim() === ''} onTap={findTyped}>
            {words.find}
          </Tap>
        </div>
      </form>
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

function faultOf(found: LotOfCodes, ingredient: string): string {
  switch (found.found) {
    case 'lot':
      return say(words.given, 'en', { code: found.lot.code })
    case 'other':
      return say(words.ofOther, 'en', { code: found.code, ingredient, other: found.name })
    case 'none':
      return say(words.notThere, 'en', { code: found.code, ingredient })
    case 'several':
      return stationScan.several
    case 'slip':
      return stationScan.slip
    case 'badge':
      return stationScan.badge
  }
}
