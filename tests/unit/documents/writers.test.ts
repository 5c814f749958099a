import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readAmendment } from '@/lib/documents/amendment/read-amendment'
import { textOfAmendment } from '@/lib/documents/amendment/text-of-amendment'
import { readAuditEntry } from '@/lib/documents/audit-entry/read-audit-entry'
import { textOfAuditEntry } from '@/lib/documents/audit-entry/text-of-audit-entry'
import { readClosing } from '@/lib/documents/closing/read-closing'
import { textOfClosing } from '@/lib/documents/closing/text-of-closing'
import { readManifest } from '@/lib/documents/evidence/read-manifest'
import { textOfEvidence } from '@/lib/documents/evidence/text-of-evidence'
import { readCautions } from '@/lib/documents/evidence-cautions/read-cautions'
import { readAmendments } from '@/lib/documents/evidence-amendments/read-amendments'
import { readCosts } from '@/lib/documents/evidence-costs/read-costs'
import { readKnowing } from '@/lib/documents/evidence-knowing/read-knowing'
import { readShown } from '@/lib/documents/evidence-shown/read-shown'
import { hashOfText } from '@/lib/documents/hash-of-text'
import { readPlan } from '@/lib/documents/plan/read-plan'
import { textOfPlan } from '@/lib/documents/plan/text-of-plan'
import { readReading } from '@/lib/documents/reading/read-reading'
import { textOfReading, type ReadingContent } from '@/lib/documents/reading/text-of-reading.input'
import { readVersionContent } from '@/lib/documents/version-content/read-version-content'
import { textOfVersionContent } from '@/lib/documents/version-content/text-of-version-content'
import { readWeighing } from '@/lib/documents/weighing/read-weighing'
import { textOfWeighing, type WeighingContent } from '@/lib/documents/weighing/text-of-weighing.input'
import amendments from '../../fixtures/documents/amendment-1.json'
import entriesOfFormat1 from '../../fixtures/documents/audit-entry-1.json'
import entriesOfFormat2 from '../../fixtures/documents/audit-entry-2.json'
import closingsOfFormat1 from '../../fixtures/documents/closing-1.json'
import closings from '../../fixtures/documents/closing-2.json'
import evidence from '../../fixtures/documents/evidence-2.json'
import evidenceAmendments from '../../fixtures/documents/evidence-amendments-1.json'
import evidenceCautions from '../../fixtures/documents/evidence-cautions-1.json'
import evidenceCostsOfFormat1 from '../../fixtures/documents/evidence-costs-1.json'
import evidenceCosts from '../../fixtures/documents/evidence-costs-2.json'
import evidenceKnowing from '../../fixtures/documents/evidence-knowing-1.json'
import evidenceShownOfFormat1 from '../../fixtures/documents/evidence-shown-1.json'
import evidenceShownOfFormat2 from '../../fixtures/documents/evidence-shown-2.json'
import evidenceShown from '../../fixtures/documents/evidence-shown-3.json'
import plansOfFormat1 from '../../fixtures/documents/plan-1.json'
import plansOfFormat2 from '../../fixtures/documents/plan-2.json'
import plansOfFormat3 from '../../fixtures/documents/plan-3.json'
import plansOfFormat4 from '../../fixtures/documents/plan-4.json'
import plansOfFormat5 from '../../fixtures/documents/plan-5.json'
import readings from '../../fixtures/documents/reading-1.json'
import contents from '../../fixtures/documents/version-content-1.json'
import weighings from '../../fixtures/documents/weighing-1.json'
import weighingsWithLots from '../../fixtures/documents/weighing-2.json'
import weighingsWithCodes from '../../fixtures/documents/weighing-3.json'

type Kept = { text: string; hash: string }

/** What each kind makes of a golden text when it is read and written again, with something spoilt on the way. */
const rewrites: Record<string, { golden: Kept[]; rewrite: (kept: Kept, spoil?: object) => Kept }> = {
  plan: {
    golden: plansOfFormat5,
    rewrite({ text, hash }, spoil) {
      const read = readPlan(text, hash)
      if (read.outcome !== 'read') throw new Error(read.outcome)
      return textOfPlan({ ...read.plan, ...spoil })
    },
  },
  closing: {
    golden: closings,
    rewrite({ text, hash }, spoil) {
      const read = readClosing(text, hash)
      if (read.outcome !== 'read' || !read.closing.weighings) throw new Error(read.outcome)
      return textOfClosing({ ...read.closing, weighings: read.closing.weighings, ...spoil })
    },
  },
  amendment: {
    golden: amendments,
    rewrite({ text, hash }, spoil) {
      const read = readAmendment(text, hash)
      if (read.outcome !== 'read') throw new Error(read.outcome)
      return textOfAmendment({ ...read.amendment, ...spoil })
    },
  },
  'content of a version': {
    golden: contents,
    rewrite({ text }, spoil) {
      const read = readVersionContent(text)
      if (read.outcome !== 'read') throw new Error(read.outcome)
      const written = textOfVersionContent({ ...read.content, ...spoil })
      return { text: written.text, hash: written.hash }
    },
  },
  'entry of the record': {
    golden: entriesOfFormat2,
    rewrite({ text }, spoil) {
      const read = readAuditEntry(text)
      if (read.outcome !== 'read') throw new Error(read.outcome)
      return textOfAuditEntry({ ...read.entry, ...spoil })
    },
  },
}

describe.each(Object.entries(rewrites))('the writer of a %s', (_, { golden, rewrite }) => {
  it('gives what was read its very text and hash again', () => {
    for (const { text, hash } of golden) expect(rewrite({ text, hash })).toEqual({ text, hash })
  })

  it('writes nothing that could not be read back', () => {
    const [kept] = golden
    expect(() => rewrite(kept!, { stray: 1 })).toThrow(/stray/)
    expect(() => rewrite(kept!, { bakery: undefined, declared: undefined })).toThrow()
    expect(() =>
      rewrite(kept!, { process: { doughTempC: Number.NaN }, after: { at: new Date(0) }, controlMean: Infinity }),
    ).toThrow()
  })
})

it('evidence is written as its parts and the text that names them, whose golden texts come out again', () => {
  const shown = readShown(evidenceShown[0]!.text, evidenceShown[0]!.hash)
  const costs = readCosts(evidenceCosts[0]!.text, evidenceCosts[0]!.hash)
  const cautions = readCautions(evidenceCautions[0]!.text, evidenceCautions[0]!.hash)
  const knowing = readKnowing(evidenceKnowing[0]!.text, evidenceKnowing[0]!.hash)
  const manifest = readManifest(evidence[4]!.text, evidence[4]!.hash)
  if (
    shown.outcome !== 'read' ||
    costs.outcome !== 'read' ||
    cautions.outcome !== 'read' ||
    manifest.outcome !== 'read' ||
    knowing.outcome !== 'read' ||
    shown.value.headline === null
  )
    throw new Error('a golden text was not read')
  const { bakery, trial, frozen } = manifest.value
  const asked = {
    bakery,
    trial,
    frozen,
    shown: { ...shown.value, headline: shown.value.headline },
    costs: costs.value,
    cautions: cautions.value,
    knowing: knowing.value,
    amendments: null,
    closing: closings[0]!.text,
    plan: plansOfFormat4[0]!.text,
  }
  const written = textOfEvidence(asked)
  expect({ text: written.text, hash: written.hash }).toEqual({ text: evidence[4]!.text, hash: evidence[4]!.hash })
  expect(written.parts.map(({ text }) => text)).toEqual([
    evidenceShown[0]!.text,
    evidenceCosts[0]!.text,
    evidenceCautions[0]!.text,
    evidenceKnowing[0]!.text,
    closings[0]!.text,
    plansOfFormat4[0]!.text,
  ])
  const came = readAmendments(evidenceAmendments[0]!.text, evidenceAmendments[0]!.hash)
  if (came.outcome !== 'read') throw new Error(came.outcome)
  const more = textOfEvidence({ ...asked, amendments: came.value })
  expect(more.parts.find(({ kind }) => kind === 'amendments')?.text).toBe(evidenceAmendments[0]!.text)
  expect(more.hash).not.toBe(written.hash)
  expect(() => textOfEvidence({ ...asked, shown: { ...asked.shown, controlMean: Infinity } })).toThrow()
  const strayed = { ...frozen, stray: 1 }
  expect(() => textOfEvidence({ ...asked, frozen: strayed })).toThrow(/stray/)
  expect(() => textOfEvidence({ ...asked, closing: 'no document' })).toThrow(/closing/)
})

describe('a closing, figures and costs of a former format', () => {
  it.each(closingsOfFormat1)('are of a trial of which nothing was written of weighing: $what', ({ text, hash }) => {
    expect(readClosing(text, hash)).toMatchObject({
      outcome: 'read',
      format: 1,
      closing: { weighings: null, repairs: [] },
    })
  })

  it.each(evidenceShownOfFormat1)('count no dough otherwise for it: $what', ({ text, hash }) => {
    expect(readShown(text, hash)).toMatchObject({
      outcome: 'read',
      format: 1,
      value: { asLastWeighed: null, headline: null },
    })
  })

  it.each(evidenceCostsOfFormat1)('say nothing of a price for the same volume: $what', ({ text, hash }) => {
    const read = readCosts(text, hash)
    if (read.outcome !== 'read') throw new Error(read.outcome)
    expect(read.format).toBe(1)
    expect(read.value.arms.map(({ sameVolume }) => sameVolume)).toEqual(read.value.arms.map(() => null))
    expect(read.value.rests.arms.every(({ dosed, volume }) => dosed.length === 0 && volume === null)).toBe(true)
  })

  it.each(evidenceShownOfFormat2)('say nothing of the headline: $what', ({ text, hash }) => {
    expect(readShown(text, hash)).toMatchObject({ outcome: 'read', format: 2, value: { headline: null } })
  })
})

describe('a plan of a former format', () => {
  it.each([...plansOfFormat1, ...plansOfFormat2, ...plansOfFormat3, ...plansOfFormat4])(
    'is filled up to one that the format of today can say: $what',
    ({ text, hash }) => {
      const read = readPlan(text, hash)
      if (read.outcome !== 'read') throw new Error(read.outcome)
      const again = textOfPlan(read.plan)
      expect(readPlan(again.text, again.hash)).toEqual({ ...read, format: 5 })
    },
  )
})

it.each(closingsOfFormat1)('a closing of the former format was said of any day: $what', ({ text, hash }) => {
  const read = readClosing(text, hash)
  if (read.outcome !== 'read') throw new Error(read.outcome)
  expect(read.closing).toMatchObject({ declared: { holdsFor: 'any_day' }, weighings: null, repairs: [] })
})

describe('an entry of the former format', () => {
  it.each(entriesOfFormat1)('is read as of somebody at the desk, with all that it said: $what', ({ text }) => {
    const { format: _, who, ...said } = JSON.parse(text)
    expect(readAuditEntry(text)).toEqual({
      outcome: 'read',
      format: 1,
      entry: { ...said, who: { kind: 'desk', ...who } },
    })
  })

  it('is read as of nobody where nobody was let in', () => {
    const { format: _, ...said } = JSON.parse(entriesOfFormat1[0]!.text)
    expect(readAuditEntry(JSON.stringify({ ...said, format: 1, who: null }))).toEqual({
      outcome: 'read',
      format: 1,
      entry: { ...said, who: null },
    })
  })
})

it('the text of a reading is read back as what was entered, and gives its text again', () => {
  for (const { text, hash } of readings) {
    const read = readReading(text, hash)
    expect(read.outcome === 'read' && textOfReading(read.reading)).toBe(text)
  }
  const entered = fc.record<ReadingContent>({
    batch: fc.option(fc.uuid()),
    factorLevel: fc.option(fc.string()),
    measure: fc.option(fc.uuid()),
    piece: fc.option(fc.integer({ min: 1, max: 10_000 })),
    reason: fc.option(fc.string({ unit: 'binary' })),
    repeat: fc.integer({ min: 1, max: 20 }),
    supersedes: fc.option(fc.uuid()),
    takenAt: fc.option(fc.string()),
    unit: fc.string(),
    value: fc.string({ unit: 'grapheme' }),
  })
  fc.assert(
    fc.property(entered, (reading) => {
      const text = textOfReading(reading)
      expect(readReading(text, hashOfText(text))).toEqual({ outcome: 'read', format: 1, reading })
    }),
    { seed: 31 },
  )
})

it('the text of a weighing is read back as what was entered, and gives its text again, with lots or without', () => {
  for (const { text, hash } of [...weighings, ...weighingsWithLots, ...weighingsWithCodes]) {
    const read = readWeighing(text, hash)
    expect(read.outcome === 'read' && textOfWeighing(read.value)).toBe(text)
  }
  const entered = fc.record<WeighingContent>(
    {
      batch: fc.uuid(),
      how: fc.constantFrom('ticked', 'weighed', 'left_out'),
      ingredient: fc.uuid(),
      lots: fc.array(
        fc
          .record({
            name: fc.oneof(fc.record({ lot: fc.uuid() }), fc.record({ code: fc.string() })),
            mass: fc.option(fc.string()),
          })
          .map(({ name, mass }) => ({ lot: null, ...name, mass })),
        { minLength: 1, maxLength: 10 },
      ),
      mass: fc.option(fc.string({ unit: 'binary' })),
      part: fc.constantFrom('line', 'dose', 'premix'),
      reason: fc.option(fc.string({ unit: 'grapheme' })),
      stage: fc.uuid(),
      supersedes: fc.option(fc.uuid()),
      takenAt: fc.string(),
      unit: fc.option(fc.string()),
    },
    {
      requiredKeys: ['batch', 'how', 'ingredient', 'mass', 'part', 'reason', 'stage', 'supersedes', 'takenAt', 'unit'],
    },
  )
  fc.assert(
    fc.property(entered, (weighing) => {
      const text = textOfWeighing(weighing)
      const { lots, ...rest } = weighing
      const isByCode = lots?.some((lot) => 'code' in lot) ?? false
      const format = isByCode ? 3 : lots ? 2 : 1
      const named = isByCode ? lots?.map((lot) => ({ code: null, ...lot })) : lots
      expect(readWeighing(text, hashOfText(text))).toEqual({
        outcome: 'read',
        format,
        value: { ...rest, format, ...(named ? { lots: named } : {}) },
      })
    }),
    { seed: 47 },
  )
})
