import { v7 as uuid } from 'uuid'
import { forget, inOne, recall, remember, type Kept } from '../keep/tablet'
import { askAs } from './ask-as'
import { refusalIn } from './ask-book'
import { tellOnline } from './online'

/** What came of a tap: nobody knows, where the book did not answer, and tapping again is safe. */
export type Came =
  | { outcome: 'done' }
  | { outcome: 'unknown' }
  | { outcome: 'refused'; code: string; words: string | null }

type Asked = Omit<Kept['asking'], 'id'>

/**
 * Asks the book for something that it alone can do. The tap has a name, kept on the tablet with what it asked until the
 * book has answered it, so that a second tap or a lost answer does it once.
 */
export async function askOnce(asked: Asked): Promise<Came> {
  const { id, personId, address, body } = await nameOfTap(asked)
  const answer = await askAs(personId, address, { once: id, body })
  const refused = refusalIn(answer)
  if (!answer || answer.status >= 500 || (answer.status !== 200 && !refused)) {
    tellOnline(false)
    return { outcome: 'unknown' }
  }
  await forget('asking')
  return refused ? { outcome: 'refused', ...refused } : { outcome: 'done' }
}

/** The tap that the book has not answered yet, with what it asked then, or a new one. */
function nameOfTap(asked: Asked): Promise<Kept['asking']> {
  return inOne(async () => {
    const before = await recall('asking')
    const isSame =
      before?.about === asked.about && before.personId === asked.personId && before.address === asked.address
    if (isSame) return before
    const tap = { ...asked, id: uuid() }
    await remember('asking', tap)
    return tap
  })
}
