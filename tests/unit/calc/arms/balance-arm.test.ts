import fc from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import { balanceArm } from '@/lib/calc/arms/balance-arm'
import { totalShare } from '@/lib/calc/arms/total-share'
import type { ArmLine, ArmTotal, LineMove, StandIn } from '@/lib/calc/arms/types'
import { usualMoves } from '@/lib/calc/arms/usual-moves'
import type { Composition, IngredientKind } from '@/lib/calc/formula/types'
import { USDA_SR28 as F } from '@/tests/published/data/usda-sr28'
import { solveLinearProgram } from '@/tests/support/linear-program'
import { forLong } from '@/tests/support/long'

function armLine(
  id: string,
  kind: IngredientKind,
  massG: number,
  composition: Composition | null,
  standsInFor: readonly StandIn[] = [],
  resolutionG = 0,
): ArmLine {
  return { id, kind, massG, composition, standsInFor: ['water', ...standsInFor], resolutionG, isFlour: kind === 'flour' }
}

/** A linear program is solved in each run, about 10 ms. */
const RUNS = forLong(150, 3_000)
vi.setConfig({ testTimeout: 30_000 })

const brioche = [
  armLine('flour', 'flour', 1000, F.ndb20129),
  armLine('water', 'water', 400, F.ndb14411),
  armLine('egg', 'egg', 100, F.ndb01123, ['fat', 'protein']),
  armLine('butter', 'fat', 150, F.ndb01145, ['fat']),
  armLine('sugar', 'sugar', 80, F.ndb19335, ['sugars']),
  armLine('yeast', 'yeast', 30, F.ndb18374),
  armLine('salt', 'salt', 18, F.ndb02047),
]
const doughG = brioche.reduce((sum, l) => sum + l.massG, 0)
const of = (result: ReturnType<typeof balanceArm>, total: ArmTotal) => result.totals.find((t) => t.total === total)
const changeOf = (result: ReturnType<typeof balanceArm>, id: string) =>
  result.lines.find((l) => l.lineId === id)?.changeG ?? Number.NaN

describe('ingredients that bring several things at once are solved together', () => {
  test('cream instead of butter and water: fat and water both held', () => {
    const result = balanceArm({
      control: brioche,
      added: [armLine('cream', 'dairy', 100, F.ndb01053, ['fat'])],
      hold: ['water', 'fat'],
      moves: [
        { lineId: 'water', minG: 0, maxG: null },
        { lineId: 'butter', minG: 0, maxG: null },
      ],
      how: 'balanced',
    })
    // By hand: butter −36.08 / 0.8111; water −(57.81 − 0.1794 · 44.4828) / 0.999.
    const butterG = -36.08 / 0.8111
    expect(result.outcome).toBe('balanced')
    expect(changeOf(result, 'butter')).toBeCloseTo(butterG, 9)
    expect(changeOf(result, 'water')).toBeCloseTo(-(57.81 + 0.1794 * butterG) / 0.999, 9)
    expect(of(result, 'fat')?.differenceG).toBeCloseTo(0, 9)
    expect(of(result, 'water')?.differenceG).toBeCloseTo(0, 9)
    expect(of(result, 'dough-mass')?.differenceG).not.toBeCloseTo(0, 0)
  })

  test('flour, yeast and salt stay where they are unless freed', () => {
    const result = balanceArm({
      control: brioche,
      added: [armLine('honey', 'sugar', 60, F.ndb19296, ['sugars'])],
      hold: ['water', 'sugars', 'dough-mass'],
      moves: usualMoves(brioche),
      how: 'balanced',
    })
    for (const id of ['flour', 'yeast', 'salt']) expect(changeOf(result, id)).toBe(0)
    expect(result.outcome).toBe('balanced')
  })
})

describe('what stands in for what', () => {
  const added = (standsInFor: StandIn[]) => [
    armLine('soy', 'improver', 50, { ...F.ndb20129, fatPct: 20, waterPct: 0 }, standsInFor),
  ]
  const q = { control: brioche, hold: ['fat'] as const, moves: usualMoves(brioche), how: 'balanced' as const }
  test('fat of an ingredient that is no shortening takes out no butter', () => {
    const result = balanceArm({ ...q, added: added([]) })
    expect(result.outcome).toBe('nothing-to-balance')
    expect(changeOf(result, 'butter')).toBe(0)
  })
  test('fat of one that is does', () => expect(changeOf(balanceArm({ ...q, added: added(['fat']) }), 'butter')).toBeLessThan(-1))
})

describe('when it cannot be balanced the reason is a code', () => {
  test('nothing that may move carries fat', () => {
    const result = balanceArm({
      control: brioche,
      added: [armLine('oil', 'fat', 20, F.ndb04053, ['fat'])],
      hold: ['fat', 'water'],
      moves: [{ lineId: 'water', minG: 0, maxG: null }],
      how: 'balanced',
    })
    expect(result.outcome).toBe('not-balanced')
    expect(result.reasons).toEqual([{ code: 'no-movable-line-carries-it', total: 'fat', broughtG: 20, removableG: 0 }])
    expect(of(result, 'fat')?.differenceG).toBeCloseTo(20, 9)
    expect(of(result, 'fat')?.differencePctFlour).toBeCloseTo(2, 9)
  })
  test('the dose brings more water than the formula has', () => {
    const result = balanceArm({
      control: brioche,
      added: [armLine('milk', 'dairy', 600, F.ndb01077)],
      hold: ['water'],
      moves: [{ lineId: 'water', minG: 0, maxG: null }],
      how: 'balanced',
    })
    expect(result.outcome).toBe('not-balanced')
    expect(result.reasons[0]).toMatchObject({ code: 'dose-brings-more-than-can-go', total: 'water' })
    expect(result.lines.find((l) => l.lineId === 'water')).toMatchObject({ armG: 0, atBound: 'min' })
  })
  test('totals that pull against each other', () => {
    const result = balanceArm({
      control: brioche,
      added: [armLine('bran', 'other', 50, { ...F.ndb20080, waterPct: 0 })],
      hold: ['water', 'dough-mass'],
      moves: [{ lineId: 'water', minG: 0, maxG: null }],
      how: 'balanced',
    })
    expect(result.outcome).toBe('not-balanced')
    expect(result.reasons.map((r) => r.code)).toEqual(['totals-conflict', 'totals-conflict'])
  })
})

describe('changes that the scale cannot show', () => {
  const hold = ['water', 'fat'] as const
  const control = brioche.map((l) => ({ ...l, resolutionG: 1 }))
  test('nothing to balance when all are', () => {
    const result = balanceArm({
      control,
      added: [armLine('enzyme', 'improver', 0.5, { ...F.ndb20129, fatPct: 1 }, ['fat'])],
      hold,
      moves: usualMoves(control),
      how: 'balanced',
    })
    expect(result.outcome).toBe('nothing-to-balance')
    expect(result.lines.every((l) => l.changeG === 0)).toBe(true)
    expect(of(result, 'water')?.differenceG).toBeCloseTo(0.0668, 9)
  })
  test('one of several is left out where the fit stays exact', () => {
    const result = balanceArm({
      control: control.map((l) => (l.id === 'sugar' ? { ...l, composition: { ...F.ndb19335, waterPct: 0.5 } } : l)),
      added: [armLine('wet', 'other', 20, { ...F.ndb14411 })],
      hold: ['water'],
      moves: usualMoves(control),
      how: 'balanced',
    })
    expect(result.outcome).toBe('balanced')
    expect(changeOf(result, 'sugar')).toBe(0)
    expect(result.lines.some((l) => l.belowResolution)).toBe(false)
    expect(of(result, 'water')?.differenceG).toBeCloseTo(0, 8)
  })
  test('one that the balance needs is kept and marked', () => {
    const result = balanceArm({
      control,
      added: [armLine('cream', 'dairy', 20, { ...F.ndb01053, fatPct: 0.5 }, ['fat'])],
      hold,
      moves: [
        { lineId: 'water', minG: 0, maxG: null },
        { lineId: 'butter', minG: 0, maxG: null },
      ],
      how: 'balanced',
    })
    expect(result.outcome).toBe('balanced')
    expect(result.lines.find((l) => l.lineId === 'butter')).toMatchObject({ belowResolution: true })
  })
})

describe('lines that the arm itself sets', () => {
  test('butter out and oil in at equal fat: only water moves, for the water of the butter', () => {
    const result = balanceArm({
      control: brioche,
      added: [armLine('oil', 'fat', 150 * 0.8111, F.ndb04053, ['fat'])],
      set: [{ lineId: 'butter', massG: 0 }],
      hold: ['water', 'fat'],
      moves: [{ lineId: 'water', minG: 0, maxG: null }],
      how: 'balanced',
    })
    expect(result.outcome).toBe('balanced')
    expect(changeOf(result, 'water')).toBeCloseTo((150 * 0.1794) / 0.999, 9)
    expect(result.lines.find((l) => l.lineId === 'butter')).toMatchObject({ armG: 0, changeG: -150, isSet: true })
    expect(of(result, 'fat')?.differenceG).toBeCloseTo(0, 9)
  })
  test('less salt and nothing beside it: the control stays as it is', () => {
    const result = balanceArm({ control: brioche, added: [], set: [{ lineId: 'salt', massG: 12 }], hold: [], moves: [], how: 'on-top' })
    expect(result.lines.filter((l) => l.changeG !== 0).map((l) => l.lineId)).toEqual(['salt'])
    expect(of(result, 'salt')?.differenceG).toBeCloseTo(-6 * 0.96895, 9)
  })
  test.each([
    [{ set: [{ lineId: 'lard', massG: 1 }] }, 'unknown-line'],
    [{ set: [{ lineId: 'butter', massG: 1 }], moves: [{ lineId: 'butter', minG: 0, maxG: null }] }, 'line-is-set'],
  ])('refused: %j', (more, reason) =>
    expect(() => balanceArm({ control: brioche, added: [], hold: ['water'], moves: [], how: 'balanced', ...more })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ reason }) }),
    ))
})

test('on top changes nothing and reports every difference', () => {
  const result = balanceArm({
    control: brioche,
    added: [armLine('egg more', 'egg', 50, F.ndb01123, ['fat'])],
    hold: [],
    moves: [],
    how: 'on-top',
  })
  expect(result.outcome).toBe('on-top')
  expect(result.lines.every((l) => l.armG === l.controlG)).toBe(true)
  expect(of(result, 'water')?.differenceG).toBeCloseTo(38.075, 10)
  expect(of(result, 'fat')?.differencePctFlour).toBeCloseTo(0.4755, 10)
})

describe('refusals', () => {
  const q = {
    control: brioche,
    added: [armLine('x', 'other', 5, null)],
    hold: ['water'] as const,
    moves: usualMoves(brioche),
    how: 'balanced' as const,
  }
  const thrown = (more: Partial<Parameters<typeof balanceArm>[0]>) => {
    try {
      balanceArm({ ...q, ...more })
    } catch (error) {
      return error
    }
    return null
  }
  test('a held total that the dose does not state', () =>
    expect(thrown({})).toMatchObject({
      code: 'not-possible',
      facts: { field: 'added[0].composition', value: 'water', reason: 'not-stated' },
    }))
  test('a held total that a movable line does not state', () =>
    expect(
      thrown({
        control: brioche.map((l) => (l.id === 'egg' ? { ...l, composition: null } : l)),
        added: [armLine('x', 'other', 5, F.ndb20129)],
      }),
    ).toMatchObject({ code: 'not-possible', facts: { field: 'control[2].composition', reason: 'not-stated' } }))
  test('a move of a line that is not there', () =>
    expect(thrown({ moves: [{ lineId: 'lard', minG: 0, maxG: null }] })).toMatchObject({ facts: { reason: 'unknown-line' } }))
  test('bounds that shut out the control', () =>
    expect(thrown({ moves: [{ lineId: 'water', minG: 500, maxG: null }] })).toMatchObject({
      code: 'out-of-range',
      facts: { field: 'moves[0].minG' },
    }))
  test('the same id in control and dose', () =>
    expect(thrown({ added: [armLine('egg', 'egg', 5, F.ndb01123)] })).toMatchObject({
      code: 'duplicate',
      facts: { field: 'added[0].id' },
    }))
  test('nothing to hold', () => expect(thrown({ hold: [] })).toMatchObject({ code: 'empty', facts: { field: 'hold' } }))
})

// Tenths, because the judge's own tolerance is blown up by shares of a thousandth.
const pct = fc.integer({ min: 0, max: 10 }).map((tenths) => 10 * tenths)
const composition = fc
  .record({ a: pct, b: pct, c: pct, d: pct, sodium: fc.constantFrom(0, 0, 4000, 38758) })
  .map(({ a, b, c, d, sodium }): Composition => {
    const sum = Math.max(100, a + b + c + d)
    return {
      waterPct: (100 * a) / sum,
      proteinPct: (100 * b) / sum,
      fatPct: (100 * c) / sum,
      carbohydratePct: (100 * d) / sum,
      sugarsPct: (50 * d) / sum,
      fibrePct: 0,
      ashPct: 0,
      sodiumMgPer100g: sodium,
    }
  })
const standsInFor = fc.subarray<StandIn>(['fat', 'sugars', 'protein'])
const randomArm = fc
  .record({
    others: fc.array(
      fc.record({
        massG: fc.constantFrom(0, 5, 30, 120, 400, 650),
        composition,
        standsInFor,
        down: fc.constantFrom(0, 0.3, 1),
        up: fc.constantFrom(1, 1.5, 4, null),
      }),
      { minLength: 1, maxLength: 8 },
    ),
    dose: fc.record({ massG: fc.constantFrom(1, 15, 60, 300), composition, standsInFor }),
    hold: fc.subarray<ArmTotal>(['dough-mass', 'flour', 'water', 'fat', 'sugars', 'protein', 'salt'], { minLength: 1 }),
  })
  .map(({ others, dose, hold }) => {
    const control = [
      armLine('flour', 'flour', 1000, F.ndb20129),
      ...others.map((o, i) => armLine(`o${i}`, 'other', o.massG, o.composition, o.standsInFor)),
    ]
    const moves = others.map((o, i): LineMove => ({
      lineId: `o${i}`,
      minG: o.massG * (1 - o.down),
      maxG: o.up === null ? null : o.massG * o.up,
    }))
    return {
      control,
      added: [armLine('dose', 'improver', dose.massG, dose.composition, dose.standsInFor)],
      hold,
      moves,
      how: 'balanced' as const,
    }
  })
type Arm = Parameters<typeof balanceArm>[0]
const doughOf = (q: Arm) => q.control.reduce((sum, l) => sum + l.massG, 0)

/** The arm as a linear program in g, so that the solver's own tolerance of 1e-7 is far below 1e-9 of the dough. */
function asProgram(q: Arm) {
  const movers = q.moves.flatMap((move) => q.control.filter((l) => l.id === move.lineId).map((line) => ({ move, line })))
  return {
    movers,
    lower: movers.map(({ move, line }) => move.minG - line.massG),
    upper: movers.map(({ move, line }) => (move.maxG === null ? 1e5 : move.maxG - line.massG)),
    rows: q.hold.map((total) => ({
      coefficients: movers.map(({ line }) => totalShare(line, total) ?? 0),
      broughtG: q.added.reduce((sum, l) => sum + (totalShare(l, total) ?? 0) * l.massG, 0),
    })),
  }
}

describe('properties, judged by linear programs', () => {
  test('an arm that can be balanced is, to 1e-9 of the dough; one that cannot is not called balanced', () => {
    let feasible = 0
    fc.assert(
      fc.property(randomArm, (q) => {
        const { rows, lower, upper } = asProgram(q)
        // Least worst deviation t: Σ a·x + brought within ±t.
        const worst = solveLinearProgram({
          minimise: [...lower.map(() => 0), 1],
          rows: rows.flatMap((row) => [
            { coefficients: [...row.coefficients, -1], low: -Infinity, high: -row.broughtG },
            { coefficients: [...row.coefficients, 1], low: -row.broughtG, high: Infinity },
          ]),
          lower: [...lower, 0],
          upper: [...upper, Infinity],
        })
        expect(worst.status).toBe('Optimal')
        const result = balanceArm(q)
        const offG = Math.max(...result.totals.filter((t) => t.isHeld).map((t) => Math.abs(t.differenceG ?? Number.NaN)))
        if (worst.objective > 1e-5) {
          expect(result.outcome).toBe('not-balanced')
          expect(offG).toBeGreaterThanOrEqual(worst.objective - 1e-6)
        } else if (worst.objective < 2e-7) {
          feasible += 1
          expect(['balanced', 'nothing-to-balance']).toContain(result.outcome)
          expect(offG / doughOf(q)).toBeLessThan(1e-9)
        }
      }),
      { seed: 1714, numRuns: RUNS },
    )
    expect(feasible).toBeGreaterThan(50)
  })

  test('no line is negative or past its bounds, and locked lines do not move', () => {
    fc.assert(
      fc.property(randomArm, (q) => {
        for (const line of balanceArm(q).lines) {
          const move = q.moves.find((m) => m.lineId === line.lineId)
          expect(line.armG).toBeGreaterThanOrEqual(move?.minG ?? line.controlG)
          expect(line.armG).toBeLessThanOrEqual((move === undefined ? line.controlG : (move.maxG ?? Infinity)) * (1 + 1e-12))
        }
      }),
      { seed: 1715, numRuns: RUNS },
    )
  })

  test('of all arms that fit as well, the one given changes lines least', () => {
    fc.assert(
      fc.property(randomArm, (q) => {
        const { rows, movers, lower, upper } = asProgram(q)
        const result = balanceArm(q)
        const changeG = movers.map(({ line }) => changeOf(result, line.id))
        const weightG = movers.map(({ line }) => (line.massG > 0 ? line.massG : 0.001 * doughOf(q)))
        // Sum of (change/weight)² is convex: least exactly if its slope times (y − change) is nowhere negative.
        const slope = changeG.map((change, j) => change / (weightG[j] ?? 1) ** 2)
        const steepest = Math.max(1e-12, ...slope.map(Math.abs))
        const best = solveLinearProgram({
          minimise: slope.map((value) => value / steepest),
          rows: rows.map((row) => {
            const now = row.coefficients.reduce((sum, share, j) => sum + share * (changeG[j] ?? 0), 0)
            return { coefficients: row.coefficients, low: now - 1e-6, high: now + 1e-6 }
          }),
          lower,
          upper,
        })
        expect(best.status).toBe('Optimal')
        const value = changeG.reduce((sum, change, j) => sum + (change * (slope[j] ?? 0)) / steepest, 0)
        expect(value - best.objective).toBeLessThan(0.01)
      }),
      { seed: 1716, numRuns: RUNS },
    )
  })

  test('with scales of some resolution an arm called balanced still is, and smaller changes are left out or marked', () => {
    fc.assert(
      fc.property(randomArm, fc.array(fc.constantFrom(0.1, 1, 5, 25), { minLength: 9, maxLength: 9 }), (q, resolutions) => {
        const control = q.control.map((l, i) => ({ ...l, resolutionG: resolutions[i] ?? 1 }))
        const result = balanceArm({ ...q, control })
        for (const [i, line] of result.lines.entries()) {
          const isSmall = line.changeG !== 0 && Math.abs(line.changeG) < (resolutions[i] ?? 1)
          expect(line.belowResolution).toBe(isSmall)
        }
        if (result.outcome === 'nothing-to-balance') expect(result.lines.every((l) => l.changeG === 0)).toBe(true)
        if (result.outcome !== 'balanced' || balanceArm(q).outcome !== 'balanced') return
        for (const t of result.totals) if (t.isHeld) expect(Math.abs(t.differenceG ?? Number.NaN) / doughOf(q)).toBeLessThan(1e-9)
      }),
      { seed: 1718, numRuns: RUNS },
    )
  })

  test('scaling the formula scales the answer', () => {
    fc.assert(
      fc.property(randomArm, fc.double({ min: 0.001, max: 500, noNaN: true }), (q, factor) => {
        const times = (l: ArmLine) => ({ ...l, massG: l.massG * factor })
        const one = balanceArm(q)
        const scaled = balanceArm({
          ...q,
          control: q.control.map(times),
          added: q.added.map(times),
          moves: q.moves.map((m) => ({
            ...m,
            minG: Math.min(m.minG * factor, (q.control.find((l) => l.id === m.lineId)?.massG ?? 0) * factor),
            maxG:
              m.maxG === null ? null : Math.max(m.maxG * factor, (q.control.find((l) => l.id === m.lineId)?.massG ?? 0) * factor),
          })),
        })
        expect(scaled.outcome).toBe(one.outcome)
        scaled.lines.forEach((line, i) =>
          expect(Math.abs(line.changeG / factor - (one.lines[i]?.changeG ?? 0)) / doughOf(q)).toBeLessThan(1e-8),
        )
      }),
      { seed: 1717, numRuns: forLong(300, 6_000) },
    )
  })
})

test('sixty lines and seven totals are solved', () => {
  const control = [
    armLine('flour', 'flour', 1000, F.ndb20129),
    ...Array.from({ length: 59 }, (_, i) =>
      armLine(
        `o${i}`,
        'dairy',
        10 + i,
        [F.ndb14411, F.ndb01145, F.ndb19335, F.ndb01123, F.ndb02047, F.ndb01116][i % 6] ?? F.ndb14411,
        ['fat', 'sugars', 'protein'],
      ),
    ),
  ]
  const result = balanceArm({
    control,
    added: [armLine('cream', 'dairy', 100, F.ndb01053, ['fat', 'sugars', 'protein'])],
    hold: ['dough-mass', 'flour', 'water', 'fat', 'sugars', 'protein', 'salt'],
    moves: usualMoves(control),
    how: 'balanced',
  })
  expect(result.outcome).toBe('balanced')
  expect(Math.max(...result.totals.map((t) => Math.abs(t.differenceG ?? Number.NaN))) / doughG).toBeLessThan(1e-9)
})
