import 'server-only'

const latest = 'desc' as const

/** The count of a dough that stands: the latest, in whatever order they came in. */
export const countThatStands = {
  select: {
    id: true,
    made: true,
    good: true,
    sampled: true,
    sold: true,
    given: true,
    wasted: true,
    at: true,
    person: { select: { name: true } },
  } as const,
  orderBy: [{ at: latest }, { receivedAt: latest }, { id: latest }],
  take: 1,
}
