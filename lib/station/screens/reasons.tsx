import { station } from '../../words/en/station'
import { ReadyOrOwn } from './ready-or-own'

const words = station.fix

type ReasonsProps = {
  /** The common ones. */
  reasons: readonly string[]
  /** Under what a half-typed one is kept. */
  draft: string
  onChoose(reason: string): void
}

/** Why something is corrected. */
export function Reasons({ reasons, draft, onChoose }: ReasonsProps) {
  return (
    <>
      <h2>{words.why}</h2>
      <ReadyOrOwn ready={reasons} other={words.other} keep={words.goOn} draft={draft} onSay={onChoose} />
    </>
  )
}
