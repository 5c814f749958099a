import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { BakeryShown, BatchShown } from './batch-view'
import type { LineWords } from './line-words'

type Line = NonNullable<BatchShown['weighed']>[number]
type Text = Words['shift']['weighed']

/** What stands of each line: who wrote it and when, and for whoever knows the dough how much and whether that is off. */
export function WeighedList({
  lines,
  named,
  text,
  bakery,
  language,
}: {
  lines: readonly Line[]
  named: LineWords
  text: Text
  bakery: BakeryShown
  language: Language
}) {
  const kept = lines.filter(({ stands }) => stands !== null)
  if (kept.length === 0) return null
  return (
    <ul className="mt-5 max-w-column border-t-2 border-ink">
      {kept.map((line) => (
        <li key={`${line.stage.id} ${line.ingredient.id} ${line.part}`} className="border-b border-rule py-3">
          <p className="flex flex-wrap justify-between gap-x-4 text-lead">
            <span>{named.name(line)}</span>
            <b>{amountOf(line, named, text)}</b>
          </p>
          <p className="text-ink-2">{bylineOf(line, text, bakery, language)}</p>
          {verdictOf(line, named, text, language)}
          <LotList line={line} named={named} text={text} language={language} />
        </li>
      ))}
    </ul>
  )
}

function amountOf(line: Line, named: LineWords, text: Text): string | null {
  const as = line.stands?.as
  if (!as) return null
  return as.how === 'ticked' ? text.ticked : as.massG === null ? text.leftOut : named.mass(as.massG, line)
}

function bylineOf({ stands }: Line, text: Text, bakery: BakeryShown, language: Language): string | null {
  if (!stands) return null
  const { who, at, reason } = stands
  const by = { who, at: formatDateTime(at, bakery) }
  return reason === null ? say(text.kept, language, by) : say(text.keptCorrected, language, { ...by, reason })
}

function verdictOf(line: Line, named: LineWords, text: Text, language: Language) {
  const found = line.stands?.as?.found
  if (found === undefined || found === 'on-target') return null
  const toleranceG = line.target?.toleranceG ?? 0
  return (
    <p className="font-semibold text-warn">
      {found === 'left-out' ? text.leftOutNote : say(text.off, language, { tolerance: named.mass(toleranceG, line) })}
    </p>
  )
}

/** From which lots it was taken, with what each gave; for whoever knows the dough. */
function LotList({ line, named, text, language }: { line: Line; named: LineWords; text: Text; language: Language }) {
  const lots = line.stands?.as?.lots ?? []
  if (lots.length === 0) return null
  return (
    <ul>
      {lots.map(({ id, code, sameAs, massG, isPast, isToConfirm }) => (
        <li key={id}>
          {massG === null
            ? say(text.fromLot, language, { code })
            : say(text.fromLotMass, language, { code, mass: named.mass(massG, line) })}
          {sameAs === null ? null : (
            <span className="block text-ink-2">{say(text.fromLotIsOther, language, { code, other: sameAs })}</span>
          )}
          {isToConfirm ? (
            <span className="block text-ink-2">{say(text.fromLotToConfirm, language, { code })}</span>
          ) : null}
          {isPast ? <b className="block font-semibold text-warn">{say(text.fromLotPast, language, { code })}</b> : null}
        </li>
      ))}
    </ul>
  )
}
