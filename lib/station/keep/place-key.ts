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
