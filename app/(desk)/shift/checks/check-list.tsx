import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { checkFigures, type CheckBakery } from './check-figures'

export type ShownCheck = {
  id: string
  instrument: string
  who: string
  at: Date
  massG: number | null
  shownG: number | null
  offMostG: number | null
  shownC: number | null
  offMostC: number | null
  isGood: boolean
}

type CheckListProps = {
  checks: readonly ShownCheck[]
  bakery: CheckBakery
  text: Words['checks']
  language: Language
}

/** Checks with what was known, what was shown, and what came of it. */
export function CheckList({ checks, bakery, text, language }: CheckListProps) {
  const { mass, temp, degrees } = checkFigures(bakery)
  return (
    <ul className="max-w-column border-t-2 border-ink">
      {checks.map((check) => {
        const { massG, shownG, offMostG, shownC, offMostC, isGood } = check
        const shown = shownG !== null ? mass(shownG) : shownC !== null ? temp(shownC) : ''
        const off = offMostG !== null ? mass(offMostG) : offMostC !== null ? degrees(offMostC) : ''
        return (
          <li key={check.id} className="flex flex-wrap gap-x-4 border-b border-rule py-2">
            <b>{check.instrument}</b>
            <b className={isGood ? undefined : 'text-warn'}>{isGood ? text.good : text.bad}</b>
            <span>{massG === null ? text.inIce : say(text.withMass, language, { mass: mass(massG) })}</span>
            <span>{say(text.showed, language, { shown })}</span>
            <span>{say(text.mightBeOff, language, { off })}</span>
            <span className="ml-auto text-small text-ink-2">
              {say(text.by, language, { at: formatDateTime(check.at, bakery), who: check.who })}
            </span>
          </li>
        )
      })}
    </ul>
  )
}
