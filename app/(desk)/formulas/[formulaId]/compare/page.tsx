import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { compareVersions } from '@/lib/kitchen/formulas/compare-versions'
import { changesAllergens } from '@/lib/kitchen/formulas/rules'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { ActionRow } from '@/lib/ui/action-row'
import { Cell } from '@/lib/ui/cell'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SheetTable } from '@/lib/ui/sheet-table'
import { SideBySide } from '@/lib/ui/side-by-side'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { allergenChangeWords } from '../../allergen-change-words'
import { formulaFormat } from '../../formula-format'
import { VersionState } from '../../version-state'
import { CompareForm } from '../compare-form'
import { DifferenceTable } from './difference-table'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).formulas.history.compare }
}

type ComparePageProps = { params: Promise<{ formulaId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

export default async function ComparePage({ params, searchParams }: ComparePageProps) {
  const { formulaId } = await params
  const { from: fromId, to: toId } = await searchParams
  const language = await currentLanguage()
  const { formulas: words, stores } = wordsIn(language)
  const { compare: text, sheet, units } = words
  const { bakery } = await ask(getDesk)
  const compared = await ask(compareVersions, { formulaId, fromId, toId })
  const { formula, from, to, lines, measured, method, figures, allergens } = compared
  const format = formulaFormat(bakery.locale, units)
  const isSame = [...lines, ...measured, method].every((each) => each.isSame) && !changesAllergens(allergens)
  const sides = { from: say(words.versionTitle, language, { number: from.number }), to: say(words.versionTitle, language, { number: to.number }) }
  const measuredText: Record<(typeof measured)[number]['name'], { label: string; of: (value: number) => string }> = {
    pieces: { label: text.pieces, of: format.count },
    scalingMassG: { label: text.scalingMassG, of: format.massShort },
    doughLossPct: { label: sheet.doughLoss, of: format.pct },
    doughTempC: { label: sheet.doughTemp, of: format.celsius },
    mixTimeS: { label: sheet.mixTime, of: format.minutes },
    bulkTimeS: { label: sheet.bulkTime, of: format.minutes },
    proofTimeS: { label: sheet.proofTime, of: format.minutes },
    bakeTempC: { label: sheet.bakeTemp, of: format.celsius },
    bakeTimeS: { label: sheet.bakeTime, of: format.minutes },
  }
  const total = (label: string, of: (side: NonNullable<typeof figures.from>) => string) => {
    const [before, after] = [figures.from && of(figures.from), figures.to && of(figures.to)]
    return { key: label, label, from: before ?? words.notThere, to: after ?? words.notThere, isSame: before === after }
  }

  return (
    <Sheet
      kicker={formula.name}
      headline={say(isSame ? text.headlineSame : text.headline, language, { from: from.number, to: to.number })}
      margin={{
        label: text.margin,
        entries: [from, to].flatMap((side) => [
          { term: say(text.older, language, { number: side.number }), detail: <VersionState state={side.state} text={words} /> },
          { term: sheet.reason, detail: side.reason },
        ]),
      }}
    >
      <Section id="lines" title={text.lines} note={text.linesNote}>
        <SheetTable
          caption={text.lines}
          captionHidden
          columns={[
            { key: 'ingredient', label: text.ingredient },
            { key: 'stage', label: text.stage },
            { key: 'from', label: sides.from, numeric: true },
            { key: 'to', label: sides.to, numeric: true },
            { key: 'difference', label: text.difference, numeric: true },
          ]}
        >
          {lines.map((line) => (
            <tr key={`${line.stageKind}.${line.stageNumber}.${line.ingredientId}`} className={line.isSame ? 'text-ink-2' : undefined}>
              <Cell head>
                <span className={line.isSame ? 'font-normal' : undefined}>{line.ingredientName}</span>
              </Cell>
              <Cell>{line.stageName || words.stages[line.stageKind]}</Cell>
              <Cell numeric>{line.fromPct === null ? words.notThere : format.pct(line.fromPct)}</Cell>
              <Cell numeric>{line.toPct === null ? words.notThere : format.pct(line.toPct)}</Cell>
              <Cell numeric>
                {line.isSame ? words.notThere : line.fromPct === null ? text.added : line.toPct === null ? text.gone : format.pctDifference(line.toPct - line.fromPct)}
              </Cell>
            </tr>
          ))}
        </SheetTable>
      </Section>
      <SideBySide>
        <Section id="totals" title={text.totals}>
          <DifferenceTable
            caption={text.totals}
            what={text.total}
            sides={sides}
            rows={[
              total(sheet.total, (side) => format.pct(side.totalPct)),
              total(sheet.hydration, (side) => format.pctShort(side.plainWaterPct)),
              total(sheet.trueWater, ({ waterBesideFlour: water }) =>
                water.unknownIngredientIds.length > 0 ? say(sheet.atLeast, language, { quantity: format.pctShort(water.pctFlour) }) : format.pctShort(water.pctFlour),
              ),
              total(sheet.preFermented, (side) => format.pctShort(side.preFermentedFlourPct)),
              total(sheet.yieldWater, (side) => format.parts(side.doughYield.flourAndWater)),
              total(sheet.yieldAll, (side) => format.parts(side.doughYield.everything)),
              total(sheet.dough, (side) => (side.batch ? format.mass(side.batch.doughMassG) : words.notThere)),
            ]}
          />
        </Section>
        <Section id="process" title={text.process}>
          <DifferenceTable
            caption={text.process}
            what={text.total}
            sides={sides}
            rows={measured.map((each) => {
              const { label, of } = measuredText[each.name]
              return { key: each.name, label, from: of(each.from), to: of(each.to), isSame: each.isSame }
            })}
          />
        </Section>
      </SideBySide>
      <Section id="allergens" title={text.allergens} note={sheet.allergensNote}>
        <p>{allergenChangeWords(allergens, words, stores, language)}</p>
      </Section>
      <Section id="method" title={text.methodTitle}>
        {method.isSame ? (
          <p>{text.methodSame}</p>
        ) : (
          <SideBySide>
            {[
              { number: from.number, method: method.from },
              { number: to.number, method: method.to },
            ].map((side) => (
              <div key={side.number} className="mb-4">
                <h3 className="text-small text-ink-2">{say(text.methodOf, language, { number: side.number })}</h3>
                <p className="max-w-measure whitespace-pre-line">{side.method || sheet.noMethod}</p>
              </div>
            ))}
          </SideBySide>
        )}
      </Section>
      <Section id="compare" title={words.history.compare} screenOnly>
        <CompareForm formulaId={formula.id} versions={compared.versions} text={words} language={language} />
      </Section>
      <ActionRow>
        <LinkButton tone="plain" href={`/formulas/${formula.id}/compare?from=${to.id}&to=${from.id}`}>
          {text.swap}
        </LinkButton>
        <LinkButton tone="plain" href={`/formulas/${formula.id}`}>
          {say(sheet.back, language, { name: formula.name })}
        </LinkButton>
      </ActionRow>
    </Sheet>
  )
}
