import type { Refused } from '@/lib/kitchen/result'
import { wordsOfRefusal } from '@/lib/kitchen/words-of-refusal'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { Sheet } from '@/lib/ui/sheet'
import type { Language, Words } from '@/lib/words/words'

type PlanFaultProps = { trialId: string; refusal: Refused; words: Words; language: Language }

/** A draft whose plan cannot be worked out any more: what is at fault, beside the way to change it. */
export function PlanFault({ trialId, refusal, words, language }: PlanFaultProps) {
  const { plan: text, title } = words.trials
  return (
    <Sheet
      kicker={title}
      headline={text.faultHeadline}
      actions={
        <>
          <LinkButton tone="go" href={`/trials/${trialId}/edit`}>
            {text.change}
          </LinkButton>
          <LinkButton tone="plain" href="/stores">
            {words.stores.title}
          </LinkButton>
          <LinkButton tone="plain" href="/trials">
            {text.back}
          </LinkButton>
        </>
      }
    >
      <Notice tone="warn" word={words.desk.attention}>
        {wordsOfRefusal(refusal, language).sentence}
      </Notice>
    </Sheet>
  )
}
