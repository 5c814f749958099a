import type { Refused } from '@/lib/kitchen/result'
import { wordsOfRefusal } from '@/lib/kitchen/words-of-refusal'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { Sheet } from '@/lib/ui/sheet'
import { wordsIn, type Language } from '@/lib/words/words'

type Way = { href: string; label: string }
type UnreadDocumentProps = { kicker: string; refusal: Refused; ways: readonly Way[]; language: Language }

/** A page of something that is kept and cannot be read by this code: why, and the ways on. */
export function UnreadDocument({ kicker, refusal, ways, language }: UnreadDocumentProps) {
  const { desk } = wordsIn(language)
  return (
    <Sheet
      kicker={kicker}
      headline={desk.unreadHeadline}
      actions={ways.map(({ href, label }) => (
        <LinkButton key={href} tone="plain" href={href}>
          {label}
        </LinkButton>
      ))}
    >
      <Notice tone={refusal.code === 'damaged-text' ? 'stop' : 'warn'} word={desk.attention}>
        {wordsOfRefusal(refusal, language).sentence}
      </Notice>
    </Sheet>
  )
}
