import { recall, tablet } from '../keep/tablet'
import { refresh } from './refresh'

/** Finds out what the book wants of a person. @returns true where the same may be sent again after a pause */
export async function knowWho(personId: string, token: string): Promise<boolean> {
  const on = await recall('on')
  if (on?.personId === personId) {
    await refresh()
    const holder = await tablet.holders.get(personId)
    if ((await recall('withdrawn')) || holder?.asks !== 'nothing') return false
    return true
  }
  await refresh()
  if (await recall('withdrawn')) return false
  const holder = await tablet.holders.get(personId)
  if (holder) await tablet.holders.update(personId, { asks: holder.token ? 'tap' : 'pin' })
  else await tablet.holders.put({ personId, name: '', token, endsAt: 0, asks: 'pin' })
  return false
}
