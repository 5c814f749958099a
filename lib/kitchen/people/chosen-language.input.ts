import { z } from 'zod'

/** A language that there are words in; null leaves it to whoever comes next: a person's to the bakery, a bakery's to each browser. */
export const chosenLanguage = z.enum(['en']).nullable()
