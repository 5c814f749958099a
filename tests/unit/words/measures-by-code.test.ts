import { describe, expect, it } from 'vitest'
import { standardMeasures } from '@/lib/kitchen/stores/standard-measures'
import { measureInText } from '@/lib/words/measure-in-text'
import { measureMethod } from '@/lib/words/measure-method'
import { measureName } from '@/lib/words/measure-name'
import { wordsIn } from '@/lib/words/words'

const words = wordsIn('en')

describe('measures by code', () => {
  it.each(standardMeasures)('$code has words, and in English those that its row has', ({ code, name, method }) => {
    expect(measureName({ code, name: 'as a row has it' }, words)).toBe(name)
    expect(measureMethod({ code, method: 'as a row has it' }, words)).toBe(method)
    expect(measureInText({ code, name: 'as a row has it' }, words, 'en')).toBe(name.toLowerCase())
  })

  it('has no words for a measure that no bakery starts with', () => {
    expect(Object.keys(words.measures.standard).sort()).toEqual(standardMeasures.map(({ code }) => code).sort())
  })

  it('takes one of the bakery’s own as it was typed, quoted within a sentence', () => {
    expect(measureName({ code: null, name: 'IBU of the crust' }, words)).toBe('IBU of the crust')
    expect(measureInText({ code: null, name: 'IBU of the crust' }, words, 'en')).toBe('‘IBU of the crust’')
    expect(measureMethod({ code: null, method: 'By eye' }, words)).toBe('By eye')
  })

  it('takes no code for words that is only a name of every object', () => {
    expect(measureName({ code: 'constructor', name: 'Mine' }, words)).toBe('Mine')
  })
})
