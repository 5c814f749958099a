/** A reading is of the shift in which it was taken for this long. Bakers work through midnight, so days do not count. */
export const sameShiftMs = 12 * 60 * 60_000

/** How far a device's clock may run ahead: by hours, when nobody set it, and not by days. */
export const clockAheadMs = 24 * 60 * 60_000

/**
 * Whether somebody may correct a reading: whoever has the right whole, any; a shift baker, their own in the shift in
 * which it was taken, which is over after 12 hours.
 */
export function mayCorrect(q: {
  level: 'yes' | 'no' | 'own-same-shift' | 'in-part'
  personId: string
  reading: { personId: string; takenAt: Date }
  now: Date
}): boolean {
  switch (q.level) {
    case 'yes':
      return true
    case 'own-same-shift':
      return q.reading.personId === q.personId && Math.abs(q.now.getTime() - q.reading.takenAt.getTime()) <= sameShiftMs
    case 'in-part':
    case 'no':
      return false
    default:
      return q.level satisfies never
  }
}
