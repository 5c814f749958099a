import { Cell } from '@/lib/ui/cell'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { say } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'
import { ArmSentenceList } from '../arm-sentence-list'
import { ArmCell } from '../arm-cell'
import { WithInterval } from '../numbers-table'
import { resultForms, type ResultForms } from '../result-forms'
import { verdictText } from '../say-result'
import type { ShownArm, ShownBakery, ShownComparison, ShownResult } from '../shown-result'
import type { ShownAmendments } from './shown-amendments'

/** What the trial shows with what was amended, behind what it showed first. Nothing where nothing was accepted. */
export function SecondResult({
  amended,
  result,
  bakery,
  language,
}: {
  amended: ShownAmendments
  result: ShownResult
  bakery: ShownBakery
  language: Language
}) {
  const { amendments: text, results } = wordsIn(language)
  const { second } = amended
  if (!second) return null
  const { comparison } = second
  const forms =
    comparison &&
    resultForms({
      result: { declared: result.declared, analysis: { comparison } },
      measureCode: result.trial.measure.code,
      bakery,
      language,
    })
  const isShown = comparison?.arms.some(({ effect }) => effect !== null)
  return (
    <Section id="second-result" title={text.second} note={text.secondNote}>
      {comparison?.isIndication ? <p className="mb-2 font-semibold">{results.headline.indication}</p> : null}
      {comparison && forms && isShown ? (
        <>
          <ArmSentenceList comparison={comparison} costs={null} forms={forms} />
          <BothTable result={result} second={comparison} forms={forms} />
        </>
      ) : (
        <p className="max-w-measure">{text.secondNone}</p>
      )}
    </Section>
  )
}

/** The figures of both results, dough by dough, the first one first. */
function BothTable({ result, second, forms }: { result: ShownResult; second: ShownComparison; forms: ResultForms }) {
  const { language, unit } = forms
  const { amendments: text, results } = wordsIn(language)
  const { comparison: first } = result.analysis
  const ofSecond = new Map(second.arms.map((arm) => [arm.arm, arm]))
  if (!first) return null
  return (
    <div className="mt-4">
      <SheetTable
        caption={text.figures}
        columns={[
          { key: 'arm', label: results.arm },
          { key: 'mean-first', label: say(text.meanFirst, language, { unit }), numeric: true },
          { key: 'mean-second', label: say(text.meanSecond, language, { unit }), numeric: true },
          { key: 'difference-first', label: say(text.differenceFirst, language, { unit }), numeric: true },
          { key: 'difference-second', label: say(text.differenceSecond, language, { unit }), numeric: true },
          { key: 'verdict-first', label: text.verdictFirst },
          { key: 'verdict-second', label: text.verdictSecond },
        ]}
      >
        {first.arms.map((arm) => {
          const other = ofSecond.get(arm.arm)
          return (
            <tr key={arm.arm}>
              <ArmCell
                arm={arm.arm}
                name={result.declared.arms.find((each) => each.position === arm.arm)?.name}
                forms={forms}
              />
              <MeanCell arm={arm} forms={forms} />
              <MeanCell arm={other} forms={forms} />
              <DifferenceCell arm={arm} forms={forms} />
              <DifferenceCell arm={other} forms={forms} />
              <Cell>{verdictText(arm, first, forms)}</Cell>
              <Cell>{other ? verdictText(other, second, forms) : null}</Cell>
            </tr>
          )
        })}
      </SheetTable>
    </div>
  )
}

function MeanCell({ arm, forms }: { arm: ShownArm | undefined; forms: ResultForms }) {
  const mean = arm?.mean ?? null
  return <Cell numeric>{mean === null ? '–' : forms.value(mean)}</Cell>
}

function DifferenceCell({ arm, forms }: { arm: ShownArm | undefined; forms: ResultForms }) {
  const effect = arm?.effect ?? null
  return (
    <Cell numeric>
      {effect === null ? (
        '–'
      ) : (
        <WithInterval
          estimate={effect.estimate}
          low={effect.low}
          high={effect.high}
          form={forms.difference}
          forms={forms}
        />
      )}
    </Cell>
  )
}
