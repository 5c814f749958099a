/** The page on which a trial opens. */
export function addressOfTrial({ id, opensOn }: { id: string; opensOn: 'plan' | 'result' }): string {
  return opensOn === 'result' ? `/trials/${id}/result` : `/trials/${id}`
}
