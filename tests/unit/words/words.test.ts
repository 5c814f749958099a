import { describe, expect, it } from 'vitest'
import { amendments } from '@/lib/words/en/amendments'
import { audit } from '@/lib/words/en/audit'
import { calculators } from '@/lib/words/en/calculators/calculators'
import { calculations } from '@/lib/words/en/calculators/words'
import { decisions } from '@/lib/words/en/decisions'
import { desk } from '@/lib/words/en/desk'
import { door } from '@/lib/words/en/door'
import { evidence } from '@/lib/words/en/evidence'
import { results } from '@/lib/words/en/results'
import { formulas } from '@/lib/words/en/formulas'
import { importing } from '@/lib/words/en/importing'
import { lots } from '@/lib/words/en/lots'
import { measures } from '@/lib/words/en/measures'
import { mixing } from '@/lib/words/en/mixing'
import { notes } from '@/lib/words/en/notes'
import { paper } from '@/lib/words/en/paper'
import { people } from '@/lib/words/en/people'
import { photos } from '@/lib/words/en/photos'
import { planFigures } from '@/lib/words/en/plan-figures'
import { problems } from '@/lib/words/en/problems'
import { refusals } from '@/lib/words/en/refusals'
import { checks } from '@/lib/words/en/checks'
import { stationChecks } from '@/lib/words/en/station-checks'
import { shift } from '@/lib/words/en/shift'
import { station } from '@/lib/words/en/station'
import { stationBadge } from '@/lib/words/en/station-badge'
import { stationCauses } from '@/lib/words/en/station-causes'
import { stationHeld } from '@/lib/words/en/station-held'
import { stationLots } from '@/lib/words/en/station-lots'
import { stationScan } from '@/lib/words/en/station-scan'
import { stationCounts } from '@/lib/words/en/station-counts'
import { stationDisplacement } from '@/lib/words/en/station-displacement'
import { stationNotes } from '@/lib/words/en/station-notes'
import { stationPhotos } from '@/lib/words/en/station-photos'
import { stationSteps } from '@/lib/words/en/station-steps'
import { stations } from '@/lib/words/en/stations'
import { steps } from '@/lib/words/en/steps'
import { stores } from '@/lib/words/en/stores'
import { trials } from '@/lib/words/en/trials'
import { stationWater } from '@/lib/words/en/station-water'
import { readLanguage, translation, wordsIn } from '@/lib/words/words'

const everyEnglish = {
  checks,
  amendments,
  audit,
  calculators,
  calculations,
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
  stationHeld,
  stationLots,
  stationScan,
  stationChecks,
  stationCounts,
  stationDisplacement,
  stationNotes,
  stationPhotos,
  stationSteps,
  stations,
  steps,
  stores,
  trials,
  stationWater,
}

type Tree = { [key: string]: string | Tree }

function texts(tree: Tree, path = ''): [string, string][] {
  return Object.entries(tree).flatMap(([key, value]) =>
    typeof value === 'string' ? [[`${path}${key}`, value] as [string, string]] : texts(value, `${path}${key}.`),
  )
}

describe('the words', () => {
  const english = texts(wordsIn('en'))

  it('are all there: none is empty, none has a stray brace or blank', () => {
    const odd = english.filter(
      ([, text]) => text.trim() !== text || text === '' || /[{}]/.test(text.replace(/\{\w+\}/g, '')),
    )
    expect(odd).toEqual([])
  })

  // A place in braces is filled with a name and never read itself.
  it('say dough: what a design calls an arm is no word of a baker', () => {
    expect(english.filter(([, text]) => /\barms?\b/i.test(text.replace(/\{\w+\}/g, '')))).toEqual([])
  })

  describe('in the pseudo-language', () => {
    const pseudo = new Map(texts(wordsIn('en-XA')))
    const placesOf = (text = '') => text.match(/\{\w+\}/g) ?? []
    // It has no form for one, and one for few.
    const single = english.filter(([key]) => pseudo.has(key))

    it('have the same keys, but for the forms of another grammar', () => {
      const group = (keys: Iterable<string>) =>
        [...new Set([...keys].map((key) => key.replace(/\.(one|few|other)$/, '')))].sort()
      expect(group(pseudo.keys())).toEqual(group(english.map(([key]) => key)))
      expect(english.filter(([key]) => !pseudo.has(key)).every(([key]) => key.endsWith('.one'))).toBe(true)
    })

    it('have the same places, the last one first', () => {
      const wrong = single.filter(
        ([key, text]) => JSON.stringify(placesOf(pseudo.get(key))) !== JSON.stringify(placesOf(text).reverse()),
      )
      expect(wrong).toEqual([])
      expect(single.filter(([, text]) => placesOf(text).length > 1).length).toBeGreaterThan(100)
    })

    it('are all other than in English, with what is said after all places', () => {
      expect(single.filter(([key, text]) => pseudo.get(key) === text)).toEqual([])
      expect([...pseudo].filter(([, text]) => !/^⟦(\{\w+\} )*[^{}]+⟧$/.test(text))).toEqual([])
    })
  })

  // Holds by the compiler: every English text is looked at as a translation's would be.
  it('pass as a translation, whole', () => {
    expect(translation(everyEnglish)).toBe(everyEnglish)
    // @ts-expect-error a subject is missing
    translation({ ...everyEnglish, trials: undefined })
    translation({
      ...everyEnglish,
      door: {
        ...door,
        join: {
          ...door.join,
          // @ts-expect-error the place {bakery} is missing
          joinTitle: 'Join in',
        },
      },
    })
  })

  it('are chosen by what the browser asks for first', () => {
    expect(readLanguage('en-XA,en;q=0.9')).toBe('en-XA')
    expect(readLanguage('de-DE,de;q=0.9')).toBe('en')
    expect(readLanguage(null)).toBe('en')
  })
})
