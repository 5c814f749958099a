import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import { ArmSentenceList } from './arm-sentence-list'
import { resultForms, type ResultForms } from './result-forms'
import type { ShownBakery, ShownResult } from './shown-result'

/**
 * What would be found with some doughs counted otherwise, before what was found: with those that were taken out after
 * they were read, and going by what was weighed last. Nothing where that is the same.
 */
export function CountedOtherwise(q: { result: ShownResult; bakery: ShownBakery; forms: ResultForms }) {
  const { withTakenOut, asLastWeighed } = q.result
  const { text } = q.forms
  return (
    <>
      <Otherwise {...q} id="with" compared={withTakenOut} title={text.withTakenOut} note={text.withTakenOutNote} />
      <Otherwise
        {...q}
        id="as-last"
        compared={asLastWeighed}
        title={text.asLastWeighed}
        note={text.asLastWeighedNote}
      />
    </>
  )
}

function Otherwise({
  result,
  bakery,
  forms: { language },
  id,
  compared,
  title,
  note,
}: {
  result: ShownResult
  bakery: ShownBakery
  forms: ResultForms
  id: string
  compared: ShownResult['withTakenOut']
  title: ResultForms['text']['withTakenOut' | 'asLastWeighed']
  note: string
}) {
  if (!compared) return null
  const { codes, comparison } = compared
  const forms = resultForms({
    result: { declared: result.declared, analysis: { comparison } },
    measureCode: result.trial.measure.code,
    bakery,
    language,
  })
  return (
    <Section id={id} title={say(title, language, { codes })} note={note}>
      <ArmSentenceList comparison={comparison} costs={null} forms={forms} />
    </Section>
  )
}
