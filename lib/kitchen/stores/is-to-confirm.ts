import 'server-only'
import type { Prisma } from '../../db/generated/client'

/** Said at the bench, and neither confirmed nor ended since. */
export const isToConfirm = {
  saidWithId: { not: null },
  confirmedAt: null,
  endedAt: null,
} satisfies Prisma.LotWhereInput

/** As `isToConfirm`, of one that was read. */
export function isLotToConfirm(lot: {
  saidWithId: string | null
  confirmedAt: Date | null
  endedAt: Date | null
}): boolean {
  return lot.saidWithId !== null && lot.confirmedAt === null && lot.endedAt === null
}
