import type { Refused } from '@/lib/kitchen/result'
import { wordsOfRefusal } from '@/lib/kitchen/words-of-refusal'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { Sheet } from '@/lib/ui/sheet'
import { wordsIn, type Language } from '@/lib/words/words'

type UnreadDocumentProps = { kicker: string; refusal: Refused; back: { href: string; label: string }; language: Language }

/** A page of something that is kept and cannot be read by this code: why, and the way back. */
export function UnreadDocument({ kicker, refusal, back, language }: UnreadDocumentProps) {
  const { desk } = wordsIn(language)
  return (
    <Sheet
      kicker={kicker}
      headline={desk.unreadHeadline}
      actions={
        <LinkButton tone="plain" href={back.href}>
          {back.label}
        </LinkButton>
      }
    >
      <Notice tone={refusal.code === 'damaged-text' ? 'stop' : 'warn'} word={desk.attention}>
        {wordsOfRefusal(refusal, language).sentence}
      </Notice>
    </Sheet>
  )
}
