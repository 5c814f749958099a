import { useState } from 'react'
import { say } from '../../words/say'
import { station as words } from '../../words/en/station'
import { catchUp } from '../talk/keep-going'
import { logOnAs } from '../talk/people'
import { deleteSign, Key, Tap } from '../ui/tap'

const digits = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '0'] as const
const pinLength = 6

type PinPadProps = {
  person: { id: string; name: string }
  /** What it is asked for, where that is not plain. */
  why?: string
  onBack(): void
  onDone?(): void
}

/** A pad of its own for the six digits: they are judged by the book alone, kept nowhere and never shown. */
export function PinPad({ person, why, onBack, onDone }: PinPadProps) {
  const [pin, setPin] = useState('')
  const [error, setError] = useState<string | null>(null)
  const [isAsking, setAsking] = useState(false)

  const type = async (digit: string) => {
    if (isAsking) return
    const next = `${pin}${digit}`
    setPin(next)
    setError(null)
    if (next.length < pinLength) return
    setAsking(true)
    const refused = await logOnAs(person.id, next)
    setAsking(false)
    setPin('')
    if (refused) setError(refused.words ?? words.pin.offline)
    else {
      onDone?.()
      await catchUp()
    }
  }
  return (
    <div className="two">
      <section>
        <h1>{say(words.pin.title, 'en', { name: person.name })}</h1>
        {why !== undefined && <p>{why}</p>}
        <p role="status" className="dots" data-typed={pin.length}>
          <span aria-hidden="true">{Array.from({ length: pinLength }, (_, at) => (at < pin.length ? '●' : '○'))}</span>
          <span className="unseen">{say(words.pin.typed, 'en', { count: pin.length })}</span>
        </p>
        <p role="alert" className="fault">
          {error}
        </p>
        <Tap look="plain" onTap={onBack}>
          {onDone ? words.pin.backTo : words.pin.back}
        </Tap>
      </section>
      <div className="pad">
        {digits.map((digit) => (
          <Key key={digit} name={digit} onTap={() => void type(digit)}>
            {digit}
          </Key>
        ))}
        <Key name="delete" label={words.reading.delete} onTap={() => setPin(pin.slice(0, -1))}>
          <span aria-hidden="true">{deleteSign}</span>
        </Key>
      </div>
    </div>
  )
}
