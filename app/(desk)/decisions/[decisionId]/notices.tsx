import { PageLink } from '@/lib/ui/page-link'
import { notShown } from '@/lib/kitchen/decisions/rules'
import { armLetter } from '@/lib/kitchen/trials/rules'
import { Notice } from '@/lib/ui/notice'
import { formatDateTime, type DateForm } from '@/lib/words/format/date'
import { say, sayName } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'
import type { DecisionSeen } from './decision-seen'

type NoticesProps = { decision: DecisionSeen; bakery: DateForm; language: Language }

/** What to know before anything else: taken back, not shown, moved on. */
export function Notices({ decision, bakery, language }: NoticesProps) {
  const { decisions: text } = wordsIn(language)
  const { evidence, arm, control, inProduction, version, takenBackAt } = decision
  const chosen = evidence?.arms.find(({ id }) => id === arm?.id)
  const gap = chosen && evidence ? notShown(chosen, evidence.isIndication) : null
  const isMoved = decision.state === 'waiting' && inProduction?.id !== control.id && inProduction?.id !== version?.id
  return (
    <>
      {takenBackAt && decision.takenBackBy !== null ? (
        <Notice tone="plain" word={text.takenBackWord}>
          {say(text.takenBackText, language, {
            name: decision.takenBackBy,
            at: formatDateTime(takenBackAt, bakery),
            why: decision.takenBackWhy ?? '',
          })}
        </Notice>
      ) : null}
      {decision.unread?.outcome === 'damaged' ? (
        <Notice tone="stop" word={text.mind}>
          {text.notWhole}
        </Notice>
      ) : null}
      {decision.unread?.outcome === 'unknown-format' ? (
        <Notice tone="warn" word={text.mind}>
          {say(text.unknownFormat, language, { format: decision.unread.format })}
        </Notice>
      ) : null}
      {gap && arm ? (
        <Notice tone="warn" word={text.notShownWord}>
          {say(text.notShown[gap], language, {
            dough: sayName(text.decide.armName, language, { letter: armLetter(arm.position), name: arm.name }),
          })}
        </Notice>
      ) : null}
      {decision.haveReadingsChanged ? (
        <Notice tone="warn" word={text.mind}>
          {text.readingsChanged} <PageLink href={`/trials/${decision.trial.id}/result`}>{text.toResult}</PageLink>
        </Notice>
      ) : null}
      {isMoved ? (
        <Notice tone="warn" word={text.mind}>
          {inProduction
            ? say(text.controlMoved, language, { control: control.number, now: inProduction.number })
            : say(text.controlMovedNone, language, { control: control.number })}
        </Notice>
      ) : null}
    </>
  )
}
