import { ActionRow } from '@/lib/ui/action-row'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { Sheet } from '@/lib/ui/sheet'
import { plainNumber } from '@/lib/words/format/plain-number'
import { say } from '@/lib/words/say'
import type { Sayer } from '../../sayer'
import { mostCharacters, queryOf, type Typed } from './typed'

/** A value as it is usually typed, with the mark between it and the next. */
const charactersOfValue = 6

/** In place of an answer: more than an address holds. The browser's way back still has what was typed. */
export function TooLong({
  id,
  typed,
  sayer: { own, text, locale, language },
}: {
  id: string
  typed: Typed
  sayer: Sayer
}) {
  const number = (value: number) => plainNumber(value, { locale })
  return (
    <Sheet kicker={own.title} headline={text.headlineWrong}>
      <Notice tone="stop" word={text.tooLong}>
        {say(text.tooLongText, language, {
          most: number(mostCharacters),
          values: number(Math.round(mostCharacters / charactersOfValue / 1_000) * 1_000),
          length: number(queryOf(typed).length),
          call: `npm run calc -- ${id}`,
        })}
      </Notice>
      <ActionRow>
        <LinkButton tone="plain" href={`/calculators/${id}`}>
          {text.example}
        </LinkButton>
        <LinkButton tone="plain" href="/calculators">
          {text.back}
        </LinkButton>
      </ActionRow>
    </Sheet>
  )
}
