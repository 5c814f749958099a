import { Cell } from '@/lib/ui/cell'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { amountInUnits } from './amount-in-units'
import type { BatchPart } from './batch-view'

const columns = [
  { code: 'dough-mass', unit: 'g', digits: 1 },
  { code: 'loaf-mass', unit: 'g', digits: 1 },
  { code: 'loaf-volume', unit: 'mL', digits: 0 },
  { code: 'specific-volume', unit: 'mL/g', digits: 2 },
  { code: 'bake-loss', unit: '%', digits: 1 },
] as const

/** What the readings of each piece come to, and their means. */
export function Figures({ batch, bakery, words, language }: BatchPart) {
  const { figures: text, readings } = words
  const { measures } = wordsIn(language)
  const { figures } = batch
  if (!figures || figures.pieces.length === 0)
    return batch.state === 'waiting' ? null : (
      <Section id="figures" title={text.title}>
        {text.none}
      </Section>
    )
  const oddPieces = new Set(
    batch.readings.flatMap(({ piece, holds, outside }) => (holds && outside && piece !== null ? [piece] : [])),
  )
  const shown = (value: number | null | undefined, unit: string, digits: number) =>
    value === null || value === undefined ? '–' : amountInUnits(value, unit, digits, bakery)
  return (
    <Section id="figures" title={text.title} note={text.note}>
      <SheetTable
        caption={text.title}
        captionHidden
        columns={[
          { key: 'piece', label: text.piece },
          ...columns.map(({ code }) => ({ key: code, label: measures.standard[code].name, numeric: true })),
        ]}
      >
        {figures.pieces.map(({ piece, factorLevel, figures: ofPiece, settled }) => (
          <tr key={`${piece} ${factorLevel ?? ''}`}>
            <Cell head>
              {factorLevel === null ? piece : say(readings.pieceLevel, language, { piece, level: factorLevel })}
              {settled ? null : <span className="block text-small font-normal text-warn">{text.open}</span>}
              {oddPieces.has(piece) ? <span className="block text-small font-normal text-warn">{text.odd}</span> : null}
            </Cell>
            {columns.map(({ code, unit, digits }) => (
              <Cell key={code} numeric>
                {shown(ofPiece[code], unit, digits)}
              </Cell>
            ))}
          </tr>
        ))}
        <tr>
          <Cell head>{text.mean}</Cell>
          {columns.map(({ code, unit, digits }) => (
            <Cell key={code} numeric>
              <b>{shown(figures.means[code]?.mean, unit, digits)}</b>
              {figures.means[code] ? (
                <span className="block text-small text-ink-2">
                  {say(text.of, language, { n: figures.means[code].n })}
                </span>
              ) : null}
            </Cell>
          ))}
        </tr>
      </SheetTable>
    </Section>
  )
}
