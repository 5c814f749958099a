export type Place = { batchId: string; measureId: string; piece: number | null; repeat: number }

/** One name for a place, whoever tells of it. */
export function placeKey({
  batchId,
  measureId,
  piece,
  repeat,
}: Omit<Place, 'piece'> & { piece?: number | null | undefined }): string {
  return `${batchId} ${measureId} ${piece ?? '-'} ${repeat}`
}

/** Under what a half-typed number is kept: nobody finds another's, and keeps it as their own. */
export function draftKey(personId: string, place: Place): string {
  return `${personId} ${placeKey(place)}`
}

/** As `draftKey`, of what is to take the place of what stands there. */
export function fixKey(personId: string, place: Place): string {
  return `${draftKey(personId, place)} fix`
}
