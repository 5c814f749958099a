import type { ContentDifferences } from '@/lib/kitchen/formulas/differences-of-content'
import { changesAllergens, type AllergenChange, type FormulaFigures } from '@/lib/kitchen/formulas/rules'
import { Section } from '@/lib/ui/section'
import { SideBySide } from '@/lib/ui/side-by-side'
import { paragraph } from '@/lib/words/paragraph'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { allergenChangeWords } from '../allergen-change-words'
import { formulaFormat } from '@/lib/words/format/formula-format'
import type { OwnUnits } from '@/lib/words/format/own-units'
import { nutrientRows, processRows, totalsRows } from './difference-rows'
import { DifferenceTable } from './difference-table'
import { LinesDifference } from './lines-difference'

export type VersionDifferencesProps = {
  compared: ContentDifferences & {
    figures: { from: FormulaFigures | null; to: FormulaFigures | null }
    allergens: AllergenChange
  }
  /** Numbers of the two versions. */
  from: number
  to: number
  words: Words
  units: OwnUnits
  language: Language
}

/** What differs between two versions: lines, totals, batch and process, what the dough holds, allergens, method. */
export function VersionDifferences({ compared, from, to, words, units, language }: VersionDifferencesProps) {
  const { formulas: text, stores } = words
  const { compare, sheet } = text
  const { lines, measured, method, figures, allergens } = compared
  const format = formulaFormat(units, text.units)
  const sides = {
    from: say(text.versionTitle, language, { number: from }),
    to: say(text.versionTitle, language, { number: to }),
  }
  const forms = { text, format, language }
  return (
    <>
      <Section id="lines" title={compare.lines} note={compare.linesNote}>
        <LinesDifference lines={lines} sides={sides} text={text} format={format} />
      </Section>
      <SideBySide>
        <Section id="totals" title={compare.totals}>
          <DifferenceTable
            caption={compare.totals}
            what={compare.total}
            sides={sides}
            rows={totalsRows(figures, forms)}
          />
        </Section>
        <Section id="process" title={compare.process}>
          <DifferenceTable
            caption={compare.process}
            what={compare.total}
            sides={sides}
            rows={processRows(measured, forms)}
          />
        </Section>
      </SideBySide>
      <SideBySide>
        <Section id="holds" title={compare.holds} note={compare.holdsNote}>
          <DifferenceTable
            caption={compare.holds}
            what={sheet.nutrient}
            sides={sides}
            rows={nutrientRows(figures, forms)}
          />
        </Section>
        <Section id="allergens" title={compare.allergens} note={sheet.allergensNote}>
          {changesAllergens(allergens) ? (
            <p className="font-bold">{paragraph(allergenChangeWords(allergens, text, stores, language), language)}</p>
          ) : (
            <p>{compare.allergensSame}</p>
          )}
        </Section>
      </SideBySide>
      <Section id="method" title={compare.methodTitle}>
        {method.isSame ? (
          <p>{compare.methodSame}</p>
        ) : (
          <SideBySide>
            {[
              { number: from, method: method.from },
              { number: to, method: method.to },
            ].map((side) => (
              <div key={side.number} className="mb-4">
                <h3 className="text-small text-ink-2">{say(compare.methodOf, language, { number: side.number })}</h3>
                <p className="max-w-measure whitespace-pre-line">{side.method || sheet.noMethod}</p>
              </div>
            ))}
          </SideBySide>
        )}
      </Section>
    </>
  )
}
