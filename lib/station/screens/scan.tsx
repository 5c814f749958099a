import { useId, useState } from 'react'
import { station } from '../../words/en/station'
import { stationScan as words } from '../../words/en/station-scan'
import { Scanner } from '../scan/scanner'
import { Tap } from '../ui/tap'
import { useSlips, type SlipsOf } from './use-slips'

type ScanProps = SlipsOf & { onDone(): void }

/** Opens the piece whose slip the camera sees, or the dough whose code is typed. */
export function ScanScreen({ onDone, ...slips }: ScanProps) {
  const [code, setCode] = useState('')
  const { fault, clear, open } = useSlips(slips)
  const id = useId()
  const see = (texts: readonly string[]) => {
    if (open(texts)) onDone()
  }
  const openTyped = () => {
    if (code.trim() !== '') see([code])
  }
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{words.title}</h1>
        <Tap look="quiet" onTap={onDone}>
          {station.list.back}
        </Tap>
      </div>
      <Scanner onCodes={see} />
      <p role="alert" className="fault">
        {fault}
      </p>
      <form
        onSubmit={(event) => {
          event.preventDefault()
          openTyped()
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
              clear()
              setCode(target.value)
            }}
          />
          <Tap look="plain" disabled={code.trim() === ''} onTap={openTyped}>
            {words.open}
          </Tap>
        </div>
      </form>
    </div>
  )
}
