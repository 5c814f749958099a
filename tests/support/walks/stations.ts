import type { PageWalk } from '../rights-walk'

export const stationPages: readonly PageWalk[] = [
  {
    route: '/stations',
    queries: ['stations.get-address'],
    right: 'manage-stations',
    address: () => '/stations',
  },
]
