import 'server-only'
import type { Query } from '@/lib/kitchen/query'
import type { Result } from '@/lib/kitchen/result'
import { askUnless } from './ask'

/** Asks a query for a page that says it where a kept document cannot be read; any other refusal ends as in `ask`. */
export async function askToRead<Value>(query: Query<Value>, input: unknown): Promise<Result<Value>> {
  return askUnless(query, input, ['unknown-format', 'damaged-text'])
}
