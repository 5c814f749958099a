import { z } from 'zod'
import type { Looks } from './looks.input'

const minutes = z.int().min(1).max(2880).nullable().default(null)

/** When somebody is called to look at a dough, as it is typed. Apart from what is made of it, which tablets load. */
export const looksFields = {
  foldEveryMin: minutes,
  restLookMin: minutes,
  restMostMin: minutes,
  coolLookMin: minutes,
  coolMostMin: minutes,
  retardLookMin: minutes,
  retardMostMin: minutes,
} satisfies { [name in keyof Looks]: typeof minutes }
