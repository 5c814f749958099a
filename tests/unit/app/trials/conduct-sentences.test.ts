import { expect, it } from 'vitest'
import { conductSentences } from '@/app/(desk)/trials/[trialId]/result/conduct-sentences'
import type { ResultForms } from '@/app/(desk)/trials/[trialId]/result/result-forms'
import type { ShownBakery, ShownResult } from '@/app/(desk)/trials/[trialId]/result/shown-result'
import { results } from '@/lib/words/en/results'

type Conduct = ShownResult['conduct']
const forms = { text: results, language: 'en' } as unknown as ResultForms
const bakery = { locale: 'en-GB', timeZone: 'UTC' } as unknown as ShownBakery
const at = new Date('2026-03-02T04:00:00Z')
const place = { code: '108', measure: { code: null, name: 'Crust' }, piece: 2, factorLevel: null }
const nothing: Conduct = {
  corrections: [],
  causes: [],
  foundCauses: [],
  repairs: [],
  furtherRepeats: [],
  oddTimes: [],
  oddDays: [],
  fromFile: 0,
}
const found = {
  id: 'f',
  batchId: 'b',
  code: '108',
  object: 'ingredient_left',
  what: 'no salt',
  at,
  who: 'Esi',
} as const
const entered = { value: '1', unit: 'g', piece: 2, repeat: 1 }
const correction = {
  ...place,
  id: 'c',
  before: entered,
  after: entered,
  who: 'Esi',
  at,
  reason: 'typed wrong',
  isOwnSlip: true,
  knewKey: false,
}
const repair = {
  id: 'r',
  number: 1,
  kind: 'bake_again' as const,
  code: '108',
  otherCode: '583',
  day: null,
  otherDay: null,
  why: null,
  by: { id: 'e', name: 'Esi' },
  at,
}

const sentences = (
  change: Partial<Conduct>,
  state = 'measured',
  isEnded = true,
  weighings: ShownResult['weighings'] = null,
) =>
  conductSentences(
    {
      conduct: { ...nothing, ...change },
      weighings,
      isEnded,
      batches: [{ code: '108', state }] as unknown as ShownResult['batches'],
    },
    bakery,
    forms,
  )

it('nothing is said where nothing was done', () => {
  expect(sentences({})).toEqual([])
})

it.each<[string, Partial<Conduct>]>([
  [
    'Dough 108: the tray fell (noted 2 Mar 2026, 04:00, Esi)',
    { causes: [{ id: 'x', code: '108', what: 'the tray fell', noticedAt: at, at, who: 'Esi' }] },
  ],
  [
    'Dough 108: no salt (found later, 2 Mar 2026, 04:00, Esi; shown by: an ingredient that was left). Nobody else signed it, so it took nothing out.',
    { foundCauses: [{ ...found, signed: null }] },
  ],
  [
    'Dough 108: no salt (found later, 2 Mar 2026, 04:00, Esi; shown by: an ingredient that was left; seen and signed by Henk)',
    { foundCauses: [{ ...found, signed: { who: 'Henk', isAlone: false } }] },
  ],
  [
    'Dough 108: no salt (found later, 2 Mar 2026, 04:00, Esi; shown by: an ingredient that was left; nobody else checked)',
    { foundCauses: [{ ...found, signed: { who: 'Esi', isAlone: true } }] },
  ],
  ['Dough 108 was baked again as dough 583 (2 Mar 2026, 04:00, Esi).', { repairs: [repair] }],
  [
    'Doughs 108 and 583 exchanged their places before they were begun: no milk yet (2 Mar 2026, 04:00, Esi).',
    { repairs: [{ ...repair, kind: 'swap', why: 'no milk yet' }] },
  ],
  [
    'Mixing day 4 was added, because mixing day 2 was short of a dough (2 Mar 2026, 04:00, Esi).',
    { repairs: [{ ...repair, kind: 'add_day', code: null, otherCode: null, day: 2, otherDay: 4 }] },
  ],
  ['Dough 108: Crust, Piece 2: read 3 times, the plan asks for 2', { furtherRepeats: [{ ...place, have: 3, of: 2 }] }],
  ['Dough 108: the clock of one reading ran ahead', { oddTimes: [{ code: '108', kind: 'in-the-future', count: 1 }] }],
  [
    'The doughs of mixing day 2 were begun more than 12 hours apart, so they may not have had the same day.',
    { oddDays: [{ kind: 'spread', day: 2 }] },
  ],
  [
    'Mixing days 1 and 3 were begun less than 12 hours apart, so they may have been one day.',
    { oddDays: [{ kind: 'together', day: 1, other: 3 }] },
  ],
  ['One reading came in from a file: nobody entered it here as it was taken.', { fromFile: 1 }],
  ['24 readings came in from a file: nobody entered them here as they were taken.', { fromFile: 24 }],
  ['One reading was corrected; it stands below.', { corrections: [correction] }],
])('%s', (said, change) => {
  expect(sentences(change)).toEqual([said])
})

it('before the end corrections are counted, and a dough under way is nothing that went wrong', () => {
  expect(sentences({ corrections: [correction, correction] }, 'baked', false)).toEqual(['2 readings were corrected.'])
  expect(sentences({}, 'baked')).toEqual(['Dough 108 was begun and never measured.'])
  for (const state of ['waiting', 'lost', 'set_aside', 'not_baked']) expect(sentences({}, state)).toEqual([])
})

it('of weighings it counts what was off, what was corrected, and what is not written', () => {
  const none = { unwritten: [], partly: [], off: [], corrections: [] }
  expect(sentences({}, 'measured', true, none)).toEqual([])
  const [line, other] = [{}, {}] as NonNullable<ShownResult['weighings']>['off']
  expect(sentences({}, 'measured', true, { ...none, unwritten: ['108', '115'], off: [line!, other!] })).toEqual([
    '2 lines were weighed otherwise than planned; they stand below.',
    'Of 2 measured doughs it is not written what was weighed.',
  ])
  expect(sentences({}, 'measured', false, { ...none, partly: ['108'] })).toEqual([
    'Of one measured dough it is not written of every line what was weighed.',
  ])
})
