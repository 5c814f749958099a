import 'server-only'
import { v7 as uuid } from 'uuid'
import type { z } from 'zod'
import { hashSecret } from '../../auth/secret'
import { startAuditChain } from '../../db/append-audit'
import type { Tx } from '../../db/client'
import type { Role } from '../../db/generated/enums'
import { createStandardMeasures } from '../stores/standard-measures'
import type { bakerySettings } from './bakery-settings.input'

/** A change of cost by more than a hundredth is the owner's affair until they say otherwise. Common practice, no source. */
const usualCostChangeLimitPct = 1

/** Writes a bakery's row, starts its chain and gives it the standard measures. A step shared by the first-run set-up and the demo. */
export async function createBakery(
  tx: Tx,
  name: string,
  settings: z.output<typeof bakerySettings>,
  now: Date,
): Promise<string> {
  const bakeryId = uuid()
  await tx.bakery.create({
    data: {
      bakeryId,
      name,
      timeZone: settings.timeZone,
      locale: settings.locale,
      currency: settings.currency,
      region: settings.region,
      massUnits: settings.massUnits,
      temperatureUnits: settings.temperatureUnits,
      worksAlone: false,
      costChangeLimitPct: usualCostChangeLimitPct,
      language: null,
      // By the calendar, until the owner says otherwise.
      dayTurnsAtH: 0,
      // Two bakers share one tablet and change in the middle of a dough; four hours are half of a common shift.
      stationIdleMin: 10,
      pinLastsH: 4,
      revision: 1,
      createdAt: now,
    },
  })
  await startAuditChain(tx, bakeryId)
  await createStandardMeasures(tx, bakeryId, now)
  return bakeryId
}

type NewPerson = { name: string; email: string; role: Role; passwordHash: string }

/** Writes a person with the password they chose, and the pointer by which their e-mail address finds them. */
export async function createPerson(tx: Tx, bakeryId: string, person: NewPerson, now: Date): Promise<string> {
  const id = uuid()
  await tx.person.create({
    data: {
      bakeryId,
      id,
      name: person.name,
      email: person.email,
      role: person.role,
      language: null,
      activeAt: now,
      revision: 1,
      createdAt: now,
    },
  })
  await tx.password.create({ data: { bakeryId, personId: id, hash: person.passwordHash, setAt: now } })
  await tx.signInPointer.create({
    data: { hash: hashSecret('email', person.email), kind: 'email', bakeryId, targetId: id },
  })
  return id
}
