/** Where an entry stands on the page of what is kept aside; two may be aside under one id. */
export function keptAsideAnchor({ entryId, hash }: { entryId: string; hash: string }): string {
  return `entry-${entryId}-${hash.slice(0, 8)}`
}
