import type { Subject } from './subject'
import { calculations } from './subjects/calculations'
import { entries } from './subjects/entries'
import { heavy } from './subjects/heavy'
import { library } from './subjects/library'
import { load } from './subjects/load'
import { mixedModel } from './subjects/mixed-model'
import { pages } from './subjects/pages'
import { script } from './subjects/script'
import { start } from './subjects/start'

/** Everything that `npm run bench` measures, in the order in which it is printed. */
export const subjects: readonly Subject[] = [
  start,
  pages,
  script,
  library,
  calculations,
  mixedModel,
  entries,
  load,
  heavy,
]
