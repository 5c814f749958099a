import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { problemsOfInput } from '@/lib/kitchen/problems-of-input'
import { momentOf } from '@/lib/kitchen/moment-of'
import { readTimeCell } from '@/lib/kitchen/readings/import/read-time-cell'
import { calendarDay, instant, typedMoment } from '@/lib/kitchen/text.input'
import { wordsOfRefusal } from '@/lib/kitchen/words-of-refusal'
import { sourceFilesIn, textOf } from '@/tests/support/source-files'

const kinds = new Map<z.ZodType, string>([
  [calendarDay, 'day'],
  [instant, 'moment'],
  [typedMoment, 'typed moment'],
])

/** Days that no calendar has, and days that no bakery plans; each as a day and as a moment. */
const odd = [
  '9999-12-31',
  '10000-01-01',
  '0001-01-01',
  '0000-00-00',
  '2026-02-30',
  '2026-13-01',
  '1999-12-31',
  '2101-01-01',
  '-000001-01-01',
  '+275760-09-13',
  '31.12.9999',
  '2026-3-2',
  'soon',
  '',
]
const fine = '2026-03-02'
const asked = (kind: string, day: string) =>
  kind === 'day' || day === ''
    ? day
    : kind === 'moment'
      ? `${day}T04:00:00+01:00`
      : momentOf(day, '04:00', 'Europe/Berlin')

type Def = {
  type: string
  shape?: Record<string, z.ZodType>
  element?: z.ZodType
  innerType?: z.ZodType
  options?: z.ZodType[]
  in?: z.ZodType
}
/** Where in a schema a day or a moment is asked for: a path in which '0' is the first of a list, and of what kind. */
function placesIn(schema: z.ZodType, path: string[] = []): { path: string[]; kind: string }[] {
  const kind = kinds.get(schema)
  if (kind !== undefined) return [{ path, kind }]
  const def = schema.def as unknown as Def
  const inner: { one: z.ZodType; at: string[] }[] = [
    ...Object.entries(def.shape ?? {}).map(([key, one]) => ({ one, at: [...path, key] })),
    ...(def.element ? [{ one: def.element, at: [...path, '0'] }] : []),
    ...[...(def.options ?? []), ...(def.innerType ? [def.innerType] : []), ...(def.in ? [def.in] : [])].map((one) => ({
      one,
      at: path,
    })),
  ]
  return inner.flatMap(({ one, at }) => placesIn(one, at))
}

function inputWith(path: readonly string[], value: unknown): unknown {
  const [key, ...rest] = path
  if (key === undefined) return value
  return key === '0' ? [inputWith(rest, value)] : { [key]: inputWith(rest, value) }
}

const files = sourceFilesIn('lib/kitchen').filter((file) => file.endsWith('.input.ts'))
const inputs = Object.entries(
  import.meta.glob<Record<string, unknown>>('../../../lib/kitchen/**/*.input.ts', { eager: true }),
).flatMap(([file, module]) =>
  Object.entries(module).flatMap(([name, schema]) =>
    /Input$/.test(name) && schema instanceof z.ZodType ? [{ file: file.replace('../../../', ''), name, schema }] : [],
  ),
)
const places = inputs.flatMap(({ name, schema }) =>
  placesIn(schema).map(({ path, kind }) => ({ name, schema, path, kind })),
)

describe('a day or a moment that is asked for', () => {
  it('is found in every input that has one', () => {
    expect(new Set(inputs.map(({ file }) => file)).size).toBeGreaterThan(30)
    expect(places.map(({ name, path }) => `${name} ${path.join('.')}`).sort()).toEqual([
      'confirmLotInput bestBefore',
      'confirmLotInput receivedOn',
      'dateMixingDaysInput days.0.day',
      'dateMixingDaysInput days.0.seen',
      'enterPriceInput holdsFrom',
      'importReadingsInput day',
      'keyInSheetInput writtenAt',
      'logCauseInput takenAt',
      'logCheckInput takenAt',
      'logCountInput takenAt',
      'logNoteInput takenAt',
      'logReadingInput takenAt',
      'logStepInput takenAt',
      'logWeighingInput takenAt',
      'previewImportInput look.day',
      'receiveLotInput bestBefore',
      'receiveLotInput receivedOn',
      'sendPhotoInput takenAt',
      'signOffVersionInput effectiveAt',
    ])
  })

  it.each(places.flatMap((place) => odd.map((day) => [place.name, place.path.join('.'), day, place] as const)))(
    '%s at %s: %s is refused there, in words',
    (_name, at, day, { schema, path, kind }) => {
      const parsed = schema.safeParse(inputWith(path, asked(kind, day)))
      const problem = parsed.success ? undefined : problemsOfInput(parsed.error).find((each) => each.path === at)
      expect(problem?.code).toMatch(/^(wrong-form|missing|day-far-away|not-a-moment)$/)
      const words = wordsOfRefusal({ code: 'invalid', facts: {}, problems: problem ? [problem] : [] }, 'en')
      expect(words.problems[at]).toMatch(/\w/)
    },
  )

  it.each(places.map((place) => [place.name, place.path.join('.'), place] as const))(
    '%s at %s: a day of this year is not refused there',
    (_name, at, { schema, path, kind }) => {
      const parsed = schema.safeParse(inputWith(path, asked(kind, fine)))
      expect(parsed.success ? [] : problemsOfInput(parsed.error).map((each) => each.path)).not.toContain(at)
    },
  )

  it('is never a form of its own beside the shared ones', () => {
    const own = sourceFilesIn('lib/kitchen').filter(
      (file) => file !== 'lib/kitchen/text.input.ts' && /z\.iso\.|z\.date\(|z\.coerce\.date/.test(textOf(file)),
    )
    expect(own).toEqual([])
    expect(files.length).toBeGreaterThan(30)
  })
})

describe('a time in a file', () => {
  it.each(odd)('%s is no time, or one far from now, and never an error', (day) => {
    for (const text of [day, `${day} 04:30`, `${day}T04:30:00Z`, `${day}T04:30:00+14:00`, `${day}T23:59:59-23:59`]) {
      const at = readTimeCell(text, 'Pacific/Kiritimati')
      expect(at === null || !Number.isNaN(at.getTime())).toBe(true)
      if (at !== null) expect(Math.abs(at.getUTCFullYear() - 2026)).toBeGreaterThan(20)
    }
  })
})
