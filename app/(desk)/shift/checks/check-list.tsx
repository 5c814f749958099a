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
  blockMl: number | null
  shownMl: number | null
  offMostMl: number | null
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
  const figures = checkFigures(bakery)
  return (
    <ul className="max-w-column border-t-2 border-ink">
      {checks.map((check) => {
        const { isGood } = check
        const { known, shown, off } = toldOf(check, figures, text, language)
        return (
          <li key={check.id} className="flex flex-wrap gap-x-4 border-b border-rule py-2">
            <b>{check.instrument}</b>
            <b className={isGood ? undefined : 'text-warn'}>{isGood ? text.good : text.bad}</b>
            <span>{known}</span>
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

/** What was known, shown and allowed; a check has the columns of its kind. */
function toldOf(
  { massG, shownG, offMostG, shownC, offMostC, blockMl, shownMl, offMostMl }: ShownCheck,
  { mass, volume, temp, degrees }: ReturnType<typeof checkFigures>,
  text: Words['checks'],
  language: Language,
) {
  if (massG !== null && shownG !== null && offMostG !== null)
    return { known: say(text.withMass, language, { mass: mass(massG) }), shown: mass(shownG), off: mass(offMostG) }
  if (blockMl !== null && shownMl !== null && offMostMl !== null)
    return {
      known: say(text.withBlock, language, { block: volume(blockMl) }),
      shown: volume(shownMl),
      off: volume(offMostMl),
    }
  return {
    known: text.inIce,
    shown: shownC === null ? '' : temp(shownC),
    off: offMostC === null ? '' : degrees(offMostC),
  }
}
