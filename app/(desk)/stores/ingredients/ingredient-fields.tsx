import type { ReactNode } from 'react'
import {
  allergen,
  countedPart,
  figure,
  ingredientKind,
  type Allergen,
  type Figure,
  type IngredientKind,
} from '@/lib/kitchen/stores/ingredient-facts.input'
import { CheckGroup } from '@/lib/ui/check-group'
import { FieldPair } from '@/lib/ui/field-pair'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormCheck } from '@/lib/ui/form-check'
import { FormField } from '@/lib/ui/form-field'
import { FormRadioGroup } from '@/lib/ui/form-radio-group'
import { FormSelect } from '@/lib/ui/form-select'
import { FormTextArea } from '@/lib/ui/form-text-area'
import { addIngredientInput } from '@/lib/kitchen/stores/add-ingredient.input'
import { ruleOf } from '@/lib/ui/field-rules'
import { rulesOf } from '@/lib/ui/rules-of'
import { Section } from '@/lib/ui/section'
import { plainNumber } from '@/lib/words/format/plain-number'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

type Present = {
  name: string
  labelName: string
  kind: IngredientKind
  activeName: string | null
  activeShare: number | null
  customaryLeastPct: number | null
  customaryMostPct: number | null
  customarySource: string | null
  allergens: readonly Allergen[]
  dustCaution: boolean
  countsAsUsual: boolean
  counts: readonly ('water' | 'fat' | 'sugars' | 'protein')[]
  bindsWater: boolean
  note: string
  figures: readonly { figure: Figure; gPer100G: number; source: string }[]
}

type IngredientFieldsProps = {
  words: Pick<Words, 'stores' | 'desk'>
  language: Language
  locale: string
  /** Left out for a new ingredient. */
  present?: Present
  /** What can be said about the check of allergens, and what stands there at first. */
  checks: { options: readonly { value: string; label: string }[]; first: string }
  /** A further section, behind the others. */
  children?: ReactNode
}

/** The sections of the form for an ingredient. */
export function IngredientFields({ words, language, locale, present, checks, children }: IngredientFieldsProps) {
  const { form: text, ...stores } = words.stores
  const optionalWord = words.desk.optional
  const number = (value: number | null | undefined) =>
    value === null || value === undefined ? undefined : plainNumber(value, { locale, significant: 12, grouped: false })
  const commonSource = commonSourceOf(present?.figures ?? [])
  return (
    <>
      <Section id="what" title={text.what}>
        <FieldStack>
          <FormField
            name="name"
            type="text"
            label={text.name}
            hint={text.nameHint}
            defaultValue={present?.name}
            autoComplete="off"
          />
          <FormField
            name="labelName"
            type="text"
            label={text.labelName}
            hint={text.labelNameHint}
            defaultValue={present?.labelName}
            autoComplete="off"
          />
          <FormSelect
            name="kind"
            label={text.kind}
            emptyLabel={present ? undefined : text.kindEmpty}
            options={ingredientKind.options.map((kind) => ({ value: kind, label: stores.kinds[kind] }))}
            defaultValue={present?.kind ?? ''}
          />
        </FieldStack>
      </Section>

      <Section id="allergens" title={text.allergens} note={text.allergensNote}>
        <FieldStack>
          <CheckGroup id="allergens-ticks" label={text.allergensGroup}>
            {allergen.options.map((each) => (
              <FormCheck
                key={each}
                name={`allergens.${each}`}
                label={stores.allergens[each]}
                defaultChecked={present?.allergens.includes(each)}
              />
            ))}
          </CheckGroup>
          <FormRadioGroup
            name="allergenCheck"
            label={text.allergenCheck}
            hint={text.allergenCheckHint}
            options={checks.options}
            defaultValue={checks.first}
          />
        </FieldStack>
      </Section>

      <Section id="composition" title={text.composition} note={text.compositionNote}>
        <FieldStack>
          <FormField
            name="compositionSource"
            type="text"
            label={text.compositionSource}
            hint={text.compositionSourceHint}
            defaultValue={commonSource}
            maxLength={ruleOf(rulesOf(addIngredientInput), 'figures.water.source')?.mostLength}
            autoComplete="off"
          />
          {figure.options.map((each) => {
            const stated = present?.figures.find((row) => row.figure === each)
            return (
              <FieldPair key={each}>
                <FormField
                  name={`figures.${each}.gPer100G`}
                  type="number"
                  label={stores.figures[each]}
                  unit={text.figureUnit}
                  width="short"
                  defaultValue={number(stated?.gPer100G)}
                />
                <FormField
                  name={`figures.${each}.source`}
                  type="text"
                  label={say(text.figureSource, language, { figure: stores.figures[each] })}
                  defaultValue={stated && stated.source !== commonSource ? stated.source : undefined}
                  autoComplete="off"
                />
              </FieldPair>
            )
          })}
        </FieldStack>
      </Section>

      <Section id="counts" title={text.counts} note={text.countsNote}>
        <div className="group grid gap-5">
          <FormRadioGroup
            name="countsHow"
            label={text.countsHow}
            hint={text.countsHint}
            options={[
              { value: 'usual', label: text.countsUsual },
              { value: 'own', label: text.countsOwn },
            ]}
            defaultValue={present && !present.countsAsUsual ? 'own' : 'usual'}
            required
          />
          <div className="hidden group-has-[input[value=own]:checked]:block">
            <CheckGroup id="counts-ticks" label={text.countsGroup}>
              {countedPart.options.map((each) => (
                <FormCheck
                  key={each}
                  name={`counts.${each}`}
                  label={stores.figures[each]}
                  defaultChecked={present?.counts.includes(each)}
                />
              ))}
            </CheckGroup>
          </div>
          <FormCheck
            name="bindsWater"
            label={text.bindsWater}
            hint={text.bindsWaterHint}
            defaultChecked={present?.bindsWater}
          />
        </div>
      </Section>

      <Section id="active" title={text.active} note={text.activeNote}>
        <FieldStack>
          <FormField
            name="active.name"
            type="text"
            label={text.activeName}
            optionalWord={optionalWord}
            hint={text.activeNameHint}
            defaultValue={present?.activeName ?? undefined}
            width="medium"
            autoComplete="off"
          />
          <FormField
            name="active.pct"
            type="number"
            label={text.activePct}
            optionalWord={optionalWord}
            unit={text.pctUnit}
            width="short"
            defaultValue={number(
              present?.activeShare === null || present === undefined ? null : present.activeShare * 100,
            )}
          />
        </FieldStack>
      </Section>

      <Section id="customary" title={text.customary} note={text.customaryNote}>
        <FieldStack>
          <FieldPair>
            <FormField
              name="customary.leastPct"
              type="number"
              label={text.leastPct}
              unit={text.pctFlour}
              width="short"
              defaultValue={number(present?.customaryLeastPct)}
            />
            <FormField
              name="customary.mostPct"
              type="number"
              label={text.mostPct}
              unit={text.pctFlour}
              width="short"
              defaultValue={number(present?.customaryMostPct)}
            />
          </FieldPair>
          <FormField
            name="customary.source"
            type="text"
            label={text.customarySource}
            defaultValue={present?.customarySource ?? undefined}
            autoComplete="off"
          />
        </FieldStack>
      </Section>

      <Section id="handling" title={text.handling}>
        <FieldStack>
          <FormCheck name="dustCaution" label={text.dust} hint={text.dustHint} defaultChecked={present?.dustCaution} />
          <FormTextArea
            name="note"
            label={text.note}
            optionalWord={optionalWord}
            hint={text.noteHint}
            defaultValue={present?.note}
          />
        </FieldStack>
      </Section>
      {children}
    </>
  )
}

/** The source that most figures name, to be typed once. */
function commonSourceOf(figures: Present['figures']): string | undefined {
  const counts = new Map<string, number>()
  for (const { source } of figures) counts.set(source, (counts.get(source) ?? 0) + 1)
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0]
}
