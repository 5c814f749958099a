import 'server-only'
import type { z } from 'zod'
import { mayTry, type ActorOf, type Right } from '../auth/rights'
import { db, type Db } from '../db/client'
import { readAgainWhenGone } from '../db/transaction'
import { answer, parseOrRefuse } from './answer'
import type { Caller } from './caller'
import { recordRefusal } from './command'
import { findCaller } from './find-caller'
import { Refusal } from './refusal'
import type { Result } from './result'

type QuerySpec<R extends Right, Schema extends z.ZodType, Value> = {
  name: string
  input: Schema
  /** Says by the table of rights which kinds of caller it takes; its work gets an actor of those. */
  right: R
  /** Reads by bakery, and selects its columns by name. */
  run(q: { db: Db; actor: ActorOf<R>; now: Date; input: z.output<Schema> }): Promise<Value>
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
export function query<R extends Right, Schema extends z.ZodType, Value>(
  spec: QuerySpec<R, Schema, Value>,
): Query<Value> {
  return {
    kind: 'query',
    name: spec.name,
    right: spec.right,
    call: (caller, raw) =>
      answer(async () => {
        const now = (caller.now ?? (() => new Date()))()
        const known = caller.kind === 'desk' ? caller.actor : undefined
        const actor = known === undefined ? await findCaller(caller, now) : known
        if (!actor) throw new Refusal('not-signed-in')
        if (!mayTry(actor, spec.right)) {
          await recordRefusal(actor, caller, spec.name, now)
          throw new Refusal('not-allowed')
        }
        const input = parseOrRefuse(spec.input, raw)
        const value = await readAgainWhenGone(() => spec.run({ db: db(), actor, now, input }))
        return { value }
      }),
  }
}
