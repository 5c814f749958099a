import 'server-only'
import { textOf } from '@/lib/ui/text-of'
import { numberOf } from '@/lib/ui/number-of'
import { allergen, countedPart, figure } from '@/lib/kitchen/stores/ingredient-facts.input'

/** The facts of an ingredient as they were typed, for the command to judge. Fields are named by their path in its input. */
export function readIngredientForm(form: FormData, locale: string) {
  const isTyped = (...names: string[]) => names.some((name) => textOf(form, name).trim() !== '')
  const number = (name: string) => numberOf(form, name, locale)
  const optionalText = (name: string) => textOf(form, name).trim() || undefined
  const compositionSource = optionalText('compositionSource')
  return {
    name: textOf(form, 'name'),
    labelName: textOf(form, 'labelName'),
    kind: optionalText('kind'),
    active: isTyped('active.name', 'active.pct')
      ? { name: optionalText('active.name'), pct: number('active.pct') }
      : null,
    customary: isTyped('customary.leastPct', 'customary.mostPct', 'customary.source')
      ? {
          leastPct: number('customary.leastPct'),
          mostPct: number('customary.mostPct'),
          source: optionalText('customary.source'),
        }
      : null,
    allergens: allergen.options.filter((each) => form.has(`allergens.${each}`)),
    allergenCheck: textOf(form, 'allergenCheck') || undefined,
    dustCaution: form.has('dustCaution'),
    counts:
      textOf(form, 'countsHow') === 'own' ? countedPart.options.filter((each) => form.has(`counts.${each}`)) : null,
    bindsWater: form.has('bindsWater'),
    note: textOf(form, 'note'),
    figures: Object.fromEntries(
      figure.options
        .filter((each) => isTyped(`figures.${each}.gPer100G`, `figures.${each}.source`))
        .map((each) => [
          each,
          {
            gPer100G: number(`figures.${each}.gPer100G`),
            source: optionalText(`figures.${each}.source`) ?? compositionSource,
          },
        ]),
    ),
  }
}
