import type { RefusalCode } from '@/lib/kitchen/messages'
import type { Refused } from '@/lib/kitchen/result'
import { wordsOfRefusal } from '@/lib/kitchen/words-of-refusal'
import { ActionRow } from '@/lib/ui/action-row'
import { AgainButton } from '@/lib/ui/again-button'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { Sheet } from '@/lib/ui/sheet'
import type { Language, Words } from '@/lib/words/words'

/** Why a page that something is worked out for may come without it. */
export const notWorkedOutCodes: readonly RefusalCode[] = ['took-too-long', 'not-worked-out']

type NotWorkedOutProps = {
  title: string
  back: { href: string; label: string }
  refusal: Refused
  words: Words
  language: Language
}

/** In place of a page whose figures were not worked out in time: why, and the page anew. */
export function NotWorkedOut({ title, back, refusal, words, language }: NotWorkedOutProps) {
  const { errors, attention } = words.desk
  return (
    <Sheet kicker={title} headline={errors.notWorkedOut}>
      <Notice tone="warn" word={attention}>
        {wordsOfRefusal(refusal, language).sentence}
      </Notice>
      <ActionRow>
        <AgainButton>{errors.again}</AgainButton>
        <LinkButton tone="plain" href={back.href}>
          {back.label}
        </LinkButton>
      </ActionRow>
    </Sheet>
  )
}
