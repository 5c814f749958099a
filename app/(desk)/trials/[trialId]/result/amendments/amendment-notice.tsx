import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { formatDateTime } from '@/lib/words/format/date'
import { paragraph } from '@/lib/words/paragraph'
import { say } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'
import type { ShownBakery } from '../shown-result'
import type { ShownAmendments } from './shown-amendments'

/** Says at the top that something was amended, or that what is kept of amendments is not what the record says. */
export function AmendmentNotice({
  amended,
  bakery,
  language,
  isDeciding = false,
  amendAt,
}: {
  amended: ShownAmendments
  /** On the page on which somebody decides. */
  isDeciding?: boolean
  /** Where what waits for whoever looks is decided; left out on that page itself. */
  amendAt?: string
  bakery: ShownBakery
  language: Language
}) {
  const { amendments: text } = wordsIn(language)
  const { amendments, fault, nobodyElse, slip } = amended
  if (fault)
    return (
      <Notice tone="stop" word={text.brokenWord}>
        {paragraph([text.broken[fault], text.brokenTodo], language)}
      </Notice>
    )
  const count = amendments.filter(({ verdict }) => verdict?.isAccepted).length
  const waiting = amendments.filter(({ verdict }) => verdict === null).length
  if (count + waiting === 0) return null
  const waitsForThem = amendments.some(({ mayDecide }) => mayDecide !== null)
  const signed = slip?.isSigned
    ? slip.signatures.map(({ by, at, reason }) =>
        say(text.slipBy, language, { who: by, at: formatDateTime(at, bakery), reason }),
      )
    : []
  return (
    <Notice tone="warn" word={count > 0 ? text.word : text.proposedWord}>
      {paragraph(
        [
          count === 0 ? null : say(text.standsFirst, language, { count }),
          nobodyElse ? text.nobodyElse : null,
          waiting === 0 ? null : say(text.waitsToo, language, { count: waiting }),
          isDeciding ? text.restsOnFirst : null,
        ],
        language,
      )}
      {amendAt !== undefined && (waitsForThem || slip?.maySign) ? (
        <p className="mt-2 flex flex-wrap gap-3">
          {waitsForThem ? (
            <LinkButton tone="plain" href={`${amendAt}#amendments-decide`}>
              {text.toDecide}
            </LinkButton>
          ) : null}
          {slip?.maySign ? (
            <LinkButton tone="plain" href={`${amendAt}#slip`}>
              {text.slip}
            </LinkButton>
          ) : null}
        </p>
      ) : null}
      {signed.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </Notice>
  )
}
