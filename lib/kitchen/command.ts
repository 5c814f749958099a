import 'server-only'
import type { z } from 'zod'
import type { Actor } from '../auth/actor'
import { findActor } from '../auth/find-actor'
import { forgetPasswordTries, mayTryPassword } from '../auth/password-attempts'
import { isPassword } from '../auth/password-hash'
import { mayTry, type ActorOf, type Right } from '../auth/rights'
import { stillOf } from '../auth/still-of'
import { appendAudit, type AuditNote } from '../db/append-audit'
import { db, type Tx } from '../db/client'
import type { Language } from '../db/generated/enums'
import { inTransaction } from '../db/transaction'
import { answer, parseOrRefuse } from './answer'
import type { Caller } from './caller'
import { findCaller } from './find-caller'
import { languageOf } from './language-of'
import { once, type Kept } from './once'
import { Refusal } from './refusal'
import type { Result } from './result'

type Outcome<Value> = {
  value: Value
  /** What the record says of it; null where nothing was written, because all of it had come before. */
  audit: Omit<AuditNote, 'action'> | null
}

type CommandSpec<R extends Right, Schema extends z.ZodType, Prepared, Value extends Kept> = {
  /** Subject and verb-noun: `people.invite-person`. */
  name: string
  input: Schema
  /** Says by the table of rights which kinds of caller it takes; its work gets an actor of those. */
  right: R
  /** The person's password must come with the request: for approvals, signatures and secrets. */
  askPassword?: true
  /** A secret is in what it is asked or answers: nothing of it is kept, so a form sent twice is for its own code to settle. */
  isSecret?: true
  /** It ends the session that calls, so that session is not looked for afterwards. */
  endsOwnSession?: true
  /** Slow work outside the transaction, such as hashing or what a worker does. It must keep nothing; what it rests on may be another by the time of `run`. */
  prepare?(q: { actor: ActorOf<R>; address: string; now: Date; input: z.output<Schema> }): Promise<Prepared>
  /** The work. It touches nothing but `tx`, because a clash starts it again. */
  run(q: {
    tx: Tx
    actor: ActorOf<R>
    now: Date
    /** It threw `NeedsWayBack`, and is at it again. */
    needsWayBack: boolean
    /** In which its words are kept: one that exists, whatever the screen showed. */
    language: Language
    input: z.output<Schema>
    prepared: Prepared
  }): Promise<Outcome<Value>>
}

export type Command<Value = unknown> = {
  kind: 'command'
  name: string
  right: Right
  askPassword: boolean
  call(caller: Caller, raw: unknown): Promise<Result<Value>>
}

/**
 * Makes a command: who is this → may they → parse → password, where asked → one transaction in which, where that took
 * its time, who it is and the right are read again, the work is done (once for a form, see `once`), and the record gets
 * its entry, which looks once more whether they are still who they were, because no lock is waited for after its own →
 * result.
 */
export function command<R extends Right, Schema extends z.ZodType, Value extends Kept, Prepared = undefined>(
  spec: CommandSpec<R, Schema, Prepared, Value>,
): Command<Value> {
  return {
    kind: 'command',
    name: spec.name,
    right: spec.right,
    askPassword: spec.askPassword ?? false,
    call: (caller, raw) =>
      answer(async () => {
        const now = (caller.now ?? (() => new Date()))()
        const known = await findCaller(caller, now)
        if (!known) throw new Refusal('not-signed-in')
        if (!mayTry(known, spec.right)) {
          await recordRefusal(known, caller, spec.name, now)
          throw new Refusal('not-allowed')
        }
        const input = parseOrRefuse(spec.input, raw)
        if (spec.askPassword) await mustKnowPassword(known, caller, now)
        const prepared = (await spec.prepare?.({ actor: known, address: caller.address, now, input })) as Prepared
        return inTransaction(async (tx, needsWayBack) => {
          // Asked again where time went by in between; the record asks once more anyway.
          const actor = spec.askPassword || spec.prepare ? await findActor(tx, caller, now) : known
          if (!actor) throw new Refusal('not-signed-in')
          if (!mayTry(actor, spec.right)) throw new Refusal('not-allowed')
          let outcome: Outcome<Value> | undefined
          const value = await once(
            tx,
            actor,
            spec.isSecret ? null : formIdOf(caller),
            [spec.name, input],
            now,
            async () => {
              outcome = await spec.run({
                tx,
                actor,
                now,
                needsWayBack,
                language: languageOf(actor, caller),
                input,
                prepared,
              })
              return outcome.value
            },
          )
          if (!outcome) return { value }
          if (outcome.audit) {
            // Whoever was signed out, demoted or switched off while this waited for a lock does not get through.
            const still = spec.endsOwnSession ? undefined : stillOf(actor)
            const entry = { action: spec.name, ...outcome.audit }
            if (!(await appendAudit(tx, actor.bakeryId, now, actor, caller.address, entry, still)))
              throw new Refusal('not-signed-in')
          }
          return { value }
        })
      }),
  }
}

/** A no for want of a right is part of the record too. */
export async function recordRefusal(actor: Actor, caller: Caller, name: string, now: Date): Promise<void> {
  await inTransaction((tx) =>
    appendAudit(tx, actor.bakeryId, now, actor, caller.address, { action: 'refused.right', after: name }),
  )
}

function formIdOf(caller: Caller): string | null {
  return caller.kind === 'desk' || caller.kind === 'station' ? (caller.formId ?? null) : null
}

async function mustKnowPassword(actor: Actor, caller: Caller, now: Date): Promise<void> {
  // A password is a person's, and typed at the desk alone.
  if (actor.kind !== 'desk' || caller.kind !== 'desk') throw new Refusal('not-allowed')
  if (!(await mayTryPassword(db(), actor, now))) throw new Refusal('too-many-tries')
  const stored = await db().password.findUnique({
    where: { bakeryId_personId: { bakeryId: actor.bakeryId, personId: actor.personId } },
    select: { hash: true },
  })
  if (!(await isPassword(stored?.hash, caller.password ?? ''))) {
    await inTransaction((tx) =>
      appendAudit(tx, actor.bakeryId, now, actor, caller.address, { action: 'refused.password' }),
    )
    throw new Refusal('wrong-password', {}, [{ path: 'password', code: 'not-your-password', facts: {} }])
  }
  await forgetPasswordTries(db(), actor, now)
}
