import type { ActionWalk, PageWalk } from '../rights-walk'
import { amendmentsActions } from './amendments'
import { calculatorsPages } from './calculators'
import { checksActions, checksPages } from './checks'
import { decisionsActions, decisionsPages } from './decisions'
import { resultsActions, resultsPages } from './results'
import { formulasActions, formulasPages } from './formulas'
import { importingActions, importingPages } from './importing'
import { notesActions, notesPages } from './notes'
import { peopleActions, peoplePages } from './people'
import { shiftActions, shiftPages } from './shift'
import { stationActions, stationPages } from './stations'
import { storesActions, storesPages } from './stores'
import { trialsActions, trialsPages } from './trials'

/** Every server action and page there is; the first test of the walk fails when one is missing. */
export const everyAction: readonly ActionWalk[] = [
  ...peopleActions,
  ...storesActions,
  ...formulasActions,
  ...trialsActions,
  ...shiftActions,
  ...notesActions,
  ...checksActions,
  ...stationActions,
  ...resultsActions,
  ...amendmentsActions,
  ...decisionsActions,
  ...importingActions,
]
export const everyPage: readonly PageWalk[] = [
  ...peoplePages,
  ...stationPages,
  ...storesPages,
  ...formulasPages,
  ...trialsPages,
  ...shiftPages,
  ...notesPages,
  ...checksPages,
  ...resultsPages,
  ...decisionsPages,
  ...importingPages,
  ...calculatorsPages,
]
