'use client'

import { use } from 'react'
import { say } from '../words/say'
import { DraftOwnerContext } from './draft-owner'
import { Notice } from './notice'
import { PressButton } from './press-button'

type DraftNoticeProps = {
  /** When what stands in the fields again was typed. */
  backFrom: string | null
  /** When what can be put back was typed. */
  offeredFrom: string | null
  onPutBack(): void
  onStartAfresh(): void
}

/** Says that what was typed here before is back, or that it is kept and the page has changed since. */
export function DraftNotice({ backFrom, offeredFrom, onPutBack, onStartAfresh }: DraftNoticeProps) {
  const owner = use(DraftOwnerContext)
  if (owner === null || (backFrom === null && offeredFrom === null)) return null
  const { words, language, locale } = owner
  const moment = (at: string) =>
    new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short' }).format(new Date(at))
  if (backFrom !== null)
    return (
      <Notice tone="ok" word={words.back}>
        {say(words.backText, language, { at: moment(backFrom) })}
        <div>
          <PressButton tone="quiet" onPress={onStartAfresh}>
            {words.startAfresh}
          </PressButton>
        </div>
      </Notice>
    )
  return (
    <Notice tone="warn" word={words.changed}>
      {offeredFrom === null ? null : say(words.changedText, language, { at: moment(offeredFrom) })}
      <div className="flex flex-wrap gap-x-6">
        <PressButton tone="quiet" onPress={onPutBack}>
          {words.putBack}
        </PressButton>
        <PressButton tone="stop-quiet" onPress={onStartAfresh}>
          {words.throwAway}
        </PressButton>
      </div>
    </Notice>
  )
}
