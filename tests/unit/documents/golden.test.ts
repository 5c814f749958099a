import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { amendmentOfFormat1 } from '@/lib/documents/amendment/amendment-of-format-1'
import { readAmendment } from '@/lib/documents/amendment/read-amendment'
import { entryOfFormat1 } from '@/lib/documents/audit-entry/entry-of-format-1'
import { entryOfFormat2 } from '@/lib/documents/audit-entry/entry-of-format-2'
import { readAuditEntry } from '@/lib/documents/audit-entry/read-audit-entry'
import { canonicalText } from '@/lib/documents/canonical-text'
import { closingOfFormat1 } from '@/lib/documents/closing/closing-of-format-1'
import { closingOfFormat2 } from '@/lib/documents/closing/closing-of-format-2'
import { readClosing } from '@/lib/documents/closing/read-closing'
import { amendmentsOfFormat1 } from '@/lib/documents/evidence-amendments/amendments-of-format-1'
import { readAmendments } from '@/lib/documents/evidence-amendments/read-amendments'
import { cautionsOfFormat1 } from '@/lib/documents/evidence-cautions/cautions-of-format-1'
import { costsOfFormat1 } from '@/lib/documents/evidence-costs/costs-of-format-1'
import { costsOfFormat2 } from '@/lib/documents/evidence-costs/costs-of-format-2'
import { evidenceOfFormat1 } from '@/lib/documents/evidence/evidence-of-format-1'
import { evidenceOfFormat2 } from '@/lib/documents/evidence/evidence-of-format-2'
import { readEvidence } from '@/lib/documents/evidence/read-evidence'
import { readManifest } from '@/lib/documents/evidence/read-manifest'
import { readCautions } from '@/lib/documents/evidence-cautions/read-cautions'
import { readCosts } from '@/lib/documents/evidence-costs/read-costs'
import { knowingOfFormat1 } from '@/lib/documents/evidence-knowing/knowing-of-format-1'
import { readKnowing } from '@/lib/documents/evidence-knowing/read-knowing'
import { fileOfFormat1 } from '@/lib/documents/evidence-file/file-of-format-1'
import { readFile } from '@/lib/documents/evidence-file/read-file'
import { readShown } from '@/lib/documents/evidence-shown/read-shown'
import { shownOfFormat1 } from '@/lib/documents/evidence-shown/shown-of-format-1'
import { shownOfFormat2 } from '@/lib/documents/evidence-shown/shown-of-format-2'
import { shownOfFormat3 } from '@/lib/documents/evidence-shown/shown-of-format-3'
import { hashOfText } from '@/lib/documents/hash-of-text'
import { causeOfFormat1 } from '@/lib/documents/cause/cause-of-format-1.input'
import { readCause } from '@/lib/documents/cause/read-cause'
import { noteOfFormat1 } from '@/lib/documents/note/note-of-format-1.input'
import { readNote } from '@/lib/documents/note/read-note'
import { planOfFormat1 } from '@/lib/documents/plan/plan-of-format-1'
import { planOfFormat2 } from '@/lib/documents/plan/plan-of-format-2'
import { planOfFormat3 } from '@/lib/documents/plan/plan-of-format-3'
import { planOfFormat4 } from '@/lib/documents/plan/plan-of-format-4'
import { planOfFormat5 } from '@/lib/documents/plan/plan-of-format-5'
import { readPlan } from '@/lib/documents/plan/read-plan'
import { readReading } from '@/lib/documents/reading/read-reading'
import { readingOfFormat1 } from '@/lib/documents/reading/reading-of-format-1.input'
import { readCheck } from '@/lib/documents/check/read-check'
import { checkOfFormat1 } from '@/lib/documents/check/check-of-format-1.input'
import { checkOfFormat2 } from '@/lib/documents/check/check-of-format-2.input'
import { readCount } from '@/lib/documents/count/read-count'
import { countOfFormat1 } from '@/lib/documents/count/count-of-format-1.input'
import { readStep } from '@/lib/documents/step/read-step'
import { stepOfFormat1 } from '@/lib/documents/step/step-of-format-1.input'
import { contentOfFormat1 } from '@/lib/documents/version-content/content-of-format-1'
import { readWeighing } from '@/lib/documents/weighing/read-weighing'
import { weighingOfFormat1 } from '@/lib/documents/weighing/weighing-of-format-1.input'
import { weighingOfFormat2 } from '@/lib/documents/weighing/weighing-of-format-2.input'
import { weighingOfFormat3 } from '@/lib/documents/weighing/weighing-of-format-3.input'
import { readVersionContent } from '@/lib/documents/version-content/read-version-content'
import { sourceFilesIn } from '@/tests/support/source-files'
import { pathsOfSchema, pathsOfValue, withoutKeys, withStrayKeys } from './paths'

type Golden = { what: string; hash: string; text: string }
type Kind = {
  name: string
  schema: z.ZodType
  read: (text: string, hash: string) => { outcome: string; format?: number }
  optional?: string
}

/** Every kind and format that was ever frozen. `optional` is the one field that may be left out. */
const documents: Kind[] = [
  { name: 'plan-1', schema: planOfFormat1, read: readPlan, optional: 'declared.factor' },
  { name: 'plan-2', schema: planOfFormat2, read: readPlan, optional: 'declared.factor' },
  { name: 'plan-5', schema: planOfFormat5, read: readPlan, optional: 'declared.factor' },
  { name: 'plan-4', schema: planOfFormat4, read: readPlan, optional: 'declared.factor' },
  { name: 'plan-3', schema: planOfFormat3, read: readPlan, optional: 'declared.factor' },
  { name: 'evidence-1', schema: evidenceOfFormat1, read: readEvidence },
  { name: 'evidence-2', schema: evidenceOfFormat2, read: readManifest },
  { name: 'evidence-shown-1', schema: shownOfFormat1, read: readShown },
  { name: 'evidence-shown-2', schema: shownOfFormat2, read: readShown },
  { name: 'evidence-shown-3', schema: shownOfFormat3, read: readShown },
  { name: 'evidence-costs-1', schema: costsOfFormat1, read: readCosts },
  { name: 'evidence-costs-2', schema: costsOfFormat2, read: readCosts },
  { name: 'evidence-cautions-1', schema: cautionsOfFormat1, read: readCautions },
  { name: 'evidence-amendments-1', schema: amendmentsOfFormat1, read: readAmendments },
  { name: 'evidence-knowing-1', schema: knowingOfFormat1, read: readKnowing },
  { name: 'evidence-file-1', schema: fileOfFormat1, read: readFile },
  { name: 'closing-2', schema: closingOfFormat2, read: readClosing },
  { name: 'closing-1', schema: closingOfFormat1, read: readClosing },
  { name: 'amendment-1', schema: amendmentOfFormat1, read: readAmendment },
  { name: 'version-content-1', schema: contentOfFormat1, read: readVersionContent, optional: 'evidence' },
  { name: 'audit-entry-1', schema: entryOfFormat1, read: readAuditEntry },
  { name: 'audit-entry-2', schema: entryOfFormat2, read: readAuditEntry },
  { name: 'cause-1', schema: causeOfFormat1, read: readCause },
  { name: 'check-1', schema: checkOfFormat1, read: readCheck },
  { name: 'check-2', schema: checkOfFormat2, read: readCheck },
  { name: 'count-1', schema: countOfFormat1, read: readCount },
  { name: 'note-1', schema: noteOfFormat1, read: readNote },
  { name: 'reading-1', schema: readingOfFormat1, read: readReading },
  { name: 'step-1', schema: stepOfFormat1, read: readStep },
  { name: 'weighing-1', schema: weighingOfFormat1, read: readWeighing },
  { name: 'weighing-2', schema: weighingOfFormat2, read: readWeighing },
  { name: 'weighing-3', schema: weighingOfFormat3, read: readWeighing },
]

const folder = path.resolve(import.meta.dirname, '..', '..', 'fixtures', 'documents')
const jsonOf = (file: string): unknown => JSON.parse(fs.readFileSync(path.join(folder, file), 'utf8'))
const goldenOf = (name: string) =>
  z
    .array(z.strictObject({ what: z.string(), hash: z.string(), text: z.string() }))
    .min(1)
    .parse(jsonOf(`${name}.json`)) satisfies Golden[]
const formatOf = (name: string) => Number(name.split('-').at(-1))

describe.each(documents)('$name', ({ name, schema, read, optional = '' }) => {
  const golden = goldenOf(name)

  it.each(golden)('parses and hashes the same for ever: $what', ({ hash, text }) => {
    expect(createHash('sha256').update(Buffer.from(text, 'utf8')).digest('hex')).toBe(hash)
    expect(read(text, hash)).toMatchObject({ outcome: 'read', format: formatOf(name) })
    expect(canonicalText(schema.parse(JSON.parse(text)))).toBe(text)
  })

  it('has the schema of then: what wants to be otherwise is a new format', () => {
    expect(z.toJSONSchema(schema)).toEqual(jsonOf(`${name}.schema.json`))
  })

  it('has every field of its schema in a golden document', () => {
    const there = new Set(golden.flatMap(({ text }) => pathsOfValue(JSON.parse(text))))
    expect(pathsOfSchema(jsonOf(`${name}.schema.json`)).filter((field) => !there.has(field))).toEqual([])
  })

  it('is closed: with a field more or a field less anywhere it is none', () => {
    for (const { text } of golden) {
      const value: unknown = JSON.parse(text)
      const spoilt = [...withStrayKeys(value), ...withoutKeys(value)].filter(({ at }) => at !== optional)
      expect(spoilt.filter(({ value: other }) => schema.safeParse(other).success).map(({ at }) => at)).toEqual([])
      for (const { value: other } of spoilt.slice(0, 3)) {
        const otherText = canonicalText(other)
        expect(read(otherText, hashOfText(otherText)).outcome).not.toBe('read')
      }
    }
  })

  it('is said to be in a format that is not known, when it is in a later one', () => {
    const later = golden[0]!.text.replace(`"format":${formatOf(name)}`, '"format":1000')
    expect(read(later, hashOfText(later))).toEqual({ outcome: 'unknown-format', format: 1000 })
    for (const format of ['0', '-1', '1.5', '"1"', 'null']) {
      const none = golden[0]!.text.replace(`"format":${formatOf(name)}`, `"format":${format}`)
      expect(read(none, hashOfText(none))).toEqual({ outcome: 'damaged' })
    }
  })

  it('is answered, whatever text is kept in its place', () => {
    const { hash, text } = golden[0]!
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.json(),
          fc.nat(text.length).map((length) => text.slice(0, length)),
          fc
            .nat(text.length - 1)
            .map((at) => `${text.slice(0, at)}${text[at] === '1' ? '2' : '1'}${text.slice(at + 1)}`),
        ),
        (other) => {
          expect(['read', 'damaged', 'unknown-format']).toContain(read(other, hashOfText(other)).outcome)
          if (other !== text && readsByHash.has(read)) expect(read(other, hash)).toEqual({ outcome: 'damaged' })
        },
      ),
      { seed: 29, numRuns: 200 },
    )
  })
})

/** The others leave the hash to whoever asks: a version that does not fit its seal is shown with that said, an entry is followed. */
const readsByHash = new Set<Kind['read']>([
  readPlan,
  readEvidence,
  readManifest,
  readShown,
  readCosts,
  readCautions,
  readKnowing,
  readReading,
  readWeighing,
  readNote,
  readStep,
  readCheck,
  readCount,
  readCause,
  readAmendment,
])

it('looks at every format that the code has, and at every file here', () => {
  const formats = sourceFilesIn('lib/documents').flatMap((file) => {
    const [, kind, format] = /^lib\/documents\/([^/]+)\/[^/]*-of-format-(\d+)(\.input)?\.ts$/.exec(file) ?? []
    return kind === undefined ? [] : [`${kind}-${format}`]
  })
  const names = documents.map(({ name }) => name)
  expect(formats.sort()).toEqual([...names].sort())
  expect(fs.readdirSync(folder).sort()).toEqual(
    ['README.md', ...names.flatMap((name) => [`${name}.json`, `${name}.schema.json`])].sort(),
  )
})
