import fs from 'node:fs'
import path from 'node:path'
import { z } from 'zod'

type Content = { content: { 'application/json': { schema: object } } }
type Document = {
  paths: { '/api/v1/entries': { post: { requestBody: Content; responses: Record<string, Content> } } }
  components: { schemas: Record<string, object> }
}

/** What `app/api/v1/openapi.json` says of the request for entries, or of its answer with a status, as a schema to parse by. */
export function schemaOfDocument(of: 'request' | number): z.ZodType {
  const document = JSON.parse(
    fs.readFileSync(path.join(import.meta.dirname, '../../app/api/v1/openapi.json'), 'utf8'),
  ) as Document
  const { requestBody, responses } = document.paths['/api/v1/entries'].post
  const body = of === 'request' ? requestBody : responses[of]
  if (!body) throw new Error(`the document knows no answer ${of}`)
  const { schema } = body.content['application/json']
  // JSON Schema has its parts beside it under another name than OpenAPI has.
  const text = JSON.stringify({ ...schema, $defs: document.components.schemas }).replaceAll(
    '#/components/schemas/',
    '#/$defs/',
  )
  return z.fromJSONSchema(JSON.parse(text) as z.core.JSONSchema.JSONSchema)
}
