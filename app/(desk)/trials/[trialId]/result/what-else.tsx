import { Cell } from '@/lib/ui/cell'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { withUnit } from '@/lib/words/format/with-unit'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { ArmCell } from './arm-cell'
import { conditionForms, conditionWarnings } from './condition-forms'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownComparison, ShownResult } from './shown-result'

type WhatElseProps = {
  result: ShownResult
  comparison: ShownComparison
  bakery: ShownBakery
  forms: ResultForms
  mind: string
}

/** What else differed between the arms, in words and in numbers. */
export function WhatElse({ result, comparison, bakery, forms, mind }: WhatElseProps) {
  const { text, language } = forms
  const { conditions } = comparison
  const warnings = conditionWarnings(comparison, bakery, forms)
  const names = new Map(result.declared.arms.map(({ position, name }) => [position, name]))
  const { notableDifference } = result
  const mixed = new Map(result.mixed.map((dough) => [dough.arm, dough]))
  const rule = say(text.elseRule, language, {
    temp: conditionForms('dough-temp', bakery, forms).amount(notableDifference['dough-temp']),
    proof: withUnit(forms.plain(100 * notableDifference['proof-time']), '%'),
    water: withUnit(forms.plain(100 * notableDifference['water-added']), '%'),
  })
  if (conditions.length === 0) {
    return (
      <Section id="else" title={text.else}>
        <p className="max-w-measure">{text.elseNone}</p>
      </Section>
    )
  }
  return (
    <Section id="else" title={text.else} note={rule}>
      {warnings.length === 0 ? <p className="mb-3 max-w-measure">{text.elseEven}</p> : null}
      {warnings.map(({ key, sentence }) => (
        <Notice key={key} tone="warn" word={mind}>
          {sentence}
        </Notice>
      ))}
      <SheetTable
        caption={text.else}
        captionHidden
        columns={[
          { key: 'arm', label: text.arm },
          ...conditions.map(({ code }) => ({
            key: code,
            label: say(text.conditionUnit, language, {
              measure: wordsIn(language).measures.standard[code].name,
              unit: conditionForms(code, bakery, forms).unit,
            }),
            numeric: true,
          })),
          { key: 'hydration', label: text.hydration, numeric: true },
          { key: 'yield', label: text.doughYield, numeric: true },
        ]}
      >
        {result.declared.arms.map(({ position }) => (
          <tr key={position}>
            <ArmCell arm={position} name={names.get(position)} forms={forms} />
            {conditions.map(({ code, arms }) => (
              <Cell key={code} numeric>
                {meanText(
                  arms.find(({ arm }) => arm === position),
                  conditionForms(code, bakery, forms).mean,
                  forms,
                )}
              </Cell>
            ))}
            <Cell numeric>
              <AsMixed figure={mixed.get(position)?.hydrationPct ?? null} forms={forms} />
            </Cell>
            <Cell numeric>
              <AsMixed figure={mixed.get(position)?.doughYield ?? null} forms={forms} />
            </Cell>
          </tr>
        ))}
      </SheetTable>
      <p className="mt-2 max-w-measure text-small text-ink-2">{text.mixedNote}</p>
    </Section>
  )
}

/** A figure with the water that was taken, and as planned where that is another. */
function AsMixed({ figure, forms }: { figure: { planned: number; taken: number | null } | null; forms: ResultForms }) {
  if (!figure) return '–'
  const planned = forms.number(figure.planned, 1)
  const taken = figure.taken === null ? planned : forms.number(figure.taken, 1)
  return (
    <>
      {taken}
      {taken === planned ? null : (
        <span className="block text-small text-ink-2">
          {say(forms.text.asPlanned, forms.language, { value: planned })}
        </span>
      )}
    </>
  )
}

/** The mean, and in how many doughs it was written down unless in all of them. */
function meanText(
  own: ShownComparison['conditions'][number]['arms'][number] | undefined,
  form: (value: number) => string,
  forms: ResultForms,
): string {
  if (!own || own.mean === null) return '–'
  const mean = form(own.mean)
  return own.recorded === own.batches
    ? mean
    : say(forms.text.recorded, forms.language, { mean, recorded: own.recorded, doughs: own.batches })
}
