import type { Holder, OutboxEntry } from '../outbox/entry'
import type { KeptList } from './weigh-facts'
import type { TabletPhoto } from '../photo/tablet-photo'
import { recall, tablet, type Kept } from './tablet'

/** Everything that the screens are made of, at one moment. */
export type TabletNow = {
  station: Kept['station'] | null
  withdrawn: boolean
  floor: Kept['floor'] | null
  on: Kept['on'] | null
  at: Kept['at'] | null
  noting: Kept['noting'] | null
  wrong: Kept['wrong'] | null
  photographing: Kept['photographing'] | null
  checking: Kept['checking'] | null
  emptyGauge: Kept['emptyGauge'] | null
  holders: Holder[]
  begun: Kept['begun'] | null
  out: Kept['out'] | null
  silenced: Kept['silenced']
  entries: OutboxEntry[]
  lists: KeptList[]
  photos: TabletPhoto[]
}

/** Reads what is on the tablet. */
export async function readTablet(): Promise<TabletNow> {
  const [
    station,
    withdrawn,
    floor,
    on,
    at,
    noting,
    wrong,
    photographing,
    checking,
    emptyGauge,
    begun,
    out,
    silenced,
    holders,
    entries,
    lists,
    photos,
  ] = await Promise.all([
    recall('station'),
    recall('withdrawn'),
    recall('floor'),
    recall('on'),
    recall('at'),
    recall('noting'),
    recall('wrong'),
    recall('photographing'),
    recall('checking'),
    recall('emptyGauge'),
    recall('begun'),
    recall('out'),
    recall('silenced'),
    tablet.holders.toArray(),
    tablet.outbox.orderBy('counter').toArray(),
    tablet.lists.toArray(),
    tablet.photos.toArray(),
  ])
  return {
    station: station ?? null,
    withdrawn: withdrawn ?? false,
    floor: floor ?? null,
    on: on ?? null,
    at: at ?? null,
    noting: noting ?? null,
    wrong: wrong ?? null,
    photographing: photographing ?? null,
    checking: checking ?? null,
    emptyGauge: emptyGauge ?? null,
    begun: begun ?? null,
    out: out ?? null,
    silenced: silenced ?? [],
    holders,
    entries,
    lists,
    photos: photos.sort((a, b) => a.counter - b.counter),
  }
}
