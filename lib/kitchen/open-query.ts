import 'server-only'
import type { z } from 'zod'
import { db, type Db } from '../db/client'
import { readAgainWhenGone } from '../db/transaction'
import { answer, parseOrRefuse } from './answer'
import type { Caller } from './caller'
import type { Result } from './result'

type OpenQuerySpec<Schema extends z.ZodType, Value> = {
  name: string
  input: Schema
  run(q: { db: Db; now: Date; input: z.output<Schema> }): Promise<Value>
}

export type OpenQuery<Value = unknown> = {
  kind: 'open-query'
  name: string
  call(caller: Caller, raw: unknown): Promise<Result<Value>>
}

/** Makes a query for somebody who is not signed in: what a single-use link is for, and no more. */
export function openQuery<Schema extends z.ZodType, Value>(spec: OpenQuerySpec<Schema, Value>): OpenQuery<Value> {
  return {
    kind: 'open-query',
    name: spec.name,
    call: (caller, raw) =>
      answer(async () => {
        const now = (caller.now ?? (() => new Date()))()
        const input = parseOrRefuse(spec.input, raw)
        return { value: await readAgainWhenGone(() => spec.run({ db: db(), now, input })) }
      }),
  }
}
