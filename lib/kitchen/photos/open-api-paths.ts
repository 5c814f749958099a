import 'server-only'
import { z } from 'zod'
import { photoPieceBytes, pieceHashHeader } from './photo-limits.input'
import { sendPhotoInput } from './send-photo.input'

const hash = { type: 'string', pattern: '^[0-9a-f]{64}$' }
const photoId = { name: 'photoId', in: 'path', required: true, schema: { type: 'string', format: 'uuid' } }
const jsonOf = (schema: object) => ({ content: { 'application/json': { schema } } })
const objectOf = (properties: Record<string, object>) => ({
  type: 'object',
  required: Object.keys(properties),
  additionalProperties: false,
  properties,
})

/** The part of the interface by which photos come, as paths of an OpenAPI document. */
export function photoPaths(refused: { $ref: string }): object {
  const none = jsonOf(refused)
  const frame = {
    401: { description: 'Nobody is signed in.', ...none },
    403: { description: 'The role does not allow it, or the request comes from another site.', ...none },
    413: { description: 'More than is read of it.', ...none },
    415: { description: 'Another content type.', ...none },
    503: { description: 'The book does not answer, or many photos come in: send the same again.', ...none },
  }
  const { $schema: _, ...said } = z.toJSONSchema(sendPhotoInput, { io: 'input' })
  const kept = objectOf({
    outcome: { const: 'kept' },
    id: { type: 'string' },
    sentHash: { ...hash, description: 'Of the file as it was sent: let go of it when this is its own.' },
    hash: { ...hash, description: 'Of the picture as it was written anew.' },
    isAgain: { type: 'boolean' },
  })
  const lacks = objectOf({
    outcome: { const: 'lacks' },
    id: { type: 'string' },
    pieces: { type: 'array', items: { type: 'integer', minimum: 0 } },
  })
  return {
    '/api/v1/photos': {
      post: {
        operationId: 'sendPhoto',
        summary: 'Says which photo comes, and asks what is lacking of it; said again when nothing is, it is kept',
        requestBody: { required: true, ...jsonOf(said) },
        responses: {
          200: {
            description: `In the book; or these pieces of ${photoPieceBytes} bytes have not come, counted from 0. What is not whole after a day begins anew.`,
            ...jsonOf({ anyOf: [kept, lacks] }),
          },
          400: { description: 'This is not JSON.', ...none },
          ...frame,
          422: { description: 'Another shape; another photo under this id; or what came cannot be kept.', ...none },
          429: { description: 'Too many are under way, or came within the hour.', ...none },
        },
      },
    },
    '/api/v1/photos/{photoId}/pieces/{number}': {
      put: {
        operationId: 'sendPhotoPiece',
        summary: 'Takes one piece of a photo that was said',
        parameters: [
          photoId,
          { name: 'number', in: 'path', required: true, schema: { type: 'integer', minimum: 0 } },
          { name: pieceHashHeader, in: 'header', required: true, description: 'SHA-256 of this piece.', schema: hash },
        ],
        requestBody: { required: true, content: { 'application/octet-stream': {} } },
        responses: {
          200: {
            description: 'It is there.',
            ...jsonOf(objectOf({ number: { type: 'integer' }, hash: { ...hash, description: 'Of what came.' } })),
          },
          ...frame,
          422: { description: 'No such photo or piece, or not what its sender sent.', ...none },
        },
      },
    },
    '/api/v1/photos/{photoId}': {
      get: {
        operationId: 'getPhoto',
        summary: 'A photo as it stands in the book',
        parameters: [
          photoId,
          { name: 'small', in: 'query', description: 'As it stands in lists.', schema: { type: 'string' } },
        ],
        responses: {
          200: { description: 'The picture.', content: { 'image/jpeg': {} } },
          401: { description: 'Nobody is signed in.' },
          403: { description: 'The role does not allow it.' },
          404: { description: 'There is none.' },
          503: { description: 'The book does not answer.' },
        },
      },
    },
  }
}
