import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { query } from '../query'
import { bookAsOf } from './book-as-of'

/** The tablet itself: its name, who is on it, and who may log on, by name. No e-mail, no cost and no PIN is in it. */
export const getStation = query({
  name: 'stations.get-station',
  input: z.strictObject({}),
  right: 'hold-station',
  async run({ db, actor }) {
    const { bakeryId } = actor
    const [book, bakery, people] = await Promise.all([
      bookAsOf(db),
      db.bakery.findUniqueOrThrow({
        where: { bakeryId },
        select: {
          name: true,
          timeZone: true,
          locale: true,
          temperatureUnits: true,
          massUnits: true,
          /** After how many minutes without a touch the tablet lets whoever is on it go. */
          stationIdleMin: true,
        },
      }),
      db.person.findMany({
        where: { bakeryId, endedAt: null, pin: { isNot: null } },
        select: { id: true, name: true, role: true },
        orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
      }),
    ])
    return {
      station: { id: actor.stationId, name: actor.stationName },
      /** Another one after every start: what this tablet was told is in the book may not be in it any more. */
      book,
      bakery,
      people: people.map((person) => ({
        ...person,
        /** Of anybody; who may not corrects their own of this shift. */
        correctsAny: levelOf({ kind: 'station', role: person.role }, 'correct-reading') === 'yes',
      })),
      onShift: actor.personId === null ? null : { id: actor.personId, name: actor.name, role: actor.role },
    }
  },
})
