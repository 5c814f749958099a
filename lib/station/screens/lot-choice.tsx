import { useEffect, useId, useRef, useState } from 'react'
import { codeAsKept, faultOfCode } from '../../kitchen/stores/code-on-label.input'
import { say } from '../../words/say'
import { stationLots as words } from '../../words/en/station-lots'
import { stationScan } from '../../words/en/station-scan'
import type { LotOffered } from '../keep/weigh-facts'
import type { StoodLine } from '../outbox/stand-of-line'
import { typedLot } from '../outbox/lots-of-line'
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
  /** A code that nobody here knows, as the book would hold it. */
  const [unknown, setUnknown] = useState<string | null>(null)
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
    const [text = ''] = texts
    const isCode = found?.found === 'none' && faultOfCode(text) === null
    const typed = isCode ? typedLot(codeAsKept(text)) : null
    const fault =
      typed && isGiven(typed) ? say(words.given, 'en', { code: typed.code }) : found && faultOf(found, text, line.name)
    setFault(fault)
    setUnknown(typed && !isGiven(typed) ? typed.code : null)
  }
  const clear = () => {
    setFault(null)
    setUnknown(null)
  }
  const findTyped = () => {
    if (code.trim() !== '') find([code])
  }
  const others = line.lots.filter(({ id: of }) => of !== last?.id)
  const offered = last ? [last, ...others] : others
  const head = (
    <div className="heads">
      <h1>{say(words.title, 'en', { ingredient: line.name })}</h1>
      <Tap look="quiet" onTap={onDone}>
        {words.back}
      </Tap>
    </div>
  )
  if (line.isAllergensUnknown)
    return (
      <div className="narrow">
        {head}
        <p role="alert" className="fault">
          {say(words.allergensUnknown, 'en', { ingredient: line.name })}
        </p>
      </div>
    )
  return (
    <div className="narrow">
      {head}
      {isScanning && <Scanner onCodes={find} />}
      <p role="alert" className="fault">
        {fault}
      </p>
      {unknown !== null && (
        <Tap look="main" onTap={() => take(typedLot(unknown))}>
          {say(words.weighFrom, 'en', { code: unknown })}
        </Tap>
      )}
      <Tap
        look="plain"
        onTap={() => {
          clear()
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
            maxLength={200}
            autoComplete="off"
            autoCapitalize="off"
            spellCheck={false}
            onChange={({ target }) => {
              clear()
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
              {lot.isToConfirm && <span>{words.isToConfirm}</span>}
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

function faultOf(found: LotOfCodes, text: string, ingredient: string): string {
  switch (found.found) {
    case 'lot':
      return say(words.given, 'en', { code: found.lot.code })
    case 'other':
      return say(words.ofOther, 'en', { code: found.code, ingredient, other: found.name })
    case 'none':
      switch (faultOfCode(text)) {
        case 'too-long':
          return words.tooLong
        case 'unreadable':
          return words.unreadable
        case null:
          return say(words.notThere, 'en', { code: found.code, ingredient })
      }
    case 'several':
      return stationScan.several
    case 'slip':
      return stationScan.slip
    case 'badge':
      return stationScan.badge
  }
}
