import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { flourOffPct } from '@/lib/kitchen/formulas/rules'
import { notShown, stagesOfArm, stateOfDecision, type PlannedLine } from '@/lib/kitchen/decisions/rules'

const stages = [
  { id: 'sponge', kind: 'pre_ferment', name: 'Sponge' },
  { id: 'dough', kind: 'final_dough', name: '' },
] as const
const line = (
  stageId: string,
  ingredientId: string,
  kind: PlannedLine['kind'],
  massG: number,
  controlMassG = massG,
): PlannedLine => ({ stageId, ingredientId, kind, massG, controlMassG })

describe('the percentages of an arm', () => {
  it('are its masses on all flour of all stages, worked by hand: 2,000 g of flour', () => {
    const lines = [
      line('sponge', 'flour', 'flour', 400),
      line('sponge', 'water', 'water', 380),
      line('dough', 'flour', 'flour', 1600),
      line('dough', 'salt', 'salt', 36),
      line('dough', 'malt', 'malt', 12, 0),
    ]
    expect(stagesOfArm(stages, lines)).toEqual([
      {
        kind: 'pre_ferment',
        name: 'Sponge',
        lines: [
          { ingredientId: 'flour', pctFlour: 20 },
          { ingredientId: 'water', pctFlour: 19 },
        ],
      },
      {
        kind: 'final_dough',
        name: '',
        lines: [
          { ingredientId: 'flour', pctFlour: 80 },
          { ingredientId: 'salt', pctFlour: 1.8 },
          { ingredientId: 'malt', pctFlour: 0.6 },
        ],
      },
    ])
  })

  it('keep a dose of a few ppm, and even one that six decimals would lose', () => {
    const dosed = (massG: number) =>
      stagesOfArm(stages, [line('dough', 'flour', 'flour', 3000), line('dough', 'acid', 'improver', massG, 0)])[0]!
        .lines[1]!.pctFlour
    // 25 ppm of 3 kg is 0.075 g, which is 0.0025 %.
    expect(dosed(0.075)).toBe(0.0025)
    expect(dosed(1e-8)).toBeCloseTo(1e-6 / 3000, 15)
  })

  it('put a dose of what the stage holds already into that line, and leave two lines of the control two', () => {
    const lines = [
      line('dough', 'flour', 'flour', 1000),
      line('dough', 'water', 'water', 500),
      line('dough', 'water', 'water', 100),
      line('dough', 'salt', 'salt', 18),
      line('dough', 'salt', 'salt', 2, 0),
    ]
    expect(stagesOfArm(stages, lines)[0]!.lines).toEqual([
      { ingredientId: 'flour', pctFlour: 100 },
      { ingredientId: 'water', pctFlour: 50 },
      { ingredientId: 'water', pctFlour: 10 },
      { ingredientId: 'salt', pctFlour: 2 },
    ])
  })

  it('leave out what was balanced away to nothing, and a stage with nothing left', () => {
    const lines = [
      line('sponge', 'milk', 'dairy', 0, 200),
      line('dough', 'flour', 'flour', 1000),
      line('dough', 'sugar', 'sugar', 0, 30),
    ]
    expect(stagesOfArm(stages, lines)).toEqual([
      { kind: 'final_dough', name: '', lines: [{ ingredientId: 'flour', pctFlour: 100 }] },
    ])
    expect(() => stagesOfArm(stages, [line('dough', 'water', 'water', 1)])).toThrow(RangeError)
  })

  it('make 100 % of flour within the tolerance, and the same masses again within the rounding, whatever the batch', () => {
    const masses = fc.array(fc.double({ min: 0.001, max: 60_000, noNaN: true }), { minLength: 1, maxLength: 30 })
    fc.assert(
      fc.property(masses, masses, fc.double({ min: 0.01, max: 100, noNaN: true }), (flours, others, factor) => {
        const lines = [
          ...flours.map((massG, i) => line('sponge', `flour ${i}`, 'flour', massG)),
          ...others.map((massG, i) => line('dough', `other ${i}`, 'other', massG)),
        ]
        const drafted = stagesOfArm(stages, lines)
        const kinds = new Map(lines.map(({ ingredientId, kind }) => [ingredientId, kind]))
        expect(
          flourOffPct(
            drafted.flatMap((stage) =>
              stage.lines.map(({ ingredientId, pctFlour }) => ({ kind: kinds.get(ingredientId)!, pctFlour })),
            ),
          ),
        ).toBe(0)
        const flourG = flours.reduce((sum, massG) => sum + massG, 0)
        const again = drafted.flatMap((stage) => stage.lines)
        for (const [i, { massG }] of lines.entries())
          expect(Math.abs((again[i]!.pctFlour / 100) * flourG - massG)).toBeLessThanOrEqual(
            1e-8 * flourG * 0.5001 + 1e-9,
          )
        const scaled = stagesOfArm(
          stages,
          lines.map((each) => ({ ...each, massG: each.massG * factor, controlMassG: each.controlMassG * factor })),
        ).flatMap((stage) => stage.lines)
        for (const [i, { pctFlour }] of scaled.entries()) expect(pctFlour).toBeCloseTo(again[i]!.pctFlour, 5)
      }),
      { seed: 20260302 },
    )
  })
})

describe('where a decision stands', () => {
  const version = { signedAt: null }
  it('is waiting until its version is signed off, and taken back whatever it was', () => {
    const takenBackAt = new Date(0)
    expect(stateOfDecision({ outcome: 'change', takenBackAt: null, version })).toBe('waiting')
    expect(stateOfDecision({ outcome: 'change', takenBackAt: null, version: { signedAt: new Date(0) } })).toBe('signed')
    expect(stateOfDecision({ outcome: 'keep', takenBackAt: null, version: null })).toBe('kept')
    expect(stateOfDecision({ outcome: 'keep', takenBackAt, version: null })).toBe('taken-back')
    expect(stateOfDecision({ outcome: 'change', takenBackAt, version })).toBe('taken-back')
  })
})

describe('what a trial did not show', () => {
  const arm = (verdict: string | null, standing = 'compared', doubts: string[] = []) => ({
    standing,
    verdict: verdict === null ? null : { verdict },
    doubts,
  })

  it('is nothing when the verdict is the hoped-for one and nothing else differed', () => {
    for (const verdict of ['better', 'no-worse', 'same']) expect(notShown(arm(verdict), false)).toBeNull()
  })

  it('is said of every other', () => {
    expect(notShown(arm('better', 'compared', ['dough-temp']), false)).toBe('in-doubt')
    expect(notShown(arm('undecided'), false)).toBe('undecided')
    expect(notShown(arm('worse'), false)).toBe('worse')
    expect(notShown(arm(null), false)).toBe('no-verdict')
    expect(notShown(arm(null, 'look-only'), false)).toBe('look-only')
    expect(notShown(arm('better'), true)).toBe('indication')
  })
})
