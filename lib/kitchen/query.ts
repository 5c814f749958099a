import 'server-only'
import type { z } from 'zod'
import type { Actor } from '../auth/actor'
import { mayTry, type Right } from '../auth/rights'
import { touchSession } from '../auth/sessions'
import { db, type Db } from '../db/client'
import { readAgainWhenGone } from '../db/transaction'
import { answer, parseOrRefuse } from './answer'
import type { Caller } from './caller'
import { recordRefusal } from './command'
import { findCaller } from './find-caller'
import { Refusal } from './refusal'
import type { Result } from './result'

type QuerySpec<Schema extends z.ZodType, Value> = {
  name: string
  input: Schema
  right: Right
  /** Reads by bakery, and selects its columns by name. */
  run(q: { db: Db; actor: Actor; now: Date; input: z.output<Schema> }): Promise<Value>
}

export type Query<Value = unknown> = {
  kind: 'query'
  name: string
  right: Right
  call(caller: Caller, raw: unknown): Promise<Result<Value>>
}

/** What a query answers: `AnswerOf<typeof getPlan>`. */
export type AnswerOf<Asked> = Asked extends Query<infer Value> ? Value : never

/** Makes a query: who is this → may they → parse → read. It keeps nothing but that a no was given. */
export function query<Schema extends z.ZodType, Value>(spec: QuerySpec<Schema, Value>): Query<Value> {
  return {
    kind: 'query',
    name: spec.name,
    right: spec.right,
    call: (caller, raw) =>
      answer(async () => {
        const now = (caller.now ?? (() => new Date()))()
        const actor = caller.actor === undefined ? await findCaller(caller, now) : caller.actor
        if (!actor) throw new Refusal('not-signed-in')
        if (!mayTry(actor.role, spec.right, actor.where)) {
          await recordRefusal(actor, caller, spec.name, now)
          throw new Refusal('not-allowed')
        }
        const input = parseOrRefuse(spec.input, raw)
        const value = await readAgainWhenGone(() => spec.run({ db: db(), actor, now, input }))
        await touchSession(db(), actor, now)
        return { value, changed: [] }
      }),
  }
}
