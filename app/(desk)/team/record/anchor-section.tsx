import { Button } from '@/lib/ui/button'
import { Field } from '@/lib/ui/field'
import { Notice } from '@/lib/ui/notice'
import { verifyRecordInput } from '@/lib/kitchen/audit/verify-record.input'
import { ruleOf } from '@/lib/ui/field-rules'
import { rulesOf } from '@/lib/ui/rules-of'
import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import type { Words } from '@/lib/words/words'

type AnchorSectionProps = {
  typed: { number: string; hash: string } | undefined
  outcome: 'agrees' | 'differs' | 'not-there' | 'invalid' | null
  text: Words['audit']['anchor']
  attention: string
  language: string
}

/** Holds the record against what a print says of it. */
export function AnchorSection({ typed, outcome, text, attention, language }: AnchorSectionProps) {
  return (
    <Section id="anchor" title={text.title} note={text.note} screenOnly>
      {outcome === null ? null : outcome === 'invalid' ? (
        <Notice tone="warn" word={attention}>
          {text.invalid}
        </Notice>
      ) : (
        <Notice tone={outcome === 'agrees' ? 'ok' : 'stop'} word={outcome === 'agrees' ? text.title : attention}>
          {say(text[outcome], language, { number: typed?.number ?? '' })}
        </Notice>
      )}
      <form action="/team/record#anchor" method="get" className="flex flex-wrap items-end gap-4">
        <Field
          name="entry"
          type="text"
          label={text.number}
          defaultValue={typed?.number}
          width="short"
          autoComplete="off"
        />
        <Field
          name="hash"
          type="text"
          label={text.hash}
          defaultValue={typed?.hash}
          width="medium"
          maxLength={ruleOf(rulesOf(verifyRecordInput), 'anchor.hash')?.mostLength}
          autoComplete="off"
        />
        <Button tone="plain">{text.go}</Button>
      </form>
    </Section>
  )
}
