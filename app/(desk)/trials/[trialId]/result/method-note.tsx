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
  const { kind, marginUnit, holdsFor } = result.declared
  return (
    <details className="mt-9 border-t border-rule pt-3">
      <summary className="min-h-8 text-control font-bold">{text.method}</summary>
      <ul className="mt-2 max-w-measure list-disc pl-5 text-small">
        <li>{text.methodUnit}</li>
        <li>{text.methodUnits[holdsFor]}</li>
        {method ? (
          <>
            <li>{say(text.methodScales[method.scale], language, { unit })}</li>
            <li>{text.methodAdjustments[method.adjustment]}</li>
            <li>{say(text.methodLimits[method.limits], language, { confidence: forms.confidence })}</li>
            {holdsFor === 'any_day' ? <li>{say(text.methodOwn, language, { confidence: forms.confidence })}</li> : null}
            <li>
              {say(text.methodFigures, language, {
                sd: method.scale === 'units' ? forms.spread(method.doughSd) : forms.number(method.doughSd, 2),
                unit: method.scale === 'units' ? unit : '%',
                df: method.df,
              })}
            </li>
            <li>{text.methodP[method.limits]}</li>
          </>
        ) : null}
        {loafVariation ? (
          <li>
            {say(text.methodLoaves, language, { sd: forms.spread(loafVariation.sd), unit, df: loafVariation.df })}
          </li>
        ) : null}
        {worthwhile === null ? null : (
          <li>
            {say(marginUnit === 'pct' ? text.methodMargin : text.methodMarginUnits, language, { margin: forms.margin })}
          </li>
        )}
        {kind === 'gain' || kind === 'which_dose' ? <li>{text.methodRule}</li> : null}
      </ul>
    </details>
  )
}
