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
const nothing: Conduct = { corrections: [], causes: [], repairs: [], furtherRepeats: [], oddTimes: [] }
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
  who: 'Esi',
  at,
}

const sentences = (change: Partial<Conduct>, state = 'measured', isEnded = true) =>
  conductSentences(
    {
      conduct: { ...nothing, ...change },
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
  ['One reading was corrected; it stands below.', { corrections: [correction] }],
])('%s', (said, change) => {
  expect(sentences(change)).toEqual([said])
})

it('before the end corrections are counted, and a dough under way is nothing that went wrong', () => {
  expect(sentences({ corrections: [correction, correction] }, 'baked', false)).toEqual(['2 readings were corrected.'])
  expect(sentences({}, 'baked')).toEqual(['Dough 108 was begun and never measured.'])
  for (const state of ['waiting', 'lost', 'set_aside', 'not_baked']) expect(sentences({}, state)).toEqual([])
})
