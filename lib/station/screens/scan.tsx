import { useId, useState } from 'react'
import { say } from '../../words/say'
import { station } from '../../words/en/station'
import { stationScan as words } from '../../words/en/station-scan'
import type { Floor } from '../keep/facts'
import { openDough } from '../keep/tablet'
import { Scanner } from '../scan/scanner'
import { whatCodeSays, whatCodesSay, type CodeSays } from '../scan/what-code-says'
import { Tap } from '../ui/tap'
import { placeOfSlip } from '../outbox/place-of-slip'
import type { OutboxEntry } from '../outbox/entry'

type ScanProps = {
  floor: Floor
  entries: readonly OutboxEntry[]
  /** The measure that was being read: it goes on with the next piece. */
  measureId: string | null
  onDone(): void
}

/** Opens the piece whose slip the camera sees, or the dough whose code is typed. */
export function ScanScreen({ floor, entries, measureId, onDone }: ScanProps) {
  const [code, setCode] = useState('')
  const [fault, setFault] = useState<string | null>(null)
  const id = useId()
  const doughs = [...floor.doughs, ...floor.next]
  const { origin } = window.location
  const answer = (said: CodeSays | null) => {
    if (said?.says !== 'dough') {
      setFault(said && faultOf(said))
      return
    }
    const dough = floor.doughs.find((each) => each.id === said.batchId)
    void openDough(said.batchId, dough ? placeOfSlip(dough, said.piece, measureId, entries) : {})
    onDone()
  }
  const open = () => {
    if (code.trim() !== '') answer(whatCodeSays(code, doughs, origin))
  }
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{words.title}</h1>
        <Tap look="quiet" onTap={onDone}>
          {station.list.back}
        </Tap>
      </div>
      <Scanner onCodes={(texts) => answer(whatCodesSay(texts, doughs, origin))} />
      <p role="alert" className="fault">
        {fault}
      </p>
      <form
        onSubmit={(event) => {
          event.preventDefault()
          open()
        }}
      >
        <label htmlFor={id}>{words.code}</label>
        <p>{words.codeNote}</p>
        <div className="find">
          <input
            id={id}
            className="line"
            value={code}
            maxLength={200}
            inputMode="numeric"
            autoComplete="off"
            spellCheck={false}
            onChange={({ target }) => {
              setFault(null)
              setCode(target.value)
            }}
          />
          <Tap look="plain" disabled={code.trim() === ''} onTap={open}>
            {words.open}
          </Tap>
        </div>
      </form>
    </div>
  )
}

function faultOf(said: Exclude<CodeSays, { says: 'dough' }>): string {
  switch (said.says) {
    case 'not-here':
      return words.notHere
    case 'elsewhere':
      return words.elsewhere
    case 'several':
      return words.several
    case 'empty':
      return words.empty
    case 'same-code':
      return say(words.sameCode, 'en', { code: said.text })
    case 'no-slip':
      return say(words.noSlip, 'en', { text: said.text })
  }
}
