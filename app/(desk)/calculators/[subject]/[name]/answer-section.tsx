import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { wordsIn } from '@/lib/words/words'
import { AnswerText, isPlain } from '../../answer-text'
import { AnswerView } from '../../answer-view'
import type { Sayer } from '../../sayer'

type Group = Readonly<Record<string, unknown>>

/** What a calculation answered: what to mind first, then every figure. */
export function AnswerSection({ answer, sayer }: { answer: unknown; sayer: Sayer }) {
  const { warnings, cautions, ...figures } = (
    typeof answer === 'object' && answer !== null && !Array.isArray(answer) ? answer : { answer }
  ) as Group
  return (
    <Section id="answer" title={sayer.text.answer}>
      {[...listOf(warnings), ...listOf(cautions)].map((warning, i) => (
        <Notice key={i} tone="warn" word={wordsIn(sayer.language).desk.attention}>
          <WarningText warning={warning} sayer={sayer} />
        </Notice>
      ))}
      <AnswerView group={figures} sayer={sayer} />
      <details className="mt-4 text-small print:hidden">
        <summary className="inline-flex min-h-8 cursor-pointer items-center underline underline-offset-4">
          {sayer.text.allDigits}
        </summary>
        <pre translate="no" className="mt-2 whitespace-pre-wrap break-words">
          {JSON.stringify(answer, null, 2)}
        </pre>
      </details>
    </Section>
  )
}

function listOf(warnings: unknown): readonly unknown[] {
  if (warnings === undefined || warnings === null) return []
  return Array.isArray(warnings) ? warnings : [warnings]
}

/** A warning is a code, or a code with the facts that belong to it. */
function WarningText({ warning, sayer }: { warning: unknown; sayer: Sayer }) {
  if (isPlain(warning)) return <AnswerText name="warnings" value={warning} sayer={sayer} />
  const { code, ...facts } = warning as Group
  return (
    <>
      <AnswerText name="code" value={code} sayer={sayer} />
      {Object.entries(facts)
        .filter(([, fact]) => fact !== undefined && fact !== null)
        .map(([name, fact]) => (
          <span key={name} className="ml-3 whitespace-nowrap text-ink-2">
            {sayer.own.field(name)} <AnswerText name={name} value={fact} sayer={sayer} />
          </span>
        ))}
    </>
  )
}
