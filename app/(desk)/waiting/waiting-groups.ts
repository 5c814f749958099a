import type { listWaiting } from '@/lib/kitchen/desk/list-waiting'
import type { AnswerOf } from '@/lib/kitchen/query'
import { formatDate, formatDateTime } from '@/lib/words/format/date'
import { formatDay } from '@/lib/words/format/day'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { keptAsideAnchor } from '../shift/kept-aside/kept-aside-anchor'

export type Waiting = AnswerOf<typeof listWaiting>

export type WaitingRow = { href: string; what: string; about: string; since: string }
export type WaitingGroup = {
  id: string
  title: string
  rows: WaitingRow[]
  more: { href: string; label: string } | null
}

type Shown = { words: Words; bakery: { locale: string; timeZone: string }; language: Language }

/** What waits for somebody, in words: the kinds of which there is something, each with the way to where it is done. */
export function waitingGroups(waiting: Waiting, { words, bakery, language }: Shown): WaitingGroup[] {
  const { waiting: text } = words.desk
  const date = (at: Date) => formatDate(at, bakery)
  const ofTrial = ({ number, formula }: { number: number; formula: string }) =>
    say(text.trial, language, { number, formula })
  const trialRow =
    (pageOf: (trialId: string) => string) =>
    (row: { trialId: string; number: number; question: string; formula: string; since: Date }) => ({
      href: pageOf(row.trialId),
      what: row.question,
      about: ofTrial(row),
      since: date(row.since),
    })
  const group = <Row>(
    id: string,
    few: { rows: readonly Row[]; count: number; isAtLeast: boolean } | null,
    list: string,
    titleOf: (count: number) => string,
    rowOf: (row: Row) => WaitingRow,
  ): WaitingGroup[] => {
    if (few === null || few.rows.length === 0) return []
    const more = few.count - few.rows.length
    const label = few.isAtLeast ? text.moreAtLeast : more > 0 ? say(text.more, language, { count: more }) : null
    return [
      { id, title: titleOf(few.count), rows: few.rows.map(rowOf), more: label === null ? null : { href: list, label } },
    ]
  }
  const { underWay, toMix, toSettle, toConfirm, sentBack, toApprove, toSign, toAmend, toClose, toDecide, stations } =
    waiting
  return [
    ...group(
      'under-way',
      underWay,
      '/shift',
      (count) => say(text.underWay, language, { count }),
      ({ batchId, code, state, missing, number, formula, since }) => ({
        href: `/shift/${batchId}`,
        what: say(text.underWayDough, language, { code, state: words.shift.states[state] }),
        about:
          missing > 0
            ? say(text.underWayMissing, language, { count: missing, number, formula })
            : say(text.underWayRead, language, { number, formula }),
        since: since ? formatDateTime(since, bakery) : '',
      }),
    ),
    ...group(
      'to-mix',
      toMix,
      '/shift',
      (count) => say(text.toMix, language, { count }),
      ({ dayNumber, day, doughs, number, formula }) => ({
        href: '/shift',
        what: say(text.toMixDay, language, { day: dayNumber, count: doughs }),
        about: ofTrial({ number, formula }),
        since: say(text.due, language, { date: formatDay(day, bakery.locale) }),
      }),
    ),
    ...group(
      'to-settle',
      toSettle,
      '/shift/kept-aside',
      (count) => say(text.toSettle, language, { count }),
      ({ entryId, hash, code, sentBy, number, formula, since }) => ({
        href: `/shift/kept-aside#${keptAsideAnchor({ entryId, hash })}`,
        what: say(text.toSettleEntry, language, { code }),
        about: say(text.toSettleAbout, language, { number, formula, who: sentBy }),
        since: formatDateTime(since, bakery),
      }),
    ),
    ...group(
      'to-confirm',
      toConfirm,
      '/stores',
      (count) => say(text.toConfirm, language, { count }),
      ({ code, ingredientId, ingredient, since }) => ({
        href: `/stores/ingredients/${ingredientId}#lots-to-confirm`,
        what: say(text.toConfirmLot, language, { code }),
        about: ingredient,
        since: date(since),
      }),
    ),
    ...group(
      'sent-back-to-you',
      sentBack,
      '/trials#sent-back',
      (count) => say(text.sentBack, language, { count }),
      trialRow((id) => `/trials/${id}`),
    ),
    ...group(
      'to-approve',
      toApprove,
      '/trials#waiting',
      (count) => say(toApprove?.isAtLeast ? text.toApproveAtLeast : text.toApprove, language, { count }),
      trialRow((id) => `/trials/${id}`),
    ),
    ...group(
      'to-sign',
      toSign,
      '/formulas',
      (count) => say(toSign?.isAtLeast ? text.toSignAtLeast : text.toSign, language, { count }),
      ({ versionId, formulaId, decisionId, formula, number, reason, since }) => ({
        // One that a decision drafted is signed where the evidence stands.
        href: decisionId ? `/decisions/${decisionId}` : `/formulas/${formulaId}/versions/${versionId}`,
        what: say(text.toSignVersion, language, { formula, number }),
        about: reason,
        since: date(since),
      }),
    ),
    ...group(
      'to-amend',
      toAmend,
      '/trials#past',
      (count) => say(toAmend?.isAtLeast ? text.toAmendAtLeast : text.toAmend, language, { count }),
      ({ trialId, code, number, formula, who, since }) => ({
        href: `/trials/${trialId}/result/amendments#amendments-decide`,
        what: say(text.toAmendDough, language, { code }),
        about: say(text.toAmendAbout, language, { number, formula, who }),
        since: date(since),
      }),
    ),
    ...group(
      'to-close',
      toClose,
      '/trials#baking',
      (count) => say(text.toClose, language, { count }),
      trialRow((id) => `/trials/${id}/result`),
    ),
    ...group(
      'to-decide',
      toDecide,
      '/trials#past',
      (count) => say(text.toDecide, language, { count }),
      trialRow((id) => `/trials/${id}/decide`),
    ),
    ...group(
      'stations',
      stations,
      '/stations#tablets',
      (count) => say(text.stations, language, { count }),
      ({ name, isWithdrawn, who, since }) => ({
        href: '/stations#tablets',
        what: name,
        about: say(isWithdrawn ? text.stationWithdrawn : text.stationMade, language, { who }),
        since: date(since),
      }),
    ),
  ]
}
