import { PageLink } from '@/lib/ui/page-link'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'
import type { ShownResult } from './shown-result'

/** Once a trial is over: what was decided on it, or the way to decide. */
export function WhatNow({ result, language }: { result: ShownResult; language: Language }) {
  const { decisions: text } = wordsIn(language)
  const { decision, mayDecide, trial } = result
  if (!result.isEnded) return null
  return (
    <Section id="next" title={text.next}>
      {decision ? (
        <p className="max-w-measure">
          {decision.outcome === 'keep' ? text.nextKept : text.nextChanged}{' '}
          <PageLink href={`/decisions/${decision.id}`}>
            {say(text.link, language, { number: decision.number })}
          </PageLink>
        </p>
      ) : mayDecide ? (
        <>
          <p className="mb-4 max-w-measure">{text.nextText}</p>
          <LinkButton tone="go" href={`/trials/${trial.id}/decide`}>
            {text.nextDecide}
          </LinkButton>
        </>
      ) : (
        <p className="max-w-measure">{text.nextNotYours}</p>
      )}
    </Section>
  )
}
