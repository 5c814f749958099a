import { describe, expect, it } from 'vitest'
import type { VersionContent } from '@/lib/documents/version-content/text-of-version-content'
import { differencesOfContent } from '@/lib/kitchen/formulas/differences-of-content'

const id = (digit: number) => `00000000-0000-7000-8000-00000000000${digit}`
type Stage = VersionContent['stages'][number]
const stage = (kind: Stage['kind'], lines: Record<string, number>): Stage => ({
  kind,
  name: '',
  lines: Object.entries(lines).map(([name, pctFlour]) => ({
    ingredient: { id: name, name, kind: 'other', allergens: [], allergensChecked: true },
    pctFlour,
  })),
})
const content = (stages: Stage[], process: Partial<VersionContent['process']> = {}): VersionContent => ({
  bakery: id(1),
  formula: { id: id(2), name: 'Tin' },
  version: { id: id(3), number: 1, from: null, reason: 'x', draftedBy: { id: id(4), name: 'Henk' } },
  batch: { pieces: 10, scalingMassG: 800, doughLossPct: 0 },
  process: {
    doughTempC: 26,
    mixTimeS: 600,
    bulkTimeS: 3600,
    proofTimeS: 3600,
    bakeTempC: 220,
    bakeTimeS: 2000,
    method: 'm',
    ...process,
  },
  stages,
})

describe('two versions side by side', () => {
  it('show each line that is new, gone, changed or the same, by stage', () => {
    const from = content([stage('final_dough', { flour: 100, water: 60, salt: 2 })])
    const to = content([stage('scald', { water: 10 }), stage('final_dough', { flour: 100, water: 55, honey: 1 })])
    const lines = differencesOfContent(from, to).lines.map(({ stageKind, ingredientName, fromPct, toPct, isSame }) => [
      stageKind,
      ingredientName,
      fromPct,
      toPct,
      isSame,
    ])
    expect(lines).toEqual([
      ['scald', 'water', null, 10, false],
      ['final_dough', 'flour', 100, 100, true],
      ['final_dough', 'water', 60, 55, false],
      ['final_dough', 'honey', null, 1, false],
      ['final_dough', 'salt', 2, null, false],
    ])
  })

  it('add up an ingredient that is in a stage twice, without seeing a difference in binary fractions', () => {
    const from = content([stage('final_dough', { flour: 100, water: 0.3 })])
    const twice = stage('final_dough', { flour: 100, water: 0.1 })
    const to = content([{ ...twice, lines: [...twice.lines, ...stage('final_dough', { water: 0.2 }).lines] }])
    expect(differencesOfContent(from, to).lines.every(({ isSame }) => isSame)).toBe(true)
  })

  it('show process and method, and nothing against itself', () => {
    const from = content([stage('final_dough', { flour: 100 })])
    const to = content([stage('final_dough', { flour: 100 })], { bakeTempC: 210, method: 'n' })
    const different = differencesOfContent(from, to)
    expect(different.measured.filter(({ isSame }) => !isSame)).toEqual([
      { name: 'bakeTempC', from: 220, to: 210, isSame: false },
    ])
    expect(different.method.isSame).toBe(false)
    const same = differencesOfContent(from, from)
    expect([...same.lines, ...same.measured, same.method].every(({ isSame }) => isSame)).toBe(true)
  })
})
