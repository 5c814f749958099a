import { weighingWords } from './weighing'

/** The calculations' own words, by subject: the name of the folder in lib/calc. A subject without words does not compile. */
export const calculations = { weighing: weighingWords }
