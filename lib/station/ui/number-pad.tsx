import { station as words } from '../../words/en/station'
import { typedWith } from '../outbox/typed-digits'
import { decimalMark } from './figures'
import { deleteSign, Key, Tap } from './tap'

const digits = ['7', '8', '9', '4', '5', '6', '1', '2', '3'] as const
const zero = '0'
const sign = '±'

type NumberPadProps = {
  text: string
  onType(text: string): void
  locale: string
  /** What the main action says, and whether there is anything to keep. */
  keep: string
  canKeep: boolean
  onKeep(): void
  /** Whether the number may be below zero, and have a part. */
  isSigned?: boolean
  isWhole?: boolean
}

/** The pad for a number, with the one action that it leads to. */
export function NumberPad({ text, onType, locale, keep, canKeep, onKeep, isSigned, isWhole }: NumberPadProps) {
  const press = (key: string) => () => onType(typedWith(text, key))
  return (
    <div className="pad">
      {digits.map((digit) => (
        <Key key={digit} name={digit} onTap={press(digit)}>
          {digit}
        </Key>
      ))}
      {!isWhole && (
        <Key name="." label={words.reading.decimal} onTap={press('.')}>
          {decimalMark(locale)}
        </Key>
      )}
      <Key name="0" onTap={press('0')}>
        {zero}
      </Key>
      <Key name="delete" label={words.reading.delete} onTap={press('delete')}>
        <span aria-hidden="true">{deleteSign}</span>
      </Key>
      {isSigned && (
        <Key name="sign" label={words.reading.sign} onTap={press('sign')}>
          <span aria-hidden="true">{sign}</span>
        </Key>
      )}
      <Tap look="main" disabled={!canKeep} onTap={onKeep}>
        {keep}
      </Tap>
    </div>
  )
}
