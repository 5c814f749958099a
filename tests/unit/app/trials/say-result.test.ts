import { describe, expect, it } from 'vitest'
import { resultForms } from '@/app/(desk)/trials/[trialId]/result/result-forms'
import { armSentences, verdictText, verdictWord } from '@/app/(desk)/trials/[trialId]/result/say-result'
import type {
  ShownArm,
  ShownBakery,
  ShownComparison,
  ShownCosts,
} from '@/app/(desk)/trials/[trialId]/result/shown-result'

const bakery = { locale: 'en-GB' } as ShownBakery
const effect = { estimate: 0.2, low: 0.1, high: 0.3, p: 0.01, pct: 6.7, lowPct: 3.3, highPct: 10 }
const better = {
  arm: 1,
  batches: 4,
  loaves: 16,
  mean: 3.2,
  standing: 'compared',
  verdict: { verdict: 'better', clearly: true },
  doubts: [],
  effect,
} as unknown as ShownArm

function said(arm: Partial<ShownArm>, q: { code?: string | null; more?: string } = {}) {
  const arms = [{ ...better, ...arm }]
  const comparison = { arms, controlMean: 3, isIndication: false } as unknown as ShownComparison
  const { code = 'specific-volume', more } = q
  const declared = {
    kind: 'gain',
    measure: { name: 'Specific volume', unit: 'mL/g', digits: 2, direction: 'larger' },
    margin: 3,
    marginUnit: 'pct',
    confidencePct: 95,
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
          arms: [{ arm: 1, differencePerPlannedPiece: more, differencePerGoodPiece: more, good: null }],
        } as unknown as ShownCosts)
  const [found] = armSentences(comparison, costs, forms)
  return {
    sentence: found?.sentence,
    word: verdictWord(arms[0]!, comparison, forms),
    text: verdictText(arms[0]!, comparison, forms),
  }
}

const interval = 'Between +3.3 and +10.0\u00a0%, clear of the 3\u00a0% that was called worth having.'

describe('what a trial showed, in sentences', () => {
  it.each([
    [undefined, 'Dough A gives 6.7\u00a0% more specific volume.'],
    ['0.02', 'Dough A gives 6.7\u00a0% more specific volume for €0.02 more a loaf.'],
    ['-0.02', 'Dough A gives 6.7\u00a0% more specific volume and costs €0.02 less a loaf.'],
    ['0', 'Dough A gives 6.7\u00a0% more specific volume at the same cost a loaf.'],
  ])('with a loaf that costs %s more', (more, sentence) => {
    expect(said({}, { more }).sentence?.replace(/€0\.020\b/, '€0.02')).toBe(`${sentence} ${interval}`)
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
})
