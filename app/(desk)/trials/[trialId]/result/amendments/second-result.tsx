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
          { key: 'which', label: text.which },
          { key: 'verdict', label: results.verdict },
          { key: 'doughs', label: results.doughs, numeric: true },
          { key: 'mean', label: say(results.mean, language, { unit }), numeric: true },
          { key: 'difference', label: say(results.difference, language, { unit }), numeric: true },
        ]}
      >
        {first.arms.flatMap((arm) => {
          const name = result.declared.arms.find(({ position }) => position === arm.arm)?.name
          const other = ofSecond.get(arm.arm)
          return [
            <FigureRow
              key={`${arm.arm} first`}
              arm={arm}
              name={name}
              of={first}
              which={text.whichFirst}
              forms={forms}
            />,
            ...(other
              ? [
                  <FigureRow
                    key={`${arm.arm} second`}
                    arm={other}
                    name={name}
                    of={second}
                    which={text.whichSecond}
                    forms={forms}
                  />,
                ]
              : []),
          ]
        })}
      </SheetTable>
    </div>
  )
}

type FigureRowProps = {
  arm: ShownArm
  name: string | undefined
  of: ShownComparison
  which: string
  forms: ResultForms
}

function FigureRow({ arm, name, of, which, forms }: FigureRowProps) {
  const { mean, effect } = arm
  return (
    <tr>
      <ArmCell arm={arm.arm} name={name} forms={forms} />
      <Cell>{which}</Cell>
      <Cell>{verdictText(arm, of, forms)}</Cell>
      <Cell numeric>{forms.plain(arm.batches)}</Cell>
      <Cell numeric>{mean === null ? '–' : forms.value(mean)}</Cell>
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
    </tr>
  )
}
