import type { Entry } from '@/lib/ui/definition-list'
import { ToneMark } from '@/lib/ui/tone-mark'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { LiveFigures } from './editor-figures'
import type { FormulaFormat } from '@/lib/words/format/formula-format'

type EditorTotalsProps = { live: LiveFigures; text: Words['formulas']; format: FormulaFormat; language: Language }

/** The totals of what is typed, below the lines, where the eye is. */
export function EditorTotals({ live, text, format, language }: EditorTotalsProps) {
  const { sheet, editor } = text
  const { figures } = live
  const entries = [
    { term: sheet.total, detail: figures ? format.pct(figures.totalPct) : text.notThere },
    { term: sheet.hydration, detail: figures ? format.pctShort(figures.plainWaterPct) : text.notThere },
    { term: sheet.dough, detail: figures?.batch ? format.mass(figures.batch.doughMassG) : text.notThere },
  ]
  const isRight = figures !== null && live.flourOffPct === 0
  return (
    <div className="mt-6 border-y-[1.5px] border-ink py-3">
      <dl className="flex flex-wrap gap-x-10 gap-y-3">
        <div aria-live="polite">
          <dt className="text-small text-ink-2">{editor.flourTotal}</dt>
          <dd className={`flex items-baseline gap-2 font-bold ${isRight ? 'text-ok' : 'text-warn'}`}>
            <ToneMark tone={isRight ? 'ok' : 'warn'} />
            {flourWords(live, text, format, language)}
          </dd>
        </div>
        {entries.map((entry) => (
          <div key={entry.term}>
            <dt className="text-small text-ink-2">{entry.term}</dt>
            <dd className="font-bold">{entry.detail}</dd>
          </div>
        ))}
      </dl>
    </div>
  )
}

function flourWords(live: LiveFigures, text: Words['formulas'], format: FormulaFormat, language: Language): string {
  const { editor } = text
  if (!live.figures) return editor.flourNone
  if (live.flourOffPct === 0) return editor.flourRight
  const off = format.pct(Math.abs(live.flourOffPct))
  return say(live.flourOffPct < 0 ? editor.flourShort : editor.flourOver, language, {
    sum: format.pct(live.figures.floursPct),
    off,
  })
}

/** The same totals and what else follows, for the margin. */
export function editorEntries(
  live: LiveFigures,
  text: Words['formulas'],
  format: FormulaFormat,
  language: Language,
): Entry[] {
  const { sheet, editor } = text
  const { figures } = live
  const water = figures?.waterBesideFlour
  const waterText = water ? format.pctShort(water.pctFlour) : text.notThere
  return [
    { term: editor.flourTotal, detail: flourWords(live, text, format, language), strong: true },
    { term: sheet.total, detail: figures ? format.pct(figures.totalPct) : text.notThere },
    { term: sheet.dough, detail: figures?.batch ? format.mass(figures.batch.doughMassG) : text.notThere },
    { term: sheet.flour, detail: figures?.batch ? format.mass(figures.batch.flourMassG) : text.notThere },
    { term: sheet.hydration, detail: figures ? format.pctShort(figures.plainWaterPct) : text.notThere },
    {
      term: sheet.trueWater,
      detail:
        water && water.unknownIngredientIds.length > 0
          ? say(sheet.atLeast, language, { quantity: waterText })
          : waterText,
    },
    { term: sheet.preFermented, detail: figures ? format.pctShort(figures.preFermentedFlourPct) : text.notThere },
  ]
}
