import { describe, expect, it } from 'vitest'
import { examineImport } from '@/lib/kitchen/readings/import/examine-import'
import type { ImportMatch } from '@/lib/kitchen/readings/import/import-readings.input'
import type { ImportFacts } from '@/lib/kitchen/readings/import/load-import-facts'
import { idOfImported } from '@/lib/kitchen/readings/import/read-import'
import { importFacts } from '@/tests/support/import-samples'

const now = new Date('2026-03-03T04:00:00Z')
const measure = (measureId: string, unit: string) => ({ as: 'measure' as const, measureId, unit })
const byCode = [{ as: 'code' as const }, { as: 'piece' as const }, measure('loaf-mass', 'g')]

type Change = {
  columns?: ImportMatch['columns']
  match?: Partial<ImportMatch>
  facts?: ImportFacts
  day?: string | null
  keepOdd?: boolean
  outside?: { cleanDownDone: boolean; orderWhy?: string } | null
}

function examine(
  text: string,
  {
    columns = byCode,
    match = {},
    facts = importFacts(),
    day = '2026-03-02',
    keepOdd = false,
    outside = null,
  }: Change = {},
) {
  return examineImport({
    facts,
    mixed: facts.batches.map(({ id, code, state, plannedOrder, dayNumber, begunAt, arm }) => ({
      id,
      code,
      state,
      plannedOrder,
      dayNumber,
      turn: plannedOrder,
      begunAt,
      cleanDownBefore: arm === 0 && dayNumber === 2,
      leaves: arm === 1 ? ['milk'] : [],
      adds: arm === 1 ? ['milk'] : [],
    })),
    look: {
      file: { name: 'x.csv', bytes: new TextEncoder().encode(text) },
      day,
      keepOdd,
      outside,
      match: {
        separator: ',',
        decimal: '.',
        columns,
        arms: [
          { text: 'now', arm: 0 },
          { text: 'malt', arm: 1 },
        ],
        ...match,
      },
    },
    now,
  })
}
const faultsOf = (text: string, change?: Change) =>
  examine(text, change).rows!.faults.map(({ line, column, code }) => `${line} ${column ?? '-'} ${code}`)
const problemsOf = (text: string, change?: Change) =>
  examine(text, change).problems.map(({ path, code }) => `${path}:${code}`)
const freshOf = (text: string, change?: Change) => examine(text, change).rows!.fresh

describe('rows of a file', () => {
  it('become readings at their places, with what was entered, its unit and its value', () => {
    const [first, second] = freshOf('code,piece,loaf\n101,1,0.4125\n104,2,0.398', {
      columns: [{ as: 'code' }, { as: 'piece' }, measure('loaf-mass', 'kg')],
    })
    expect(first).toMatchObject({
      line: 2,
      batchId: 'b1',
      piece: 1,
      factorLevel: null,
      repeat: 1,
      valueEntered: '0.4125',
      unitEntered: 'kg',
      value: 412.5,
      takenAt: new Date('2026-03-02T11:00:00Z'),
    })
    expect(second).toMatchObject({ batchId: 'b4', piece: 2, value: 398 })
    expect(first!.id).not.toBe(second!.id)
  })

  it('may name the dough by mixing day and arm, and leave the piece to the order of the lines', () => {
    const columns = [{ as: 'day' as const }, { as: 'arm' as const }, measure('loaf-mass', 'g')]
    expect(
      freshOf('d,a,g\n1,now,400\n1,malt,410\n1,now,402\n2,malt,411', { columns }).map(({ batchId, piece, value }) => [
        batchId,
        piece,
        value,
      ]),
    ).toEqual([
      ['b1', 1, 400],
      ['b2', 1, 410],
      ['b1', 2, 402],
      ['b4', 1, 411],
    ])
  })

  it('bring no more readings of a loaf than the plan asks for, but the third where two disagree', () => {
    const volume = measure('loaf-volume', 'mL')
    const columns = [{ as: 'code' as const }, { as: 'piece' as const }, volume, volume, volume, volume]
    const text = 'c,p,v,v,v,v\n101,1,1600,1605,1640\n101,2,1600,1800,1640\n101,3,1600,1800,1640,1650'
    expect(faultsOf(text, { columns })).toEqual(['2 4 row-no-further-repeat', '4 5 row-no-further-repeat'])
    const inTheBook = [1600, 1605].map((value, i) => ({
      id: `r${i}`,
      batchId: 'b1',
      measureId: 'loaf-volume',
      piece: 1,
      factorLevel: null,
      repeat: i + 1,
      value,
      valueEntered: String(value),
      unitEntered: 'mL',
      supersedesId: null,
      receivedAt: now,
      plausibleLeast: 500,
      plausibleMost: 4000,
    }))
    const facts = { ...importFacts(), readings: inTheBook }
    expect(faultsOf('c,p,v,v,v\n101,1,1600,1605,1640', { columns: columns.slice(0, 5), facts })).toEqual([
      '2 2 row-there',
      '2 3 row-there',
      '2 4 row-no-further-repeat',
    ])
  })

  it('have several columns of one measure as its repeats, and figures of the whole dough on each line', () => {
    const columns = [
      { as: 'code' as const },
      { as: 'piece' as const },
      measure('loaf-volume', 'mL'),
      measure('loaf-volume', 'mL'),
      measure('dough-temp', '°C'),
    ]
    expect(
      freshOf('c,p,v,v,t\n101,1,1600,1610,25.5\n101,2,1620,,25.5', { columns }).map(
        ({ measureId, piece, repeat, value }) => [measureId, piece, repeat, value],
      ),
    ).toEqual([
      ['loaf-volume', 1, 1, 1600],
      ['loaf-volume', 1, 2, 1610],
      ['dough-temp', null, 1, 25.5],
      ['loaf-volume', 2, 1, 1620],
    ])
    expect(faultsOf('c,p,v,v,t\n101,1,1600,1610,25.5\n101,2,1620,,25.6', { columns })).toEqual([
      '3 4 row-another-value',
    ])
  })

  it('take the decimal mark of the file and no other', () => {
    const match = { separator: ';' as const, decimal: ',' as const }
    expect(freshOf('c;p;g\n101;1;401,250', { match })[0]).toMatchObject({ value: 401.25, valueEntered: '401,250' })
    expect(faultsOf('c;p;g\n101;1;401.2\n101;2;1.401,2', { match })).toEqual([
      '2 2 row-decimal-mark',
      '3 2 row-decimal-mark',
    ])
    expect(faultsOf('c,p,g\n101,1,"401,2"')).toEqual(['2 2 row-decimal-mark'])
  })

  it('are each named with what is wrong with them, all at once', () => {
    const text = [
      'c,p,g',
      '999,1,400',
      '101,0,400',
      '101,x,400',
      '101,5,400',
      '101,1,heavy',
      '101,2,-4',
      '102,1,9000',
      '102,2,400',
      '102,2,401',
      '103,1,"400',
      '103,2,400',
    ].join('\n')
    expect(faultsOf(text)).toEqual([
      '2 0 row-code-unknown',
      '3 1 not-whole',
      '4 1 not-whole',
      '5 1 too-big',
      '6 2 not-a-number',
      '7 2 too-small',
      '8 2 row-odd',
      '10 2 row-twice',
      '11 - row-quotes',
    ])
    expect(faultsOf('c,p,g\n101,1,400,401\n,1,400\n101,,400')).toEqual([
      '2 - row-too-wide',
      '3 0 missing',
      '4 1 missing',
    ])
    expect(faultsOf('c,p,g\n102,1,9000', { keepOdd: true })).toEqual([])
  })

  it('outside what the plan lets expect are listed also when they are said to be right, with the range that they keep', () => {
    const text = 'c,p,g\n101,1,239\n101,2,240\n101,3,720\n101,4,721'
    expect(faultsOf(text)).toEqual(['2 2 row-odd', '5 2 row-odd'])
    const { odd, fresh, faults } = examine(text, { keepOdd: true }).rows!
    expect(faults).toEqual([])
    expect(odd.map(({ line, value, least, most }) => [line, value, least, most])).toEqual([
      [2, '239 g', 240, 720],
      [5, '721 g', 240, 720],
    ])
    expect(fresh.map(({ range }) => range)).toEqual(Array.from({ length: 4 }, () => ({ least: 240, most: 720 })))
  })

  it('name days, arms and doughs that there are not', () => {
    const columns = [{ as: 'day' as const }, { as: 'arm' as const }, measure('loaf-mass', 'g')]
    expect(faultsOf('d,a,g\n3,now,400\n0,now,400\n1,rye,400\n,now,400\n1,,400', { columns })).toEqual([
      '2 0 row-day-unknown',
      '3 0 row-day-unknown',
      '4 1 row-arm-unknown',
      '5 0 missing',
      '6 1 missing',
    ])
    expect(faultsOf(`d,a,g\n${'1,now,400\n'.repeat(5)}`, { columns })).toEqual(['6 - row-too-many-pieces'])
    const both = [{ as: 'code' as const }, { as: 'day' as const }, { as: 'arm' as const }, measure('loaf-mass', 'g')]
    expect(faultsOf('c,d,a,g\n101,1,now,400\n101,2,now,400\n101,1,malt,400', { columns: both })).toEqual([
      '3 1 row-dough-disagrees',
      '4 2 row-dough-disagrees',
    ])
  })

  it('say which of several doughs of a day they are of', () => {
    const facts = importFacts({ mixingDays: 1 }, [
      { dayNumber: 1, arm: 0, number: 1 },
      { dayNumber: 1, arm: 0, number: 2 },
      { dayNumber: 1, arm: 1, number: 1 },
      { dayNumber: 1, arm: 1, number: 2 },
    ])
    const columns = [
      { as: 'day' as const },
      { as: 'arm' as const },
      { as: 'dough' as const },
      measure('loaf-mass', 'g'),
    ]
    expect(freshOf('d,a,n,g\n1,now,2,400\n1,malt,1,401', { columns, facts }).map(({ batchId }) => batchId)).toEqual([
      'b2',
      'b3',
    ])
    expect(faultsOf('d,a,n,g\n1,now,3,400\n1,now,,400', { columns, facts })).toEqual([
      '2 2 row-dough-unknown',
      '3 2 row-dough-unknown',
    ])
    expect(problemsOf('d,a,g\n1,now,400', { columns: columns.filter(({ as }) => as !== 'dough'), facts })).toEqual([
      'columns:column-for-which-dough',
    ])
  })

  it('have their times from a column, which must be in the time of the trial', () => {
    const columns = [...byCode, { as: 'time' as const }]
    expect(freshOf('c,p,g,t\n101,1,400,2026-03-02 06:30', { columns, day: null })[0]!.takenAt).toEqual(
      new Date('2026-03-02T05:30:00Z'),
    )
    expect(
      faultsOf('c,p,g,t\n101,1,400,2026-02-27\n101,2,400,2026-03-05\n101,3,400,soon\n101,4,400,', {
        columns,
        day: null,
      }),
    ).toEqual(['2 3 row-before-the-trial', '3 3 row-in-the-future', '4 3 row-time', '5 3 missing'])
    expect(faultsOf('c,p,g\n101,1,400', { day: '2026-02-20' })).toEqual(['2 - row-before-the-trial'])
  })
})

describe('a factor within doughs', () => {
  const facts = importFacts({ factorName: 'Oven', factorLevels: ['180', '220'] })
  const columns = [{ as: 'code' as const }, { as: 'level' as const }, measure('loaf-mass', 'g')]

  it('gives each line the next piece of its level', () => {
    expect(
      freshOf('c,l,g\n101,220,400\n101,180,401\n101,220,402', { columns, facts }).map(({ piece, factorLevel }) => [
        piece,
        factorLevel,
      ]),
    ).toEqual([
      [2, '220'],
      [1, '180'],
      [4, '220'],
    ])
    expect(faultsOf('c,l,g\n101,220,400\n101,220,401\n101,220,402\n101,hot,403', { columns, facts })).toEqual([
      '4 1 row-too-many-pieces',
      '5 1 row-level-unknown',
    ])
  })

  it('goes with the number of the piece where one is there', () => {
    expect(freshOf('c,p,g\n101,3,400', { facts })[0]).toMatchObject({ piece: 3, factorLevel: '180' })
    const both = [
      { as: 'code' as const },
      { as: 'piece' as const },
      { as: 'level' as const },
      measure('loaf-mass', 'g'),
    ]
    expect(faultsOf('c,p,l,g\n101,3,220,400', { columns: both, facts })).toEqual(['2 2 not-its-level'])
    expect(problemsOf('c,g\n101,400', { columns: [{ as: 'code' }, measure('loaf-mass', 'g')], facts })).toEqual([
      'columns:column-for-level',
    ])
    expect(problemsOf('c,l,g\n101,220,400', { columns })).toEqual(['columns.1:no-factor'])
  })
})

describe('what is there already', () => {
  const place = { batchId: 'b1', measureId: 'loaf-mass', piece: 1, factorLevel: null, repeat: 1 }
  const facts = importFacts()
  const kept = (change: object) => ({
    ...facts,
    readings: [
      {
        ...place,
        id: idOfImported(facts.trial.id, place),
        value: 400,
        valueEntered: '400',
        unitEntered: 'g',
        supersedesId: null,
        receivedAt: now,
        plausibleLeast: null,
        plausibleMost: null,
        ...change,
      },
    ],
  })

  it('from an earlier file, just as it is here, is counted and no fault', () => {
    const { rows } = examine('c,p,g\n101,1,400\n101,2,401', { facts: kept({}) })
    expect(rows).toMatchObject({ already: 1, faults: [], fresh: [{ piece: 2 }] })
  })

  it('with another value, or logged in the shift, is a fault', () => {
    expect(faultsOf('c,p,g\n101,1,401', { facts: kept({}) })).toEqual(['2 2 row-there'])
    expect(faultsOf('c,p,g\n101,1,400', { facts: kept({ id: 'logged' }) })).toEqual(['2 2 row-there'])
  })
})

describe('doughs baked outside the shift', () => {
  const waiting = { state: 'waiting' as const, begunAt: null, revision: 1 }
  const facts = importFacts({ measureId: 'loaf-mass', piecesPerBatch: 2 }, [waiting, waiting, waiting, waiting])
  const rows = (...codes: string[]) =>
    `c,p,g\n${codes.flatMap((code) => [`${code},1,400`, `${code},2,402`]).join('\n')}`

  it('must be begun in the shift, unless it is said that they were not', () => {
    expect(faultsOf(rows('101'), { facts })).toEqual(['2 - row-not-begun'])
    expect(faultsOf(rows('101'), { facts, outside: { cleanDownDone: false } })).toEqual([])
  })

  it('are measured when every piece is read, and baked while some are to come', () => {
    const { rows: examined } = examine(`${rows('101')}\n102,1,400`, { facts, outside: { cleanDownDone: false } })
    expect(examined!.outside!.moves).toMatchObject([
      {
        code: '101',
        from: 'waiting',
        to: 'measured',
        piecesMade: 2,
        piecesGood: 2,
        begunAt: new Date('2026-03-02T11:00:00Z'),
        doneAt: new Date('2026-03-02T11:00:00Z'),
      },
      { code: '102', from: 'waiting', to: 'baked', piecesMade: null, piecesGood: null, doneAt: null },
    ])
  })

  it('have the good pieces that a column says', () => {
    const columns = [...byCode, { as: 'good' as const }]
    const moves = (text: string) =>
      examine(text, { columns, facts, outside: { cleanDownDone: false } }).rows!.outside!.moves
    expect(moves('c,p,g,ok\n101,1,400,1\n101,2,402,')[0]).toMatchObject({ piecesMade: 2, piecesGood: 1 })
    expect(
      faultsOf('c,p,g,ok\n101,1,400,1\n101,2,402,2\n102,1,400,3\n102,2,400,few', {
        columns,
        facts,
        outside: { cleanDownDone: false },
      }),
    ).toEqual(['3 3 row-good-differs', '4 3 too-big', '5 3 not-whole'])
  })

  it('ask for the clean-down and for a reason out of turn, as the shift does', () => {
    expect(problemsOf(rows('101', '102', '103'), { facts, outside: { cleanDownDone: false } })).toEqual([
      'cleanDownDone:clean-down-untold',
    ])
    expect(problemsOf(rows('101', '102', '103'), { facts, outside: { cleanDownDone: true } })).toEqual([])
    expect(problemsOf(rows('102'), { facts, outside: { cleanDownDone: false } })).toEqual(['orderWhy:missing'])
    expect(problemsOf(rows('102'), { facts, outside: { cleanDownDone: false, orderWhy: 'the tins' } })).toEqual([])
  })

  it('are left as they are when they are over', () => {
    const over = importFacts({ measureId: 'loaf-mass', piecesPerBatch: 2 }, [{ state: 'lost' }, { state: 'measured' }])
    expect(
      examine(rows('101', '102'), { facts: over, outside: { cleanDownDone: false } }).rows!.outside!.moves,
    ).toEqual([])
  })
})

describe('how the columns are matched', () => {
  it.each<[string, Change]>([
    ['columns:columns-moved-on', { columns: [...byCode, { as: 'nothing' }] }],
    ['columns.1:column-twice', { columns: [{ as: 'code' }, { as: 'code' }, measure('loaf-mass', 'g')] }],
    ['columns.2:wrong-choice', { columns: [{ as: 'code' }, { as: 'piece' }, measure('crumb', 'g')] }],
    ['columns.2:measure-worked-out', { columns: [{ as: 'code' }, { as: 'piece' }, measure('bake-loss', '%')] }],
    ['columns.2:unit-not-of-measure', { columns: [{ as: 'code' }, { as: 'piece' }, measure('loaf-mass', 'mL')] }],
    ['columns:column-for-dough', { columns: [{ as: 'day' }, { as: 'piece' }, measure('loaf-mass', 'g')] }],
    ['columns:column-for-reading', { columns: [{ as: 'code' }, { as: 'piece' }, { as: 'nothing' }] }],
    ['day:missing', { day: null }],
    ['arms.x:wrong-choice', { match: { arms: [{ text: 'x', arm: 5 }] } }],
  ])('is refused with %s', (problem, change) => {
    expect(problemsOf('c,p,g\n101,1,400', change)).toEqual([problem])
  })
})
