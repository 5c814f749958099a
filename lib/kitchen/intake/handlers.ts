import 'server-only'
import { checksHandler } from '../checks/checks-handler'
import { notesHandler } from '../notes/notes-handler'
import { readingsHandler } from '../readings/readings-handler'
import { stepsHandler } from '../steps/steps-handler'
import { causesHandler } from '../shifts/causes-handler'
import { countsHandler } from '../shifts/counts-handler'
import { weighingsHandler } from '../weighings/weighings-handler'
import type { EntryHandler } from './entry-handler'

/** Everything that comes in from outside, by who takes it; what one kind rests on is kept by a handler before it. */
export const entryHandlers: readonly EntryHandler[] = [
  readingsHandler,
  weighingsHandler,
  notesHandler,
  stepsHandler,
  causesHandler,
  checksHandler,
  countsHandler,
]
