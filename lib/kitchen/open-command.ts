import 'server-only'
import type { z } from 'zod'
import { appendAudit, type AuditNote, type AuditWho } from '../db/append-audit'
import type { Tx } from '../db/client'
import { inTransaction } from '../db/transaction'
import { answer, parseOrRefuse } from './answer'
import type { Caller } from './caller'
import { noSooner } from './no-sooner'
import type { Result } from './result'

type OpenNote = Omit<AuditNote, 'action'> & { action?: string; bakeryId: string; who: AuditWho }

type OpenOutcome<Value> = {
  value: Value
  /** What the record says, and in whose book; nothing when no bakery is concerned. */
  audit: OpenNote | readonly OpenNote[] | null
}

type OpenSpec<Schema extends z.ZodType, Prepared, Value> = {
  name: string
  input: Schema
  /** A refusal, or a value of null, comes no sooner than this: how long it took would tell why. */
  refusedAfterMs?: number
  prepare?(q: { caller: Caller; now: Date; input: z.output<Schema> }): Promise<Prepared>
  run(q: {
    tx: Tx
    caller: Caller
    now: Date
    input: z.output<Schema>
    prepared: Prepared
  }): Promise<OpenOutcome<Value>>
}

export type OpenCommand<Value = unknown> = {
  kind: 'open-command'
  name: string
  call(caller: Caller, raw: unknown): Promise<Result<Value>>
}

/**
 * Makes a command for somebody who is not signed in yet: signing in, joining, setting up. What it checks instead
 * of a right (a secret, a password) is the first thing its own code does.
 */
export function openCommand<Schema extends z.ZodType, Value, Prepared = undefined>(
  spec: OpenSpec<Schema, Prepared, Value>,
): OpenCommand<Value> {
  return {
    kind: 'open-command',
    name: spec.name,
    call: (caller, raw) => {
      const answered = answer(async () => {
        const now = (caller.now ?? (() => new Date()))()
        const input = parseOrRefuse(spec.input, raw)
        const prepared = (await spec.prepare?.({ caller, now, input })) as Prepared
        return inTransaction(async (tx) => {
          const { value, audit } = await spec.run({ tx, caller, now, input, prepared })
          // In one order everywhere, because each locks its bakery's chain.
          const notes = [audit ?? []].flat().sort((a, b) => a.bakeryId.localeCompare(b.bakeryId, 'en'))
          for (const { bakeryId, who, ...note } of notes)
            await appendAudit(tx, bakeryId, now, who, caller.address, { action: spec.name, ...note })
          return { value }
        })
      })
      return spec.refusedAfterMs === undefined
        ? answered
        : noSooner(spec.refusedAfterMs, answered, (result) => !result.ok || result.value === null)
    },
  }
}
