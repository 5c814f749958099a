import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { judgeLots } from '@/lib/kitchen/weighings/judge-lots'
import { logWeighingInput } from '@/lib/kitchen/weighings/log-weighing.input'
import type { LotOffered } from '@/lib/station/keep/weigh-facts'
import type { EntryOf } from '@/lib/station/outbox/entry'
import {
  findLot,
  lastLot,
  lotsOfStanding,
  lotsShown,
  lotsToSend,
  massOfLots,
  noLots,
  readLots,
  typedLot,
  withAnother,
  withoutLot,
  type LotsChosen,
} from '@/lib/station/outbox/lots-of-line'
import { linesWithEntries } from '@/lib/station/outbox/stand-of-line'
import { sumOfMasses } from '@/lib/station/outbox/sum-of-masses'

const ids = Array.from({ length: 10 }, (_, at) => `0198a000-0000-7000-8000-00000000000${at}`)
const lot = (at: number, more: Partial<LotOffered> = {}): LotOffered => ({
  id: ids[at]!,
  code: `L-${at}`,
  isPast: false,
  ...more,
})
const salt = '0198a000-0000-7000-8000-0000000000aa'
const line = { ingredientId: salt, name: 'Salt', lots: [lot(0), lot(1), lot(2)] }

const entry = (counter: number, lotIds: string[], more: Partial<EntryOf<'weighing'>> = {}): EntryOf<'weighing'> => ({
  format: 1,
  id: `id-${counter}`,
  kind: 'weighing',
  schema: 1,
  payload: {
    id: `id-${counter}`,
    batchId: 'dough',
    stageId: 'final',
    ingredientId: salt,
    part: 'line',
    how: 'weighed',
    mass: '52.4',
    unit: 'g',
    ...(lotIds.length > 0 ? { lots: lotIds.map((lotId) => ({ lotId })) } : {}),
    takenAt: '2026-03-02T04:00:00.000Z',
  },
  hash: `hash-${counter}`,
  counter,
  stationId: 'station',
  personId: 'esi',
  personName: 'Esi',
  shiftToken: 'token',
  state: 'waiting',
  refusal: null,
  words: null,
  settledAt: null,
  shown: { code: '307', line: 'Salt', was: null },
  ...more,
})

describe('the lots that a line is taken from', () => {
  it('are none, one for all of it, or several with what each gave, which make the whole', () => {
    expect(lotsToSend(noLots, '52.4')).toBeNull()
    const one: LotsChosen = { given: [], now: lot(0) }
    expect(lotsToSend(one, null)).toEqual([{ lotId: ids[0] }])
    expect([lotsToSend(one, '52.4'), massOfLots(one, '52.4')]).toEqual([[{ lotId: ids[0] }], '52.4'])
    const two = { ...withAnother(one, '30.15'), now: lot(1) }
    expect(lotsToSend(two, '22.2')).toEqual([
      { lotId: ids[0], mass: '30.15' },
      { lotId: ids[1], mass: '22.2' },
    ])
    expect(massOfLots(two, '22.2')).toBe('52.35')
    expect(lotsShown(two, lotsToSend(two, '22.2'))).toEqual([
      { code: 'L-0', isPast: false },
      { code: 'L-1', isPast: false },
    ])
    // The other sack was opened and not needed.
    expect([lotsToSend(two, null), massOfLots(two, null)]).toEqual([[{ lotId: ids[0] }], '30.15'])
    expect(withoutLot(two, ids[0]!)).toEqual({ given: [], now: lot(1) })
    expect(withAnother(noLots, '30')).toEqual(noLots)
  })

  it('are said by their codes where nobody knew them, beside others that were known', () => {
    const one: LotsChosen = { given: [], now: typedLot('F-9') }
    expect(lotsToSend(one, null)).toEqual([{ code: 'F-9' }])
    const two = { ...withAnother(one, '30'), now: lot(1) }
    expect(lotsToSend(two, '22.4')).toEqual([
      { code: 'F-9', mass: '30' },
      { lotId: ids[1], mass: '22.4' },
    ])
    expect(lotsShown(two, lotsToSend(two, '22.4'))).toEqual([
      { code: 'F-9', isPast: false, isToConfirm: true },
      { code: 'L-1', isPast: false },
    ])
    expect(withoutLot(two, typedLot('f-9').id).given).toEqual([])
  })

  it('are always such that the book takes them', () => {
    const mass = fc
      .record({ whole: fc.integer({ min: 0, max: 99_999 }), part: fc.stringMatching(/^\d{0,4}$/) })
      .map(({ whole, part }) => (part === '' ? String(whole) : `${whole}.${part}`))
      .filter((typed) => Number(typed) > 0)
    const known = new Map(
      ids.map((id) => [
        id,
        {
          code: id,
          ingredientId: salt,
          ingredient: { name: 'Salt', allergens: [], allergensCheckedAt: new Date('2026-01-01T00:00:00Z') },
        },
      ]),
    )
    const unknown = (at: number) => typedLot(`F-${at}`)
    const typedOnes = ids.map(
      (_, at) =>
        [
          `${salt} F-${at}`,
          {
            key: `f-${at}`,
            ingredient: { name: 'Salt', allergens: [], allergensCheckedAt: new Date('2026-01-01T00:00:00Z') },
            lot: null,
            ended: null,
            other: null,
          },
        ] as const,
    )
    const stores = { lots: known, typed: new Map(typedOnes) }
    const chosen = fc
      .record({
        masses: fc.array(mass, { maxLength: 9 }),
        isSaid: fc.boolean(),
        typed: fc.option(mass),
        byCode: fc.array(fc.boolean(), { minLength: 10, maxLength: 10 }),
      })
      .filter(({ masses, isSaid, typed }) => masses.length === 0 || isSaid || typed === null)
    fc.assert(
      fc.property(chosen, ({ masses, isSaid, typed, byCode }) => {
        const which = (at: number) => (byCode[at] ? unknown(at) : lot(at))
        const given = masses.map((of, at) => ({ ...which(at), mass: of }))
        const lots: LotsChosen = { given, now: isSaid ? which(9) : null }
        const whole = massOfLots(lots, typed)
        if (whole === null) return
        const sent = lotsToSend(lots, typed)
        const read = logWeighingInput.parse({
          ...entry(1, []).payload,
          id: ids[0],
          batchId: ids[0],
          stageId: ids[0],
          mass: whole,
          ...(sent ? { lots: sent } : {}),
        })
        expect(judgeLots(read, salt, stores)).toHaveLength(sent?.length ?? 0)
        expect(lotsShown(lots, sent ?? undefined)).toHaveLength(sent?.length ?? 0)
      }),
    )
  })

  it('make a sum in which no decimal is lost', () => {
    expect(sumOfMasses([])).toBe('0')
    expect(sumOfMasses(['0.1', '0.2'])).toBe('0.3')
    expect(sumOfMasses(['0.05', '0.05'])).toBe('0.10')
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 10 ** 9 })), (thousandths) => {
        const typed = thousandths.map((each) => `${Math.floor(each / 1000)}.${String(each % 1000).padStart(3, '0')}`)
        const sum = thousandths.reduce((all, each) => all + BigInt(each), 0n)
        expect(BigInt(sumOfMasses([...typed, '0.000']).replace('.', ''))).toBe(sum)
      }),
    )
  })

  it('are carried over by what takes the place of what stands, but for what the last one gave', () => {
    expect(lotsOfStanding([], 'g')).toEqual(noLots)
    expect(lotsOfStanding([{ ...lot(0), massG: null }], 'g')).toEqual({ given: [], now: lot(0) })
    const two = [
      { ...lot(0, { isPast: true }), massG: 28.349523125 },
      { ...lot(1), massG: 22.2 },
    ]
    expect(lotsOfStanding(two, 'g').given).toEqual([{ ...lot(0, { isPast: true }), mass: '28.3495' }])
    expect(lotsOfStanding(two, 'oz')).toEqual({ given: [{ ...lot(0, { isPast: true }), mass: '1' }], now: lot(1) })
  })

  it('stand with the line that this tablet kept, by their codes', () => {
    const weighed = entry(1, [ids[0]!], {
      shown: { code: '307', line: 'Salt', was: null, lots: [{ code: 'L-0', isPast: true }] },
    })
    const asked = {
      ...line,
      stageId: 'final',
      stage: 'Final dough',
      part: 'line' as const,
      isSame: true,
      isDusty: false,
      target: { massG: 52.4, stepG: 0.1, toleranceG: 0.5 },
      apartG: null,
      scale: null,
      parts: [],
      howTo: [],
      stands: null,
    }
    const list = { batchId: 'dough', code: '307', unit: 'g' as const, scales: [], lines: [asked] }
    const [stood] = linesWithEntries(list, [weighed])
    expect(stood?.stands?.lots).toEqual([{ id: ids[0], code: 'L-0', isPast: true, massG: null }])
    // One that was said by its code is carried over by it.
    const byCode = entry(2, [], {
      shown: { code: '307', line: 'Salt', was: null, lots: [{ code: 'F-9', isPast: false, isToConfirm: true }] },
    })
    const typed = { ...byCode, payload: { ...byCode.payload, lots: [{ code: 'F-9' }] } }
    const [said] = linesWithEntries(list, [typed])
    expect(lotsToSend(lotsOfStanding(said!.stands!.lots, 'g'), '52')).toEqual([{ code: 'F-9' }])
    expect(said?.stands?.lots).toMatchObject([{ code: 'F-9', isToConfirm: true }])
    // What a build kept that knew of no lots has none.
    expect(linesWithEntries(list, [entry(1, [])])[0]?.stands?.lots).toEqual([])
  })

  it('come out of a draft as they went in, and out of none as nothing', () => {
    expect(readLots('')).toBeNull()
    const two: LotsChosen = { given: [{ ...lot(0), mass: '30' }], now: null }
    expect(readLots(JSON.stringify(two))).toEqual(two)
  })
})

describe('the lot that is offered first', () => {
  it('is the last one that was weighed of the ingredient here and still stands, where it is still offered', () => {
    expect(lastLot(line, [])).toBeNull()
    expect(lastLot(line, [entry(2, [ids[1]!]), entry(1, [ids[0]!]), entry(3, [])])).toEqual(lot(1))
    // The sack that was opened last, of two.
    expect(lastLot(line, [entry(1, [ids[0]!, ids[2]!])])).toEqual(lot(2))
    expect(lastLot(line, [entry(1, [ids[0]!]), entry(2, [ids[9]!])])).toBeNull()
    const other = entry(2, [ids[1]!])
    expect(lastLot(line, [{ ...other, payload: { ...other.payload, ingredientId: 'malt' } }])).toBeNull()
    expect(lastLot(line, [entry(1, [ids[0]!]), entry(2, [ids[1]!], { state: 'attention' })])).toEqual(lot(0))
  })
})

describe('a lot that was said here by its code', () => {
  const said = (code: string) => {
    const byCode = entry(3, [])
    return { ...byCode, payload: { ...byCode.payload, lots: [{ code }] } }
  }
  it('is offered first again, and as the book’s own once that tells of it', () => {
    expect(lastLot(line, [said('F-9')])).toEqual(typedLot('F-9'))
    expect(lastLot(line, [said('l-2')])).toEqual(lot(2))
    expect(lastLot(line, [{ ...said('F-9'), state: 'attention' }])).toBeNull()
  })
})

describe('a lot by its code', () => {
  const malt = { ingredientId: 'malt', name: 'Malt', lots: [lot(5, { code: 'M-7' })] }
  const find = (typed: string, lots: LotOffered[] = line.lots) => findLot(typed, { ...line, lots }, [line, malt])
  it('is found as it is typed or scanned, and the same code of another ingredient is told', () => {
    expect(find('L-1')).toEqual({ found: 'lot', lot: lot(1) })
    expect(find(' l-1\r\n')).toEqual({ found: 'lot', lot: lot(1) })
    expect(find('m-7')).toEqual({ found: 'other', name: 'Malt' })
    expect(find('L-9')).toEqual({ found: 'none' })
    const label = { ...malt, lots: [lot(5, { code: '(01)04012345678905(10)A' })] }
    expect(findLot('010401234567890510B', line, [line, label])).toEqual({ found: 'other', name: 'Malt' })
    expect(find('')).toEqual({ found: 'none' })
  })

  it('is nobody’s guess where two differ in capitals only', () => {
    const alike = [lot(0, { code: 'ab' }), lot(1, { code: 'AB' })]
    expect(find('AB', alike)).toEqual({ found: 'lot', lot: alike[1] })
    expect(find('Ab', alike)).toEqual({ found: 'none' })
  })
})
