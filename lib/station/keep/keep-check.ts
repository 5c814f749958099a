import { clockAheadMs } from '../outbox/clock-ahead'
import { keepEntry, type KeptBy } from './keep-entry'
import { recall } from './tablet'

export type NewCheck = {
  instrument: { id: string; name: string }
  /** Of the test weight; null where the bakery has said it, and for ice. */
  mass: string | null
  /** Of a volume gauge; null for others. */
  block: string | null
  shown: string
  unit: string
  isGood: boolean
  by: KeptBy
}

/** Under what a half-typed number of a check is kept: nobody finds another's, and keeps it as their own. */
export function checkDraft(personId: string, instrumentId: string, what: 'known' | 'shown'): string {
  return `${personId} check ${instrumentId} ${what}`
}

/**
 * Keeps a check on the tablet, also a second one of a day: a later one stands beside it.
 * @throws where the tablet cannot keep it
 */
export async function keepCheck({ instrument, mass, block, shown, unit, isGood, by }: NewCheck): Promise<void> {
  const floor = await recall('floor')
  await keepEntry({
    kind: 'check',
    content: {
      equipmentId: instrument.id,
      mass,
      ...(block === null ? {} : { block }),
      shown,
      unit,
      clockAheadS: floor ? Math.round(clockAheadMs(floor) / 1000) : null,
    },
    shown: { instrument: instrument.name, isGood },
    by,
    draft: checkDraft(by.personId, instrument.id, 'shown'),
    isTaken: () => false,
  })
}
