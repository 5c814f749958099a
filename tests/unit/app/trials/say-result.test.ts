import { describe, expect, it } from 'vitest'
import { whereLimitsLie } from '@/lib/calc/analysis/where-limits-lie'
import { resultForms } from '@/app/(desk)/trials/[trialId]/result/result-forms'
import { armSentences, verdictText, verdictWord } from '@/app/(desk)/trials/[trialId]/result/say-result'
import type {
  ShownArm,
  ShownBakery,
  ShownComparison,
  ShownCosts,
} from '@/app/(desk)/trials/[trialId]/result/shown-result'

const bakery = { locale: 'en-GB' } as ShownBakery
const own = { days: 4, low: 2.1, high: 11.3 }
const effect = { estimate: 0.2, low: null, high: null, p: 0.01, pct: 6.7, lowPct: 3.3, highPct: 10, own }
const better = {
  arm: 1,
  batches: 4,
  loaves: 16,
  mean: 3.2,
  standing: 'compared',
  verdict: { verdict: 'better', clearly: true },
  lies: 'gain-that-matters',
  doubts: [],
  effect,
} as unknown as ShownArm

type Direction = 'larger' | 'smaller' | 'none'

function said(
  arm: Partial<ShownArm>,
  q: { code?: string | null; more?: string; direction?: Direction; holdsFor?: 'any_day' | 'these_days' } = {},
) {
  const arms = [{ ...better, ...arm }]
  const comparison = { arms, controlMean: 3, isIndication: false } as unknown as ShownComparison
  const { code = 'specific-volume', more, direction = 'larger', holdsFor = 'any_day' } = q
  const declared = {
    kind: 'gain',
    measure: { name: 'Specific volume', unit: 'mL/g', digits: 2, direction },
    margin: 3,
    marginUnit: 'pct',
    confidencePct: 95,
    holdsFor,
  } as const
  const forms = resultForms({
    result: { declared, analysis: { comparison } },
    measureCode: code,
    bakery,
    language: 'en',
  })
  const costs =
    more === undefined
      ? null
      : ({
          currency: 'EUR',
          arms: [{ arm: 1, differencePerLoaf: more, good: null }],
        } as unknown as ShownCosts)
  const [found] = armSentences(comparison, costs, forms)
  return {
    sentence: found?.sentence,
    word: verdictWord(arms[0]!, comparison, forms),
    text: verdictText(arms[0]!, comparison, forms),
  }
}

const interval = 'Between +3.3 and +10.0\u00a0%: better, and by the 3\u00a0% that was called worth having or more.'

describe('what a trial showed, in sentences', () => {
  it.each([
    [undefined, 'Dough A gives 6.7\u00a0% more specific volume.'],
    ['0.02', 'Dough A gives 6.7\u00a0% more specific volume for €0.02 more a loaf.'],
    ['-0.02', 'Dough A gives 6.7\u00a0% more specific volume and costs €0.02 less a loaf.'],
    ['0', 'Dough A gives 6.7\u00a0% more specific volume at the same cost a loaf.'],
  ])('with a loaf that costs %s more', (more, sentence) => {
    expect(said({}, { more }).sentence?.replace(/€0\.020\b/, '€0.02')).toBe(`${sentence} ${interval}`)
  })

  it('says of which days it is said, where that was declared, in the sentence and in every verdict', () => {
    const of = { holdsFor: 'these_days' } as const
    expect(said({}, of)).toEqual({
      sentence: `Dough A gives 6.7\u00a0% more specific volume. That is said of these mixing days only, and of no other. ${interval}`,
      word: 'clearly better on these days',
      text: 'clearly better on these days',
    })
    expect(said({ doubts: ['dough-temp'] }, of).text).toBe(
      'clearly better on these days, but other things differed too',
    )
    for (const verdict of ['better', 'worse', 'no-worthwhile-difference', 'no-worse', 'same', 'different'] as const)
      for (const clearly of [true, false])
        expect(said({ verdict: { verdict, clearly } }, of).word).toMatch(/on these days$/)
    // Nothing was found, so there is nothing to say it of.
    expect(said({ verdict: null }, of).sentence).not.toContain('these mixing days')
  })

  it('quotes the name of a bakery’s own measure as it was typed', () => {
    expect(said({}, { code: null }).sentence).toBe(`Dough A gives 6.7\u00a0% more ‘Specific volume’. ${interval}`)
  })

  it('says that it may not be the ingredient, in the sentence and in the verdict', () => {
    const doubted = said({ doubts: ['dough-temp'] }, { more: '0.02' })
    expect(doubted).toEqual({
      sentence: `Dough A gives 6.7\u00a0% more specific volume, if it is the ingredient. ${interval}`,
      word: 'clearly better',
      text: 'clearly better, but other things differed too',
    })
    expect(said({ doubts: ['dough-temp'], verdict: { verdict: 'no-worse', clearly: false } }).text).toBe(
      'no worse, but other things differed too',
    )
  })

  it('has no verdict to doubt where none was given', () => {
    expect(said({ standing: 'look-only', verdict: null, doubts: ['dough-temp'] }).text).toBe('look only')
    expect(said({ verdict: null }).text).toBe('no verdict')
  })

  it('says of a gain that its own days do not show what they show', () => {
    const pooled = { verdict: 'better-on-pooled-error-only', clearly: false } as const
    expect(said({ verdict: pooled, effect: { ...effect, own: { days: 3, low: -1, high: 14.4 } } }).sentence).toContain(
      'By its own mixing days alone, −1.0 to +14.4\u00a0%, that is not shown',
    )
    expect(
      said({ verdict: pooled, effect: { ...effect, own: { days: 1, low: null, high: null } } }).sentence,
    ).toContain('By its own mixing days alone that is not shown')
    expect(said({ verdict: pooled }).word).toBe('better on the pooled error only')
  })
})

describe('where the limits lie, in a sentence that is true of them', () => {
  const margin = 3
  const grid = Array.from({ length: 15 }, (_, i) => i - 7)
  const pairs = grid.flatMap((low) => grid.filter((high) => high >= low).map((high) => ({ low, high })))

  /** What a sentence claims of every difference between the limits, by its words. */
  function claims(sentence: string): { every: (d: number) => boolean; some: ((d: number) => boolean)[] } {
    const big = (d: number) => d >= margin
    const bad = (d: number) => d <= -margin
    const none = (d: number) => d === 0
    const is = (words: RegExp) => words.test(sentence)
    if (is(/better, and by the/)) return { every: big, some: [] }
    if (is(/better; whether/)) return { every: (d) => d > 0, some: [big, (d) => !big(d)] }
    if (is(/better, but by less/)) return { every: (d) => d > 0 && !big(d), some: [] }
    if (is(/if there is any difference/)) return { every: (d) => !big(d) && !bad(d), some: [none] }
    if (is(/no difference and a gain/)) return { every: (d) => !bad(d), some: [none, big] }
    if (is(/no difference and a loss/)) return { every: (d) => !big(d), some: [none, bad] }
    if (is(/a gain of .* or more, none, and a loss/)) return { every: () => true, some: [big, none, bad] }
    if (is(/worse, but by less than matters/)) return { every: (d) => d < 0 && !bad(d), some: [] }
    if (is(/worse; whether/)) return { every: (d) => d < 0, some: [bad, (d) => !bad(d)] }
    if (is(/worse, and by the/)) return { every: bad, some: [] }
    throw new Error(`nothing is known of: ${sentence}`)
  }

  it.each(['larger', 'smaller'] as const)('over a grid of limits, where %s is better', (direction) => {
    const good = direction === 'larger' ? 1 : -1
    for (const { low, high } of pairs) {
      const lies = whereLimitsLie({ low, high, gain: margin, loss: margin, goodDirection: direction })
      const arm = { effect: { ...effect, pct: (low + high) / 2, lowPct: low, highPct: high }, lies }
      const { every, some } = claims(said(arm, { direction }).sentence ?? '')
      const between = Array.from({ length: 1 + 4 * (high - low) }, (_, i) => good * (low + i / 4) + 0)
      expect(between.every(every), `${low} to ${high}: ${lies}`).toBe(true)
      expect(
        some.every((one) => between.some(one)),
        `${low} to ${high}: ${lies}`,
      ).toBe(true)
    }
  })

  it('without a good direction nothing is called better or worse', () => {
    for (const { low, high } of pairs) {
      const lies = whereLimitsLie({ low, high, gain: margin, loss: margin, goodDirection: 'larger' })
      const arm = { effect: { ...effect, lowPct: low, highPct: high }, lies, verdict: null }
      expect(said(arm, { direction: 'none' }).sentence).not.toMatch(/better|worse|gain|loss|worth having/)
    }
  })
})
