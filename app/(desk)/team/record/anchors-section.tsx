import type { compareAnchors } from '@/lib/kitchen/audit/compare-anchors'
import type { AnswerOf } from '@/lib/kitchen/query'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { formatDate, formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

type Found = AnswerOf<typeof compareAnchors>
type AnchorsSectionProps = {
  /** Null until somebody asks. */
  found: Found | null
  text: Words['audit']['anchors']
  attention: string
  bakery: { locale: string; timeZone: string }
  language: Language
}

const tones = {
  agree: 'ok',
  none: 'plain',
  'not-kept': 'plain',
  'not-readable': 'warn',
  differs: 'stop',
  'not-there': 'stop',
} as const

/** Holds the record against what the install noted of it outside the database. */
export function AnchorsSection({ found, text, attention, bakery, language }: AnchorsSectionProps) {
  return (
    <Section id="anchors" title={text.title} note={text.note} screenOnly>
      {found ? (
        <Notice tone={tones[found.outcome]} word={found.outcome === 'agree' ? text.whole : attention}>
          {sentenceOf(found)}
        </Notice>
      ) : null}
      {found?.unreadableLine ? (
        <Notice tone="warn" word={attention}>
          {say(text.unreadableLine, language, { line: found.unreadableLine })}
        </Notice>
      ) : null}
      <LinkButton tone="plain" href="/team/record?check=anchors#anchors">
        {text.go}
      </LinkButton>
    </Section>
  )

  function sentenceOf(answer: Found): string {
    switch (answer.outcome) {
      case 'agree':
        return answer.count === 1
          ? say(text.agreesOnce, language, { first: formatDate(answer.first, bakery) })
          : say(text.agree, language, {
              count: answer.count,
              first: formatDate(answer.first, bakery),
              last: formatDate(answer.last, bakery),
            })
      case 'differs':
      case 'not-there':
        return say(text[answer.outcome], language, {
          number: answer.number,
          date: formatDateTime(answer.at, bakery),
        })
      default:
        return text[answer.outcome]
    }
  }
}
