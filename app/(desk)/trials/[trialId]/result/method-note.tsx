import { say } from '@/lib/words/say'
import type { ResultForms } from './result-forms'
import type { ShownComparison, ShownResult } from './shown-result'

/** How the figures came about, folded away on the screen. */
export function MethodNote({
  result,
  comparison,
  forms,
}: {
  result: ShownResult
  comparison: ShownComparison
  forms: ResultForms
}) {
  const { text, language, unit } = forms
  const { method, loafVariation, worthwhile } = comparison
  const { kind, marginUnit } = result.declared
  return (
    <details className="mt-9 border-t border-rule pt-3">
      <summary className="min-h-8 text-control font-bold">{text.method}</summary>
      <ul className="mt-2 max-w-measure list-disc pl-5 text-small">
        <li>{text.methodUnit}</li>
        {method ? (
          <>
            <li>{text.methodModels[method.model]}</li>
            <li>{text.methodAdjustments[method.adjustment]}</li>
            <li>{say(text.methodLimits[method.limits], language, { confidence: forms.confidence })}</li>
            <li>
              {say(text.methodFigures, language, {
                sd: forms.spread(method.batchSd),
                unit,
                df: method.df,
                df1: method.armTest.df1,
                df2: method.armTest.df2,
                f: forms.number(method.armTest.f, 2),
                p: forms.pEquals(method.armTest.p),
              })}
            </li>
          </>
        ) : null}
        {loafVariation ? (
          <li>
            {say(text.methodLoaves, language, { sd: forms.spread(loafVariation.sd), unit, df: loafVariation.df })}
          </li>
        ) : null}
        {worthwhile === null ? null : (
          <li>
            {marginUnit === 'pct'
              ? say(text.methodMargin, language, { margin: forms.margin, units: forms.spread(worthwhile), unit })
              : say(text.methodMarginUnits, language, { margin: forms.margin })}
          </li>
        )}
        {kind === 'gain' || kind === 'which_dose' ? <li>{text.methodRule}</li> : null}
      </ul>
    </details>
  )
}
