import { expect, test } from 'vitest'
import { finalDoughView } from '@/lib/calc/formula/final-dough-view'
import { line } from '@/tests/support/formula-samples'

test('each earlier stage is one ingredient on the final dough flour', () => {
  const view = finalDoughView({
    stages: [
      { id: 'dough', kind: 'final-dough' },
      { id: 'sponge', kind: 'pre-ferment' },
    ],
    lines: [
      line('flour', 'flour', 500),
      line('water', 'water', 250),
      line('sf', 'flour', 100, null, { stageId: 'sponge' }),
      line('sw', 'water', 100, null, { stageId: 'sponge' }),
    ],
  })
  expect(view).toEqual({
    finalFlourMassG: 500,
    lines: [
      { lineId: 'flour', massG: 500, pctFinalFlour: 100 },
      { lineId: 'water', massG: 250, pctFinalFlour: 50 },
    ],
    stages: [{ stageId: 'sponge', massG: 200, pctFinalFlour: 40 }],
    totalPctFinalFlour: 190,
  })
})

test('a final dough without flour of its own is refused, not divided by zero', () => {
  expect(() =>
    finalDoughView({
      stages: [
        { id: 'dough', kind: 'final-dough' },
        { id: 'sponge', kind: 'pre-ferment' },
      ],
      lines: [line('sf', 'flour', 100, null, { stageId: 'sponge' }), line('w', 'water', 10)],
    }),
  ).toThrow(
    expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field: 'finalFlourMassG' }) }),
  )
})
