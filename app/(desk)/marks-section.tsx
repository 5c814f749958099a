import type { Mark } from '@/lib/kitchen/checks/marks-of-readings'
import { Section } from '@/lib/ui/section'
import { momentNear } from '@/lib/words/format/moment-near'
import type { DateForm } from '@/lib/words/format/date'
import { measureName } from '@/lib/words/measure-name'
import { say, sayName } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

/** What is marked of a dough. */
type MarkedShown = {
  weighed: boolean
  readings: readonly { code: string | null; name: string; count: number }[]
}

type MarksSectionProps = {
  /** Each with its doughs by their codes, those together of which the same is marked; without codes it is of one. */
  marks: readonly (Omit<Mark<unknown>, 'of'> & { doughs: readonly (MarkedShown & { codes: readonly string[] })[] })[]
  form: DateForm
  words: Words
  language: Language
}

/** What was read around checks that failed, in a sentence for each check; nothing where there is none. */
export function MarksSection({ marks, form, words, language }: MarksSectionProps) {
  const { marks: text } = words.checks
  if (marks.length === 0) return null
  const at = (ms: number) => momentNear(new Date(ms), new Date(), form)
  const markedOf = ({ codes, readings, weighed }: MarksSectionProps['marks'][number]['doughs'][number]) => {
    const what = [
      ...readings.map(({ count, ...measure }) =>
        sayName(text.measure, language, { measure: measureName(measure, words), count }),
      ),
      ...(weighed ? [text.weighed] : []),
    ]
    return codes.length === 0 ? what : [sayName(text.ofDoughs, language, { what, codes, count: codes.length })]
  }
  const said = ({ outcome, isOnlyOne, failedAt, goodAt, instrument, doughs }: MarksSectionProps['marks'][number]) => {
    const sentences = isOnlyOne ? text.only : text.perhaps
    const facts = { instrument: instrument.name, failed: at(failedAt), what: doughs.flatMap(markedOf) }
    if (outcome === 'after-failed') return say(sentences.after, language, facts)
    return goodAt === null
      ? say(sentences.before, language, facts)
      : say(sentences.between, language, { ...facts, good: at(goodAt) })
  }
  return (
    <Section id="marks" title={text.title}>
      <ul className="max-w-measure">
        {marks.map((mark) => (
          <li key={JSON.stringify([mark.instrument.id, mark.outcome, mark.failedAt, mark.isOnlyOne])} className="py-1">
            <b>{said(mark)}</b>
          </li>
        ))}
      </ul>
      <p className="mt-2 max-w-measure text-ink-2">{text.note}</p>
    </Section>
  )
}
