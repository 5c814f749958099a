import { describe, expect, it } from 'vitest'
import { guessArms, guessMatch } from '@/lib/kitchen/readings/import/guess-match'
import { importFacts } from '@/tests/support/import-samples'

const table = (header: string, ...lines: string[]) => ({
  header: header.split(','),
  rows: lines.map((line, i) => ({ line: i + 2, cells: line.split(','), isBroken: false })),
})
const usesOf = (header: string, ...lines: string[]) =>
  guessMatch(table(header, ...lines), ',', importFacts()).columns.map((column) =>
    column.as === 'measure' ? `${column.measureId} ${column.unit}` : column.as,
  )

describe('a guess at the columns', () => {
  it('knows codes by what stands in them, and the rest by its name', () => {
    expect(usesOf('no.,Mixing day,Recipe,Loaf no.,Taken at,Remark', '101,1,control,1,2026-03-02,fine')).toEqual([
      'code',
      'day',
      'arm',
      'piece',
      'time',
      'nothing',
    ])
  })

  it('knows measures by their name or code with their unit, and leaves out what is worked out', () => {
    expect(usesOf('Loaf weight (kg),loaf_mass_g,Volume,Specific volume', '0.4,400,1600,4')).toEqual([
      'loaf-mass kg',
      'loaf-mass g',
      'loaf-volume mL',
      'nothing',
    ])
  })

  it('leaves open what could be two measures', () => {
    expect(usesOf('mass,weight,dough mass', '400,400,450')).toEqual(['nothing', 'nothing', 'dough-mass g'])
  })

  it('knows what is read before mixing by its whole name alone', () => {
    expect(usesOf('Temp,Flour temp,room_temp (°C),Water temperature', '26,20,22,14')).toEqual([
      'dough-temp °C',
      'flour-temp °C',
      'room-temp °C',
      'water-temp °C',
    ])
  })

  it('knows the factor by its name and its levels', () => {
    const facts = importFacts({ factorName: 'Baking temperature', factorLevels: ['180', '220'] })
    expect(guessMatch(table('temperature', '180', '220'), ',', facts).columns).toEqual([{ as: 'level' }])
    expect(guessMatch(table('temperature', '180', '200'), ',', facts).columns).toEqual([{ as: 'level' }])
    expect(guessMatch(table('temperature', '25.5'), ',', facts).columns).toEqual([
      { as: 'measure', measureId: 'dough-temp', unit: '°C' },
    ])
  })

  it('gives each use but a measure to one column', () => {
    expect(usesOf('day,block,volume,volume', '1,1,1600,1610')).toEqual([
      'day',
      'nothing',
      'loaf-volume mL',
      'loaf-volume mL',
    ])
  })

  it('takes the decimal mark that more numbers have', () => {
    const marks = (by: ';' | ',', ...cells: string[]) =>
      guessMatch(
        { header: ['x'], rows: cells.map((cell, i) => ({ line: i + 2, cells: [cell], isBroken: false })) },
        by,
        importFacts(),
      ).decimal
    expect(marks(';', '1,5', '2,5', '3')).toBe(',')
    expect(marks(';', '1.5', '2')).toBe('.')
    expect(marks(',', '1,5')).toBe('.')
  })
})

it('arms go by name, letter or position, and what is none of these stays open', () => {
  const arms = [
    { position: 0, name: 'control' },
    { position: 1, name: 'Malt, 0.6 %' },
    { position: 2, name: 'A' },
  ]
  expect(guessArms(['Control', 'malt 06', 'A', 'B', '1', 'x'], arms)).toEqual([
    { text: 'Control', arm: 0 },
    { text: 'malt 06', arm: 1 },
    // An arm of that name comes before the letter.
    { text: 'A', arm: 2 },
    { text: 'B', arm: 2 },
    { text: '1', arm: 1 },
  ])
})
