import { amendments } from './en/amendments'
import { audit } from './en/audit'
import { calculators } from './en/calculators/calculators'
import { calculations } from './en/calculators/words'
import { decisions } from './en/decisions'
import { desk } from './en/desk'
import { door } from './en/door'
import { evidence } from './en/evidence'
import { formulas } from './en/formulas'
import { importing } from './en/importing'
import { lots } from './en/lots'
import { measures } from './en/measures'
import { mixing } from './en/mixing'
import { notes } from './en/notes'
import { paper } from './en/paper'
import { people } from './en/people'
import { photos } from './en/photos'
import { planFigures } from './en/plan-figures'
import { problems } from './en/problems'
import { refusals } from './en/refusals'
import { results } from './en/results'
import { checks } from './en/checks'
import { stationChecks } from './en/station-checks'
import { shift } from './en/shift'
import { station } from './en/station'
import { stationBadge } from './en/station-badge'
import { stationCauses } from './en/station-causes'
import { stationLots } from './en/station-lots'
import { stationScan } from './en/station-scan'
import { stationCounts } from './en/station-counts'
import { stationDisplacement } from './en/station-displacement'
import { stationHeld } from './en/station-held'
import { stationNotes } from './en/station-notes'
import { stationPhotos } from './en/station-photos'
import { stationSteps } from './en/station-steps'
import { stationWater } from './en/station-water'
import { stations } from './en/stations'
import { steps } from './en/steps'
import { stores } from './en/stores'
import { trials } from './en/trials'
import { pseudoOf } from './pseudo'
import type { SamePlaces, WordsOf } from './same-places'

const english = {
  checks,
  amendments,
  audit,
  calculations,
  calculators,
  decisions,
  desk,
  door,
  evidence,
  formulas,
  importing,
  lots,
  measures,
  mixing,
  notes,
  paper,
  people,
  photos,
  planFigures,
  problems,
  refusals,
  results,
  shift,
  station,
  stationBadge,
  stationCauses,
  stationLots,
  stationScan,
  stationChecks,
  stationCounts,
  stationDisplacement,
  stationHeld,
  stationNotes,
  stationPhotos,
  stationSteps,
  stationWater,
  stations,
  steps,
  stores,
  trials,
}

/** Every text that a person reads: the same keys and places in every language, the texts each language's own. */
export type Words = WordsOf<typeof english>
/** `en-XA` is the pseudo-language: every text of ours is changed, so that one which is not ours shows. */
export type Language = 'en' | 'en-XA'

let pseudo: Words | undefined

/** Every text a person reads, in one language. */
export function wordsIn(language: Language): Words {
  switch (language) {
    case 'en':
      return english
    case 'en-XA':
      return (pseudo ??= pseudoOf(english))
    default:
      return language satisfies never
  }
}

/** The first language of an Accept-Language header, as far as we have it. */
export function readLanguage(acceptLanguage: string | null): Language {
  return acceptLanguage?.trim().toLowerCase().startsWith('en-xa') ? 'en-XA' : 'en'
}

/**
 * Takes a further language's texts in: a key that is missing or too many, and a place that is missing or invented,
 * do not compile, and the error stands at the text.
 */
export function translation<const T extends object>(texts: T & SamePlaces<typeof english, NoInfer<T>>): Words {
  return texts as unknown as Words
}
