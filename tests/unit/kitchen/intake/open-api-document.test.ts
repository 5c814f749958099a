import path from 'node:path'
import { v7 as uuid } from 'uuid'
import { describe, expect, it } from 'vitest'
import { entryHandlers } from '@/lib/kitchen/intake/handlers'
import { openApiDocument } from '@/lib/kitchen/intake/open-api-document'
import { codeOfAside } from '@/lib/kitchen/intake/take-entries'
import { testNow } from '../../../support/bakery'
import { schemaOfDocument } from '../../../support/open-api'

const document = JSON.parse(JSON.stringify(openApiDocument())) as { [part: string]: unknown }
const root = path.join(import.meta.dirname, '../../../..')

/** Every object within, with the way to it. */
function* objectsIn(value: unknown, way: string[] = []): Generator<{ way: string[]; object: Record<string, unknown> }> {
  if (typeof value !== 'object' || value === null) return
  if (!Array.isArray(value)) yield { way, object: value as Record<string, unknown> }
  for (const [name, part] of Object.entries(value)) yield* objectsIn(part, [...way, name])
}

it('is the file in app/api/v1: an update of it shows in the difference of a commit', async () => {
  await expect(`${JSON.stringify(document, null, 2)}\n`).toMatchFileSnapshot(path.join(root, 'app/api/v1/openapi.json'))
})

// OpenAPI Specification 3.1.1 (OpenAPI Initiative, 24 October 2024), section 4.8: the fixed fields of each object, and which are required.
const fixedFields: Record<string, { known: string[]; required: string[] }> = {
  openapi: {
    known: [
      'openapi',
      'info',
      'jsonSchemaDialect',
      'servers',
      'paths',
      'webhooks',
      'components',
      'security',
      'tags',
      'externalDocs',
    ],
    required: ['openapi', 'info'],
  },
  info: {
    known: ['title', 'summary', 'description', 'termsOfService', 'contact', 'license', 'version'],
    required: ['title', 'version'],
  },
  operation: {
    known: [
      'tags',
      'summary',
      'description',
      'externalDocs',
      'operationId',
      'parameters',
      'requestBody',
      'responses',
      'callbacks',
      'deprecated',
      'security',
      'servers',
    ],
    required: [],
  },
  requestBody: { known: ['description', 'content', 'required'], required: ['content'] },
  response: { known: ['description', 'headers', 'content', 'links'], required: ['description'] },
  mediaType: { known: ['schema', 'example', 'examples', 'encoding'], required: [] },
  apiKey: { known: ['type', 'description', 'name', 'in'], required: ['type', 'name', 'in'] },
}

function kindOfObject(way: readonly string[]): string | undefined {
  if (way.length === 0) return 'openapi'
  if (way.join('.') === 'info') return 'info'
  if (way[0] === 'components' && way[1] === 'securitySchemes' && way.length === 3) return 'apiKey'
  if (way[0] !== 'paths') return undefined
  const within = way.slice(2)
  if (within.length === 1) return 'operation'
  if (within.length === 2 && within[1] === 'requestBody') return 'requestBody'
  if (within.length === 3 && within[1] === 'responses') return 'response'
  return within.at(-2) === 'content' ? 'mediaType' : undefined
}

describe('an OpenAPI 3.1 document', () => {
  it('has the fields that the specification gives each object, and no other', () => {
    const seen = new Set<string>()
    for (const { way, object } of objectsIn(document)) {
      const kind = kindOfObject(way)
      const fields = kind === undefined ? undefined : fixedFields[kind]
      if (!fields || kind === undefined) continue
      seen.add(kind)
      const names = Object.keys(object)
      expect(
        names.filter((name) => !fields.known.includes(name)),
        `${kind} at ${way.join(' ')}`,
      ).toEqual([])
      expect(
        fields.required.filter((name) => !names.includes(name)),
        `${kind} at ${way.join(' ')}`,
      ).toEqual([])
    }
    expect([...seen].sort()).toEqual(Object.keys(fixedFields).sort())
    expect(document.openapi).toMatch(/^3\.1\.\d+$/)
    expect(Object.keys(document.paths as object).every((each) => each.startsWith('/'))).toBe(true)
  })

  it('refers to nothing that is not there, and asks for no security scheme that is not', () => {
    const refs = [...objectsIn(document)].flatMap(({ object }) =>
      typeof object.$ref === 'string' ? [object.$ref] : [],
    )
    expect(refs.length).toBeGreaterThan(6)
    for (const ref of refs) {
      const found = ref
        .split('/')
        .slice(1)
        .reduce<unknown>((part, name) => (part as Record<string, unknown> | undefined)?.[name], document)
      expect(found, ref).toBeTypeOf('object')
    }
    const { securitySchemes } = document.components as { securitySchemes: object }
    expect(
      (document.security as object[])
        .flatMap((each) => Object.keys(each))
        .filter((name) => !Object.keys(securitySchemes).includes(name)),
    ).toEqual([])
  })

  it('has a schema for an entry and an answer of each kind that there is, and every reason to keep one aside', () => {
    const { schemas } = document.components as {
      schemas: Record<string, { properties: Record<string, { const?: string; enum?: string[] }> }>
    }
    const kinds = entryHandlers.flatMap((handler) => Object.keys(handler.kinds))
    expect(
      Object.values(schemas)
        .flatMap(({ properties }) => properties.kind?.const ?? [])
        .sort(),
    ).toEqual([...kinds].sort())
    expect(schemas.Aside!.properties.refusal!.enum!.sort()).toEqual(Object.values(codeOfAside).sort())
  })
})

describe('by the document alone, a request', () => {
  const request = () => schemaOfDocument('request')
  const reading = {
    kind: 'reading',
    id: uuid(),
    batchId: uuid(),
    measureId: uuid(),
    piece: 1,
    repeat: 1,
    value: '412.5',
    unit: 'g',
    takenAt: testNow.toISOString(),
  }
  const correction = {
    kind: 'correction',
    id: uuid(),
    supersedesId: uuid(),
    repeat: 1,
    value: '412.5',
    unit: 'g',
    reason: 'slip',
  }

  it('of readings and corrections is right', () => {
    expect(
      request().safeParse({ entries: [reading, correction, { ...reading, confirmed: true, factorLevel: null }] }).error,
    ).toBeUndefined()
  })

  it.each<[string, unknown]>([
    ['without entries', { entries: [] }],
    ['of more than a hundred', { entries: Array.from({ length: 101 }, () => reading) }],
    ['of a kind that nobody takes', { entries: [{ ...reading, kind: 'photo' }] }],
    ['with a number where a text is asked for', { entries: [{ ...reading, value: 412.5 }] }],
    ['with a field that nobody knows', { entries: [{ ...correction, cost: 1 }] }],
    ['without a reason for a correction', { entries: [{ ...correction, reason: undefined }] }],
    ['with another id than a UUIDv7', { entries: [{ ...reading, id: '3b241101-e2bb-4255-8caf-4136c566a962' }] }],
  ])('%s is wrong', (_, wrong) => {
    expect(request().safeParse(JSON.parse(JSON.stringify(wrong))).success).toBe(false)
  })
})

it('no answer is right for two outcomes at once', () => {
  const answers = schemaOfDocument(200)
  const kept = { outcome: 'kept', id: uuid(), hash: 'a'.repeat(64), isAgain: false, outOfRange: false, needs: null }
  expect(
    answers.safeParse({
      entries: [kept, { outcome: 'refused', id: null, refusal: 'invalid', words: 'x', problems: {} }],
    }).error,
  ).toBeUndefined()
  for (const wrong of [
    { ...kept, problems: {} },
    { ...kept, outcome: 'aside' },
    { ...kept, hash: 'a' },
  ])
    expect(answers.safeParse({ entries: [wrong] }).success).toBe(false)
})
