import 'server-only'
import { createHash } from 'node:crypto'
import type { Actor } from '../auth/actor'
import type { Tx } from '../db/client'

/** What a form comes to, as it can be kept and given again. */
export type Kept = string | number | boolean | null | readonly Kept[] | { readonly [name: string]: Kept }

/**
 * Does what a form asks for once, however often it is sent: the same form with the same content gets the same answer
 * again, and `work` is not called. Changed content is another matter and is worked on. Two at one time wait for each
 * other. What the work came to is kept by the same transaction, so it is there exactly when its work is.
 * @param formId made with the form, unguessable; null where nothing was sent by a form
 * @param asked what was asked for: the command's name and its parsed input, without secrets
 */
export async function once<Value extends Kept>(
  tx: Tx,
  actor: Actor,
  formId: string | null,
  asked: unknown,
  now: Date,
  work: () => Promise<Value>,
): Promise<Value> {
  // A form is sent by a person.
  const personId = 'personId' in actor ? actor.personId : null
  if (formId === null || personId === null) return work()
  const key = {
    bakeryId: actor.bakeryId,
    personId,
    formId,
    askedHash: createHash('sha256').update(JSON.stringify(asked), 'utf8').digest('hex'),
  }
  await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${`${personId} ${formId}`}, 0))`
  const earlier = await tx.answeredForm.findUnique({
    where: { bakeryId_personId_formId_askedHash: key },
    select: { value: true },
  })
  if (earlier) return earlier.value as Value
  const value = await work()
  await tx.$executeRaw`
    INSERT INTO answered_form (bakery_id, person_id, form_id, asked_hash, value, at)
    VALUES (${key.bakeryId}::uuid, ${key.personId}::uuid, ${formId}::uuid, ${key.askedHash}, ${JSON.stringify(value)}::jsonb, ${now})`
  return value
}
