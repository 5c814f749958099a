import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { rulesOf } from '@/lib/ui/rules-of'
import { addIngredientInput } from '@/lib/kitchen/stores/add-ingredient.input'
import { changeSettingsInput } from '@/lib/kitchen/people/change-settings.input'
import { draftFormulaInput } from '@/lib/kitchen/formulas/draft-formula.input'
import { draftTrialInput } from '@/lib/kitchen/trials/draft-trial.input'
import { invitePersonInput } from '@/lib/kitchen/people/invite-person.input'
import { correctReadingInput } from '@/lib/kitchen/readings/correct-reading.input'
import { importReadingsInput } from '@/lib/kitchen/readings/import/import-readings.input'
import { logReadingInput } from '@/lib/kitchen/readings/log-reading.input'
import { signInInput } from '@/lib/kitchen/people/sign-in.input'
import { verifyRecordInput } from '@/lib/kitchen/audit/verify-record.input'
import { ruleOf } from '@/lib/ui/field-rules'

describe('what a form asks of its fields', () => {
  it('is what the command’s own schema asks', () => {
    const settings = rulesOf(changeSettingsInput)
    expect(settings.bakeryName).toEqual({ isRequired: true, mostLength: 120 })
    expect(settings.costChangeLimitPct).toEqual({
      isRequired: true,
      least: 0,
      isAboveLeast: false,
      most: 100,
      isBelowMost: false,
    })
    expect(settings.timeZone).toMatchObject({ isRequired: true, mostLength: 60 })
    expect(rulesOf(invitePersonInput).email).toMatchObject({ isRequired: true, mostLength: 254 })
    expect(rulesOf(draftFormulaInput).doughLossPct).toMatchObject({
      least: 0,
      most: 50,
      isBelowMost: true,
      isAboveLeast: false,
    })
    expect(rulesOf(draftFormulaInput).scalingMassG).toMatchObject({ least: 0, isAboveLeast: true, most: 50_000 })
    expect(rulesOf(addIngredientInput).name).toMatchObject({ isRequired: true })
  })

  it('finds rows by their name with a number', () => {
    const rules = rulesOf(draftTrialInput)
    expect(ruleOf(rules, 'content.arms.3.name')).toEqual({ isRequired: true, mostLength: 80 })
    expect(ruleOf(rules, 'content.arms.0.doses.11.ingredientId')).toMatchObject({ isRequired: true })
    expect(ruleOf(rules, 'content.arms.0.doses.11.insteadOfId')).toMatchObject({ isRequired: false })
    expect(ruleOf(rules, 'content.note')).toEqual({ isRequired: false, mostLength: 2000 })
    expect(ruleOf(rules, 'content.nothing')).toBeUndefined()
  })

  it('finds a part under a name out of a list', () => {
    const rules = rulesOf(addIngredientInput)
    expect(ruleOf(rules, 'figures.water.source')).toEqual({ isRequired: false, mostLength: 200 })
    expect(ruleOf(rules, 'figures.salt.gPer100G')).toMatchObject({ isRequired: false, least: 0, most: 100 })
    expect(ruleOf(rules, 'figures.nothing.source')).toBeUndefined()
  })

  it('knows the lengths of what is typed outside the form kit', () => {
    expect(rulesOf(logReadingInput).value?.mostLength).toBe(40)
    expect(rulesOf(correctReadingInput).reason?.mostLength).toBe(300)
    expect(rulesOf(importReadingsInput)['outside.orderWhy']?.mostLength).toBe(300)
    expect(rulesOf(verifyRecordInput)['anchor.hash']?.mostLength).toBe(100)
    expect(rulesOf(signInInput)).toMatchObject({ email: { mostLength: 254 }, password: { mostLength: 256 } })
  })

  it('leaves open what may stay empty, is null or has a usual value, and asks of several kinds only what all ask', () => {
    const rules = rulesOf(
      z.strictObject({
        empty: z.string().max(5),
        gone: z.string().min(1).nullable(),
        usual: z.number().default(3),
        away: z.string().min(1).optional(),
        either: z.union([
          z.strictObject({ both: z.string().min(1), first: z.string().min(1) }),
          z.strictObject({ both: z.string().min(1).max(9) }),
        ]),
      }),
    )
    expect(Object.fromEntries(Object.entries(rules).map(([name, { isRequired }]) => [name, isRequired]))).toEqual({
      password: true,
      empty: false,
      gone: false,
      usual: false,
      away: false,
      'either.both': true,
      'either.first': true,
    })
    expect(rules.password).toEqual({ isRequired: true, mostLength: 256 })
  })
})
