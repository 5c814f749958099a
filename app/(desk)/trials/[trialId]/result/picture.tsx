import { EffectChart } from '@/lib/ui/charts/effect-chart'
import { Section } from '@/lib/ui/section'
import { paragraph } from '@/lib/words/paragraph'
import { say } from '@/lib/words/say'
import type { ResultForms } from './result-forms'
import { verdictWord } from './say-result'
import type { ShownComparison, ShownResult } from './shown-result'

/** Arms against the control as a picture. */
export function Picture({
  result,
  comparison,
  forms,
}: {
  result: ShownResult
  comparison: ShownComparison
  forms: ResultForms
}) {
  const { text, language } = forms
  const names = new Map(result.declared.arms.map(({ position, name }) => [position, name]))
  const { method } = comparison
  const isDoubted = comparison.arms.some(({ doubts }) => doubts.length > 0)
  const note = [
    method ? say(text.picture.note[method.limits], language, { confidence: forms.confidence }) : text.picture.noteLook,
    ...(comparison.worthwhile === null ? [] : [text.picture.noteBand]),
    ...(isDoubted ? [text.picture.noteHollow] : []),
  ]
  return (
    <Section
      id="picture"
      title={say(text.picture.title, language, { measure: forms.measureName, unit: forms.axisUnit })}
      note={paragraph(note, language)}
    >
      <EffectChart
        label={text.picture.label}
        band={comparison.worthwhile}
        words={{
          control: text.picture.control,
          tick: (value, digits) => `${value > 0 ? '+' : ''}${forms.number(value, digits)}`,
        }}
        rows={comparison.arms.map((arm) => ({
          arm: forms.letter(arm.arm),
          name: arm.arm === 0 ? text.control : (names.get(arm.arm) ?? ''),
          word: verdictWord(arm, comparison, forms),
          effect: arm.effect && forms.onAxis(arm.effect),
          isHollow: arm.doubts.length > 0 || arm.standing !== 'compared',
          batches: comparison.points
            .filter((point) => point.arm === arm.arm)
            .map((point) => ({ mean: forms.toAxis(point.difference), loaves: point.loaves.map(forms.toAxis) })),
        }))}
      />
    </Section>
  )
}
