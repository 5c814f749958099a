import { randomUUID } from 'node:crypto'
import { hashSecret, makeSecret } from '../auth/secret'
import { linkLifeMs } from '../auth/session-life'
import { db } from '../db/client'
import type { InstallKind } from '../db/generated/enums'

export type PreparedInstall = {
  kind: InstallKind
  /** Whether nobody had said it before. */
  isNew: boolean
  /** Secret of the first-run link, as long as no bakery is set up. */
  firstRunSecret?: string
}

/** Whether the database holds a demo or a real install; null as long as nobody has said. */
export async function kindOfInstall(): Promise<InstallKind | null> {
  return (await db().install.findUnique({ where: { id: 1 }, select: { kind: true } }))?.kind ?? null
}

/**
 * Marks a new database as a demo or a real install, once and for good, and makes a first-run link as long as there
 * is no bakery in it; a new start makes the former link dead.
 */
export async function prepareInstall(wanted: InstallKind): Promise<PreparedInstall> {
  const now = new Date()
  const { count } = await db().install.createMany({
    data: [{ id: 1, epoch: randomUUID(), kind: wanted, createdAt: now }],
    skipDuplicates: true,
  })
  const { kind } = await db().install.findUniqueOrThrow({ where: { id: 1 }, select: { kind: true } })
  if ((await db().bakery.count()) > 0) return { kind, isNew: count > 0 }
  const firstRunSecret = makeSecret()
  await db().install.update({
    where: { id: 1 },
    data: {
      firstRunHash: hashSecret('first-run', firstRunSecret),
      firstRunEndsAt: new Date(now.getTime() + linkLifeMs),
      firstRunUsedAt: null,
    },
  })
  return { kind, isNew: count > 0, firstRunSecret }
}
