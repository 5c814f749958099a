import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { figureOfPlan } from '@/lib/kitchen/trials/figure-of-plan'
import { wordsOfRefusal } from '@/lib/kitchen/words-of-refusal'
import { importsOf, isThere, sourceFilesIn, textOf } from '../../../support/source-files'

/** A name of a calculation: a capital within a word, an index in brackets, or a path with dots. */
const rawName = /[a-z][A-Z]|[[\]{}]|\w\.\w/
/** What a search or a distribution says of itself: no figure of a plan is meant. */
const ownAffairs =
  /^lib\/calc\/(distributions|random)\/|^lib\/calc\/(arms\/(bounded-least-squares|smallest-change)|analysis\/pooled-with-assumed)\.ts$/
/** Guards that are handed the name of the field: it stands at their callers. */
const handedOn = ['lib/calc/checks.ts', 'lib/calc/formula/composition-warnings.ts']

/** Every file that drawing up a plan runs. */
function filesOf(start: string, found = new Set<string>()): Set<string> {
  const file = `${start}.ts`
  if (!isThere(file) || found.has(file)) return found
  found.add(file)
  for (const wanted of importsOf(file)) filesOf(wanted, found)
  return found
}

/** The fields that a file's refusals name. A place in a template is an index; one that begins with a place is of several lists, tried by name below. */
function fieldsIn(file: string): string[] {
  const named = [
    ...textOf(file).matchAll(
      /(?:\bfield: |\b(?:must[A-Z]\w*|\w+OrRefuse)(?:<[^>]*>)?\([^()'`]*)(?:'([^']+)'|`([^`]+)`)/g,
    ),
  ].map(([, plain, template]) => plain ?? template ?? '')
  return named.filter((field) => !field.startsWith('${')).map((field) => field.replace(/\$\{\w+\}/g, '3'))
}

const sentenceOf = (field: string, language: 'en' | 'en-XA' = 'en') =>
  wordsOfRefusal({ code: 'plan-not-possible', facts: { figure: figureOfPlan(field) }, problems: [] }, language).sentence

describe('what a plan’s refusal tells to look at', () => {
  const reached = [...filesOf('lib/kitchen/trials/draw-up-or-fault')].filter((file) => !handedOn.includes(file))
  const fields = reached.flatMap((file) => fieldsIn(file).map((field) => [file, field] as const))

  it('reads the fields of every calculation that a plan runs', () => {
    expect(reached.length).toBeGreaterThan(50)
    // One of each way to name a field, so that a change of style cannot empty the list.
    const names = fields.map(([, field]) => field)
    expect(names).toEqual(
      expect.arrayContaining(['dose', 'lines[3].pctFlour', 'added[3].composition', 'friction.riseC', 'lossShares']),
    )
  })

  it('is a figure that a person knows, for each of them', () => {
    const unknown = fields.filter(([file, field]) => !ownAffairs.test(file) && figureOfPlan(field) === 'several')
    expect(unknown).toEqual([])
  })

  it('is never the name that a calculation has for it, whichever calculation refuses', () => {
    const all = sourceFilesIn('lib/calc').flatMap(fieldsIn)
    expect(all.length).toBeGreaterThan(300)
    expect(all.filter((field) => rawName.test(sentenceOf(field)))).toEqual([])
  })

  it('is what the one command that passes such a name on makes of it; the calculators put theirs at the field', () => {
    const passing = sourceFilesIn('lib/kitchen').filter((file) => /\bfacts\.field\b/.test(textOf(file)))
    expect(passing).toEqual([
      'lib/kitchen/calculators/fault-of-calc-error.ts',
      'lib/kitchen/calculators/range-of-field.ts',
      'lib/kitchen/trials/draw-up-or-fault.ts',
    ])
  })

  it('is never what a field is called, whatever that is', () => {
    fc.assert(
      fc.property(fc.string(), (field) => !rawName.test(sentenceOf(field))),
      { seed: 8 },
    )
  })

  it.each([
    ['lines[2].pctFlour', 'percentages'],
    ['added[0].composition.waterPct', 'composition'],
    ['control[0].id', 'percentages'],
    ['added[0].massG', 'masses'],
    ['moves[1].lineId', 'doses'],
    ['friction.riseC', 'mixing'],
    ['spread.batchSd + spread.loafSd', 'margin'],
    ['toString', 'several'],
    ['', 'several'],
  ])('%s is %s', (field, figure) => {
    expect(figureOfPlan(field)).toBe(figure)
  })

  it('is said in the reader’s language', () => {
    expect(sentenceOf('lossShares', 'en')).toBe('The plan cannot be worked out. Look at the dough loss of the formula.')
    expect(sentenceOf('lossShares', 'en-XA')).not.toContain('dough loss')
  })
})
