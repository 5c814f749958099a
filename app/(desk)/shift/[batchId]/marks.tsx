import { Section } from '@/lib/ui/section'
import { measureName } from '@/lib/words/measure-name'
import { momentNear } from '@/lib/words/format/moment-near'
import { say, sayName } from '@/lib/words/say'
import type { Words } from '@/lib/words/words'
import type { BatchPart, BatchShown } from './batch-view'

/** What of a batch was read around a check that failed, in a sentence for each check. */
export function Marks({ batch, bakery, words, language }: Omit<BatchPart, 'words'> & { words: Words }) {
  const { marks: text } = words.checks
  if (batch.marks.length === 0) return null
  const at = (ms: number) => momentNear(new Date(ms), new Date(), bakery)
  const said = ({
    outcome,
    isOnlyOne,
    failedAt,
    goodAt,
    instrument,
    weighed,
    readings,
  }: BatchShown['marks'][number]) => {
    const sentences = isOnlyOne ? text.only : text.perhaps
    const facts = {
      instrument: instrument.name,
      failed: at(failedAt),
      what: [
        ...readings.map(({ count, ...measure }) =>
          sayName(text.measure, language, { measure: measureName(measure, words), count }),
        ),
        ...(weighed ? [text.weighed] : []),
      ],
    }
    if (outcome === 'after-failed') return say(sentences.after, language, facts)
    return goodAt === null
      ? say(sentences.before, language, facts)
      : say(sentences.between, language, { ...facts, good: at(goodAt) })
  }
  return (
    <Section id="marks" title={text.title}>
      <ul className="max-w-measure">
        {batch.marks.map((mark) => (
          <li key={JSON.stringify([mark.instrument.id, mark.outcome, mark.failedAt, mark.isOnlyOne])} className="py-1">
            <b>{said(mark)}</b>
          </li>
        ))}
      </ul>
      <p className="mt-2 max-w-measure text-ink-2">{text.note}</p>
    </Section>
  )
}
