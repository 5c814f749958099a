import 'server-only'
import type { z } from 'zod'
import { appendAudit, type AuditNote, type AuditWho } from '../db/append-audit'
import type { Tx } from '../db/client'
import { inTransaction } from '../db/transaction'
import { answer, parseOrRefuse } from './answer'
import type { Caller } from './caller'
import type { Result } from './result'

type OpenOutcome<Value> = {
  value: Value
  /** What the record says, and in whose book; nothing when no bakery is concerned. */
  audit: (Omit<AuditNote, 'action'> & { action?: string; bakeryId: string; who: AuditWho }) | null
  changed: readonly string[]
}

type OpenSpec<Schema extends z.ZodType, Prepared, Value> = {
  name: string
  input: Schema
  prepare?(q: { caller: Caller; now: Date; input: z.output<Schema> }): Promise<Prepared>
  run(q: { tx: Tx; caller: Caller; now: Date; input: z.output<Schema>; prepared: Prepared }): Promise<OpenOutcome<Value>>
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
export function openCommand<Schema extends z.ZodType, Value, Prepared = undefined>(spec: OpenSpec<Schema, Prepared, Value>): OpenCommand<Value> {
  return {
    kind: 'open-command',
    name: spec.name,
    call: (caller, raw) =>
      answer(async () => {
        const now = (caller.now ?? (() => new Date()))()
        const input = parseOrRefuse(spec.input, raw)
        const prepared = (await spec.prepare?.({ caller, now, input })) as Prepared
        return inTransaction(async (tx) => {
          const { value, audit, changed } = await spec.run({ tx, caller, now, input, prepared })
          if (audit) {
            const { bakeryId, who, ...note } = audit
            await appendAudit(tx, bakeryId, now, who, caller.address, { action: spec.name, ...note })
          }
          return { value, changed }
        })
      }),
  }
}
