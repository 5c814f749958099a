import 'server-only'
import { z } from 'zod'
import { sessionCookie } from '../../auth/sign-in-cookie'
import { shiftHeader, stationCookie } from '../../auth/station-cookie'
import { photoPaths } from '../photos/open-api-paths'
import type { EntryKind } from './entry-handler'
import { entryHandlers } from './handlers'
import { mostEntries } from './send-entries.input'

type Shape = z.core.JSONSchema.JSONSchema

const hash = z
  .string()
  .regex(/^[0-9a-f]{64}$/)
  .describe('SHA-256 of the entry’s canonical text, in hexadecimal digits.')
const words = z.string().describe('For a person, in the language that Accept-Language asks for.')
const code = z.string().describe('A code that stays the same while the words may change.')

const aside = z
  .strictObject({
    outcome: z.literal('aside'),
    id: z.string(),
    hash,
    refusal: z.enum(['aside-place-taken', 'aside-corrected', 'aside-id-taken', 'aside-of-aside', 'aside-trial-closed']),
    words,
  })
  .describe(
    'Somebody was faster. It is kept whole, by id and hash, for somebody to settle, and need not be sent again.',
  )

const refused = z
  .strictObject({
    outcome: z.literal('refused'),
    id: z.string().nullable().describe('As it was sent; null where none could be read.'),
    refusal: code,
    words,
    problems: z.record(z.string(), z.string()).describe('What is wrong at which field, in words.'),
  })
  .describe('Nothing of it was kept.')

const whole = z.strictObject({ refusal: code, words: words.optional() })

/**
 * The interface for entries from outside as an OpenAPI document (OpenAPI Specification 3.1.1), made of the schemas by
 * which entries are read. `app/api/v1/openapi.json` is this; a test holds the two equal.
 */
export function openApiDocument(): object {
  const kinds = entryHandlers.flatMap((handler) => Object.entries(handler.kinds))
  const schemas = {
    ...Object.fromEntries(
      kinds.flatMap(([name, kind]) => [
        [entryName(name), shapeOf(sentAs(name, kind))],
        [keptName(name), shapeOf(keptAs(kind))],
      ]),
    ),
    Aside: shapeOf(aside),
    Refused: shapeOf(refused),
    RefusedRequest: shapeOf(whole),
  }
  const entry = {
    oneOf: kinds.map(([name]) => refTo(entryName(name))),
    discriminator: {
      propertyName: 'kind',
      mapping: Object.fromEntries(kinds.map(([name]) => [name, refTo(entryName(name)).$ref])),
    },
  }
  const answer = { anyOf: [...kinds.map(([name]) => refTo(keptName(name))), refTo('Aside'), refTo('Refused')] }
  const answers = jsonOf({
    type: 'object',
    required: ['entries'],
    additionalProperties: false,
    properties: { entries: { type: 'array', items: answer } },
  })
  const none = jsonOf(refTo('RefusedRequest'))
  return {
    openapi: '3.1.1',
    info: {
      title: 'Evendough: entries from outside',
      version: '1',
      description:
        'Entries are kept or refused each by itself, in their order. Sending one again, with its id and content, is safe: it is kept once and answered the same. What comes to a trial whose readings are closed is put aside as a proposed amendment, in the order in which it was sent: send what was taken first, first. Whoever sends lets go of an entry when its id and its own hash came back, kept or aside, and not before. The canonical text of a reading or a correction is RFC 8785 JSON of batch, factorLevel, format (1), measure, piece, reason, repeat, supersedes, takenAt, unit and value, as they were sent, and null where a kind has none; that of a weighing is of batch, format (1), how, ingredient, mass, part, reason, stage, supersedes, takenAt and unit; of one that names lots, the format is 2, and lots, each with lot and mass, stand behind ingredient; that of a note is of batch, forNext, format (1), takenAt, text (without blanks at its ends, in Unicode’s form C) and trial; that of a step is of agoS, batch, beside, chamberTempC, clockAheadS, format (1), isDone, place, readTempC, reason, setTempC, setting, steam, step, supersedes and takenAt, its texts like a note’s; that of a check is of clockAheadS, equipment, format (1), mass, shown, takenAt and unit; that of a count is of batch, clockAheadS, format (1), given, good, made, sampled, sold, takenAt and wasted. Whether a weighing is on target is not answered: it would tell which dough it is of. A photo comes in pieces, by three requests of its own.',
    },
    servers: [{ url: '/' }],
    security: [{ session: [] }, { station: [], shift: [] }],
    paths: {
      '/api/v1/entries': {
        post: {
          operationId: 'sendEntries',
          summary: 'Takes entries into the book',
          requestBody: {
            required: true,
            ...jsonOf({
              type: 'object',
              required: ['entries'],
              additionalProperties: false,
              properties: { entries: { type: 'array', minItems: 1, maxItems: mostEntries, items: entry } },
            }),
          },
          responses: {
            200: {
              description: 'Any was kept, or they fared differently: the answers stand in the order of the entries.',
              ...answers,
            },
            400: { description: 'This is not JSON.', ...none },
            401: { description: 'Nobody is signed in.', ...none },
            403: {
              description: 'The role does not allow it, or the request comes from another site.',
              ...either(none, answers),
            },
            413: { description: 'More than 256 KiB.', ...none },
            415: { description: 'The content type is not application/json.', ...none },
            422: {
              description: 'Another shape; or none was kept, and each was kept aside or refused.',
              ...either(none, answers),
            },
            503: {
              description: 'The book does not answer: send the same again.',
              headers: { 'Retry-After': { description: 'After so many seconds.', schema: { type: 'integer' } } },
              ...none,
            },
          },
        },
      },
      ...photoPaths(refTo('RefusedRequest')),
    },
    components: {
      securitySchemes: {
        session: { type: 'apiKey', in: 'cookie', name: sessionCookie, description: 'The session of a page of ours.' },
        station: {
          type: 'apiKey',
          in: 'cookie',
          name: stationCookie,
          description: 'The secret of an enrolled station: POST /api/v1/station/enrol with its code sets it, once.',
        },
        shift: {
          type: 'apiKey',
          in: 'header',
          name: shiftHeader,
          description:
            'The token of whoever is at the station: POST /api/v1/station/log-on with their id and PIN gives it.',
        },
      },
      schemas,
    },
  }
}

type Body = { content: { 'application/json': { schema: object } } }

function jsonOf(schema: object): Body {
  return { content: { 'application/json': { schema } } }
}

function either(one: Body, other: Body): Body {
  return jsonOf({ anyOf: [one.content['application/json'].schema, other.content['application/json'].schema] })
}

function sentAs(name: string, { input }: EntryKind): z.ZodObject {
  return z.strictObject({ kind: z.literal(name), ...input.shape })
}

function keptAs({ answer }: EntryKind): z.ZodObject {
  return z.strictObject({
    outcome: z.literal('kept'),
    id: z.string(),
    hash,
    isAgain: z.boolean().describe('The same content had come before under this id.'),
    ...answer.shape,
  })
}

function shapeOf(schema: z.ZodType): Shape {
  const { $schema: _, ...shape } = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any', reused: 'inline' })
  return shape
}

function entryName(kind: string): string {
  return `${capital(kind)}Entry`
}

function keptName(kind: string): string {
  return `Kept${capital(kind)}`
}

function capital(name: string): string {
  return name.slice(0, 1).toUpperCase() + name.slice(1)
}

function refTo(name: string): { $ref: string } {
  return { $ref: `#/components/schemas/${name}` }
}
