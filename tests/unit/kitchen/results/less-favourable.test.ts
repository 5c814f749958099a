import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { ArmResult, Comparison } from '@/lib/kitchen/results/compare-arms'
import { lessFavourable } from '@/lib/kitchen/results/less-favourable'

type Verdict = NonNullable<ArmResult['verdict']>

const arm = (verdict: Verdict | null, from: string, position = 1) =>
  ({ arm: position, standing: 'compared', verdict, from }) as unknown as ArmResult
const comparison = (arms: ArmResult[], isIndication = false) =>
  ({ isIndication, arms, controlMean: 4 }) as unknown as Comparison
const plain = (verdict: Verdict['verdict']): Verdict => ({ verdict, clearly: false })

const takes = (without: Verdict | null, withThem: Verdict | null) =>
  (
    lessFavourable(comparison([arm(without, 'without')]), comparison([arm(withThem, 'with')])).arms[0] as unknown as {
      from: string
    }
  ).from

/** From against to for, by kind of question. */
const orders: (Verdict | null)[][] = [
  [
    { verdict: 'worse', clearly: true },
    plain('worse'),
    plain('no-worthwhile-difference'),
    plain('undecided'),
    plain('better-on-pooled-error-only'),
    plain('better'),
    { verdict: 'better', clearly: true },
  ],
  [plain('worse'), null, plain('no-worse')],
  [plain('different'), plain('undecided'), plain('same')],
]

describe('of two comparisons the headline takes the less favourable', () => {
  it.each(
    orders.flatMap((order) => order.flatMap((less, i) => order.slice(i + 1).map((more) => [less, more] as const))),
  )('%j before %j, whichever is without', (less, more) => {
    expect(takes(less, more)).toBe('without')
    expect(takes(more, less)).toBe('with')
  })

  it('the one without where both say the same', () => {
    for (const verdict of orders.flat()) expect(takes(verdict, verdict)).toBe('without')
  })

  it('each arm by itself', () => {
    const found = lessFavourable(
      comparison([arm(plain('better'), 'without', 1), arm(plain('worse'), 'without', 2)]),
      comparison([arm(plain('undecided'), 'with', 1), arm(plain('better'), 'with', 2)]),
    )
    expect(found.arms).toMatchObject([
      { arm: 1, from: 'with' },
      { arm: 2, from: 'without' },
    ])
  })

  it('an indication without them does not hide what speaks against an arm with them, and stays one otherwise', () => {
    const indication = comparison([arm(null, 'without')], true)
    expect(lessFavourable(indication, comparison([arm(plain('worse'), 'with')]))).toMatchObject({
      isIndication: false,
      arms: [{ from: 'with' }],
    })
    expect(lessFavourable(indication, comparison([arm(plain('better'), 'with')]))).toMatchObject({
      isIndication: true,
      arms: [{ from: 'without' }],
    })
  })

  it('never says more for an arm than either', () => {
    const order = orders[0]!
    const drawn = fc.integer({ min: 0, max: order.length - 1 })
    fc.assert(
      fc.property(drawn, drawn, (a, b) => {
        const { arms } = lessFavourable(comparison([arm(order[a]!, 'without')]), comparison([arm(order[b]!, 'with')]))
        expect(arms[0]!.verdict).toEqual(order[Math.min(a, b)])
      }),
    )
  })
})
