import { Section } from '@/lib/ui/section'
import { wordsIn, type Language } from '@/lib/words/words'
import { ArmSentenceList } from '../arm-sentence-list'
import { resultForms } from '../result-forms'
import type { ShownBakery, ShownResult } from '../shown-result'
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
  const isShown = comparison?.arms.some(({ effect }) => effect !== null)
  return (
    <Section id="second-result" title={text.second} note={text.secondNote}>
      {comparison?.isIndication ? <p className="mb-2 font-semibold">{results.headline.indication}</p> : null}
      {comparison && isShown ? (
        <ArmSentenceList
          comparison={comparison}
          costs={null}
          forms={resultForms({
            result: { declared: result.declared, analysis: { comparison } },
            measureCode: result.trial.measure.code,
            bakery,
            language,
          })}
        />
      ) : (
        <p className="max-w-measure">{text.secondNone}</p>
      )}
    </Section>
  )
}
