import { OrderChart } from '@/lib/ui/charts/order-chart'
import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import type { ResultForms } from './result-forms'
import type { ShownResult } from './shown-result'

/** What was read so far, dough by dough under its code: a slip shows, and no arm does. */
export function SoFar({ result, forms }: { result: ShownResult; forms: ResultForms }) {
  const { text, language } = forms
  if (result.batches.every(({ values }) => values.length === 0)) return null
  const title = say(text.soFar.title, language, { measure: forms.measureName, unit: forms.unit })
  return (
    <Section id="so-far" title={title} note={text.soFar.note}>
      <OrderChart
        label={text.soFar.label}
        words={{ day: (number) => say(text.soFar.day, language, { number }), tick: forms.number }}
        rows={result.batches.map(({ code, day, values, mean }) => ({ code, day, loaves: values, mean }))}
      />
    </Section>
  )
}
