import { Cell } from '@/lib/ui/cell'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { withUnit } from '@/lib/words/format/with-unit'
import { say } from '@/lib/words/say'
import { ArmCell } from './arm-cell'
import { conditionForms, conditionWarnings } from './condition-forms'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownComparison, ShownResult } from './shown-result'

type WhatElseProps = { result: ShownResult; comparison: ShownComparison; bakery: ShownBakery; forms: ResultForms; mind: string }

/** What else differed between the arms, in words and in numbers. */
export function WhatElse({ result, comparison, bakery, forms, mind }: WhatElseProps) {
  const { text, language } = forms
  const { conditions } = comparison
  const warnings = conditionWarnings(comparison, bakery, forms)
  const names = new Map(result.declared.arms.map(({ position, name }) => [position, name]))
  const { notableDifference } = result
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
          ...conditions.flatMap(({ code }) => [
            { key: code, label: say(text.conditionUnit, language, { condition: text.conditions[code], unit: conditionForms(code, bakery, forms).unit }), numeric: true },
            { key: `${code} recorded`, label: text.recordedHead, numeric: true },
          ]),
        ]}
      >
        {result.declared.arms.map(({ position }) => (
          <tr key={position}>
            <ArmCell arm={position} name={names.get(position)} forms={forms} />
            {conditions.flatMap(({ code, arms }) => {
              const own = arms.find(({ arm }) => arm === position)
              return [
                <Cell key={code} numeric>
                  {own?.mean == null ? '–' : conditionForms(code, bakery, forms).mean(own.mean)}
                </Cell>,
                <Cell key={`${code} recorded`} numeric>
                  {own ? say(text.recorded, language, { recorded: own.recorded, doughs: own.batches }) : '–'}
                </Cell>,
              ]
            })}
          </tr>
        ))}
      </SheetTable>
    </Section>
  )
}
