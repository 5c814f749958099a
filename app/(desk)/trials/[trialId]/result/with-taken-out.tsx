import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import { ArmSentenceList } from './arm-sentence-list'
import { resultForms, type ResultForms } from './result-forms'
import type { ShownBakery, ShownResult } from './shown-result'

/** Where doughs were taken out that had been read: what was found with them, before what was found without. */
export function WithTakenOut({
  result,
  bakery,
  forms,
}: {
  result: ShownResult
  bakery: ShownBakery
  forms: ResultForms
}) {
  const { text, language } = forms
  const { withTakenOut } = result
  if (!withTakenOut) return null
  const { codes, comparison } = withTakenOut
  const withForms = resultForms({
    result: { declared: result.declared, analysis: { comparison } },
    measureCode: result.trial.measure.code,
    bakery,
    language,
  })
  return (
    <Section id="with" title={say(text.withTakenOut, language, { codes })} note={text.withTakenOutNote}>
      <ArmSentenceList comparison={comparison} costs={null} forms={withForms} />
    </Section>
  )
}
