import type { PageWalk } from '../rights-walk'

/** Nothing of a bakery is in them: every bakery has the same calculations, and whoever works in one may read them. */
export const calculatorsPages: readonly PageWalk[] = [
  {
    route: '/calculators',
    queries: ['calculators.list-calculations'],
    right: 'read-work',
    address: () => '/calculators',
  },
  {
    route: '/calculators/reference',
    queries: ['calculators.list-calculations'],
    right: 'read-work',
    address: () => '/calculators/reference',
  },
  {
    route: '/calculators/reference/[subject]',
    queries: ['calculators.get-reference'],
    right: 'read-work',
    address: () => '/calculators/reference/weighing',
  },
  {
    route: '/calculators/[subject]/[name]',
    queries: ['calculators.get-calculation', 'calculators.get-answer'],
    right: 'read-work',
    address: () => '/calculators/weighing/least-net-mass',
  },
]
